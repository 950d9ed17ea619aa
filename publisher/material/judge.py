"""The judge: every layout, wherever it comes from, is verified on the true outlines before anyone sees it.

Millimetres, floating point, distances between polygons (shapely), where the engines pack simplified outlines on whole numbers.
The free area of the sheet is the one that the engines were given.
"""

from collections import Counter
from collections.abc import Sequence
from functools import lru_cache

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import Point, Pose, record
from publisher.material.model import Item, Piece

Laid = npt.NDArray[np.object_]  # shapely polygons
LAYOUT_TOLERANCE = 0.01  # mm; gaps and edges are kept to this
ANGLE_TOLERANCE = 1e-6  # degrees
MANY_POINTS = 1_000
FINE = (
    LAYOUT_TOLERANCE / 4
)  # mm; how far an outline of very many points may move where it is only asked whether it is far away
ALIKE = 1e-6  # mm; two pairs of copies lie alike when their places differ by less


class LayoutFault(Exception):
    """A layout of ours is wrong: a fault of this program (exit 3), never a row of a table."""


@record
class Flaw:
    """One thing wrong with a layout, in words, with the number found and the limit (mm, degrees or plain)."""

    message: str
    value: float
    limit: float


@record
class _LaidOut:
    """A sheet's items: the outlines that differ, each turned as it lies but at the origin; and of every item the number of its
    outline and the place (n × 2, mm) of its origin."""

    shapes: Laid
    kind: npt.NDArray[np.int64]
    at: npt.NDArray[np.float64]

    def polygons(self) -> Laid:
        """Return all outlines where they lie."""
        return _moved(self.shapes[self.kind], self.at)


def _moved(shapes: Laid, by: npt.NDArray[np.float64]) -> Laid:
    """Return shapes moved by (n × 2)."""
    points, owner = shapely.get_coordinates(shapes, return_index=True)
    return np.asarray(shapely.set_coordinates(shapes.copy(), points + by[owner]))


@lru_cache(maxsize=256)
def _true_outline(rings: tuple[tuple[Point, ...], ...]) -> shapely.Geometry:
    """Return a piece's outline, holes included, as it was drawn."""
    outer, *holes = (shapely.linearrings(np.asarray(ring, dtype=np.float64)) for ring in rings)
    bare = shapely.polygons(outer, holes or None)
    # an outline that crosses itself has no inside that geometry could judge: its hull is the least that is safe
    return bare if shapely.is_valid(bare) else shapely.convex_hull(bare)


def _laid_out(pieces: Sequence[Piece], items: Sequence[Item]) -> _LaidOut:
    """Return the true outlines of items, holes included."""
    rings = {p.id: p.rings for p in pieces}
    numbers: dict[tuple[str, float, bool], int] = {}
    kind = [numbers.setdefault((i.part, i.pose.turn, i.pose.mirrored), len(numbers)) for i in items]
    shapes = np.empty(len(numbers), dtype=object)
    for number, (part, turn, mirrored) in enumerate(numbers):
        bare = _true_outline(rings[part])
        a, b, c, d, _, _ = Pose(turn=turn, mirrored=mirrored).matrix()
        turning = np.array(((a, b), (c, d)))
        shapes[number] = shapely.transform(bare, lambda points, by=turning: points @ by)
    at = np.array([(i.pose.x, i.pose.y) for i in items], dtype=np.float64).reshape(-1, 2)
    return _LaidOut(shapes, np.array(kind, dtype=np.int64), at)


def polygons(pieces: Sequence[Piece], items: Sequence[Item]) -> Laid:
    """Return the items' true outlines (holes included) where they lie, as shapely polygons."""
    return _laid_out(pieces, items).polygons()


def flaws(
    pieces: Sequence[Piece],
    container: tuple[tuple[Point, ...], ...],
    gap: float,
    sheets: Sequence[Sequence[Item]],
    complete: bool,
    held: Sequence[int] = (),
) -> tuple[Flaw, ...]:
    """Return all that is wrong with a layout; () when it holds.

    Checked: every part known, its pose finite, its turn among its allowed angles, no copy twice, no more copies (and no
    other number of mirrored ones) than asked, all copies there when ``complete``, inside the container, gaps kept.
    ``held``: so many first items of each sheet are known to hold among themselves.
    """
    known = {p.id: p for p in pieces}
    for item in (i for sheet in sheets for i in sheet):
        if item.part not in known:
            return (Flaw(f"part “{item.part}” is not in the list", 0.0, 0.0),)
        if not np.isfinite((item.pose.x, item.pose.y, item.pose.turn)).all():
            return (Flaw(f"part “{item.part}” lies nowhere: its place is not a number", 0.0, 0.0),)
    found = [flaw for sheet in sheets for flaw in flaws_of_turns(pieces, sheet)]
    found += flaw_of_numbers(pieces, sheets, complete)
    free = _free_area(container)
    for number, sheet in enumerate(sheets, 1):
        if sheet:
            laid = _laid_out(pieces, sheet)
            found += _inside(number, laid, free)
            found += _apart(number, laid, gap, held[number - 1] if held else 0)
    return tuple(found)


@lru_cache(maxsize=64)
def _free_area(container: tuple[tuple[Point, ...], ...]) -> shapely.Geometry:
    """Return the inside of a container with the tolerance round it."""
    free = shapely.Polygon(container[0], container[1:]).buffer(LAYOUT_TOLERANCE, join_style="mitre")
    shapely.prepare(free)
    return free


def flaws_of_turns(pieces: Sequence[Piece], sheet: Sequence[Item]) -> tuple[Flaw, ...]:
    """Check that the copies on a sheet are turned as their pieces allow."""
    allowed = {p.id: p.angles for p in pieces}
    found = []
    for item in sheet:
        angles = allowed[item.part]
        away = min(abs((item.pose.turn - a + 180.0) % 360.0 - 180.0) for a in angles) if angles else 0.0
        if away > ANGLE_TOLERANCE:
            found.append(Flaw(f"part “{item.part}” is turned as its board does not allow", item.pose.turn, away))
    return tuple(found)


def flaw_of_numbers(pieces: Sequence[Piece], sheets: Sequence[Sequence[Item]], complete: bool) -> tuple[Flaw, ...]:
    """Check the numbers of copies on all sheets, that none is there twice and, when ``complete``, that none is missing."""
    known = {p.id: p for p in pieces}
    items = [i for sheet in sheets for i in sheet]
    found = []
    for (part, copy), times in Counter((i.part, i.copy) for i in items).items():
        if times > 1:
            found.append(Flaw(f"copy {copy} of part “{part}” lies there {times} times", times, 1))
    for piece in known.values():
        laid = Counter(i.pose.mirrored for i in items if i.part == piece.id)
        for mirrored, wanted in ((True, piece.mirrored), (False, piece.count - piece.mirrored)):
            if laid[mirrored] > wanted or (complete and laid[mirrored] < wanted):
                words = "mirrored copies" if mirrored else "copies"
                found.append(
                    Flaw(f"{laid[mirrored]} {words} of part “{piece.id}” instead of {wanted}", laid[mirrored], wanted)
                )
    return tuple(found)


def _inside(number: int, laid: _LaidOut, free: shapely.Polygon) -> list[Flaw]:
    """Check that all outlines lie in the free area, within the tolerance."""
    left, bottom, right, top = shapely.bounds(laid.shapes)[laid.kind].T
    boxes = shapely.box(left + laid.at[:, 0], bottom + laid.at[:, 1], right + laid.at[:, 0], top + laid.at[:, 1])
    doubtful = np.nonzero(~shapely.covers(free, boxes))[0]
    shapes = _moved(laid.shapes[laid.kind[doubtful]], laid.at[doubtful])
    outside = shapes[~shapely.covers(free, shapes)]
    return [
        Flaw(f"a part reaches over the edge of sheet {number}", float(g.difference(free).area), 0.0) for g in outside
    ]


def _apart(number: int, laid: _LaidOut, gap: float, held: int) -> list[Flaw]:
    """Check that all outlines keep the gap, within the tolerance: once for all pairs that lie alike, and not for two of the first
    ``held``."""
    first, second, away = _neighbours(laid, gap, held)
    if gap > LAYOUT_TOLERANCE:
        plain, apart = _plainer(laid.shapes), gap - LAYOUT_TOLERANCE
        close = shapely.dwithin(plain[first], _moved(plain[second], away), apart + 2 * FINE)
        doubtful = np.nonzero(close)[0]
        others = _moved(laid.shapes[second[doubtful]], away[doubtful])
        close[doubtful] = shapely.dwithin(laid.shapes[first[doubtful]], others, apart)
    else:
        # outlines that may touch: what is left of them without a rim of half the tolerance must not
        cores = shapely.buffer(laid.shapes, -LAYOUT_TOLERANCE / 2, join_style="mitre")
        close = shapely.intersects(cores[first], _moved(cores[second], away))
    near = np.nonzero(close)[0]
    distances = shapely.distance(laid.shapes[first[near]], _moved(laid.shapes[second[near]], away[near]))
    return [
        Flaw(f"two parts on sheet {number} lie closer than the gap", distance, gap) for distance in distances.tolist()
    ]


def _plainer(shapes: Laid) -> Laid:
    """Return shapes of which those of very many points have fewer, no further than ``FINE`` from where they were."""
    heavy = shapely.get_num_coordinates(shapes) > MANY_POINTS
    plain = shapes.copy()
    for number in np.nonzero(heavy)[0].tolist():
        # coordinates a hair beside zero keep the simplifier of GEOS 3.14 for ever
        clean = shapely.transform(shapes[number], lambda points: np.where(np.abs(points) < 1e-9, 0.0, points))
        plain[number] = shapely.simplify(clean, FINE)
    return plain


def _neighbours(
    laid: _LaidOut, gap: float, held: int
) -> tuple[npt.NDArray[np.int64], npt.NDArray[np.int64], npt.NDArray[np.float64]]:
    """Return the outlines of pairs whose boxes come closer than the gap, and the second's place (n × 2, mm) seen from the first;
    pairs that lie alike stand there once."""
    low = shapely.bounds(laid.shapes)[laid.kind] + np.tile(laid.at, 2)
    boxes = shapely.box(low[:, 0], low[:, 1], low[:, 2] + gap, low[:, 3] + gap)
    first, second = shapely.STRtree(boxes).query(boxes)
    wanted = (first < second) & (second >= held)
    first, second = first[wanted], second[wanted]
    away = np.rint((laid.at[second] - laid.at[first]) / ALIKE).astype(np.int64)
    pairs = np.unique(np.column_stack((laid.kind[first], laid.kind[second], away)), axis=0)
    return pairs[:, 0], pairs[:, 1], pairs[:, 2:] * ALIKE


def insist(
    pieces: Sequence[Piece],
    container: tuple[tuple[Point, ...], ...],
    gap: float,
    sheets: Sequence[Sequence[Item]],
    *,
    complete: bool,
    what: str,
) -> None:
    """Raise LayoutFault when a layout that we made does not hold."""
    wrong = flaws(pieces, container, gap, sheets, complete)
    if wrong:
        raise LayoutFault(f"{what}: {wrong[0].message} ({wrong[0].value:.4f}, limit {wrong[0].limit:.4f})")
