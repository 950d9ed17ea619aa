"""Pieces that lie beside one another, drawn small: each set in a little, so that between the lines of two of them white is left.

On a sheet of board a knife's width parts them. Drawn at a tenth their lines would be one, and of one of them none: it would look open.
"""

from collections.abc import Sequence

import numpy as np
import shapely

from publisher.pages.sheet.clearing import LEAST_WHITE

SPARE_WHITE = 0.03  # mm, so that rounding leaves what is wanted
LEAST_LEFT = 0.5  # of its area, that a piece which is set in must keep: a narrower one is drawn as it is


def set_apart(
    shapes: Sequence[shapely.Polygon], line: float, border: shapely.Geometry | None = None, border_line: float = 0.0
) -> tuple[shapely.Polygon, ...]:
    """Return shapes (mm of the paper), drawn with a ``line`` of this width (mm), each set in on all sides by half of what is missing
    between it and the nearest other one, and by all that is missing at a ``border`` drawn with a line of its own."""
    every = np.array(shapes, dtype=object)
    return tuple(_set_in(shape, np.delete(every, at), line, border, border_line) for at, shape in enumerate(shapes))


def _set_in(
    shape: shapely.Polygon,
    others: "np.typing.NDArray[np.object_]",
    line: float,
    border: shapely.Geometry | None,
    border_line: float,
) -> shapely.Polygon:
    missing = 0.0
    if len(others):
        missing = (line + LEAST_WHITE + SPARE_WHITE - float(shapely.distance(others, shape).min())) / 2
    if border is not None:
        wanted = (line + border_line) / 2 + LEAST_WHITE + SPARE_WHITE
        missing = max(missing, wanted - float(shapely.distance(border, shape)))
    if missing <= 0.0:
        return shape
    inner = shape.buffer(-missing, join_style="mitre")
    return inner if inner.geom_type == "Polygon" and inner.area > LEAST_LEFT * shape.area else shape
