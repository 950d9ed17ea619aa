"""Solids of boards in space by a general boolean library. Mm; nothing here knows the tool.

Whoever places boards, by own mathematics or by what the tool says, makes and measures their solids here."""

from collections.abc import Sequence
from math import cos, radians, sin

import numpy as np
import numpy.typing as npt
from manifold3d import CrossSection, FillRule, Manifold, OpType

Array = npt.NDArray[np.float64]
Point = tuple[float, float]


def hull(points: Sequence[Sequence[float]] | Array) -> Manifold:
    """Return the convex solid with these corners."""
    return Manifold.hull_points(np.asarray(points, dtype=np.float64))


def block(low: Sequence[float], high: Sequence[float]) -> Manifold:
    """Return the upright block between two corners."""
    size = [h - a for a, h in zip(low, high, strict=True)]
    return Manifold.cube(size).translate(list(low))


def plate(
    outline: Sequence[Point], thick: float, bottom: float = 0.0, holes: Sequence[Sequence[Point]] = ()
) -> Manifold:
    """Return a level board with this outline in plan, its lower face at ``bottom``. Rings may run either way."""
    section = CrossSection([list(outline)], FillRule.EvenOdd)
    for hole in holes:
        section = section - CrossSection([list(hole)], FillRule.EvenOdd)
    return Manifold.extrude(section, thick).translate([0.0, 0.0, bottom])


def standing(outline: Sequence[Point], thick: float, start: Point, heading: float) -> Manifold:
    """Return an upright board: its outline (along, up) begins at ``start`` in plan and runs to ``heading`` degrees;
    the board lies left of that line."""
    flat = Manifold.extrude(CrossSection([list(outline)]), thick)
    c, s = cos(radians(heading)), sin(radians(heading))
    # (along, up, into the board) → plan and height
    return placed(flat, np.array([[c, 0.0, -s, start[0]], [s, 0.0, c, start[1]], [0.0, 1.0, 0.0, 0.0]]))


def placed(solid: Manifold, matrix: Array) -> Manifold:
    """Return a solid carried by a 3 × 4 matrix; a matrix that mirrors is no place."""
    return solid.transform(matrix[:3])


def turn_about(point: Sequence[float], axis: Sequence[float], angle: float) -> Array:
    """Return the 4 × 4 matrix that turns by ``angle`` degrees about an axis through a point (Rodrigues)."""
    way = np.asarray(axis, dtype=np.float64) / np.linalg.norm(axis)
    a = radians(angle)
    k = np.array([[0, -way[2], way[1]], [way[2], 0, -way[0]], [-way[1], way[0], 0]])
    matrix = np.eye(4)
    matrix[:3, :3] = np.eye(3) + sin(a) * k + (1 - cos(a)) * (k @ k)
    foot = np.asarray(point, dtype=np.float64)
    matrix[:3, 3] = foot - matrix[:3, :3] @ foot
    return matrix


def shared(a: Manifold, b: Manifold) -> float:
    """Return the volume in mm³ that two solids share."""
    return float((a ^ b).volume())


def contact(a: Manifold, b: Manifold, way: Sequence[float], step: float) -> float:
    """Return the area in mm² on which b touches a: what enters a when b is moved a hair, over that hair.

    What they share already is taken off; an area parallel to the move counts nothing.
    """
    return (shared(a, b.translate([step * w for w in way])) - shared(a, b)) / step


def in_common(solids: Sequence[Manifold]) -> float:
    """Return the volume in mm³ that several solids have in common: the sum of their volumes without that of their union."""
    return float(sum(solid.volume() for solid in solids) - united(solids).volume())


def united(solids: Sequence[Manifold]) -> Manifold:
    """Return the union of all."""
    return Manifold.batch_boolean(list(solids), OpType.Add)


def centroid(solid: Manifold) -> Array:
    """Return the centre of mass: the mean of the tetrahedra between its triangles and the origin, by volume."""
    mesh = solid.to_mesh64()
    corners = np.asarray(mesh.vert_properties)[:, :3][np.asarray(mesh.tri_verts)]
    volumes = np.einsum("ij,ij->i", corners[:, 0], np.cross(corners[:, 1], corners[:, 2])) / 6.0
    return np.asarray((corners.sum(axis=1) / 4.0 * volumes[:, None]).sum(axis=0) / volumes.sum())


def inside_by(hull_of: CrossSection, point: Sequence[float] | Array) -> float:
    """Return how far inside the convex hull of an area a point lies (mm); negative outside, and for no area."""
    polygons = hull_of.hull().to_polygons()
    if not polygons:
        return -float("inf")
    ring = np.asarray(polygons[0], dtype=np.float64)
    way = np.roll(ring, -1, axis=0) - ring
    length = np.maximum(np.hypot(way[:, 0], way[:, 1]), 1e-12)
    to = np.asarray(point[:2]) - ring
    inside = ((way[:, 0] * to[:, 1] - way[:, 1] * to[:, 0]) / length)[length > 1e-6]
    return float(inside.min()) if len(inside) else -float("inf")


def box_of(solid: Manifold) -> tuple[Array, Array]:
    """Return the lower and the upper corner of the upright box round a solid."""
    box = np.asarray(solid.bounding_box(), dtype=np.float64)
    return box[:3], box[3:]
