"""What of a thing looks up and what looks down, and how far one lies over the other. Mm."""

from collections.abc import Iterable

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import record, remembered
from publisher.geometry import next_of
from publisher.joints.outlines import Array
from publisher.joints.panels import Panel, crossed, face_pair, planes_of

LEAST_SLOPE = 1e-6
"""Share of its normal that a face must have upwards or downwards to lie over something."""

LEAST_SHARED = 0.01
"""mm²: what lies over each other on less is two edges beside each other."""


@record
class Surfaces:
    """Flat faces: their areas in plan (shapely polygons), their planes, z = p·x + q·y + r (n, 3), and which of them are broad:
    faces of a board, where the others are its sides (n,)."""

    areas: Array
    planes: Array
    broad: npt.NDArray[np.bool_]


@record
class Gaps:
    """Corners of what lies over each other in plan: where (n, 2), and how far (mm) the upper face is over the lower there."""

    points: Array
    gaps: Array


def surfaces_of(panels: Iterable[Panel], *, up: bool) -> Surfaces:
    """Return the faces of panels that look up, or down."""
    each = [_of_panel(panel, up=up) for panel in panels]
    return Surfaces(
        np.concatenate([np.array([], dtype=object), *(one.areas for one in each)]),
        np.vstack([np.zeros((0, 3)), *(one.planes for one in each)]),
        np.concatenate([np.array([], dtype=np.bool_), *(one.broad for one in each)]),
    )


@remembered
def _of_panel(panel: Panel, *, up: bool) -> Surfaces:
    areas: list[shapely.Geometry] = []
    planes: list[Array] = []
    rings = [face_pair(panel.part, path.points) for path in panel.part.outline.paths]
    near = [panel.frame.carry(_at(ring.outside, 0.0)) for ring in rings]
    far = [panel.frame.carry(_at(ring.inside, -panel.part.thickness)) for ring in rings]
    for side, normal in ((near, panel.frame.outward), (far, -panel.frame.outward)):
        if (normal[2] if up else -normal[2]) > LEAST_SLOPE:
            areas.append(shapely.Polygon(side[0][:, :2], [ring[:, :2] for ring in side[1:]]))
            planes.extend(planes_of(normal[None], side[0][:1]))
    faces = len(areas)
    for front, back in zip(near, far, strict=True):
        _sides(front, back, areas, planes, up=up)
    made = shapely.make_valid(np.array(areas, dtype=object)) if areas else np.array([], dtype=object)
    return Surfaces(made, np.array(planes).reshape(-1, 3), np.arange(len(areas)) < faces)


def _at(ring: Array, z: float) -> Array:
    return np.column_stack([ring, np.full(len(ring), z)])


def _sides(near: Array, far: Array, areas: list[shapely.Geometry], planes: list[Array], *, up: bool) -> None:
    """Add the sides between both faces of a ring, where they look up or down."""
    near_next, far_next = next_of(near), next_of(far)
    normal = crossed(near_next - near, near - far)
    size = np.maximum(np.linalg.norm(normal, axis=1), 1e-12)
    looks = (normal[:, 2] if up else -normal[:, 2]) > LEAST_SLOPE * size
    if looks.any():
        areas.extend(shapely.polygons(np.stack([near, near_next, far_next, far], axis=1)[looks, :, :2]))
        planes.extend(planes_of(normal[looks], near[looks]))


def over_each_other(upper: Surfaces, lower: Surfaces) -> tuple[Array, Array, Array]:
    """Return what each two faces share in plan, more than a hair, and the indices of the upper and the lower of both."""
    i, j = shapely.STRtree(lower.areas).query(upper.areas, predicate="intersects")
    shared = shapely.intersection(upper.areas[i], lower.areas[j])
    some = shapely.area(shared) > LEAST_SHARED
    return shared[some], i[some], j[some]


def gaps_between(upper: Surfaces, lower: Surfaces) -> Gaps:
    """Return how far faces that look down lie over faces that look up, at all corners of what they share in plan.

    Over what two flat faces share, the gap is least and greatest at a corner: nothing between the corners is nearer.
    """
    if not len(upper.areas) or not len(lower.areas):
        return Gaps(np.zeros((0, 2)), np.zeros(0))
    shared, i, j = over_each_other(upper, lower)
    points, of = shapely.get_coordinates(shared, return_index=True)
    flat = np.column_stack([points, np.ones(len(points))])
    gaps = (flat * upper.planes[i[of]]).sum(axis=1) - (flat * lower.planes[j[of]]).sum(axis=1)
    return Gaps(points, gaps)
