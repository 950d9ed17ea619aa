"""Tabs, notches and doors let into the straight edges of an outline, exactly and without a boolean."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import dist

from publisher.basics import Point
from publisher.geometry.paths.curves import SAME, Curve


@dataclass(frozen=True, slots=True)
class Bump:
    """A detour of an edge: its curves leave the edge's line at the first point and come back at the last, further along.

    ``what`` names it in words (``tab 2 of the edge “right”``); ``inwards``: it is a notch of a join, cut into the board.
    """

    edge: str
    curves: tuple[Curve, ...]
    what: str
    inwards: bool = False


def box_bump(edge: str, name: str, what: str, on_edge: tuple[Point, Point], inward: Point, depth: float) -> Bump:
    """Return a rectangular detour between two points of an edge, ``depth`` mm along ``inward`` (negative = a tab)."""
    (a, d), (dx, dy) = on_edge, (inward[0] * depth, inward[1] * depth)
    b, c = (a[0] + dx, a[1] + dy), (d[0] + dx, d[1] + dy)
    return Bump(edge, (Curve(name, a, b), Curve(name, b, c), Curve(name, c, d)), what, depth > 0.0)


def let_in(chain: Sequence[Curve], bumps: Sequence[Bump]) -> tuple[tuple[Curve, ...], tuple[tuple[Bump, str], ...]]:
    """Return the chain with the bumps, and those that do not stand whole on their edge, each with the reason in words."""
    result: list[Curve] = []
    refused: list[tuple[Bump, str]] = []
    for curve in chain:
        own = [bump for bump in bumps if bump.edge == curve.name] if curve.centre is None else []
        if not own:
            result.append(curve)
            continue
        length, at = dist(curve.start, curve.end), 0.0
        place = curve.start
        for begin, end, bump in sorted(
            ((_along(curve, b.curves[0].start), _along(curve, b.curves[-1].end), b) for b in own),
            key=lambda item: item[:2],
        ):
            if begin < SAME or end > length - SAME:
                over = max(-begin, end - length)
                how = f"runs {over:.2f} mm over" if over >= 0.005 else "reaches"
                refused.append((bump, f"{how} the end of the edge, which is {length:.2f} mm long"))
            elif begin < at + SAME and at > 0.0:
                refused.append((bump, "overlaps its neighbour on the edge"))
            else:
                result.append(Curve(curve.name, place, bump.curves[0].start))
                result.extend(bump.curves)
                place, at = bump.curves[-1].end, end
        result.append(Curve(curve.name, place, curve.end))
    return tuple(result), tuple(refused)


def _along(edge: Curve, point: Point) -> float:
    x, y = edge.direction(edge.start)
    return (point[0] - edge.start[0]) * x + (point[1] - edge.start[1]) * y
