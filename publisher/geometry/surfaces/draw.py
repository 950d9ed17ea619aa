"""A pattern drawn on a part: lines over its box, clipped to the board between outline and openings."""

from collections.abc import Iterator, Sequence

import numpy as np
import shapely

from publisher.basics import Box, Finding, LineKind, Purpose
from publisher.design import PartPlan
from publisher.geometry.model import Mark
from publisher.geometry.rules import SURFACE_TOO_FINE, UNKNOWN_SHAPE
from publisher.geometry.surfaces.brick import PATTERN as BRICK
from publisher.geometry.surfaces.pattern import Line, Pattern
from publisher.geometry.values import checked, nearest

PATTERNS: tuple[Pattern, ...] = (BRICK,)
CLEAR = 1.0  # mm that joints keep from every cut, so that they do not look like one
SHORTEST = 1.0  # mm: what is left of a joint and shorter than this is not drawn
MOST_UNITS = 2500  # bricks on one part: more than this nobody draws, and a page prints slowly


def surface_marks(
    plan: PartPlan, body: shapely.Polygon, words: Sequence[Mark] = ()
) -> tuple[tuple[Mark, ...], tuple[Finding, ...]]:
    """Return the marks (mm) of the part's surface pattern, or the findings that say why there are none.

    The pattern leaves a place free for each of the ``words``, so that they can be read.
    """
    surface = plan.surface
    if surface is None:
        return (), ()
    pattern = next((p for p in PATTERNS if p.info.name == surface.pattern), None)
    if pattern is None:
        hint = nearest(surface.pattern, [p.info.name for p in PATTERNS])
        message = f"there is no surface pattern called “{surface.pattern}”"
        return (), (UNKNOWN_SHAPE.found(message, subject=f"part {plan.id}", hint=hint, place=surface.place),)
    name = f"surface {surface.pattern}"
    values, found = checked(name, pattern.info.parameters, surface.parameters, f"part {plan.id}", surface.place)
    found = found or tuple(pattern.check(values))
    if found:
        return (), found
    units = float(body.area) / pattern.units(values)
    if units > MOST_UNITS:
        return (), (
            SURFACE_TOO_FINE.found(
                f"the surface {surface.pattern} would put about {units:.0f} units on part “{plan.id}”",
                subject=f"part {plan.id}",
                hint=f"make the units larger: at most {MOST_UNITS} can be drawn on one part",
                place=surface.place,
                value=units,
                limit=MOST_UNITS,
            ),
        )
    families = pattern.lines(values, Box(*(float(v) for v in body.bounds)), surface.seed)
    inside = body.buffer(-CLEAR).difference(shapely.union_all([_room(mark) for mark in words if mark.text]))
    shapely.prepare(inside)
    return tuple(mark for family in families for mark in _clipped(family, inside)), ()


def _room(mark: Mark) -> shapely.Polygon:
    """Return the place that a word takes, centred on its point: about 2.2 mm a letter, 5 mm high."""
    (x, y), half = mark.points[0], 1.5 + 1.1 * len(mark.text)
    return shapely.box(x - half, y - 2.5, x + half, y + 2.5)


def _clipped(family: tuple[Line, ...], inside: shapely.Geometry) -> Iterator[Mark]:
    """Yield what of a family's lines lies inside, from the lowest up and from left to right.

    The few lines that a cut crosses are clipped in one overlay; the others are only asked whether they lie inside.
    """
    if not family:
        return
    lines = shapely.linestrings(np.asarray(family))
    whole = shapely.contains_properly(inside, lines)
    crossed = lines[~whole & shapely.intersects(inside, lines)]
    pieces = shapely.get_parts(shapely.intersection(shapely.multilinestrings(crossed), inside))
    pieces = np.concatenate([lines[whole], pieces[shapely.get_type_id(pieces) == shapely.GeometryType.LINESTRING]])
    pieces = pieces[shapely.length(pieces) >= SHORTEST]
    ends = shapely.get_coordinates(pieces).reshape(-1, 2, 2)
    ends = ends[np.lexsort((ends[:, 0, 0], ends[:, 0, 1]))]
    for (ax, ay), (bx, by) in ends.tolist():
        yield Mark(LineKind.DRAW, Purpose.SURFACE, ((ax, ay), (bx, by)))
