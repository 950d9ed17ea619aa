"""What a kind of design hands on: the spec, the solids that it means, what touches what, and how near to its limits it is."""

from dataclasses import dataclass, field
from math import floor
from typing import Any

import yaml
from manifold3d import Manifold

Vector = tuple[float, float, float]
Spec = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Touch:
    """Two boards that are said to touch: moved ``way`` (unit vector) the second enters the first; ``area`` mm² of contact."""

    a: str
    b: str
    way: Vector
    area: float


@dataclass(frozen=True, slots=True)
class Fit:
    """A tongue of the thickest board that must enter the hole of a board: both solids in one place, which must not overlap.

    ``holds``: two boards that hold each other by it, though there is play between them.
    """

    name: str
    tongue: Manifold
    board: Manifold
    holds: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Rest:
    """A board that lies on others by its weight: its centre of mass stands over what carries it."""

    board: str
    on: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Piece:
    """One assembly as solids in space, in mm, on the table at z = 0."""

    name: str
    boards: tuple[tuple[str, Manifold], ...]
    touches: tuple[Touch, ...]
    fits: tuple[Fit, ...] = ()
    rests: tuple[Rest, ...] = ()


@dataclass(frozen=True, slots=True)
class Need:
    """A limit of the spec, and the value that our own mathematics gives."""

    fact: str
    at_least: float
    truth: float


@dataclass(frozen=True, slots=True)
class Base:
    """What designs of all kinds have: board (its thickness in mm), its spread, way of use, paper, and a need's margin."""

    title: str
    board: str
    spread: float
    use: str
    paper: str
    margin: float  # mm by which the need is met; less than 0 in a false twin

    @property
    def t(self) -> float:
        """Return the thickness of the board in mm."""
        return BOARDS[self.board]


BOARDS = {"3 mm": 3.0, "5 mm": 5.0, "10 mm": 10.0, "3/16 in": 25.4 * 3 / 16}
PAPERS: dict[str, tuple[float, float]] = {  # upright, mm; all but "roll" are of the tool's table
    "a4": (210.0, 297.0),
    "letter": (215.9, 279.4),
    "common": (210.0, 279.4),
    "a3": (297.0, 420.0),
    "tabloid": (279.4, 431.8),
    "a2": (420.0, 594.0),
    "roll": (420.0, 594.0),
    "legal": (215.9, 355.6),
    "a1": (594.0, 841.0),
    "arch_d": (609.6, 914.4),
}
SHEETS = {"20 x 30 in": (502.0, 756.0), "700 x 1000 mm": (694.0, 994.0)}  # less 3 mm of edge on each side


@dataclass(frozen=True, slots=True)
class Design:
    """A whole design: what the tool reads, and what we know of it."""

    kind: str
    seed: int
    plan: Any
    spec: str
    files: tuple[tuple[str, str], ...]
    pieces: tuple[Piece, ...]
    needs: tuple[Need, ...]
    facts: tuple[tuple[str, float], ...]
    joint: str
    base: Base
    near: tuple[tuple[str, float], ...] = field(default=())  # distances to limits: mm, degrees for angles


def mm(value: float) -> str:
    """Return a length as a designer writes it, to a thousandth."""
    return f"{round(value, 3):g} mm" if abs(value) >= 1e-3 else "0 mm"


def deg(value: float) -> str:
    """Return an angle as a designer writes it, to a millionth of a degree."""
    return f"{round(value, 6):.10g} deg"


def need(fact: str, base: Base, truth: float) -> Need:
    """Return the need of a fact: less than its true value by the margin of a design, to a thousandth, which is rounded down."""
    return Need(fact, floor((truth - base.margin) * 1000.0 + 1e-4) / 1000.0, truth)


def frame(base: Base, parts: Spec, assembly: Spec, needs: tuple[Need, ...], longest: float) -> str:
    """Return the whole spec as YAML. ``longest`` (mm) decides the sheet that parts are cut from."""
    sheet = next(name for name, (_, long) in SHEETS.items() if longest <= long or name == "700 x 1000 mm")
    allowance = {"trace_allowance": "0.4 mm"} if base.use == "trace" else {}
    spec: Spec = {
        "format": 2,
        "title": base.title,
        "version": "0.1.0",
        "use": base.use,
        "sizes": {"board": base.board},
        "boards": {
            "foam": {
                "thickness": "board",
                "thickness_spread": mm(base.spread),
                "faces": "bare",
                "sheets": [sheet],
                "knife_gap": "1 mm",
                "edge_margin": "3 mm",
                "grain": "none",
            }
        },
        "parts": {key: {"name": key.replace("_", " ").capitalize(), "board": "foam", **allowance, **part}
                  for key, part in parts.items()},
    }  # fmt: skip
    if assembly:
        spec["assembly"] = assembly
    if needs:
        spec["needs"] = [{"fact": need.fact, "at_least": mm(need.at_least)} for need in needs]
    width, height = PAPERS[base.paper]
    own = {"name": "roll", "width": mm(width), "height": mm(height), "margins": ["10 mm"] * 4}
    spec["papers"] = [own if base.paper == "roll" else base.paper]
    return yaml.safe_dump(spec, sort_keys=False, default_flow_style=None, width=140, allow_unicode=True)
