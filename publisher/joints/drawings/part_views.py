"""A part as a flat picture: outline, openings and the marks that one looks for."""

import shapely

from publisher.basics import Purpose, SizesPromise
from publisher.geometry import Part, polygon
from publisher.joints.drawings.lines import Sketch
from publisher.joints.outlines import coarse

SHOWN = (Purpose.BEND, Purpose.JOINT_TICK, Purpose.LINE_UP, Purpose.CLIMB, Purpose.SURFACE)

SIZES_WIDE, SIZES_TALL = 70.0, 34.0
"""mm: the room that the drawing of a piece with its sizes is made for."""

ROOMY_HOLE = 5.0  # mm across as drawn: a smaller hole has its number beside it
BESIDE_HOLE = 2.2  # mm from it to the middle of the number

FINEST = 1000.0  # of its size: a picture is never printed so large that a finer sagitta could be seen


def part_view(part: Part) -> Sketch:
    """Draw the finished piece with its openings and marks."""
    sketch = Sketch()
    left, bottom, right, top = polygon(part.outline).bounds
    size = max(right - left, top - bottom)
    for ring in (part.outline.outer, *part.outline.holes):
        points, _ = coarse(ring, most_turn=5.0, sagitta=max(0.04, size / FINEST))
        sketch.add_path("outline", [*points, points[0]])
        if ring is part.outline.outer:
            sketch.shapes.append(shapely.Polygon(points))
    for mark in part.marks:
        if mark.purpose in SHOWN and len(mark.path.points) > 1:
            sketch.add_path("detail", mark.path.travelled)
    return sketch


def sizes_view(part: Part, sizes: SizesPromise) -> Sketch:
    """Draw a piece that is measured out: outline and holes, each with its number, lines right across it, and what is cut at its edges."""
    sketch = Sketch()
    left, bottom, _, _ = polygon(part.outline).bounds
    for ring in (part.outline.outer, *part.outline.holes):
        points, _ = coarse(ring, most_turn=5.0, sagitta=max(0.04, max(sizes.width, sizes.height) / FINEST))
        sketch.add_path("outline", [*points, points[0]])
    sketch.shapes.append(polygon(part.outline))
    for mark in part.marks:
        if len(mark.path.points) > 1:
            sketch.add_path("guide", mark.path.points)
    paper = max(sizes.width / SIZES_WIDE, sizes.height / SIZES_TALL, 1.0)  # mm of the piece that one of the page shows
    for number, hole in enumerate(sizes.holes, 1):
        x, y = left + hole.left, bottom + hole.up
        if not hole.round:
            x, y = x + hole.width / 2.0, y + hole.height / 2.0
        if min(hole.width, hole.height) < ROOMY_HOLE * paper:
            x += hole.width / 2.0 + BESIDE_HOLE * paper
        sketch.label(str(number), x, y)
    return sketch
