"""What an assembly stands on: upright on the edge that it is said to stand on, or turned about it, as a tent. Mm."""

from math import atan2, cos, pi, sin

import numpy as np

from publisher.design import EdgeRef, Join
from publisher.geometry import Part, polygon
from publisher.joints.footing import hull_sides
from publisher.joints.panels.bent import facets_of
from publisher.joints.panels.edges import edge_line
from publisher.joints.panels.solids import corners_of, foot_of, weight_of
from publisher.joints.panels.space import Array, EdgeLine, PanelFrame

SETTLED_LEVEL = 0.2
"""mm: edges whose ends lie nearer to the table stand on it; a corner that was written with two decimals opens by less."""

SETTLED_CLOSE = 1e-6
"""mm: two corners that differ by less in height are level."""

SAME_SIDE = 0.5
"""Cosine: edges whose templates lie so are on the same side of them, within 60°."""

BACK_DOWN = 0.2
"""Sine: what falls by more than 12° as the said panel stands upright leads back to the table."""


def settled(
    stands_on: EdgeRef, joins: tuple[Join, ...], part_at: dict[str, Part], frames: dict[str, PanelFrame]
) -> dict[str, PanelFrame]:
    """Return the frames of panels that stand upright on the edge that is said, or, where that is none of their ways to
    stand, on as many of their feet as can lie on the table together.

    A panel is said to stand on an edge: it stands plumb there, as in a straight wall or one with a coping, where it holds
    so, or falls over so. A spire whose facets lean in, or a tent, stands on all of its lower edges: where the plumb pose
    neither holds by other feet nor by its weight, the whole is turned about the edge, which lies on y = z = 0, until feet
    lie on the table, with no board farther below than a square-cut edge that leans reaches with its inner side; then it is
    lifted on that. Where there are none, it stays as it is, and falls over.
    """
    free = _feet(stands_on, joins, part_at, frames)
    boards = [board for name, frame in frames.items() for board in facets_of(part_at[name], frame)]
    every = np.vstack([frame.carry(corners_of(part)) for part, frame in boards])
    deep = SETTLED_LEVEL + max(part_at[name].thickness for name in frames)
    if not free or (_lowest(every) > -deep and (any(_holds(ends, 0.0) for ends in free) or _stands(boards))):
        return frames
    best = _steadiest(free, every, deep)
    if best is None:
        return frames
    best = _let_down(
        every, best, far=float(max(_turned(ends, best)[:, 1].max() for ends in free if _holds(ends, best)))
    )
    turn, lift = _matrix(best), np.array([0.0, 0.0, -_lowest(_turned(every, best))])
    return {name: PanelFrame(turn @ frame.axes, turn @ frame.origin + lift) for name, frame in frames.items()}


def _feet(
    stands_on: EdgeRef, joins: tuple[Join, ...], part_at: dict[str, Part], frames: dict[str, PanelFrame]
) -> list[Array]:
    """Return both ends of each straight edge that no join takes and that may be a foot, of all panels but the one that is
    said to stand: one on the same side of its template as the edge that is said (both slopes of a tent stand on their
    bottoms), or the far edge of a panel that a mitre or a fold leads back down to the table (a folded sign). A flap that is
    glued on top of a wall is none."""
    taken = {stands_on, *(ref for join in joins for ref in (join.a, join.b))}
    bent = _bent_to(stands_on.panel, joins)
    said = edge_line(part_at, stands_on)
    found = []
    for name, frame in frames.items():
        for edge in part_at[name].edges if name != stands_on.panel else ():
            line = edge_line(part_at, EdgeRef(name, edge.name)) if edge.centre is None else None
            if line is None or said is None or EdgeRef(name, edge.name) in taken:
                continue
            upward = frame.axes[:, :2] @ line.inward
            if line.inward @ said.inward > SAME_SIDE or (name in bent and upward[2] > BACK_DOWN):
                found.append(_ends(frame, line))
    return found


def _bent_to(panel: str, joins: tuple[Join, ...]) -> set[str]:
    """Return the panels that a mitre or a fold leads to from a panel, and itself."""
    bends = [{join.a.panel, join.b.panel} for join in joins if join.joint in ("mitre", "fold")]
    return {name for both in bends if panel in both for name in both}


def _stands(boards: list[tuple[Part, PanelFrame]]) -> bool:
    """Tell whether the weight of boards falls inside what of them lies on the table; all weigh alike by their volume."""
    normals, limits = hull_sides(foot_of(boards))
    at = weight_of(boards, lambda part: polygon(part.outline).area * part.thickness)
    return bool(np.all(normals @ at <= limits))


def _steadiest(free: list[Array], every: Array, deep: float) -> float | None:
    """Return the angle at which most free edges lie on the table, with no corner more than ``deep`` mm below it; None when none
    does at any."""
    best, most = None, 0
    for ends in free:
        far = ends[int(np.hypot(ends[:, 1], ends[:, 2]).argmax())]
        for angle in (-atan2(far[2], far[1]), pi - atan2(far[2], far[1])):
            count = sum(_holds(other, angle) for other in free) if _lowest(_turned(every, angle)) > -deep else 0
            if count > most:
                best, most = angle, count
    return best


def _let_down(points: Array, angle: float, far: float) -> float:
    """Return the angle at which the lowest corners on both sides lie level: square-cut edges that lean unlike each other
    reach down unlike. ``far``: how far behind the first edge the others lie."""
    for _ in range(9):  # each goes on where the last one left: the corners are soon the same ones
        turned = _turned(points, angle)
        near = turned[turned[:, 1] < far / 2]
        behind = turned[turned[:, 1] >= far / 2]
        a, b = near[near[:, 2].argmin()], behind[behind[:, 2].argmin()]
        if abs(float(b[2] - a[2])) < SETTLED_CLOSE:
            break  # of a ring with a corner just in the middle both lie there, and a hair between them would tilt it
        angle -= atan2(float(b[2] - a[2]), float(b[1] - a[1]))
    return angle


def _ends(frame: PanelFrame, line: EdgeLine) -> Array:
    """Return both ends of an edge in the assembly (2, 3)."""
    middle, half = np.asarray(line.middle), line.length / 2.0 * line.along
    ends = [middle - half, middle + half]
    return np.array([frame.point((float(at[0]), float(at[1])), line.depth) for at in ends])


def _lowest(points: Array) -> float:
    return float(points[:, 2].min())


def _holds(ends: Array, angle: float) -> bool:
    """Tell whether an edge, turned so, lies on the table away from the line that all is turned about."""
    turned = _turned(ends, angle)
    return bool(np.all(np.abs(turned[:, 2]) < SETTLED_LEVEL) and np.abs(turned[:, 1]).max() > 1.0)


def _turned(points: Array, angle: float) -> Array:
    return np.asarray(points @ _matrix(angle).T)


def _matrix(angle: float) -> Array:
    """Return the turn about the x axis by an angle in rad."""
    c, s = cos(angle), sin(angle)
    return np.array([[1.0, 0.0, 0.0], [0.0, c, -s], [0.0, s, c]])
