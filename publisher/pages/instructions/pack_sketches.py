"""The sketches of the acts that every pack begins with: print and measure, press a pile, tape, make templates."""

from collections.abc import Sequence
from math import hypot, radians, tan

import shapely
from shapely.affinity import affine_transform

from publisher.basics import Box, Point, record
from publisher.geometry import Part
from publisher.joints import UP
from publisher.pages.instructions.part_art import part_cells, ring_points
from publisher.pages.instructions.part_sketches import FIELD, FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen, along_arc
from publisher.pages.instructions.sketch_places import put_bracket, stand_tool
from publisher.pages.model import LineStyle
from publisher.pages.tiles import Cell, Tiling
from publisher.pages.type import CUT, PICTURE_CONTOUR, PICTURE_DETAIL, PICTURE_GHOST, PICTURE_OUTLINE

PILE_DRAWN = 10  # scraps of a pile that are drawn; of more, a gap stands for those left out
TILES_HIGH = 16.5  # mm for the tiles of a template, apart and taped
TILES_APART, TILES_LAID = 31.6, 8.0  # mm: over what they stand apart, and taped
PAPER_ROUND = 1.0  # mm of paper round a tile, where no seam is
ARROW_BESIDE = 4.0  # mm from the word that an arrow stands beside
CUT_OFF = 1.6  # mm of the paper beyond a trim line
TILES_SPREAD = 0.3  # share of a template's size by which its tiles stand apart
TAPE_ACROSS, TAPE_ALONG = 5.0, 2.6  # mm: a strip of tape across a seam, and along it
OVER_AWAY = 0.8  # mm from the tiles to the middle of the arrow by which one is laid over the other
OVER_ROUND = 3.6  # mm: its radius
TAPED_SHOWN = 2  # templates of which the tiles are drawn
PRINTS = 37.6  # mm up: where the prints lie that come down on card
ROUGH_APART = 1.2  # mm between the words of two pieces of paper
SQUARE_AT = 33.0  # mm: where the piece of paper with the square begins
SQUARE_ROOM = 4.8  # mm of it that the square takes
BESIDE_SQUARE = 3.6  # mm of it left free beside square and word
OVER_BOOKS = 55.0  # mm: where the arrow comes down on the books
UNDER_BOOKS = 22.5  # mm up: what is cut out keeps under the arrow that comes from the books
MOST_ROUGH = 6  # pieces of paper that are shown
ROUGH = (
    (0.0, 0.06),
    (0.42, 0.0),
    (1.0, 0.1),
    (0.94, 0.6),
    (1.0, 1.0),
    (0.5, 0.92),
    (0.06, 1.0),
)  # their outline, of width and height
MOST_CARDS = 6  # templates that are shown
FIRST_LEFT, THEN_LEFT = 2.0, 44.0  # mm: where the two printers stand
THEN_WIDE, THEN_LINES = 19.0, 5  # mm of the sheet that their pages' numbers may take, and lines of these
SQUARE_DRAWN = (7.5, 18.5, 13.0)  # mm: left, bottom and side of the square of the print check
LEAF_SLOPE, LEAF_WIDE, LEAF_HIGH, CARD_LOW = (
    4.0,
    27.0,
    8.0,
    24.5,
)  # mm: paper and card as they lie, and where the card does
GUIDE_SHOWN = 8.0  # mm of a bevel guide, up and along


def printing(pen: SketchPen, check: int, others: str, square: str, reading: str) -> None:
    """The print check out of a printer, its ``square`` measured both ways, and what that must read;
    then, where that is right, the other pages."""
    printed_first(pen)
    pen.count(str(check), FIRST_LEFT + 5.0, 35.4)
    x, y, side = SQUARE_DRAWN
    pen.words(square, x + side / 2, y + side / 2 - 1.0, "centre")
    pen.count(reading, 6.6, 5.2, "left")
    if others:
        printed_then(pen)
        lines = pen.broken(others.split(", "), THEN_WIDE, THEN_LINES, ", ")
        step = pen.small.leading / pen.scale
        for number, said in enumerate(lines):
            more = "," if number < len(lines) - 1 else ""
            pen.count(f"{said}{more}", THEN_LEFT + 13.0, 24.0 + step * ((len(lines) - 1) / 2 - number))


def printed_first(pen: SketchPen) -> None:
    """Draw a printer with the print check, and rules along two sides of its square, which is ticked."""
    pen.scene("printed_first")
    _printer(pen, FIRST_LEFT)
    x, y, side = SQUARE_DRAWN
    pen.line((x, y), (x + side, y), (x + side, y + side), (x, y + side), style=PICTURE_OUTLINE, closed=True)
    pen.rule(x - 1.0, y - 4.8, x + side + 6.5, y - 0.8)
    pen.rule(x + side + 0.8, y, x + side + 4.8, y + side + 5.0)
    pen.right(1.0, 4.6)


def printed_then(pen: SketchPen) -> None:
    """Draw the printer with the other pages, behind a tick and an arrow."""
    pen.scene("printed_then")
    _printer(pen, THEN_LEFT)
    pen.arrow((32.0, 26.0), (41.0, 26.0))
    pen.right(34.0, 29.0)


def _printer(pen: SketchPen, left: float) -> None:
    """Draw a printer at 100 %, and the page that comes out of it."""
    low, high = 40.0, 50.0
    pen.sheet(left + 2.0, 11.0, left + 24.0, low + 3.0)
    body = ((left, low), (left + 26.0, low), (left + 26.0, high), (left, high))
    pen.white(*body)
    pen.line(*body, style=PICTURE_CONTOUR, closed=True)
    pen.line((left + 1.0, low + 1.2), (left + 25.0, low + 1.2))
    pen.count("100 %", left + 13.0, low + 3.8)


def piling(pen: SketchPen, piles: Sequence[tuple[int, str]]) -> None:
    """Scraps that are pressed together in a pile, with a rule beside it: how many, and how high."""
    wide = FIELD_WIDE / len(piles)
    for number, (scraps, height) in enumerate(piles):
        left = wide * number + (wide - 40.0) / 2 if len(piles) == 1 else wide * number + 1.0
        long = min(20.0, wide - 16.0)
        shown = min(scraps, PILE_DRAWN)
        thick, low = 2.6, 8.0
        gap = 3.0 if scraps > shown else 0.0
        for scrap in range(shown):
            y = low + thick * scrap + (gap if scrap >= shown // 2 else 0.0)
            shift = 0.5 if scrap % 2 else 0.0
            pen.section(
                (left + shift, y), (left + long + shift, y), (left + long + shift, y + thick), (left + shift, y + thick)
            )
        top = low + thick * shown + gap
        if gap:
            for x in (left + 4.0, left + long - 4.0):
                for y in (0.6, 1.5, 2.4):
                    at = (x, low + thick * (shown // 2) + y)
                    pen.line(at, (at[0] + 0.1, at[1]), style=CUT)
        pen.arrow((left + long / 2, top + 9.0), (left + long / 2, top + 1.0))
        pen.rule(left + long + 2.0, low, left + long + 6.0, top + 6.0)
        pen.line((left + long + 1.0, top), (left + long + 8.5, top), style=CUT)
        pen.count(f"{scraps} scraps", left + long + 8.0, low + (top - low) / 2, "left")
        pen.right(left, 1.8)
        pen.count(height, left + 5.4, 2.4, "left")


def taping(pen: SketchPen, tilings: Sequence[Tiling], pages: Sequence[str], said: Sequence[str]) -> None:
    """The tiles of templates apart, with their trim lines; and laid over one another, mark on mark, with tape at both ends of each
    seam."""
    pen.scene("taped")
    shown = list(tilings)[:TAPED_SHOWN]
    wide = FIELD_WIDE / len(shown)
    for number, tiling in enumerate(shown):
        _tiles_of(pen, tiling, wide * number, wide * (number + 1))
    start, end = TILES_APART - 0.6, TILES_LAID + TILES_HIGH + 0.6
    if len(tilings) == len(shown) > 1 and max(map(pen.wide, (*pages, *said))) < wide - 6.0:
        pen.arrow((FIELD_WIDE / 2, start), (FIELD_WIDE / 2, end))
        for number, (where, each) in enumerate(zip(pages, said, strict=True)):
            for text, y in ((where, TILES_APART - 5.4), (each, 1.2)):
                pen.count(text, wide * (number + 0.5), y)
        return
    for where in pen.broken(pages, FIELD_WIDE - 26.0):  # and the arrow beside it, both in the middle
        half = (pen.wide(where) + ARROW_BESIDE) / 2
        pen.count(where, FIELD_WIDE / 2 - ARROW_BESIDE / 2, TILES_APART - 5.4)
        pen.arrow((FIELD_WIDE / 2 + half, start), (FIELD_WIDE / 2 + half, end))
    for each in pen.broken(said, FIELD_WIDE - 2.0, between=" · "):
        pen.count(each, FIELD_WIDE / 2, 1.2)


def _tiles_of(pen: SketchPen, tiling: Tiling, start: float, end: float) -> None:
    """Draw all tiles of a template apart, and under them laid over one another between two uprights, with tape at both ends of every
    seam."""
    cutting = tiling.cutting
    windows = [shapely.box(*cell.window.sides) for cell in cutting.cells]
    wide, high = _size(shapely.union_all(windows))
    most = end - start - (12.0 if end - start > FIELD_WIDE / 2 else 7.0)
    spread = [1.0 + (TILES_SPREAD if many > 1 else 0.0) for many in (cutting.columns, cutting.rows)]
    scale = min((most - 2 * PAPER_ROUND) / (wide * spread[0]), (TILES_HIGH - 2 * PAPER_ROUND) / (high * spread[1]))
    gaps = (TILES_SPREAD * wide / max(cutting.columns - 1, 1), TILES_SPREAD * high / max(cutting.rows - 1, 1))

    def put(shape: shapely.Geometry, at: Point, shift: Point = (0.0, 0.0)) -> shapely.Geometry:
        left, bottom, _, _ = shapely.union_all(windows).bounds
        return affine_transform(
            shape,
            (scale, 0.0, 0.0, scale, at[0] + (shift[0] - left) * scale, at[1] + (shift[1] - bottom) * scale),
        )

    middle = (start + end) / 2
    taken = (wide * spread[0] * scale, high * spread[1] * scale)
    high_at = (middle - taken[0] / 2, TILES_APART + 1.6 + (TILES_HIGH - taken[1]) / 2)
    papers = []
    for cell, window in zip(cutting.cells, windows, strict=True):
        shift = (gaps[0] * (cell.column - 1), gaps[1] * (cutting.rows - cell.row))  # rows are counted from the top
        papers.append(put(window, high_at, shift))
        _tile(pen, _paper(papers[-1], cell, tiling), put(tiling.laid.exterior.intersection(window), high_at, shift))
        for seam in tiling.seams:
            for mark in seam.marks if cell in (seam.first, seam.second) else ():
                _mark(pen, put(shapely.Point(mark), high_at, shift))
    _laid_over(pen, papers, tiling)
    low_at = (middle - wide * scale / 2, TILES_LAID + (TILES_HIGH - high * scale) / 2)
    for cell, window in zip(cutting.cells, windows, strict=True):  # each lies over those left of it and above it
        paper = _ring(_paper(put(window, low_at), cell, tiling).paper)
        pen.white(*paper)
        pen.line(*paper, style=PICTURE_DETAIL, closed=True)
    for piece in shapely.get_parts(put(shapely.intersection(tiling.laid, shapely.union_all(windows)), low_at)):
        if piece.geom_type == "Polygon":
            pen.line(*_ring(piece), style=PICTURE_CONTOUR, closed=True)
    for seam in tiling.seams:
        ends = [(seam.at, y) if seam.upright else (y, seam.at) for y in (seam.low, seam.high)]
        for at, other in (ends, ends[::-1]):
            _taped_end(pen, *(put(shapely.Point(one), low_at) for one in (at, other)))


def _laid_over(pen: SketchPen, papers: Sequence[shapely.Polygon], tiling: Tiling) -> None:
    """Draw an arrow from the tile that is trimmed at the first seam to the one that it is laid over: over them, or right of them."""
    seam = tiling.seams[0]
    under, over = (papers[tiling.cutting.cells.index(cell)].bounds for cell in (seam.first, seam.second))
    if seam.upright:
        high = min(over[3] + OVER_AWAY, TILES_APART + TILES_HIGH + 2.0 - OVER_ROUND)
        pen.turning(((under[2] + over[0]) / 2, high), OVER_ROUND, 0.0, 180.0)
    else:
        pen.turning((over[2] + OVER_AWAY, (under[1] + over[3]) / 2), OVER_ROUND, -90.0, 90.0)


def _taped_end(pen: SketchPen, end: shapely.Point, other: shapely.Point) -> None:
    """Draw a strip of tape across the end of a seam, which runs to ``other``; no longer along it than leaves both ends apart."""
    long = hypot(other.x - end.x, other.y - end.y)
    if long <= 0.0:
        return
    along = ((other.x - end.x) / long, (other.y - end.y) / long)
    half, deep = TAPE_ACROSS / 2, min(TAPE_ALONG, 0.4 * long)

    def at(far: float, aside: float) -> Point:
        return end.x + along[0] * far - along[1] * aside, end.y + along[1] * far + along[0] * aside

    ring = (at(0.0, -half), at(0.0, half), at(deep, half), at(deep, -half))
    pen.tape(*ring)
    pen.dotted((at(deep / 2, -half + 0.5), at(deep / 2, half - 0.5)))


@record
class _Tile:
    """A tile's paper in a sketch, and which of its sides are cut off along a trim line."""

    paper: shapely.Polygon
    trimmed: tuple[tuple[Point, Point], ...]
    plain: tuple[tuple[Point, Point], ...]


def _paper(window: shapely.Polygon, cell: Cell, tiling: Tiling) -> _Tile:
    """Return the paper of a tile: it ends at its seams, and is wider than what is drawn on it elsewhere."""
    over = {"right" if seam.upright else "bottom" for seam in tiling.seams if cell is seam.first}
    cut_off = {"left" if seam.upright else "top" for seam in tiling.seams if cell is seam.second}
    seamed = over | cut_off
    out = {side: 0.0 if side in seamed else PAPER_ROUND for side in ("left", "bottom", "right", "top")}
    left, bottom, right, top = window.bounds
    paper = Box(left - out["left"], bottom - out["bottom"], right + out["right"], top + out["top"])
    a, b, c, d = paper.corners()
    sides = {"bottom": (a, b), "right": (b, c), "top": (c, d), "left": (d, a)}
    trimmed = tuple(line for side, line in sides.items() if side in cut_off)
    return _Tile(shapely.box(*paper.sides), trimmed, tuple(line for line in sides.values() if line not in trimmed))


def _tile(pen: SketchPen, tile: _Tile, outline: shapely.Geometry) -> None:
    pen.white(*_ring(tile.paper))
    for side in tile.plain:
        pen.line(*side, style=PICTURE_DETAIL)
    for (ax, ay), (bx, by) in tile.trimmed:
        level = ay == by  # at the upper side: what is cut off lies over it, else at the left of it
        pen.hatched(
            shapely.box(*((ax, ay, bx, by + CUT_OFF) if level else (ax - CUT_OFF, min(ay, by), bx, max(ay, by))))
        )
        pen.trimmed((ax, ay), (bx, by))
    for piece in shapely.get_parts(shapely.line_merge(outline)):
        if piece.geom_type == "LineString":  # no line runs along a seam: it would be cut
            pen.line(*map(tuple, shapely.get_coordinates(piece.simplify(0.05)).tolist()), style=PICTURE_CONTOUR)


def _mark(pen: SketchPen, at: shapely.Point) -> None:
    pen.line(*along_arc((at.x, at.y), 1.1, 0.0, 345.0, 23), style=PICTURE_DETAIL, closed=True)
    pen.line((at.x - 1.6, at.y), (at.x + 1.6, at.y), style=PICTURE_DETAIL)
    pen.line((at.x, at.y - 1.6), (at.x, at.y + 1.6), style=PICTURE_DETAIL)


def making_cards(
    pen: SketchPen,
    parts: Sequence[Part],
    pages: str,
    thick: str,
    guide: float = 0.0,
    rough: Sequence[str] = (),
    square: str = "",
) -> None:
    """Prints that are glued on card, dried under books; then the cards that are cut out, with their letters; and a bevel guide of
    ``guide`` degrees (0: none). ``rough``: what is there in place of whole pages, cut out of them roughly before; ``square``: the side of
    the square that is glued with it, to be measured."""
    slope, wide, high = LEAF_SLOPE, LEAF_WIDE, LEAF_HIGH
    cards_glued(pen, thick)
    if rough:
        _rough_pieces(pen, rough, Box(1.0, PRINTS, 1.0 + wide, PRINTS + high), slope)
        if square:
            far = _with_square(pen, square)
    else:
        _leaf(pen, PRINTS, PICTURE_OUTLINE)
        pen.count(pages, 1.0 + (wide + slope) / 2, PRINTS + 2.8)
    ends = (1.0, far + slope) if rough and square else (1.0, 1.0 + wide + slope)
    put_bracket(pen, UP, FIELD, ends, PRINTS + high + 0.5)
    shown = list(parts)[:MOST_CARDS]
    if guide:
        level = min(GUIDE_SHOWN * tan(radians(guide)), GUIDE_SHOWN)
        foot = (FIELD_WIDE - level - 0.5, 6.0)
        pen.line(foot, (foot[0] + level, 6.0), (foot[0], 6.0 + level / tan(radians(guide))), style=CUT, closed=True)
        pen.count(f"{guide:g}°", foot[0] + level / 2, 0.8)
    aside = GUIDE_SHOWN + 2.0 if guide else 0.0
    arts = part_cells([(part, 1) for part in shown], Box(0.0, 0.0, FIELD_WIDE - 7.0 - aside, UNDER_BOOKS), 0.6)
    for art in arts:
        art.outline(pen, CUT, CUT, narrow=PICTURE_OUTLINE)
        art.counted(pen)
    if len(parts) > len(shown):
        pen.count("…", FIELD_WIDE - 4.0, 8.0)
    if arts:  # with compass strips alone no template is cut out
        corners = [at for art in reversed(arts) for at in _right_points(art.shape)]
        stand_tool(pen, pen.knife, corners, FIELD)
    for art in arts:
        art.lettered(pen)


def cards_glued(pen: SketchPen, thick: str = "") -> None:
    """Draw card, how ``thick`` it is, glue and the way that the prints come down on it; then both under books, and the way to the
    templates."""
    pen.scene("cards_glued")
    _leaf(pen, CARD_LOW, CUT)
    if thick:
        pen.count(thick, (LEAF_WIDE + LEAF_SLOPE) / 2, CARD_LOW + 1.2)
    for x in (1.0, 1.0 + LEAF_WIDE):
        pen.line((x, PRINTS - 0.4), (x, 30.0 if x < 2.0 else 33.0), style=PICTURE_GHOST)
    pen.arrow((8.0, PRINTS - 0.6), (8.0, 33.0))
    pen.glue_stick(21.0, 29.3)
    pen.arrow((35.0, 33.0), (41.0, 33.0))
    pen.line((44.0, 25.9), (66.0, 25.9), style=CUT)
    pen.line((44.0, 26.8), (66.0, 26.8))  # clear of the card and of the books: nearer lines close up
    pen.books(45.0, 27.8, 20.0)
    pen.arrow((OVER_BOOKS, 25.3), (OVER_BOOKS, UNDER_BOOKS))


def _leaf(pen: SketchPen, y: float, style: LineStyle) -> None:
    """Draw paper or card as it lies."""
    wide, slope = LEAF_WIDE, LEAF_SLOPE
    ring = ((1.0, y), (1.0 + wide, y), (1.0 + wide + slope, y + LEAF_HIGH), (1.0 + slope, y + LEAF_HIGH))
    pen.white(*ring)
    pen.line(*ring, style=style, closed=True)
    pen.taken.append(shapely.Polygon(ring))  # a knife beside it hides no side of it


def _with_square(pen: SketchPen, said: str) -> float:
    """Draw the piece of paper with the square, which is drawn where the piece ends beside the books; return where its lower side ends."""
    slope, high, wide = LEAF_SLOPE, LEAF_HIGH, pen.wide(said)
    both = SQUARE_AT + SQUARE_ROOM + wide + BESIDE_SQUARE
    shown = both + 0.6 * slope < OVER_BOOKS - 0.5  # the arrow begins lower than the paper ends
    aside = SQUARE_ROOM if shown else 0.0
    far = both if shown else SQUARE_AT + max(high, wide + 5.0)
    _rough_pieces(pen, [said], Box(SQUARE_AT, PRINTS, far, PRINTS + high), slope, aside)
    if shown:
        _square_as_it_lies(pen, (SQUARE_AT + 1.8 + slope * 0.3, PRINTS + high * 0.3), high * 0.4, slope * 0.4)
    return far


def _square_as_it_lies(pen: SketchPen, at: Point, side: float, slope: float) -> None:
    """Draw the square that is measured: from ``at``, its upper side ``slope`` mm farther right."""
    (x, y), top = at, at[1] + side
    pen.line(at, (x + side, y), (x + side + slope, top), (x + slope, top), style=PICTURE_DETAIL, closed=True)


def _rough_pieces(pen: SketchPen, said: Sequence[str], box: Box, slope: float, aside: float = 0.0) -> None:
    """Draw pieces of paper in a row, as they lie, each cut out roughly, with its word: a box whose upper side is ``slope`` mm farther
    right. ``aside``: mm left free before a word."""
    most = max(2, min(MOST_ROUGH, int(box.width // (max(map(pen.wide, said)) + ROUGH_APART))))
    texts = [*said[: most - 1], "…"] if len(said) > most else list(said)
    room = box.width / len(texts)
    for number, text in enumerate(texts):
        left = box.left + room * number + 0.3
        ring = [
            (left + across * (room - 0.6) + up * slope, box.bottom + up * box.height)
            for across, up in (ROUGH if number % 2 else [(1.0 - x, y) for x, y in reversed(ROUGH)])
        ]
        pen.line(*ring, closed=True)
        pen.count(text, left + (room - 0.6 + aside) / 2 + slope / 2, box.bottom + 2.8)


def _right_points(shape: shapely.Polygon) -> list[Point]:
    """Return points of an outline at its right, of which a tool may stand on one: the highest first."""
    _, bottom, right, top = shape.bounds
    ring = [(float(x), float(y)) for x, y in shape.exterior.coords[:-1]]
    found = {min(ring, key=lambda at: hypot(at[0] - right, at[1] - y)) for y in (top, (top + bottom) / 2, bottom)}
    return sorted(found, key=lambda at: -at[1])


def _size(shape: shapely.Geometry) -> tuple[float, float]:
    left, bottom, right, top = shape.bounds
    return right - left, top - bottom


def _ring(shape: shapely.Geometry) -> tuple[Point, ...]:
    return ring_points(shape.exterior, 0.05)
