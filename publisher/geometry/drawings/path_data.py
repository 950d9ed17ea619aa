"""Path data (SVG 1.1, section 8.3) as lines, cubic Béziers and elliptical arcs with absolute points."""

import re
from dataclasses import dataclass, field
from math import isfinite

from publisher.basics import Point
from publisher.geometry.drawings.numbers import LARGEST, NUMBER
from publisher.geometry.drawings.tree import Unreadable

_COUNTS = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2, "A": 7, "Z": 0}
_TOKEN = re.compile(rf"\s*,?\s*(?:([MmLlHhVvCcSsQqTtAaZz])|({NUMBER.pattern}))")
_FLAG = re.compile(r"\s*,?\s*([01])")
MOST_PIECES = 50_000


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line."""

    a: Point
    b: Point


@dataclass(frozen=True, slots=True)
class Cubic:
    """A cubic Bézier."""

    a: Point
    p: Point
    q: Point
    b: Point


@dataclass(frozen=True, slots=True)
class Arc:
    """An elliptical arc as path data gives it; ``turn`` in degrees."""

    a: Point
    rx: float
    ry: float
    turn: float
    large: bool
    sweep: bool
    b: Point


Piece = Line | Cubic | Arc


@dataclass(slots=True)
class Subpath:
    """Pieces end to end; ``closed`` by a Z (its closing line is among the pieces)."""

    start: Point
    pieces: list[Piece] = field(default_factory=list)
    closed: bool = False


def read_path(text: str) -> list[Subpath]:
    """Return the subpaths of a ``d`` attribute; path data that cannot be read to its end is refused."""
    reader = _Reader()
    at, command = 0, ""
    text = text.rstrip()
    while at < len(text):
        match = _TOKEN.match(text, at)
        if match is None:
            raise _bad(text, at)
        if match[1]:
            command, at = match[1], match.end()
        elif not command or command in "Zz":
            raise _bad(text, at)
        values, at = _values(text, at, command)
        reader.do(command, values)
        if command in "Mm":
            command = "L" if command == "M" else "l"
    return reader.subpaths


def _bad(text: str, at: int) -> Unreadable:
    return Unreadable(
        f"path data cannot be read at “{text[at : at + 20].strip()}”", "save the drawing again as plain SVG"
    )


def _values(text: str, at: int, command: str) -> tuple[list[float], int]:
    values: list[float] = []
    for k in range(_COUNTS[command.upper()]):
        flag = command in "Aa" and k in (3, 4)
        match = (_FLAG if flag else _TOKEN).match(text, at)
        found = match and (match[1] if flag else match[2])
        if match is None or not found:
            raise _bad(text, at)
        value = float(found)
        if not isfinite(value) or abs(value) > LARGEST:
            raise _bad(text, at)
        values.append(value)
        at = match.end()
    return values, at


class _Reader:
    """Keeps the current point and the last control point."""

    def __init__(self) -> None:
        self.subpaths: list[Subpath] = []
        self.at: Point = (0.0, 0.0)
        self.control: Point | None = None
        self.last = ""
        self.count = 0

    def do(self, command: str, v: list[float]) -> None:
        """Carry out one command with its numbers."""
        kind = command.upper()
        x, y = self.at if command.islower() else (0.0, 0.0)
        self.count += 1
        if self.count > MOST_PIECES:
            raise Unreadable("the path has too many points", f"simplify it: at most {MOST_PIECES}")
        if kind == "M":
            self.at = (x + v[0], y + v[1])
            self.subpaths.append(Subpath(self.at))
        elif not self.subpaths:
            raise Unreadable("path data does not begin with a move (M)", "save the drawing again as plain SVG")
        elif kind == "Z":
            self._close()
        else:
            self._draw(kind, v, x, y)
        self.last = kind

    def _close(self) -> None:
        path = self.subpaths[-1]
        if path.pieces and self.at != path.start:
            path.pieces.append(Line(self.at, path.start))
        path.closed, self.at = True, path.start

    def _draw(self, kind: str, v: list[float], x: float, y: float) -> None:
        if self.subpaths[-1].closed:  # drawing goes on after Z from the start point
            self.subpaths.append(Subpath(self.at))
        a = self.at
        b = (x + v[-2], y + v[-1]) if kind not in "HV" else a
        piece: Piece
        control: Point | None = None
        if kind == "C":
            control = (x + v[2], y + v[3])
            piece = Cubic(a, (x + v[0], y + v[1]), control, b)
        elif kind == "S":
            control = (x + v[0], y + v[1])
            piece = Cubic(a, self._mirrored("CS"), control, b)
        elif kind in "QT":
            control = (x + v[0], y + v[1]) if kind == "Q" else self._mirrored("QT")
            piece = Cubic(a, _two_thirds(a, control), _two_thirds(b, control), b)
        elif kind == "A":
            piece = Arc(a, abs(v[0]), abs(v[1]), v[2], v[3] == 1.0, v[4] == 1.0, b)
        else:
            b = (x + v[0], a[1]) if kind == "H" else (a[0], y + v[0]) if kind == "V" else b
            piece = Line(a, b)
        self.subpaths[-1].pieces.append(piece)
        self.at, self.control = b, control

    def _mirrored(self, after: str) -> Point:
        if self.control is None or self.last not in after:
            return self.at
        return (2.0 * self.at[0] - self.control[0], 2.0 * self.at[1] - self.control[1])


def _two_thirds(end: Point, control: Point) -> Point:
    """Raise a quadratic to a cubic: its control points lie two thirds of the way to the quadratic's."""
    return (end[0] + 2.0 / 3.0 * (control[0] - end[0]), end[1] + 2.0 / 3.0 * (control[1] - end[1]))
