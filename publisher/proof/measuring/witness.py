"""The pixel witness of cut lines: PDFium draws the pages, and along every promised ring there must be darkness.

The walk through the operators reasons about what covers what; here it does not matter how a line was lost: under a stencil, a
shading, a note, in a colour that prints white, by transparency. Beside the ring the paper must show, or the line is no line.
"""

import numpy as np

from publisher.basics import OutlinePromise, Point, record
from publisher.proof.measuring.outlines import Wanted
from publisher.proof.reading import Array

WITNESS_STEP = 0.5  # mm between the points that are tried
INKED = 150  # of 255: a line promised black is at least so dark in its darkest pixel
SMEARED = 77  # of 255: grey 0.7, what counts as a line elsewhere
WITNESS_GAP = 1.0  # mm of a ring in one piece that may be light
BESIDE = (0.9, 1.6)  # mm from the ring: both dark is no line beside it, but an area
SOLID = 6.0  # mm of a ring in one piece that may run along a dark area


@record
class RingSight:
    """One drawn copy of an outline by pixels (mm): its longest light stretch and where that begins, and the longest stretch along
    which the paper beside it is dark, and where."""

    promise: OutlinePromise
    light: float
    light_at: Point
    smeared: float
    smeared_at: Point


def see_ring(promise: OutlinePromise, crop: tuple[Array, float, float, float, float]) -> RingSight:
    """Return what a crop of the page (darkness, mm of column 0, pixels per mm, mm of row 0, pixels per mm) shows of an outline."""
    wanted = Wanted(promise, step=WITNESS_STEP)
    points = wanted.points
    if len(points) < 2:
        return RingSight(promise, 0.0, (0.0, 0.0), 0.0, (0.0, 0.0))
    dark, x0, kx, y0, ky = crop
    ahead = np.diff(points, axis=0)
    steps = np.hypot(ahead[:, 0], ahead[:, 1])
    joined = (np.diff(wanted.ring) == 0) & (steps <= WITNESS_STEP * 1.01) & (steps > 0)
    light = _around(dark, (points[:, 0] - x0) * kx, (y0 - points[:, 1]) * ky) < INKED
    side = np.zeros_like(points)
    side[:-1] = np.stack((-ahead[:, 1], ahead[:, 0]), axis=1) / np.maximum(steps, 1e-9)[:, None]
    smeared = np.zeros(len(points), dtype=bool)
    for sign in (1.0, -1.0):
        here = np.ones(len(points), dtype=bool)
        for away in BESIDE:
            at = points + side * away * sign
            here &= _at(dark, (at[:, 0] - x0) * kx, (y0 - at[:, 1]) * ky) > SMEARED
        smeared |= here
    worst, first = _longest(light, steps, joined)
    solid, begin = _longest(smeared, steps, joined)
    return RingSight(promise, worst, _point(points[first]), solid, _point(points[begin]))


def _point(point: Array) -> Point:
    return (float(point[0]), float(point[1]))


def _at(dark: Array, column: Array, row: Array) -> Array:
    """Return the darkness of the pixels at places; none outside the crop."""
    i, j = np.floor(row).astype(int), np.floor(column).astype(int)
    inside = (i >= 0) & (j >= 0) & (i < dark.shape[0]) & (j < dark.shape[1])
    found: Array = np.where(inside, dark[np.clip(i, 0, dark.shape[0] - 1), np.clip(j, 0, dark.shape[1] - 1)], 0)
    return found


def _around(dark: Array, column: Array, row: Array) -> Array:
    """Return the greatest darkness of each pixel and its eight neighbours."""
    moved = [_at(dark, column + x, row + y) for x in (-1, 0, 1) for y in (-1, 0, 1)]
    greatest: Array = np.maximum.reduce(moved)
    return greatest


def _longest(marked: Array, steps: Array, joined: Array) -> tuple[float, int]:
    """Return the longest run of steps between marked points that follow each other: its length (mm) and its first point."""
    run = marked[1:] & marked[:-1] & joined
    if not run.any():
        return 0.0, 0
    edges = np.flatnonzero(np.diff(np.concatenate(([False], run, [False])).astype(int)))
    starts, ends = edges[::2], edges[1::2]
    total = np.concatenate(([0.0], np.cumsum(steps)))
    lengths = total[ends] - total[starts]
    best = int(np.argmax(lengths))
    return float(lengths[best]), int(starts[best])
