"""A designer's own SVG drawings as outlines and marks."""

from publisher.geometry.drawings.outline import drawn_shape

__all__ = ["drawn_shape"]
