"""Ticks of masonry joints in the edge of a layer, for a stack that is built in courses.

The pitch closes the ring: perimeter / count, the whole number of units nearest to the length asked for. Beside a
sharp corner a joint nearer than a quarter of a unit is left out, so that no sliver stands at the corner.
"""

from math import cos, radians

import numpy as np
import shapely

from publisher.basics import SAGITTA, Purpose
from publisher.geometry.model import ParameterInfo, ShapeInfo
from publisher.geometry.paths import one_before
from publisher.geometry.registry import Values, length, nothing_to_check
from publisher.geometry.surfaces.pattern import PENCIL_APART, Array, Ground, LineFamily, Pattern, segments
from publisher.geometry.surfaces.rows import QUARTER, ROW_SLACK

SHARP = cos(radians(20.0))  # an edge that turns by more than this at a point has a corner there


def units(values: Values, ground: Ground) -> float:
    """Return how many units close the ring."""
    return float(max(1, round(ground.rim.length / values.number("length"))))


def lines(values: Values, ground: Ground) -> tuple[LineFamily, ...]:
    """Return the ticks, from the template's edge inwards, square to the edge."""
    rim, many = shapely.LineString(ground.rim.coords), int(units(values, ground))
    whole = float(rim.length)
    pitch = whole / many
    start = float(shapely.line_locate_point(rim, shapely.Point(ground.start)))
    at = np.sort((start + (np.arange(many) + values.number("offset")) * pitch) % whole)
    corners = _corners(shapely.get_coordinates(rim))
    if len(corners):
        away = np.abs(at[:, None] - corners[None, :])
        at = at[np.minimum(away, whole - away).min(axis=1) >= QUARTER * pitch - ROW_SLACK]
    step = min(0.01, whole / 1000.0)
    before = shapely.get_coordinates(shapely.line_interpolate_point(rim, (at - step) % whole))
    after = shapely.get_coordinates(shapely.line_interpolate_point(rim, (at + step) % whole))
    on = shapely.get_coordinates(shapely.line_interpolate_point(rim, at))
    along = after - before
    size = np.linalg.norm(along, axis=1, keepdims=True)
    on, along, size = on[size[:, 0] > 0.0], along[size[:, 0] > 0.0], size[size[:, 0] > 0.0]
    turned = np.column_stack([-along[:, 1], along[:, 0]]) * (1.0 if ground.rim.is_ccw else -1.0)
    inwards = turned / size
    # a traced template is flattened anew: two sagittas keep a tick inside it
    inset = ground.allowance + 2.0 * SAGITTA if ground.allowance else 0.0
    first, last = on + inwards * inset, on + inwards * (inset + values.number("depth"))
    ticks = segments(first[:, 0], first[:, 1], last[:, 0], last[:, 1])
    return (LineFamily(ticks, purpose=Purpose.JOINT_TICK, clear=inset),)


def _corners(points: Array) -> Array:
    """Return where along the closed line (mm) it turns sharply."""
    sides = np.diff(points, axis=0)
    size = np.linalg.norm(sides, axis=1)
    sides, size = sides[size > 0.0], size[size > 0.0]
    ways = sides / size[:, None]
    sharp = np.einsum("ij,ij->i", one_before(ways), ways) < SHARP
    return np.asarray(np.concatenate([[0.0], np.cumsum(size)[:-1]])[sharp])


PATTERN = Pattern(
    ShapeInfo(
        "edge_joints",
        "ticks of masonry joints round the edge of a layer, to be pressed down its side; whole units close the ring",
        (
            length(
                "length",
                "length of a unit along the edge; the nearest that closes the ring is taken",
                least=2.0,
                most=500.0,
            ),
            ParameterInfo("offset", "number", "where the first joint stands, as a share of a unit", 0.0, 0.0, 1.0),
            length("depth", "length of a tick", 3.0, least=1.0, most=20.0),
        ),
        least_feature=PENCIL_APART,
    ),
    lines,
    nothing_to_check,
    units,
    lambda values: values.number("length"),
)
