"""What a shape module gives: its registration, its rules, its outline with edges and marks."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Any, Literal

from publisher.basics import Arc, Finding, Path, Point, record
from publisher.design import LONGEST_MM
from publisher.geometry.model import BentForm, DrawnFor, Edge, Mark, ParameterInfo, Region, ShapeInfo
from publisher.geometry.paths import straight
from publisher.geometry.registry.given_parameters import Values

SIDES = ("bottom", "right", "top", "left")
LOWER_LEFT = "its lower left corner"
ON_AXIS = "its axis"


@record
class Shape:
    """A shape at true size before openings and joins: closed paths in mm, material on the left of each.

    ``outer`` runs anticlockwise, ``holes`` clockwise. ``edges`` carry nominal places only. ``plain``: closed areas that
    surface patterns leave free, such as the stones of an arch. ``bending``: how it is bent. ``pieces``: further
    shapes that fell off this one, each cut
    out by itself. ``drawn_for``: sizes that meet what does not shrink with the paper.
    """

    outer: Path
    edges: tuple[Edge, ...]
    holes: tuple[Path, ...] = ()
    marks: tuple[Mark, ...] = ()
    plain: tuple[tuple[Point, ...], ...] = ()
    pieces: tuple["Shape", ...] = ()
    bending: BentForm | None = None
    drawn_for: tuple[DrawnFor, ...] = ()

    @property
    def region(self) -> Region:
        """The outline with its holes."""
        return Region(self.outer, self.holes)


@record
class ShapeKind:
    """A registered shape. ``check`` returns findings for sizes that do not agree; ``build`` is called only when there are none."""

    info: ShapeInfo
    build: Callable[[Values], Shape]
    check: Callable[[Values], Iterable[Finding]]


def nothing_to_check(values: Values) -> tuple[Finding, ...]:
    """Return no findings: the ranges say all."""
    del values
    return ()


def shape_kind(
    name: str,
    meaning: str,
    parameters: tuple[ParameterInfo, ...],
    edges: tuple[str, ...],
    build: Callable[[Values], Shape],
    check: Callable[[Values], Iterable[Finding]] = nothing_to_check,
    *,
    origin: str,
    openings: bool = False,
    layered: bool = False,
    axis: bool = False,
) -> ShapeKind:
    """Register a shape: what ``ShapeInfo`` says of it, how it is built, and, where ranges do not say all, what cannot be."""
    info = ShapeInfo(name, meaning, parameters, edges, origin, axis, openings=openings, layered=layered)
    return ShapeKind(info, build, check)


def length(
    name: str, meaning: str, default: float | str | None = None, least: float = 1.0, most: float = LONGEST_MM
) -> ParameterInfo:
    """Register a length in mm. A word as ``default`` says where the size comes from when it is left out."""
    return ParameterInfo(name, "length", meaning, default, least, most)


def angle(name: str, meaning: str, least: float, most: float, default: float | str | None = None) -> ParameterInfo:
    """Register an angle in degrees. A word as ``default`` says where it comes from when it is left out."""
    return ParameterInfo(name, "angle", meaning, default, least, most)


def count(name: str, meaning: str, least: int, most: int, default: int | None = None) -> ParameterInfo:
    """Register a whole number."""
    return ParameterInfo(name, "count", meaning, default, least, most)


def choice(name: str, meaning: str, choices: tuple[str, ...], default: str | None = None) -> ParameterInfo:
    """Register a choice of words; the first one is the default if none is named."""
    return ParameterInfo(name, "choice", meaning, default or choices[0], choices=choices)


def just_one(values: Values, one: str, other: str) -> Iterator[Finding]:
    """Find that both or neither of two sizes are given, of which each follows from the other."""
    if values.says(one) == values.says(other):
        both = values.says(one)
        yield values.wrong(
            one,
            f"{one} and {other} are both given, and each follows from the other"
            if both
            else f"neither {one} nor {other} is given",
            f"write {one} or {other}, just one of them",
        )


def edges_of(
    outer: Path,
    names: Iterable[str],
    inside: Iterable[str] = (),
    bevels: Mapping[str, float] | None = None,
) -> tuple[Edge, ...]:
    """Return the named edges of a path: each from the start of its first line or arc to the end of its last.

    Edges named in ``inside`` have their nominal place on the inside face. ``bevels``: degrees from square that the shape
    itself asks for; a join at the edge says its own instead, so they are never counted twice.
    """
    behind, own_bevels = tuple(inside), bevels or {}
    edges = []
    for name in names:
        own = [edge for edge in outer.edges if edge.name == name]
        start, end = own[0].start, own[-1].end
        face: Literal["outside", "inside"] = "inside" if name in behind else "outside"
        bevel = own_bevels.get(name, 0.0)
        made = Edge(name, start, end, start, end, face, bevel, shaped=bevel)
        first = own[0]
        edges.append(replace(made, centre=first.centre, radius=first.radius) if isinstance(first, Arc) else made)
    return tuple(edges)


def cornered(
    corners: Sequence[tuple[Point, str]],
    names: Iterable[str] = (),
    *,
    inside: Iterable[str] = (),
    bevels: Mapping[str, float] | None = None,
    **more: Any,
) -> Shape:
    """Return a shape of straight lines: each corner (mm) with the name of the line that begins there, as ``straight`` takes them.

    ``names``: the edges that joins may name, all of them where none are given; ``inside``, ``bevels``: as for ``edges_of``;
    ``more``: further fields of ``Shape``.
    """
    outer = straight(corners)
    return Shape(outer, edges_of(outer, tuple(names) or [name for _, name in corners], inside, bevels), **more)


def rectangle(width: float, height: float, names: tuple[str, ...] = SIDES, **more: Any) -> Shape:
    """Return an upright rectangle (mm), its lower left corner at the origin; ``more``: as for ``cornered``."""
    corners = ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height))
    return cornered(tuple(zip(corners, names, strict=True)), **more)
