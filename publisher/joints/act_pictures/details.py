"""Where an act is small on paper: the joint that is drawn once more, larger, in a circle, and where that place is in the whole. Mm."""

from collections.abc import Iterator

import numpy as np
import shapely

from publisher.basics import record
from publisher.joints.act_pictures.scene import Solid, touching
from publisher.joints.act_pictures.sight import BEHIND, Sight, depth_at
from publisher.joints.facts import slots_of
from publisher.joints.outlines import Array, is_notch, points_of

SMALL_JOINT = 6.0
"""mm of the paper: a joint that is smaller there is shown once more, larger."""

JOINT_SHOWN = 9.0
"""mm of the paper that a joint measures in its circle, as far as it is not larger than the piece."""

CIRCLE = 10.0
"""mm of the paper: radius of a detail circle."""

LARGEST = 1.5
"""A detail is never drawn larger than so many times the piece."""

LONG_STRIP = 8.0
"""A part so many times as long as it is wide is a strip."""

UNDER = np.array([0.0, 0.0, 3.0])  # mm: from the rim of a layer into the one beside it


@record
class JointSpot:
    """A place where what is added and what stands hold each other: its middle in place (3,), and how large it is."""

    middle: Array
    size: float


def joints_of(added: tuple[Solid, ...], before: tuple[Solid, ...]) -> tuple[JointSpot, ...]:
    """Return the tabs, slots and line-up notches at which what is added meets what stands: of a notch, that of what stands, to which
    an edge of what is added is turned; and the ends of narrow strips, which show whether they lie flat or stand on edge."""
    return (*_held(added, before), *_held(before, added), *_notches(before[-1:], added[:1]), *_ends(added, before))


def _held(own: tuple[Solid, ...], other: tuple[Solid, ...]) -> Iterator[JointSpot]:
    """Yield the tabs and slots of solids in which others are."""
    for solid in own:
        rings = [points_of(slot.points) for slot in slots_of(solid.part)]
        outer = solid.part.outline.outer.stretches()
        rings += [points_of(stretch.points) for stretch in outer if stretch.name.endswith((".tab", ".slot"))]
        for ring in rings:
            every = np.vstack([ring.mean(axis=0), ring])
            points = solid.frame.carry(np.column_stack([every, np.full(len(every), -0.5 * solid.part.thickness)]))
            if len(touching(points, other)):
                yield JointSpot(points[0], float((ring.max(axis=0) - ring.min(axis=0)).max()))


def _ends(strips: tuple[Solid, ...], other: tuple[Solid, ...]) -> Iterator[JointSpot]:
    """Yield the ends of strips that touch what stands: of parts that are many times as long as they are wide."""
    for solid in strips:
        box = solid.part.outline.outer.box
        (narrow, across), (long, along) = sorted(((box.width, 0), (box.height, 1)))
        if long < LONG_STRIP * narrow or not solid.part.letter:  # tape is no part
            continue
        ends = np.tile(
            [(box.left + box.right) / 2.0, (box.bottom + box.top) / 2.0, -0.5 * solid.part.thickness], (2, 1)
        )
        ends[:, along] += (-0.5 * long, 0.5 * long)
        reach = np.zeros((4, 3))  # to both faces and both long edges
        reach[:2, 2] = (-0.5 * solid.part.thickness, 0.5 * solid.part.thickness)
        reach[2:, across] = (-0.5 * narrow, 0.5 * narrow)
        for end in ends:
            if len(touching(solid.frame.carry(end + reach), other)):
                yield JointSpot(solid.frame.carry(end), max(narrow, solid.part.thickness))


def _notches(below: tuple[Solid, ...], above: tuple[Solid, ...]) -> Iterator[JointSpot]:
    """Yield the line-up notches of a layer at the edge of the next, but for those over which that one has its own."""
    covered = [ring.mean(axis=0) for solid in above for ring in _notches_of(solid)]
    for solid in below:
        for ring in _notches_of(solid):
            at = ring.mean(axis=0)
            own = any(float(np.hypot(*(at - other)[:2])) < 1.0 for other in covered)
            if not own and len(touching(ring + UNDER, above)):
                yield JointSpot(at, float((ring.max(axis=0) - ring.min(axis=0)).max()))


def _notches_of(solid: Solid) -> Iterator[Array]:
    """Yield the points (n, 3) of each line-up notch on the upper face of a layer."""
    for stretch in solid.part.outline.outer.stretches():
        if is_notch(stretch.name):
            ring = points_of(stretch.points)
            yield solid.frame.carry(np.column_stack([ring, np.zeros(len(ring))]))


def detailed(sight: Sight, joints: tuple[JointSpot, ...], scale: float) -> JointSpot | None:
    """Return the joint to be drawn larger: the one that is seen best, where joints are small on a paper of this scale."""
    if not joints or max(joint.size for joint in joints) * scale >= SMALL_JOINT:
        return None
    axes = sight.view.axes()
    at = np.array([axes @ joint.middle for joint in joints])
    hidden = depth_at(sight.there, at[:, :2]) > at[:, 2] + 6.0
    hidden |= depth_at(sight.new, at[:, :2], sight.shift) > at[:, 2] + BEHIND
    held = at + sight.shift
    hidden_held = depth_at(sight.there, held[:, :2]) > held[:, 2] + 6.0
    cost = -at[:, 2] + 1e4 * hidden + 5e3 * hidden_held
    return joints[int(cost.argmin())]


def detail_scale(joint: JointSpot, scale: float) -> float:
    """Return how many times the piece a joint is drawn in its circle; at least twice as large as in the whole."""
    return max(min(LARGEST, JOINT_SHOWN / joint.size), min(2.0 * scale, LARGEST))


def clipped(lines: list[shapely.Geometry], circle: shapely.Geometry) -> list[shapely.Geometry]:
    """Return what of lines lies within a circle."""
    if not lines:
        return []
    cut = shapely.get_parts(shapely.intersection(np.array(lines), circle))
    return [line for line in cut if line.geom_type == "LineString" and not line.is_empty]
