"""Outlines moved into the material: trace allowance, and edges shortened or lengthened by joins."""

from collections.abc import Sequence
from math import atan2, pi

from publisher.basics import Point
from publisher.geometry.model import Region
from publisher.geometry.paths.curves import SAME, Curve, angle, meet, shifted
from publisher.geometry.paths.rings import curves_of, ring_of

_TANGENT = 1e-6  # rad: runs that meet at a smaller angle go smoothly into each other


def shift(curves: Sequence[Curve], by: Sequence[float]) -> tuple[tuple[Curve, ...], tuple[str, ...]]:
    """Move each curve of a closed chain into the material by its own distance (mm, negative outwards).

    Neighbours are shortened or lengthened to where they meet (mitred corners); arcs stay arcs about their centres.
    Returns the new chain, curve for curve, and the names of runs that vanish or turn round (then the chain is of no use).
    """
    moved = [shifted(curve, distance) for curve, distance in zip(curves, by, strict=True)]
    lost = [curve.name for curve, new in zip(curves, moved, strict=True) if new is None]
    if lost:
        return (), tuple(dict.fromkeys(lost))
    whole = [new for new in moved if new is not None]
    corners: list[Point | None] = [
        _corner(curves[i - 1], curves[i], by[i - 1], by[i], whole[i - 1], whole[i]) for i in range(len(whole))
    ]
    new: list[Curve] = []
    for i, (old, curve) in enumerate(zip(curves, whole, strict=True)):
        start, end = corners[i], corners[(i + 1) % len(corners)]
        if start is None or end is None:
            lost.append(old.name)
            continue
        result = Curve(curve.name, start, end, curve.centre, curve.radius, curve.ccw)
        if not _goes_forward(old, result):
            lost.append(old.name)
        new.append(result)
    return tuple(new), tuple(dict.fromkeys(lost))


def _corner(a: Curve, b: Curve, by_a: float, by_b: float, new_a: Curve, new_b: Curve) -> Point | None:
    """Return the corner between two shifted neighbours; None when they no longer meet."""
    at = a.end
    (ax, ay), (bx, by) = a.direction(at), b.direction(at)
    turn = atan2(ax * by - ay * bx, ax * bx + ay * by)
    if abs(turn) < _TANGENT and abs(by_a - by_b) < SAME:
        return (at[0] - ay * by_a, at[1] + ax * by_a)
    if by_a == 0.0 and by_b == 0.0:
        return at
    near = ((new_a.end[0] + new_b.start[0]) / 2.0, (new_a.end[1] + new_b.start[1]) / 2.0)
    return meet(new_a, new_b, near)


def _goes_forward(old: Curve, new: Curve) -> bool:
    """Say whether a shifted curve still runs the way it ran, over more than nothing."""
    if old.centre is None:
        x, y = old.direction(old.start)
        return (new.end[0] - new.start[0]) * x + (new.end[1] - new.start[1]) * y > SAME
    turn = 1.0 if old.ccw else -1.0
    at_start = _wrapped(angle(old.centre, new.start) - angle(old.centre, old.start))
    at_end = _wrapped(angle(old.centre, new.end) - angle(old.centre, old.end))
    sweep = old.sweep() + turn * (at_end - at_start)
    return sweep * new.radius > SAME and sweep < 2.0 * pi


def _wrapped(turn: float) -> float:
    return (turn + pi) % (2.0 * pi) - pi


def eroded(region: Region, by: float) -> tuple[Region, tuple[str, ...]]:
    """Return the region with its boundary moved into the material by ``by`` mm: the template of a traced part.

    A pencil runs ``by`` outside the template's edge (common practice 0.3-0.5 mm), so the outside shrinks and openings and
    slots grow, and the traced line falls on the true outline. Also returns the names of runs that would vanish.
    """
    if by == 0.0:
        return region, ()
    rings = []
    lost: list[str] = []
    for ring in (region.outer, *region.holes):
        curves = curves_of(ring)
        new, gone = shift(curves, [by] * len(curves))
        lost.extend(gone)
        rings.append(ring_of(new) if new and not gone else ring)
    return Region(rings[0], tuple(rings[1:])), tuple(dict.fromkeys(lost))
