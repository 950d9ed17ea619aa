"""Surface patterns to draw on a part: one module each, one entry each in ``PATTERNS``."""

from publisher.geometry.model import ShapeInfo
from publisher.geometry.surfaces.draw import PATTERNS, surface_marks


def surface_infos() -> tuple[ShapeInfo, ...]:
    """Return the surface patterns with their parameters, as ``shape_infos`` does for shapes."""
    return tuple(pattern.info for pattern in PATTERNS)
