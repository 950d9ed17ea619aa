"""Shapes carried by rigid motions and mirrors, with all that belongs to them."""

from collections.abc import Callable
from dataclasses import replace
from math import cos, radians, sin

from publisher.basics import Carry, Path, Point
from publisher.geometry.model import Edge, Mark
from publisher.geometry.registry import Shape


def placing(at: Point, turn: float) -> Carry:
    """Return the motion that turns by ``turn`` degrees about the origin and then carries the origin to ``at`` (mm)."""
    c, s = cos(radians(turn)), sin(radians(turn))
    return lambda p: (at[0] + c * p[0] - s * p[1], at[1] + s * p[0] + c * p[1])


def mirroring(start: Point, end: Point) -> Carry:
    """Return the mirror in the line through two points (mm)."""
    (x, y), (dx, dy) = start, (end[0] - start[0], end[1] - start[1])
    square = dx * dx + dy * dy

    def carry(p: Point) -> Point:
        along = 2.0 * ((p[0] - x) * dx + (p[1] - y) * dy) / square
        return (2.0 * x + along * dx - p[0], 2.0 * y + along * dy - p[1])

    return carry


def carried(shape: Shape, carry: Carry, mirrored: bool = False) -> Shape:
    """Return the shape carried; paths keep the material on their left, edges keep their names and run as the paths do."""
    return Shape(
        _path(shape.outer, carry, mirrored),
        tuple(_edge(edge, carry, mirrored) for edge in shape.edges),
        tuple(_path(hole, carry, mirrored) for hole in shape.holes),
        tuple(carried_mark(mark, carry) for mark in shape.marks),
        tuple(tuple(map(carry, points)) for points in shape.plain),
    )


def carried_mark(mark: Mark, carry: Carry) -> Mark:
    """Return the mark carried."""
    return replace(mark, points=tuple(map(carry, mark.points)))


def renamed(shape: Shape, name: Callable[[str], str]) -> Shape:
    """Return the shape with new names for the edges of its paths and its named edges."""
    return replace(
        shape,
        outer=shape.outer.renamed(name),
        holes=tuple(hole.renamed(name) for hole in shape.holes),
        edges=tuple(replace(edge, name=name(edge.name)) for edge in shape.edges),
    )


def _path(path: Path, carry: Carry, mirrored: bool) -> Path:
    return (path.reversed() if mirrored else path).carried(carry, mirrored)


def _edge(edge: Edge, carry: Carry, mirrored: bool) -> Edge:
    moved = replace(
        edge,
        start=carry(edge.start),
        end=carry(edge.end),
        nominal_start=carry(edge.nominal_start),
        nominal_end=carry(edge.nominal_end),
        centre=None if edge.centre is None else carry(edge.centre),
    )
    return turned_round(moved) if mirrored else moved


def turned_round(edge: Edge) -> Edge:
    """Return the edge run the other way."""
    return replace(
        edge,
        start=edge.end,
        end=edge.start,
        nominal_start=edge.nominal_end,
        nominal_end=edge.nominal_start,
    )
