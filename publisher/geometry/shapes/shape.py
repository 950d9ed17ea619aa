"""What a shape module gives: its registration, its rules, its outline with edges and marks."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Literal

from publisher.basics import Finding
from publisher.geometry.curves import Curve
from publisher.geometry.model import Edge, Mark, ParameterInfo, ShapeInfo
from publisher.geometry.values import LONGEST, Values


@dataclass(frozen=True, slots=True)
class Shape:
    """A shape at true size before openings and joins: closed chains of curves in mm, material on the left of each.

    ``outer`` runs anticlockwise, ``holes`` clockwise. ``edges`` carry nominal places only.
    """

    outer: tuple[Curve, ...]
    edges: tuple[Edge, ...]
    holes: tuple[tuple[Curve, ...], ...] = ()
    marks: tuple[Mark, ...] = ()


@dataclass(frozen=True, slots=True)
class ShapeKind:
    """A registered shape. ``check`` returns findings for sizes that do not agree; ``build`` is called only when there are none."""

    info: ShapeInfo
    build: Callable[[Values], Shape]
    check: Callable[[Values], Iterable[Finding]]


def length(
    name: str, meaning: str, default: float | None = None, least: float = 1.0, most: float = LONGEST
) -> ParameterInfo:
    """Register a length in mm."""
    return ParameterInfo(name, "length", meaning, default, least, most)


def angle(name: str, meaning: str, least: float, most: float, default: float | None = None) -> ParameterInfo:
    """Register an angle in degrees."""
    return ParameterInfo(name, "angle", meaning, default, least, most)


def count(name: str, meaning: str, least: int, most: int, default: int | None = None) -> ParameterInfo:
    """Register a whole number."""
    return ParameterInfo(name, "count", meaning, default, least, most)


def edges_of(curves: Iterable[Curve], names: Iterable[str], inside: Iterable[str] = ()) -> tuple[Edge, ...]:
    """Return the named edges of a chain: each from the start of its first curve to the end of its last.

    Edges named in ``inside`` have their nominal place on the inside face.
    """
    chain, behind = tuple(curves), tuple(inside)
    edges = []
    for name in names:
        own = [curve for curve in chain if curve.name == name]
        start, end = own[0].start, own[-1].end
        face: Literal["outside", "inside"] = "inside" if name in behind else "outside"
        edges.append(Edge(name, start, end, start, end, face, centre=own[0].centre, radius=own[0].radius))
    return tuple(edges)


def nothing_to_check(values: Values) -> tuple[Finding, ...]:
    """Return no findings: the ranges say all."""
    del values
    return ()
