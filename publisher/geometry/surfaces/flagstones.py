"""Flagstones: irregular slabs that fill the piece, none narrower than a third of the size asked for.

The stones are the Voronoi cells of points on a shaken hexagonal grid. Where a cut leaves a sliver of one, the joint between
it and its neighbour is left out, so that the sliver is part of a larger stone.
"""

from math import sqrt

import numpy as np
import shapely

from publisher.geometry.model import ShapeInfo
from publisher.geometry.shapes.shape import length, nothing_to_check
from publisher.geometry.surfaces.noise import noise
from publisher.geometry.surfaces.pattern import Array, Family, Ground, Lines, Pattern, per_area
from publisher.geometry.surfaces.rows import numbers
from publisher.geometry.values import Values

SHAKE = 0.28  # a point moves by up to this share of the size, each way: neighbours stay 0.44 sizes apart
NARROWEST = 1.0 / 3.0  # of the size: no stone is narrower
SHORT = 0.5  # mm: joints shorter than this are not drawn
ROUNDS = 6  # a sliver may need more than one neighbour


def lines(values: Values, ground: Ground) -> tuple[Family, ...]:
    """Return the joints between the stones, without those that would cut off a sliver."""
    size, box = values.number("size"), ground.box
    points = _points(size, ground)
    cells = shapely.voronoi_polygons(
        shapely.multipoints(points), extend_to=shapely.box(*box.corners()[0], *box.corners()[2]), only_edges=True
    )
    joints = shapely.get_parts(shapely.intersection(cells, ground.body))
    joints = joints[shapely.get_type_id(joints) == shapely.GeometryType.LINESTRING]
    joints = _without_slivers(_pairs(joints), ground.body, NARROWEST * size / 2.0)
    return (Family(joints[shapely.length(joints) >= SHORT]),)


def _points(size: float, ground: Ground) -> Array:
    """Return the shaken grid over the box and two sizes beyond it, (n, 2)."""
    box, rise = ground.box.grown(2.0 * size), size * sqrt(3.0) / 2.0
    k = numbers(box.bottom, box.top, ground.origin[1], rise)[:, None]
    i = numbers(box.left, box.right, ground.origin[0], size)[None, :]
    x = ground.origin[0] + (i + 0.5 * (k % 2.0) + SHAKE * (2.0 * noise(ground.seed, 8, k, i) - 1.0)) * size
    y = ground.origin[1] + (k + SHAKE * (2.0 * noise(ground.seed, 9, k, i) - 1.0)) * rise
    return np.column_stack([x.ravel(), y.ravel()])


def _pairs(joints: Lines) -> Lines:
    """Return the joints as straight pieces of two points each."""
    points = shapely.get_coordinates(joints, return_index=True)
    xy, of = points
    same = of[1:] == of[:-1]
    pieces: Lines = shapely.linestrings(np.stack([xy[:-1][same], xy[1:][same]], axis=1))
    return pieces


def _without_slivers(joints: Lines, body: shapely.Geometry, radius: float) -> Lines:
    """Leave out the longest joint of every stone that has no room for a circle of the radius (mm), until none is left."""
    rim = body.boundary
    for _ in range(ROUNDS):
        if not len(joints):
            break
        stones = shapely.get_parts(shapely.polygonize(shapely.get_parts(shapely.union_all([*joints, rim])).tolist()))
        slivers = stones[shapely.is_empty(shapely.buffer(stones, -radius, quad_segs=4))]
        if not len(slivers):
            break
        middles = shapely.line_interpolate_point(joints, 0.5, normalized=True)
        sliver, joint = shapely.STRtree(middles).query(shapely.boundary(slivers), "dwithin", 1e-6)
        size = shapely.length(joints)[joint]
        order = np.lexsort((joint, -size, sliver))
        _, first = np.unique(sliver[order], return_index=True)
        gone = np.unique(joint[order][first])
        if not len(gone):
            break
        joints = np.delete(joints, gone)
    return joints


PATTERN = Pattern(
    ShapeInfo(
        "flagstones",
        "irregular slabs, none narrower than a third of the size; another seed gives other slabs",
        (length("size", "width of a slab on average", least=5.0, most=500.0),),
        (),
        False,
        1.5,
    ),
    lines,
    nothing_to_check,
    per_area(lambda values: values.number("size") ** 2 * sqrt(3.0) / 2.0),
    lambda values: values.number("size") * NARROWEST,
)
