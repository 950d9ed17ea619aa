"""The straight edges of untreated shapes by the places of an assembly, and how they lie. Mm and degrees."""

from collections.abc import Mapping
from math import atan2, degrees

from publisher.basics import SAME_POINT, Point
from publisher.design import EdgeRef, PanelPlan
from publisher.geometry.model import Edge
from publisher.geometry.registry import Shape

PARALLEL = 1e-6  # sine of the angle between edges that count as parallel

PlacedEdges = Mapping[EdgeRef, Edge]


def edges_at(plan: PanelPlan, shapes: Mapping[str, Shape]) -> PlacedEdges:
    """Return the straight edges of all places whose parts have a shape."""
    return {
        EdgeRef(place.name, edge.name): edge
        for place in plan.places
        if place.part in shapes
        for edge in shapes[place.part].edges
        if edge.centre is None and edge.nominal_length > SAME_POINT
    }


def heading(edge: Edge) -> float:
    """Return the direction in which an edge runs, degrees from its template's across."""
    (ax, ay), (bx, by) = edge.nominal_start, edge.nominal_end
    return degrees(atan2(by - ay, bx - ax))


def way(edge: Edge) -> Point:
    """Return the unit vector along an edge."""
    (ax, ay), (bx, by) = edge.nominal_start, edge.nominal_end
    return (bx - ax) / edge.nominal_length, (by - ay) / edge.nominal_length


def middle(edge: Edge) -> Point:
    """Return the middle of an edge."""
    (ax, ay), (bx, by) = edge.nominal_start, edge.nominal_end
    return (ax + bx) / 2.0, (ay + by) / 2.0


def parallel(one: Edge, other: Edge) -> bool:
    """Tell whether two edges of a panel run in one line or side by side."""
    (ax, ay), (bx, by) = way(one), way(other)
    return abs(ax * by - ay * bx) < PARALLEL


def apart(one: Edge, other: Edge) -> float:
    """Return how far two parallel edges lie apart."""
    (x, y), (ax, ay), (bx, by) = way(one), one.nominal_start, other.nominal_start
    return abs((bx - ax) * -y + (by - ay) * x)
