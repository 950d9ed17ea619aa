"""Lines on a template that nothing is cut along: dotted ones, and the dashes with two dots between which something is glued.

A dot, and each dash, is a piece of ink of its own. Dots a pitch apart are one line; dashes that lie in one line are one line. What crosses
another line is lost to the reader for as long as it does.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

import cv2
import numpy as np
import numpy.typing as npt
import shapely

from tests.rehearsal.raster import DOTS, Pieces

DOT, PITCH = 0.25, 1.0  # mm: a dot's side, and from one to the next, as the legend shows the dotted line
DOT_OFF, PITCH_OFF = 0.12, 0.14
FEWEST = 4  # dots of a line
HIDDEN = 2  # pitches between dots of one line where another one crosses it
DASH = (1.2, 6.15)  # mm: a line's first dash and its last may be shorter than the others
WIDE = (0.2, 0.32)  # mm across a dash
LINE_OFF, WAY_OFF = 0.06, 0.02  # mm across and radians by which dashes of one line may be off
GAP = 4.0  # mm between two dashes of one line, with two dots there
CROSS, ARMS = 3.0, (9, 13)  # mm of half a cross, and how many dots it has
SHORT_LEG, LEG_DOTS = 0.6, 60  # mm, and dots, of a leg of a dash that goes round a corner
LONG_LINE, FEW_POINTS, OFF_ENDS = 15.0, 9, 1.0  # mm of a solid line; its points, and mm from them to its ends
SURE_LEG = 2.0  # mm of a leg that is a line by itself
SHORT_SURE, LONG_BESIDE = 1.2, 3.0  # mm: a short leg is one too, at the corner of a long one
SQUARE_ENOUGH = 0.3  # sine of the angle between both legs
TICK = (3.5, 4.5)  # mm of a short line that stands alone
WHOLE_DASH = 5.8  # mm: no line is told from a bit of another without a whole dash

Points = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Thin:
    """A thin line by its points in mm: every dot of a dotted one, both ends of a glue line, the middle of a cross and a point on an arm,
    points of a solid one a little off its ends, both ends of a short one."""

    kind: Literal["dots", "glue", "cross", "line", "tick"]
    points: Points

    def moved(self, matrix: Points) -> "Thin":
        """Return the line carried by a matrix (2 × 3)."""
        return Thin(self.kind, self.points @ matrix[:, :2].T + matrix[:, 2])


def thin_lines(seen: Pieces) -> Iterator[Thin]:
    """Yield the dotted lines and the glue lines of a page's picture, in mm from its lower left."""
    yield from _dotted(seen)
    yield from _glued(seen)
    yield from _crosses(seen)
    yield from _solid(seen)


def _solid(seen: Pieces) -> Iterator[Thin]:
    """Yield the long solid lines that run across a page or up it, as thin as a drawn one."""
    black = (seen.labels > 0).astype(np.uint8)
    tall, long = len(black), round(LONG_LINE * DOTS)
    for kernel in (np.ones((1, long), np.uint8), np.ones((long, 1), np.uint8)):
        _, _, boxes, _ = cv2.connectedComponentsWithStats(
            cv2.morphologyEx(black, cv2.MORPH_OPEN, kernel), connectivity=8
        )
        for left, top, width, height, ink in boxes[1:]:
            if not WIDE[0] < ink / max(width, height) / DOTS < WIDE[1]:
                continue
            middle = np.array((left + width / 2, tall - top - height / 2)) / DOTS
            half = np.array((width, 0.0) if width > height else (0.0, height)) / DOTS / 2
            shares = np.linspace(-1.0, 1.0, FEW_POINTS)[:, None] * (1.0 - OFF_ENDS / np.hypot(*half))
            yield Thin("line", middle + shares * half)


def _dotted(seen: Pieces) -> Iterator[Thin]:
    boxes = seen.boxes / DOTS
    side = np.abs(boxes[:, 2:4] - DOT)
    area = seen.boxes[:, 4] / DOTS**2
    dots = np.flatnonzero((side < DOT_OFF).all(axis=1) & (np.abs(area - DOT**2) < 0.5 * DOT**2))
    if not len(dots):
        return
    at = _middles(seen, dots)
    spots = shapely.points(at)
    pairs = shapely.STRtree(spots).query(spots, predicate="dwithin", distance=HIDDEN * PITCH + PITCH_OFF).T
    pairs = pairs[pairs[:, 0] < pairs[:, 1]]
    away = np.hypot(*(at[pairs[:, 0]] - at[pairs[:, 1]]).T)
    pitches = np.round(away / PITCH)
    joined = (pitches > 0) & (np.abs(away - pitches * PITCH) < PITCH_OFF)
    for n in np.flatnonzero(joined & (pitches > 1)):
        joined[n] = _under_ink(seen, at[pairs[n, 0]], at[pairs[n, 1]], int(pitches[n]))
    for group in _groups(len(at), pairs[joined]):
        if len(group) >= FEWEST:
            yield Thin("dots", at[group])


def _under_ink(seen: Pieces, one: Points, other: Points, pitches: int) -> bool:
    """Say whether ink lies wherever dots are missing between two: a line that crosses a dotted one hides those that it touches."""
    for n in range(1, pitches):
        x, y = (one + (other - one) * n / pitches) * DOTS
        if not seen.labels[round(len(seen.labels) - y), round(x)]:
            return False
    return True


def _middles(seen: Pieces, numbers: npt.NDArray[np.int64]) -> Points:
    boxes = seen.boxes[numbers] / DOTS
    return np.column_stack((boxes[:, 0] + boxes[:, 2] / 2, len(seen.labels) / DOTS - boxes[:, 1] - boxes[:, 3] / 2))


def _crosses(seen: Pieces) -> Iterator[Thin]:
    """Yield the crosses of two short dotted lines, by the two lines that lie best through their dots: where they cross is a centre."""
    boxes = seen.boxes / DOTS
    small = np.flatnonzero((np.abs(boxes[:, 2:4] - DOT) < 2 * DOT_OFF).all(axis=1))
    if not len(small):
        return
    at = _middles(seen, small)
    spots = shapely.points(at)
    near = shapely.STRtree(spots).query(spots, predicate="dwithin", distance=CROSS + 0.5)
    found: list[Points] = []
    for number in np.unique(near[0]):
        own = at[near[1][near[0] == number]]
        if not ARMS[0] <= len(own) <= ARMS[1] or any(np.hypot(*(at[number] - one[0])) < CROSS for one in found):
            continue
        cross = _cross(own, at[number])
        if cross is not None:
            found.append(cross)
            yield Thin("cross", cross)


def _cross(dots: Points, middle: Points) -> Points | None:
    """Return where two lines at right angles cross that all dots lie on, with a point on one of them; None where dots lie elsewhere."""
    away = dots - middle
    far = np.hypot(*away.T) > 1.5
    if not far.any():
        return None
    fourfold = np.exp(4j * np.arctan2(away[far, 1], away[far, 0]))  # arms a quarter turn apart have one direction here
    if abs(fourfold.mean()) < 0.95:
        return None
    turn = float(np.angle(fourfold.mean())) / 4.0
    ways = np.array(((np.cos(turn), np.sin(turn)), (-np.sin(turn), np.cos(turn))))
    along = away @ ways.T
    first, other = np.abs(along[:, 1]) < np.abs(along[:, 0]), np.abs(along[:, 0]) < np.abs(along[:, 1])
    arms = np.array(
        [along[other & (np.abs(along[:, 1]) > 0.5), 0].mean(), along[first & (np.abs(along[:, 0]) > 0.5), 1].mean()]
    )
    off = np.minimum(np.abs(along[:, 0] - arms[0]), np.abs(along[:, 1] - arms[1]))
    if not np.isfinite(arms).all() or off.max() > 0.1 or np.abs(arms).max() > 0.3:
        return None
    centre = middle + arms @ ways
    return np.array((centre, centre + CROSS * ways[0]))


def _groups(count: int, pairs: npt.NDArray[np.int64]) -> Iterator[list[int]]:
    """Yield numbers that pairs tie together."""
    parent = list(range(count))

    def root(i: int) -> int:
        while parent[i] != i:
            parent[i] = parent[parent[i]]
            i = parent[i]
        return i

    for a, b in pairs:
        parent[root(int(a))] = root(int(b))
    found: dict[int, list[int]] = {}
    for i in range(count):
        found.setdefault(root(i), []).append(i)
    yield from found.values()


def _glued(seen: Pieces) -> Iterator[Thin]:
    pairs = [tuple(legs) for legs in _corners(seen)]
    turning = [leg for pair in pairs for leg in pair]
    beside = {
        id(leg): max((_long(other) for other in pair if other is not leg), default=0.0)
        for pair in pairs
        for leg in pair
    }
    rest = sorted((*_dashes(seen), *turning), key=lambda dash: -float(np.hypot(*(dash[1] - dash[0]))))
    while rest:
        line = [rest.pop(0)]
        long = _long(line[0])
        sure = id(line[0]) in beside and (
            long > SURE_LEG
            or (long > SHORT_SURE and beside[id(line[0])] > LONG_BESIDE)
            or any(_goes_on(line, one) for one in rest if id(one) in beside)
        )
        if long < WHOLE_DASH and not sure:
            if TICK[0] < long < TICK[1]:
                yield Thin("tick", line[0])
            continue
        while (more := next((dash for dash in rest if _goes_on(line, dash)), None)) is not None:
            line.append(more)
            rest = [dash for dash in rest if dash is not more]
        if len(line) > 1 or sure:
            yield Thin("glue", _ends(line))


def _dashes(seen: Pieces) -> Iterator[Points]:
    """Yield the middle lines of pieces that are straight, and as wide as a glue line."""
    for at in _thin_pieces(seen):
        middle = at.mean(axis=0)
        values, ways = np.linalg.eigh(np.cov((at - middle).T))
        long, wide = np.sqrt(12.0 * np.maximum(values[::-1], 0.0))
        if DASH[0] < long < DASH[1] and WIDE[0] < wide < WIDE[1]:
            way = ways[:, 1]
            yield np.array((middle - way * long / 2, middle + way * long / 2))


def _long(line: Points) -> float:
    return float(np.hypot(*(line[1] - line[0])))


def _corners(seen: Pieces) -> Iterator[Iterator[Points]]:
    """Yield the middle lines of both legs of each dash that goes round a corner."""
    for at in _thin_pieces(seen):
        values = np.linalg.eigvalsh(np.cov(at.T))
        if np.sqrt(12.0 * max(float(values[0]), 0.0)) > WIDE[1]:
            yield _legs(at)


def _thin_pieces(seen: Pieces) -> Iterator[Points]:
    """Yield the dots of pieces that may be a dash, straight or round a corner, in mm."""
    tall = len(seen.labels)
    long_side = seen.boxes[:, 2:4].max(axis=1) / DOTS
    fits = (long_side > DASH[0] / 1.5) & (long_side < 2 * DASH[1]) & (seen.boxes[:, 4] / DOTS**2 < 0.8 * DASH[1])
    fits[0] = False
    for number in np.flatnonzero(fits):
        left, top, width, height, ink = (int(value) for value in seen.boxes[number])
        if ink / DOTS**2 > WIDE[1] * (width + height) / DOTS * 1.1:
            continue
        rows, columns = np.nonzero(seen.labels[top : top + height, left : left + width] == number)
        yield np.column_stack((columns + left + 0.5, tall - rows - top - 0.5)) / DOTS


def _legs(at: Points) -> Iterator[Points]:
    """Yield the middle lines of both legs of a dash that goes round a corner, each up to where they cross."""
    hull = at[_hull(at)]
    gaps = np.hypot(*(hull[:, None] - hull[None]).transpose(2, 0, 1))
    i, j = np.unravel_index(int(gaps.argmax()), gaps.shape)
    one, other = hull[i], hull[j]
    across = np.array((one[1] - other[1], other[0] - one[0])) / max(gaps[i, j], 1e-9)
    corner = hull[int(np.abs((hull - one) @ across).argmax())]
    nearer = _off_line(at, one, corner) < _off_line(at, other, corner)
    fits = [fit for legs in (at[nearer], at[~nearer]) if (fit := _leg(legs)) is not None]
    if not fits or max(fit[2] for fit in fits) > DASH[1] + 0.3:
        return
    if len(fits) == 1:  # it ends just round the corner
        middle, way, long = fits[0]
        yield np.array((middle - way * long / 2, middle + way * long / 2))
        return
    (a, way, long), (b, its, its_long) = fits
    turn = np.column_stack((way, -its))
    if abs(np.linalg.det(turn)) < SQUARE_ENOUGH:
        return
    crossing = a + way * np.linalg.solve(turn, b - a)[0]
    for middle, along, size in ((a, way, long), (b, its, its_long)):
        out = along if float((middle - crossing) @ along) > 0.0 else -along
        yield np.array((crossing, middle + out * size / 2))


def _hull(at: Points) -> npt.NDArray[np.int64]:
    """Return the numbers of the points that are corners of the convex hull."""
    ring = shapely.get_coordinates(shapely.convex_hull(shapely.multipoints(at)))
    return np.array([int(np.hypot(*(at - corner).T).argmin()) for corner in ring])


def _off_line(at: Points, start: Points, end: Points) -> Points:
    return np.asarray(shapely.distance(shapely.points(at), shapely.LineString((start, end))))


def _leg(at: Points) -> tuple[Points, Points, float] | None:
    """Return middle, direction and length of a straight leg; None where it is none."""
    if len(at) < LEG_DOTS:
        return None
    middle = at.mean(axis=0)
    values, ways = np.linalg.eigh(np.cov((at - middle).T))
    long, wide = np.sqrt(12.0 * np.maximum(values[::-1], 0.0))
    return (middle, ways[:, 1], float(long)) if wide < WIDE[1] + 0.03 and long > SHORT_LEG else None


def _goes_on(line: list[Points], dash: Points) -> bool:
    """Say whether a dash lies in a line and not far behind one of its dashes."""
    a, b = line[0]
    way = (b - a) / np.hypot(*(b - a))
    across = np.array((-way[1], way[0]))
    own = (dash[1] - dash[0]) / np.hypot(*(dash[1] - dash[0]))
    middle = dash.mean(axis=0) - a
    far = np.hypot(*middle)
    if abs(own @ across) > WAY_OFF * 3 or abs(middle @ across) > LINE_OFF + far * WAY_OFF / 10:
        return False
    along = [sorted((float((p - a) @ way), float((q - a) @ way))) for p, q in (*line, dash)]
    low, high = along[-1]
    return any(max(low - end, start - high) < GAP for start, end in along[:-1])


def _ends(line: list[Points]) -> Points:
    """Return both ends of the straight line that lies best through dashes."""
    at = np.vstack(line)
    middle = at.mean(axis=0)
    _, _, ways = np.linalg.svd(at - middle)
    along = (at - middle) @ ways[0]
    return np.array((middle + along.min() * ways[0], middle + along.max() * ways[0]))
