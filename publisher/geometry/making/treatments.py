"""What joins do to the edges of a panel: take-off, tabs, slots, bevels."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import dist, radians, tan

import shapely

from publisher.basics import SAME, Finding, Line, Path, Point, polyline
from publisher.design import EdgeTreatment, PartPlan, SlotRow, TabRow
from publisher.geometry.making.laps import lap_bumps, lap_of, off_panel
from publisher.geometry.model import Edge
from publisher.geometry.paths import Bump, box_bump, shift
from publisher.geometry.registry import Shape, deg, mm, nearest
from publisher.geometry.rules import CURVED_EDGE, LOST_EDGE, SLOT_OFF_PANEL, UNKNOWN_EDGE

STEEPEST = 80.0  # degrees from square: no knife holds a flatter bevel in board


@dataclass(frozen=True, slots=True)
class Slot:
    """A closed slot: its path anticlockwise, and in words which it is."""

    path: Path
    what: str
    edge: str


@dataclass(frozen=True, slots=True)
class Treated:
    """The outline with its edges moved, the edges with their finished places, and what is to be let in or cut out."""

    outer: Path
    edges: tuple[Edge, ...]
    bumps: tuple[Bump, ...] = ()
    slots: tuple[Slot, ...] = ()


def treat(shape: Shape, plan: PartPlan) -> tuple[Treated, tuple[Finding, ...]]:
    """Apply a plan's edge treatments to the straight edges of its shape.

    Shortened edges move inwards by their take-off. A bevelled edge whose nominal place is on the inside face moves
    outwards by thickness·tan(bevel), since the outline is drawn on the outside face. A bevel of the shape itself stands
    where no join says another.
    """
    found = tuple(_refused(shape, plan))
    if found or not (plan.treatments or any(edge.bevel for edge in shape.edges)):
        return Treated(shape.outer, shape.edges), found
    moves = {edge.name: _moves(edge, plan) for edge in shape.edges}
    by = [moves.get(edge.name, 0.0) if isinstance(edge, Line) else 0.0 for edge in shape.outer.edges]
    outer, lost = shift(shape.outer, by) if any(by) else (shape.outer, ())
    if lost:
        return Treated(shape.outer, shape.edges), (_lost(lost, plan),)
    edges = tuple(_finished(edge, shape.outer, outer, plan) for edge in shape.edges)
    bumps: list[Bump] = []
    slots: list[Slot] = []
    problems: list[Finding] = []
    nominal = shapely.Polygon(shape.outer.points)
    edges = tuple(_with_laps(edge, nominal, plan) for edge in edges)
    for edge in edges:
        bumps.extend(lap_bumps(edge))
    for treatment in plan.treatments:
        edge = next(e for e in edges if e.name == treatment.edge)
        problems.extend(off_panel(edge, treatment, plan))
        if treatment.tabs is not None:
            bumps.extend(_tabs(edge, treatment.tabs))
        for row in treatment.slots:
            if row.inset > 0.0:
                line = joint_line(edge, row.inset, nominal)
                if line is None:
                    problems.append(_no_joint_line(edge, row, treatment, plan))
                else:
                    slots.extend(_slots(edge, row, line))
            else:
                bumps.extend(_notches(edge, row, moves[edge.name]))
    return Treated(outer, edges, tuple(bumps), tuple(slots)), tuple(problems)


def _refused(shape: Shape, plan: PartPlan) -> Iterator[Finding]:
    """Find treatments of edges that the shape does not have, that are curved, or bevels that no knife can cut."""
    names = [edge.name for edge in shape.edges]
    for treatment in plan.treatments:
        edge = next((e for e in shape.edges if e.name == treatment.edge), None)
        if edge is None:
            message = f"part “{plan.id}” ({plan.shape or 'a drawing'}) has no edge “{treatment.edge}”"
            hint = nearest(treatment.edge, names) if names else "only registered shapes have edges to join"
            yield UNKNOWN_EDGE.found(message, subject=f"part {plan.id}", hint=hint, place=treatment.place)
        elif edge.centre is not None:
            message = f"the edge “{edge.name}” of part “{plan.id}” is an arc; joins need a straight edge"
            yield CURVED_EDGE.found(
                message, subject=f"part {plan.id}", hint="join at a straight edge", place=treatment.place
            )
        elif not abs(treatment.bevel) <= STEEPEST:
            yield LOST_EDGE.found(
                f"the edge “{edge.name}” of part “{plan.id}” would be bevelled by {deg(treatment.bevel)} from square",
                subject=f"part {plan.id}",
                hint=f"a bevel can be cut up to {deg(STEEPEST)}: check the corner angle of the join",
                place=treatment.place,
                value=treatment.bevel,
                limit=STEEPEST,
            )


def _moves(edge: Edge, plan: PartPlan) -> float:
    """How far the edge moves into the panel, in mm: the largest take-off, less what a bevel adds on the outside face."""
    own = [t for t in plan.treatments if t.edge == edge.name]
    bevel = max((t.bevel_of(edge.bevel) for t in own), key=abs, default=edge.bevel)
    growth = plan.thickness * tan(radians(bevel)) if edge.face == "inside" else 0.0
    return max((t.take_off for t in own), default=0.0) - growth


def _finished(edge: Edge, old: Path, new: Path, plan: PartPlan) -> Edge:
    own = [after for before, after in zip(old.edges, new.edges, strict=True) if before.name == edge.name]
    treatments = [t for t in plan.treatments if t.edge == edge.name]
    return replace(
        edge,
        start=own[0].start,
        end=own[-1].end,
        bevel=max((t.bevel_of(edge.bevel) for t in treatments), key=abs, default=edge.bevel),
        matches=tuple(letter for t in treatments for letter in t.matches),
    )


def _with_laps(edge: Edge, nominal: shapely.Polygon, plan: PartPlan) -> Edge:
    own = [t for t in plan.treatments if t.edge == edge.name]
    rabbet = next((t.rabbet for t in own if t.rabbet is not None), None)
    laps = tuple(lap_of(edge, slot, nominal) for t in own for slot in t.laps)
    return replace(edge, laps=laps, rabbet=rabbet) if laps or rabbet else edge


def _lost(lost: Sequence[str], plan: PartPlan) -> Finding:
    taken = ", ".join(f"{t.edge} {mm(t.take_off)}" for t in plan.treatments if t.take_off)
    names = ", ".join(f"“{name}”" for name in lost)
    return LOST_EDGE.found(
        f"the joins of part “{plan.id}” take off more than it has: its edge {names} vanishes (taken off: {taken or 'by bevels'})",
        subject=f"part {plan.id}",
        hint="make the panel larger, or the board thinner",
        place=plan.treatments[0].place if plan.treatments else plan.place,
    )


def _frame(start: Point, end: Point) -> tuple[Point, Point]:
    """Return the unit vectors along an edge and into the panel."""
    size = dist(start, end)
    x, y = (end[0] - start[0]) / size, (end[1] - start[1]) / size
    return (x, y), (-y, x)


def joint_line(edge: Edge, inset: float, nominal: shapely.Polygon) -> tuple[Point, Point] | None:
    """Return the line parallel to the nominal edge, ``inset`` mm inside it, as far as it lies in the nominal outline.

    It runs the way the edge runs. Where the outline cuts it into several, the longest counts; None when it lies outside.
    """
    (x, y), (nx, ny) = _frame(edge.nominal_start, edge.nominal_end)
    px, py = edge.nominal_start[0] + nx * inset, edge.nominal_start[1] + ny * inset
    left, bottom, right, top = nominal.bounds
    far = 2.0 * (right - left + top - bottom)
    probe = shapely.LineString([(px - far * x, py - far * y), (px + far * x, py + far * y)])
    lines = [
        p for p in shapely.get_parts(probe.intersection(nominal)) if p.geom_type == "LineString" and p.length > 0.0
    ]
    if not lines:
        return None
    a, b = max(lines, key=lambda line: float(line.length)).coords[:2]
    forward = (b[0] - a[0]) * x + (b[1] - a[1]) * y > 0.0
    first, last = (a, b) if forward else (b, a)
    return (float(first[0]), float(first[1])), (float(last[0]), float(last[1]))


def _rows(line: tuple[Point, Point], count: int, longer: float) -> Iterator[tuple[Point, Point]]:
    """Yield both ends of each of ``count`` stretches along a line: L/(2·count) + ``longer`` long, centred at (i + ½)/count."""
    (x, y), _ = _frame(*line)
    whole = dist(*line)
    half = whole / (4.0 * count) + longer / 2.0
    for i in range(count):
        middle = (i + 0.5) / count * whole
        yield tuple(  # type: ignore[misc]
            (line[0][0] + x * at, line[0][1] + y * at) for at in (middle - half, middle + half)
        )


def _onto(points: tuple[Point, Point], edge: Edge) -> tuple[Point, Point]:
    """Drop two points square onto the finished edge's line."""
    (x, y), _ = _frame(edge.start, edge.end)
    sx, sy = edge.start

    def drop(p: Point) -> Point:
        at = (p[0] - sx) * x + (p[1] - sy) * y
        return (sx + x * at, sy + y * at)

    return drop(points[0]), drop(points[1])


def _tabs(edge: Edge, row: TabRow) -> Iterator[Bump]:
    _, inward = _frame(edge.start, edge.end)
    ends = _rows((edge.nominal_start, edge.nominal_end), row.count, 0.0)
    for i, pair in enumerate(ends):
        what = f"tab {i + 1} of the edge “{edge.name}”"
        yield box_bump(edge.name, f"{edge.name}.tab", what, _onto(pair, edge), inward, -row.depth)


def _notches(edge: Edge, row: SlotRow, moved: float) -> Iterator[Bump]:
    """Yield open notches: mate + play/2 deep from the nominal edge, less what the edge itself has moved."""
    _, inward = _frame(edge.start, edge.end)
    ends = _rows((edge.nominal_start, edge.nominal_end), row.count, row.play)
    for i, pair in enumerate(ends):
        what = f"notch {i + 1} of the edge “{edge.name}”"
        depth = row.mate + row.play / 2.0 - moved
        if depth > SAME:
            yield box_bump(edge.name, f"{edge.name}.slot", what, _onto(pair, edge), inward, depth)


def _slots(edge: Edge, row: SlotRow, line: tuple[Point, Point]) -> Iterator[Slot]:
    """Yield closed slots from inset − play/2 to inset + mate + play/2 mm from the nominal edge."""
    _, (nx, ny) = _frame(edge.nominal_start, edge.nominal_end)
    near, far = -row.play / 2.0, row.mate + row.play / 2.0
    for i, ((ax, ay), (bx, by)) in enumerate(_rows(line, row.count, row.play)):
        corners = (
            (ax + nx * near, ay + ny * near),
            (bx + nx * near, by + ny * near),
            (bx + nx * far, by + ny * far),
            (ax + nx * far, ay + ny * far),
        )
        yield Slot(
            polyline(corners, True, f"{edge.name}.slot"), f"slot {i + 1} beside the edge “{edge.name}”", edge.name
        )


def _no_joint_line(edge: Edge, row: SlotRow, treatment: EdgeTreatment, plan: PartPlan) -> Finding:
    return SLOT_OFF_PANEL.found(
        f"slots {mm(row.inset)} inside the edge “{edge.name}” of part “{plan.id}” lie outside the panel",
        subject=f"part {plan.id}",
        hint="make the inset smaller than the panel",
        place=treatment.place,
        value=row.inset,
    )
