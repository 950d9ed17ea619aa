"""The sketch of what was put up dry and is taken apart again: what stands, ticked, and then its parts, each by itself."""

from publisher.basics import Box
from publisher.joints import Drawing
from publisher.pages.instructions.finish_sketches import draw_standing
from publisher.pages.instructions.part_art import part_cells
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE, CountedParts
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.type import PICTURE_GHOST

STANDS_WIDE, STANDS_LOW = 32.0, 21.0  # mm: the room of what stands, at the left, over two boards that come apart
PARTS_FROM = 42.0


def taking_apart(pen: SketchPen, stands: Drawing | None, parts: CountedParts) -> None:
    """What stands dry, which fits; under it two boards that are drawn off each other; and all its parts, apart and counted."""
    if stands is not None:
        draw_standing(pen, stands, Box(0.5, STANDS_LOW, STANDS_WIDE, FIELD_TALL - 1.0))
    pen.right(STANDS_WIDE + 1.5, FIELD_TALL - 8.0)
    taken_apart(pen)
    pen.arrow((STANDS_WIDE + 1.0, 34.0), (PARTS_FROM - 1.5, 34.0))
    for art in part_cells(parts, Box(PARTS_FROM, 0.0, FIELD_WIDE, FIELD_TALL), 1.0):
        art.outline(pen)
        art.lettered(pen)
        art.counted(pen)


def taken_apart(pen: SketchPen) -> None:
    """Draw two boards in section that meet in a corner, drawn off each other, and which way each goes."""
    pen.scene("taken_apart")
    pen.section((9.0, 1.0), (13.0, 1.0), (13.0, 17.0), (9.0, 17.0))
    pen.section((18.0, 1.0), (32.0, 1.0), (32.0, 5.0), (18.0, 5.0))
    for level in (1.0, 5.0):
        pen.line((13.4, level), (17.6, level), style=PICTURE_GHOST)
    pen.arrow((7.6, 10.0), (1.0, 10.0))
    pen.arrow((21.0, 9.0), (30.0, 9.0))
