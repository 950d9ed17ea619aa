"""Promised marks held against the drawn strokes: lines to score, fold, draw and glue along."""

import numpy as np
import shapely

from publisher.basics import Box, MarkPromise, Point, record
from publisher.proof.measuring.ink import Ink
from publisher.proof.measuring.outlines import StrokeSegments
from publisher.proof.measuring.strewn import tried
from publisher.proof.reading import Array

MARK_TOLERANCE = 0.1  # mm that a point of a promised line may lie off the drawn one
LINE_STEP = 2.0  # mm between the points of a promised line that are tried
SAME_STROKE = 0.03  # mm between promised and drawn stroke widths and dashes
WINDOW_EDGE = 0.2  # mm inside a window where lines are not tried: the clip ends them there


@record
class MarkReading:
    """How the promised marks of one kind on one copy are drawn: how many points of how many have no stroke of their kind, and where."""

    promise: MarkPromise
    tried: int
    missing: int
    at: Point


def read_marks(promises: tuple[MarkPromise, ...], ink: Ink) -> tuple[MarkReading, ...]:
    """Return the readings of the promised marks of one page."""
    trees: dict[tuple[float, tuple[float, ...]], StrokeSegments] = {}
    readings = []
    for promise in promises:
        key = (promise.width, promise.dash)
        if key not in trees:
            trees[key] = _strokes(ink, promise)
        points = _tried(promise)
        far = np.flatnonzero(~trees[key].near(points, MARK_TOLERANCE))
        first = points[far[0]].tolist() if len(far) else (0.0, 0.0)
        readings.append(MarkReading(promise, len(points), len(far), (first[0], first[1])))
    return tuple(readings)


def _strokes(ink: Ink, promise: MarkPromise) -> StrokeSegments:
    """Return the strokes of a page with the width and dashes of a promise."""
    pieces, which = np.unique(ink.piece, return_inverse=True)
    alike = np.array([_alike(ink.page.pieces[int(i)].dash, promise.dash) for i in pieces], dtype=bool)
    lines = (np.abs(ink.width - promise.width) <= SAME_STROKE) & (alike[which] if len(pieces) else False)
    starts, ends, owners = ink.segments
    keep = lines[owners] if len(owners) else np.zeros(0, dtype=bool)
    return StrokeSegments(starts[keep], ends[keep], owners[keep], ink.width[owners[keep]])


def _alike(drawn: tuple[float, ...], promised: tuple[float, ...]) -> bool:
    return len(drawn) == len(promised) and all(abs(a - b) <= SAME_STROKE for a, b in zip(drawn, promised, strict=True))


def _tried(promise: MarkPromise) -> Array:
    """Return points along the promised lines, those in the window."""
    lines = [line for line in promise.lines if len(line) > 1]
    if not lines:
        return np.zeros((0, 2))
    flat = np.concatenate([np.asarray(line, dtype=float) for line in lines])
    owners = np.repeat(np.arange(len(lines)), [len(line) for line in lines])
    points, _ = tried(shapely.linestrings(flat, indices=owners), LINE_STEP)
    return points if promise.window is None else points[_inside(points, promise.window.grown(-WINDOW_EDGE))]


def _inside(points: Array, box: Box) -> Array:
    x, y = points[:, 0], points[:, 1]
    inside: Array = (x >= box.left) & (x <= box.right) & (y >= box.bottom) & (y <= box.top)
    return inside
