"""Panels placed in space by their joins and rests, starting from the one that stands on the table."""

from dataclasses import dataclass

import numpy as np
import shapely

from publisher.basics import Place
from publisher.design import EdgeRef, Join, PanelPlan, Rest
from publisher.geometry import Edge, Part, polygon
from publisher.joints.panels.space import Array, EdgeLine, Frame, depth_of, joined, line_of, resting, standing


@dataclass(frozen=True, slots=True)
class Panel:
    """A panel in its place."""

    name: str
    part: Part
    frame: Frame
    rests: bool
    place: Place


@dataclass(frozen=True, slots=True)
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

    Joins place before rests; a panel placed once stays, and the joins that close a ring are checked, not used.
    """
    part_at = {p.name: parts[p.part] for p in plan.places if p.part in parts}
    frames: dict[str, Frame] = {}
    rested: set[str] = set()
    start = edge_line(part_at, plan.stands_on)
    if start is not None:
        frames[plan.stands_on.panel] = standing(start)
    while True:
        more = _by_join(plan.joins, part_at, frames) or _by_rest(plan.rests, part_at, frames)
        if more is None:
            break
        frames[more[0]] = more[1]
        if more[2]:
            rested.add(more[0])
    panels = tuple(
        Panel(p.name, part_at[p.name], frames[p.name], p.name in rested, p.place)
        for p in plan.places
        if p.name in frames
    )
    return PanelAssembly(plan, panels, tuple(p.name for p in plan.places if p.name not in frames))


def edge_line(part_at: dict[str, Part], ref: EdgeRef) -> EdgeLine | None:
    """Return the nominal edge that a join names, or None when there is no such straight edge."""
    part = part_at.get(ref.panel)
    edge = part.edge(ref.edge) if part else None
    if part is None or edge is None or edge.nominal_length < 1e-9:
        return None
    return line_of(edge.nominal_start, edge.nominal_end, depth_of(edge, part.thickness))


def joint_line(part_at: dict[str, Part], ref: EdgeRef, inset: float) -> EdgeLine | None:
    """Return the line on which a join's other edge lies: the nominal edge, or its parallel ``inset`` mm into the panel,
    as long as the nominal outline is there."""
    line = edge_line(part_at, ref)
    if line is None or inset == 0:
        return line
    shifted = np.array(line.middle) + inset * line.inward
    reach = 1e5 * line.along
    cut = shapely.intersection(
        shapely.LineString([shifted - reach, shifted + reach]), nominal_outline(part_at[ref.panel])
    )
    pieces = [piece for piece in shapely.get_parts(cut) if piece.length > 1e-6]
    if not pieces:
        return None
    ends = shapely.get_coordinates(max(pieces, key=lambda piece: float(piece.length))) @ line.along
    low, high = float(ends.min()), float(ends.max())
    foot = shifted - float(shifted @ line.along) * line.along
    first, last = foot + low * line.along, foot + high * line.along
    return line_of((float(first[0]), float(first[1])), (float(last[0]), float(last[1])), line.depth)


def nominal_outline(part: Part) -> shapely.Polygon:
    """Return the outline through the nominal edges; the finished outline when the edges do not go round the part."""
    points = [e.nominal_start for e in part.edges]
    if len(points) >= 3 and all(e.centre is None for e in part.edges) and _round(part.edges):
        return shapely.Polygon(points)
    return polygon(part.outline)


def _round(edges: tuple[Edge, ...]) -> bool:
    return all(
        np.hypot(a.nominal_end[0] - b.nominal_start[0], a.nominal_end[1] - b.nominal_start[1]) < 0.01
        for a, b in zip(edges, edges[1:] + edges[:1], strict=True)
    )


def _by_join(
    joins: tuple[Join, ...], part_at: dict[str, Part], frames: dict[str, Frame]
) -> tuple[str, Frame, bool] | None:
    """Return the first panel that a join places against one that stands already."""
    for join in joins:
        a_placed, b_placed = join.a.panel in frames, join.b.panel in frames
        if a_placed == b_placed:
            continue
        line, edge = joint_line(part_at, join.a, join.inset), edge_line(part_at, join.b)
        if line is None or edge is None:
            continue
        if a_placed:
            return join.b.panel, joined(frames[join.a.panel], line, edge, join.corner), False
        return join.a.panel, joined(frames[join.b.panel], edge, line, join.corner), False
    return None


def _by_rest(
    rests: tuple[Rest, ...], part_at: dict[str, Part], frames: dict[str, Frame]
) -> tuple[str, Frame, bool] | None:
    """Return the first panel that rests on edges of panels that stand already.

    The panel's inside face lies on the edges; the line of its topmost edge on that face passes through their upper ends.
    """
    for rest in rests:
        part = part_at.get(rest.panel)
        lines = [(ref.panel, edge_line(part_at, ref)) for ref in rest.on]
        if part is None or rest.panel in frames or not lines:
            continue
        ends = [_ends(frames[n], line) for n, line in lines if line is not None and n in frames]
        top = top_edge(part)
        if len(ends) < len(lines) or top is None:
            continue
        upper = np.array([high for _, high in ends])
        slope = np.mean([high - low for low, high in ends], axis=0)
        if len(ends) > 1:
            across = upper[-1] - upper[0]
        else:
            across = frames[lines[0][0]].outward
        outward = np.cross(across, slope)
        if np.linalg.norm(outward) < 1e-9:
            continue
        if outward[2] < 0:
            outward, across = -outward, -across
        # seen from outside, with up upwards, ``across`` points right and the top edge runs left (anticlockwise)
        middle = upper.mean(axis=0) if len(ends) > 1 else upper[0]
        return rest.panel, resting(top, -across, outward, middle), True
    return None


def _ends(frame: Frame, line: EdgeLine) -> tuple[Array, Array]:
    """Return the lower and the upper end of an edge in the assembly."""
    half = line.length / 2 * line.along
    ends = [frame.point((line.middle[0] + s * half[0], line.middle[1] + s * half[1]), line.depth) for s in (-1.0, 1.0)]
    ends.sort(key=lambda p: float(p[2]))
    return ends[0], ends[1]


def top_edge(part: Part) -> EdgeLine | None:
    """Return the topmost nominal edge as it lies on the inside face: a bevel sets it back by t·tan(bevel) there."""
    straight = [e for e in part.edges if e.centre is None and e.nominal_length > 1e-9]
    if not straight:
        return None
    top = max(straight, key=lambda e: e.nominal_start[1] + e.nominal_end[1])
    line = line_of(top.nominal_start, top.nominal_end, part.thickness)
    if top.face == "inside":
        return line
    back = part.thickness * np.tan(np.radians(top.bevel)) * line.inward
    return line_of(
        (top.nominal_start[0] + back[0], top.nominal_start[1] + back[1]),
        (top.nominal_end[0] + back[0], top.nominal_end[1] + back[1]),
        part.thickness,
    )
