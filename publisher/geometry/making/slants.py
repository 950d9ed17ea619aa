"""Edges cut to a slope: turned out of their line into the panel, so that it stands upright on an inclined face."""

from collections.abc import Sequence
from dataclasses import replace
from math import cos, radians, sin

import shapely

from publisher.basics import SAME_POINT, Finding, Line, Path, PathEdge, Point
from publisher.design import EdgeTreatment, PartPlan
from publisher.geometry.model import Edge, Mark
from publisher.geometry.paths import meet, polygon
from publisher.geometry.registry import Shape, deg
from publisher.geometry.rules import LOST_EDGE

LEAST_SLANT = 1e-9  # degrees


def slanted(shape: Shape, plan: PartPlan) -> tuple[Shape, tuple[Finding, ...]]:
    """Return the shape with the edges cut that its treatments say stand on a slope, or the findings that say why not.

    Each turns about its lower end, which keeps its place: that end at which the panel's stated size is measured. Its
    neighbours are shortened to where they meet it, so that what is joined there is as long as they are now.
    """
    found: list[Finding] = []
    for treatment in plan.treatments:
        if abs(treatment.slant) > LEAST_SLANT and any(edge.name == treatment.edge for edge in shape.edges):
            cut = _cut(shape, treatment)
            if cut is None:
                found.append(_refused(plan, treatment))
            else:
                shape = cut
    return shape, tuple(found)


def _cut(shape: Shape, treatment: EdgeTreatment) -> Shape | None:
    """Return the shape with one edge cut; None where that edge is not one line between two lines, or nothing is left."""
    edges = shape.outer.edges
    own = [i for i, edge in enumerate(edges) if edge.name == treatment.edge]
    if len(own) != 1:
        return None
    i, count = own[0], len(edges)
    before, edge, after = edges[i - 1], edges[i], edges[(i + 1) % count]
    if not all(isinstance(one, Line) for one in (before, edge, after)):
        return None
    start, end = _turned(edge, treatment.slant)
    line = Line(edge.name, start, end)
    first, last = meet(before, line, start), meet(line, after, end)
    if first is None or last is None:
        return None
    new: dict[int, PathEdge] = {
        (i - 1) % count: replace(before, end=first),
        i: replace(edge, start=first, end=last),
        (i + 1) % count: replace(after, start=last),
    }
    if not all(_ahead(edges[at], one) for at, one in new.items()):
        return None
    outer = Path(tuple(new.get(at, one) for at, one in enumerate(edges)))
    body = polygon(outer)
    return replace(
        shape,
        outer=outer,
        edges=tuple(_ended(one, outer) for one in shape.edges),
        marks=tuple(mark for mark in shape.marks if _within(mark, body)),
    )


def _turned(edge: PathEdge, slant: float) -> tuple[Point, Point]:
    """Return two points of an edge turned by ``slant`` degrees into the panel, about the end that it is measured from."""
    (ax, ay), (bx, by) = edge.start, edge.end
    c, s = cos(radians(slant)), sin(radians(slant))
    x, y = bx - ax, by - ay
    way = (c * x - s * y, s * x + c * y)
    if slant > 0.0:
        return (ax, ay), (ax + way[0], ay + way[1])
    return (bx - way[0], by - way[1]), (bx, by)


def _ahead(old: PathEdge, new: PathEdge) -> bool:
    """Tell whether a cut edge still runs the way it ran, over more than nothing."""
    x, y = old.end[0] - old.start[0], old.end[1] - old.start[1]
    return (new.end[0] - new.start[0]) * x + (new.end[1] - new.start[1]) * y > SAME_POINT


def _ended(edge: Edge, outer: Path) -> Edge:
    own = [one for one in outer.edges if one.name == edge.name]
    start, end = own[0].start, own[-1].end
    return replace(edge, start=start, end=end, nominal_start=start, nominal_end=end)


def _within(mark: Mark, body: shapely.Polygon) -> bool:
    points: Sequence[Point] = mark.path.points
    return bool(shapely.covers(shapely.buffer(body, SAME_POINT), shapely.multipoints(points)))


def _refused(plan: PartPlan, treatment: EdgeTreatment) -> Finding:
    return LOST_EDGE.found(
        f"the edge “{treatment.edge}” of part “{plan.id}” cannot be cut to a slope of {deg(abs(treatment.slant))}",
        subject=f"part {plan.id}",
        hint="a straight edge between two straight ones can, where the part is higher than the slope rises along it",
        place=treatment.place,
        value=treatment.slant,
    )
