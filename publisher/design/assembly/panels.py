"""Panel assemblies: places, the edge that stands on the table, joins and rests; and what contradicts itself in them."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import TypeVar

from publisher.basics import record
from publisher.basics.wording import mm_apart
from publisher.brief import Table, Value
from publisher.design.assembly.faces import check_seats, read_lining, read_seat
from publisher.design.assembly.joins import ANGLE_DUST, JoinReader
from publisher.design.assembly.neighbours import neighbours, reached
from publisher.design.language import Scope
from publisher.design.parts import KnownParts
from publisher.design.records import EdgeRef, FaceSeat, Join, Lining, PanelPlace, PanelPlan, Rest
from publisher.design.rules import plans as rules


@record
class ReadPanels:
    """A panel assembly as far as it could be read: ``plan`` is None when it stands on nothing known.

    ``complete``: every place and join could be read. Where one could not, what it would have held or matched is no fault.
    """

    places: tuple[PanelPlace, ...]
    plan: PanelPlan | None
    complete: bool


def read_panels(name: str, table: Table, known: KnownParts, scope: Scope) -> ReadPanels:
    """Return a panel assembly; findings for what cannot be read or contradicts itself."""
    subject = f"assembly {name}"
    said = [(e.key, e.node, e.place) for e in table.table("panels").entries if isinstance(e.node, Value)]
    places = tuple(PanelPlace(key, part.text, at) for key, part, at in said if known.has(part, scope, subject))
    held = {place.name for place in places}
    reader = JoinReader(name, places, known, scope, {key: part.text for key, part, _ in said if key not in held})
    stands_on = _foot(table, reader)
    read = [_row(node, reader) for node in table.row("joins") if isinstance(node, Table)]
    joins, rests, seats, linings = _of(Join, read), _of(Rest, read), _of(FaceSeat, read), _of(Lining, read)
    if table.text("corners") == "equal":
        joins = tuple(_with_equal_corners(joins, reader, table))
    if stands_on is None:
        return ReadPanels(places, None, False)
    plan = PanelPlan(name, places, stands_on, joins, rests, table.place, seats, linings)
    check_seats(plan, reader)
    _check_edges(plan, reader, known)
    _check_slopes(plan, reader)
    complete = len(read) - read.count(None) == len(table.row("joins")) and len(places) == len(
        table.table("panels").entries
    )
    if complete:
        _check_held(plan, reader)
    return ReadPanels(places, plan, complete)


def _foot(table: Table, reader: JoinReader) -> EdgeRef | None:
    """Return the edge that stands on the table, or the panel alone that lies there; None after a finding."""
    stands, lies = table.value("stands_on"), table.value("lies_on_table")
    if lies is None:
        return reader.edge(stands, table.place)
    if stands is not None:
        what = f"{stands.text} stands on the table, and {lies.text} lies on it"
        reader.refuse(
            rules.JOIN_OPTION,
            what,
            "say stands_on or lies_on_table: the other panels follow by their joins",
            lies.place,
        )
        return None
    if lies.text not in reader.parts:
        reader.refuse_place(lies.text, f"there is no place “{lies.text}” in this assembly", lies.place)
        return None
    return EdgeRef(lies.text, "")


SaidOfEdges = TypeVar("SaidOfEdges", Join, Rest, FaceSeat, Lining)


def _of(kind: type[SaidOfEdges], rows: Sequence[object]) -> tuple[SaidOfEdges, ...]:
    return tuple(row for row in rows if isinstance(row, kind))


def _row(node: Table, reader: JoinReader) -> Join | Rest | FaceSeat | Lining | None:
    """Return what one row of an assembly's joins says, by the word that only such rows have; None after a finding."""
    if node.get("bends_along") is not None:
        return read_lining(node, reader)
    if node.get("lies_on") is not None or node.get("stands_on") is not None:
        return read_seat(node, reader)
    return reader.join(node) if node.get("rests_on") is None else reader.rest(node)


def _with_equal_corners(joins: Sequence[Join], reader: JoinReader, table: Table) -> list[Join]:
    """Return the joins with 180 − 360/n degrees where a mitre without a corner is one of n that go round a ring."""
    corners = _ring_corners([join for join in joins if join.unsaid])
    for join in joins:
        if join.unsaid and join.a.panel not in corners:
            reader.refuse(
                rules.EQUAL_CORNERS,
                f"{join.a} – {join.b} is not one of the mitres of a closed ring, so that corners: equal gives it no angle",
                "write its corner, or join the panels round the ring to the first one again",
                join.place,
            )
    if not any(join.unsaid for join in joins):
        value = table.value("corners")
        reader.refuse(
            rules.EQUAL_CORNERS,
            "corners: equal, and no mitre whose corner is unsaid",
            "remove corners: equal, or the corners of the mitres round the ring",
            value.place if value else table.place,
        )
    return [
        replace(join, corner=corners[join.a.panel], unsaid=False) if join.unsaid and join.a.panel in corners else join
        for join in joins
    ]


def _ring_corners(mitres: Sequence[Join]) -> dict[str, float]:
    """Return the corner in degrees of each panel that mitres join to a closed ring."""
    near = neighbours((join.a.panel, join.b.panel) for join in mitres)
    corners: dict[str, float] = {}
    for panel in near:
        ring = reached(panel, near)
        if len(ring) > 2 and all(len(near[name]) == 2 for name in ring):
            corners[panel] = 180.0 - 360.0 / len(ring)
    return corners


def _check_edges(plan: PanelPlan, reader: JoinReader, known: KnownParts) -> None:
    """An edge meets one panel; or several along lines inside it that lie apart."""
    lines: dict[EdgeRef, list[tuple[float, float, Join]]] = defaultdict(list)
    laps: dict[EdgeRef, list[tuple[float, float, Join]]] = defaultdict(list)
    part_of = {place.name: place.part for place in plan.places}
    for join in plan.joins:
        if join.at is not None:
            for own, other, at in ((join.a, join.b, join.at[0]), (join.b, join.a, join.at[1])):
                half = (known.thickness(part_of[other.panel]) + join.play) / 2
                laps[own].append((at - half, at + half, join))
            continue
        mate = known.thickness(part_of[join.b.panel]) + join.play
        lines[join.a].append((join.inset, join.inset + mate, join))
        lines[join.b].append((0.0, 0.0, join))
    for edge, taken in lines.items():
        taken.sort(key=lambda line: line[0])
        for (start, end, first), (next_start, _, second) in pairwise(taken):
            if next_start >= end - ANGLE_DUST and not (start == end == next_start):
                continue
            later = max(first, second, key=lambda join: (join.place.line, join.place.column))
            hint = "each edge meets one panel; give further ones an inset of their own"
            if next_start > 0:
                lie, needed = mm_apart(next_start - start, end - start)
                hint = f"their lines lie {lie} apart; the board there needs {needed}"
            reader.refuse(rules.EDGE_TWICE, f"the edge {edge} is joined twice at the same place", hint, later.place)
    for edge, crossed in laps.items():
        crossed.sort(key=lambda slot: slot[:2])
        for (start, end, first), (next_start, next_end, second) in pairwise(crossed):
            if next_start < end - ANGLE_DUST:
                later = max(first, second, key=lambda join: (join.place.line, join.place.column))
                apart, wide = mm_apart(
                    (next_start + next_end - start - end) / 2, (end - start + next_end - next_start) / 2
                )
                hint = f"their middles lie {apart} apart; the slots there need more than {wide}"
                reader.refuse(rules.EDGE_TWICE, f"two panels cross at one place of {edge}", hint, later.place)


def _check_slopes(plan: PanelPlan, reader: JoinReader) -> None:
    """An edge that is cut to a slope is joined to nothing else: it has one bevel."""
    joined = {ref for join in plan.joins for ref in (join.a, join.b)}
    for rest in plan.rests:
        for ref in rest.cut_to_slope:
            if ref in joined:
                what = f"{ref} is cut to the slope of {rest.panel} and joined to another edge"
                reader.refuse(rules.EDGE_TWICE, what, "an edge meets one thing: remove one of both", rest.place)


def _check_held(plan: PanelPlan, reader: JoinReader) -> None:
    """Every place is reached from the one that stands on the table."""
    pairs = [(join.a.panel, join.b.panel) for join in plan.joins]
    pairs += [(rest.panel, edge.panel) for rest in plan.rests for edge in rest.on]
    pairs += [(seat.panel, seat.host) for seat in plan.seats]
    pairs += [(lining.panel, edge.panel) for lining in plan.linings for edge in lining.along]
    held = reached(plan.stands_on.panel, neighbours(pairs))
    for place in plan.places:
        if place.name not in held:
            message = f"nothing joins {place.name} to {plan.stands_on.panel}, which stands on the table"
            reader.refuse(rules.UNJOINED, message, "add a join, or say what it rests on", place.place)
