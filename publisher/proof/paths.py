"""Path operators (ISO 32000-1, 8.5): construction, painting, clipping. Points are carried to mm as they come."""

from collections.abc import Callable
from functools import cache
from math import ceil, sqrt
from typing import Any

import numpy as np

from publisher.basics import Box
from publisher.proof.canvas import Canvas
from publisher.proof.matrices import stretches
from publisher.proof.model import Clip, Coordinates, Piece

FLATNESS = 0.002  # mm between a Bézier and its chords
MOST_CHORDS = 2000

Operands = list[Any]


class PathOperators:
    """Builds a path and paints it on the canvas."""

    def __init__(self, canvas: Canvas) -> None:
        """Start without a path."""
        self.canvas = canvas
        self.lines: list[Coordinates] = []
        self.closed: list[bool] = []
        self.clip_rule = ""
        self.at = (0.0, 0.0)

    def handlers(self) -> dict[bytes, Callable[[Operands], None]]:
        """Return operator → function."""
        table: dict[bytes, Callable[[Operands], None]] = {
            b"m": self.move, b"l": self.line, b"c": self.curve, b"v": self.curve_v, b"y": self.curve_y,
            b"h": self.close, b"re": self.rectangle,
            b"W": lambda _: self.clip("W"), b"W*": lambda _: self.clip("W*"),
        }  # fmt: skip
        for name, close, fill, stroke, even_odd in (
            (b"S", False, False, True, False), (b"s", True, False, True, False),
            (b"f", False, True, False, False), (b"F", False, True, False, False), (b"f*", False, True, False, True),
            (b"B", False, True, True, False), (b"B*", False, True, True, True),
            (b"b", True, True, True, False), (b"b*", True, True, True, True), (b"n", False, False, False, False),
        ):  # fmt: skip
            table[name] = self._painter(close, fill, stroke, even_odd)
        return table

    def move(self, operands: Operands) -> None:
        """m: begin a subpath."""
        x, y = operands[-2], operands[-1]
        a, b, c, d, e, f = self.canvas.state.ctm
        self.at = (a * x + c * y + e, b * x + d * y + f)
        self.lines.append([self.at])
        self.closed.append(False)

    def line(self, operands: Operands) -> None:
        """l: a straight line."""
        x, y = operands[-2], operands[-1]
        a, b, c, d, e, f = self.canvas.state.ctm
        self.at = (a * x + c * y + e, b * x + d * y + f)
        self._open_line().append(self.at)

    def curve(self, operands: Operands) -> None:
        """c: a Bézier with two control points."""
        x1, y1, x2, y2, x3, y3 = operands[-6:]
        a, b, c, d, e, f = self.canvas.state.ctm
        self._bezier(
            (a * x1 + c * y1 + e, b * x1 + d * y1 + f),
            (a * x2 + c * y2 + e, b * x2 + d * y2 + f),
            (a * x3 + c * y3 + e, b * x3 + d * y3 + f),
        )

    def curve_v(self, operands: Operands) -> None:
        """v: the first control point is the current point."""
        x2, y2, x3, y3 = operands[-4:]
        a, b, c, d, e, f = self.canvas.state.ctm
        self._bezier(self.at, (a * x2 + c * y2 + e, b * x2 + d * y2 + f), (a * x3 + c * y3 + e, b * x3 + d * y3 + f))

    def curve_y(self, operands: Operands) -> None:
        """y: the second control point is the end."""
        x1, y1, x3, y3 = operands[-4:]
        self.curve([x1, y1, x3, y3, x3, y3])

    def close(self, _: Operands) -> None:
        """h: back to where the subpath began."""
        if self.lines and len(self.lines[-1]) > 1:
            self.closed[-1] = True
            self.at = self.lines[-1][0]

    def rectangle(self, operands: Operands) -> None:
        """re: a closed rectangle."""
        x, y, width, height = operands[-4:]
        a, b, c, d, e, f = self.canvas.state.ctm
        corners = ((x, y), (x + width, y), (x + width, y + height), (x, y + height))
        self.lines.append([(a * u + c * v + e, b * u + d * v + f) for u, v in corners])
        self.closed.append(True)
        self.at = self.lines[-1][0]

    def clip(self, rule: str) -> None:
        """W, W*: the path being painted next also becomes the clip."""
        self.clip_rule = rule

    def _open_line(self) -> Coordinates:
        """Return the subpath to go on with; after h a new one begins where the last began."""
        if not self.lines:
            raise ValueError("a line without a start")
        if self.closed[-1]:
            self.lines.append([self.lines[-1][0]])
            self.closed.append(False)
        return self.lines[-1]

    def _bezier(self, one: tuple[float, float], two: tuple[float, float], end: tuple[float, float]) -> None:
        line = self._open_line()
        start = line[-1]
        # a chord of a curve with second derivative D leaves it by at most D / (8 n²); D ≤ 6 max |Pi − 2 Pi+1 + Pi+2|
        bend = 6.0 * max(
            abs(start[0] - 2 * one[0] + two[0]) + abs(start[1] - 2 * one[1] + two[1]),
            abs(one[0] - 2 * two[0] + end[0]) + abs(one[1] - 2 * two[1] + end[1]),
        )
        chords = min(max(1, ceil(sqrt(bend / (8 * FLATNESS)))), MOST_CHORDS)
        if chords > 1:
            points = _basis(chords) @ np.array((start, one, two, end))
            line.extend(map(tuple, points.tolist()))
        line.append(end)
        self.at = end
        self.canvas.spent.points += chords

    def _painter(self, close: bool, fill: bool, stroke: bool, even_odd: bool) -> Callable[[Operands], None]:
        def paint(operands: Operands) -> None:
            if close:
                self.close(operands)
            self._paint(fill, stroke, even_odd)

        return paint

    def _paint(self, fill: bool, stroke: bool, even_odd: bool) -> None:
        canvas, state = self.canvas, self.canvas.state
        lines, closed, rule = self.lines, self.closed, self.clip_rule
        self.lines, self.closed, self.clip_rule = [], [], ""
        if not lines:
            return
        if fill or stroke:
            least, most = stretches(state.ctm) if stroke else (0.0, 0.0)
            scale = sqrt(least * most)
            if fill and state.fill_grey is None:
                canvas.unread["an area filled with a pattern"] = None
            if stroke and state.stroke_grey is None:
                canvas.unread["a line drawn with a pattern"] = None
            canvas.pieces.append(
                Piece(
                    canvas.next_order(),
                    tuple(lines),
                    tuple(closed),
                    state.width * least,
                    state.width * most,
                    tuple(d * scale for d in state.dash),
                    state.stroke() if stroke else None,
                    state.fill() if fill else None,
                    even_odd,
                    state.clip,
                    canvas.visible(),
                    state.fill_alpha > 0.5 and state.fill_grey is not None,
                )
            )
            canvas.spent.points += sum(map(len, lines))
        if rule:
            state.clip = clipped(state.clip, tuple(lines), rule == "W*")


def clipped(clip: Clip, rings: tuple[Coordinates, ...], even_odd: bool) -> Clip:
    """Return the clip cut down to a path (8.5.4)."""
    xs = [p[0] for ring in rings for p in ring]
    ys = [p[1] for ring in rings for p in ring]
    old = clip.box
    box = Box(max(old.left, min(xs)), max(old.bottom, min(ys)), min(old.right, max(xs)), min(old.top, max(ys)))
    if len(rings) == 1 and _is_upright(rings[0]):
        return Clip(box, clip.shapes)
    return Clip(box, (*clip.shapes, (rings, even_odd)))


def _is_upright(ring: Coordinates) -> bool:
    corners = ring[:-1] if len(ring) == 5 and ring[0] == ring[-1] else ring
    if len(corners) != 4:
        return False
    xs = {round(p[0], 6) for p in corners}
    ys = {round(p[1], 6) for p in corners}
    steps = zip(corners, (*corners[1:], corners[0]), strict=True)
    return len(xs) <= 2 and len(ys) <= 2 and all(abs(p[0] - q[0]) < 1e-6 or abs(p[1] - q[1]) < 1e-6 for p, q in steps)


@cache
def _basis(chords: int) -> "np.ndarray[Any, np.dtype[np.float64]]":
    """Return Bernstein weights of the inner points of a cubic in equal parameter steps."""
    t = np.arange(1, chords)[:, None] / chords
    return np.hstack(((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3))
