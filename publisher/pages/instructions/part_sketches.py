"""The sketches of what is done to parts: their own outlines with letters and counts, and the tool at the first of them."""

from collections.abc import Callable, Sequence
from itertools import islice, pairwise
from math import hypot

import shapely
from shapely.affinity import translate
from shapely.ops import substring

from publisher.basics import Box, Point
from publisher.basics.wording import said_angle
from publisher.geometry import Edge, Part
from publisher.joints import SQUARE_ENOUGH, STEEPEST_DRAWN, UP, pricked_marks
from publisher.pages.instructions.act_sketches import bevelling, kept_face
from publisher.pages.instructions.part_art import (
    BOARD_ROUND,
    PartArt,
    board_round,
    heaviest,
    middle_line,
    part_cells,
    ring_points,
)
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.instructions.sketch_places import put_bracket, put_flag, stand_tool
from publisher.pages.model import LineStyle
from publisher.pages.type import (
    CUT,
    DRAW,
    PICTURE_ADDED_CONTOUR,
    PICTURE_CONTOUR,
    PICTURE_DETAIL,
    PICTURE_GHOST,
    PICTURE_OUTLINE,
)

FIELD_WIDE, FIELD_TALL = 72.0, 52.0
FIELD = Box(0.0, 0.0, FIELD_WIDE, FIELD_TALL)
TIP_ROUNDED = 1.5  # times as far from a corner as from a side, at most: round a sharp tip a pencil stays by the card
OUTSIDE_CARD = 1.1  # mm in the sketch: how far a pencil line lies outside its card
PENCIL_SHOWN = 12.0  # mm of a pencil that stands upright over what it traces
NOTCH_FILLED = 0.005  # of a card, by which a line round it may fill its notches
PENCIL_LINES = (
    (OUTSIDE_CARD, CUT),
    (0.7, PICTURE_OUTLINE),
)  # mm outside a card, and how: finer where notches are narrow
NOTCH_CLEAR = 0.3  # mm on either side of a notch, for the line itself
DONE = 0.7  # share of the way round a card that a pencil has run
BESIDE_EDGE = 1.2  # mm in the sketch, by which a line within a card is told from its edge
NEAR_EDGE = 0.2  # mm in the sketch: how near to an edge a line lies that is its own
PRICKED_TALL, PRICKED_PENCIL = 13.6, 9.5  # mm at the foot for how lines are pricked, and of the pencil over them then
PRICKED_OUT, PRICK = 5.4, 0.6  # mm of a pin that goes through a card, and half of how wide a prick is drawn
BEVEL_AT = (9.0, 24.0)  # mm: where the sketch of the cut lies over the parts that are bevelled
BOTTLE_HIGH = 12.0  # mm over the place that it points to, that a bottle needs
TOOL_ROOM = 8.0  # mm at the top, for the handle of a tool and for words

CountedParts = Sequence[tuple[Part, int]]
PartSketch = Callable[[SketchPen], None]


def tracing_round(pen: SketchPen, parts: CountedParts, *, pricked: bool = False) -> None:
    """Cards on a board, a pencil that runs round the first of them and has run round the others, and which side is up. ``pricked``: both
    ends of a line within a card are pricked through it, and at the foot it is drawn from prick to prick once the card is gone."""
    carded = [part for part, _ in parts if pricked and pricked_marks(part)]
    low, tall = (PRICKED_TALL, PRICKED_PENCIL) if carded else (0.5, PENCIL_SHOWN)
    below = FIELD_TALL - tall - 1.0
    pen.line((0.5, low), (FIELD_WIDE - 0.5, low), (FIELD_WIDE - 0.5, below), (0.5, below), style=DRAW, closed=True)
    arts = part_cells(parts, Box(1.5, low + 0.5, FIELD_WIDE - 1.5, below - 0.5), 2.0)
    tip: Point = (0.0, 0.0)
    ways = [way for way in PENCIL_LINES if all(_follows(art.shape, way[0]) for art in arts[1:])] or PENCIL_LINES
    for number, art in enumerate(arts):
        art.outline(pen, PICTURE_OUTLINE, PICTURE_OUTLINE)
        line = _round_card(art.shape, OUTSIDE_CARD)
        if number:
            for away, style in islice((way for way in ways if _follows(art.shape, way[0])), 1):
                pen.line(*ring_points(_round_card(art.shape, away)), style=style, closed=True)
        else:
            done = _run(line, _highest(line), DONE)
            pen.line(*done, style=PICTURE_ADDED_CONTOUR)
            pen.line(*ring_points(line), style=PICTURE_GHOST, closed=True)
            tip = done[0]
        for hole in art.shape.interiors:
            inner = shapely.Polygon(hole).buffer(-OUTSIDE_CARD / 2)
            if not inner.is_empty and inner.geom_type == "Polygon":
                pen.line(*ring_points(inner.exterior), style=PICTURE_DETAIL, closed=True)
            else:  # too narrow for both: the pencil's line alone
                pen.line(*middle_line(hole), style=CUT)
        art.counted(pen)
    if carded:
        _prick(pen, arts)
        pricking(pen)
    pen.pencil(tip, 0.0, tall)  # upright: one that leans is crossed out where pages say how it is done
    for art in arts:
        art.lettered(pen)
    if len(arts) > 1:  # all that lies on the board
        put_bracket(pen, UP, FIELD, (0.5, FIELD_WIDE - 0.5), below + 0.8)
    else:
        put_flag(pen, UP, FIELD, [art.shape for art in arts])


def _prick(pen: SketchPen, arts: Sequence[PartArt]) -> None:
    """Draw pricks at both ends of the longest line that a card has within; rather on another than the one that a pencil runs round."""
    lines = [(number > 0, line, art.shape) for number, art in enumerate(arts) for line in _pricked_lines(art)]
    if not lines:
        return
    _, line, _ = max(lines, key=lambda one: (_seen(*one[1:]), one[0], one[1].length))
    ends = [(float(x), float(y)) for x, y in line.coords]
    pen.line(*ends, style=PICTURE_GHOST)
    for end in ends:
        _pricked_at(pen, end)


def _seen(line: shapely.LineString, shape: shapely.Polygon) -> bool:
    """Tell whether a line is seen for itself: it does not run along an edge of its card."""
    return bool(shapely.distance(line.interpolate(0.5, normalized=True), shape.exterior) > BESIDE_EDGE)


def _pricked_at(pen: SketchPen, at: Point) -> None:
    dot = shapely.Point(at).buffer(PRICK, quad_segs=4)
    pen.blackened(dot)
    pen.taken.append(dot)


def pricking(pen: SketchPen) -> None:
    """Draw a card in section on its board: one end of a line has its hole, through the other one a pin is pushed; then the board without
    card or pins from above, and a pencil that draws the line along a rule from hole to hole."""
    pen.scene("pricking")
    low, top, over = 0.5, 5.4, 6.8
    done, pushed = 7.0, 19.0
    pen.section((0.5, low), (29.0, low), (29.0, top), (0.5, top))
    pen.section((3.0, top), (26.5, top), (26.5, over), (3.0, over))
    pen.line((done, over), (done, top - 2.4), style=CUT)
    pen.pin((pushed, top - 2.4), 0.0, PRICKED_OUT + 2.4, hidden=over - top + 2.4)
    pen.arrow((pushed + 3.2, over + 5.8), (pushed + 3.2, over + 0.8))
    pen.arrow((31.0, 5.0), (37.0, 5.0))
    left, right, level = 44.0, 66.0, 5.2
    at = left + DONE * (right - left)
    pen.line((39.0, low), (FIELD_WIDE - 0.5, low), (FIELD_WIDE - 0.5, 11.6), (39.0, 11.6), style=DRAW, closed=True)
    foot, upper = low + 1.5, level - 0.8  # nearer to another line they would close up in small sketches
    pen.section((41.0, foot), (69.5, foot), (69.5, upper), (41.0, upper))
    for x in range(44, 68, 3):
        pen.line((x, foot), (x, foot + 1.2), style=PICTURE_DETAIL)
    pen.line((left, level), (at, level), style=PICTURE_ADDED_CONTOUR)
    pen.line((at, level), (right, level), style=PICTURE_GHOST)
    for end in (left, right):
        _pricked_at(pen, (end, level))
    pen.pencil((at, level), 0.0, PRICKED_TALL - level)
    pen.parts.pop()  # this pencil belongs to the scene: it is not the one that stands at a card


def _pricked_lines(art: PartArt) -> list[shapely.LineString]:
    """Return the straight lines within a card that are pricked through, in the sketch."""
    return [art.line_of(mark.path) for mark in pricked_marks(art.part)]


def _round_card(shape: shapely.Polygon, away: float) -> shapely.LinearRing:
    ring = shapely.LinearRing(shape.buffer(away, join_style="mitre").exterior.coords)
    if float(shapely.distance(shapely.points(ring.coords), shape).max()) > TIP_ROUNDED * away:
        return shapely.LinearRing(shape.buffer(away).exterior.coords)
    return ring


def _follows(shape: shapely.Polygon, away: float) -> bool:
    """Tell whether a pencil's line so far outside a card goes into every notch: where one closes up it would show another piece."""
    whole, far = shapely.Polygon(shape.exterior), away + NOTCH_CLEAR
    closed = whole.buffer(far, join_style="mitre").buffer(-far, join_style="mitre")
    return bool(shapely.area(closed.difference(whole)) < NOTCH_FILLED * whole.area)


def cutting_openings(pen: SketchPen, parts: CountedParts, *, knife: bool = True) -> None:
    """Openings and slots, which are hatched: they fall out; the outlines are not cut yet. A ``knife`` that begins in a corner."""
    below = FIELD_TALL - TOOL_ROOM
    holed = [one for one in parts if one[0].outline.holes or one[0].openings] or list(parts)
    arts = part_cells(holed, Box(1.0, 0.0, FIELD_WIDE - 1.0, below), 3.4)
    for art in arts:
        board_round(pen, art)
        pen.line(*ring_points(art.shape.exterior), style=PICTURE_GHOST, closed=True)
        for hole in _open(art):
            pen.hatched(shapely.Polygon(hole).buffer(-0.3))
        for hole in art.shape.interiors:
            pen.line(*ring_points(hole), style=PICTURE_ADDED_CONTOUR, closed=True)
        for line in _sides_of(art, _notches(art)):
            pen.line(*line, style=PICTURE_ADDED_CONTOUR)
        art.counted(pen)
    holes = sorted(_open(arts[0]), key=lambda ring: -shapely.Polygon(ring).area)
    corners = []
    for hole in holes:
        _, _, right, top = shapely.Polygon(hole).bounds
        corners.append(min(hole, key=lambda point: hypot(point[0] - right, point[1] - top)))
    put_flag(pen, UP, FIELD, [art.shape for art in reversed(arts)], BOARD_ROUND)
    if knife:
        stand_tool(pen, pen.knife, corners, FIELD)
    for art in arts:
        art.lettered(pen)


def cutting_outlines(
    pen: SketchPen,
    parts: CountedParts,
    later: frozenset[str] = frozenset(),
    opened: frozenset[str] = frozenset(),
    *,
    knife: bool = True,
) -> None:
    """Outlines, which are cut now, openings open already; a ``knife`` along a rule at a straight edge, or on a curve. Edges that are
    bevelled ``later`` are dashed, as they are not cut yet: their board stays. Where that is all edges no knife is in hand. The openings at
    edges of parts that are ``opened`` before are thin: nothing of them is cut now."""
    below = FIELD_TALL - TOOL_ROOM
    arts = part_cells(parts, Box(1.0, 0.0, FIELD_WIDE - 1.0, below), 2.6)
    left = [_bevels(art.part) if art.part.id in later else [] for art in arts]
    heavy = heaviest(pen, arts, (PICTURE_ADDED_CONTOUR, PICTURE_CONTOUR, PICTURE_OUTLINE))
    for art, uncut in zip(arts, left, strict=True):
        gone = _notches(art) if art.part.id in opened else shapely.MultiPolygon()
        board_round(pen, art)
        stays = [art.shape, gone, *(_beside(art, edge) for edge in uncut)]
        pen.hatched(_board(art).difference(shapely.union_all(stays)))
        _cut_now(pen, art, uncut, gone, heavy)
        art.counted(pen)
    put_flag(pen, UP, FIELD, [art.shape for art in reversed(arts)], BOARD_ROUND)
    sides = (_longest_side(art.shape, _lines(art, uncut)) for art, uncut in zip(arts, left, strict=True))
    for (ax, ay), (bx, by) in islice((side for side in sides if knife and side is not None), 1):
        level = abs(bx - ax) >= abs(by - ay)
        shares = (0.6, 0.8, 0.4, 1.0, 0.0) if level else (0.0, 0.5, 1.0) if ay > by else (1.0, 0.5, 0.0)
        stand_tool(pen, pen.knife, [(ax + share * (bx - ax), ay + share * (by - ay)) for share in shares], FIELD)
    for art in arts:
        art.lettered(pen)


def _lines(art: PartArt, edges: Sequence[Edge]) -> shapely.Geometry:
    """Return edges of a part in the sketch."""
    return shapely.MultiLineString([(art.carry(edge.start), art.carry(edge.end)) for edge in edges])


def _beside(art: PartArt, edge: Edge) -> shapely.Geometry:
    """Return the board outside an edge, as far as it is drawn."""
    line = shapely.LineString([art.carry(edge.start), art.carry(edge.end)])
    return line.buffer(BOARD_ROUND, cap_style="flat")


def _cut_now(pen: SketchPen, art: PartArt, uncut: Sequence[Edge], gone: shapely.MultiPolygon, heavy: LineStyle) -> None:
    """Draw the outline of a part as it is cut now: ``heavy``, dashed where it is still ``uncut``, thin where an opening is ``gone``."""
    if not uncut and gone.is_empty:
        art.outline(pen, heavy, PICTURE_OUTLINE)
        return
    pen.white(*ring_points(art.shape.exterior))
    for hole in art.shape.interiors:
        pen.line(*ring_points(hole), style=PICTURE_OUTLINE, closed=True)
    rest = art.shape.exterior.difference(shapely.union(_lines(art, uncut), gone.boundary).buffer(NEAR_EDGE))
    for line in _runs(rest):
        pen.line(*line, style=heavy)
    for line in _sides_of(art, gone):
        pen.line(*line, style=PICTURE_OUTLINE)
    for edge in uncut:
        pen.line(art.carry(edge.start), art.carry(edge.end), style=PICTURE_GHOST)


def _notches(art: PartArt) -> shapely.MultiPolygon:
    """Return the openings at the edge of a part, in the sketch."""
    closed = [shapely.Polygon(hole) for hole in art.shape.interiors]
    own = [shapely.Polygon(ring) for ring in _open(art)]
    return shapely.MultiPolygon([one for one in own if not any(map(one.equals, closed))])


def _sides_of(art: PartArt, notches: shapely.MultiPolygon) -> list[tuple[Point, ...]]:
    """Return the sides of openings at an edge: what of them the piece has, not the edge at which they are open."""
    return _runs(art.shape.exterior.intersection(notches.boundary.buffer(NEAR_EDGE)))


def _runs(lines: shapely.Geometry) -> list[tuple[Point, ...]]:
    """Return lines joined, without specks."""
    runs = [one for one in shapely.get_parts(lines) if one.geom_type == "LineString"]
    joined = shapely.get_parts(shapely.line_merge(shapely.union_all(runs)))
    return [tuple((float(x), float(y)) for x, y in one.coords) for one in joined if one.length > 2 * NEAR_EDGE]


def bevelling_edges(pen: SketchPen, parts: CountedParts) -> None:
    """Parts with the edges that are bevelled, thick, and over them the knife that leans along its guide, with the angle."""
    steep = [(part, count) for part, count in parts if _bevels(part)] or list(parts)
    edges = [edge for part, _ in steep for edge in _bevels(part)]
    arts = part_cells(steep, Box(1.0, 0.0, FIELD_WIDE - 1.0, 23.0), 0.6)
    for art in arts:
        art.outline(pen, PICTURE_OUTLINE)
        for edge in _bevels(art.part):
            pen.line(art.carry(edge.start), art.carry(edge.end), style=PICTURE_ADDED_CONTOUR)
        art.lettered(pen)
        art.counted(pen)
    low = SketchPen(pen.setter, pen.on_page(BEVEL_AT), pen.scale, pen.small, pen.note)
    angles = sorted({said_angle(edge.bevel) for edge in edges})
    outwards, steepest = all(edge.bevel <= 0.0 for edge in edges), angles[-1] if angles else STEEPEST_DRAWN
    bevelling(low, outwards, steepest)
    pen.drawn += low.drawn
    pen.parts += low.parts
    pen.said += (translate(one, *BEVEL_AT) for one in low.said)
    pen.taken += (translate(one, *BEVEL_AT) for one in low.taken)
    for said in pen.broken([f"{angle:g}°" for angle in angles], 40.0, between=" / "):
        pen.count(said, 20.0, FIELD_TALL - 3.0)
    under = Box(FIELD.left, FIELD.bottom, FIELD.right, FIELD_TALL - 4.6)  # no line from it crosses the angles
    put_flag(pen, UP, under, [translate(shapely.box(*kept_face(outwards, steepest).sides), *BEVEL_AT)])


def glueing(pen: SketchPen, parts: CountedParts, *, bottle: bool = True) -> None:
    """Parts with the edges that take glue, thick and dotted with drops: those with tabs. ``bottle``: it comes out of one."""
    tabbed = [one for one in parts if _tabs(one[0])]
    arts = part_cells(tabbed, Box(1.0, 0.0, FIELD_WIDE - 12.0, FIELD_TALL - 6.0), 2.4)
    for art in arts:
        art.outline(pen, PICTURE_OUTLINE)
        for run in _tabs(art.part):
            pen.line(*map(art.carry, run), style=PICTURE_ADDED_CONTOUR)
        art.lettered(pen)
        art.counted(pen)
    if not bottle:
        return
    first = arts[0]
    ends = [point for run in _tabs(first.part) for point in map(first.carry, run)]
    low = [end for end in ends if end[1] <= FIELD_TALL - BOTTLE_HIGH] or [min(ends, key=lambda end: end[1])]
    right = max(low)
    pen.bottle(right[0] + 3.0, right[1] + 1.0)
    pen.line((right[0] + 2.4, right[1] + 0.6), right, style=PICTURE_DETAIL)


def _tabs(part: Part) -> list[tuple[Point, ...]]:
    """Return the stretches of a part's outline that are tabs, or lie between two tabs of one edge."""
    names = {
        stretch.name.removesuffix(".tab") for stretch in part.outline.outer.stretches() if stretch.name.endswith(".tab")
    }
    return [
        tuple(stretch.points)
        for stretch in part.outline.outer.stretches()
        if stretch.name.removesuffix(".tab") in names
    ]


def _bevels(part: Part) -> list[Edge]:
    return [edge for edge in part.edges if abs(edge.bevel) > SQUARE_ENOUGH]


def _open(art: PartArt) -> list[tuple[Point, ...]]:
    """Return the rings of what falls out of a part: closed openings and slots, and openings at its edge, in the sketch."""
    rings = [ring_points(hole) for hole in art.shape.interiors]
    closed = {tuple(opening.ring.points) for opening in art.part.openings}
    own = [tuple(art.carry(point) for point in ring) for ring in closed]
    shape = art.shape
    return rings + [
        ring
        for ring in own
        if not any(shapely.Polygon(ring).equals_exact(shapely.Polygon(r), 0.2) for r in rings)
        and shapely.Polygon(ring).intersection(shape).area < 0.2 * shapely.Polygon(ring).area
    ]


def _board(art: PartArt) -> shapely.Polygon:
    left, bottom, right, top = art.shape.bounds
    return shapely.box(left - 2.4, bottom - 2.4, right + 2.4, top + 2.4)


def _longest_side(shape: shapely.Polygon, uncut: shapely.Geometry) -> tuple[Point, Point] | None:
    """Return the longest straight side in the upper half of a shape, else of all, that is not ``uncut``; None where all sides are."""
    ring = [(float(x), float(y)) for x, y in shape.exterior.simplify(0.1).coords]
    middle = (shape.bounds[1] + shape.bounds[3]) / 2
    near = uncut.buffer(NEAR_EDGE)
    cut = [side for side in pairwise(ring) if not near.covers(shapely.LineString(side))]
    sides = [(a, b) for a, b in cut if (a[1] + b[1]) / 2 >= middle - 0.1]
    return max(sides or cut, key=lambda s: hypot(s[1][0] - s[0][0], s[1][1] - s[0][1]), default=None)


def _highest(ring: shapely.LinearRing) -> Point:
    return max(ring_points(ring), key=lambda point: (round(point[1], 2), point[0]))


def _run(ring: shapely.LinearRing, start: Point, share: float) -> tuple[Point, ...]:
    """Return the stretch of a ring that leads to a point, so much of its length."""
    points = [(float(x), float(y)) for x, y in ring.coords[:-1]]
    at = min(range(len(points)), key=lambda number: hypot(points[number][0] - start[0], points[number][1] - start[1]))
    open_ring = shapely.LineString([*points[at:], *points[: at + 1]])
    run = substring(open_ring, 0.0, share, normalized=True)
    return tuple((float(x), float(y)) for x, y in run.coords)
