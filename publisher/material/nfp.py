"""No-fit polygons: where a second piece may not stand beside a first one.

With A fixed and B movable, B's origin may not lie inside A ⊕ (−B) (Minkowski sum). It is computed from the convolution
of the two outlines: L. Guibas, L. Ramshaw, J. Stolfi, "A kinetic framework for computational geometry", FOCS 1983; the
points of the sum are those round which the convolution winds at least once. Clipper resolves the winding on integers.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import pi

import numpy as np
import numpy.typing as npt
import pyclipper

from publisher.geometry import next_of, one_before
from publisher.material.outlines import FloatPath, IntPath, Outline, turned

Paths = list[list[list[int]]]


@dataclass(frozen=True, slots=True, eq=False)
class Bends:
    """What the convolution asks of a ring of n points: each edge's direction, and how the ring turns at each point (radians).

    At a point the directions from ``low`` to ``high`` are swept; ``left``: it turns to the left there; ``still``: not at all.
    """

    direction: FloatPath
    low: FloatPath
    high: FloatPath
    left: npt.NDArray[np.bool_]
    still: npt.NDArray[np.bool_]
    convex: bool


@lru_cache(maxsize=2048)
def _bends(ring: bytes) -> Bends:
    """Return the bends of a ring given as bytes of int64: a ring meets many others, and these are asked each time."""
    points = np.frombuffer(ring, dtype=np.int64).reshape(-1, 2)
    edges = next_of(points) - points
    leaving = np.arctan2(edges[:, 1], edges[:, 0])
    arriving = one_before(leaving)
    turn = (leaving - arriving + pi) % (2 * pi) - pi
    left = turn > 0
    convex = bool((turn >= 0).all() and turn.sum() < 3 * pi)
    return Bends(leaving, np.where(left, arriving, leaving), np.where(left, leaving, arriving), left, turn == 0, convex)


def minkowski(a: IntPath, b: IntPath) -> Sequence[IntPath] | Paths:
    """Return the rings of a ⊕ b for two simple anticlockwise integer rings (n × 2): outsides anticlockwise, holes not."""
    bends_a, bends_b = _bends(a.tobytes()), _bends(b.tobytes())
    if bends_a.convex and bends_b.convex:
        return (_convex_sum(a, bends_a, b, bends_b),)
    engine = pyclipper.Pyclipper()
    for cycle in convolution(a, b):
        # Clipper refuses a ring without area, such as a there-and-back between two points: it winds round nothing
        if len(cycle) > 2:
            try:
                engine.AddPath(cycle.tolist(), pyclipper.PT_SUBJECT, True)
            except pyclipper.ClipperException:
                continue
    result: Paths = engine.Execute(pyclipper.CT_UNION, pyclipper.PFT_NONZERO, pyclipper.PFT_NONZERO)
    return result


def _convex_sum(a: IntPath, bends_a: Bends, b: IntPath, bends_b: Bends) -> IntPath:
    """Return the ring of the sum of two convex rings: all edges of both, by direction, from the two lowest points.

    M. de Berg et al., "Computational Geometry", 3rd ed. 2008, theorem 13.5.
    """
    # from the lowest point (the leftmost of several) all directions of a convex ring run from 0 up to a whole turn
    directions = np.concatenate((bends_a.direction, bends_b.direction)) % (2 * pi)
    edges = np.concatenate((next_of(a) - a, next_of(b) - b))
    lowest = a[np.lexsort((a[:, 0], a[:, 1]))[0]] + b[np.lexsort((b[:, 0], b[:, 1]))[0]]
    return np.asarray(lowest + np.cumsum(edges[np.argsort(directions, kind="stable")], axis=0), dtype=np.int64)


def convolution(a: IntPath, b: IntPath) -> list[IntPath]:
    """Return the closed rings of the convolution of two rings.

    Each edge of one is carried to those vertices of the other whose turn sweeps over the edge's direction: forwards at
    a convex vertex, backwards at a reflex one.
    """
    n, m = len(a), len(b)
    bends_a, bends_b = _bends(a.tobytes()), _bends(b.tobytes())
    first_a, last_a = _carried(bends_a, bends_b, closed_low=True)
    first_b, last_b = _carried(bends_b, bends_a, closed_low=False)
    # a place of the convolution is (vertex of a, vertex of b), numbered i * m + j
    start = np.concatenate((_number(first_a, m, False), _number(first_b, m, True)))
    end = np.concatenate((_number(last_a, m, False), _number(last_b, m, True)))
    leaving: dict[int, list[int]] = {}
    for here, there in zip(start.tolist(), end.tolist(), strict=True):
        leaving.setdefault(here, []).append(there)
    rings: list[IntPath] = []
    for origin in sorted(leaving):
        while leaving[origin]:
            walk = [origin]
            here = leaving[origin].pop()
            while here != origin:
                walk.append(here)
                here = leaving[here].pop()
            places = np.asarray(walk)
            rings.append(a[places // m % n] + b[places % m])
    return rings


def _number(pairs: npt.NDArray[np.int64], m: int, swapped: bool) -> npt.NDArray[np.int64]:
    """Return place numbers of (vertex, vertex) pairs; ``swapped`` when the first of the pair belongs to b."""
    return pairs[:, 1] * m + pairs[:, 0] if swapped else pairs[:, 0] * m + pairs[:, 1]


def _carried(edges: Bends, corners: Bends, closed_low: bool) -> tuple[npt.NDArray[np.int64], npt.NDArray[np.int64]]:
    """Return (from, to) pairs of (edge's vertex, corner's vertex) for all edges carried to all corners that sweep them.

    Parallel edges are told apart as if the first ring were turned by an infinitesimal angle: its edges match a sweep
    closed at its low end, those of the second ring one closed at its high end.
    """
    d, low, high = edges.direction[:, None], corners.low, corners.high
    # compared as they stand, not by differences: equal angles must stay equal
    above = d >= low if closed_low else d > low
    below = d < high if closed_low else d <= high
    swept = np.where(low <= high, above & below, above | below) & ~corners.still
    edge, corner = np.nonzero(swept)
    after = (edge + 1) % len(edges.direction)
    forwards = corners.left[corner]
    first = np.column_stack((np.where(forwards, edge, after), corner))
    last = np.column_stack((np.where(forwards, after, edge), corner))
    return first, last


@lru_cache(maxsize=4096)  # of many points: some 100 MB at most
def _base(a: bytes, b: bytes) -> tuple[IntPath, ...]:
    """Return the no-fit rings of two rings given as bytes of int64, so that equal outlines are computed once."""
    fixed = np.frombuffer(a, dtype=np.int64).reshape(-1, 2)
    moved = -np.frombuffer(b, dtype=np.int64).reshape(-1, 2)
    return tuple(np.asarray(ring, dtype=np.int64) for ring in minkowski(fixed, moved))


Stance = tuple[Outline, float, bool]  # an outline, its turn in degrees, whether it is mirrored first


@lru_cache(maxsize=8192)
def no_fit(a: Stance, b: Stance) -> tuple[IntPath, ...]:
    """Return the rings (grid units) inside which B's origin may not lie when A stands at the origin.

    Computed once for each relative turn: a common turn (or mirror) of both carries the result along.
    """
    (shape_a, turn_a, mirrored_a), (shape_b, turn_b, mirrored_b) = a, b
    away = round((turn_a - turn_b if mirrored_a else turn_b - turn_a) % 360.0, 9)
    rings = _base(
        shape_a.path(0.0, False, True).tobytes(), shape_b.path(away, mirrored_b != mirrored_a, True).tobytes()
    )
    if turn_a % 360.0 == 0.0 and not mirrored_a:
        return rings
    return tuple(_carry(ring, turn_a, mirrored_a) for ring in rings)


def _carry(ring: IntPath, turn: float, mirrored: bool) -> IntPath:
    """Return a ring turned (and mirrored first) on the grid, running the same way round as before."""
    carried = np.rint(turned(ring.astype(np.float64), turn, mirrored)).astype(np.int64)
    return carried[::-1].copy() if mirrored else carried


def no_fit_fixed(fixed: IntPath, moved: IntPath) -> tuple[IntPath, ...]:
    """Return the rings inside which the origin of ``moved`` may not lie, so as to stay off the ring ``fixed``."""
    return _base(fixed.tobytes(), moved.tobytes())
