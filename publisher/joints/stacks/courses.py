"""Joints of masonry in the edges of a stack: stagger of neighbouring courses."""

import numpy as np
import shapely

from publisher.basics import Purpose, record
from publisher.geometry import Part, one_before
from publisher.joints.outlines import Array, move
from publisher.joints.stacks.layers import LaidStack
from publisher.joints.stacks.plan_geometry import LayerKey, PlanGeometry

ON_EDGE = 0.5
"""A tick whose end lies farther than this (mm) from the outline of a course is not in its face."""


@record
class Stagger:
    """Two neighbouring courses: index of the lower, least distance between their joints along the wall as a share of the
    unit, the unit's length (mm); how far the upper one is moved along the wall against the lower one, in mm, where both are
    of one part (else None), and by which turn (degrees; 0 when it is shifted)."""

    lower: int
    share: float
    unit: float
    moved: float | None = None
    turn: float = 0.0


def tick_ends(part: Part, outline: shapely.Polygon) -> Array:
    """Return where the part's joint ticks meet its outline, in the part's frame (n, 2).

    On a traced part ticks end inside the template, which is smaller than the outline by the trace allowance.
    """
    ticks = [m.path.points for m in part.marks if m.purpose is Purpose.JOINT_TICK]
    if not ticks:
        return np.zeros((0, 2))
    both = np.array([[t[0], t[-1]] for t in ticks])
    away = shapely.distance(shapely.points(both), outline.exterior)
    near, index = away.argmin(axis=1), np.arange(len(both))
    outer, inner = both[index, near], both[index, 1 - near]
    way = outer - inner
    way = way / np.maximum(np.hypot(way[:, 0], way[:, 1]), 1e-9)[:, None]
    on = away.min(axis=1) <= ON_EDGE + part.trace_allowance
    ends = shapely.points((outer + away.min(axis=1)[:, None] * way)[on])  # a tick runs on in its own direction
    rim = outline.exterior
    return np.asarray(
        shapely.get_coordinates(shapely.line_interpolate_point(rim, shapely.line_locate_point(rim, ends)))
    )


@record
class _Course:
    """One part's joints: where they meet its outline (in its frame), their place along it and the unit there (mm)."""

    ends: Array
    along: Array
    units: Array
    rim: shapely.Geometry


def staggers_of(stack: LaidStack, plan: PlanGeometry, parts: dict[str, Part]) -> tuple[Stagger, ...]:
    """Return the stagger of every pair of neighbouring courses that have joints in one face.

    Running bond asks for at least 1/4 of the unit (TMS 402, definition of running bond: head joints of successive courses
    offset by at least one quarter of the unit length).
    """
    courses = {part_id: _course(parts[part_id], outline) for part_id, outline in plan.outlines.items()}
    known: dict[LayerKey, tuple[float, float, float | None] | None] = {}
    found: list[Stagger] = []
    for k in range(len(stack.layers) - 1):
        lower, upper = courses[stack.layers[k].part], courses[stack.layers[k + 1].part]
        if lower is None or upper is None or k + 1 in stack.doubled:
            continue  # a doubled step is one course, twice as high
        key = plan.key(k, k + 1)
        if key not in known:
            ends = move(shapely.multipoints(upper.ends), stack.layers[k + 1].pose)
            ends = shapely.get_coordinates(plan.to_local(ends, k))
            pair = _stagger(lower, ends)
            known[key] = None if pair is None else (*pair, _moved(lower, ends) if upper is lower else None)
        stagger = known[key]
        if stagger is not None:
            turn = stack.layers[k + 1].pose.turn - stack.layers[k].pose.turn
            found.append(Stagger(k, *stagger, turn))
    return tuple(found)


def _course(part: Part, outline: shapely.Polygon) -> _Course | None:
    """Return where the part's joint ticks meet its outline, in order along it."""
    ends = tick_ends(part, outline)
    if len(ends) < 2:
        return None
    rim = shapely.LineString(shapely.get_coordinates(outline.exterior))
    along = shapely.line_locate_point(rim, shapely.points(ends))
    order = np.argsort(along)
    ends, along = ends[order], along[order]
    gap = np.diff(np.append(along, along[0] + rim.length))
    # the unit at a joint: the shorter of the two gaps beside it, as a corner or a step may lie in the longer one
    return _Course(ends, along, np.minimum(gap, one_before(gap)), rim)


def _moved(course: _Course, ends: Array) -> float | None:
    """Return how far (mm) the course's own joints, moved with the next layer, lie along the wall from where they were.

    The middle of all joints that still lie on the wall: those beside a corner may have left it.
    """
    spots = shapely.points(ends)
    on = shapely.distance(spots, course.rim) <= ON_EDGE
    if not on.any():
        return None
    length = course.rim.length
    way = (shapely.line_locate_point(course.rim, spots[on]) - course.along[on] + length / 2) % length - length / 2
    return float(abs(np.sort(way)[len(way) // 2]))  # numpy's median loads modules that nothing else needs


def _stagger(lower: _Course, ends: Array) -> tuple[float, float] | None:
    """Return (least share of the unit, unit) between a course and joints of the next one, given in the course's frame."""
    spots = shapely.points(ends)
    ends_on = shapely.distance(spots, lower.rim) <= ON_EDGE
    if not ends_on.any():
        return None
    at = shapely.line_locate_point(lower.rim, spots[ends_on])
    length = lower.rim.length
    away = np.abs(at[:, None] - lower.along[None, :])
    away = np.minimum(away, length - away)
    nearest = away.argmin(axis=1)
    units = lower.units[nearest]
    least = away.min(axis=1)
    near = least <= 0.75 * units  # a joint beyond the end of the row below has no neighbour to be in line with
    if not near.any():
        return None
    shares = np.minimum(least[near] / units[near], 0.5)
    worst = int(shares.argmin())
    return float(shares[worst]), float(units[near][worst])
