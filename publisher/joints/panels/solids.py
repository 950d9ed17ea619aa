"""The solid of a placed panel: drawn face, inside face (smaller where edges are bevelled), and the sides between them; what of
several touches the table, and where their weight falls."""

from collections.abc import Callable, Sequence
from math import radians, tan

import numpy as np
import shapely

from publisher.basics import Point, record, remembered
from publisher.geometry import Part, next_of, one_before, polygon
from publisher.joints.panels.bent import arc_of_facet
from publisher.joints.panels.space import Array, PanelFrame

ON_TABLE = 0.2
"""mm: corners that lie no higher than this over the lowest one stand on the table."""


@record
class FacePair:
    """A ring of a part on both faces, point for point, in the part's coordinates (n, 2)."""

    outside: Array
    inside: Array


@remembered  # checks, sections and drawings ask for the same few rings
def face_pair(part: Part, points: tuple[Point, ...]) -> FacePair:
    """Return a ring as it lies on the drawn face and on the inside face.

    A bevel b moves an edge on the inside face by t·tan(b) into the panel; at a corner the moved lines of both sides meet.
    """
    ring = np.asarray(points, dtype=np.float64)
    offsets = _offsets(part, ring)
    if not offsets.any():
        return FacePair(ring, ring)
    way = next_of(ring) - ring
    way = way / np.maximum(np.hypot(way[:, 0], way[:, 1]), 1e-12)[:, None]
    normal = np.column_stack([-way[:, 1], way[:, 0]])
    before, n_before, d_before = one_before(way), one_before(normal), one_before(offsets)
    cross = before[:, 0] * way[:, 1] - before[:, 1] * way[:, 0]
    inside = ring + offsets[:, None] * normal
    bent = np.abs(cross) > 1e-9
    # the corner p of two moved lines: n1·p = n1·q + d1 and n2·p = n2·q + d2
    shift = np.column_stack(
        [
            (d_before * normal[:, 1] - offsets * n_before[:, 1]) / np.where(bent, cross, 1.0),
            (offsets * n_before[:, 0] - d_before * normal[:, 0]) / np.where(bent, cross, 1.0),
        ]
    )
    inside[bent] = ring[bent] + shift[bent]
    return FacePair(ring, inside)


def _offsets(part: Part, ring: Array) -> Array:
    """Return for every side of a ring how far (mm) the inside face's side is set into the panel."""
    offsets = np.zeros(len(ring))
    ends = next_of(ring)
    for edge in part.edges:
        if edge.bevel == 0 or edge.centre is not None:
            continue
        start, way = np.asarray(edge.start), np.subtract(edge.end, edge.start)
        length = float(np.hypot(way[0], way[1]))
        if length < 1e-9:
            continue
        normal = np.array([-way[1], way[0]]) / length
        on = (np.abs((ring - start) @ normal) < 1e-3) & (np.abs((ends - start) @ normal) < 1e-3)
        offsets[on] = part.thickness * tan(radians(edge.bevel))
    return offsets


@remembered
def corners_of(part: Part) -> Array:
    """Return all corners of a part's solid in its own coordinates (n, 3): outline on both faces."""
    pair = face_pair(part, part.outline.outer.points)
    front = np.column_stack([pair.outside, np.zeros(len(pair.outside))])
    behind = np.column_stack([pair.inside, np.full(len(pair.inside), -part.thickness)])
    return np.vstack([front, behind])


def foot_of(boards: Sequence[tuple[Part, PanelFrame]]) -> shapely.Geometry:
    """Return the convex hull, seen from above, of all corners of boards that stand on the table."""
    every = np.vstack([frame.carry(corners_of(part)) for part, frame in boards])
    low = every[every[:, 2] < every[:, 2].min() + ON_TABLE]
    return shapely.convex_hull(shapely.multipoints(low[:, :2]))


def board_mass(part: Part, mass: Callable[[Part], float]) -> float:
    """Return what a board weighs by ``mass`` of its outline; a facet as much as it had of the flat strip."""
    arc = arc_of_facet(part)
    return mass(part) * (1.0 if arc is None else arc.share)


def weight_of(boards: Sequence[tuple[Part, PanelFrame]], mass: Callable[[Part], float]) -> Array:
    """Return the point (2,) under the centre of mass; every board weighs ``mass`` in the middle of its thickness, a facet as
    the stretch of a curved board that it stands for."""
    masses = np.array([board_mass(part, mass) for part, _ in boards])
    middles = []
    for part, frame in boards:
        centre = polygon(part.outline).centroid
        arc = arc_of_facet(part)
        deep = part.thickness / 2.0 if arc is None else arc.behind(part.thickness)
        middles.append(frame.point((float(centre.x), float(centre.y)), deep))
    return np.asarray((masses[:, None] * np.array(middles)).sum(axis=0)[:2] / masses.sum())
