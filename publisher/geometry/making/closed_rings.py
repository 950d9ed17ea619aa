"""Corners of closed rings of panels that follow from their lengths. Mm and degrees; a corner is the angle inside.

Upright panels make a polygon in plan, panels that taper to a tip cut a sphere round it in one. With up to three corners
unsaid such a ring has one shape; with more, facets of a spire have one when their feet lie in one plane.
"""

from collections.abc import Sequence
from math import acos, atan2, cos, degrees, hypot, pi, radians, sin, sqrt

from publisher.basics import SAME_POINT

MOST_FREE = 3  # corners that follow from the lengths of a plane ring
_ENOUGH = 80  # halvings: a hundred metres to less than an atom
Corners = dict[int, float]


def plane_ring(widths: Sequence[float], corners: Sequence[float | None]) -> Corners | None:
    """Return the corners that are None, by place, of a ring of upright panels; None when there are more than three of them,
    or when panels of these widths do not reach round.

    ``corners[i]`` lies between panel i and the next one. What is stiff between two unsaid corners counts as one side, from
    one to the other: three sides make a triangle (law of cosines), two lie on each other, one must be nothing.
    """
    free = [i for i, corner in enumerate(corners) if corner is None]
    if not 0 < len(free) <= MOST_FREE:
        return None
    if len(free) == 1:
        corner = 180.0 - 360.0 + sum(180.0 - c for c in corners if c is not None)
        return {free[0]: corner} if 0.0 < corner <= 180.0 else None
    sides = [_side(widths, corners, first, last) for first, last in zip(free, free[1:] + free[:1], strict=True)]
    inner = _angles([side[0] for side in sides])  # side k runs from corner k to the next
    if inner is None:
        return None
    found = {}
    for k, i in enumerate(free):
        before, after = sides[k - 1], sides[k]
        # from the chord of one side to that of the next it turns by 180° less the angle between them
        turn = (180.0 - inner[k]) + (before[1] - before[2]) - after[1]
        found[i] = 180.0 - (turn + 180.0) % 360.0 + 180.0
    return found if all(0.0 < corner <= 180.0 for corner in found.values()) else None


def _angles(sides: Sequence[float]) -> list[float] | None:
    """Return the angles between sides, the first between the last of them and the first: of two sides, which lie on each other, none;
    of three those of their triangle, None where they make none."""
    if len(sides) == 2:
        return [0.0, 0.0]
    if 2.0 * max(sides) >= sum(sides):
        return None
    return [opposite(sides[(k + 1) % 3], sides[k], sides[k - 1]) for k in range(3)]


def _side(
    widths: Sequence[float], corners: Sequence[float | None], first: int, last: int
) -> tuple[float, float, float]:
    """Return how far the corner after panel ``last`` lies from the one after panel ``first``, in which direction against the
    first panel between them, and in which direction the last of them runs (degrees, turning to the inside)."""
    x = y = way = 0.0
    i = first
    while True:
        i = (i + 1) % len(widths)
        x, y = x + widths[i] * cos(radians(way)), y + widths[i] * sin(radians(way))
        corner = corners[i]
        if i == last or corner is None:
            return hypot(x, y), degrees(atan2(y, x)), way
        way += 180.0 - corner


def opposite(side: float, one: float, other: float) -> float:
    """Return the angle of a triangle that lies opposite to a side, by the law of cosines."""
    cosine = (one * one + other * other - side * side) / (2.0 * one * other)
    return degrees(acos(max(-1.0, min(1.0, cosine))))


def tip_of_three(tapers: Sequence[float]) -> tuple[float, float, float] | None:
    """Return the corners between three panels that meet in a tip, each opposite to the panel that it does not touch: corner i
    lies between panel i and the next. ``tapers``: the angles of the panels at the tip. By the spherical law of cosines;
    None where they do not reach round."""
    a, b, c = (radians(taper) for taper in tapers)
    if 2.0 * max(a, b, c) >= a + b + c or a + b + c >= 2.0 * pi:
        return None
    found = []
    for far, one, other in ((c, a, b), (a, b, c), (b, c, a)):
        cosine = (cos(far) - cos(one) * cos(other)) / (sin(one) * sin(other))
        found.append(degrees(acos(max(-1.0, min(1.0, cosine)))))
    return found[0], found[1], found[2]


def tip_over_plane(reaches: Sequence[float], tapers: Sequence[float]) -> tuple[float, ...] | None:
    """Return the corners of a ring of facets whose feet lie in one plane; corner i lies between facet i and the next.

    ``reaches[i]``: from the tip down to the foot of the edge between facet i and the next; ``tapers``: the angles of the
    facets at the tip. It stands as high over the plane as lets the facets go round once. None where there is no such height.
    """
    low, high = 0.0, min(reaches)
    if sum(tapers) >= 360.0 or _round(reaches, tapers, high * (1.0 - 1e-12)) < 360.0:
        return None
    for _ in range(_ENOUGH):
        middle = (low + high) / 2.0
        low, high = (middle, high) if _round(reaches, tapers, middle) < 360.0 else (low, middle)
    flat = _flat(reaches, tapers, low)
    if abs(sum(flat) - 360.0) > 1e-6 or max(flat) > 180.0 - 1e-6:
        return None
    feet, at = [], 0.0
    for reach, angle in zip(reaches, (*flat[1:], flat[0]), strict=True):
        out = sqrt(reach * reach - low * low)
        feet.append((out * cos(radians(at)), out * sin(radians(at)), -low))
        at += angle
    normals = [_cross(feet[i - 1], feet[i]) for i in range(len(feet))]  # facet i lies between edges i - 1 and i
    return tuple(180.0 - _between(normals[i], normals[(i + 1) % len(normals)]) for i in range(len(normals)))


def _flat(reaches: Sequence[float], tapers: Sequence[float], height: float) -> list[float]:
    """Return the angles (degrees) at which the facets are seen from over the tip, with the tip so high over their feet."""
    found = []
    for i, taper in enumerate(tapers):
        one, other = reaches[i - 1], reaches[i]
        # the foot's length squared is the same in space and in plan
        foot = one * one + other * other - 2.0 * one * other * cos(radians(taper))
        a, b = one * one - height * height, other * other - height * height
        cosine = (a + b - foot) / (2.0 * sqrt(max(a * b, SAME_POINT**4)))
        found.append(degrees(acos(max(-1.0, min(1.0, cosine)))))
    return found


def _round(reaches: Sequence[float], tapers: Sequence[float], height: float) -> float:
    return sum(_flat(reaches, tapers, height))


_Vector = tuple[float, float, float]


def _cross(a: _Vector, b: _Vector) -> _Vector:
    return a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]


def _between(a: _Vector, b: _Vector) -> float:
    dot = sum(p * q for p, q in zip(a, b, strict=True))
    return degrees(acos(max(-1.0, min(1.0, dot / (hypot(*a) * hypot(*b))))))
