"""Cobbles: rounded stones in rows, each a little different; stones of neighbouring rows sit in each other's gaps."""

from math import pi

import numpy as np
import shapely

from publisher.geometry.model import ShapeInfo
from publisher.geometry.registry import Values, length, nothing_to_check
from publisher.geometry.surfaces.noise import noise
from publisher.geometry.surfaces.pattern import PENCIL_APART, Ground, LineFamily, Lines, Pattern, per_area
from publisher.geometry.surfaces.rows import numbers

CORNERS = 8
LEAST_COBBLE = 0.4  # of a stone: what is left of it at a cut and smaller than this is not drawn
COBBLE_WIDE, COBBLE_HIGH = 0.42, 0.40  # half sizes of a stone before it varies, as a share of its place
COBBLE_SHAKE = 0.06  # its middle moves by up to this share
ROUGH = 0.10  # its corners lie up to this share further in


def lines(values: Values, ground: Ground) -> tuple[LineFamily, ...]:
    """Return the outlines of all stones; one at a cut is drawn as far as it goes, if enough of it is left."""
    size, box, (left, bottom) = values.number("size"), ground.box, ground.origin
    k = numbers(box.bottom, box.top, bottom, size)[:, None]
    i = numbers(box.left - size, box.right, left, size)[None, :]
    x = left + (i + 0.5 + 0.5 * (k % 2.0) + COBBLE_SHAKE * (2.0 * noise(ground.seed, 5, k, i) - 1.0)) * size
    y = bottom + (k + 0.5 + COBBLE_SHAKE * (2.0 * noise(ground.seed, 6, k, i) - 1.0)) * size
    corner = np.arange(CORNERS)
    rough = 1.0 - ROUGH * noise(ground.seed, 7, k[:, :, None], i[:, :, None], corner)
    angle = (corner + 0.5) * 2.0 * pi / CORNERS
    # the rounded square |x|³ + |y|³ = 1 fills its place better than a circle
    reach = rough / (np.abs(np.cos(angle)) ** 3 + np.abs(np.sin(angle)) ** 3) ** (1.0 / 3.0)
    ring = np.stack(
        [
            x[:, :, None] + COBBLE_WIDE * size * reach * np.cos(angle),
            y[:, :, None] + COBBLE_HIGH * size * reach * np.sin(angle),
        ],
        axis=-1,
    ).reshape(-1, CORNERS, 2)
    return (LineFamily(_kept(ring, ground)),)


def _kept(rings: np.ndarray, ground: Ground) -> Lines:
    """Return closed lines of the stones of which enough lies on the piece."""
    stones = shapely.polygons(rings)
    shapely.prepare(ground.body)
    inside = shapely.contains_properly(ground.body, stones)
    crossed = ~inside & shapely.intersects(ground.body, stones)
    share = np.where(inside, 1.0, 0.0)
    share[crossed] = shapely.area(shapely.intersection(stones[crossed], ground.body)) / shapely.area(stones[crossed])
    kept: Lines = shapely.linestrings(np.concatenate([rings, rings[:, :1]], axis=1)[share >= LEAST_COBBLE])
    return kept


PATTERN = Pattern(
    ShapeInfo(
        "cobbles",
        "rounded stones in rows, each a little different; another seed gives other stones",
        (length("size", "width of a stone with its gap", least=5.0, most=200.0),),
        least_feature=PENCIL_APART,
    ),
    lines,
    nothing_to_check,
    per_area(lambda values: values.number("size") ** 2),
    lambda values: (1.0 - 2.0 * COBBLE_WIDE) * values.number("size"),
)
