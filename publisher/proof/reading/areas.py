"""Areas that clip and cover: filled paths, pictures, clips, as shapely geometry."""

from collections.abc import Callable
from functools import partial
from math import dist
from typing import Any

import numpy as np
import shapely

from publisher.basics import Box
from publisher.proof.reading.model import Array, Clip, PageRead, PaintedPath, PlacedImage
from publisher.proof.reading.objects import TooMuch

COVERS_FROM = 0.3  # difference of grey from which a later area hides what lies under it
CAPITAL = 0.75  # height of capitals, of the em
MOST_CROSSED = 300  # corners of an area that crosses itself


Cover = tuple[int, float | None, Box, Callable[[Box], Any]]  # order, grey (None: picture), bounds, its area near a box


def covers(page: PageRead) -> tuple[Cover, ...]:
    """Return all that can hide things, in the order in which it was painted."""
    found: list[Cover] = []
    for piece in page.pieces:
        if piece.fill_grey is not None and piece.visible and piece.solid_fill:
            box = piece.box.common(piece.clip.box)
            if min(box.width, box.height) >= 0.0:
                found.append((piece.order, piece.fill_grey, box, partial(filled_area, piece)))
    for image in page.images:
        box = Box.round(image.corners).common(image.clip.box)
        if image.visible and not image.is_mask and min(box.width, box.height) >= 0.0:
            found.append((image.order, None, box, partial(_image_area, image)))
    return tuple(sorted(found, key=lambda c: c[0]))


def pictures_and_letters(page: PageRead) -> tuple[tuple[int, Box], ...]:
    """Return the boxes of visible pictures and runs of letters, each with its order."""
    corners = [(i.order, i.corners) for i in page.images if i.visible]
    for run in (t for t in page.texts if t.visible and t.text.strip()):
        length = dist((run.x, run.y), (run.end_x, run.end_y)) or 1.0
        across, up = (run.y - run.end_y) / length * run.size, (run.end_x - run.x) / length * run.size
        ends = ((run.x, run.y), (run.end_x, run.end_y))
        corners.append((run.order, (*ends, *((x + across * CAPITAL, y + up * CAPITAL) for x, y in ends))))
    return tuple((order, Box.round(points)) for order, points in corners)


def clip_area(clip: Clip) -> Any:
    """Return a clip as an area."""
    box = clip.box
    if min(box.width, box.height) <= 0.0:
        return shapely.Polygon()
    area = shapely.box(*box.sides)
    for rings, even_odd in clip.shapes:
        area = shapely.intersection(area, _area(rings, even_odd))
    return area


def filled_area(piece: PaintedPath, near: Box) -> Any:
    """Return what a filled path covers near a box, inside its clip. Rings that do not reach the box do not matter there."""
    low = np.minimum.reduceat(piece.points, piece.starts[:-1])
    high = np.maximum.reduceat(piece.points, piece.starts[:-1])
    reaches = (
        (low[:, 0] <= near.right) & (high[:, 0] >= near.left) & (low[:, 1] <= near.top) & (high[:, 1] >= near.bottom)
    )
    reaches &= np.diff(piece.starts) > 2
    rings = tuple(piece.points[piece.starts[i] : piece.starts[i + 1]] for i in np.flatnonzero(reaches))
    return shapely.intersection(_area(rings, piece.even_odd), clip_area(piece.clip))


def _image_area(image: PlacedImage, _near: Box) -> Any:
    return shapely.intersection(shapely.Polygon(image.corners), clip_area(image.clip))


def _area(rings: tuple[Array, ...], even_odd: bool) -> Any:
    """Return the area of rings. The nonzero rule is taken as union, which it is unless rings turn against each other."""
    polygons = [_polygon(ring) for ring in rings if len(ring) > 2]
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


def _polygon(ring: Array) -> Any:
    polygon = shapely.Polygon(ring)
    if shapely.is_valid(polygon):
        return polygon
    if len(ring) > MOST_CROSSED:
        raise TooMuch("an area crosses itself in hundreds of places")
    return shapely.make_valid(polygon)
