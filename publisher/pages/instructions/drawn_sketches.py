"""The sketches of parts that no card is traced for: rectangles drawn along a rule by their sizes, rounds with a compass strip."""

from collections.abc import Mapping

import shapely

from publisher.basics import Box, Point, Pose
from publisher.geometry import polygon
from publisher.pages.instructions.part_art import COUNT_HIGH, PartArt, part_cells, ring_points
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE, PENCIL_SHOWN, TOOL_ROOM, CountedParts
from publisher.pages.instructions.sketch_pen import DIMENSION_HEAD, WORDS_WHITE, SketchPen, along_arc
from publisher.pages.type import CUT, DRAW, PICTURE_ADDED_CONTOUR, PICTURE_DETAIL, PICTURE_GHOST, PICTURE_OUTLINE

MOST_MEASURED = 4  # in one sketch: each has a row with its sizes
RULE_HIGH = 4.6  # mm of the rule that lies at the first of them
SIZE_HIGH = 4.4  # mm for the line that says how long one is
BESIDE_DIMENSION = 1.4  # mm from a dimension to its words, where they stand beside it
BOARD_UNDER = 4.0  # mm of the board that are shown under the lowest of them
GONE_ROUND = (0.0, 250.0)  # degrees that a compass has gone round
COMPASS_WIDE = 5.0  # mm

SaidSizes = Mapping[str, tuple[str, str]]
"""How long and how wide parts are, in words, by their ids."""


def measuring_out(pen: SketchPen, parts: CountedParts, sizes: SaidSizes | None = None) -> None:
    """Parts without a card, all to one scale, each with its letter, count and sizes; a pencil along a rule at the first of them."""
    below = FIELD_TALL - TOOL_ROOM
    sizes = sizes or {}
    arts = _rows(parts, Box(2.5, 1.0, FIELD_WIDE - 2.5, below - RULE_HIGH - 0.6), _room_of(pen, sizes))
    low = max(0.5, min(art.low for art in arts) - COUNT_HIGH - BOARD_UNDER)
    pen.line((0.5, low), (FIELD_WIDE - 0.5, low), (FIELD_WIDE - 0.5, below), (0.5, below), style=DRAW, closed=True)
    for art in arts:
        art.outline(pen, CUT)
        art.counted(pen)
        if art.part.id in sizes:
            _sized(pen, art, *sizes[art.part.id])
    left, _, right, top = arts[0].shape.bounds
    pen.rule(max(1.5, left - 3.0), top + 0.3, min(FIELD_WIDE - 1.5, right + 3.0), top + RULE_HIGH)
    pen.pencil((left + 0.7 * (right - left), top), 0.0, PENCIL_SHOWN)
    pen.arrow((left + 0.1 * (right - left), top + 1.6), (left + 0.4 * (right - left), top + 1.6))
    for art in arts:
        art.lettered(pen)


def _room_of(pen: SketchPen, sizes: SaidSizes) -> float:
    """Return how much room the widths of parts take beside them."""
    return max((pen.wide(width) + 4.0 for _, width in sizes.values()), default=0.0)


def _rows(parts: CountedParts, box: Box, aside: float) -> tuple[PartArt, ...]:
    """Return parts one under another, to one scale, so that the longer is drawn longer."""
    high = box.height / len(parts)
    boxes = [polygon(part.outline).bounds for part, _ in parts]
    widest, tallest = max(b[2] - b[0] for b in boxes), max(b[3] - b[1] for b in boxes)
    scale = min((box.width - aside) / widest, (high - COUNT_HIGH - SIZE_HIGH) / tallest, 1.0)
    found = []
    for row, ((part, count), (left, bottom, right, top)) in enumerate(zip(parts, boxes, strict=True)):
        cell = Box(box.left, box.top - (row + 1) * high, box.right - aside, box.top - row * high)
        x = (cell.left + cell.right) / 2 - scale * (left + right) / 2
        middle = cell.bottom + (cell.height + COUNT_HIGH + SIZE_HIGH) / 2
        if row == 0:  # the rule lies on it
            middle = cell.top - scale * (top - bottom) / 2
        found.append(PartArt(part, cell, (x, middle - scale * (bottom + top) / 2), scale, count, SIZE_HIGH))
    return tuple(found)


def _sized(pen: SketchPen, art: PartArt, long: str, wide: str) -> None:
    """Draw how long and how wide a part is, under it and at its right, as dimensions."""
    left, bottom, right, top = art.shape.bounds
    y = bottom - SIZE_HIGH / 2
    for x in (left, right):
        pen.line((x, bottom - 0.6), (x, y - 1.2), style=PICTURE_DETAIL)
    pen.dimension((left, y), (right, y))
    if right - left > pen.wide(long) + 2.0 * (DIMENSION_HEAD + WORDS_WHITE):
        pen.count(long, (left + right) / 2, y - 1.2)
    else:  # between the heads there is no room: beside them, where the part leaves more
        pen.count(long, left - BESIDE_DIMENSION, y - 1.2, "right")
    x = right + 2.0
    for at in (bottom, top):
        pen.line((right + 0.6, at), (x + 1.0, at), style=PICTURE_DETAIL)
    pen.line((x, bottom), (x, top), style=PICTURE_DETAIL)
    pen.count(wide, x + 1.4, (bottom + top) / 2 - 1.2, "left")


def drawing_round(pen: SketchPen, parts: CountedParts) -> None:
    """Round parts, for which a strip of card with two holes is the compass: a pin in its one hole, the pencil in the other, that has run
    round as far as the line is thick."""
    below = FIELD_TALL - TOOL_ROOM
    pen.line((0.5, 0.5), (FIELD_WIDE - 0.5, 0.5), (FIELD_WIDE - 0.5, below), (0.5, below), style=DRAW, closed=True)
    arts = part_cells(parts, Box(1.5, 1.0, FIELD_WIDE - 1.5, below - 0.5), 2.0)
    for number, art in enumerate(arts):
        middle, radius = _round(art)
        if number:
            pen.line(*ring_points(art.shape.exterior), style=CUT, closed=True)
        else:
            pen.line(*along_arc(middle, radius, *GONE_ROUND, 48), style=PICTURE_ADDED_CONTOUR)
            pen.line(*along_arc(middle, radius, GONE_ROUND[1], 360.0, 24), style=PICTURE_GHOST)
        for hole in art.shape.interiors:
            pen.line(*ring_points(hole), style=PICTURE_DETAIL, closed=True)
        art.counted(pen)
    middle, radius = _round(arts[0])
    _compass(pen, middle, radius)
    pen.pin(middle, 20.0)
    pen.pencil((middle[0] + radius, middle[1]), -28.0)
    pen.turning(middle, radius - 4.0, GONE_ROUND[1] + 40.0, GONE_ROUND[1] + 90.0)
    for art in arts:
        art.lettered(pen)


def _compass(pen: SketchPen, middle: Point, radius: float) -> None:
    """Draw the strip from the middle of a part to its rim, with its two holes."""
    half, end = COMPASS_WIDE / 2, 3.0
    ring = ((-end, -half), (radius + end, -half), (radius + end, half), (-end, half))
    at = Pose(*middle)
    pen.white(*at.apply_all(ring))
    pen.line(*at.apply_all(ring), style=PICTURE_OUTLINE, closed=True)
    pen.taken.append(shapely.Polygon(at.apply_all(ring)))
    for x in (0.0, radius):
        hole = along_arc((middle[0] + x, middle[1]), 0.7, 0.0, 345.0, 12)
        pen.line(*hole, style=PICTURE_DETAIL, closed=True)


def _round(art: PartArt) -> tuple[Point, float]:
    """Return the middle and the radius of a round part in the sketch."""
    left, bottom, right, top = art.shape.bounds
    return ((left + right) / 2, (bottom + top) / 2), (right - left) / 2
