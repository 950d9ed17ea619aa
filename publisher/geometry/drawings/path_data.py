"""Path data (SVG 1.1, section 8.3) as lines, cubic Béziers and elliptical arcs with absolute points."""

import re
from dataclasses import dataclass, field
from functools import cache

from publisher.basics import Point, record
from publisher.geometry.drawings.numbers import MOST_PIECES, NUMBER, sound, too_many

_COUNTS = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2, "A": 7, "Z": 0}
_COMMAND = re.compile(r"\s*,?\s*([MmLlHhVvCcSsQqTtAaZz])")
_FLAG = r"\s*,?\s*([01])"
_VALUE = rf"\s*,?\s*({NUMBER.pattern})"


@cache
def _values(kind: str) -> re.Pattern[str]:
    """Return the pattern of a command's numbers, compiled when a drawing has the command: most commands of ours read no drawing."""
    return re.compile((_VALUE * 3 + _FLAG * 2 + _VALUE * 2) if kind == "A" else _VALUE * _COUNTS[kind])


@record
class Straight:
    """A straight line."""

    a: Point
    b: Point


@record
class Cubic:
    """A cubic Bézier."""

    a: Point
    p: Point
    q: Point
    b: Point


@record
class Elliptic:
    """An elliptical arc as path data gives it; ``turn`` in degrees."""

    a: Point
    rx: float
    ry: float
    turn: float
    large: bool
    sweep: bool
    b: Point


PathSegment = Straight | Cubic | Elliptic


@dataclass(slots=True)
class Subpath:
    """Pieces end to end; ``closed`` by a Z (its closing line is among the pieces)."""

    start: Point
    pieces: list[PathSegment] = field(default_factory=list)
    closed: bool = False


def read_path(text: str) -> tuple[list[Subpath], str]:
    """Return the subpaths of a ``d`` attribute up to its first error (SVG 1.1, F.2), and the error in words, if any.

    Raises Unreadable for more pieces than a drawing has, and for numbers beyond all drawings.
    """
    reader = _PathReader()
    at, command = 0, ""
    text = text.strip()
    if text == "none":
        return [], ""
    while at < len(text):
        match = _COMMAND.match(text, at)
        if match:
            command, at = match[1], match.end()
        elif not command or command in "Zz":
            return reader.result(text, at)
        values = _values(command.upper()).match(text, at)
        if values is None or (not reader.subpaths and command not in "Mm"):
            return reader.result(text, at)
        at = values.end()
        reader.do(command, [sound(float(v), v) for v in values.groups()])
        if command in "Mm":
            command = "L" if command == "M" else "l"
    return reader.result(text, at)


class _PathReader:
    """Keeps the current point and the last control point."""

    def __init__(self) -> None:
        self.subpaths: list[Subpath] = []
        self.at: Point = (0.0, 0.0)
        self.control: Point | None = None
        self.last = ""
        self.count = 0

    def result(self, text: str, at: int) -> tuple[list[Subpath], str]:
        """Return the subpaths that draw something, and the error at this place of the text, if it is not the end."""
        rest = text[at : at + 20].strip()
        problem = f"its path data cannot be read at “{rest}” (letter {at + 1})" if at < len(text) else ""
        return [path for path in self.subpaths if path.pieces], problem

    def do(self, command: str, v: list[float]) -> None:
        """Carry out one command with its numbers."""
        kind = command.upper()
        x, y = self.at if command.islower() else (0.0, 0.0)
        self.count += 1
        if self.count > MOST_PIECES:
            raise too_many()
        if kind == "M":
            self.at = (x + v[0], y + v[1])
            self.subpaths.append(Subpath(self.at))
        elif kind == "Z":
            self._close()
        else:
            self._draw(kind, v, x, y)
        self.last = kind

    def _close(self) -> None:
        path = self.subpaths[-1]
        if path.pieces and self.at != path.start:
            path.pieces.append(Straight(self.at, path.start))
        path.closed, self.at = True, path.start

    def _draw(self, kind: str, v: list[float], x: float, y: float) -> None:
        if self.subpaths[-1].closed:  # drawing goes on after Z from the start point
            self.subpaths.append(Subpath(self.at))
        a = self.at
        b = (x + v[-2], y + v[-1]) if kind not in "HV" else a
        piece: PathSegment
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
            piece = Elliptic(a, abs(v[0]), abs(v[1]), v[2], v[3] == 1.0, v[4] == 1.0, b)
        else:
            b = (x + v[0], a[1]) if kind == "H" else (a[0], y + v[0]) if kind == "V" else b
            piece = Straight(a, b)
        self.subpaths[-1].pieces.append(piece)
        self.at, self.control = b, control

    def _mirrored(self, after: str) -> Point:
        if self.control is None or self.last not in after:
            return self.at
        return (2.0 * self.at[0] - self.control[0], 2.0 * self.at[1] - self.control[1])


def _two_thirds(end: Point, control: Point) -> Point:
    """Raise a quadratic to a cubic: its control points lie two thirds of the way to the quadratic's."""
    return (end[0] + 2.0 / 3.0 * (control[0] - end[0]), end[1] + 2.0 / 3.0 * (control[1] - end[1]))
