"""Faces and edges of placed panels in drawing coordinates (x right, y up, depth towards the viewer)."""

from dataclasses import dataclass, replace
from math import atan2, degrees

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import Path, Purpose, record, remembered
from publisher.geometry import Part, behind_paper, next_of, one_before, polygon, rabbet_strip
from publisher.joints.drawings.hidden import FrontFaces
from publisher.joints.drawings.view import View
from publisher.joints.facts import slots_of
from publisher.joints.outlines import Array, bridged, coarse
from publisher.joints.panels import FACET, PanelFrame, crossed, face_pair, is_facet, planes_of

Rims = tuple[shapely.Geometry | None, shapely.Geometry | None]
Flags = npt.NDArray[np.bool_]

SOLID_TURN = 8.0
"""Degrees from one drawn point of an arc to the next, at most."""

SOLID_SAGITTA = 0.08
"""mm: how far a drawn chord leaves its arc, at most."""

LEVEL = 1e-9
"""Of a unit vector: a board whose upright falls short by no more lies level."""


@dataclass(slots=True)
class Solids:
    """Faces towards the viewer, edges to draw with their weights, and for every panel its largest face."""

    areas: list[shapely.Geometry]
    planes: list[Array]
    edges: list[Array]  # each (m, 2, 3)
    weights: list[str]
    main: list[int]  # index of a face per panel, -1 when neither side shows

    def faces(self) -> FrontFaces:
        """Return all faces."""
        return FrontFaces(np.array(self.areas), np.array(self.planes).reshape(-1, 3))


def solids_of(panels: list[tuple[Part, PanelFrame]], view: View, *, slots: bool, surface: bool) -> Solids:
    """Return the solids of panels. ``slots``: show closed slots (else they are full: a tab ends flush in them);
    ``surface``: show the patterns drawn on the panels."""
    made = Solids([], [], [], [], [])
    axes = view.axes()
    looks = [float((axes @ frame.axes)[2, 2]) for _, frame in panels]
    for at, (part, frame) in enumerate(panels):
        if is_facet(part):
            _add(part, frame, axes, made, (None, None), slots=slots, surface=surface, hidden=_round(part, at, looks))
            continue
        layers = _layers(part, frame)
        for layer, place, rims in layers:
            _add(layer, place, axes, made, rims, slots=slots, surface=surface)
        if len(layers) > 1:  # the face that shows is that of the paper, or the back of the foam behind it
            behind = made.main.pop()
            if float((axes @ frame.axes)[2, 2]) < 0:
                made.main[-1] = behind
    return made


def _round(part: Part, at: int, looks: list[float]) -> tuple[str, ...]:
    """Return the edges of a facet over which the board goes on as round: those where it does not turn away from the viewer."""
    names = {edge.name for edge in part.edges}
    beside = {FACET[0]: at - 1, FACET[1]: at + 1}
    return tuple(name for name, other in beside.items() if name in names and looks[at] * looks[other] > 0.0)


def _layers(part: Part, frame: PanelFrame) -> list[tuple[Part, PanelFrame, Rims]]:
    """Return a panel as it is drawn, with where the rims of its outside and its inside are; two layers where a rabbet leaves
    only paper: the line between them is none on the piece, but for the ends of the paper."""
    split = _split(part)
    if split is None:
        return [(part, frame, (None, None))]
    below = PanelFrame(frame.axes, frame.origin - split.paper.thickness * frame.outward)
    return [(split.paper, frame, (None, split.ends)), (split.foam, below, (shapely.Polygon(), None))]


@record
class _PaperAndFoam:
    """A part with rabbets: the paper of its outside, the foam behind it, and where only paper is left."""

    paper: Part
    foam: Part
    ends: shapely.Geometry


@remembered
def _split(part: Part) -> _PaperAndFoam | None:
    """Return the layers of a part; None where no rabbet tells them apart."""
    papers = [edge.rabbet.paper for edge in part.edges if edge.rabbet is not None]
    if not papers:
        return None
    body = polygon(part.outline)
    ends = shapely.union_all([rabbet_strip(edge, body) for edge in part.edges])
    paper = min(papers)
    foam = replace(part, outline=behind_paper(part), thickness=part.thickness - paper, marks=())
    return _PaperAndFoam(replace(part, thickness=paper), foam, ends)


def _add(
    part: Part,
    frame: PanelFrame,
    axes: Array,
    made: Solids,
    rims: Rims,
    *,
    slots: bool,
    surface: bool,
    hidden: tuple[str, ...] = (),
) -> None:
    turned = PanelFrame(axes @ frame.axes, axes @ frame.origin)  # from the part straight to the drawing
    looks = float(turned.axes[2, 2])
    if not slots and looks > 1e-6:
        _tab_ends(made, part, turned)
    rings = _rings(part, slots=slots, north=_north(frame))
    front = [turned.carry(ring.outside) for ring in rings]
    back = [turned.carry(ring.inside) for ring in rings]
    made.main.append(-1)
    if abs(looks) > 1e-6:
        shown = front if looks > 0 else back
        made.main[-1] = len(made.areas)
        _face(made, [ring[:, :2] for ring in shown], turned.axes[:, 2] * np.sign(looks), shown[0][0])
    for ring, near, far in zip(rings, front, back, strict=True):
        outside = ring.outside[:, :2]
        round_on = _along(part, outside, hidden)
        seen = (_within(rims[0], outside) & ~round_on, _within(rims[1], outside) & ~round_on)
        _sides(made, near, far, ring.corner, looks, seen, round_on | one_before(round_on))
    if looks > 1e-6 and surface:
        _marks(made, part, turned)


def is_joint(name: str) -> bool:
    """Tell whether edges of this name are a tab or an open notch for one. Put together, a tab fills its slot and both are one solid."""
    return name.endswith((".tab", ".slot"))


def _tab_ends(made: Solids, part: Part, frame: PanelFrame) -> None:
    """Add the outlines of slots on a drawn face: where the tabs of the next panel end level with it."""
    for slot in slots_of(part):
        _add_path(made, "outline", _carry(frame, np.asarray([*slot.points, slot.points[0]]), 0.0))
    for stretch in part.outline.outer.stretches():
        if stretch.name.endswith(".slot"):
            _add_path(made, "outline", _carry(frame, np.asarray(stretch.points), 0.0))


def _add_path(made: Solids, weight: str, points: Array) -> None:
    made.edges.append(np.stack([points[:-1], points[1:]], axis=1))
    made.weights.append(weight)


def _north(frame: PanelFrame) -> float | None:
    """Return the direction on a level board, in degrees, that is the same in space for all; None for one that is not level.

    Where layers of one radius lie flush, the rim between them is then the same chords for both, and drawn once.
    """
    x, y = frame.axes[0, :2]  # how far along x in space both axes of the board lead
    return degrees(atan2(y, x)) if abs(frame.axes[2, 2]) > 1.0 - LEVEL else None


@record
class _RingDrawn:
    """A ring of a part as it is drawn: points on both faces (n, 3), and for each whether a corner stands there."""

    outside: Array
    inside: Array
    corner: Flags


@remembered
def _rings(part: Part, *, slots: bool, north: float | None) -> tuple[_RingDrawn, ...]:
    """Return a part's outline and openings, without joints unless ``slots`` show: the same in every view and every step."""
    outer, holes = part.outline.outer, part.outline.holes
    if not slots:
        holes = tuple(h for h in holes if h not in slots_of(part))
        outer = bridged(outer, is_joint)
    return tuple(_ring(part, path, north) for path in (outer, *holes))


def _ring(part: Part, path: Path, north: float | None) -> _RingDrawn:
    points, corner = coarse(path, most_turn=SOLID_TURN, sagitta=SOLID_SAGITTA, north=north)
    pair = face_pair(part, points)
    return _RingDrawn(_at_depth(pair.outside, 0.0), _at_depth(pair.inside, -part.thickness), np.array(corner))


def _at_depth(points: Array, z: float) -> Array:
    return np.column_stack([points, np.full(len(points), z)])


def _carry(frame: PanelFrame, points: Array, z: float) -> Array:
    return frame.carry(_at_depth(points, z))


def _face(made: Solids, rings: list[Array], normal: Array, on: Array) -> None:
    """Add a face that looks towards the viewer: depth from n·p = c."""
    made.areas.append(shapely.Polygon(rings[0], rings[1:]))
    made.planes.extend(planes_of(normal[None], on[None]))


def _within(rim: shapely.Geometry | None, ring: Array) -> Flags:
    """Tell which sides of a ring have their middles inside an area; all when it is None."""
    if rim is None:
        return np.ones(len(ring), dtype=bool)
    middle = (ring + next_of(ring)) / 2
    inside: Flags = shapely.contains_xy(rim, middle[:, 0], middle[:, 1])
    return inside


def _along(part: Part, ring: Array, names: tuple[str, ...]) -> Flags:
    """Tell which sides of a ring lie along edges of these names, which are upright."""
    at = [edge.start[0] for edge in part.edges if edge.name in names]
    flags: Flags = np.zeros(len(ring), dtype=bool)
    if not at:
        return flags
    ends = next_of(ring)
    for x in at:
        flags |= (np.abs(ring[:, 0] - x) < 1e-6) & (np.abs(ends[:, 0] - x) < 1e-6)
    return flags


def _sides(
    made: Solids, near: Array, far: Array, corner: Flags, looks: float, rims: tuple[Flags, Flags], on_round: Flags
) -> None:
    """Add the sides between both faces of one ring, and the edges of the ring that can be seen; at points ``on_round`` the board goes
    on without an edge across it."""
    near_next, far_next = next_of(near), next_of(far)
    normal = crossed(near_next - near, near - far)  # outward: the ring has its material on the left, seen from outside
    size = np.linalg.norm(normal, axis=1)
    facing = normal[:, 2] > 1e-6 * size
    quads = np.stack([near, near_next, far_next, far], axis=1)[facing, :, :2]
    made.areas.extend(shapely.polygons(quads))
    made.planes.extend(planes_of(normal[facing], near[facing]))
    before = one_before(facing)
    rim_near = (facing | (looks > 1e-6)) & rims[0]
    rim_far = (facing | (looks < -1e-6)) & rims[1]
    upright = (facing | before) & (corner | (facing != before)) & ~on_round
    for start, end, shown in ((near, near_next, rim_near), (far, far_next, rim_far), (near, far, upright)):
        if shown.any():
            made.edges.append(np.stack([start[shown], end[shown]], axis=1))
            made.weights.append("outline")


def _marks(made: Solids, part: Part, frame: PanelFrame) -> None:
    """Add the pattern on a drawn face that looks towards the viewer."""
    for mark in part.marks:
        if mark.purpose is Purpose.SURFACE and len(mark.path.points) > 1:
            points = np.asarray(mark.path.travelled)
            _add_path(made, "detail", _carry(frame, points, 0.0))
