"""Promised outlines held against the drawn strokes, both ways: nothing promised missing, nothing of it drawn twice or beside."""

from functools import cached_property

import numpy as np
import shapely
from numpy.typing import NDArray

from publisher.basics import OutlinePromise, Point, Pose, record
from publisher.proof.measuring.ink import Ink
from publisher.proof.measuring.strewn import tried
from publisher.proof.reading import Array

OUTLINE_TOLERANCE = (
    0.01  # mm from a promised ring to the drawn stroke: a slot 0.03 mm narrower is 0.015 off on both sides
)
CUT_GAP = 0.3  # mm of a cut line that may not be missing
RING_STEP = 2.0  # mm between the points of a promised ring that strokes are held against
CLOSE_STEP = (
    CUT_GAP - 2.0 * OUTLINE_TOLERANCE
)  # mm between those at which its line is looked for: one of them lies in every gap
STROKE_REACH = 3.0  # mm: farther than this from a promised ring, a stroke has nothing to do with it
TRY_STEP = 2.0  # mm between the points of a line that are tried
LOTS_TRIED = 300  # points: of fewer each is looked up by itself
SAME_CELL, SHIFT = 0.05, 0.0217  # mm: cells in which points are found again, and where they begin: at no round number
FOLLOWS = 0.6  # share of a stroke's length within STROKE_REACH of a ring that makes it a copy of that ring


@record
class OutlineReading:
    """One drawn copy of an outline.

    ``farthest`` (mm): the greatest distance from a promised point to the nearest stroke, REACH when there is none; ``at``: that
    point on the page; ``ring``: its ring (0 the outside). ``missing``: length of promised line (mm) without a stroke within the
    tolerance; ``beside``: greatest distance of a drawn copy of a ring from the ring; ``times``: how often the ring is drawn, at most.
    """

    promise: OutlinePromise
    farthest: float
    at: Point
    ring: int
    missing: float
    beside: float
    times: float
    length: float
    width: float

    @property
    def good(self) -> bool:
        """Say whether the outline is drawn as promised."""
        return self.farthest <= OUTLINE_TOLERANCE and self.beside <= OUTLINE_TOLERANCE


class Wanted:
    """The promised rings of one outline, placed on the page and cut to the window, as points to try."""

    def __init__(
        self,
        promise: OutlinePromise,
        pose: Pose | None = None,
        whole: bool = False,
        step: float = RING_STEP,
        beyond: float = 0.0,
    ) -> None:
        """Place the rings by the promise's pose, or by another; ``whole`` leaves the window out, ``beyond`` (mm) makes it larger.

        Where a curve leaves the window nearly along its side, a line that is off by as little as it may be ends much sooner or later:
        what must be drawn is asked for in a window smaller by that much, what may be drawn in one larger by it.
        """
        carried = [_carry(promise.pose if pose is None else pose, ring) for ring in promise.rings]
        lines = [shapely.LineString(np.vstack((ring, ring[:1]))) for ring in carried]
        window = promise.window
        if window is not None and not whole:
            lines = [shapely.intersection(line, shapely.box(*window.grown(beyond).sides)) for line in lines]
        dense = shapely.segmentize(lines, step)
        self.lengths = shapely.length(dense)
        self.points, owner = shapely.get_coordinates(dense, return_index=True)
        self.ring = owner

    def segments(self) -> "StrokeSegments":
        """Return the promised rings as segments in a search tree, the ring of each as its owner."""
        steps = np.hypot(*np.diff(self.points, axis=0).T)
        joined = (np.diff(self.ring) == 0) & (steps <= RING_STEP * 1.01)  # longer ones are where a window cut the ring
        starts, ends = self.points[:-1][joined], self.points[1:][joined]
        return StrokeSegments(starts, ends, self.ring[:-1][joined], np.zeros(len(starts)))

    def box(self) -> tuple[Array, Array]:
        """Return the lower left and upper right of all points."""
        return self.points.min(axis=0), self.points.max(axis=0)


def _carry(pose: Pose, ring: tuple[Point, ...]) -> Array:
    a, b, c, d, e, f = pose.matrix()
    points = np.array(ring, dtype=float)
    carried: Array = points @ np.array(((a, b), (c, d))) + (e, f)
    return carried


def shown_ground(promise: OutlinePromise) -> shapely.Geometry:
    """Return what a copy shows of its part on its page, openings filled: of a tile only what lies in its window."""
    ground = shapely.Polygon(promise.pose.apply_all(promise.rings[0])).buffer(0.0)
    return ground if promise.window is None else shapely.intersection(ground, shapely.box(*promise.window.sides))


class StrokeSegments:
    """Continuous strokes near an outline as segments in a search tree."""

    def __init__(self, starts: Array, ends: Array, owners: Array, widths: Array) -> None:
        """Keep segments (M, 2), (M, 2), with the line and the stroke width of each (M,)."""
        self.starts, self.ends, self.owners, self.widths = starts, ends, owners, widths

    @cached_property
    def lines(self) -> Array:
        """The segments as lines."""
        return np.asarray(shapely.linestrings(np.stack((self.starts, self.ends), axis=1)))

    @cached_property
    def tree(self) -> shapely.STRtree | None:
        """The search tree; None where there are no segments."""
        return shapely.STRtree(self.lines) if len(self.starts) else None

    def nearest(self, points: Array) -> tuple[Array, Array]:
        """Return for each point the distance (STROKE_REACH where nothing is nearer) and the index of the nearest segment (-1)."""
        away = np.full(len(points), STROKE_REACH)
        index = np.full(len(points), -1)
        if self.tree is not None and len(points):
            pairs, distance = self.tree.query_nearest(
                shapely.points(points), max_distance=STROKE_REACH, return_distance=True, all_matches=False
            )
            away[pairs[0]] = distance
            index[pairs[0]] = pairs[1]
        return away, index

    def near(self, points: Array, tolerance: float, step: float = TRY_STEP) -> NDArray[np.bool_]:
        """Return for each point whether a segment lies within the tolerance (mm): asked so, in a quarter of the time of the nearest.
        ``step``: mm between the points of a line."""
        met = np.zeros(len(points), dtype=np.bool_)
        if not len(self.starts) or not len(points):
            return met
        if len(points) > LOTS_TRIED and step == TRY_STEP:
            met = self._on_steps(points, tolerance)
        left = np.flatnonzero(~met)
        if len(left) and self.tree is not None:
            met[left[self.tree.query(shapely.points(points[left]), predicate="dwithin", distance=tolerance)[0]]] = True
        return met

    def _on_steps(self, points: Array, tolerance: float) -> NDArray[np.bool_]:
        """Return which points lie within the tolerance of a point of a segment that is parted in steps. Points to try are mostly so made of
        the same segment: of a wall with thousands of them few are left for the tree."""
        keys, steps = self._steps
        wanted = _cells(points)
        found = np.minimum(np.searchsorted(keys, wanted), len(keys) - 1)
        with np.errstate(all="ignore"):  # a damaged file may hold points at the end of the world
            return np.asarray((keys[found] == wanted) & (np.hypot(*(steps[found] - points).T) <= tolerance))

    @cached_property
    def _steps(self) -> tuple[Array, Array]:
        """The cells of all such points, in their order, and the points."""
        steps, _ = tried(self.lines, TRY_STEP)
        keys = _cells(steps)
        order = np.argsort(keys)
        return keys[order], steps[order]


def _cells(points: Array) -> Array:
    """Return the number of the cell in which each point lies."""
    with np.errstate(all="ignore"):
        column, row = np.floor((points + SHIFT) / SAME_CELL).astype(np.int64).T
    cells: Array = (column << 32) + row
    return cells


def near_strokes(ink: Ink, low: Array, high: Array) -> StrokeSegments:
    """Return the continuous strokes of a page that reach into a box grown by REACH."""
    bounds = ink.bounds
    near = (bounds[:, 0] < high[0] + STROKE_REACH) & (bounds[:, 2] > low[0] - STROKE_REACH)
    near &= (bounds[:, 1] < high[1] + STROKE_REACH) & (bounds[:, 3] > low[1] - STROKE_REACH) & ~ink.dashed
    starts, ends, owners = ink.segments
    keep = near[owners] if len(owners) else np.zeros(0, dtype=bool)
    return StrokeSegments(starts[keep], ends[keep], owners[keep], ink.width[owners[keep]])


def read_outline(promise: OutlinePromise, ink: Ink) -> OutlineReading:
    """Return how the strokes of a page agree with one promised outline."""
    wanted = Wanted(promise, step=CLOSE_STEP, beyond=-OUTLINE_TOLERANCE)
    if not len(wanted.points):
        # a tile may lie wholly inside its part and show no line of it
        lacking = 0.0 if promise.window is not None else STROKE_REACH
        return OutlineReading(promise, lacking, (0.0, 0.0), 0, 0.0, 0.0, 0.0, 0.0, 0.0)
    drawn = near_strokes(ink, *wanted.box())
    away = np.zeros(len(wanted.points))
    lost = ~drawn.near(wanted.points, OUTLINE_TOLERANCE, CLOSE_STEP)
    away[lost] = drawn.nearest(wanted.points[lost])[0]
    worst = int(np.argmax(away))
    ring = Wanted(promise, beyond=OUTLINE_TOLERANCE)
    near, index = drawn.nearest(ring.points)
    met = index[near <= OUTLINE_TOLERANCE]
    width = _usual(drawn.widths[met]) if len(met) else 0.0
    beside, times = _copies(ring, drawn, ink, width)
    return OutlineReading(
        promise,
        float(away[worst]),
        (float(wanted.points[worst][0]), float(wanted.points[worst][1])),
        int(wanted.ring[worst]),
        missing_length(wanted, away),
        beside,
        times,
        float(wanted.lengths.sum()),
        width,
    )


def missing_length(wanted: Wanted, away: Array) -> float:
    """Return about how much of the promised line (mm) has no stroke within the tolerance."""
    total = float(wanted.lengths.sum())
    steps = np.hypot(*np.diff(wanted.points, axis=0).T)
    steps[np.diff(wanted.ring) != 0] = 0.0
    far = away > OUTLINE_TOLERANCE
    return min(total, float(steps[far[1:] & far[:-1]].sum()))


def _usual(widths: Array) -> float:
    values, counts = np.unique(np.round(widths, 3), return_counts=True)
    return float(values[np.argmax(counts)])


def _copies(wanted: Wanted, drawn: StrokeSegments, ink: Ink, width: float) -> tuple[float, float]:
    """Return how far drawn copies of the rings lie beside them, and how often a ring is drawn at most.

    A copy is a line in the outline's own stroke width that follows a ring for most of its length and is at least half as long.
    """
    lines = np.unique(drawn.owners[np.abs(drawn.widths - width) < 0.02]) if width else np.zeros(0, dtype=int)
    beside, covered = 0.0, np.zeros(len(wanted.lengths))
    rings = wanted.segments()
    for i in map(int, lines):
        points = ink.line(i)
        steps = np.hypot(*np.diff(points, axis=0).T)
        length = float(steps.sum())
        if not length or length < 0.5 * wanted.lengths.min():  # too short for a copy of any ring
            continue
        away, index = rings.nearest(points)
        near, on = away < STROKE_REACH, away <= OUTLINE_TOLERANCE
        follows = float(steps[near[1:] & near[:-1]].sum())
        if follows < FOLLOWS * length:
            continue
        ring = int(np.bincount(rings.owners[index[index >= 0]]).argmax()) if (index >= 0).any() else 0
        if length < 0.5 * wanted.lengths[ring]:
            continue
        beside = max(beside, float(away[near].max(initial=0.0)))
        covered[ring] += float(steps[on[1:] & on[:-1]].sum())
    times = covered / np.maximum(wanted.lengths, 1e-9)
    return beside, float(times.max(initial=0.0))
