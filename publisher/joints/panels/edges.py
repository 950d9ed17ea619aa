"""The lines on which panels meet: nominal edges, joint lines beside them, the topmost edge of a panel that rests."""

import numpy as np
import shapely

from publisher.design import EdgeRef, Join, PanelPlan
from publisher.geometry import Edge, Part, polygon
from publisher.joints.panels.space import EdgeLine, depth_of, line_of

NO_CRACK = 1e-6
"""mm: areas that lie nearer to each other share their border."""


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


def mating_lines(part_at: dict[str, Part], join: Join) -> tuple[EdgeLine, EdgeLine] | None:
    """Return the lines of both panels that a join lays on each other: the whole edges, or, of edges that are flush at one
    end, both from there on over the length of the shorter; None where one of them is not there."""
    line, edge = joint_line(part_at, join.a, join.inset), edge_line(part_at, join.b)
    if line is None or edge is None or join.flush is None:
        return None if line is None or edge is None else (line, edge)
    place, end = join.flush
    named = line if place == join.a.panel else edge
    way = {"left": -named.along[0], "right": named.along[0], "bottom": -named.along[1], "top": named.along[1]}[end]
    ahead = way > 0.0  # the named end is the one that the edge runs to; the other edge runs the other way
    length = min(line.length, edge.length)
    at_end = ahead if named is line else not ahead
    return _shortened(line, length, at_end), _shortened(edge, length, not at_end)


def _shortened(line: EdgeLine, length: float, at_end: bool) -> EdgeLine:
    """Return the stretch of a line of this length at its end or its start."""
    move = (line.length - length) / 2.0 * (line.along if at_end else -line.along)
    middle = (line.middle[0] + float(move[0]), line.middle[1] + float(move[1]))
    return EdgeLine(line.along, middle, length, line.depth)


def lap_line(part_at: dict[str, Part], ref: EdgeRef, at: float) -> EdgeLine | None:
    """Return the line of the edge's direction through the floor of the slot ``at`` mm from its left end, half the board
    deep: where it meets the floor of the other panel's slot. Its ``length`` is the panel's height there."""
    part = part_at.get(ref.panel)
    edge = part.edge(ref.edge) if part else None
    lap = next((lap for lap in edge.laps if abs(lap.at - at) < 1e-6), None) if edge else None
    if part is None or edge is None or lap is None or lap.height <= 0.0:
        return None
    line = line_of(edge.nominal_start, edge.nominal_end, part.thickness / 2.0)
    return EdgeLine(line.along, lap.floor, lap.height, line.depth)


def nominal_outline(part: Part) -> shapely.Polygon:
    """Return the outline through the nominal straight edges; when they do not go round the part (the sides of crenels bear no
    name), the finished one, without its holes, with what joins took off its straight edges put back.

    An arch that opens a straight edge (the foot of a bridge's side goes on behind it) is left closed.
    """
    straight = tuple(e for e in part.edges if e.centre is None)
    if len(straight) >= 3 and _round(straight):
        return shapely.Polygon([e.nominal_start for e in straight])
    finished = shapely.Polygon(polygon(part.outline).exterior)  # slots of joins are cut out of it
    strips = [shapely.Polygon([e.nominal_start, e.nominal_end, e.end, e.start]) for e in straight]
    whole = shapely.union_all([finished, *(strip for strip in strips if strip.is_valid)], grid_size=NO_CRACK)
    return whole if isinstance(whole, shapely.Polygon) else finished


def _round(edges: tuple[Edge, ...]) -> bool:
    return all(
        np.hypot(a.nominal_end[0] - b.nominal_start[0], a.nominal_end[1] - b.nominal_start[1]) < 0.01
        for a, b in zip(edges, edges[1:] + edges[:1], strict=True)
    )


def top_edges(part: Part) -> list[EdgeLine]:
    """Return the straight nominal edges, the topmost first, as they lie on the inside face: a bevel sets them back by
    t·tan(bevel) there."""
    straight = [e for e in part.edges if e.centre is None and e.nominal_length > 1e-9]
    top = max(straight, key=lambda e: e.nominal_start[1] + e.nominal_end[1], default=None)
    return [_inside_line(part, e) for e in sorted(straight, key=lambda e: e is not top)]


def _inside_line(part: Part, edge: Edge) -> EdgeLine:
    line = line_of(edge.nominal_start, edge.nominal_end, part.thickness)
    if edge.face == "inside":
        return line
    back = part.thickness * np.tan(np.radians(edge.bevel)) * line.inward
    return line_of(
        (edge.nominal_start[0] + back[0], edge.nominal_start[1] + back[1]),
        (edge.nominal_end[0] + back[0], edge.nominal_end[1] + back[1]),
        part.thickness,
    )


def slots_of_join(part_at: dict[str, Part], join: Join, count: int) -> list[shapely.Polygon]:
    """Return ``count`` slots of a join with tabs as they lie on the slotted panel, a, spread over its whole joint line; none for
    edges that meet over part of their length. Tabs and the gaps between them are L/(2·count) long, half a gap at either end."""
    line, mate = joint_line(part_at, join.a, join.inset), part_at.get(join.b.panel)
    if line is None or mate is None or join.flush is not None:
        return []
    pitch = line.length / count
    near, far = -join.play / 2.0, mate.thickness + join.play / 2.0
    found = []
    for i in range(count):
        middle = np.array(line.middle) + ((i + 0.5) * pitch - line.length / 2.0) * line.along
        half = (pitch / 4.0 + join.play / 2.0) * line.along
        ends = [middle - half, middle + half]
        found.append(
            shapely.Polygon(
                [p + d * line.inward for p, d in zip((*ends, *ends[::-1]), (near, near, far, far), strict=True)]
            )
        )
    return found


def backed_area(part: Part, panels: tuple[PanelPlan, ...], parts: dict[str, Part]) -> shapely.Geometry:
    """Return where boards stand glued on the inside face of a part, along its edges, wherever it is used."""
    found: shapely.Geometry | None = None
    for plan in panels:
        part_at = {place.name: parts[place.part] for place in plan.places if place.part in parts}
        for name in (name for name, at in part_at.items() if at is part):
            strips = [strip for join in plan.joins if (strip := _behind(part_at, join, name)) is not None]
            here = shapely.union_all(strips)
            found = here if found is None else shapely.intersection(found, here)
    return shapely.Polygon() if found is None else found


def _behind(part_at: dict[str, Part], join: Join, name: str) -> shapely.Geometry | None:
    """Return the strip of the panel ``name`` against which the other one of a join stands; None where it stands against none."""
    own, other = (join.a, join.b) if join.a.panel == name else (join.b, join.a)
    stands = (join.joint == "butt" and join.through == name) or (join.joint == "tab_and_slot" and own is join.a)
    mate = part_at.get(other.panel)
    if own.panel != name or join.at is not None or not stands or mate is None:
        return None
    line = edge_line(part_at, own)
    if line is None:
        return None
    near = join.inset if own is join.a else 0.0
    ends = [np.array(line.middle) + side * line.length / 2.0 * line.along for side in (-1.0, 1.0)]
    inwards = (near, near, near + mate.thickness, near + mate.thickness)
    return shapely.Polygon([p + d * line.inward for p, d in zip((*ends, *ends[::-1]), inwards, strict=True)])
