"""Tiles put together again as a buyer would: page to page by the printed match marks, never by the poses that made them."""

from collections import Counter
from math import dist
from typing import Protocol

import numpy as np
import shapely

from publisher.basics import OutlinePromise, Point, Promises, SeamPromise, record
from publisher.proof.measuring.ink import Ink
from publisher.proof.measuring.marks import FoundMark, find_marks
from publisher.proof.measuring.outlines import StrokeSegments, Wanted, missing_length, shown_ground
from publisher.proof.reading import Array, TextLine

TAPED_TOLERANCE = 0.03  # mm: of an outline put together from its tiles
SHIFTED = 0.05  # mm that a mark may lie off its promise, and that marks of two pages may disagree


class PageParts(Protocol):
    """What tiles need of the file: ink and lines of words by page number."""

    def ink(self, page: int) -> Ink | None:
        """Return the ink of a page, None when the file lacks it."""

    def lines(self, page: int) -> tuple[TextLine, ...]:
        """Return the visible lines of words of a page."""


@record
class SeamReading:
    """A seam mark on one of its pages: where it was found (None: not there) and how far from its promise."""

    seam: SeamPromise
    page: int
    found: Point | None
    away: float
    label: bool


@record
class TilesReading:
    """A part put together: the greatest gap between promised and drawn, where (in the part's own mm), how much is missing,
    pages that no mark ties to the others, how badly the marks of neighbouring pages disagree, and pages that repeat a tile."""

    part: str
    copy: int
    pages: tuple[int, ...]
    farthest: float
    at: Point
    missing: float
    untied: tuple[int, ...]
    disagree: float
    repeated: tuple[int, ...]


TileMotion = tuple[Array, Array]  # turn matrix (2, 2) and shift (2,): p @ turn + shift


def read_seams(promises: Promises, file: PageParts) -> tuple[SeamReading, ...]:
    """Return a reading for each promised mark on each of its two pages."""
    readings = []
    for seam in promises.seams:
        for page, at in zip(seam.pages, seam.at, strict=True):
            ink = file.ink(page)
            marks = marks_of(promises, file, page, seam.part, seam.copy) if ink else ()
            named = [m for m in marks if m.label == seam.label]
            if named:
                best = min(named, key=lambda m: dist(m.at, at))
                readings.append(SeamReading(seam, page, best.at, dist(best.at, at), True))
                continue
            bare = [m for m in marks if dist(m.at, at) < 1.0]
            found = bare[0].at if bare else None
            readings.append(SeamReading(seam, page, found, dist(found, at) if found else float("inf"), False))
    return tuple(readings)


def marks_of(promises: Promises, file: PageParts, page: int, part: str, copy: int) -> tuple[FoundMark, ...]:
    """Return the marks on a page with the labels that this part's seams use."""
    seams = [s for s in promises.seams if (s.part, s.copy) == (part, copy)]
    ink = file.ink(page)
    if not seams or ink is None:
        return ()
    return find_marks(ink, file.lines(page), seams[0].radius, tuple(dict.fromkeys(s.label for s in seams)))


def read_tiles(promises: Promises, file: PageParts, page_count: int) -> tuple[TilesReading, ...]:
    """Return a reading for each part that is tiled."""
    groups: dict[tuple[str, int], list[OutlinePromise]] = {}
    for outline in promises.outlines:
        if outline.window is not None and outline.row:
            groups.setdefault((outline.part, outline.copy), []).append(outline)
    return tuple(_together(promises, file, key, tiles, page_count) for key, tiles in groups.items())


def _together(
    promises: Promises, file: PageParts, key: tuple[str, int], tiles: list[OutlinePromise], page_count: int
) -> TilesReading:
    part, copy = key
    pages = tuple(dict.fromkeys(t.page for t in tiles))
    found = {page: [m for m in marks_of(promises, file, page, part, copy) if m.label] for page in pages}
    carries, disagree = _tie(tuple(_marks_on(tile, tiles, found[tile.page]) for tile in tiles))
    wanted = Wanted(tiles[0], whole=True)
    low, high = wanted.box()
    pieces: list[tuple[Array, Array]] = []
    for number, (turn, shift) in carries.items():
        ink = file.ink(tiles[number].page)
        if ink is None:
            continue
        starts, ends, owners = ink.segments
        own = ~ink.dashed[owners] if len(owners) else np.zeros(0, dtype=bool)
        own &= _nearest_tile(tiles[number], tiles, (starts + ends) / 2)
        pieces.append((starts[own] @ turn + shift, ends[own] @ turn + shift))
    if pieces:
        a, b = np.vstack([p[0] for p in pieces]), np.vstack([p[1] for p in pieces])
        near = (np.maximum(a, b) > low - 3).all(axis=1) & (np.minimum(a, b) < high + 3).all(axis=1)
        a, b = a[near], b[near]
    else:
        a = b = np.zeros((0, 2))
    away, _ = StrokeSegments(a, b, np.zeros(len(a), dtype=int), np.zeros(len(a))).nearest(wanted.points)
    worst = int(np.argmax(away))
    return TilesReading(
        part,
        copy,
        pages,
        float(away[worst]),
        (float(wanted.points[worst][0]), float(wanted.points[worst][1])),
        missing_length(wanted, away),
        tuple(dict.fromkeys(tile.page for number, tile in enumerate(tiles) if number not in carries)),
        disagree,
        _repeats(promises, file, part, copy, found, page_count),
    )


def _nearest_tile(tile: OutlinePromise, tiles: list[OutlinePromise], points: Array) -> Array:
    """Return which points of the page of a tile lie no nearer to another tile of the part there: windows of two may overlap widely,
    as each may show a corner of the part alone."""
    others = [t for t in tiles if t.page == tile.page and t is not tile]
    nearest: Array = np.ones(len(points), dtype=bool)
    if others:
        own = _away(tile, points)
        nearest = own <= np.min([_away(other, points) for other in others], axis=0)
    return nearest


def _away(tile: OutlinePromise, points: Array) -> Array:
    """Return how far (mm) points of the page lie from what a tile shows of its part, 0 inside."""
    away: Array = shapely.distance(shown_ground(tile), shapely.points(points))
    return away


def _marks_on(tile: OutlinePromise, tiles: list[OutlinePromise], found: list[FoundMark]) -> dict[str, Point]:
    """Return the marks of a tile by label: of a page with several tiles of the part those in its window."""
    if not found:
        return {}
    here = _nearest_tile(tile, tiles, np.array([mark.at for mark in found]))
    return {mark.label: mark.at for mark, own in zip(found, here, strict=True) if own}


def _tie(marks: tuple[dict[str, Point], ...]) -> tuple[dict[int, TileMotion], float]:
    """Return for each tile, by its number, that marks tie to the first one how it is carried there, and the worst disagreement of
    marks (mm)."""
    carries: dict[int, TileMotion] = {0: (np.eye(2), np.zeros(2))}
    disagree = 0.0
    waiting = [0]
    while waiting:
        here = waiting.pop(0)
        for there in range(len(marks)):
            common = [label for label in marks[here] if label in marks[there]]
            if there == here or not common:
                continue
            goal = np.array([marks[here][label] for label in common])
            source = np.array([marks[there][label] for label in common])
            turn, shift, residual = fit(source, goal)
            disagree = max(disagree, residual)
            if there not in carries:
                before_turn, before_shift = carries[here]
                carries[there] = (turn @ before_turn, shift @ before_turn + before_shift)
                waiting.append(there)
    return carries, disagree


def fit(source: Array, goal: Array) -> tuple[Array, Array, float]:
    """Return the rigid motion (turn, shift, greatest residual in mm) that carries source to goal best.

    Least squares by singular values (Kabsch 1976, Acta Cryst. A32, 922). One mark alone gives a shift without a turn.
    """
    middle, target = source.mean(axis=0), goal.mean(axis=0)
    turn = np.eye(2)
    if len(source) > 1:
        u, _, v = np.linalg.svd((source - middle).T @ (goal - target))
        turn = u @ np.diag((1.0, float(np.sign(np.linalg.det(u @ v))))) @ v
    shift = target - middle @ turn
    residual = float(np.hypot(*(source @ turn + shift - goal).T).max())
    return turn, shift, residual


def _repeats(
    promises: Promises, file: PageParts, part: str, copy: int, found: dict[int, list[FoundMark]], page_count: int
) -> tuple[int, ...]:
    """Return pages that show a set of this part's marks although no tile of it is promised there, or show one more often than it is."""
    own = [s for s in promises.seams if (s.part, s.copy) == (part, copy)]
    wanted = Counter((page, seam.label) for seam in own for page in seam.pages)
    drawn = Counter((page, mark.label) for page, marks in found.items() for mark in marks)
    often = {page for (page, label), times in drawn.items() if times > wanted[page, label] > 0}
    promised = {p for s in promises.seams for p in s.pages} | set(found)
    return tuple(
        page
        for page in range(1, page_count + 1)
        if page in often or (page not in promised and any(m.label for m in marks_of(promises, file, page, part, copy)))
    )
