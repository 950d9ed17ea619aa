"""What of a page's ink lies on a ground: strokes that leave their promised lines there, pale lines, areas, pictures."""

from collections.abc import Iterator

import numpy as np
import shapely

from publisher.basics import Point
from publisher.proof.measuring.ink import PALEST_LINE, Ink
from publisher.proof.measuring.outlines import StrokeSegments
from publisher.proof.reading import PageRead, PaintedPath

OWN_LINE = 0.1  # mm from a promised line to a stroke that shows it
LINE_POINTS = 2.0  # mm between the points of a stroke that are tried


def strokes_off(ink: Ink, ground: shapely.Geometry, own: StrokeSegments) -> Iterator[tuple[int, Point]]:
    """Yield each stroke that leaves all lines of its ``own`` on a ground, and where."""
    if not len(ink.piece):
        return
    strokes = shapely.linestrings(ink.points, indices=np.repeat(np.arange(len(ink.piece)), np.diff(ink.starts)))
    points, owner = shapely.get_coordinates(shapely.segmentize(strokes, LINE_POINTS), return_index=True)
    inside = shapely.contains_xy(ground, points)
    points, owner = points[inside], owner[inside]
    off = ~own.near(points, OWN_LINE)
    points, owner = points[off], owner[off]
    for line, first in zip(*np.unique(owner, return_index=True), strict=True):
        yield int(line), _point(points[first])


def pale_lines_on(page: PageRead, ground: shapely.Geometry) -> Iterator[Point]:
    """Yield where each line lies on a ground that is too pale to be among the strokes."""
    for piece in page.pieces:
        if piece.grey is not None and piece.grey > PALEST_LINE and piece.visible:
            inside = shapely.contains_xy(ground, piece.points)
            if inside.any():
                yield _point(piece.points[int(np.argmax(inside))])


def areas_on(page: PageRead, ground: shapely.Geometry) -> Iterator[tuple[PaintedPath, Point]]:
    """Yield each filled area that is seen on a ground, and where."""
    for piece in page.pieces:
        if piece.fill_grey is not None and piece.visible:
            shown = shapely.intersection(ground, shapely.box(*piece.box.common(piece.clip.box).sides))
            if not shown.is_empty:
                yield piece, _point(shown.representative_point().coords[0])


def pictures_on(page: PageRead, ground: shapely.Geometry) -> Iterator[Point]:
    """Yield where each picture is seen on a ground."""
    for image in page.images:
        shown = shapely.intersection(ground, shapely.Polygon(image.corners)) if image.visible else shapely.Polygon()
        if not shown.is_empty:
            yield _point(shown.representative_point().coords[0])


def _point(at: "np.ndarray | tuple[float, ...]") -> Point:
    return float(at[0]), float(at[1])
