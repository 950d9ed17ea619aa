"""What joins do to the edges of a panel: take-off, tabs, slots, bevels."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from math import dist, radians, tan
from typing import TypeVar

import shapely

from publisher.basics import SAME_POINT, Finding, Line, Path, Point, polyline, record
from publisher.basics.wording import counted
from publisher.design import EdgeTreatment, PartPlan, SlotRow, TabRow
from publisher.geometry.making.laps import lap_bumps, lap_of, off_panel
from publisher.geometry.making.tab_rows import (
    EVERYWHERE,
    LEAST_TAB,
    Reach,
    Reaches,
    frame_of,
    joint_line,
    most_tabs,
    rooms_of,
    row_ends,
    row_of,
    stretches,
    tab_length,
)
from publisher.geometry.model import Edge
from publisher.geometry.paths import Bump, box_bump, polygon, shift
from publisher.geometry.registry import Shape, deg, known_words_hint, mm
from publisher.geometry.rules import CURVED_EDGE, LOST_EDGE, SLOT_OFF_PANEL, TAB_OFF_EDGE, UNKNOWN_EDGE

OneKind = TypeVar("OneKind")

STEEPEST_BEVEL = 80.0  # degrees from square: no knife holds a flatter bevel in board


@record
class Slot:
    """A closed slot: its path anticlockwise, and in words which it is."""

    path: Path
    what: str
    edge: str


@record
class Treated:
    """The outline with its edges moved, the edges with their finished places, and what is to be let in or cut out."""

    outer: Path
    edges: tuple[Edge, ...]
    bumps: tuple[Bump, ...] = ()
    slots: tuple[Slot, ...] = ()


def moved(shape: Shape, plan: PartPlan) -> tuple[Path, tuple[str, ...]]:
    """Return the outline of a shape with its edges where joins and bevels leave them, and the edges that are lost so."""
    moves = {edge.name: _moves(edge, plan) for edge in shape.edges}
    by = [moves.get(edge.name, 0.0) if isinstance(edge, Line) else 0.0 for edge in shape.outer.edges]
    return shift(shape.outer, by) if any(by) else (shape.outer, ())


def treat(shape: Shape, plan: PartPlan, reaches: Reaches | None = None) -> tuple[Treated, tuple[Finding, ...]]:
    """Apply a plan's edge treatments to the straight edges of its shape.

    ``reaches``: where its rows of tabs and slots may stand, as its mates agree; unsaid: as the part alone allows.

    Shortened edges move inwards by their take-off. A bevelled edge whose nominal place is on the inside face moves
    outwards by thickness·tan(bevel), since the outline is drawn on the outside face. A bevel of the shape itself stands
    where no join says another.
    """
    found = tuple(_refused(shape, plan))
    if found or not (plan.treatments or any(edge.bevel for edge in shape.edges)):
        return Treated(shape.outer, shape.edges), found
    outer, lost = moved(shape, plan)
    if lost:
        return Treated(shape.outer, shape.edges), (_lost(lost, plan),)
    nominal = polygon(shape.outer)
    edges = tuple(_with_laps(_finished(edge, shape.outer, outer, plan), nominal, plan) for edge in shape.edges)
    if reaches is None:
        reaches = {row: room.reach for row, room in rooms_of(shape, outer, plan).items()}
    made: list[Bump | Slot | Finding] = [bump for edge in edges for bump in lap_bumps(edge)]
    for treatment in plan.treatments:
        edge = next(e for e in edges if e.name == treatment.edge)
        made += [*off_panel(edge, treatment, plan), *_rows(edge, treatment, nominal, reaches, plan)]
    return Treated(outer, edges, _only(Bump, made), _only(Slot, made)), _only(Finding, made)


def _only(kind: type[OneKind], made: Iterable[object]) -> tuple[OneKind, ...]:
    return tuple(one for one in made if isinstance(one, kind))


def _rows(
    edge: Edge, treatment: EdgeTreatment, nominal: shapely.Polygon, reaches: Reaches, plan: PartPlan
) -> Iterator[Bump | Slot | Finding]:
    """Yield the tabs, notches and slots of a treatment, or what is wrong with a row of them."""
    if treatment.tabs is not None:
        reach = reaches.get(row_of(edge.name, None), EVERYWHERE)
        full = _too_full(edge.nominal_length, treatment.tabs.count, plan.thickness, reach, treatment, plan)
        yield from full or _tabs(edge, treatment.tabs, reach)
    for row in treatment.slots:
        reach = reaches.get(row_of(edge.name, row.inset), EVERYWHERE)
        line = joint_line(edge, row.inset, nominal) if row.inset > 0.0 else (edge.nominal_start, edge.nominal_end)
        if line is None:
            yield _no_joint_line(edge, row, treatment, plan)
            continue
        full = _too_full(dist(*line), row.count, row.mate, reach, treatment, plan)
        if full:
            yield from full
        elif row.inset > 0.0:
            yield from _slots(edge, row, line, reach)
        else:
            yield from _notches(edge, row, _moves(edge, plan), reach)


def _too_full(
    length: float, count: int, thickness: float, reach: Reach, treatment: EdgeTreatment, plan: PartPlan
) -> tuple[Finding, ...]:
    """Find a row whose tabs would be shorter than their board is thick where they had to move inwards, and say how many fit."""
    first, last = row_ends(length, count, reach)
    long = tab_length(length, count, reach)
    if long >= thickness or last - first >= row_ends(length, count, reach.free)[1] * 2.0 - SAME_POINT:
        return ()
    fits = most_tabs(length, reach, LEAST_TAB, count)
    found = TAB_OFF_EDGE.found(
        f"the edge “{treatment.edge}” of part “{plan.id}” and its mate share {mm(max(last - first, 0.0))} of board between "
        f"their ends: too little for {counted(count, 'tab')}",
        subject=f"part {plan.id}",
        hint=f"say tabs: {fits}, or make both panels longer there"
        if fits
        else f"not even one tab of {mm(LEAST_TAB)} fits: make both panels longer there, or use joint: butt",
        place=treatment.place,
        value=long,
        limit=thickness,
    )
    return (found,)


def _refused(shape: Shape, plan: PartPlan) -> Iterator[Finding]:
    """Find treatments of edges that the shape does not have, that are curved, or bevels that no knife can cut."""
    names = [edge.name for edge in shape.edges]
    for treatment in plan.treatments:
        edge = next((e for e in shape.edges if e.name == treatment.edge), None)
        if edge is None:
            message = f"part “{plan.id}” ({plan.shape or 'a drawing'}) has no edge “{treatment.edge}”"
            hint = known_words_hint(treatment.edge, names) if names else "only registered shapes have edges to join"
            yield UNKNOWN_EDGE.found(message, subject=f"part {plan.id}", hint=hint, place=treatment.place)
        elif edge.centre is not None:
            message = f"the edge “{edge.name}” of part “{plan.id}” is an arc; joins need a straight edge"
            yield CURVED_EDGE.found(
                message, subject=f"part {plan.id}", hint="join at a straight edge", place=treatment.place
            )
        elif not abs(treatment.bevel) <= STEEPEST_BEVEL:
            yield LOST_EDGE.found(
                f"the edge “{edge.name}” of part “{plan.id}” would be bevelled by {deg(treatment.bevel)} from square",
                subject=f"part {plan.id}",
                hint=f"a bevel can be cut up to {deg(STEEPEST_BEVEL)}: check the corner angle of the join",
                place=treatment.place,
                value=treatment.bevel,
                limit=STEEPEST_BEVEL,
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
        joined=any(t.lines or t.laps for t in treatments),
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


def _onto(points: tuple[Point, Point], edge: Edge) -> tuple[Point, Point]:
    """Drop two points square onto the finished edge's line."""
    (x, y), _ = frame_of(edge.start, edge.end)
    sx, sy = edge.start

    def drop(p: Point) -> Point:
        at = (p[0] - sx) * x + (p[1] - sy) * y
        return (sx + x * at, sy + y * at)

    return drop(points[0]), drop(points[1])


def _tabs(edge: Edge, row: TabRow, reach: Reach) -> Iterator[Bump]:
    _, inward = frame_of(edge.start, edge.end)
    ends = stretches((edge.nominal_start, edge.nominal_end), row.count, 0.0, reach)
    for i, pair in enumerate(ends):
        what = f"tab {i + 1} of the edge “{edge.name}”"
        yield box_bump(edge.name, f"{edge.name}.tab", what, _onto(pair, edge), inward, -row.depth)


def _notches(edge: Edge, row: SlotRow, taken: float, reach: Reach) -> Iterator[Bump]:
    """Yield open notches: mate + play/2 deep from the nominal edge, less what the edge itself has moved."""
    _, inward = frame_of(edge.start, edge.end)
    ends = stretches((edge.nominal_start, edge.nominal_end), row.count, row.play, reach)
    for i, pair in enumerate(ends):
        what = f"notch {i + 1} of the edge “{edge.name}”"
        depth = row.mate + row.play / 2.0 - taken
        if depth > SAME_POINT:
            yield box_bump(edge.name, f"{edge.name}.slot", what, _onto(pair, edge), inward, depth)


def _slots(edge: Edge, row: SlotRow, line: tuple[Point, Point], reach: Reach) -> Iterator[Slot]:
    """Yield closed slots from inset − play/2 to inset + mate + play/2 mm from the nominal edge."""
    _, (nx, ny) = frame_of(edge.nominal_start, edge.nominal_end)
    near, far = -row.play / 2.0, row.mate + row.play / 2.0
    for i, ((ax, ay), (bx, by)) in enumerate(stretches(line, row.count, row.play, reach)):
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
