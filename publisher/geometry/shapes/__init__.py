"""The library of shapes: one module each, one entry each in the tuple below. The order is the order in lists and docs."""

from publisher.geometry.shapes import (
    battlement,
    buttress,
    cross_lap_rib,
    curved_wall,
    disc,
    gable_wall,
    rectangle,
    regular_polygon,
    ring,
    roof_panel,
    spiral_stair_layer,
    stair_stringer,
    tower_panel,
    tread,
    wall_panel,
)
from publisher.geometry.shapes import (  # bridges and quays, wraps, ground
    arch_side,
    deck,
    hex_tile,
    pier,
    quay_side,
    ramp,
    ruin,
    soffit_strip,
    square_tile,
    tube_wrap,
)
from publisher.geometry.shapes.shape import Shape, ShapeKind

GROUND: tuple[ShapeKind, ...] = (
    arch_side.KIND,
    soffit_strip.KIND,
    deck.KIND,
    pier.KIND,
    quay_side.KIND,
    tube_wrap.KIND,
    hex_tile.KIND,
    square_tile.KIND,
    ramp.SIDE,
    ramp.DECK,
    ruin.KIND,
)

SHAPES: tuple[ShapeKind, ...] = (
    spiral_stair_layer.KIND,
    stair_stringer.KIND,
    tread.KIND,
    disc.KIND,
    ring.KIND,
    regular_polygon.KIND,
    rectangle.KIND,
    wall_panel.KIND,
    tower_panel.KIND,
    curved_wall.KIND,
    battlement.KIND,
    buttress.KIND,
    cross_lap_rib.KIND,
    gable_wall.KIND,
    roof_panel.KIND,
    *GROUND,
)

__all__ = ["SHAPES", "Shape", "ShapeKind"]
