"""A cut file read as a stranger would: the little of SVG that a cut file may hold, and in words whatever else stands there.

Specification: SVG 1.1 (second edition), 7.7 viewBox, 8.3 path data, F.6.5 centre of an arc. Arcs are flattened to 0.002 mm.
"""

import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from dataclasses import field
from math import acos, atan2, ceil, cos, dist, hypot, pi, sin, sqrt

import numpy as np

from publisher.basics import Point, record
from publisher.proof.reading import Array

SVG = "{http://www.w3.org/2000/svg}"
FINE = 0.002  # mm: greatest distance between a chord and its arc
MOST_CUT_BYTES = 40_000_000
MOST_POINTS = 4_000_000
MOST_MM = 100_000.0  # of any number: no sheet is 100 m long
MOST_LENGTH = 10_000_000.0  # mm of all lines together: what is measured every few mm must stay countable
LONGEST_NUMBER = 40  # letters
TOO_MANY = "it has more than 4 million points"
GROUP_WORDS = {"id", "fill", "stroke", "stroke-width", "stroke-dasharray", "font-family", "text-anchor"}
MAY_SAY = {
    "svg": {"baseProfile", "height", "version", "viewBox", "width"},
    "g": GROUP_WORDS,
    "path": {"d"},
    "rect": {"x", "y", "width", "height"},
    "text": {"x", "y", "font-size"},
    "title": set[str](),
    "defs": set[str](),
}
NUMBER = re.compile(r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?")
TOKEN = re.compile(rf"\s*,?\s*([MLAZ]|{NUMBER.pattern})")
TAKES = {"M": 2, "L": 2, "A": 7, "Z": 0}


@record
class CutGroup:
    """A group of lines as it is drawn: what it is called, and how its lines are painted."""

    name: str
    fill: str
    stroke: str
    width: float
    dashes: str


@record
class CutPath:
    """One path: its subpaths as points (mm, y upward), each with whether it is closed, and the length of the shortest."""

    group: str
    lines: tuple[Array, ...]
    closed: tuple[bool, ...]

    @property
    def shortest(self) -> float:
        """Length in mm of its shortest subpath."""
        return min((sum(map(dist, line[:-1], line[1:])) for line in map(Array.tolist, self.lines)), default=0.0)


@record
class CutWords:
    """Words, the middle of their baseline (mm, y upward), and their em in mm."""

    group: str
    text: str
    at: Point
    height: float


@record
class CutFile:
    """A cut file as read. ``trouble``: why it cannot be read at all. ``view``: width and height of its viewBox, which are mm when they
    are equal to ``width`` and ``height``. ``strange``: in words, what no cut file holds. ``edges``: the rectangles."""

    trouble: str = ""
    title: str = ""
    width: float = 0.0
    height: float = 0.0
    view: tuple[float, ...] = ()
    groups: tuple[CutGroup, ...] = ()
    paths: tuple[CutPath, ...] = ()
    words: tuple[CutWords, ...] = ()
    edges: tuple[tuple[float, float, float, float], ...] = ()
    strange: tuple[str, ...] = field(default=())


def read_svg(data: bytes) -> CutFile:
    """Return what a cut file shows. Any bytes may come in: what cannot be read is said in words, never raised."""
    if len(data) > MOST_CUT_BYTES:
        return CutFile("it is larger than 40 MB")
    if b"<!DOCTYPE" in data or b"<!ENTITY" in data:
        return CutFile("it declares a document type, through which a reader can be made to read anything")
    try:
        root = ET.fromstring(data)
    except (ET.ParseError, ValueError, LookupError, RecursionError):
        return CutFile("it is no well-formed XML")
    if root.tag != f"{SVG}svg":
        return CutFile("it is no SVG")
    try:
        return _Reader(root).file()
    except (ValueError, ArithmeticError, RecursionError) as trouble:
        return CutFile(str(trouble) or "its numbers make no sense")


class _Reader:
    """Goes through the tree once."""

    def __init__(self, root: ET.Element) -> None:
        self.root = root
        self.strange: dict[str, None] = {}
        self.points, self.length = 0, 0.0

    def file(self) -> CutFile:
        """Return all that is there."""
        root = self.root
        self._judge(root, "svg")
        width, height = (_length(root.get(side, ""), side) for side in ("width", "height"))
        view = tuple(float(n) for n in NUMBER.findall(root.get("viewBox", "")))
        groups, paths, words, edges = [], [], [], []
        title = ""
        for child in root:
            name = self._name(child)
            self._judge(child, name)
            if name == "title":
                title = child.text or ""
            elif name == "g":
                group = _group(child)
                groups.append(group)
                for inner in child:
                    kind = self._name(inner)
                    self._judge(inner, kind)
                    if len(inner):
                        self._odd(f"something inside a {kind}")
                    if kind == "path":
                        paths.append(CutPath(group.name, *self._path(inner.get("d", ""), height)))
                    elif kind == "text":
                        at = (_number(inner, "x"), height - _number(inner, "y"))
                        words.append(CutWords(group.name, inner.text or "", at, _number(inner, "font-size")))
                    elif kind == "rect":
                        x, y, wide, high = (_number(inner, key) for key in ("x", "y", "width", "height"))
                        edges.append((x, height - y - high, wide, high))
                    else:
                        self._odd(f"a {kind} in a group")
            elif name != "defs" or len(child):
                self._odd(f"a {name} outside of all groups")
        return CutFile(
            "", title, width, height, view, tuple(groups), tuple(paths), tuple(words), tuple(edges), tuple(self.strange)
        )

    def _name(self, element: ET.Element) -> str:
        name = str(element.tag)
        return name.removeprefix(SVG) if name.startswith(SVG) else name

    def _judge(self, element: ET.Element, name: str) -> None:
        """Note attributes and words that no cut file has: a transform, a style, a class."""
        if name in MAY_SAY:
            for other in sorted(set(element.attrib) - MAY_SAY[name]):
                self._odd(f"“{other}” on a {name}")
        loose = [element.tail] if element is not self.root else []
        loose += [] if name in ("title", "text") else [element.text]
        if any(text and text.strip() for text in loose):
            self._odd("words outside of all elements")

    def _odd(self, what: str) -> None:
        self.strange.setdefault(what)

    def _path(self, d: str, height: float) -> tuple[tuple[Array, ...], tuple[bool, ...]]:
        lines: list[Array] = []
        closed: list[bool] = []
        for points, shut in _subpaths(d):
            self.points += len(points)
            if self.points > MOST_POINTS:
                raise ValueError(TOO_MANY)
            line = np.array(points, dtype=float)
            self.length += float(np.hypot(*np.diff(line, axis=0).T).sum())
            if self.length > MOST_LENGTH:
                raise ValueError("it has more than 10 km of lines")
            line[:, 1] = height - line[:, 1]
            lines.append(line)
            closed.append(shut)
        return tuple(lines), tuple(closed)


def _group(element: ET.Element) -> CutGroup:
    return CutGroup(
        element.get("id", ""),
        element.get("fill", ""),
        element.get("stroke", ""),
        _number(element, "stroke-width") if element.get("stroke-width") else 0.0,
        element.get("stroke-dasharray", ""),
    )


def _length(text: str, side: str) -> float:
    match = re.fullmatch(rf"({NUMBER.pattern})mm", text[:LONGEST_NUMBER])
    if match is None:
        raise ValueError(f"its {side} is “{text[:20]}”, not a number of mm")
    return _finite(match[1])


def _finite(text: str) -> float:
    """Return a number of mm. Raises ValueError for one that no sheet has room for."""
    value = float(text)
    if not abs(value) <= MOST_MM:  # so that no number at all is caught too
        raise ValueError(f"it holds the number {text[:20]}: nothing is longer than 100 m")
    return value


def _number(element: ET.Element, key: str) -> float:
    text = element.get(key, "")
    if len(text) > LONGEST_NUMBER or not NUMBER.fullmatch(text):
        raise ValueError(f"the {key} of something is “{text[:20]}”, not a plain number")
    return _finite(text)


def _subpaths(d: str) -> Iterator[tuple[list[Point], bool]]:
    """Yield the subpaths of path data in absolute moves, lines, arcs and closings; a closed one repeats its first point."""
    points: list[Point] = []
    for command, numbers in _commands(d):
        if command == "M":
            if points:
                yield points, False
            points = [(numbers[0], numbers[1])]
        elif not points:
            raise ValueError("a path begins without a move")
        elif command == "L":
            points.append((numbers[0], numbers[1]))
        elif command == "A":
            points += _arc(points[-1], numbers)
            if len(points) > MOST_POINTS:
                raise ValueError(TOO_MANY)
        else:
            if points[-1] != points[0]:
                points.append(points[0])
            yield points, True
            points = []
    if points:
        yield points, False


def _commands(d: str) -> Iterator[tuple[str, list[float]]]:
    at, command, numbers = 0, "", list[float]()
    text = d.rstrip()
    while at < len(text):
        match = TOKEN.match(text, at)
        if match is None:
            raise ValueError(f"a path holds “{text[at : at + 12]}”, which is no plain move, line, arc or closing")
        at, token = match.end(), match[1]
        if token in TAKES:
            if numbers:
                raise ValueError("a path lacks numbers")
            command = token
        else:
            numbers.append(_finite(token))
        if command and len(numbers) == TAKES[command]:
            yield command, numbers
            command, numbers = "", []
        elif not command and numbers:
            raise ValueError("a path has numbers that belong to nothing")
    if numbers or command:
        raise ValueError("a path lacks numbers")


def _arc(start: Point, numbers: list[float]) -> list[Point]:
    """Return the points of a circular arc after its start (SVG 1.1, F.6.5 and F.6.6)."""
    radius, other, _, large, sweep, x, y = numbers
    if radius != other or radius <= 0.0:
        raise ValueError("a path has an arc that is no part of a circle")
    (ax, ay), (bx, by) = start, (x, y)
    half = hypot(bx - ax, by - ay) / 2.0
    if half == 0.0:
        return []
    radius = max(radius, half)
    away = sqrt(max(radius * radius - half * half, 0.0)) * (-1.0 if (large != 0.0) == (sweep != 0.0) else 1.0)
    # the centre lies beside the middle of the chord, square to it
    cx = (ax + bx) / 2.0 - away * (by - ay) / (2.0 * half)
    cy = (ay + by) / 2.0 + away * (bx - ax) / (2.0 * half)
    first = atan2(ay - cy, ax - cx)
    turn = (atan2(by - cy, bx - cx) - first) % (2.0 * pi)
    if sweep == 0.0:
        turn -= 2.0 * pi
    step = 2.0 * acos(max(-1.0, 1.0 - FINE / radius))
    count = max(1, ceil(abs(turn) / step))
    between = [
        (cx + radius * cos(first + turn * k / count), cy + radius * sin(first + turn * k / count))
        for k in range(1, count)
    ]
    return [*between, (x, y)]
