"""Promised lengths measured on the drawn strokes: squares, rulers, ticks, card, gauge, dimensions."""

from math import dist

import numpy as np
import shapely

from publisher.basics import LengthPromise, record
from publisher.proof.measuring.ink import Ink
from publisher.proof.reading import Array

LENGTH_TOLERANCE = 0.01  # mm: what a length in a finished file may be off
PLACE = 0.05  # mm: what the place of a line that is no tick may be off
SEARCH = 2.0  # mm round the promised middle
LOST = 0.6  # mm: a line farther off than this is another line
OFF_ITS_WAY = 0.01  # rad between a line and its promise
BETWEEN = ("card", "gauge", "dimension")  # may be measured between two drawn lines


@record
class LengthReading:
    """A promise with what was found: length (None: no such line) and the farther of its ends' distances from their places."""

    promise: LengthPromise
    found: float | None
    away: float

    @property
    def good(self) -> bool:
        """Say whether the line is there, as long as promised and in its place."""
        place = LENGTH_TOLERANCE if self.promise.purpose in ("calibration", "ruler", "tick") else PLACE
        return (
            self.found is not None and abs(self.found - self.promise.length) <= LENGTH_TOLERANCE and self.away <= place
        )


def read_lengths(promises: tuple[LengthPromise, ...], ink: Ink) -> tuple[LengthReading, ...]:
    """Return a reading for each promise of this page."""
    if not promises:
        return ()
    starts, ends, owners = ink.segments
    keep = ~ink.dashed[owners] if len(owners) else np.zeros(0, dtype=bool)
    first, second = starts[keep], ends[keep]
    wanted_a = np.array([p.start for p in promises], dtype=float)
    wanted_b = np.array([p.end for p in promises], dtype=float)
    best = np.full(len(promises), np.inf)
    which = np.full(len(promises), -1)
    if len(first):
        tree = shapely.STRtree(shapely.points((first + second) / 2))
        i, j = tree.query(shapely.points((wanted_a + wanted_b) / 2), predicate="dwithin", distance=SEARCH)
        error = np.minimum(
            np.maximum(_apart(first[j], wanted_a[i]), _apart(second[j], wanted_b[i])),
            np.maximum(_apart(second[j], wanted_a[i]), _apart(first[j], wanted_b[i])),
        )
        order = np.lexsort((-error, i))  # the last written for each promise is the least error
        best[i[order]] = error[order]
        which[i[order]] = j[order]
    readings = []
    for number, promise in enumerate(promises):
        reading = LengthReading(promise, None, float("inf"))
        if best[number] <= LOST:
            j0 = which[number]
            reading = LengthReading(promise, float(_apart(first[j0], second[j0])), float(best[number]))
        if not reading.good and promise.purpose != "tick":
            reading = min((reading, *_others(promise, first, second, ink)), key=lambda r: (not r.good, r.away))
        readings.append(reading)
    return tuple(readings)


def _apart(a: Array, b: Array) -> Array:
    return np.asarray(np.hypot(a[..., 0] - b[..., 0], a[..., 1] - b[..., 1]))


def _others(promise: LengthPromise, first: Array, second: Array, ink: Ink) -> list[LengthReading]:
    """Return readings of the line drawn in several pieces, and of the gap between two lines where such is meant."""
    length = dist(promise.start, promise.end)
    if length <= 0 or not len(first):
        return []
    along = (np.array(promise.end) - np.array(promise.start)) / length
    across = np.array((-along[1], along[0]))
    a, b = first - promise.start, second - promise.start
    s, t, u, v = a @ along, b @ along, a @ across, b @ across
    found = _chains(promise, np.stack((s, u), 1), np.stack((t, v), 1), length)
    if promise.purpose in BETWEEN:
        found += _between(promise, s, t, u, v, length, _corners(ink, promise, along, across))
    return found


def _chains(promise: LengthPromise, a: Array, b: Array, length: float) -> list[LengthReading]:
    """Join the pieces that lie one behind the other along the promise."""
    swap = a[:, 0] > b[:, 0]
    low, high = np.where(swap[:, None], b, a), np.where(swap[:, None], a, b)
    near = (np.abs(low[:, 1]) < LOST) & (np.abs(high[:, 1]) < LOST)
    near &= np.abs(high[:, 1] - low[:, 1]) <= OFF_ITS_WAY * (high[:, 0] - low[:, 0])
    near &= (low[:, 0] < length + SEARCH) & (high[:, 0] > -SEARCH)
    index = np.flatnonzero(near)
    chains: list[tuple[Array, Array]] = []
    for i in index[np.argsort(low[index, 0], kind="stable")]:
        if chains and low[i, 0] <= chains[-1][1][0] + LENGTH_TOLERANCE:
            if high[i, 0] > chains[-1][1][0]:
                chains[-1] = (chains[-1][0], high[i])
        else:
            chains.append((low[i], high[i]))
    readings = []
    for one, two in chains:
        away = max(float(np.hypot(*one)), float(np.hypot(two[0] - length, two[1])))
        if away <= LOST:
            readings.append(LengthReading(promise, float(np.hypot(*(two - one))), away))
    return readings


def _between(
    promise: LengthPromise, s: Array, t: Array, u: Array, v: Array, length: float, corners: Array
) -> list[LengthReading]:
    """Measure from where a drawn line crosses or touches the promised line near its start to the same near its end."""
    touch = 0.02
    crosses = (np.minimum(u, v) <= touch) & (np.maximum(u, v) >= -touch) & (np.abs(u - v) > 1e-9)
    share = np.clip(u[crosses] / (u[crosses] - v[crosses]), 0.0, 1.0)
    places = np.concatenate((s[crosses] + share * (t[crosses] - s[crosses]), corners))
    if not len(places):
        return []
    start = float(places[np.argmin(np.abs(places))])
    end = float(places[np.argmin(np.abs(places - length))])
    away = max(abs(start), abs(end - length))
    return [LengthReading(promise, end - start, away)] if away <= LOST else []


def _corners(ink: Ink, promise: LengthPromise, along: Array, across: Array) -> Array:
    """Return where corners of lines and filled areas (arrow heads) lie on the promised line."""
    areas = [p.points for p in ink.page.pieces if p.fill_grey is not None and p.visible and p.fill_grey < 0.7]
    every = np.concatenate((ink.points, *areas)) - promise.start
    return np.asarray((every @ along)[np.abs(every @ across) <= 0.02])
