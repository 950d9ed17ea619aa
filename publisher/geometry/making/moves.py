"""Shapes carried by poses, with all that belongs to them."""

from collections.abc import Callable
from dataclasses import replace
from math import atan2, degrees

from publisher.basics import Point, Pose
from publisher.geometry.model import Edge
from publisher.geometry.registry import Shape


def mirroring(start: Point, end: Point) -> Pose:
    """Return the mirror in the line through two points (mm)."""
    turn = 2.0 * degrees(atan2(end[1] - start[1], end[0] - start[0])) + 180.0
    return Pose.carrying(start, start, turn, mirrored=True)


def placed(shape: Shape, pose: Pose) -> Shape:
    """Return the shape carried; paths keep the material on their left, edges keep their names and run as the paths do."""
    region = shape.region.placed(pose)
    return Shape(
        region.outer,
        tuple(_edge(edge, pose) for edge in shape.edges),
        region.holes,
        tuple(mark.placed(pose) for mark in shape.marks),
        tuple(pose.apply_all(points) for points in shape.plain),
        drawn_for=shape.drawn_for,
        # a strip that is turned over bends as tightly, but no longer along its own x
        bending=shape.bending and replace(shape.bending, bends=(), tightest=shape.bending.radius),
    )


def renamed(shape: Shape, name: Callable[[str], str]) -> Shape:
    """Return the shape with new names for the edges of its paths and its named edges."""
    return replace(
        shape,
        outer=shape.outer.renamed(name),
        holes=tuple(hole.renamed(name) for hole in shape.holes),
        edges=tuple(replace(edge, name=name(edge.name)) for edge in shape.edges),
    )


def _edge(edge: Edge, pose: Pose) -> Edge:
    moved = replace(
        edge,
        start=pose.apply(edge.start),
        end=pose.apply(edge.end),
        nominal_start=pose.apply(edge.nominal_start),
        nominal_end=pose.apply(edge.nominal_end),
        centre=None if edge.centre is None else pose.apply(edge.centre),
        laps=tuple(replace(lap, floor=pose.apply(lap.floor)) for lap in edge.laps),
    )
    return turned_round(moved) if pose.mirrored else moved


def turned_round(edge: Edge) -> Edge:
    """Return the edge run the other way."""
    return replace(
        edge,
        start=edge.end,
        end=edge.start,
        nominal_start=edge.nominal_end,
        nominal_end=edge.nominal_start,
    )
