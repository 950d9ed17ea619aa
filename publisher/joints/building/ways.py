"""Straight ways out of an assembly, and what stands in each: found from what the faces of two movers share, seen along the way. Mm.

A mover that moves along u hits another one if, and only if, on some line along u a piece of the other lies farther on than a piece
of it; as both do not share space, a face of the first that looks along u then lies before a face of the second that looks
back. What goes out one way comes in by its opposite.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import record, remembered_few
from publisher.joints.building.movers import Mover, MoverFaces, faces_of, is_brace
from publisher.joints.outlines import Array
from publisher.joints.panels import PanelFrame, planes_of

Flags = npt.NDArray[np.bool_]

GIVES = 0.25
"""mm on each side by which what is in the way may be narrower than it counts: play, the sagitta of flattened arcs, and what foam gives."""

SHARED = 0.3
"""mm that two faces which touch may stand in each other."""

CONTACT = 0.6
"""mm: what a mover comes nearer to on its way is what it is put against; loose tabs and slots have as much."""

ALONG = 1e-3
"""Share of its normal that a face must have along the way to be met there."""

SAME_WAY = 1e-3
"""Radians, about: two ways that differ by less are one."""

MOST_DIRECTIONS = 400
"""Ways that are tried: a spire of thirty sides has a quarter as many, and no spec may hang the machine."""

MANY_MOVERS = 40
"""Movers: of more than these only the pairs that are asked for are worked out, as of high stacks hardly any is."""

UP = (0.0, 0.0, 1.0)
HALF_PLANE = 1.0e5  # mm: wider than anything


@record
class SeenFaces:
    """All faces of some movers as seen along a way: areas in plan (polygons), planes z = p·x + q·y + r (n, 3), least and greatest
    z (n,), the mover of each (n,)."""

    areas: Array
    planes: Array
    least: Array
    most: Array
    of: npt.NDArray[np.int64]


class Ways:
    """Ways out of an assembly, worked out as they are asked for.

    ``out``: unit vectors (k, 3), one pair of opposites after another. Ways and movers are asked for by their indices.
    """

    def __init__(self, movers: Sequence[Mover], out: Array) -> None:
        self.movers = tuple(movers)
        self.out = out
        self.names = {mover.name: i for i, mover in enumerate(self.movers)}
        self._pairs: dict[int, _Pairs] = {}

    def room(self, way: int, moved: Sequence[int], left: Sequence[int]) -> Array:
        """Return how far (mm) each of some movers can go along a way before it meets each that is left: (m, n), inf where it never
        does, and 0 where they touch."""
        half, turned = way // 2, way % 2
        if half not in self._pairs:
            self._pairs[half] = _Pairs([faces_of(mover) for mover in self.movers], self.out[2 * half])
        pairs = self._pairs[half]
        return pairs.room(left, moved).T if turned else pairs.room(moved, left)

    def in_the_way(self, way: int, moved: Sequence[int], left: Sequence[int]) -> tuple[int, ...]:
        """Return which of the movers that are left stand in a way of some."""
        hit = np.flatnonzero(np.isfinite(self.room(way, moved, left)).any(axis=0))
        return tuple(left[int(index)] for index in hit)

    def touched(self, way: int, moved: Sequence[int], left: Sequence[int]) -> int:
        """Return how many of the movers that are left some are put against by a way."""
        return int((self.room(way, moved, left) <= CONTACT).any(axis=0).sum()) if moved and left else 0


class _Pairs:
    """How far each mover of some can go along one way before it meets each other one; worked out as it is asked for."""

    def __init__(self, faces: Sequence[MoverFaces], way: Array) -> None:
        self._faces = faces
        self._turn = _turned_to(way)
        low, high = _boxes(faces, self._turn)
        over = (low[:, None, :2] < high[None, :, :2] - GIVES).all(axis=2)
        self._open = over & over.T & (high[None, :, 2] > low[:, None, 2] + SHARED)
        np.fill_diagonal(self._open, False)
        self._room = np.full(self._open.shape, np.inf)
        self._seen: tuple[SeenFaces, SeenFaces] | None = None

    def room(self, moved: Sequence[int], left: Sequence[int]) -> Array:
        """Return how far (mm) each that moves can go before it meets each that is left: (m, n)."""
        asked = np.ix_(moved, left)
        if self._open[asked].any():
            due = self._open.copy()
            if len(self._faces) > MANY_MOVERS:
                due[:] = False
                due[asked] = self._open[asked]
            self._work_out(due)
        return np.asarray(self._room[asked])

    def _work_out(self, due: Flags) -> None:
        if self._seen is None:
            self._seen = (_seen(self._faces, self._turn, 1.0), _seen(self._faces, self._turn, -1.0))
        for (one, other), gap in _gaps(*self._seen, due).items():
            self._room[one, other] = gap
        self._open &= ~due


@remembered_few
def ways_of(movers: tuple[Mover, ...], *, upright: bool = False) -> Ways:
    """Return the ways out of an assembly that are tried: up first, then along the axes of every board. ``upright``: of layers, and of
    things that stand on each other, which are set down: up, across and back, and along the axes of what stands between layers."""
    return Ways(movers, _directions([m for m in movers if is_brace(m.name)] if upright else movers))


def moved(mover: Mover, by: Array) -> Mover:
    """Return a mover moved by a vector (mm)."""
    panels = tuple(
        replace(panel, frame=PanelFrame(panel.frame.axes, panel.frame.origin + by)) for panel in mover.panels
    )
    return replace(mover, panels=panels)


def _directions(movers: Iterable[Mover]) -> Array:
    """Return unit vectors in pairs of opposites, each once: up, the axes of all boards (of a bent one those of its middle), and where
    there are none across and back."""
    found: list[Array] = [np.array(UP)]
    frames = [
        panel.frame
        for mover in movers
        for panel in (mover.panels if not mover.bent else mover.panels[len(mover.panels) // 2 :][:1])
    ]
    for axes in [frame.axes for frame in frames] or [np.eye(3)]:
        for axis in axes.T:
            if len(found) < MOST_DIRECTIONS // 2 and all(abs(float(axis @ one)) < 1.0 - SAME_WAY**2 for one in found):
                found.append(np.asarray(axis))
    return np.array([way for axis in found for way in (axis, -axis)])


def _turned_to(way: Array) -> Array:
    """Return the turn (3, 3) that carries a way to z: rows across, up and along."""
    aside = np.eye(3)[int(np.argmin(np.abs(way)))]
    across = np.cross(aside, way)
    across /= np.linalg.norm(across)
    return np.array([across, np.cross(way, across), way])


def _boxes(faces: Sequence[MoverFaces], turn: Array) -> tuple[Array, Array]:
    low, high = [], []
    for one in faces:
        points = np.vstack([ring for rings in one.broad for ring in rings]) @ turn.T
        low.append(points.min(axis=0))
        high.append(points.max(axis=0))
    return np.array(low), np.array(high)


def _seen(faces: Sequence[MoverFaces], turn: Array, side: float) -> SeenFaces:
    """Return the faces that look along a way (``side`` 1) or back (-1)."""
    areas, planes, least, most, of = [], [], [], [], []
    for index, one in enumerate(faces):
        normals, quads = one.narrow_normals @ turn.T, one.narrow @ turn.T
        looks = side * normals[:, 2] > ALONG
        quads, normals = quads[looks], normals[looks]
        areas.append(shapely.polygons(quads[:, :, :2]) if len(quads) else np.array([], dtype=object))
        planes.append(planes_of(normals, quads[:, 0]))
        least.append(quads[:, :, 2].min(axis=1))
        most.append(quads[:, :, 2].max(axis=1))
        count = len(quads)
        for rings, normal in zip(one.broad, one.broad_normals @ turn.T, strict=True):
            if side * normal[2] > ALONG:
                flat = [ring @ turn.T for ring in rings]
                areas.append(np.array([shapely.Polygon(flat[0][:, :2], [ring[:, :2] for ring in flat[1:]])]))
                planes.append(planes_of(normal[None, :], flat[0][:1]))
                least.append(flat[0][:, 2].min(keepdims=True))
                most.append(flat[0][:, 2].max(keepdims=True))
                count += 1
        of.append(np.full(count, index))
    every = np.concatenate(areas)
    unsound = ~shapely.is_valid(every)
    every[unsound] = shapely.make_valid(every[unsound])
    return SeenFaces(every, np.vstack(planes), np.concatenate(least), np.concatenate(most), np.concatenate(of))


def _gaps(ahead: SeenFaces, back: SeenFaces, asked: Flags) -> dict[tuple[int, int], float]:
    """Return the pairs (moved, met) among those asked, each with the least way between two faces that meet."""
    j, i = shapely.STRtree(ahead.areas).query(back.areas)
    due = asked[ahead.of[i], back.of[j]] & (back.most[j] > ahead.least[i] - SHARED)
    i, j = i[due], j[due]
    shapely.prepare(
        ahead.areas
    )  # most that are near to each other do not meet, which is told in a tenth of the time of a cut
    meet = shapely.intersects(ahead.areas[i], back.areas[j])
    i, j = i[meet], j[meet]
    shared = shapely.intersection(ahead.areas[i], back.areas[j])
    some = shapely.area(shared) > 1e-4
    i, j, shared = i[some], j[some], shared[some]
    if not len(shared):
        return {}
    planes = back.planes[j] - ahead.planes[i]
    points, of = shapely.get_coordinates(shared, return_index=True)
    gaps = (np.column_stack([points, np.ones(len(points))]) * planes[of]).sum(axis=1)
    least, most = np.full(len(shared), np.inf), np.full(len(shared), -np.inf)
    np.minimum.at(least, of, gaps)
    np.maximum.at(most, of, gaps)
    for at in np.flatnonzero((least < -SHARED) & (most > -SHARED)):
        shared[at] = _beyond(shared[at], planes[at])
    keep = most > -SHARED
    return _met(shared[keep], least[keep], ahead.of[i[keep]], back.of[j[keep]])


def _beyond(area: shapely.Geometry, gap: Array) -> shapely.Geometry:
    """Return where of an area a gap p·x + q·y + r is no less than what may be shared."""
    slope = float(np.hypot(gap[0], gap[1]))
    way = gap[:2] / slope
    foot = way * (-SHARED - gap[2]) / slope
    along = HALF_PLANE * np.array([-way[1], way[0]])
    return shapely.intersection(
        area,
        shapely.Polygon([foot + along, foot - along, foot - along + HALF_PLANE * way, foot + along + HALF_PLANE * way]),
    )


def _met(
    areas: Array, gaps: Array, moved_of: npt.NDArray[np.int64], met_of: npt.NDArray[np.int64]
) -> dict[tuple[int, int], float]:
    """Return the pairs whose areas are wider together than what gives, with the least gap of each."""
    found: dict[tuple[int, int], float] = {}
    pairs, of = np.unique(np.column_stack([moved_of, met_of]), axis=0, return_inverse=True)
    of = of.ravel()
    wide = ~shapely.is_empty(shapely.buffer(areas, -GIVES, quad_segs=1))
    for index, (one, other) in enumerate(pairs):
        own = of == index
        if wide[own].any() or not shapely.buffer(shapely.union_all(areas[own]), -GIVES, quad_segs=1).is_empty:
            found[int(one), int(other)] = max(0.0, float(gaps[own].min()))
    return found
