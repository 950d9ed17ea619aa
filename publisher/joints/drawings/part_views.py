"""A part as a flat picture: outline, openings and the marks that one looks for."""

import shapely

from publisher.basics import Purpose
from publisher.geometry import Part, polygon
from publisher.joints.drawings.lines import Sketch
from publisher.joints.outlines import coarse

SHOWN = (Purpose.BEND, Purpose.JOINT_TICK, Purpose.LINE_UP, Purpose.CLIMB, Purpose.SURFACE)

FINEST = 1000.0  # of its size: a picture is never printed so large that a finer sagitta could be seen


def part_view(part: Part) -> Sketch:
    """Draw the finished piece with its openings and marks."""
    sketch = Sketch()
    left, bottom, right, top = polygon(part.outline).bounds
    size = max(right - left, top - bottom)
    for ring in (part.outline.outer, *part.outline.holes):
        points, _ = coarse(ring, 5.0, max(0.04, size / FINEST))
        sketch.add_path("outline", [*points, points[0]])
        if ring is part.outline.outer:
            sketch.shapes.append(shapely.Polygon(points))
    for mark in part.marks:
        if mark.purpose in SHOWN and len(mark.path.points) > 1:
            sketch.add_path("detail", mark.path.travelled)
    return sketch
