"""Boxes as polygons. Millimetres."""

import shapely

from publisher.basics import Box


def as_polygon(box: Box) -> shapely.Polygon:
    """Return a box as a polygon."""
    return shapely.box(*box.sides)
