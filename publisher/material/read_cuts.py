"""Where straight cuts are read on a rule: never inside a piece as its own measures lay it. Millimetres."""

from collections.abc import Sequence
from dataclasses import replace
from math import ceil, floor, inf

import numpy as np
import numpy.typing as npt

from publisher.basics import CutPromise, CutReading
from publisher.material.cuts import TOUCH

COARSER = (10, 8, 5, 4, 2)  # steps of a rule together, of which its longer strokes are
LONG_STROKES = 3.3  # mm apart at most: an eighth of an inch
STRAYS = 0.25  # of the board between the pieces beside a cut: so far it may lie off the middle for a longer stroke
MOST_STRAYED = 1.0  # mm

Boxes = npt.NDArray[np.float64]  # n × 4: left, bottom, right, top


def read_cuts(
    cuts: Sequence[CutPromise], boxes: Boxes, laid: Boxes, step: float
) -> tuple[tuple[CutReading, ...], bool]:
    """Return each cut as it is read on a rule of this step, and whether all of them stay clear of the pieces.

    ``boxes``: of the pieces where they were laid out, ``laid``: where their measures put them, read to the same step. A cut keeps to its
    own side of every piece; where no place on the rule does, it runs in the middle of what overlaps. One on which no side lies is read at a
    longer stroke of the rule that is near.
    """
    found: list[CutReading] = []
    clear = True
    for number, cut in enumerate(cuts):
        low, high = _room(cut, boxes, laid)
        at = round(cut.at / step)
        if not cut.pieces:
            at = _easy(cut.at, step, min(STRAYS * (high - low), MOST_STRAYED), at)
        if at * step < low - TOUCH:
            at = ceil((low - TOUCH) / step)
        if at * step > high + TOUCH:
            at = floor((high + TOUCH) / step)
        if not low - TOUCH <= at * step <= high + TOUCH:
            at, clear = round((low + high) / 2 / step), False
        ends = [_end(end, cut, cuts[:number], found) for end in (cut.start, cut.end)]
        found.append(CutReading(at * step, *ends))
    return tuple(found), clear


def _easy(wanted: float, step: float, strays: float, else_at: int) -> int:
    """Return the number of steps to the longest stroke of a rule within so many mm of a place, or another number where none is."""
    for together in COARSER:
        if together * step <= LONG_STROKES:
            at = together * round(wanted / (together * step))
            if abs(at * step - wanted) <= strays:
                return at
    return else_at


def _room(cut: CutPromise, boxes: Boxes, laid: Boxes) -> tuple[float, float]:
    """Return from where to where a cut may be moved: from the pieces on one side of it to those on the other."""
    low, high, start, end = (1, 3, 0, 2) if cut.level else (0, 2, 1, 3)
    beside = (boxes[:, end] > cut.start + TOUCH) & (boxes[:, start] < cut.end - TOUCH)
    before = beside & (boxes[:, high] <= cut.at + TOUCH)
    after = beside & ~before & (boxes[:, low] >= cut.at - TOUCH)
    return float(laid[before, high].max(initial=0.0)), float(laid[after, low].min(initial=inf))


def _end(end: float, cut: CutPromise, before: Sequence[CutPromise], read: Sequence[CutReading]) -> float:
    """Return where the cut ends as it is read: on an earlier cut, where that one is read, or else on the sheet's edge."""
    return next(
        (
            reading.at
            for other, reading in reversed(tuple(zip(before, read, strict=True)))
            if other.level != cut.level and other.at == end and other.start <= cut.at <= other.end
        ),
        end,
    )


def with_readings(
    cuts: Sequence[CutPromise], metric: Sequence[CutReading], imperial: Sequence[CutReading]
) -> tuple[CutPromise, ...]:
    """Return the cuts with what is printed of them."""
    return tuple(replace(cut, mm=mm, inches=inches) for cut, mm, inches in zip(cuts, metric, imperial, strict=True))
