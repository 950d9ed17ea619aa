"""Where a part is thin: its tabs, the crown and the feet of its arch, its points. Mm and degrees."""

from collections.abc import Iterator
from itertools import groupby
from math import acos, degrees, dist, hypot

import shapely

from publisher.basics import SAME_POINT, Arc, PathEdge, Point, record
from publisher.geometry import Part

SHARP = 45.0
"""Degrees: what is more pointed breaks off, if it is not blunted. Common practice, no source."""

ARCH = ("intrados", "jamb")
"""What shapes call the edges of the opening of an arch."""


@record
class Sharp:
    """A point of a part: its angle (degrees), where it is, and how wide it is blunted (mm; 0: not at all)."""

    angle: float
    at: Point
    blunt: float


def tabs_of(part: Part) -> tuple[tuple[str, float], ...]:
    """Return the edge and the length (mm) of every tab; the edges of a tab are named ``….tab``."""
    found = []
    for name, own in groupby(_from_a_gap(part), key=lambda edge: edge.name):
        edges = list(own)
        if name.endswith(".tab"):
            found.append((name.removesuffix(".tab"), dist(edges[0].start, edges[-1].end)))
    return tuple(found)


def _from_a_gap(part: Part) -> tuple[PathEdge, ...]:
    """Return the edges of the outline, beginning at one that is no tab's."""
    edges = part.outline.outer.edges
    first = next((i for i, edge in enumerate(edges) if not edge.name.endswith(".tab")), 0)
    return edges[first:] + edges[:first]


def arch_of(part: Part) -> tuple[float, float] | None:
    """Return how thick an arch is at its crown, and how wide its narrower foot is (mm); None where a part has none."""
    edges = part.outline.outer.edges
    inner = [_line(edge) for edge in edges if edge.name in ARCH]
    over = [_line(edge) for edge in edges if edge.name not in (*ARCH, "bottom", "left", "right")]
    beside = [_line(edge) for edge in edges if edge.name in ("left", "right")]
    if not any(edge.name == ARCH[0] for edge in edges) or not over or not beside:
        return None
    hollow = shapely.multilinestrings(inner)
    crown = float(shapely.distance(hollow, shapely.multilinestrings(over)))
    return crown, float(shapely.distance(hollow, shapely.multilinestrings(beside)))


def _line(edge: PathEdge) -> shapely.LineString:
    return shapely.LineString([*edge.points(), edge.end])


def points_of(part: Part, blunt: float) -> Iterator[Sharp]:
    """Yield every corner of the outline with less than ``SHARP`` degrees of board in it, and every one that is cut off there
    narrower than ``blunt`` mm; but none between two edges that are both joined to others, which hold it."""
    edges = part.outline.outer.edges
    joined = {edge.name for edge in part.edges if edge.joined or edge.bevel}
    turns = [_turn(edges[i - 1], edges[i]) for i in range(len(edges))]  # at the start of each edge, to the left
    for i, edge in enumerate(edges):
        if edges[i - 1].name in joined and edge.name in joined:
            continue
        if 180.0 - turns[i] < SHARP:
            yield Sharp(180.0 - turns[i], edge.start, 0.0)
        after = turns[(i + 1) % len(edges)]
        wide = dist(edge.start, edge.end)
        whole, single = 180.0 - turns[i] - after, 180.0 - max(turns[i], after)
        if SAME_POINT < wide < blunt and min(turns[i], after) > 0.0 and whole < SHARP <= single:
            yield Sharp(max(whole, 0.0), edge.start, wide)


def _turn(before: PathEdge, after: PathEdge) -> float:
    (ax, ay), (bx, by) = _way(before, before.end), _way(after, after.start)
    angle = degrees(acos(min(1.0, max(-1.0, (ax * bx + ay * by) / (hypot(ax, ay) * hypot(bx, by))))))
    return angle if ax * by - ay * bx > 0.0 else -angle


def _way(edge: PathEdge, at: Point) -> Point:
    """Return the direction in which an edge runs at one of its ends."""
    if isinstance(edge, Arc):
        return edge.direction(at)
    return edge.end[0] - edge.start[0], edge.end[1] - edge.start[1]
