"""Pieces that lie beside one another, drawn small: each set in a little, so that between the lines of two of them white is left.

On a sheet of board a knife's width parts them. Drawn at a tenth their lines would be one, and of one of them none: it would look open.
"""

from collections.abc import Sequence

import numpy as np
import shapely

from publisher.geometry import mitred
from publisher.pages.sheet.clearing import LEAST_WHITE

SPARE_WHITE = 0.03  # mm, so that rounding leaves what is wanted
LEAST_LEFT = 0.5  # of its area, that a piece which is set in must keep: a narrower one is drawn as it is


def set_apart(
    shapes: Sequence[shapely.Polygon], line: float, board: shapely.Polygon | None = None, border_line: float = 0.0
) -> tuple[shapely.Polygon, ...]:
    """Return shapes (mm of the paper), drawn with a ``line`` of this width (mm), each set in by half of what is missing
    between it and the nearest other one, by all of it where that one is too narrow to be set in itself; at the border of their ``board``,
    which is drawn with a line of its own, by all that is missing. One with thin places is set in only there. Openings stay as they are.
    What a window has cut into pieces, or left nothing of, stays as it is, and others keep off it."""
    every = np.array(shapes, dtype=object)
    wanted = line + LEAST_WHITE + SPARE_WHITE
    at_border = (line + border_line) / 2 + LEAST_WHITE + SPARE_WHITE
    inside = None if board is None else mitred(board, -at_border)
    wide = np.array([_wide_enough(shape, wanted / 2) for shape in shapes])
    found: list[shapely.Polygon] = []
    for at, shape in enumerate(shapes):
        if not _is_piece(shape):
            found.append(shape)
            continue
        away = np.nan_to_num(shapely.distance(every, shape), nan=np.inf)  # from nothing it is no number
        away[at] = np.inf
        by = np.maximum(wanted - away, 0.0) * (np.where(wide, 0.5, 1.0) if wide[at] else 0.0)
        most = max(
            float(by.max()), 0.0 if board is None else at_border - float(shapely.distance(board.exterior, shape))
        )
        if most <= 0.0:
            found.append(shape)
            continue
        left = mitred(shapely.Polygon(shape.exterior), -most)
        if not _stays_whole(left, wanted / 2):  # its thin places would close up: only where others are near
            near = np.flatnonzero(by > 0.0)
            keeps_off = [mitred(every[n], float(away[n] + by[n])) for n in near]
            left = shapely.Polygon(shape.exterior).difference(shapely.union_all(keeps_off))
            left = left if inside is None else left.intersection(inside)
        found.append(_with_openings(shape, left))
    return tuple(found)


def _is_piece(shape: shapely.Geometry) -> bool:
    return shape.geom_type == "Polygon" and not shape.is_empty


def _wide_enough(shape: shapely.Polygon, by: float) -> bool:
    return _is_piece(shape) and bool(mitred(shapely.Polygon(shape.exterior), -by).area > LEAST_LEFT * shape.area)


def _stays_whole(shape: shapely.Geometry, by: float) -> bool:
    """Tell whether a shape is one piece that is wider than twice ``by`` (mm) all over, but for its tips."""
    return _is_piece(shape) and mitred(shape, -by).geom_type == "Polygon"


def _with_openings(shape: shapely.Polygon, left: shapely.Geometry) -> shapely.Polygon:
    """Return what is left of a shape, but for slivers, with its openings; the shape itself where that is too little."""
    largest = max(
        (one for one in shapely.get_parts(left) if one.geom_type == "Polygon"), key=shapely.area, default=shape
    )
    if largest.area < LEAST_LEFT * shape.area:
        return shape
    holes = [hole for hole in shape.interiors if largest.contains(shapely.Polygon(hole))]
    return shapely.Polygon(largest.exterior, holes)
