"""How parts go together: layers, placed panels, facts, meetings, line drawings. Millimetres and degrees."""

from dataclasses import dataclass

from publisher.basics import Finding, Point, Pose
from publisher.design import Fact

Matrix = tuple[float, float, float, float, float, float, float, float, float, float, float, float]


@dataclass(frozen=True, slots=True)
class Layer:
    """One layer of a stack: its part, its pose in plan, the height of its underside, its section, its number from 1."""

    part: str
    pose: Pose
    bottom: float
    thickness: float
    section: str
    number: int


@dataclass(frozen=True, slots=True)
class Placed:
    """A panel placed in space. ``matrix`` is 3 × 4, row by row: it carries (x, y, z, 1) of the part to the assembly;
    the part's drawn face is z = 0 and its inside face z = -thickness; the assembly's z is up and the table z = 0."""

    place: str
    part: str
    matrix: Matrix


@dataclass(frozen=True, slots=True)
class Meeting:
    """A printed size that meets something that does not shrink with the paper.

    With s the print scale, the design works while ``s * printed >= unprinted_least`` and, where ``loosest`` is given,
    ``s * printed <= loosest`` (mm). ``what`` says it in words: ``slot of part C for the tab of part B``.
    """

    name: str
    part: str
    what: str
    printed: float
    unprinted_least: float
    loosest: float | None = None


@dataclass(frozen=True, slots=True)
class DrawnLine:
    """A visible line of a drawing: ``weight`` is ``outline`` (silhouettes and part edges), ``detail`` (marks, arcs' facets
    left out), ``ghost`` (what lies below, shown on purpose) or ``cue`` (line-up marks, arrows)."""

    weight: str
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Label:
    """Words at a point of a drawing (a part's letter, a matching letter)."""

    text: str
    at: Point


@dataclass(frozen=True, slots=True)
class Drawing:
    """A line drawing in mm of the piece (not of the page), lower left at (0, 0); hidden lines are not in it.

    ``name``: ``whole:ASSEMBLY``, ``exploded:ASSEMBLY``, ``plan:ASSEMBLY:LAYER`` or ``part:PART``. ``alt`` says in a sentence what it shows.
    """

    name: str
    alt: str
    lines: tuple[DrawnLine, ...]
    labels: tuple[Label, ...]
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Joined:
    """All that joints says about one design."""

    layers: tuple[tuple[str, tuple[Layer, ...]], ...]  # per stack assembly, all its sections from the table up
    placed: tuple[tuple[str, tuple[Placed, ...]], ...]  # per panel assembly
    facts: tuple[Fact, ...]
    meetings: tuple[Meeting, ...]
    drawings: tuple[Drawing, ...]
    findings: tuple[Finding, ...]

    def fact(self, name: str) -> Fact | None:
        """Return the fact with this name, or None."""
        return next((f for f in self.facts if f.name == name), None)

    def drawing(self, name: str) -> Drawing | None:
        """Return the drawing with this name, or None."""
        return next((d for d in self.drawings if d.name == name), None)
