"""Outlines moved into the material: trace allowance, and edges shortened or lengthened by joins."""

from collections.abc import Sequence
from dataclasses import replace
from math import atan2, degrees, pi, radians

from publisher.basics import SAME_POINT, Line, Path, PathEdge, Point, angle, closed_path
from publisher.geometry.model import Region
from publisher.geometry.paths.curves import meet, shifted

_TANGENT = 1e-6  # rad: edges that meet at a smaller angle go smoothly into each other


def shift(path: Path, by: Sequence[float]) -> tuple[Path, tuple[str, ...]]:
    """Move each edge of a closed path into the material by its own distance (mm, negative outwards).

    Neighbours are shortened or lengthened to where they meet (mitred corners); arcs stay arcs about their centres.
    Returns the new path, edge for edge, and the names of edges that vanish or turn round (then the path is of no use).
    """
    edges = path.edges
    moved = [shifted(edge, distance) for edge, distance in zip(edges, by, strict=True)]
    lost = [edge.name for edge, new in zip(edges, moved, strict=True) if new is None]
    if lost:
        return Path(()), tuple(dict.fromkeys(lost))
    whole = [new for new in moved if new is not None]
    corners: list[Point | None] = [
        _corner(edges[i - 1], edges[i], by[i - 1], by[i], whole[i - 1], whole[i]) for i in range(len(whole))
    ]
    new: list[PathEdge] = []
    for i, (old, edge) in enumerate(zip(edges, whole, strict=True)):
        start, end = corners[i], corners[(i + 1) % len(corners)]
        result = None if start is None or end is None else _between(old, edge, start, end)
        if result is None:
            lost.append(old.name)
        else:
            new.append(result)
    return Path(tuple(new)), tuple(dict.fromkeys(lost))


def _corner(a: PathEdge, b: PathEdge, by_a: float, by_b: float, new_a: PathEdge, new_b: PathEdge) -> Point | None:
    """Return the corner between two shifted neighbours; None when they no longer meet."""
    at = a.end
    (ax, ay), (bx, by) = a.direction(at), b.direction(at)
    turn = atan2(ax * by - ay * bx, ax * bx + ay * by)
    if abs(turn) < _TANGENT and abs(by_a - by_b) < SAME_POINT:
        return (at[0] - ay * by_a, at[1] + ax * by_a)
    if by_a == 0.0 and by_b == 0.0:
        return at
    near = ((new_a.end[0] + new_b.start[0]) / 2.0, (new_a.end[1] + new_b.start[1]) / 2.0)
    return meet(new_a, new_b, near)


def _between(old: PathEdge, new: PathEdge, start: Point, end: Point) -> PathEdge | None:
    """Return a shifted edge between its corners; None when it no longer runs the way it ran, over more than nothing."""
    if isinstance(new, Line):
        x, y = old.direction(old.start)
        ahead = (end[0] - start[0]) * x + (end[1] - start[1]) * y > SAME_POINT
        return replace(new, start=start, end=end) if ahead else None
    at_start = _wrapped(angle(new.centre, start) - angle(new.centre, old.start))
    at_end = _wrapped(angle(new.centre, end) - angle(new.centre, old.end))
    sweep = new.sweep + degrees(at_end - at_start)
    ahead = abs(sweep) < 360.0 and radians(sweep if new.ccw else -sweep) * new.radius > SAME_POINT
    return replace(new, start=start, end=end, sweep=sweep) if ahead else None


def _wrapped(turn: float) -> float:
    return (turn + pi) % (2.0 * pi) - pi


def eroded(region: Region, by: float) -> tuple[Region, tuple[str, ...]]:
    """Return the region with its boundary moved into the material by ``by`` mm: the template of a traced part.

    A pencil runs ``by`` outside the template's edge (common practice 0.3-0.5 mm), so the outside shrinks and openings and
    slots grow, and the traced line falls on the true outline. Also returns the names of edges that would vanish.
    """
    if by == 0.0:
        return region, ()
    paths = []
    lost: list[str] = []
    for path in region.paths:
        new, gone = shift(path, [by] * len(path.edges))
        lost.extend(gone)
        paths.append(path if gone else closed_path(new.edges))
    return Region(paths[0], tuple(paths[1:])), tuple(dict.fromkeys(lost))
