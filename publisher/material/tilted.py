"""Lattices of one part that lie askew on the sheet, and are bent until one more copy goes on it.

A lattice of ``lattice`` is laid at any tilt on a sheet that is a little too large; the copies that lie there are the
pattern. Then pitch, place of the second copy, shift, turn and tilt are changed by small steps, never so far that copies
come too close, as long as the pattern becomes smaller; when it goes on the sheet it is a layout.
"""

from collections.abc import Iterator
from dataclasses import replace

import numpy as np
import numpy.typing as npt

from publisher.basics import record
from publisher.material.lattice import Borders, Floats, Rows, crossings, least_rise
from publisher.material.outlines import FloatPath, turned

Ints = npt.NDArray[np.int64]
SURE = 1e-7  # mm; a copy that touches the sheet's edge is on the sheet
Extent = tuple[float, float, float, float]  # left, bottom, right, top in mm
Spots = tuple[tuple[float, float, float], ...]  # x, y in mm on the sheet; turn in degrees


@record
class LatticePattern:
    """Copies of a lattice: ``along`` steps of the pitch, ``row``, whether the second copy of the pair; the lattice's kind."""

    along: Ints
    row: Ints
    second: npt.NDArray[np.bool_]
    zigzag: bool

    def places(self, rows: Rows) -> tuple[Floats, Floats]:
        """Return x and y (lattices × copies, mm) in each lattice."""
        swing = self.row % 2 if self.zigzag else self.row
        x = np.outer(rows.pitch, self.along) + np.outer(rows.shift, swing) + np.outer(rows.dx, self.second)
        return x, np.outer(rows.rise, self.row) + np.outer(rows.dy, self.second)


def one(rows: Rows, i: int) -> Rows:
    """Return one lattice by itself."""
    fields = {name: getattr(rows, name)[[i]] for name in ("pitch", "dx", "dy", "rise", "shift", "zigzag")}
    return replace(rows, **fields)


def room_of(rows: Rows) -> Floats:
    """Return the area (mm²) that one copy takes in each lattice."""
    return np.asarray(rows.pitch * rows.rise / (2 if rows.paired else 1))


def tilts(rows: Rows) -> Iterator[float]:
    """Yield the tilts (degrees) at which a line of copies of one lattice runs along a side of the sheet."""
    up = np.array((0.0 if rows.zigzag[0] else rows.shift[0], (2.0 if rows.zigzag[0] else 1.0) * rows.rise[0]))
    across = np.array((rows.pitch[0], 0.0))
    lines = [across, up, across + up, across - up]
    if rows.paired:
        second = np.array((rows.dx[0], rows.dy[0]))
        lines += [second, second - across]
    for line in lines:
        tilt = round(float(-np.degrees(np.arctan2(line[1], line[0]))), 6)
        yield from (tilt % 180.0, (tilt + 90.0) % 180.0)


def ends(bare: FloatPath, turn: float) -> tuple[Floats, Floats]:
    """Return how far an outline at a turn reaches to the lower left and to the upper right of its origin."""
    at = turned(bare, turn)
    return at.min(axis=0), at.max(axis=0)


def most_of(rows: Rows, tilt: float, bare: FloatPath, room: Extent, at_least: int) -> LatticePattern | None:
    """Return the most copies of one lattice, turned by ``tilt`` degrees, that an upright rectangle takes; None unless more
    than ``at_least``.

    Each copy is on the sheet for the shifts of one rectangle, and the best shift lies in most of these; it can be taken at
    the left edge of one and at the bottom edge of another.
    """
    zigzag = bool(rows.zigzag[0])
    low, high = ends(bare, rows.turn + tilt)
    corner, far = np.array(room[:2]), np.array(room[2:])
    if (far - high < corner - low).any():
        return None
    up = np.array((0.0 if zigzag else rows.shift[0], (2.0 if zigzag else 1.0) * rows.rise[0]))
    vectors = turned(np.array(((float(rows.pitch[0]), 0.0), up)), tilt)
    span = np.abs(vectors).sum(axis=0)
    steps = _steps(vectors, (far - corner) / 2 + span)
    along, row, second = (np.concatenate(c) for c in zip(*_copies(steps, rows.paired, zigzag), strict=True))
    pattern = LatticePattern(along, row, second, zigzag)
    x, y = pattern.places(rows)
    at = turned(np.column_stack((x[0], y[0])), tilt)
    starts = np.where(second[:, None], corner + high, corner - low) - at
    stops = np.where(second[:, None], far + low, far - high) - at
    window = (corner + far) / 2 - span / 2
    near = ((stops >= window - SURE) & (starts <= window + span + SURE)).all(axis=1)
    starts, stops = starts[near], stops[near]
    if len(starts) <= at_least:
        return None
    inside = (starts >= window - SURE) & (starts <= window + span + SURE)
    xs, ys = starts[inside[:, 0], 0], starts[inside[:, 1], 1]
    by_x = (xs[:, None] >= starts[:, 0] - SURE) & (xs[:, None] <= stops[:, 0] + SURE)
    by_y = (ys[:, None] >= starts[:, 1] - SURE) & (ys[:, None] <= stops[:, 1] + SURE)
    counts = by_x.astype(np.float32) @ by_y.astype(np.float32).T
    if not counts.size or counts.max() <= at_least:
        return None
    i, j = divmod(int(counts.argmax()), len(ys))
    chosen = np.nonzero(near)[0][by_x[i] & by_y[j]]
    return LatticePattern(along[chosen], row[chosen], second[chosen], zigzag)


def _steps(vectors: Floats, half: Floats) -> Ints:
    """Return all whole numbers of steps (k × 2) along two vectors that end in a rectangle about the origin."""
    corners = np.array(((1, 1), (1, -1), (-1, 1), (-1, -1))) * half @ np.linalg.inv(vectors)
    reach = np.ceil(np.abs(corners).max(axis=0))
    steps = np.array(np.meshgrid(*(np.arange(-r, r + 1) for r in reach))).reshape(2, -1).T
    return np.asarray(steps[(np.abs(steps @ vectors) <= half * 1.02).all(axis=1)].astype(np.int64))


def _copies(steps: Ints, paired: bool, zigzag: bool) -> Iterator[tuple[Ints, Ints, npt.NDArray[np.bool_]]]:
    """Yield the copies of the cells: steps of the pitch, rows, whether second of the pair."""
    for extra in (0, 1) if zigzag else (0,):
        for second in (False, True) if paired else (False,):
            yield steps[:, 0], steps[:, 1] * (2 if zigzag else 1) + extra, np.full(len(steps), second)


def excess(rows: Rows, tilt: Floats, pattern: LatticePattern, bare: FloatPath, size: tuple[float, float]) -> Floats:
    """Return by how much (mm) the pattern is too large for a sheet, for each lattice (first axis) and tilt (second)."""
    x, y = pattern.places(rows)
    found = np.empty((len(rows.pitch), len(tilt)))
    for k, angle in enumerate(tilt.tolist()):
        (cx, sx), (_, _) = turned(np.array(((1.0, 0.0), (0.0, 1.0))), angle)
        low, high = ends(bare, rows.turn + angle)
        over = []
        for at, side, axis in ((x * cx - y * sx, size[0], 0), (x * sx + y * cx, size[1], 1)):
            upper = np.where(pattern.second, -low[axis], high[axis])
            lower = np.where(pattern.second, -high[axis], low[axis])
            over.append((at + upper).max(axis=1) - (at + lower).min(axis=1) - side)
        found[:, k] = np.maximum(*over)
    return found


@record
class Bend:
    """A lattice as free numbers: any choice of them keeps the gaps. ``wider``: by how much more than the least the pitch is;
    ``share``: where between its two neighbours the second copy stands."""

    turn: float
    dy: float
    wider: float
    share: float
    shift: float
    tilt: float
    zigzag: bool


def bent(borders: Borders, turn: float, zigzag: bool, numbers: Floats) -> Rows:
    """Work out lattices at one turn from free numbers (k × 4: dy, wider, share, shift), as close as gaps allow."""
    dy, wider, share, shift = numbers.T
    wider, share = np.maximum(wider, 0.0), np.clip(share, 0.0, 1.0)
    if borders.m is None:
        dy, dx = np.zeros_like(dy), np.zeros_like(dy)
        pitch = borders.least_pitch + wider
    else:
        swapped = tuple(ring[:, ::-1] for ring in borders.m)
        left, right = crossings(swapped, dy)
        right, left = np.where(np.isfinite(right), right, 0.0), np.where(np.isfinite(left), left, 0.0)
        pitch = np.maximum(borders.least_pitch, right - left) + wider
        dx = right + share * (pitch + left - right)
    rise = least_rise(borders, shift, (pitch, dx, dy), zigzag)
    return Rows(turn, borders.m is not None, pitch, dx, dy, rise, shift, np.full(len(dy), zigzag))
