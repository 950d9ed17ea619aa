"""Layers of a stack as seen from above and the side, hidden lines removed.

Seen from above, a layer is hidden only by higher layers, and within itself only by its own top face. In plan coordinates
sheared along the view (a point 1 mm higher lies ``View.lift`` farther) a layer covers the area that its outline sweeps from
its top to its bottom: the top face and, below each front-facing stretch of the outline, the wall.
"""

import numpy as np
import shapely

from publisher.basics import record
from publisher.geometry import mitred, next_of, one_before
from publisher.joints.drawings.lines import Sketch
from publisher.joints.drawings.view import View
from publisher.joints.outlines import Array

SAME_BORDER = 0.05
"""mm: lines of a lower layer this near to the border of a higher one are that border, flattened differently."""


@record
class Slab:
    """A layer to draw: rings in plan (the first anticlockwise, holes clockwise), whether each point is a corner, heights of
    its bottom and top, ends of its joint ticks in plan (n, 2)."""

    rings: tuple[Array, ...]
    corners: tuple[Array, ...]
    bottom: float
    top: float
    ticks: Array


def draw_slabs(slabs: list[Slab], view: View, sketch: Sketch) -> list[shapely.Geometry]:
    """Draw slabs given from the lowest up; return per slab what shows of its top face, in drawing coordinates."""
    matrix, lift = view.plan_matrix(), view.lift()
    covered: shapely.Geometry = shapely.Polygon()
    shown: list[shapely.Geometry] = []

    def flat(geometry: shapely.Geometry) -> shapely.Geometry:
        return shapely.transform(geometry, lambda xy: xy @ matrix.T)

    for slab in reversed(slabs):
        drop = -(slab.top - slab.bottom) * lift
        rings = [ring + slab.top * lift for ring in slab.rings]
        face = shapely.Polygon(rings[0], rings[1:])
        walls, uprights = _walls(rings, slab.corners, drop)
        body = shapely.union_all([face, *walls])
        outline = shapely.union_all([shapely.boundary(face), shapely.boundary(body)])
        edges = _first_stretch(face, uprights, drop)
        ticks = _first_stretch(face, slab.ticks + slab.top * lift, drop)
        for weight, lines in (("outline", outline), ("outline", edges), ("detail", ticks)):
            sketch.add(weight, flat(shapely.difference(lines, covered)))
        shown.append(flat(shapely.difference(face, covered)))
        covered = shapely.union(covered, mitred(body, SAME_BORDER))
    sketch.shapes.append(flat(covered))
    return shown[::-1]


def _walls(rings: list[Array], corners: tuple[Array, ...], drop: Array) -> tuple[list[shapely.Geometry], Array]:
    """Return the walls that face the viewer, each stretch of them one polygon, and the upper ends of their upright edges.

    A side faces the viewer when the way down the drawing, ``drop``, leads out of the material to its right.
    """
    walls: list[shapely.Geometry] = []
    uprights: list[Array] = []
    for ring, corner in zip(rings, corners, strict=True):
        way = next_of(ring) - ring
        front = way[:, 1] * drop[0] - way[:, 0] * drop[1] > 1e-9
        before = one_before(front)
        uprights.append(ring[(front | before) & (corner | (front != before))])
        if front.all():  # cannot be for a closed ring, but for rounding
            continue
        for start in np.flatnonzero(front & ~before):
            end = int(start)
            while front[end % len(ring)]:
                end += 1
            chain = ring[np.arange(start, end + 1) % len(ring)]
            walls.append(shapely.Polygon(np.vstack([chain, chain[::-1] + drop])))
    return walls, np.vstack(uprights) if uprights else np.zeros((0, 2))


def _first_stretch(face: shapely.Geometry, tops: Array, drop: Array) -> shapely.Geometry:
    """Return for every point on the rim the upright line down from it, as far as nothing of the slab stands before it."""
    if not len(tops):
        return shapely.LineString()
    lines = shapely.linestrings(np.stack([tops, tops + drop], axis=1))
    parts, of = shapely.get_parts(shapely.difference(lines, face), return_index=True)
    parts, of = parts[~shapely.is_empty(parts)], of[~shapely.is_empty(parts)]
    length = float(np.hypot(*drop))
    near = shapely.distance(parts, shapely.points(tops[of])) < 0.02 * length + SAME_BORDER
    return shapely.multilinestrings(parts[near & (shapely.length(parts) > 0.1 * length)])
