"""A pattern drawn on a part: lines over its box, clipped to the board between outline and openings."""

from collections.abc import Iterator, Sequence

import numpy as np
import shapely

from publisher.basics import SAME_POINT, Finding, LineKind, Point, polyline
from publisher.design import PartPlan
from publisher.geometry.model import Edge, Mark
from publisher.geometry.registry import Values, checked, mm
from publisher.geometry.rules import SURFACE_HEAVY, SURFACE_TOO_FINE
from publisher.geometry.surfaces import (
    ashlar,
    brick,
    cobbles,
    edge_joints,
    flagstones,
    hex_grid,
    planks,
    shingles,
    square_grid,
)
from publisher.geometry.surfaces.pattern import Ground, LineFamily, Lines, Pattern

PATTERNS: tuple[Pattern, ...] = (
    brick.PATTERN,
    ashlar.PATTERN,
    edge_joints.PATTERN,
    planks.PATTERN,
    flagstones.PATTERN,
    cobbles.PATTERN,
    shingles.PATTERN,
    square_grid.PATTERN,
    hex_grid.PATTERN,
)
SHORTEST_LINE = 1.0  # mm: what is left of a joint and shorter than this is not drawn
SHORT_JOINT = 0.6  # of a joint between two courses: less of it that a cut leaves is not drawn
MOST_UNITS = 2500  # bricks on one part: more than this nobody draws, and a page prints slowly
MOST_PATTERN_POINTS = 3000  # path operators of one part's pattern; a page may hold 4000 with all else that stands on it
FOOT = ("bottom", "eave")  # edges on which rows begin


def surface_marks(
    plan: PartPlan, body: shapely.Geometry, words: Sequence[Mark] = (), edges: Sequence[Edge] = ()
) -> tuple[tuple[Mark, ...], tuple[Finding, ...]]:
    """Return the marks (mm) of the part's surface pattern, or the findings that say why there are none.

    The pattern leaves a place free for each of the ``words``, so that they can be read. ``edges``: rows begin on the
    nominal bottom edge or eave, so that they meet round corners whatever the joins take off.
    """
    surface = plan.surface
    if surface is None or body.is_empty:
        return (), ()
    pattern = next(p for p in PATTERNS if p.info.name == surface.pattern)
    name = f"surface {surface.pattern}"
    values, found = checked(name, pattern.info.parameters, surface.parameters, f"part {plan.id}", surface.place)
    found = found or tuple(pattern.check(values))
    if found:
        return (), found
    ground = _ground(plan, body, edges)
    found = tuple(_too_fine(pattern, values, ground, plan.id))
    if found:
        return (), found
    taken = [_room(mark) for mark in words if mark.text]
    marks = tuple(mark for family in pattern.lines(values, ground) for mark in _clipped(family, body, taken))
    return marks, tuple(_heavy(marks, values, surface.pattern))


def _ground(plan: PartPlan, body: shapely.Geometry, edges: Sequence[Edge]) -> Ground:
    """Return what the pattern is drawn on."""
    left, bottom, _, _ = (float(v) for v in body.bounds)
    origin: Point = (left, bottom)
    foot = next((e for e in edges if e.name in FOOT and e.nominal_start[1] == e.nominal_end[1]), None)
    if foot is not None:
        origin = (min(foot.nominal_start[0], foot.nominal_end[0]), foot.nominal_start[1])
    rim = max(shapely.get_parts(body), key=lambda piece: float(piece.area)).exterior
    first: Point = edges[0].start if edges else rim.coords[0]
    seed = plan.surface.seed if plan.surface else 0
    return Ground(body, rim, origin, first, plan.trace_allowance, seed)


def _too_fine(pattern: Pattern, values: Values, ground: Ground, part: str) -> Iterator[Finding]:
    """Find lines that a pencil cannot keep apart, and units that nobody would draw."""
    least, units = pattern.feature(values), pattern.units(values, ground)
    name = pattern.info.name
    if least < pattern.info.least_feature - 1e-9:
        yield SURFACE_TOO_FINE.found(
            f"with these sizes the surface {name} on part “{part}” has lines {mm(least)} apart",
            subject=f"part {part}",
            hint=f"make its units larger: lines nearer than {mm(pattern.info.least_feature)} run together under a pencil",
            place=values.place,
            value=least,
            limit=pattern.info.least_feature,
        )
    elif units > MOST_UNITS:
        yield SURFACE_TOO_FINE.found(
            f"the surface {name} would put about {units:.0f} units on part “{part}”",
            subject=f"part {part}",
            hint=f"make the units larger: at most {MOST_UNITS} can be drawn on one part",
            place=values.place,
            value=units,
            limit=MOST_UNITS,
        )


def _heavy(marks: Sequence[Mark], values: Values, name: str) -> Iterator[Finding]:
    """Find a pattern that takes up most of what one page may hold: a path operator for each point."""
    points = sum(len(mark.path.points) + mark.path.closed for mark in marks)
    if points > MOST_PATTERN_POINTS:
        yield SURFACE_HEAVY.found(
            f"the surface {name} draws {len(marks)} lines with {points} points on this part; up to {MOST_PATTERN_POINTS} print well",
            subject=values.subject,
            hint="make its units larger, unless the part is spread over several pages",
            place=values.place,
            value=points,
            limit=MOST_PATTERN_POINTS,
        )


def _room(mark: Mark) -> shapely.Polygon:
    """Return the place that a word takes, centred on its point: about 2.2 mm a letter, 5 mm high."""
    (x, y), half = mark.path.points[0], 1.5 + 1.1 * len(mark.text)
    return shapely.box(x - half, y - 2.5, x + half, y + 2.5)


def _clipped(family: LineFamily, body: shapely.Geometry, taken: Sequence[shapely.Polygon]) -> Iterator[Mark]:
    """Yield what of a family's lines lies inside, from the lowest up and from left to right.

    The few lines that a cut crosses are clipped in one overlay; the others are only asked whether they lie inside.
    """
    lines = family.lines
    if family.guards is not None and len(lines):
        shapely.prepare(body)
        lines = lines[shapely.contains_properly(body, family.guards)]
    if not len(lines):
        return
    inside = body.buffer(-family.clear) if family.clear else body
    inside = inside.difference(shapely.union_all(taken)) if taken else inside
    shapely.prepare(inside)
    whole = shapely.contains_properly(inside, lines)
    cut = _cut(lines[~whole & shapely.intersects(inside, lines)], inside)
    long = shapely.length(lines)
    if (
        family.guards is not None and np.ptp(long) < SAME_POINT
    ):  # joints of courses: an end of one at an opening looks like a mark
        cut = cut[shapely.length(cut) >= SHORT_JOINT * long[0]]
    pieces = np.concatenate([lines[whole], cut])
    pieces = pieces[shapely.length(pieces) >= SHORTEST_LINE]
    firsts = shapely.get_coordinates(shapely.get_point(pieces, 0))
    pieces = pieces[np.lexsort((firsts[:, 0], firsts[:, 1]))]
    places = [(x, y) for x, y in shapely.get_coordinates(pieces).tolist()]
    end = 0
    for count in shapely.get_num_points(pieces).tolist():
        start, end = end, end + count
        closed = count > 3 and places[start] == places[end - 1]
        yield Mark(LineKind.DRAW, family.purpose, polyline(tuple(places[start : end - closed]), closed=closed))


def _cut(lines: Lines, inside: shapely.Geometry) -> Lines:
    """Return the pieces of the lines that lie inside; a closed line that was cut once is one piece."""
    pieces = shapely.get_parts(shapely.intersection(shapely.multilinestrings(lines), inside))
    pieces = pieces[shapely.get_type_id(pieces) == shapely.GeometryType.LINESTRING]
    if len(pieces) and (shapely.get_num_points(lines) > 2).any():
        pieces = shapely.get_parts(shapely.line_merge(shapely.multilinestrings(pieces)))
    cut: Lines = pieces
    return cut
