"""The sketch of marking out: the boards with their pieces as the layouts show them, and before them the coupon, which must fit."""

from collections.abc import Sequence
from math import hypot

import shapely
from shapely.affinity import affine_transform

from publisher.basics import Box, Point, remembered_few
from publisher.geometry import Part, polygon
from publisher.joints import UP
from publisher.material import Layout
from publisher.pages.instructions.part_art import middle_line, ring_points
from publisher.pages.instructions.part_sketches import FIELD, FIELD_TALL, FIELD_WIDE, CountedParts
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.instructions.sketch_places import put_bracket
from publisher.pages.sheet import set_apart
from publisher.pages.type import PICTURE_CONTOUR, PICTURE_DETAIL, PICTURE_OUTLINE

MOST_BOARDS = 2  # layouts that are shown
COUNT_LINES = 4  # of counts below the layouts
HOLE_SHOWN = 0.9  # mm: an opening that is drawn no narrower than that
COLUMN = 28.4  # mm at the left, for the coupon and the page of the layouts
ARROW_AT = 9.4  # mm up: the arrow from that page to the boards
FLAG_HIGH = 7.4  # mm over the boards, for the words that say which face is up
LETTER_CLEAR = 0.1  # mm from a letter to the nearest line, at least
AffineNumbers = tuple[float, float, float, float, float, float]  # a, b, d, e, x, y: as shapely takes them


def marking_out(
    pen: SketchPen,
    layouts: Sequence[Layout],
    parts: dict[str, Part],
    counted: CountedParts,
    coupon: str,
    pages: tuple[str, str],
) -> None:
    """The boards with all their pieces, as the layouts show them, which face is up, and how many of each; first the coupon, which must
    fit. ``pages``: on which the coupon is printed, and on which the layouts are."""
    check, page = pages
    shown = list(layouts)[:MOST_BOARDS]
    left = COLUMN + 1.4
    if coupon:
        coupon_tried(pen, coupon)
        pen.count(check, 1.7, 47.4, "left")
    layout_shown(pen)
    pen.count(page, 2.9, 9.0, "left")
    said = pen.broken([f"{count} × {part.letter}" for part, count in counted], FIELD_WIDE - left - 2.0, COUNT_LINES)
    foot = 4.6 * len(said) + 1.0
    more = 6.0 if len(layouts) > len(shown) else 0.0  # mm for the sign of those left out
    wide = (FIELD_WIDE - left - more) / len(shown)
    tops: list[float] = []
    for number, layout in enumerate(shown):
        box = Box(left + wide * number + 1.0, foot + 1.0, left + wide * (number + 1) - 1.0, FIELD_TALL - FLAG_HIGH)
        across, up = layout.sheet.width, layout.sheet.height
        wide_so, high_so = max(across, up), min(across, up)  # turned as the pages of the layouts turn it
        scale = min(box.width / wide_so, box.height / high_so)
        x = (box.left + box.right - wide_so * scale) / 2
        y = box.bottom
        put = (0.0, scale, -scale, 0.0, x, y + scale * across) if up > across else (scale, 0.0, 0.0, scale, x, y)
        board = affine_transform(shapely.box(0.0, 0.0, across, up), put)
        pen.line(*ring_points(board.exterior, 0.05), style=PICTURE_CONTOUR, closed=True)
        laid = [part for item in layout.items if (part := parts.get(item.part)) is not None]
        for part, shape in zip(laid, _apart(layout, *laid, put=put, scale=pen.scale), strict=True):
            _piece(pen, part, shape)
        tops.append(float(board.bounds[3]))
    put_bracket(pen, UP, FIELD, (left + 1.0, left + wide * len(shown) - 1.0), max(tops) + 0.8)
    if len(layouts) > len(shown):
        pen.count("…", FIELD_WIDE - 3.0, FIELD_TALL / 2)
    for number, line in enumerate(reversed(said)):
        pen.count(line, (left + FIELD_WIDE) / 2, 1.0 + 4.6 * number)


def layout_shown(pen: SketchPen) -> None:
    """Draw the page of the layouts, and an arrow from it to the boards."""
    pen.scene("layout_shown")
    pen.sheet(1.5, 0.5, 12.5, 13.0)
    pen.line((3.5, 2.0), (10.5, 2.0), (10.5, 7.2), (3.5, 7.2), style=PICTURE_DETAIL, closed=True)
    pen.arrow((14.0, ARROW_AT), (COLUMN, ARROW_AT))


@remembered_few
def _apart(layout: Layout, *laid: Part, put: AffineNumbers, scale: float) -> tuple[shapely.Polygon, ...]:
    """Return the pieces of a layout that are ``laid``, as they are ``put`` in a sketch of this ``scale`` (mm of the sketch), set apart so
    that each line of each is seen on the page. The sketch is drawn again whenever the number of a page in it is known better."""
    out, back = ((by, 0.0, 0.0, by, 0.0, 0.0) for by in (scale, 1.0 / scale))
    known = {part.id: part for part in laid}
    shapes = [
        affine_transform(affine_transform(polygon(known[item.part].outline, item.pose), put), out)
        for item in layout.items
        if item.part in known
    ]
    board = affine_transform(affine_transform(shapely.box(0.0, 0.0, layout.sheet.width, layout.sheet.height), put), out)
    moved = set_apart(shapes, PICTURE_DETAIL.width, board, PICTURE_CONTOUR.width)
    return tuple(affine_transform(shape, back) for shape in moved)


def _piece(pen: SketchPen, part: Part, shape: shapely.Polygon) -> None:
    """Draw a piece on a board as it is set in: its outline, its openings, narrow ones as one line, and its letter where it has room
    and no tool lies over it."""
    pen.line(*ring_points(shape.exterior, 0.05), style=PICTURE_DETAIL, closed=True)
    for hole in shape.interiors:
        if shapely.Polygon(hole).buffer(-HOLE_SHOWN / 2).area > 0.0:
            pen.line(*ring_points(hole, 0.05), style=PICTURE_DETAIL, closed=True)
        else:
            pen.line(*middle_line(hole), style=PICTURE_DETAIL)
    circle = shapely.maximum_inscribed_circle(shape, 0.1)
    (cx, cy), _ = circle.coords
    wide, high = pen.setter.width(part.letter, pen.note) / pen.scale, pen.setter.cap(pen.note) / pen.scale
    word = shapely.box(cx - wide / 2, cy - high / 2, cx + wide / 2, cy + high / 2).buffer(LETTER_CLEAR)
    under = any(word.intersects(tool) for tool in pen.taken)  # the knife at the coupon reaches over the board
    if circle.length >= hypot(wide, high) / 2 + LETTER_CLEAR and not under:
        pen.words(part.letter, float(cx), float(cy) - high / 2, "centre")


def coupon_tried(pen: SketchPen, coupon: str) -> None:
    """Draw the coupon, the first thing that is cut: printed on its page, on a scrap of board with a knife at its line, and its pieces
    before and when one is in the other, ticked."""
    pen.scene(f"coupon_{coupon}")
    pen.sheet(0.3, 37.0, 10.2, 51.4)
    for ring in _coupon_pieces(coupon, (2.4, 38.2), 0.2):
        pen.line(*ring, style=PICTURE_DETAIL, closed=True)
    pen.arrow((10.8, 44.0), (14.6, 44.0))
    scrap = ((15.2, 37.0), (COLUMN - 0.4, 37.0), (COLUMN - 0.4, 51.4), (15.2, 51.4))
    pen.line(*scrap, style=PICTURE_DETAIL, closed=True)
    outer, *slots = _coupon_pieces(coupon, (17.2, 38.2), 0.32)
    plates, holes = ([outer, slots[0]], slots[1:]) if coupon == "slot" else ([outer], [])
    pen.hatched(shapely.Polygon(scrap).difference(shapely.union_all([*map(shapely.Polygon, plates)])).buffer(-0.3))
    for ring in (*plates, *holes):
        pen.line(*ring, style=PICTURE_CONTOUR, closed=True)
    pen.knife((26.2, 43.4), -70.0)
    pen.arrow((21.4, 36.4), (21.4, 32.8))
    for left, home in ((0.5, False), (15.0, True)):
        _slot_tried(pen, left, home) if coupon == "slot" else _step_tried(pen, left, home)
    pen.right(COLUMN - 4.6, 26.4)
    pen.arrow((7.0, 17.0), (7.0, 13.6))


def _coupon_pieces(coupon: str, at: Point, scale: float) -> list[tuple[Point, ...]]:
    """Return the outlines of the coupon as they are printed, one over another: the tab, the plate and its slot, or the step."""
    tab = ((0, 0), (28, 0), (28, 13), (21, 13), (21, 18), (7, 18), (7, 13), (0, 13))
    plate, slot = ((0, 22), (28, 22), (28, 40), (0, 40)), ((7, 29), (21, 29), (21, 34), (7, 34))
    step = ((0, 8), (28, 8), (28, 26), (14, 26), (14, 19), (0, 19))
    rings = (tab, plate, slot) if coupon == "slot" else (step,)
    return [tuple((at[0] + scale * x, at[1] + scale * y) for x, y in ring) for ring in rings]


def _slot_tried(pen: SketchPen, left: float, home: bool) -> None:
    """Draw the plate as it lies and the tab over its slot, with an arrow, or in it."""
    low, thick = 18.0, 1.4
    face = ((left, low), (left + 9.0, low), (left + 12.6, low + 4.4), (left + 3.6, low + 4.4))
    front = ((left, low - thick), (left + 9.0, low - thick), (left + 9.0, low), (left, low))
    side = ((left + 9.0, low - thick), (left + 12.6, low + 4.4 - thick), (left + 12.6, low + 4.4), (left + 9.0, low))
    for ring in (face, front, side):
        pen.white(*ring)
        pen.line(*ring, style=PICTURE_OUTLINE, closed=True)
    slot = ((left + 3.7, low + 1.6), (left + 7.9, low + 1.6), (left + 8.9, low + 2.8), (left + 4.7, low + 2.8))
    pen.line(*slot, style=PICTURE_OUTLINE, closed=True)
    up = low + (2.2 if home else 7.0)
    tab = (
        (left + 4.2, up), (left + 8.4, up), (left + 8.4, up + 1.8), (left + 10.4, up + 1.8), (left + 10.4, up + 6.0),
        (left + 2.2, up + 6.0), (left + 2.2, up + 1.8), (left + 4.2, up + 1.8),
    )  # fmt: skip
    seen = (tab[7], tab[2], *tab[3:7]) if home else tab  # of what is in its slot the tab is not seen
    pen.white(*seen)
    pen.line(*seen, style=PICTURE_CONTOUR, closed=True)
    if not home:
        pen.arrow((left + 1.0, up + 5.0), (left + 1.0, up - 0.6))


def _step_tried(pen: SketchPen, left: float, home: bool) -> None:
    """Draw the step and a board over its lower tread, with an arrow, or level with the upper one."""
    low = 17.2
    step = ((0.0, 0.0), (12.0, 0.0), (12.0, 8.0), (6.2, 8.0), (6.2, 4.0), (0.0, 4.0))
    pen.section(*((left + x, low + y) for x, y in step))
    up = low + (4.0 if home else 9.6)
    board = ((left, up), (left + 6.0, up), (left + 6.0, up + 4.0), (left, up + 4.0))
    pen.section(*board)
    if not home:
        pen.arrow((left + 8.6, up + 3.4), (left + 8.6, up - 1.0))
