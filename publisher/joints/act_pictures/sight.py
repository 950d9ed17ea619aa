"""How well an act is seen: of what is added, and of the place where it goes, the share that nothing hides, from a few views. Mm."""

from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import Purpose
from publisher.joints.act_pictures.faces import insides
from publisher.joints.act_pictures.scene import ActScene, Solid
from publisher.joints.drawings import Solids, View, solids_of
from publisher.joints.outlines import Array
from publisher.joints.stacks import KNEE_SEAT

Flags = npt.NDArray[np.bool_]

GRID = 26
"""Points across and up at which what is added is looked at."""

LEAST_SEEN = 0.3
"""Share of the added part's own picture that every act shows."""

WELL_SEEN = 0.55
PLACE_SEEN = 0.3
"""Shares of what is added, and of the place where it goes, at which a view or a distance is not changed for a better one."""

FACE_GRID = 24
"""The same for a single face, of which a label names what is seen."""

HELD_OFF = (0.3, 0.45, 0.65, 0.95, 1.3)
"""How far what is added is held off, as shares of the mean size of all that is shown."""

BEHIND = 0.7
"""mm by which a face must stand before a point to hide it."""


@dataclass(slots=True)
class Sight:
    """A scene seen from one side: the solids of both groups in drawing coordinates, and how far one is held off the other."""

    scene: ActScene
    view: View
    there: Solids
    new: Solids
    there_marks: list[Array]  # lines (n, 2, 3) on faces to line up by
    new_marks: list[Array]
    way: Array  # (3,): of the added part, in drawing coordinates
    goal: Array  # (n, 3): points of the joint in place, in drawing coordinates
    there_inside: tuple[int, ...] = ()  # faces that are insides
    new_inside: tuple[int, ...] = ()
    held: float = 0.0
    seen: float = 0.0
    place: float = 0.0

    @property
    def shift(self) -> Array:
        """By how much (3,) what is added is moved off its place."""
        return np.asarray(-self.held * self.way)

    @property
    def score(self) -> float:
        """How good the sight is: the share seen, with as much again for the place."""
        return min(self.seen, 0.9) + min(self.place, 0.6) - (1.0 if self.seen < LEAST_SEEN else 0.0)

    @property
    def good(self) -> bool:
        """Whether nobody need look for a better one."""
        return self.seen >= WELL_SEEN and self.place >= PLACE_SEEN


def look(scene: ActScene, view: View) -> Sight:
    """Return the sight of a scene from a view, at the nearest distance at which enough is seen, else the best one."""
    axes = view.axes()
    there, new = _solids(scene.before, view), _solids(scene.added, view)
    below, upon = [], []
    if scene.pile:
        below = _marks(scene.before[-1:], axes, (Purpose.LINE_UP, Purpose.LAP), but=KNEE_SEAT)
        upon = _marks(scene.added, axes, (Purpose.LINE_UP,))
    sight = Sight(scene, view, there, new, below, upon, axes @ scene.way, scene.goal @ axes.T)
    sight.there_inside, sight.new_inside = (
        insides(scene.before, there, axes, scene.alike),
        insides(scene.added, new, axes, scene.alike),
    )
    size = _size(scene)
    own = _samples(new)
    if not scene.moves:
        sight.seen, sight.place = _measured(sight, own)
        return sight
    along = float(np.hypot(*sight.way[:2]))
    if along < 0.2:  # it comes straight towards the viewer or away: held off, it would still lie on its place
        sight.held = HELD_OFF[0] * size
        sight.seen, sight.place = _measured(sight, own)
        sight.place *= along
        return sight
    best: Sight | None = None
    for share in HELD_OFF:
        tried = replace(sight, held=share * size)
        tried.seen, tried.place = _measured(tried, own)
        if best is None or tried.score > best.score + 0.1:
            best = tried
        if tried.good:
            return tried
    assert best is not None
    return best


def _solids(solids: tuple[Solid, ...], view: View) -> Solids:
    return solids_of([(s.part, s.frame) for s in solids], view, slots=True, surface=False)


def _marks(solids: tuple[Solid, ...], axes: Array, purposes: tuple[Purpose, ...], but: str = "") -> list[Array]:
    """Return the lines on the upper faces of layers by which the next one is laid, in drawing coordinates, ``but`` for those of a name:
    where a brace is glued to the underside nothing is on the upper face once it is cut."""
    found: list[Array] = []
    for solid in solids:
        for mark in solid.part.marks:
            if mark.purpose in purposes and mark.name != but and len(mark.path.points) > 1:
                points = np.asarray(mark.path.travelled)
                carried = solid.frame.carry(np.column_stack([points, np.zeros(len(points))])) @ axes.T
                found.append(np.stack([carried[:-1], carried[1:]], axis=1))
    return found


def _size(scene: ActScene) -> float:
    """Return the mean size (mm) of all that is shown, in place."""
    ends = []
    for solid in (*scene.before, *scene.added):
        left, low, right, high = shapely.bounds(shapely.multipoints(solid.part.outline.outer.points))
        ends.append(solid.frame.carry(np.array([[x, y, 0.0] for x in (left, right) for y in (low, high)])))
    every = np.vstack(ends)
    return float((every.max(axis=0) - every.min(axis=0)).mean())


def _samples(solids: Solids) -> Array:
    """Return points (n, 3) all over the picture of solids: x, y, and the depth of what is nearest there."""
    if not solids.areas:
        return np.zeros((0, 3))
    left, bottom, right, top = shapely.total_bounds(np.array(solids.areas))
    step = max(right - left, top - bottom) / GRID
    xs, ys = np.meshgrid(np.arange(left + step / 2, right, step), np.arange(bottom + step / 2, top, step))
    points = np.column_stack([xs.ravel(), ys.ravel()])
    depth = depth_at(solids, points)
    on = depth > -np.inf
    return np.column_stack([points[on], depth[on]])


def depth_at(solids: Solids, points: Array, shift: Array | None = None) -> Array:
    """Return the depth towards the viewer of the nearest face at each point (n, 2); -inf where there is none. ``shift`` (3,): by
    which the solids are moved."""
    by = np.zeros(3) if shift is None else shift
    depth = np.full(len(points), -np.inf)
    own = points - by[:2]
    if not len(points) or not solids.areas:
        return depth
    areas = np.array(solids.areas)
    shapely.prepare(areas)
    left, bottom, right, top = shapely.bounds(areas).T[:, :, None]
    x, y = own.T
    face, at = np.nonzero((x >= left) & (x <= right) & (y >= bottom) & (y <= top))
    on = shapely.contains_xy(areas[face], x[at], y[at])
    face, at = face[on], at[on]
    p, q, r = np.array(solids.planes)[face].T
    np.maximum.at(depth, at, x[at] * p + y[at] * q + r + by[2])
    return depth


def seen_of_face(sight: Sight, solids: Solids, main: int, by: Array) -> shapely.Geometry:
    """Return what nothing hides of a face of one of both groups, in drawing coordinates before it is moved by ``by`` (3,): the largest
    piece, to a square of the grid at which it is looked at; empty where it is hidden whole."""
    area, (p, q, r) = solids.areas[main], solids.planes[main]
    left, bottom, right, top = shapely.bounds(area)
    step = max(right - left, top - bottom, 1e-6) / FACE_GRID
    xs, ys = np.meshgrid(np.arange(left + step / 2, right, step), np.arange(bottom + step / 2, top, step))
    points = np.column_stack([xs.ravel(), ys.ravel()])
    points = points[shapely.contains_xy(area, points[:, 0], points[:, 1])]
    depth, at = points @ (p, q) + r + by[2] + BEHIND, points + by[:2]
    hidden = (depth_at(sight.there, at) > depth) | (depth_at(sight.new, at, sight.shift) > depth)
    if not hidden.any():
        return area
    x, y = points[~hidden].T
    squares = shapely.box(x - step / 2, y - step / 2, x + step / 2, y + step / 2)
    pieces = shapely.get_parts(shapely.intersection(area, shapely.union_all(squares)))
    return max(pieces, key=shapely.area, default=shapely.Polygon())


def _measured(sight: Sight, own: Array) -> tuple[float, float]:
    """Return the share of what is added that is seen, and the share of the joint's points in place."""
    moved = own + sight.shift
    hidden = depth_at(sight.there, moved[:, :2]) > moved[:, 2] + BEHIND
    seen = 1.0 - float(hidden.mean()) if len(own) else 1.0
    goal = sight.goal
    if not len(goal):
        return seen, 1.0
    before = depth_at(sight.there, goal[:, :2]) > goal[:, 2] + BEHIND
    before |= depth_at(sight.new, goal[:, :2], sight.shift) > goal[:, 2] + BEHIND
    return seen, 1.0 - float(before.mean())
