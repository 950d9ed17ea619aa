"""Panels on faces of others: placed there, and measured where they stand. Mm, degrees."""

from math import acos, cos, degrees, dist, radians, sin, tan

import numpy as np
import shapely

from publisher.basics import Path, Point, record
from publisher.design import FaceSeat
from publisher.geometry import Edge, Part, middle_of, mitred, next_of, polygon
from publisher.joints.panels.solids import face_pair
from publisher.joints.panels.space import Array, EdgeLine, PanelFrame, line_of, resting
from publisher.joints.panels.touching import NOTHING, PANEL_TOUCH

HAIR = 0.1  # mm inside an edge: where there is board, the edge is there


@record
class Seating:
    """A panel on a face as it is found.

    ``seat``: what is said. ``touches``: what of the face it covers, in the host's own coordinates; ``glued``: the same with what
    other panels have flush with that face, such as the end of a wall at a corner; ``area``: mm² that it should cover, ``length``:
    mm of its edge. ``past``: how far (mm) it reaches over the rim of all that. ``gap``: how far it is off the face.
    ``angle``: between both. ``off``: how far (mm) it stands from where it is said to. ``tilt``: how far (degrees) a panel that
    stands on a slope is out of upright; ``rises``: by how much that face rises up its template. ``at``: in the assembly.
    """

    seat: FaceSeat
    touches: shapely.Geometry
    glued: shapely.Geometry
    area: float
    length: float
    past: float
    gap: float
    angle: float
    off: float
    tilt: float
    rises: float
    at: tuple[float, float, float]


@record
class _Ground:
    """A face in space: where its template's (0, 0) lies, its across and up as one looks at it, and the way it looks."""

    origin: Array
    across: Array
    up: Array
    normal: Array
    left_right: float  # -1 where the template's left and right change places

    def point(self, at: Point) -> Array:
        return np.asarray(self.origin + at[0] * self.left_right * self.across + at[1] * self.up)

    def flat(self, points: Array) -> Array:
        """Return points in the template's coordinates, and how far (mm) they stand over the face: (n, 3)."""
        off = points - self.origin
        return np.column_stack([off @ self.across * self.left_right, off @ self.up, off @ self.normal])


def _ground(seat: FaceSeat, host: Part, frame: PanelFrame) -> _Ground:
    across, up, normal = (np.asarray(frame.axes[:, i]) for i in range(3))
    if seat.face == "inside":
        return _Ground(frame.point((0.0, 0.0), host.thickness), -across, up, -normal, -1.0)
    return _Ground(frame.point((0.0, 0.0), 0.0), across, up, normal, 1.0)


def seated(seat: FaceSeat, part: Part, host: Part, frame: PanelFrame) -> PanelFrame | None:
    """Return the frame of a panel that is put on a face, or in an opening, of a host at ``frame``; None where it is not said at
    which place, or the edge or the opening is not there."""
    ground, turn = _ground(seat, host, frame), radians(seat.turn)
    hole = opening_of(host, seat.opening) if seat.opening else None
    if seat.at is None and hole is None:
        return None
    at = seat.at if hole is None else middle_of_ring(hole)
    assert at is not None
    # what goes into an opening ends level with the other face
    foot = ground.point(at) - (0.0 if hole is None else host.thickness) * ground.normal
    along = cos(turn) * ground.across + sin(turn) * ground.up
    if not seat.edge:
        x, y = middle_of(part)
        axes = np.column_stack([along, np.cross(ground.normal, along), ground.normal])
        return PanelFrame(axes, foot - axes @ np.array([x, y, -part.thickness]))
    edge = part.edge(seat.edge)
    if edge is None or edge.centre is not None or dist(edge.start, edge.end) < HAIR:
        return None
    bevel = radians(edge.bevel)
    outward = cos(bevel) * np.cross(along, ground.normal) + sin(bevel) * ground.normal
    return resting(_middle_line(part, edge), along, outward, foot)


def _middle_line(part: Part, edge: Edge) -> EdgeLine:
    """Return the line in the middle of the board along a finished edge."""
    line = line_of(edge.start, edge.end, part.thickness / 2.0)
    back = part.thickness / 2.0 * tan(radians(edge.bevel)) * line.inward
    return EdgeLine(line.along, (line.middle[0] + back[0], line.middle[1] + back[1]), line.length, line.depth)


def opening_of(host: Part, name: str) -> Path | None:
    """Return the ring of an opening of this name with board all round it: the part's own, or one of its shape's holes."""
    own = next((one.ring for one in host.openings if one.name == name and (one.kind != "door" or one.sill > 0.0)), None)
    holes = (hole for hole in host.outline.holes if all(edge.name == name for edge in hole.edges))
    return own if own is not None else next(holes, None)


def middle_of_ring(ring: Path) -> Point:
    """Return the middle of the box round an opening."""
    box = ring.box
    return ((box.left + box.right) / 2.0, (box.bottom + box.top) / 2.0)


def measured(
    seat: FaceSeat,
    part: Part,
    own: PanelFrame,
    host: Part,
    frame: PanelFrame,
    beside: shapely.Geometry = NOTHING,
) -> Seating | None:
    """Return how a placed panel lies or stands on the face that it is said to; None where its edge is not there.

    ``beside``: what other panels have flush with that face, in the host's own coordinates.
    """
    ground = _ground(seat, host, frame)
    rings = _edge_rings(part, seat.edge) if seat.edge else _face_rings(part)
    if not rings:
        return None
    flat = [ground.flat(own.carry(ring)) for ring in rings]
    every = np.vstack(flat)
    seat_area = _area(flat, apart=bool(seat.edge))
    face = _face_of(host, seat.face)
    flush = _welded(shapely.union(face, beside)) if not beside.is_empty else face
    outer = shapely.union_all([shapely.Polygon(p.exterior) for p in shapely.get_parts(flush)])
    rim = shapely.distance(outer, shapely.points(shapely.get_coordinates(seat_area)))
    middle = ground.flat(_middle(seat, part, own)[None, :])[0, :2]
    off = 0.0 if seat.at is None else float(np.hypot(*(middle - np.asarray(seat.at))))
    tilt, rises = _upright(seat, ground)
    x, y, z = (float(v) for v in own.carry(np.vstack(rings)).mean(axis=0))
    return Seating(
        seat,
        shapely.intersection(seat_area, face),
        shapely.intersection(seat_area, flush),
        float(seat_area.area),
        sum(dist(ring[0], ring[1]) for ring in rings) if seat.edge else 0.0,
        float(rim.max(initial=0.0)),
        float(np.abs(every[:, 2]).max()),
        _slant(flat[0]),
        off,
        tilt,
        rises,
        (x, y, z),
    )


def _middle(seat: FaceSeat, part: Part, own: PanelFrame) -> Array:
    """Return the middle, in the assembly, of what is said to touch the face."""
    edge = part.edge(seat.edge) if seat.edge else None
    if edge is None:
        return own.point(middle_of(part), part.thickness)
    line = _middle_line(part, edge)
    return own.point(line.middle, line.depth)


def _face_rings(part: Part) -> list[Array]:
    """Return the rings of a panel's inside face in its own coordinates, the outside first."""
    return [
        np.column_stack([inside, np.full(len(inside), -part.thickness)])
        for inside in (face_pair(part, path.points).inside for path in part.outline.paths)
    ]


def _edge_rings(part: Part, name: str) -> list[Array]:
    """Return the surface of a straight edge, as far as there is board, as quadrilaterals in the panel's own coordinates."""
    edge = part.edge(name)
    if edge is None or edge.centre is not None or dist(edge.start, edge.end) < HAIR:
        return []
    line = line_of(edge.start, edge.end, 0.0)
    ends = np.array([edge.start, edge.end])
    probe = shapely.LineString(ends + HAIR * line.inward)
    back = part.thickness * tan(radians(edge.bevel)) * line.inward
    made = []
    for piece in shapely.get_parts(shapely.intersection(probe, polygon(part.outline))):
        if shapely.length(piece) < HAIR:
            continue
        at = (shapely.get_coordinates(piece) - ends[0]) @ line.along
        low, high = (0.0 if v < 2 * HAIR else line.length if v > line.length - 2 * HAIR else v for v in (at[0], at[-1]))
        a, b = ends[0] + low * line.along, ends[0] + high * line.along
        made.append(np.array([[*a, 0.0], [*b, 0.0], [*(b + back), -part.thickness], [*(a + back), -part.thickness]]))
    return made


def _area(rings: list[Array], *, apart: bool) -> shapely.Geometry:
    """Return the area of rings on the face: several areas, or one with its holes."""
    if apart:
        return shapely.union_all([shapely.make_valid(shapely.Polygon(ring[:, :2])) for ring in rings])
    return shapely.make_valid(shapely.Polygon(rings[0][:, :2], [ring[:, :2] for ring in rings[1:]]))


def _face_of(host: Part, face: str) -> shapely.Geometry:
    """Return the area of a host's face in its own coordinates, openings out."""
    if face == "outside":
        return polygon(host.outline)
    rings = [face_pair(host, path.points).inside for path in host.outline.paths]
    return shapely.make_valid(shapely.Polygon(rings[0], rings[1:]))


def _welded(area: shapely.Geometry) -> shapely.Geometry:
    """Return an area without the hairlines between boards that touch."""
    return mitred(mitred(area, PANEL_TOUCH), -PANEL_TOUCH)


def _slant(ring: Array) -> float:
    """Return the angle (degrees) between a flat ring and the face."""
    around = next_of(ring)
    normal = np.cross(ring, around).sum(axis=0)
    size = float(np.linalg.norm(normal))
    return 0.0 if size < 1e-9 else degrees(acos(min(1.0, abs(float(normal[2])) / size)))


def _upright(seat: FaceSeat, ground: _Ground) -> tuple[float, float]:
    """Return how far (degrees) what is upright on the stated slope is out of upright there, and how far the face rises."""
    rises = degrees(acos(min(1.0, max(-1.0, float(ground.normal[2])))))
    if seat.slope is None:
        return 0.0, rises
    slope = radians(seat.slope)
    upward = sin(slope) * ground.up + cos(slope) * ground.normal
    return degrees(acos(min(1.0, max(-1.0, float(upward[2]))))), rises
