"""Boxes as polygons and back: small helpers that all makers of template and tile pages share. Millimetres."""

from collections.abc import Iterable

import shapely

from publisher.basics import Box, Point


def as_polygon(box: Box) -> shapely.Polygon:
    """Return a box as a polygon."""
    return shapely.box(box.left, box.bottom, box.right, box.top)


def within(box: Box, window: Box) -> bool:
    """Say whether a box lies inside another."""
    return (
        box.left >= window.left and box.right <= window.right and box.bottom >= window.bottom and box.top <= window.top
    )


def overlap(one: Box, two: Box) -> bool:
    """Say whether two boxes have more than a side in common."""
    return one.left < two.right and two.left < one.right and one.bottom < two.top and two.bottom < one.top


def moved(box: Box, x: float, y: float) -> Box:
    """Return the box shifted by (x, y)."""
    return Box(box.left + x, box.bottom + y, box.right + x, box.top + y)


def box_round(points: Iterable[Point]) -> Box:
    """Return the least box round the points. Raises ValueError when there are none."""
    xs, ys = zip(*points, strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))
