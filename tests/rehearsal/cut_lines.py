"""Cut lines: of all lines of a template page the only solid ones half a millimetre wide.

A grey opening by a disc wider than every other line leaves these, and what is as heavy: large letters, page codes. What is left is traced
at its half tone, finer than a dot, and told by its width. Millimetres of the page from here on, from its lower left, y upward.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import cv2
import numpy as np
import numpy.typing as npt
import shapely
from contourpy import FillType, contour_generator

from tests.rehearsal.raster import DOTS, Grey, Pieces, pieces_of

WIDTH = 0.5  # mm, as the legend shows it
NEXT = 0.35  # of the widest line that is none
WIDTH_OFF = 0.025  # by which the mean width of a cut line may be off
LEAST = 1.6  # mm across: a smaller ring of ink is no template and no hole
SHORTEST = 8.0  # mm across: a shorter open line is none of a tile
WIDER = 0.02  # share of a line's ink that heads of arrows may make wider
BUMP = 0.5  # mm: half of the width of a bump
BLUNT = 0.008  # mm: a side as short would blunt a corner as it grows
TRACED = 0.004  # mm to which a trace is kept
WITHIN = 0.02  # mm: what is read reaches no farther over half a width within the outer edge
BLUNTED = 0.03  # mm: a tip that reaches as far beyond that is one which dots have blunted
BIT = 0.2  # mm: what is shorter is left of dots where it was made narrower
LEG = 0.45  # mm: shorter bits are no side
BLUNT_ROUND = 1.2  # mm: dots round a corner off by bits as long in sum between two sides
FLAT = 0.77  # cosine of 40 degrees: a corner that turns by less is not made sharper
BY_DOTS = 0.06  # mm that dots take off any corner
ROUGH, CLEAR, FIT, BENDS = (
    0.03,
    0.1,
    1.2,
    0.015,
)  # mm: sides are found so roughly, measured from here to there, straight so far
DOT = 0.05  # mm between points of a side that is measured
BESIDE = 0.03  # mm: a point as near beside a tip is of the same corner; it would be a spike as it grows
SHARP = 0.17  # sine of the least angle of a corner

Point = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class CutLine:
    """The ink of one connected cut line on a page, as an area; ``closed``: it goes round something."""

    ink: shapely.Polygon
    closed: bool

    @property
    def area(self) -> shapely.Polygon:
        """Return what a closed line's middle goes round."""
        return middle_area(self.ink)


def cut_lines(ink: Grey) -> tuple[CutLine, ...]:
    """Return the cut lines of a page's picture."""
    reach = (WIDTH + NEXT) / 4 * DOTS
    across = np.arange(-int(reach), int(reach) + 1)
    disc = (across[:, None] ** 2 + across**2 <= reach**2).astype(np.uint8)
    heavy = cv2.morphologyEx(ink, cv2.MORPH_OPEN, disc)
    return tuple(line for area in inked_areas(heavy, pieces_of(heavy)) if (line := _cut_line(area)) is not None)


def inked_areas(ink: Grey, seen: Pieces, least: float = LEAST, square: bool = False) -> Iterator[shapely.Polygon]:
    """Yield the areas of connected ink of a picture, traced at its half tone; ``square``: only those that are as wide as high."""
    labels, boxes = seen.labels, seen.boxes
    for number in range(1, len(boxes)):
        x, y, width, height, _ = (int(value) for value in boxes[number])
        if max(width, height) < least * DOTS or (square and abs(width - height) > 0.02 * height):
            continue
        top, left = max(y - 2, 0), max(x - 2, 0)
        cut = np.s_[top : y + height + 2, left : x + width + 2]
        others = cv2.dilate(((labels[cut] != number) & (labels[cut] > 0)).astype(np.uint8), np.ones((3, 3), np.uint8))
        alone = np.pad(np.where(others > 0, 0, ink[cut]), 1)  # its own soft rim, and nothing of its neighbours
        points, offsets = contour_generator(z=alone, fill_type=FillType.OuterOffset).filled(127.5, 1e9)
        largest = max(zip(points, offsets, strict=True), key=lambda found: found[1][1], default=None)
        if largest is None:
            continue
        rings = [_page_mm(largest[0][a:b], left - 1, top - 1, len(ink)) for a, b in pairwise(largest[1])]
        area = shapely.Polygon(rings[0], [ring for ring in rings[1:] if len(ring) > 3]).simplify(TRACED)
        yield area if area.is_valid else max(shapely.get_parts(area.buffer(0.0)), key=lambda part: part.area)


def _page_mm(dots: np.ndarray, left: int, top: int, height: int) -> np.ndarray:
    """Return the middles of dots of a cutting as points on the page."""
    return np.column_stack(((dots[:, 0] + left + 0.5) / DOTS, (height - dots[:, 1] - top - 0.5) / DOTS))


def _cut_line(area: shapely.Polygon) -> CutLine | None:
    """Return an area of heavy ink as a cut line; None where it is something else."""
    if abs(2.0 * area.area / area.length - WIDTH) > WIDTH_OFF:
        return None
    left, bottom, right, top = area.bounds
    if not area.interiors and max(right - left, top - bottom) < SHORTEST:
        return None  # a stroke of a letter
    if area.buffer(-0.62 * WIDTH / 2).is_empty or area.buffer(-1.3 * WIDTH / 2).area > WIDER * area.area:
        return None  # at many places wider than a line with the heads of a few arrows: a letter, a code
    return CutLine(area, bool(area.interiors))


def middle_area(ink: shapely.Polygon) -> shapely.Polygon:
    """Return what the middle of a closed line goes round, by the ink's outer edge; where another line crosses it the opening leaves a
    bump, which is narrower than anything that a knife cuts. A corner that is round at the outer edge stays so: shrunk past its own radius
    it would look sharp."""
    mitre = {"join_style": "mitre", "mitre_limit": 20.0}
    outer = sharpened(ink.exterior)
    inner = outer.buffer(-WIDTH / 2 - BUMP, **mitre)
    whole = max(shapely.get_parts(inner), key=lambda part: part.area, default=shapely.Polygon())
    grown = sharpened(whole.simplify(BLUNT).exterior, BIT).buffer(BUMP, **mitre)
    read = sharpened(grown.simplify(BLUNT).exterior)
    within = outer.buffer(WITHIN - WIDTH / 2, **mitre)
    beyond = shapely.get_parts(read.difference(within))
    near = shapely.union_all([part for part in beyond if within.buffer(BLUNTED).contains(part)])
    kept = shapely.get_parts(read.intersection(within.union(near)))
    return max((one for one in kept if one.geom_type == "Polygon"), key=lambda part: part.area, default=read)


def sharpened(ring: shapely.LinearRing, blunt: float = BLUNT_ROUND) -> shapely.Polygon:
    """Return what a traced ring goes round, its corners as far out as the sides beside them meet: dots and the opening round each off, and
    what is blunt by a dot is blunt by many as it grows. ``blunt``: mm of the bits at a corner, in sum, that are no side."""
    points = np.asarray(ring.coords[:-1])
    if not len(points):  # nothing is left within a line as small as a letter's ring
        return shapely.Polygon()
    number = {tuple(point): n for n, point in enumerate(points)}
    rough = np.array([number[point] for point in ring.simplify(ROUGH).coords[:-1]])
    sides = np.hypot(*(points[np.roll(rough, -1)] - points[rough]).T)
    legs = np.flatnonzero(sides > LEG)
    tips: dict[int, Point] = {}
    ways: dict[int, tuple[Point, Point]] = {}
    gone: set[int] = set()
    for leg, after in zip(legs, np.roll(legs, -1), strict=True):  # each ends where the bits of a corner begin
        bits = np.arange(leg + 1, after + (after <= leg) * len(rough)) % len(rough)
        start, end = rough[(leg + 1) % len(rough)], rough[after]
        if sides[bits].sum() > blunt or len(legs) < 2:
            continue
        before = _straight(points[_between(rough[leg], start, len(points))][::-1])
        behind = _straight(points[_between(end, rough[(after + 1) % len(rough)], len(points))])
        tip = None if before is None or behind is None else _crossing(before, behind)
        if before is None or behind is None or tip is None:
            continue
        away = np.hypot(*(points[_between(start, end, len(points))] - tip).T).min()
        if away < _rounded_by(tip - before[0], behind[0] - tip):
            # what stays and lies beyond the tip would be a spike as it grows
            first = _last_before(points, start, rough[leg], -1, tip, tip - before[0])
            last = _last_before(points, end, rough[(after + 1) % len(rough)], 1, tip, tip - behind[0])
            gone.update(_between(first, last, len(points)).tolist())
            tips[first], ways[first] = tip, (before[1], behind[1])
    stays = [n for n in range(len(points)) if n in tips or n not in gone]
    near = {
        other
        for at, n in enumerate(stays)
        if n in tips
        for step, way in zip((-1, 1), ways[n], strict=True)
        for other in _beside(points, [m for m in (stays[at:] + stays[:at])[::step] if m != n], tips, tips[n], way)
    }
    kept = [tips.get(n, points[n]) for n in stays if n not in near]
    whole = shapely.Polygon(kept) if len(kept) > 2 else shapely.Polygon(ring)
    return whole if whole.is_valid else shapely.Polygon(ring)


def _beside(
    points: npt.NDArray[np.float64], others: list[int], tips: dict[int, Point], tip: Point, way: Point
) -> Iterator[int]:
    """Yield the numbers of the points from a tip on that only say which way its side runs, less truly than the whole side does: those of
    the stretch that it was measured by."""
    for n in others:
        off = points[n] - tip
        far = float(np.hypot(*off))
        aside = abs(float(off[0] * way[1] - off[1] * way[0]))
        if n in tips or not (far < BESIDE or (far < FIT and aside < BENDS)):
            return
        yield n


def _last_before(points: npt.NDArray[np.float64], at: int, end: int, step: int, tip: Point, way: Point) -> int:
    """Return the number of the farthest point of a side, from one on to its other ``end``, up to which all lie beyond a tip."""
    number = int(at)
    while (more := (number + step) % len(points)) != end and float((tip - points[more]) @ way) <= 0.0:
        number = more
    return number


def _rounded_by(ahead: Point, on: Point) -> float:
    """Return how far (mm) at most a corner is rounded off that turns from one direction into another: a tip by more."""
    cosine = float(ahead @ on) / float(np.hypot(*ahead) * np.hypot(*on))
    if cosine > FLAT:
        return 0.0
    half = np.sqrt(max((1.0 + cosine) / 2.0, 1e-4))  # cosine of half the angle by which it turns
    return BY_DOTS + WIDTH / 2.0 * (1.0 / half - 1.0)


def _between(start: int, end: int, count: int) -> npt.NDArray[np.int64]:
    """Return the numbers from one point of a ring up to another one."""
    return np.arange(start, end + 1 + (end < start) * count) % count


def _straight(side: npt.NDArray[np.float64]) -> tuple[Point, Point] | None:
    """Return a point and the direction of the straight line along the first bit of a side; None where it bends."""
    dots = shapely.get_coordinates(shapely.segmentize(shapely.LineString(side), DOT))
    long = np.hypot(*(dots - dots[0]).T)
    own = dots[(long > CLEAR) & (long < FIT)]
    if len(own) < 3:
        return None
    middle = own.mean(axis=0)
    _, _, ways = np.linalg.svd(own - middle)
    return None if np.abs((own - middle) @ ways[1]).max() > BENDS else (middle, ways[0])


def _crossing(one: tuple[Point, Point], other: tuple[Point, Point]) -> Point | None:
    """Return where two lines cross that turn a corner; None where they hardly do."""
    turn = np.column_stack((one[1], other[1]))
    if abs(np.linalg.det(turn)) < SHARP:
        return None
    return one[0] + np.linalg.solve(turn * (1.0, -1.0), other[0] - one[0])[0] * one[1]
