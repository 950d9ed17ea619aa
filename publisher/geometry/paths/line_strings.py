"""Paths as lines of the geometry library, and its lines as paths."""

from collections.abc import Iterator

import shapely

from publisher.basics import Path, polyline


def line_string(path: Path) -> shapely.LineString | shapely.Point:
    """Return the path as a line (mm), arcs flattened to a sagitta of 0.005 mm; a point where it has no length."""
    points = path.travelled
    return shapely.LineString(points) if len(points) > 1 else shapely.Point(points[0])


def lines_left(line: shapely.LineString, area: shapely.Polygon) -> Iterator[Path]:
    """Yield what of a line lies in an area (mm)."""
    pieces = shapely.get_parts(shapely.intersection(line, area))
    lines = [piece for piece in pieces if piece.geom_type == "LineString" and piece.length > 0.0]
    for left in shapely.get_parts(shapely.line_merge(shapely.MultiLineString(lines))):
        yield polyline(tuple((float(x), float(y)) for x, y in left.coords))
