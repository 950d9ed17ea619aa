"""Every join of a panel assembly, measured where its panels stand."""

from dataclasses import replace
from math import acos, degrees

import numpy as np
import shapely

from publisher.basics import record
from publisher.design import Join
from publisher.geometry import polygon
from publisher.joints.panels.bent import frame_at
from publisher.joints.panels.edges import lap_line, mating_lines
from publisher.joints.panels.place import Panel, PanelAssembly
from publisher.joints.panels.space import Array, EdgeLine, PanelFrame
from publisher.joints.panels.touching import PANEL_TOUCH, Touch, face_behind, face_of_edge, stretch_of, touch_of

RING_GAP = 0.05
"""mm between the ends of edges that should coincide."""

ANGLE = 0.01
"""Degrees: over 300 mm it opens a joint by 0.05 mm."""


@record
class Mating:
    """A join as it is found: length of both mating lines (mm), how far their ends lie apart in space (mm), the inside
    angle (degrees) between the faces, how much of the tabs' section finds no slot (mm), and how the boards themselves touch,
    as they are cut: the end of b, or its bevel, on the face, the rabbet or the bevel of a.

    Where panels cross, the lengths are their heights there, the gap is that between the floors of their slots; ``touch`` is None."""

    join: Join
    length_a: float
    length_b: float
    gap: float
    corner: float
    tab_misses: float | None
    touch: Touch | None = None


def meets(mating: Mating) -> bool:
    """Tell whether the stated edges of a join lie on each other, at its corner."""
    return mating.gap <= RING_GAP and abs(mating.corner - mating.join.corner) <= ANGLE


def matings_of(assembly: PanelAssembly) -> tuple[Mating, ...]:
    """Return the joins whose two panels are placed and whose edges are there."""
    part_at = {panel.name: panel.part for panel in assembly.panels}
    found: list[Mating] = []
    for join in assembly.plan.joins:
        a, b = assembly.panel(join.a.panel), assembly.panel(join.b.panel)
        if join.at is not None:
            upper, lower = lap_line(part_at, join.a, join.at[0]), lap_line(part_at, join.b, join.at[1])
            if a is not None and b is not None and upper is not None and lower is not None:
                found.append(Mating(join, upper.length, lower.length, *_cross(a.frame, upper, b.frame, lower), None))
            continue
        lines = mating_lines(part_at, join)
        if a is None or b is None or lines is None:
            continue
        line, edge = lines
        a, b = (replace(p, frame=frame_at(p.part, p.frame, ref.edge)) for p, ref in ((a, join.a), (b, join.b)))
        gap, corner = _meet(a.frame, line, b.frame, edge)
        misses = tab_misses(a, b, edge) if join.joint == "tab_and_slot" else None
        found.append(Mating(join, line.length, edge.length, gap, corner, misses, _touch(join, a, b, edge)))
    return tuple(found)


def _touch(join: Join, a: Panel, b: Panel, line: EdgeLine) -> Touch | None:
    """Return how the boards of a join touch where they stand; None where one of them has no board there."""
    own, other = a.part.edge(join.a.edge), b.part.edge(join.b.edge)
    if own is None or other is None:
        return None
    only = stretch_of(other, line, join.play / 2 + 2 * PANEL_TOUCH if join.joint == "tab_and_slot" else None)
    if join.joint in ("mitre", "fold"):
        face = face_of_edge(a.part, a.frame, own)
    else:
        face = face_behind(a.part, a.frame, own.rabbet.paper if join.joint == "rabbet" and own.rabbet else None, own)
    share = min(1.0, a.part.thickness / b.part.thickness) if join.joint in ("mitre", "fold") else 1.0
    return None if face is None else touch_of(face, b.part, b.frame, other, only, may_lean=False, share=share)


def _meet(a: PanelFrame, line: EdgeLine, b: PanelFrame, edge: EdgeLine) -> tuple[float, float]:
    """Return how far the ends lie apart, beyond what a difference of lengths explains, and the inside angle of the faces."""
    a_mid, b_mid = a.point(line.middle, line.depth), b.point(edge.middle, edge.depth)
    a_way, b_way = a.axes[:, :2] @ line.along, b.axes[:, :2] @ edge.along
    half = min(line.length, edge.length) / 2
    start = float(np.linalg.norm((a_mid - half * a_way) - (b_mid + half * b_way)))
    end = float(np.linalg.norm((a_mid + half * a_way) - (b_mid - half * b_way)))
    inward_a, inward_b = a.axes[:, :2] @ line.inward, b.axes[:, :2] @ edge.inward
    corner = degrees(acos(min(1.0, max(-1.0, float(inward_a @ inward_b)))))
    if float(inward_b @ a.outward) > 1e-9:  # the panel turns outwards: the inside angle is the larger one
        corner = 360.0 - corner
    return max(start, end), corner


def _cross(a: PanelFrame, upper: EdgeLine, b: PanelFrame, lower: EdgeLine) -> tuple[float, float]:
    """Return how far the floors of two slots lie apart, and the angle between the panels: 90° when they cross squarely and
    neither leans against the other's slot."""
    gap = float(np.linalg.norm(a.point(upper.middle, upper.depth) - b.point(lower.middle, lower.depth)))
    faces = degrees(acos(min(1.0, max(-1.0, float(a.outward @ b.outward)))))
    down, up = a.axes[:, :2] @ upper.inward, b.axes[:, :2] @ lower.inward
    leans = degrees(acos(min(1.0, max(-1.0, -float(down @ up)))))
    return gap, 90.0 + max(abs(faces - 90.0), leans)


def tab_misses(slotted: Panel, tabbed: Panel, edge: EdgeLine) -> float:
    """Return how far (mm) the sections of a panel's tabs stick out of the slots of the other, at its middle plane; 0 when
    all tabs go in. A tab that meets board counts with its whole reach into it."""
    sections = tab_sections(slotted, tabbed, edge)
    if not sections:
        return 0.0
    solid = polygon(slotted.part.outline)
    # what is thinner than 0.02 mm is rounding
    overlap = shapely.buffer(shapely.intersection(shapely.union_all(sections), solid), -0.01)
    if overlap.is_empty:
        return 0.0
    return max(_thickness(piece) for piece in shapely.get_parts(overlap)) + 0.02


def _thickness(piece: shapely.Geometry) -> float:
    return 2.0 * float(shapely.length(shapely.maximum_inscribed_circle(piece, 0.005)))


def tab_sections(slotted: Panel, tabbed: Panel, edge: EdgeLine) -> list[shapely.Polygon]:
    """Return what the panel with tabs cuts out of the other's middle plane: rectangles in the other's coordinates."""
    middle = slotted.part.thickness / 2
    # the line in the tabbed panel where the slotted panel's middle plane passes, parallel to the edge
    normal = tabbed.frame.axes.T @ slotted.frame.outward
    level = float(slotted.frame.outward @ slotted.frame.point((0.0, 0.0), middle))
    start: Array = np.array([edge.middle[0], edge.middle[1], -edge.depth])
    height = level - float(slotted.frame.outward @ tabbed.frame.carry(start[None, :])[0])
    slope = float(normal[:2] @ edge.inward)
    if abs(slope) < 1e-9:
        return []
    at = np.array(edge.middle) + height / slope * edge.inward
    reach = edge.length * edge.along
    probe = shapely.LineString([at - reach, at + reach])
    cuts = shapely.get_parts(shapely.intersection(probe, polygon(tabbed.part.outline)))
    sections: list[shapely.Polygon] = []
    for cut in cuts[shapely.length(cuts) > 1e-6]:
        (ax, ay), (bx, by) = shapely.get_coordinates(cut)[[0, -1]]
        t = tabbed.part.thickness
        corners = np.array([[ax, ay, 0.0], [bx, by, 0.0], [bx, by, -t], [ax, ay, -t]])
        sections.append(shapely.Polygon(slotted.frame.back(tabbed.frame.carry(corners))[:, :2]))
    return sections
