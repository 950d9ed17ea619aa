"""What of a page's strokes a reader really sees: cut down to clips, hidden layers left out, covered stretches taken away."""

from functools import cached_property
from typing import Any

import numpy as np
import shapely

from publisher.basics import Box
from publisher.proof.model import Array, Clip, PageRead, Piece, PlacedImage

PALEST_LINE = 0.7  # lighter lines have less contrast than 2 : 1 on white (WCAG 2 asks 3 : 1) and count as not drawn
COVERS_FROM = 0.3  # difference of grey from which a later area hides what lies under it
NEAR = 1e-6


class Ink:
    """The visible strokes of one page as numpy arrays (mm).

    ``points`` (N, 2) holds all lines one after another, closed ones with their first point repeated; line i is
    ``points[starts[i]:starts[i + 1]]``. ``width``, ``dashed``, ``grey``, ``piece`` have one entry per line.
    """

    def __init__(self, page: PageRead) -> None:
        """Collect the strokes of a page."""
        self.page = page
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
        self._take_covered_away()
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
        boxes = np.array([(c.box.left, c.box.bottom, c.box.right, c.box.top) for c in clips])
        outside = (self.bounds[:, :2] < boxes[:, :2] - NEAR).any(axis=1) | (
            self.bounds[:, 2:] > boxes[:, 2:] + NEAR
        ).any(axis=1)
        outside |= np.array([bool(c.shapes) for c in clips])
        if outside.any():
            self._replace(
                {
                    int(i): shapely.intersection(_line(self.line(int(i))), clip_area(clips[int(i)]))
                    for i in np.flatnonzero(outside)
                }
            )

    def _take_covered_away(self) -> None:
        """Take away what lies under a later area or picture of another grey."""
        changed: dict[int, Any] = {}
        if not len(self.piece):
            return
        orders = np.array([self.page.pieces[i].order for i in self.piece])
        greys = np.array([self.page.pieces[i].grey for i in self.piece])
        for order, grey, box, area in covers(self.page):
            under = (orders < order) & ((grey is None) | (np.abs(greys - (grey or 0.0)) > COVERS_FROM))
            under &= (self.bounds[:, 0] < box.right) & (self.bounds[:, 2] > box.left)
            under &= (self.bounds[:, 1] < box.top) & (self.bounds[:, 3] > box.bottom)
            for i in map(int, np.flatnonzero(under)):
                changed[i] = shapely.difference(changed.get(i, _line(self.line(i))), area(Box(*self.bounds[i])))
        if changed:
            self._replace(changed)

    def _replace(self, changed: dict[int, Any]) -> None:
        chunks: list[Array] = []
        owners: list[int] = []
        for i in range(len(self.piece)):
            parts = [self.line(i)]
            if i in changed:
                parts = [shapely.get_coordinates(p) for p in shapely.get_parts(shapely.line_merge(changed[i]))]
            chunks += parts
            owners += [int(self.piece[i])] * len(parts)
        self._fill(chunks, np.array([len(c) for c in chunks], dtype=int), np.array(owners, dtype=int))


def covers(page: PageRead) -> list[tuple[int, float | None, Box, Any]]:
    """Return (order, grey or None for pictures, bounds, function that gives the area near a box) of all that can hide things."""
    found: list[tuple[int, float | None, Box, Any]] = []
    for piece in page.pieces:
        if piece.fill_grey is not None and piece.visible and piece.solid_fill:
            box = _within(piece.box(), piece.clip.box)
            if box is not None:
                found.append((piece.order, piece.fill_grey, box, lambda near, piece=piece: filled_area(piece, near)))
    for image in page.images:
        box = _within(_round(image.corners), image.clip.box)
        if image.visible and not image.is_mask and box is not None:
            found.append((image.order, None, box, lambda _, image=image: _image_area(image)))
    return sorted(found, key=lambda c: c[0])


def _round(corners: tuple[tuple[float, float], ...]) -> Box:
    xs, ys = [p[0] for p in corners], [p[1] for p in corners]
    return Box(min(xs), min(ys), max(xs), max(ys))


def _within(box: Box, clip: Box) -> Box | None:
    cut = Box(
        max(box.left, clip.left), max(box.bottom, clip.bottom), min(box.right, clip.right), min(box.top, clip.top)
    )
    return cut if cut.left <= cut.right and cut.bottom <= cut.top else None


def _line(points: Array) -> Any:
    return shapely.LineString(points)


def clip_area(clip: Clip) -> Any:
    """Return a clip as an area."""
    box = clip.box
    if box.left >= box.right or box.bottom >= box.top:
        return shapely.Polygon()
    area = shapely.box(box.left, box.bottom, box.right, box.top)
    for rings, even_odd in clip.shapes:
        area = shapely.intersection(area, _area(rings, even_odd))
    return area


def filled_area(piece: Piece, near: Box) -> Any:
    """Return what a filled path covers near a box, inside its clip. Rings that do not reach the box do not matter there."""
    low = np.minimum.reduceat(piece.points, piece.starts[:-1])
    high = np.maximum.reduceat(piece.points, piece.starts[:-1])
    reaches = (
        (low[:, 0] <= near.right) & (high[:, 0] >= near.left) & (low[:, 1] <= near.top) & (high[:, 1] >= near.bottom)
    )
    reaches &= np.diff(piece.starts) > 2
    rings = tuple(piece.points[piece.starts[i] : piece.starts[i + 1]] for i in np.flatnonzero(reaches))
    return shapely.intersection(_area(rings, piece.even_odd), clip_area(piece.clip))


def _image_area(image: PlacedImage) -> Any:
    return shapely.intersection(shapely.Polygon(image.corners), clip_area(image.clip))


def _area(rings: tuple[Array, ...], even_odd: bool) -> Any:
    """Return the area of rings. The nonzero rule is taken as union, which it is unless rings turn against each other."""
    polygons = [shapely.make_valid(shapely.Polygon(ring)) for ring in rings if len(ring) > 2]
    if not polygons:
        return shapely.Polygon()
    if (
        not even_odd
        and len(polygons) > 1
        and len({shapely.is_ccw(shapely.LinearRing(r)) for r in rings if len(r) > 2}) == 1
    ):
        return shapely.union_all(polygons)
    area = polygons[0]
    for polygon in polygons[1:]:
        area = shapely.symmetric_difference(area, polygon)
    return area
