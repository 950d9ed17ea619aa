"""The library of shapes: one module each, one entry each in the tuple below. The order is the order in lists and docs."""

from publisher.geometry.shapes import (
    disc,
    gable_wall,
    rectangle,
    regular_polygon,
    ring,
    roof_panel,
    spiral_stair_layer,
    wall_panel,
)
from publisher.geometry.shapes.shape import Shape, ShapeKind

SHAPES: tuple[ShapeKind, ...] = (
    spiral_stair_layer.KIND,
    disc.KIND,
    ring.KIND,
    regular_polygon.KIND,
    rectangle.KIND,
    wall_panel.KIND,
    gable_wall.KIND,
    roof_panel.KIND,
)

__all__ = ["SHAPES", "Shape", "ShapeKind"]
