"""The sketch of marking out: the boards with their pieces as the layouts show them, and before them the coupon, which must fit."""

from collections.abc import Sequence
from math import hypot

import shapely
from shapely.affinity import affine_transform

from publisher.basics import Box
from publisher.geometry import Part, polygon
from publisher.material import Layout
from publisher.pages.instructions.part_art import middle_line, ring_points
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE, CountedParts
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.sheet import set_apart
from publisher.pages.type import PICTURE_CONTOUR, PICTURE_DETAIL

MOST_BOARDS = 2  # layouts that are shown
COUNT_LINES = 4  # of counts below the layouts
HOLE_SHOWN = 0.9  # mm: an opening that is drawn no narrower than that
LETTER_CLEAR = 0.1  # mm from a letter to the nearest line, at least


def marking_out(
    pen: SketchPen, layouts: Sequence[Layout], parts: dict[str, Part], counted: CountedParts, coupon: str, page: str
) -> None:
    """The boards with all their pieces, as the layouts show them, and how many of each; first the coupon, which must fit."""
    shown = list(layouts)[:MOST_BOARDS]
    left = 19.0
    if coupon:
        _coupon(pen, coupon)
    pen.sheet(2.0, 2.0, 13.0, 16.0, page)
    pen.line((4.0, 4.0), (11.0, 4.0), (11.0, 10.0), (4.0, 10.0), style=PICTURE_DETAIL, closed=True)
    pen.arrow((13.6, 9.0), (18.6, 9.0))
    said = pen.broken([f"{count} × {part.letter}" for part, count in counted], FIELD_WIDE - left - 2.0, COUNT_LINES)
    foot = 4.6 * len(said) + 1.0
    more = 6.0 if len(layouts) > len(shown) else 0.0  # mm for the sign of those left out
    wide = (FIELD_WIDE - left - more) / len(shown)
    for number, layout in enumerate(shown):
        box = Box(left + wide * number + 1.0, foot + 1.0, left + wide * (number + 1) - 1.0, FIELD_TALL - 1.0)
        across, up = layout.sheet.width, layout.sheet.height
        wide_so, high_so = max(across, up), min(across, up)  # turned as the pages of the layouts turn it
        scale = min(box.width / wide_so, box.height / high_so)
        x = (box.left + box.right - wide_so * scale) / 2
        y = (box.bottom + box.top - high_so * scale) / 2
        put = (0.0, scale, -scale, 0.0, x, y + scale * across) if up > across else (scale, 0.0, 0.0, scale, x, y)
        board = affine_transform(shapely.box(0.0, 0.0, across, up), put)
        pen.line(*ring_points(board.exterior, 0.05), style=PICTURE_CONTOUR, closed=True)
        laid = [(part, item.pose) for item in layout.items if (part := parts.get(item.part)) is not None]
        shapes = [affine_transform(polygon(part.outline, pose), put) for part, pose in laid]
        for (part, _), shape in zip(laid, _apart(pen, shapes, board), strict=True):
            _piece(pen, part, shape)
    if len(layouts) > len(shown):
        pen.count("…", FIELD_WIDE - 3.0, FIELD_TALL / 2)
    for number, line in enumerate(reversed(said)):
        pen.count(line, (left + FIELD_WIDE) / 2, 1.0 + 4.6 * number)


def _apart(pen: SketchPen, shapes: Sequence[shapely.Polygon], board: shapely.Polygon) -> list[shapely.Polygon]:
    """Return pieces on a board (mm of the sketch), set apart so that each line of each is seen on the page."""
    out, back = ((scale, 0.0, 0.0, scale, 0.0, 0.0) for scale in (pen.scale, 1.0 / pen.scale))
    on_page = [affine_transform(shape, out) for shape in shapes]
    moved = set_apart(on_page, PICTURE_DETAIL.width, affine_transform(board, out), PICTURE_CONTOUR.width)
    return [affine_transform(shape, back) for shape in moved]


def _piece(pen: SketchPen, part: Part, shape: shapely.Polygon) -> None:
    """Draw a piece on a board as it is set in: its outline, its openings, narrow ones as one line, and its letter where it has room."""
    pen.line(*ring_points(shape.exterior, 0.05), style=PICTURE_DETAIL, closed=True)
    for hole in shape.interiors:
        if shapely.Polygon(hole).buffer(-HOLE_SHOWN / 2).area > 0.0:
            pen.line(*ring_points(hole, 0.05), style=PICTURE_DETAIL, closed=True)
        else:
            pen.line(*middle_line(hole), style=PICTURE_DETAIL)
    circle = shapely.maximum_inscribed_circle(shape, 0.1)
    (cx, cy), _ = circle.coords
    wide, high = pen.setter.width(part.letter, pen.note) / pen.scale, pen.setter.cap(pen.note) / pen.scale
    if circle.length >= hypot(wide, high) / 2 + LETTER_CLEAR:
        pen.words(part.letter, float(cx), float(cy) - high / 2, "centre")


def _coupon(pen: SketchPen, coupon: str) -> None:
    """Draw the coupon, the first thing that is cut, and that it fits."""
    low, high = 24.0, 38.0
    if coupon == "slot":  # a board that is cut right through, whose slot is closed behind, and a tab that goes in
        for y, up in ((high, 5.0), (low, 0.0)):
            for left, right in ((1.0, 5.0), (10.0, 14.0)):
                pen.section((left, y), (right, y), (right, y + 4.0), (left, y + 4.0))
            for level in (y, y + 4.0):
                pen.line((5.0, level), (10.0, level))
            pen.section((5.2, y + up), (9.8, y + up), (9.8, y + 8.5 + up), (5.2, y + 8.5 + up))
    else:
        for y, apart in ((high, 2.5), (low, 0.1)):
            pen.section((1.0, y), (7.0, y), (7.0, y + 8.0), (1.0, y + 8.0))
            pen.section((7.0 + apart, y), (13.0 + apart, y), (13.0 + apart, y + 8.0), (7.0 + apart, y + 8.0))
    pen.arrow((16.4, high + 2.0), (16.4, low + 8.0))
    pen.right(5.5, low - 6.0)
