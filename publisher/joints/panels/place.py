"""Panels placed in space by their joins and rests, starting from the one that stands on the table."""

from dataclasses import replace

import numpy as np

from publisher.basics import Place, record
from publisher.design import FaceSeat, Join, PanelPlan, Rest
from publisher.geometry import Part
from publisher.joints.panels.edges import edge_line, lap_line, mating_lines, nominal_outline, top_edges
from publisher.joints.panels.seats import seated
from publisher.joints.panels.settle import settled
from publisher.joints.panels.space import Array, EdgeLine, PanelFrame, joined, let_in, letting_in, resting, standing
from publisher.joints.panels.touching import face_behind, touch_of

STANDING_LEVEL = 0.05  # mm: edges whose heights differ by less lie level


@record
class Panel:
    """A panel in its place."""

    name: str
    part: Part
    frame: PanelFrame
    rests: bool
    place: Place
    seated: bool = False  # it is put on a face of another


@record
class PanelAssembly:
    """The panels that could be placed, in the order of the spec; the names of those that could not."""

    plan: PanelPlan
    panels: tuple[Panel, ...]
    unplaced: tuple[str, ...]

    def panel(self, name: str) -> Panel | None:
        """Return the panel at this place, or None."""
        return next((p for p in self.panels if p.name == name), None)


def place_panels(plan: PanelPlan, parts: dict[str, Part]) -> PanelAssembly:
    """Place every panel that a chain of joins or rests leads to from ``stands_on``.

    Joins place before rests; what they hold together stands on all of its edges that can lie on the table. A panel placed
    once stays, and the joins that close a ring are checked, not used.
    """
    part_at = {p.name: parts[p.part] for p in plan.places if p.part in parts}
    plan = replace(plan, joins=tuple(_with_corner(join, part_at) for join in plan.joins))
    frames: dict[str, PanelFrame] = {}
    rested: set[str] = set()
    put: set[str] = set()
    start = edge_line(part_at, plan.stands_on)
    if start is not None:
        frames[plan.stands_on.panel] = standing(start)
        while (more := _by_join(plan.joins, part_at, frames)) is not None:
            frames[more[0]] = more[1]
        frames = settled(plan.stands_on, plan.joins, part_at, frames)
    while True:
        more = _by_join(plan.joins, part_at, frames) or _by_rest(plan.rests, part_at, frames)
        if more is None and (on_face := _by_seat(plan.seats, part_at, frames)) is not None:
            put.add(on_face[0])
            more = (*on_face, False)
        if more is None:
            break
        frames[more[0]] = more[1]
        if more[2]:
            rested.add(more[0])
    panels = tuple(
        Panel(p.name, part_at[p.name], frames[p.name], p.name in rested, p.place, p.name in put)
        for p in plan.places
        if p.name in frames
    )
    return PanelAssembly(plan, panels, tuple(p.name for p in plan.places if p.name not in frames))


def _with_corner(join: Join, part_at: dict[str, Part]) -> Join:
    """Return a mitre whose corner is unsaid with the one that its bevels make: 180 less both."""
    a, b = (part_at[ref.panel].edge(ref.edge) if ref.panel in part_at else None for ref in (join.a, join.b))
    if not join.unsaid or a is None or b is None:
        return join
    return replace(join, corner=180.0 - a.bevel - b.bevel)


def _by_join(
    joins: tuple[Join, ...], part_at: dict[str, Part], frames: dict[str, PanelFrame]
) -> tuple[str, PanelFrame, bool] | None:
    """Return the first panel that a join places against one that stands already."""
    for join in joins:
        a_placed, b_placed = join.a.panel in frames, join.b.panel in frames
        if a_placed == b_placed:
            continue
        if join.at is not None:
            upper, lower = lap_line(part_at, join.a, join.at[0]), lap_line(part_at, join.b, join.at[1])
            if upper is None or lower is None:
                continue
            if a_placed:
                return join.b.panel, let_in(frames[join.a.panel], upper, lower), False
            return join.a.panel, letting_in(frames[join.b.panel], lower, upper), False
        lines = mating_lines(part_at, join)
        if lines is None:
            continue
        line, edge = lines
        if a_placed:
            return join.b.panel, joined(frames[join.a.panel], line, edge, join.corner), False
        return join.a.panel, joined(frames[join.b.panel], edge, line, join.corner), False
    return None


def _by_rest(
    rests: tuple[Rest, ...], part_at: dict[str, Part], frames: dict[str, PanelFrame]
) -> tuple[str, PanelFrame, bool] | None:
    """Return the first panel that rests on edges of panels that stand already.

    The panel's inside face lies on the edges; the line of its topmost edge on that face passes through their upper ends.
    On level edges it lies flat like a lid: its middle over the middle of the edges, its bottom edge along the first of them.
    A panel that does not lie so over the whole of the edges is turned until it does, if it can.
    """
    for rest in rests:
        part = part_at.get(rest.panel)
        lines = [(ref.panel, edge_line(part_at, ref)) for ref in rest.on]
        if part is None or rest.panel in frames or not lines:
            continue
        ends = [_ends(frames[n], line) for n, line in lines if line is not None and n in frames]
        if len(ends) < len(lines):
            continue
        ways = _lids(part, frames[lines[0][0]], lines[0][1], ends) or _slopes(part, frames[lines[0][0]], ends)
        if ways:
            lies = (way for way in ways if _held(part, way, rest, part_at, frames))
            return rest.panel, next(lies, ways[0]), True
    return None


def _by_seat(
    seats: tuple[FaceSeat, ...], part_at: dict[str, Part], frames: dict[str, PanelFrame]
) -> tuple[str, PanelFrame] | None:
    """Return the first panel that is put on a face of one that stands already."""
    for seat in seats:
        if seat.panel in frames or seat.host not in frames or seat.panel not in part_at:
            continue
        frame = seated(seat, part_at[seat.panel], part_at[seat.host], frames[seat.host])
        if frame is not None:
            return seat.panel, frame
    return None


def _slopes(part: Part, frame: PanelFrame, ends: list[tuple[Array, Array]]) -> list[PanelFrame]:
    """Return the frames of a panel that lies on sloping edges, with its topmost edge along their upper ends, then each of
    its other edges."""
    upper = np.array([high for _, high in ends])
    slope = np.mean([high - low for low, high in ends], axis=0)
    across = upper[-1] - upper[0] if len(ends) > 1 else frame.outward
    outward = np.cross(across, slope)
    if abs(float(slope[2])) < STANDING_LEVEL or np.linalg.norm(outward) < 1e-9:
        return []
    if outward[2] < 0:
        outward, across = -outward, -across
    # seen from outside, with up upwards, ``across`` points right and the top edge runs left (anticlockwise)
    middle = upper.mean(axis=0) if len(ends) > 1 else upper[0]
    return [resting(top, -across, outward, middle) for top in top_edges(part)]


def _lids(part: Part, frame: PanelFrame, first: EdgeLine | None, ends: list[tuple[Array, Array]]) -> list[PanelFrame]:
    """Return the frames of a panel that lies flat on level edges, along them and across; none when they are not at one height."""
    heights = [float(point[2]) for both in ends for point in both]
    if first is None or max(heights) - min(heights) > STANDING_LEVEL:
        return []
    xs, ys = zip(*nominal_outline(part).exterior.coords, strict=True)
    centre = ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    # seen from above the first edge runs from right to left: the panel's own x runs against it
    along = -(frame.axes[:, :2] @ first.along)
    middle = np.mean([(low + high) / 2 for low, high in ends], axis=0)
    ways = (np.array([1.0, 0.0]), np.array([0.0, 1.0]))
    own = [EdgeLine(way, centre, max(xs) - min(xs), part.thickness) for way in ways]
    return [resting(line, along, np.array([0.0, 0.0, 1.0]), middle) for line in own]


def _held(part: Part, frame: PanelFrame, rest: Rest, part_at: dict[str, Part], frames: dict[str, PanelFrame]) -> bool:
    """Tell whether a panel in this frame lies on the whole of every edge that it rests on."""
    for ref in rest.on:
        below = part_at[ref.panel]
        edge = below.edge(ref.edge)
        touch = touch_of(face_behind(part, frame), below, frames[ref.panel], edge) if edge is not None else None
        if touch is not None and not touch.holds:
            return False
    return True


def _ends(frame: PanelFrame, line: EdgeLine) -> tuple[Array, Array]:
    """Return the lower and the upper end of an edge in the assembly."""
    half = line.length / 2 * line.along
    ends = [frame.point((line.middle[0] + s * half[0], line.middle[1] + s * half[1]), line.depth) for s in (-1.0, 1.0)]
    ends.sort(key=lambda p: float(p[2]))
    return ends[0], ends[1]
