"""Path operators (ISO 32000-1, 8.5): construction, painting, clipping."""

from collections.abc import Callable
from functools import cache
from itertools import pairwise
from math import ceil, sqrt
from typing import Any

import numpy as np

from publisher.basics import Box
from publisher.proof.reading.canvas import Canvas
from publisher.proof.reading.matrices import stretches
from publisher.proof.reading.model import Array, Clip, PaintedPath
from publisher.proof.reading.objects import TooMuch

FLATNESS = 0.002  # mm between a Bézier and its chords
MOST_CHORDS = 2000
MOST_CLIPS = 12  # that are no rectangles, inside each other

Operands = list[Any]


class PathOperators:
    """Builds a path in user space, and paints it on the canvas in mm.

    A path is a flat list of numbers: lists of points would be millions of small objects in a large file.
    """

    def __init__(self, canvas: Canvas) -> None:
        """Start without a path."""
        self.canvas = canvas
        self.flat: list[float] = []
        self.starts: list[int] = []  # where in ``flat`` each subpath begins
        self.curves: list[tuple[int, int]] = []  # the first inner point of each Bézier, and its chords
        self.is_closed = False  # the last subpath: what follows begins a new one
        self.clip_rule = ""

    def forget(self) -> None:
        """Drop the path."""
        self.flat, self.starts, self.curves, self.is_closed, self.clip_rule = [], [], [], False, ""
        self.canvas.in_path = False

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
        x, y = operands
        self.starts.append(len(self.flat))
        self.flat += (x, y)
        self.is_closed = False
        self.canvas.in_path = True

    def line(self, operands: Operands) -> None:
        """l: a straight line."""
        x, y = operands
        if self.is_closed or not self.flat:
            self._go_on()
        self.flat += (x, y)

    def curve(self, operands: Operands) -> None:
        """c: a Bézier with two control points."""
        x1, y1, x2, y2, x3, y3 = operands
        if self.is_closed or not self.flat:
            self._go_on()
        x0, y0 = self.flat[-2:]
        # a chord of a curve with second derivative D leaves it by at most D / (8 n²); D ≤ 6 max |Pi − 2 Pi+1 + Pi+2|
        bend = 6.0 * max(abs(x0 - 2 * x1 + x2) + abs(y0 - 2 * y1 + y2), abs(x1 - 2 * x2 + x3) + abs(y1 - 2 * y2 + y3))
        bend *= stretches(self.canvas.state.ctm)[1]
        chords = 2 * min(
            max(1, ceil(0.5 * sqrt(bend / (8 * FLATNESS)))), MOST_CHORDS // 2
        )  # even: its middle is a point
        points = _basis(chords) @ np.array(((x0, y0), (x1, y1), (x2, y2), (x3, y3)))
        self.curves.append((len(self.flat) // 2, chords))
        self.flat += points.ravel().tolist()
        self.flat += (x3, y3)
        self.canvas.spent.points += chords

    def curve_v(self, operands: Operands) -> None:
        """v: the first control point is the current point."""
        if self.is_closed or not self.flat:
            self._go_on()
        self.curve([*self.flat[-2:], *operands])

    def curve_y(self, operands: Operands) -> None:
        """y: the second control point is the end."""
        self.curve([*operands, *operands[-2:]])

    def close(self, _: Operands) -> None:
        """h: back to where the subpath began."""
        if self.flat and not self.is_closed:
            first = self.starts[-1]
            if self.flat[first : first + 2] != self.flat[-2:]:
                self.flat += self.flat[first : first + 2]
            self.is_closed = True

    def rectangle(self, operands: Operands) -> None:
        """re: a closed rectangle."""
        x, y, width, height = operands
        self.starts.append(len(self.flat))
        self.flat += (x, y, x + width, y, x + width, y + height, x, y + height, x, y)
        self.is_closed = True
        self.canvas.in_path = True

    def clip(self, rule: str) -> None:
        """W, W*: the path being painted next also becomes the clip."""
        self.clip_rule = rule

    def _go_on(self) -> None:
        """Begin a new subpath where the last one began; a line without any start is an error of the file."""
        first = self.starts[-1]
        start = self.flat[first : first + 2]
        self.starts.append(len(self.flat))
        self.flat += start
        self.is_closed = False

    def _painter(self, close: bool, fill: bool, stroke: bool, even_odd: bool) -> Callable[[Operands], None]:
        def paint(operands: Operands) -> None:
            if close:
                self.close(operands)
            flat, starts, curves, rule = self.flat, self.starts, self.curves, self.clip_rule
            self.forget()
            if flat:
                self._paint(flat, starts, curves, rule, (fill, stroke, even_odd))

        return paint

    def _paint(
        self,
        flat: list[float],
        starts: list[int],
        curves: list[tuple[int, int]],
        rule: str,
        how: tuple[bool, bool, bool],
    ) -> None:
        canvas, state = self.canvas, self.canvas.state
        a, b, c, d, e, f = state.ctm
        with np.errstate(all="ignore"):  # numbers of 400 digits are told apart below
            points = np.array(flat, dtype=float).reshape(-1, 2) @ ((a, b), (c, d)) + (e, f)
        if not np.isfinite(points).all():
            raise ValueError("a point at infinity")
        bounds = np.array([*starts, len(flat)]) // 2
        canvas.spent.points += len(points)
        fill, stroke, _ = how
        if fill or stroke:
            canvas.pieces.append(self._painted(points, bounds, _knots(len(points), curves), how))
        if rule:
            rings = tuple(points[i:j] for i, j in pairwise(bounds.tolist()))
            state.clip = clipped(state.clip, points, rings, rule == "W*")

    def _painted(self, points: Array, bounds: Array, knots: Array | None, how: tuple[bool, bool, bool]) -> PaintedPath:
        """Return what shows of a path (points in mm) that is filled, stroked or both, by the state at hand (8.5.3)."""
        canvas, state = self.canvas, self.canvas.state
        fill, stroke, even_odd = how
        if fill and state.fill_grey is None:
            canvas.unread["an area filled with a pattern"] = None
        if (fill and state.fill_alpha < 1.0) or (stroke and state.stroke_alpha < 1.0):
            canvas.unread["a line or area that one can see through"] = None
        if stroke and state.stroke_grey is None:
            canvas.unread["a line drawn with a pattern"] = None
        least, most = stretches(state.ctm) if stroke else (0.0, 0.0)
        scale = sqrt(least * most)
        return PaintedPath(
            canvas.next_order(),
            points,
            box_round(points),
            bounds,
            state.width * least,
            state.width * most,
            tuple(d * scale for d in state.dash),
            state.stroke() if stroke else None,
            state.fill() if fill else None,
            even_odd,
            state.clip,
            canvas.visible(),
            state.fill_alpha > 0.5 and state.fill_grey is not None,
            knots,
        )


def _knots(count: int, curves: list[tuple[int, int]]) -> Array | None:
    """Return which of so many points are ends of lines, or middles or ends of Béziers; None where there is no Bézier."""
    if not curves:
        return None
    knots: Array = np.ones(count, dtype=bool)
    for first, chords in curves:
        knots[first : first + chords - 1] = False
        knots[first + chords // 2 - 1] = True
    return knots


def box_round(points: Array) -> Box:
    """Return the box round points."""
    return Box(*points.min(axis=0).tolist(), *points.max(axis=0).tolist())


def clipped(clip: Clip, points: Array, rings: tuple[Array, ...], even_odd: bool) -> Clip:
    """Return the clip cut down to a path of these rings (8.5.4); ``points`` are the points of all of them."""
    box = clip.box.common(box_round(points))
    if len(rings) == 1 and _is_upright(rings[0]):
        return Clip(box, clip.shapes)
    if len(clip.shapes) >= MOST_CLIPS:
        raise TooMuch("dozens of clips lie inside each other")
    return Clip(box, (*clip.shapes, (rings, even_odd)))


def _is_upright(ring: Array) -> bool:
    """Say whether a ring is an upright rectangle."""
    corners = ring[:-1] if len(ring) == 5 and np.array_equal(ring[0], ring[-1]) else ring
    if len(corners) != 4:
        return False
    level = np.abs(corners - np.roll(corners, -1, axis=0)) < 1e-6  # (4, 2): x kept, y kept along each side
    return bool(level.any(axis=1).all() and (level[0] != level[1]).any() and (level[0] == level[2]).all())


@cache
def _basis(chords: int) -> Array:
    """Return Bernstein weights of the inner points of a cubic in equal parameter steps."""
    t = np.arange(1, chords)[:, None] / chords
    return np.hstack(((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3))
