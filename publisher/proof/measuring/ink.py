"""What of a page's strokes a reader really sees: cut down to clips, hidden layers left out, covered stretches taken away."""

from functools import cached_property
from typing import Any

import numpy as np
import shapely

from publisher.basics import Box
from publisher.proof.reading import COVERS_FROM, Array, Cover, PageRead, TooMuch, clip_area

PALEST_LINE = 0.7  # lighter lines have less contrast than 2 : 1 on white (WCAG 2 asks 3 : 1) and count as not drawn
MOST_CUTS = 6000  # lines of one page that clips and areas cut
INK_NEAR = 1e-6
BEND = 0.02  # mm: points that lie nearer to the line between their neighbours make no bend


def straightened(points: Array, owners: Array) -> tuple[Array, Array]:
    """Return points of lines without those that make no bend, and the line of each: an arc in hundreds of points takes long."""
    lines = shapely.simplify(shapely.linestrings(points, indices=owners), BEND)
    kept: tuple[Array, Array] = shapely.get_coordinates(lines, return_index=True)
    return kept


class Ink:
    """The visible strokes of one page as numpy arrays (mm).

    ``points`` (N, 2) holds all lines one after another, closed ones with their first point repeated; line i is
    ``points[starts[i]:starts[i + 1]]``. ``width``, ``dashed``, ``grey``, ``piece`` have one entry per line.
    """

    def __init__(self, page: PageRead, covers: tuple[Cover, ...]) -> None:
        """Collect the strokes of a page, less what its ``covers`` hide."""
        self.page = page
        self.cuts = 0
        self.cut: set[int] = set()  # pieces of which something was taken away
        shown = [
            i
            for i, p in enumerate(page.pieces)
            if p.grey is not None and p.visible and p.grey <= PALEST_LINE and p.widest > 0
        ]
        pieces = [page.pieces[i] for i in shown]
        counts = [len(p.starts) - 1 for p in pieces]
        self._fill(
            [p.points for p in pieces],
            np.concatenate([np.diff(p.starts) for p in pieces]) if pieces else np.zeros(0, dtype=int),
            np.repeat(np.array(shown, dtype=int), counts),
        )
        self._cut_to_clips()
        self._take_covered_away(covers)
        self.width = np.array([page.pieces[i].width for i in self.piece])
        self.dashed = np.array([bool(page.pieces[i].dash) for i in self.piece], dtype=bool)
        self.grey = np.array([page.pieces[i].grey for i in self.piece], dtype=float)

    def _fill(self, chunks: list[Array], lengths: Array, owners: Array) -> None:
        """Take lines: their points in chunks, how many points each has, and the piece of each. Single points are left out."""
        points = np.concatenate(chunks) if chunks else np.zeros((0, 2))
        keep = lengths > 1
        self.points: Array = points[np.repeat(keep, lengths)] if not keep.all() else points
        self.starts: Array = np.concatenate(([0], np.cumsum(lengths[keep]))).astype(int)
        self.piece: Array = owners[keep]
        if len(self.points):
            low = np.minimum.reduceat(self.points, self.starts[:-1])
            high = np.maximum.reduceat(self.points, self.starts[:-1])
            self.bounds: Array = np.hstack((low, high))
        else:
            self.bounds = np.zeros((0, 4))

    def line(self, i: int) -> Array:
        """Return the points of line i."""
        return self.points[self.starts[i] : self.starts[i + 1]]

    @cached_property
    def straight(self) -> tuple[Array, Array]:
        """Return the points of all lines that make a bend, and the line of each."""
        if not len(self.points):
            return np.zeros((0, 2)), np.zeros(0, dtype=int)
        return straightened(self.points, np.repeat(np.arange(len(self.piece)), np.diff(self.starts)))

    @cached_property
    def segments(self) -> tuple[Array, Array, Array]:
        """Return (starts (M, 2), ends (M, 2), line of each (M,)) of all straight segments."""
        if not len(self.points):
            return np.zeros((0, 2)), np.zeros((0, 2)), np.zeros(0, dtype=int)
        inner = np.ones(len(self.points), dtype=bool)
        inner[self.starts[1:] - 1] = False
        index = np.flatnonzero(inner)
        owner = np.repeat(np.arange(len(self.piece)), np.diff(self.starts) - 1)
        return self.points[index], self.points[index + 1], owner

    def _cut_to_clips(self) -> None:
        """Cut the lines that reach over their clip."""
        if not len(self.piece):
            return
        clips = [self.page.pieces[i].clip for i in self.piece]
        boxes = np.array([clip.box.sides for clip in clips])
        outside = (self.bounds[:, :2] < boxes[:, :2] - INK_NEAR).any(axis=1) | (
            self.bounds[:, 2:] > boxes[:, 2:] + INK_NEAR
        ).any(axis=1)
        outside |= np.array([bool(c.shapes) for c in clips])
        self._spend(int(outside.sum()))
        areas: dict[int, Any] = {}
        changed: dict[int, Any] = {}
        for i in map(int, np.flatnonzero(outside)):
            key = id(clips[i])  # the strokes of one clip share it
            if key not in areas:
                areas[key] = clip_area(clips[i])
            changed[i] = shapely.intersection(shapely.LineString(self.line(i)), areas[key])
        if changed:
            self._replace(changed)

    def _spend(self, cuts: int) -> None:
        self.cuts += cuts
        if self.cuts > MOST_CUTS:
            raise TooMuch("clips and areas cut thousands of its lines")

    def _take_covered_away(self, covers: tuple[Cover, ...]) -> None:
        """Take away what lies under a later area or picture of another grey."""
        changed: dict[int, Any] = {}
        if not len(self.piece):
            return
        orders = np.array([self.page.pieces[i].order for i in self.piece])
        greys = np.array([self.page.pieces[i].grey for i in self.piece])
        for order, grey, box, area in covers:
            under = (orders < order) & ((grey is None) | (np.abs(greys - (grey or 0.0)) > COVERS_FROM))
            under &= (self.bounds[:, 0] < box.right) & (self.bounds[:, 2] > box.left)
            under &= (self.bounds[:, 1] < box.top) & (self.bounds[:, 3] > box.bottom)
            self._spend(int(under.sum()))
            for i in map(int, np.flatnonzero(under)):
                line = changed[i] if i in changed else shapely.LineString(self.line(i))
                changed[i] = shapely.difference(line, area(Box(*self.bounds[i].tolist())))
        if changed:
            self._replace(changed)

    def _replace(self, changed: dict[int, Any]) -> None:
        self.cut.update(int(self.piece[i]) for i in changed)
        chunks: list[Array] = []
        owners: list[int] = []
        for i in range(len(self.piece)):
            parts = [self.line(i)]
            if i in changed:
                parts = [shapely.get_coordinates(p) for p in shapely.get_parts(shapely.line_merge(changed[i]))]
            chunks += parts
            owners += [int(self.piece[i])] * len(parts)
        self._fill(chunks, np.array([len(c) for c in chunks], dtype=int), np.array(owners, dtype=int))
