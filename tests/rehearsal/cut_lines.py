"""Cut lines: of all lines of a template page the only solid ones half a millimetre wide.

A grey opening by a disc wider than every other line leaves these, and what is as heavy: large letters, page codes. What is left is traced
at its half tone, finer than a dot, and told by its width. Millimetres of the page from here on, from its lower left, y upward.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import cv2
import numpy as np
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
    bump, which is narrower than anything that a knife cuts."""
    mitre = {"join_style": "mitre", "mitre_limit": 20.0}
    inner = shapely.Polygon(ink.exterior).buffer(-WIDTH / 2 - BUMP, **mitre)
    whole = max(shapely.get_parts(inner), key=lambda part: part.area, default=shapely.Polygon())
    return whole.simplify(BLUNT).buffer(BUMP, **mitre).simplify(BLUNT)
