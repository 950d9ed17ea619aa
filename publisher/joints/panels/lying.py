"""Panels that lie on edges of others: flat as a lid, along slopes as a roof, over level edges of two heights as a lean-to. Mm."""

from itertools import combinations

import numpy as np

from publisher.design import EdgeRef, Rest
from publisher.geometry import Edge, Part
from publisher.joints.panels.edges import edge_line, nominal_outline, top_edges
from publisher.joints.panels.space import Array, EdgeLine, PanelFrame, resting
from publisher.joints.panels.touching import PANEL_TOUCH, corners_of_edge, face_behind, touch_of

ONE_HEIGHT = 0.05  # mm: ends whose heights differ by less lie level


def lying(rest: Rest, part_at: dict[str, Part], frames: dict[str, PanelFrame]) -> PanelFrame | None:
    """Return the frame of a panel that rests on edges of panels that stand already; None while one of them does not.

    Its inside face lies on the edges. Along sloping ones the line of its topmost edge on that face passes through their
    upper ends. On level edges of one height it lies flat like a lid: its bottom edge along the first of them, its middle over
    the middle of the rectangle round all of them, board and all, so that it covers the outsides of three walls too. On level
    edges of several heights it leans: it lies on the rims that carry it, its topmost edge over the outer rim of the highest
    one. A panel that does not lie so over the whole of the edges is turned until it does, if it can. From there it is moved
    by its ``at``.
    """
    part = part_at.get(rest.panel)
    lines = [(frames[ref.panel], line) for ref in rest.on if ref.panel in frames and (line := edge_line(part_at, ref))]
    if part is None or not lines or len(lines) < len(rest.on):
        return None
    rims = [rim for ref in rest.on if (rim := _rim(ref, part_at, frames)) is not None]
    by = np.array(rest.at)
    ways = [PanelFrame(way.axes, way.origin + way.axes[:, :2] @ by) for way in _ways(part, lines, rims)]
    return next((way for way in ways if _held(part, way, rest, part_at, frames)), ways[0] if ways else None)


def _ways(part: Part, lines: list[tuple[PanelFrame, EdgeLine]], rims: list[Array]) -> list[PanelFrame]:
    """Return the frames in which a panel may lie on edges, the likeliest first: along slopes, flat, or leaning."""
    ends = [_ends(frame, line) for frame, line in lines]
    sloping = [both for both in ends if abs(float((both[1] - both[0])[2])) > ONE_HEIGHT]
    frame, line = lines[0]
    if sloping:
        return _slopes(part, frame, sloping)
    return _lids(part, frame, line, ends, rims) or _leans(part, ends, rims)


def _rim(ref: EdgeRef, part_at: dict[str, Part], frames: dict[str, PanelFrame]) -> Array | None:
    """Return the corners of the board's rim at an edge, in space."""
    edge = part_at[ref.panel].edge(ref.edge)
    corners = corners_of_edge(part_at[ref.panel], edge) if edge is not None else None
    return None if corners is None else frames[ref.panel].carry(corners)


def _slopes(part: Part, frame: PanelFrame, ends: list[tuple[Array, Array]]) -> list[PanelFrame]:
    """Return the frames of a panel that lies on sloping edges, with its topmost edge along their upper ends, then each of
    its other edges."""
    upper = np.array([high for _, high in ends])
    slope = np.mean([high - low for low, high in ends], axis=0)
    across = upper[-1] - upper[0] if len(ends) > 1 else frame.outward
    outward = np.cross(across, slope)
    if np.linalg.norm(outward) < 1e-9:
        return []
    # seen from outside, with up upwards, what points right lies along the top edge, which runs left (anticlockwise)
    middle = upper.mean(axis=0) if len(ends) > 1 else upper[0]
    return _along(part, across, outward, middle)


def _along(part: Part, across: Array, outward: Array, middle: Array) -> list[PanelFrame]:
    """Return the frames of a panel that looks upwards, with one of its edges along a line through a point, the topmost first."""
    if outward[2] < 0:
        outward, across = -outward, -across
    return [resting(top, -across, outward, middle) for top in top_edges(part)]


def _lids(
    part: Part, frame: PanelFrame, first: EdgeLine, ends: list[tuple[Array, Array]], rims: list[Array]
) -> list[PanelFrame]:
    """Return the frames of a panel that lies flat on level edges, along them and across; none when they are not at one height.

    An edge reaches as far as is said, to the outside of the wall that it is butted against, and over its own board; or, for a
    panel that is too small for that, as far as its board does.
    """
    heights = [float(point[2]) for both in ends for point in both]
    if max(heights) - min(heights) > ONE_HEIGHT:
        return []
    xs, ys = zip(*nominal_outline(part).exterior.coords, strict=True)
    centre = ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    # seen from above the first edge runs from right to left: the panel's own x runs against it
    up = np.array([0.0, 0.0, 1.0])
    along = -(frame.axes[:, :2] @ first.along)
    across = np.cross(up, along)
    ways = (np.array([1.0, 0.0]), np.array([0.0, 1.0]))
    own = [EdgeLine(way, centre, max(xs) - min(xs), part.thickness) for way in ways]
    found = []
    for reach in ([point for both in ends for point in both] + rims, rims):
        places = np.vstack(reach) @ np.column_stack([along, across])
        middle = (places.min(axis=0) + places.max(axis=0)) / 2
        at = middle[0] * along + middle[1] * across + heights[0] * up
        found += [resting(line, along, up, at) for line in own]
    return found


def _leans(part: Part, ends: list[tuple[Array, Array]], rims: list[Array]) -> list[PanelFrame]:
    """Return the frames of a panel that leans on level edges of several heights; none when they do not run side by side.

    Seen along the edges each is a strip as wide as its board; the panel lies on two of their corners and no other lies higher.
    """
    along = ends[0][1] - ends[0][0]
    along = along / np.linalg.norm(along)
    if any(float(np.linalg.norm(np.cross(along, high - low))) > ONE_HEIGHT for low, high in ends) or len(rims) < 2:
        return []
    level = np.cross(along, np.array([0.0, 0.0, 1.0]))
    seen = [np.column_stack([rim @ level, rim[:, 2]]) for rim in rims]
    every = np.vstack(seen)
    carried: tuple[float, Array, Array] | None = None
    for one, other in combinations(seen, 2):
        for p in one:
            for q in other:
                low, high = (p, q) if p[1] < q[1] else (q, p)
                run = float(high[0] - low[0])
                if abs(run) < ONE_HEIGHT:
                    continue
                over = low[1] + (every[:, 0] - low[0]) * (high[1] - low[1]) / run
                if np.all(every[:, 1] < over + PANEL_TOUCH / 2) and (carried is None or abs(run) > carried[0]):
                    carried = (abs(run), low, high)
    if carried is None:
        return []
    _, low, high = carried
    top = every[np.argmax(every[:, 0] * np.sign(high[0] - low[0]))]  # the outer rim of the highest edge
    rise = (high[1] - low[1]) / (high[0] - low[0])
    height = low[1] + (top[0] - low[0]) * rise
    centre = float(np.mean([(a + b) / 2 for a, b in ends], axis=0) @ along)
    middle = centre * along + top[0] * level + height * np.array([0.0, 0.0, 1.0])
    uphill = (level + rise * np.array([0.0, 0.0, 1.0])) * np.sign(high[0] - low[0])
    return _along(part, along, np.cross(along, uphill), middle)


def _held(part: Part, frame: PanelFrame, rest: Rest, part_at: dict[str, Part], frames: dict[str, PanelFrame]) -> bool:
    """Tell whether a panel in this frame lies on the whole of every edge that it rests on."""
    face = face_behind(part, frame)
    for ref in rest.on:
        below = part_at[ref.panel]
        edge: Edge | None = below.edge(ref.edge)
        touch = touch_of(face, below, frames[ref.panel], edge) if edge is not None else None
        if touch is not None and not touch.holds:
            return False
    return True


def _ends(frame: PanelFrame, line: EdgeLine) -> tuple[Array, Array]:
    """Return the lower and the upper end of an edge in the assembly."""
    half = line.length / 2 * line.along
    ends = [frame.point((line.middle[0] + s * half[0], line.middle[1] + s * half[1]), line.depth) for s in (-1.0, 1.0)]
    ends.sort(key=lambda p: float(p[2]))
    return ends[0], ends[1]
