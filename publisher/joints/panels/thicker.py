"""Panels cut from the templates of a design, of board that is thicker or thinner than it says: where they then stand. Mm.

What is drawn stays as it is. An edge that is shorter by the board that it stands against still stands against that board's inside
face, so that its corners move by the difference; a tab stays in the middle of its closed slot, and flush with the end of an open one.
"""

from dataclasses import replace
from math import dist, radians, tan

import numpy as np

from publisher.basics import SAME_POINT, Point
from publisher.design import PanelPlan
from publisher.geometry import Edge, Part
from publisher.joints.outlines import Array

AGAINST = ("butt", "tab_and_slot")
"""Joints whose second edge ends at the inside face of the first panel."""

RUNS_ON = 1e-6
"""Of the sine of a corner: edges that turn less run on in each other."""


def thicker_board(parts: dict[str, Part], board: str, by: float) -> dict[str, Part]:
    """Return parts as they are cut from a board that is ``by`` mm thicker (below zero: thinner), others as they are."""
    return {name: _thicker(part, by) if part.board == board else part for name, part in parts.items()}


def of_thicker_board(
    plan: PanelPlan, parts: dict[str, Part], board: str, by: float
) -> tuple[PanelPlan, dict[str, Part]]:
    """Return an assembly's plan and all parts, by which it is placed as it stands of a board that is ``by`` mm thicker."""
    part_at = {place.name: place.part for place in plan.places if place.part in parts}
    of_board = {name for name, part in part_at.items() if parts[part].board == board}
    made = thicker_board(parts, board, by)
    moved: dict[str, dict[str, float]] = {}
    for join in plan.joins:
        if join.joint in AGAINST and join.at is None and join.a.panel in of_board and join.b.panel in part_at:
            moved.setdefault(part_at[join.b.panel], {})[join.b.edge] = by
    made |= {name: replace(made[name], edges=_moved_out(made[name].edges, own)) for name, own in moved.items()}
    joins = tuple(replace(j, inset=j.inset - by / 2.0) if j.inset and j.tabs_on in of_board else j for j in plan.joins)
    return replace(plan, joins=joins), made


def _thicker(part: Part, by: float) -> Part:
    """Return a part of thicker board: a bevel, which is drawn on the outside, reaches farther in on the inside face."""
    moved = {edge.name: -by * tan(radians(edge.bevel)) for edge in part.edges if edge.face == "inside" and edge.bevel}
    return replace(part, thickness=part.thickness + by, edges=_moved_out(part.edges, moved))


def _moved_out(edges: tuple[Edge, ...], by: dict[str, float]) -> tuple[Edge, ...]:
    """Return edges with the nominal lines of some moved out of the panel by so many mm; their neighbours end where those cut them."""
    if not by:
        return edges
    made = []
    for i, edge in enumerate(edges):
        before, after = edges[i - 1], edges[(i + 1) % len(edges)]
        start, end = _corner(edge, before, edge.nominal_start, by), _corner(edge, after, edge.nominal_end, by)
        made.append(replace(edge, nominal_start=start, nominal_end=end) if edge.centre is None else edge)
    return tuple(made)


def _corner(edge: Edge, beside: Edge, at: Point, by: dict[str, float]) -> Point:
    """Return where an end of a nominal edge comes to lie: on its own line, and on that of the edge that meets it there."""
    own = _outward(edge)
    other = _outward(beside) if beside.centre is None else own
    meets = beside is not edge and min(dist(at, end) for end in (beside.nominal_start, beside.nominal_end)) < SAME_POINT
    if not meets or abs(float(own[0] * other[1] - own[1] * other[0])) < RUNS_ON:
        move = own * by.get(edge.name, 0.0)
    else:
        move = np.linalg.solve(np.array([own, other]), [by.get(edge.name, 0.0), by.get(beside.name, 0.0)])
    return at[0] + float(move[0]), at[1] + float(move[1])


def _outward(edge: Edge) -> Array:
    """Return the unit vector (2,) out of the panel: right of an edge of an anticlockwise outline."""
    (a, b), (c, d) = edge.nominal_start, edge.nominal_end
    way = np.array([d - b, a - c])
    return np.asarray(way / max(float(np.hypot(*way)), 1e-12))
