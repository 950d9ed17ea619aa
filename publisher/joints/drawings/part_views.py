"""A part as a flat picture: outline, openings and the marks that one looks for."""

from publisher.basics import Purpose
from publisher.geometry import Part
from publisher.joints.drawings.lines import Sketch
from publisher.joints.outlines import coarse_ring

SHOWN = (Purpose.JOINT_TICK, Purpose.LINE_UP, Purpose.CLIMB, Purpose.SURFACE)


def part_view(part: Part) -> Sketch:
    """Draw the finished piece with its openings and marks."""
    sketch = Sketch()
    for ring in (part.outline.outer, *part.outline.holes):
        points, _ = coarse_ring(ring, 5.0, 0.04)
        sketch.add_path("outline", [*points, points[0]])
    for mark in part.marks:
        if mark.purpose in SHOWN:
            sketch.add_path("detail", [*mark.points, mark.points[0]] if mark.closed else mark.points)
    return sketch
