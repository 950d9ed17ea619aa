"""What is drawn in and around the promised parts without being promised: strokes as heavy as a cut line, and dark areas."""

from typing import Any

import numpy as np
import shapely

from publisher.basics import Box, OutlinePromise, Point, record
from publisher.proof.measuring.ink import Ink
from publisher.proof.measuring.outlines import OUTLINE_TOLERANCE, STROKE_REACH, StrokeSegments, Wanted
from publisher.proof.measuring.strewn import tried
from publisher.proof.reading import Array, PageRead, PlacedImage, filled_area

HEAVY = 0.45  # mm: a stroke so wide is taken for a line to cut along
FIRM = 0.32  # mm: inside a part so wide a stroke is as well, if it is long and unbroken: lines to draw are thinner
LONG_STROKE = 30.0  # mm: frames of words are smaller
BROKEN = 0.3  # mm: a gap that the eye sees
STROKE_STEP = 2.0  # mm between the points of a heavy stroke that are tried
SAME_WIDTH = 0.02  # mm
DARK_INK = 0.5  # grey of an area that hides what is printed on it
AREA = 30.0  # mm² of dark areas that one part may carry: arrow heads are 3 mm² each


@record
class StrayLine:
    """A heavy stroke that is no part of a promised outline: where it leaves it, its width, how far it strays (mm, at most REACH)."""

    page: int
    at: Point
    width: float
    away: float
    near: OutlinePromise


@record
class DarkArea:
    """Dark areas in a promised part: how much of it they cover (mm²), and where they begin."""

    promise: OutlinePromise
    area: float
    at: Point


class PromisedParts:
    """The promised outlines of one page: their rings as segments, and the areas that they enclose inside their windows."""

    def __init__(self, promises: tuple[OutlinePromise, ...]) -> None:
        """Place them on the page."""
        self.promises = promises
        self.areas = np.array([_area(p) for p in promises], dtype=object)
        rings = [Wanted(p, whole=True).segments() for p in promises]
        starts, ends = np.vstack([r.starts for r in rings]), np.vstack([r.ends for r in rings])
        self.owners = np.repeat(np.arange(len(rings)), [len(r.starts) for r in rings])
        self.widths = np.array([p.width for p in promises])
        self.rings = StrokeSegments(starts, ends, self.owners, self.widths[self.owners])

    def stray_lines(self, ink: Ink, number: int) -> list[StrayLine]:
        """Return the heavy strokes in or near the parts that do not follow an outline in its own width, the worst of each part."""
        heavy = np.flatnonzero((ink.width >= HEAVY) | ((ink.width >= FIRM) & _unbroken(ink) & _long(ink)))
        if not len(heavy):
            return []
        lines = [ink.line(int(i)) for i in heavy]
        strokes = shapely.linestrings(
            np.concatenate(lines), indices=np.repeat(np.arange(len(lines)), [len(x) for x in lines])
        )
        points, owner = tried(strokes, STROKE_STEP)
        width = ink.width[heavy][owner]
        away, index = self.rings.nearest(points)
        wrong = (away > OUTLINE_TOLERANCE) | (np.abs(self.rings.widths[np.maximum(index, 0)] - width) > SAME_WIDTH)
        points, width, away = points[wrong], width[wrong], away[wrong]
        found: list[StrayLine] = []
        for promise, area in zip(self.promises, self.areas, strict=True):
            if not len(points) or area.is_empty:
                continue
            distance = shapely.distance(shapely.points(points), area)
            near = np.flatnonzero(np.where(width >= HEAVY, distance <= STROKE_REACH + width / 2, distance <= 0.0))
            if len(near):
                worst = int(near[np.argmax(away[near])])
                at = (float(points[worst][0]), float(points[worst][1]))
                found.append(StrayLine(number, at, float(width[worst]), float(away[worst]), promise))
        return found

    def dark_areas(self, page: PageRead) -> list[DarkArea]:
        """Return for each part how much of it dark areas and pictures cover."""
        dark = [p for p in page.pieces if p.fill_grey is not None and p.fill_grey <= DARK_INK and p.visible]
        boxes = [p.box for p in dark]
        rounds = shapely.box(*np.array([box.sides for box in boxes]).reshape(-1, 4).T)
        pictures = [shapely.Polygon(i.corners) for i in page.images if _shows(i)]
        found: list[DarkArea] = []
        for promise, area in zip(self.promises, self.areas, strict=True):
            if area.is_empty:
                continue
            bounds = Box(*area.bounds)
            near = [filled_area(dark[int(i)], bounds) for i in np.flatnonzero(shapely.intersects(rounds, area))]
            shared = shapely.intersection(np.array([*near, *pictures], dtype=object), area)
            sizes = shapely.area(shared)
            if sizes.sum() > 0:
                middle = shapely.centroid(shared[int(np.argmax(sizes))])
                found.append(DarkArea(promise, float(sizes.sum()), (float(middle.x), float(middle.y))))
        return found


def _unbroken(ink: Ink) -> Array:
    """Return which lines have no gaps that one sees."""
    pieces, which = np.unique(ink.piece, return_inverse=True)
    gaps = [max(ink.page.pieces[int(i)].dash[1::2], default=0.0) for i in pieces]
    unbroken: Array = np.array([gap < BROKEN for gap in gaps], dtype=bool)[which]
    return unbroken


def _long(ink: Ink) -> Array:
    across: Array = (ink.bounds[:, 2:] - ink.bounds[:, :2]).max(axis=1, initial=0.0)
    return across >= LONG_STROKE


def _shows(image: PlacedImage) -> bool:
    return image.visible and not image.is_mask


def _area(promise: OutlinePromise) -> Any:
    area = shapely.make_valid(shapely.Polygon(promise.pose.apply_all(promise.rings[0])))
    return area if promise.window is None else shapely.intersection(area, shapely.box(*promise.window.sides))


def promised_parts(promises: tuple[OutlinePromise, ...]) -> dict[int, PromisedParts]:
    """Return the promised parts by page."""
    by_page: dict[int, list[OutlinePromise]] = {}
    for promise in promises:
        by_page.setdefault(promise.page, []).append(promise)
    return {page: PromisedParts(tuple(some)) for page, some in by_page.items()}
