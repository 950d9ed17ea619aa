"""Parts that are the same when they are turned over: on which nobody can mistake one face for the other. Mm."""

import shapely

from publisher.basics import Purpose
from publisher.geometry import Mark, Part, polygon

SAME = 0.02
"""mm within which a drawing and its mirror image are one."""


OF_NO_FACE = frozenset({Purpose.MATCH, Purpose.NAME, Purpose.TOP})
"""Marks that say something of a part as a whole: one on the other face says the same."""


def faces_alike(part: Part) -> bool:
    """Say whether either face of a flat part may be its outside, its upper edge still the upper one: nothing is worked into or drawn on
    one of them, and turned over it is the same."""
    marked = any(mark.purpose not in OF_NO_FACE for mark in part.marks)
    return not marked and part.bending is None and _turns_into_itself(part)


def is_own_mirror(part: Part) -> bool:
    """Say whether all that a template shows, turned over about its upright middle line, is the same drawing again: so it is as
    well that of the other face. Its upper edge stays the upper one. A bevel or rabbet tells the faces apart."""
    if not _turns_into_itself(part):
        return False
    left, _, right, _ = polygon(part.half.whole if part.half else part.template).bounds
    seen = sorted(_said_at(mark, 0.0, 1.0) for mark in part.marks)
    turned = sorted(_said_at(mark, left + right, -1.0) for mark in part.marks)
    return seen == turned


def _turns_into_itself(part: Part) -> bool:
    """Say whether a part turned over about its upright middle line has the same outline and openings."""
    if any(edge.bevel or edge.rabbet for edge in part.edges):
        return False
    shape = polygon(part.half.whole if part.half else part.template)
    left, _, right, _ = shape.bounds
    turned = shapely.transform(shape, lambda p: (left + right, 0.0) + p * (-1.0, 1.0))
    return bool(shapely.equals_exact(shape, turned, SAME, normalize=True))


def _said_at(mark: Mark, shift: float, sign: float) -> tuple[str, str, str, tuple[tuple[float, float], ...]]:
    """Return what a mark shows and where, its points to a tenth of a millimetre and its line from either end alike."""
    points = tuple((round(shift + sign * x, 1) + 0.0, round(y, 1) + 0.0) for x, y in mark.path.points)
    return mark.kind, mark.purpose, mark.text, points if mark.text else min(points, points[::-1])
