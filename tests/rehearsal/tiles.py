"""Tiles taped together by their match marks, as a buyer does it: marks of one name lie on one another, and nothing else is known.

The ink of all tiles of a part is moved into the frame of the first; where two tiles show one line, the two must be one line.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import combinations
from math import atan2, cos, dist, sin

import numpy as np
import shapely
from shapely import affinity

from tests.rehearsal.cut_lines import WIDTH, CutLine
from tests.rehearsal.letters import Tag
from tests.rehearsal.notes import Note
from tests.rehearsal.pages import MatchMark, ReadPage
from tests.rehearsal.thin_lines import Thin

APART = 0.25  # mm by which the distances of two marks may differ on two tiles: more is no print scale, but a mark in the wrong place
TWICE = 0.25  # mm by which a line that two tiles show may be wider than one line
REACH = 40.0  # mm from a match mark to the cut line beyond it
CLOSE = 6.0  # mm beyond a mark within which a line is its tile's
IN_LINE = 3.0  # mm by which the marks of a seam may be out of line


@dataclass(frozen=True, slots=True, eq=False)
class Tile:
    """What one tile shows: ink of cut lines, marks by name, tags, notes."""

    page: int
    inks: tuple[shapely.Polygon, ...]
    marks: dict[str, tuple[float, float]]
    tags: tuple[Tag, ...]
    notes: tuple[Note, ...] = ()
    thin: tuple[Thin, ...] = ()

    @property
    def hull(self) -> shapely.Geometry:
        """Return what lies within the tile's lines and marks."""
        return shapely.convex_hull(shapely.union_all([*self.inks, *(shapely.Point(at) for at in self.marks.values())]))


@dataclass(frozen=True, slots=True, eq=False)
class Taped:
    """A part put together: the ink of its cut lines in the frame of one tile, its letters, pages, and what was wrong."""

    inks: tuple[shapely.Polygon, ...]
    letters: frozenset[str]
    pages: tuple[int, ...]
    faults: tuple[str, ...]
    worst: float  # mm by which marks of one name are apart
    notes: tuple[Note, ...] = ()
    thin: tuple[Thin, ...] = ()


def tiles_of(page: ReadPage) -> tuple[Tile, ...]:
    """Return the tiles of a page: open cut lines, joined by the marks beside them."""
    bands = [cut for cut in page.cuts if not cut.closed]
    marks = [mark for mark in page.marks if mark.name]
    if not marks:
        return ()
    groups = _groups(bands, marks)
    tiles = []
    for own_bands, own_marks in groups:
        named = {mark.name: (mark.x, mark.y) for mark in own_marks}
        tiles.append(Tile(page.number, tuple(band.ink for band in own_bands), named, ()))
    hulls = [tile.hull for tile in tiles]
    closed = [cut for cut in page.cuts if cut.closed]
    found = []
    for tile, hull in zip(tiles, hulls, strict=True):
        inner = tuple(cut.ink for cut in closed if hull.contains(cut.ink.centroid))
        tagged = tuple(
            tag
            for tag in page.tags
            if hull.contains(shapely.Point((tag.left + tag.right) / 2, (tag.bottom + tag.top) / 2))
        )
        noted = tuple(note for note in page.notes if hull.contains(shapely.Point(note.x, note.y)))
        thin = tuple(one for one in page.thin if shapely.contains_xy(hull, one.points).mean() > 0.5)
        found.append(Tile(tile.page, (*tile.inks, *inner), tile.marks, tagged, noted, thin))
    return tuple(found)


def _groups(bands: list[CutLine], marks: list[MatchMark]) -> Iterator[tuple[list[CutLine], list[MatchMark]]]:
    """Yield lines and marks that belong to one tile: the marks of a seam, and the lines that run across it."""
    seams = list(_seams(marks))
    parent = list(range(len(bands) + len(seams)))

    def root(i: int) -> int:
        while parent[i] != i:
            i = parent[i]
        return i

    for number, seam in enumerate(seams):
        for band in _across(seam, bands):
            parent[root(band)] = root(len(bands) + number)
    sets: dict[int, tuple[list[CutLine], list[MatchMark]]] = defaultdict(lambda: ([], []))
    for i, cut in enumerate(bands):
        sets[root(i)][0].append(cut)
    for i, seam in enumerate(seams):
        sets[root(len(bands) + i)][1].extend(seam)
    yield from (found for found in sets.values() if found[0] and found[1])


def _seams(marks: list[MatchMark]) -> Iterator[list[MatchMark]]:
    """Yield the marks of each seam of a page: of names that differ in the last letter, in line, those that are nearest to each other
    where the page shows both sides of a seam."""
    rest = sorted(marks, key=lambda mark: mark.name)
    while rest:
        seam = [rest.pop(0)]
        for name in sorted({mark.name for mark in rest if mark.name[:-1] == seam[0].name[:-1]} - {seam[0].name}):
            named = [mark for mark in rest if mark.name == name and _in_line(seam[0], mark)]
            if named:
                seam.append(min(named, key=lambda mark: dist((mark.x, mark.y), (seam[0].x, seam[0].y))))
                rest.remove(seam[-1])
        yield seam


def _in_line(a: MatchMark, b: MatchMark) -> bool:
    return min(abs(a.x - b.x), abs(a.y - b.y)) < IN_LINE


def _across(seam: list[MatchMark], bands: list[CutLine]) -> Iterator[int]:
    """Yield the cut lines that run across a seam: between its marks, and the first beyond them."""
    ends = max(
        combinations(seam, 2), key=lambda pair: dist((pair[0].x, pair[0].y), (pair[1].x, pair[1].y)), default=None
    )
    if ends is None:
        return
    a, b = np.array((ends[0].x, ends[0].y)), np.array((ends[1].x, ends[1].y))
    way = (b - a) / np.hypot(*(b - a))
    between = shapely.LineString((a, b))
    crossed = [
        (n, len(shapely.get_parts(band.ink.intersection(between))))
        for n, band in enumerate(bands)
        if band.ink.intersects(between)
    ]
    yield from (n for n, _ in crossed)
    beyond = sorted(hit for start, out in ((a, -way), (b, way)) if (hit := _first_beyond(start, out, bands)))
    times = sum(count for _, count in crossed)
    wanted = (
        2 if times == 0 else 1 if times % 2 else sum(gap < CLOSE for gap, _ in beyond)
    )  # what is gone into is left again
    yield from (n for _, n in beyond[:wanted])


def _first_beyond(start: np.ndarray, out: np.ndarray, bands: list[CutLine]) -> tuple[float, int] | None:
    """Return how far beyond a mark the first cut line is, and which."""
    ray = shapely.LineString((start, start + REACH * out))
    hits = [
        (shapely.Point(start).distance(band.ink.intersection(ray)), n)
        for n, band in enumerate(bands)
        if band.ink.intersects(ray)
    ]
    return min(hits, default=None)


def taped(tiles: Iterable[Tile]) -> tuple[Taped, ...]:
    """Return the parts that these tiles make."""
    rest, found = list(tiles), []
    while rest:
        first = rest.pop(0)
        found.append(_together(first, rest))
    return tuple(found)


def _together(first: Tile, rest: list[Tile]) -> Taped:
    """Lay further tiles on by their marks until none is left that shares some; they are taken from ``rest``."""
    placed = [first]
    faults: list[str] = []
    worst = 0.0
    while True:
        here = {name: at for tile in placed for name, at in tile.marks.items()}
        fitting = [(len(here.keys() & tile.marks.keys()), n) for n, tile in enumerate(rest)]
        shared, number = max(fitting, default=(0, -1))
        if shared < 2:
            break
        moved, off = _laid(rest.pop(number), here)
        worst = max(worst, off)
        if off > APART:
            faults.append(f"marks of page {moved.page} are {off:.2f} mm off those that they belong on")
        placed.append(moved)
    inks = shapely.get_parts(shapely.union_all([ink for tile in placed for ink in tile.inks]))
    whole = shapely.union_all(inks)
    if whole.buffer(-(WIDTH + TWICE) / 2).area > 0.02 * whole.area:
        faults.append("a line that two tiles show is two lines when they are taped")
    notes = tuple(note for tile in placed for note in tile.notes)
    letters = frozenset(tag.letter for tile in placed for tag in tile.tags)
    thin = tuple(one for tile in placed for one in tile.thin)
    return Taped(tuple(inks), letters, tuple(tile.page for tile in placed), tuple(faults), worst, notes, thin)


def _laid(tile: Tile, here: dict[str, tuple[float, float]]) -> tuple[Tile, float]:
    """Return the tile moved so that its marks lie on those of their names, and by how much the worst misses (least squares)."""
    names = sorted(here.keys() & tile.marks.keys())
    to, own = np.array([here[name] for name in names]), np.array([tile.marks[name] for name in names])
    a, b = own - own.mean(axis=0), to - to.mean(axis=0)
    turn = atan2(float((a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]).sum()), float((a * b).sum()))
    c, s = cos(turn), sin(turn)
    move = to.mean(axis=0) - np.array(((c, -s), (s, c))) @ own.mean(axis=0)
    matrix = [c, -s, s, c, float(move[0]), float(move[1])]
    inks = tuple(affinity.affine_transform(ink, matrix) for ink in tile.inks)
    marks = {
        name: (c * x - s * y + float(move[0]), s * x + c * y + float(move[1])) for name, (x, y) in tile.marks.items()
    }
    off = max(dist(marks[name], here[name]) for name in names)
    notes = tuple(
        replace(
            note,
            x=c * note.x - s * note.y + float(move[0]),
            y=s * note.x + c * note.y + float(move[1]),
            way=(c * note.way[0] - s * note.way[1], s * note.way[0] + c * note.way[1]),
        )
        for note in tile.notes
    )
    thin = tuple(one.moved(np.array(((c, -s, float(move[0])), (s, c, float(move[1]))))) for one in tile.thin)
    return Tile(tile.page, inks, marks, tile.tags, notes, thin), off
