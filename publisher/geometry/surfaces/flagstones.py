"""Flagstones: irregular slabs that fill the piece, none narrower than a third of the size asked for.

The slabs are the cells of a honeycomb whose corners are shaken. Where a cut leaves a sliver of one, the joint between it and its
neighbour is left out, so that the sliver is part of a larger slab.
"""

from math import sqrt

import numpy as np
import shapely

from publisher.geometry.model import ShapeInfo
from publisher.geometry.registry import Values, length, nothing_to_check
from publisher.geometry.surfaces.noise import noise
from publisher.geometry.surfaces.pattern import Ground, LineFamily, Lines, Pattern, per_area
from publisher.geometry.surfaces.rows import numbers

SLAB_SHAKE = 0.19  # a corner moves by up to this share of the size, each way; the nearest two stand 0.58 sizes apart
NARROWEST_SLAB = 1.0 / 3.0  # of the size: no slab is narrower
NEAR_RIM = 2.2  # sizes: slabs farther from every cut are whole
ROUNDS = 6  # a sliver may need more than one neighbour


def lines(values: Values, ground: Ground) -> tuple[LineFamily, ...]:
    """Return the joints between the slabs, without those that would cut off a sliver: long level ones, then the links."""
    zigzags, links = _honeycomb(values.number("size"), ground)
    inner = [_inside(joints, ground.body) for joints in (zigzags, links)]
    first = len(inner[0])
    joints = np.concatenate(inner)
    kept = _without_slivers(joints, ground, values.number("size"))
    long: Lines = shapely.get_parts(shapely.line_merge(shapely.multilinestrings(joints[:first][kept[:first]])))
    return LineFamily(long), LineFamily(joints[first:][kept[first:]])


def _honeycomb(size: float, ground: Ground) -> tuple[Lines, Lines]:
    """Return the sides of all cells over the box: those of the zigzags from left to right, and the upright ones."""
    box, side = ground.box.grown(2.0 * size), size / sqrt(3.0)
    k = numbers(box.bottom, box.top, ground.origin[1], 1.5 * side)[:, None]
    i = numbers(box.left, box.right, ground.origin[0], size / 2.0)[None, :]
    high = (k + i) % 2.0 == 0.0
    x = ground.origin[0] + i * size / 2.0 + SLAB_SHAKE * size * (2.0 * noise(ground.seed, 8, k, i) - 1.0)
    y = ground.origin[1] + k * 1.5 * side + np.where(high, side / 2.0, 0.0)
    y = y + SLAB_SHAKE * size * (2.0 * noise(ground.seed, 9, k, i) - 1.0)
    corners = np.stack([x, y], axis=-1)
    level = np.stack([corners[:, :-1], corners[:, 1:]], axis=2).reshape(-1, 2, 2)
    upright = np.stack([corners[:-1], corners[1:]], axis=2)[high[:-1]]
    return shapely.linestrings(level), shapely.linestrings(upright)


def _inside(joints: Lines, body: shapely.Geometry) -> Lines:
    """Return what of the joints lies on the piece."""
    shapely.prepare(body)
    whole = shapely.contains_properly(body, joints)
    crossed = joints[~whole & shapely.intersects(body, joints)]
    pieces = shapely.get_parts(shapely.intersection(crossed, body))
    cut: Lines = np.concatenate([joints[whole], pieces[shapely.get_type_id(pieces) == shapely.GeometryType.LINESTRING]])
    return cut


def _without_slivers(joints: Lines, ground: Ground, size: float) -> np.ndarray:
    """Say which joints stay: the longest joint of every sliver goes, until each slab has room for a circle."""
    rim, radius = ground.body.boundary, NARROWEST_SLAB * size / 2.0
    shapely.prepare(rim)
    kept = np.ones(len(joints), dtype=bool)
    near = np.flatnonzero(shapely.dwithin(rim, joints, NEAR_RIM * size))
    for _ in range(ROUNDS):
        own = near[kept[near]]
        net = shapely.union_all(np.append(joints[own], rim))
        slabs = shapely.get_parts(shapely.polygonize(shapely.get_parts(net)))
        slivers = slabs[shapely.is_empty(shapely.buffer(slabs, -radius, quad_segs=2))]
        if not len(slivers):
            break
        middles = shapely.line_interpolate_point(joints[own], 0.5, normalized=True)
        sliver, joint = shapely.STRtree(middles).query(shapely.boundary(slivers), "dwithin", 1e-6)
        between = np.bincount(joint, minlength=len(own))[joint] > 1  # two slivers together are a longer sliver
        order = np.lexsort((joint, -shapely.length(joints[own])[joint], between, sliver))
        _, first = np.unique(sliver[order], return_index=True)
        if not len(first):
            break
        kept[own[joint[order][first]]] = False
    return kept


PATTERN = Pattern(
    ShapeInfo(
        "flagstones",
        "irregular slabs, none narrower than a third of the size; another seed gives other slabs",
        (length("size", "width of a slab on average", least=5.0, most=500.0),),
        least_feature=1.5,
    ),
    lines,
    nothing_to_check,
    per_area(lambda values: values.number("size") ** 2 * sqrt(3.0) / 2.0),
    lambda values: values.number("size") * NARROWEST_SLAB,
)
