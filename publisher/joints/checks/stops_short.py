"""Edges that end a little before a board that they point at, and that nothing joins to it."""

from collections.abc import Iterator

import numpy as np
import shapely

from publisher.basics import Check, Findings, Severity, checked
from publisher.basics.wording import say_length
from publisher.design import BRACE_SHAPE
from publisher.geometry import Edge, polygon
from publisher.joints.assembled import Assembled
from publisher.joints.outlines import Array
from publisher.joints.panels import Panel, PanelAssembly

AT_IT = 1.0
"""mm: what comes nearer is held by glue, or is the play by which a board goes in between others."""

SHORT = 4.0
"""mm: what ends farther off in thin board was meant to; in thicker board, what ends a board off. An assumption."""

ACROSS = 0.94
"""Cosine of the angle (20°) between the way an edge points and the way the face looks, up to which the one points at the other."""

SAMPLES = 9
"""Places along an edge at which it is looked from it."""

DEPTHS = (0.02, 0.5, 0.98)
"""Shares of the thickness at which it is: a square edge meets a slope with one of its rims."""

PROPS = ("top", "core")
"""Sides of a knee brace that lie against what it props and what it props from."""

LET_IN = 0.5
"""mm: what lies so far behind an edge counts as touched."""


@checked(
    "joints/stops-short",
    "What comes near another board reaches it",
    f"a roof over a wall, a floor between walls or a foot over a floor that ends {AT_IT:g} to {SHORT:g} mm before it, or up to a "
    "board, gapes on the finished piece: nobody leaves such a gap on purpose (common practice)",
    severity=Severity.WARNING,
    may_be_empty=True,
)
def stops_short(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look from every straight edge that no join, rest or seat names, square off it, to the face that it meets first."""
    looked_at = 0
    for assembly, panel, edge in _unnamed(subject):
        if panel.part.bending is not None or edge.centre is not None:
            continue
        looked_at += 1
        for other, gap in _short_of(panel, edge, assembly):
            yield check.found(
                f"{panel.name}.{edge.name} of {assembly.plan.name} ends up to {say_length(gap)} before {other}, and nothing joins the two",
                subject=assembly.plan.name,
                hint=f"make {panel.name} or what it stands on so much longer, or move it, until it touches {other}; where a gap is "
                "meant, leave more than a board",
                place=panel.place,
                value=gap,
                limit=AT_IT,
            )
    return looked_at


@checked(
    "joints/props-nothing",
    "A knee brace lies against two boards",
    "a knee brace that is put upside down, or ends before what it is to prop, hangs in the air",
    severity=Severity.WARNING,
    may_be_empty=True,
)
def props_nothing(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look from both sides of every knee brace among panels for a board that they lie against."""
    looked_at = 0
    for assembly, panel, edge in _unnamed(subject):
        if panel.part.shape != BRACE_SHAPE or edge.name not in PROPS:
            continue
        looked_at += 1
        if not any(gaps.min() <= AT_IT for gaps in _gaps_of(panel, edge, assembly).values()):
            yield check.found(
                f"{panel.name}.{edge.name} of {assembly.plan.name} lies against nothing: a knee brace props from its core what lies on "
                "its top",
                subject=assembly.plan.name,
                hint="turn it by 180 deg if it stands upside down, or move it until its top touches",
                place=panel.place,
            )
    return looked_at


def _unnamed(subject: Assembled) -> Iterator[tuple[PanelAssembly, Panel, Edge]]:
    """Yield the edges of panels that the spec says nothing of."""
    for mated in subject.panels:
        named = _named(mated.assembly)
        for panel in mated.assembly.panels:
            yield from (
                (mated.assembly, panel, edge) for edge in panel.part.edges if (panel.name, edge.name) not in named
            )


def _named(assembly: PanelAssembly) -> set[tuple[str, str]]:
    """Return the edges (place, edge) that the spec says something of: where they are to meet is judged by that."""
    plan = assembly.plan
    refs = [ref for join in plan.joins for ref in (join.a, join.b)]
    refs += [ref for rest in plan.rests for ref in rest.on]
    refs += [ref for lining in plan.linings for ref in lining.along]
    return {(ref.panel, ref.edge) for ref in refs} | {(seat.panel, seat.edge) for seat in plan.seats}


def _short_of(panel: Panel, edge: Edge, assembly: PanelAssembly) -> Iterator[tuple[str, float]]:
    """Yield the board before which an edge ends, and how far at most, when most of it does."""
    gaps = _gaps_of(panel, edge, assembly)
    if not gaps:
        return
    names, every = list(gaps), np.array(list(gaps.values()))
    first, nearest = every.argmin(axis=0), every.min(axis=0)
    near = nearest <= max(SHORT, panel.part.thickness)
    if 2 * near.sum() <= SAMPLES or nearest[near].max() <= AT_IT:
        return
    gap = float(nearest[near].max())
    yield names[int(first[near][nearest[near].argmax()])], gap


def _gaps_of(panel: Panel, edge: Edge, assembly: PanelAssembly) -> dict[str, Array]:
    """Return how far places along an edge lie before each other board; none of an edge too short to look from."""
    start, way = np.asarray(edge.start), np.subtract(edge.end, edge.start)
    length = float(np.hypot(*way))
    if length < SHORT:
        return {}
    out = panel.frame.axes @ np.array([way[1], -way[0], 0.0]) / length
    shares = (np.arange(SAMPLES) + 0.5) / SAMPLES
    flat = np.tile(start + shares[:, None] * way, (len(DEPTHS), 1))
    deep = -np.repeat(np.asarray(DEPTHS), SAMPLES) * panel.part.thickness
    points = panel.frame.carry(np.column_stack([flat, deep]))
    return {
        other.name: _gaps(points, out, other).reshape(len(DEPTHS), SAMPLES).min(axis=0)
        for other in assembly.boards
        if other.name != panel.name
    }


def _gaps(points: Array, out: Array, other: Panel) -> Array:
    """Return how far points lie before the face of a board that looks at them, along one way; inf where it is not met."""
    own, way = other.frame.back(points), other.frame.axes.T @ out
    far = np.full(len(points), np.inf)
    if abs(way[2]) < ACROSS:
        return far
    face = 0.0 if way[2] < 0.0 else -other.part.thickness
    gap = (face - own[:, 2]) / way[2]
    hit = own + gap[:, None] * way
    met = (gap > -LET_IN) & shapely.contains_xy(polygon(other.part.outline), hit[:, 0], hit[:, 1])
    return np.where(met, np.maximum(gap, 0.0), far)
