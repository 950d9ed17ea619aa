"""Joins turned into edge treatments, by part and edge name: what each edge gains and loses."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace

from publisher.basics import Place
from publisher.basics.wording import say_mm, trimmed
from publisher.design.language import Scope
from publisher.design.parts import KnownParts
from publisher.design.records import (
    EdgeRef,
    EdgeTreatment,
    Join,
    JointLine,
    LapSlot,
    PanelPlan,
    Rabbet,
    SlotRow,
    TabRow,
)
from publisher.design.rules import plans as rules

_What = tuple[
    float, float, TabRow | None, tuple[SlotRow, ...], tuple[tuple[float, float, float], ...], Rabbet | None, float, bool
]


@dataclass(slots=True)
class _Spot:
    """A place of an assembly with the treatments of its edges."""

    assembly: str
    name: str
    part: str
    place: Place
    edges: dict[str, EdgeTreatment] = field(default_factory=dict)

    def add(self, treatment: EdgeTreatment) -> None:
        """Lay one join's treatment over those of earlier joins at the same edge."""
        before = self.edges.get(treatment.edge)
        if before is not None:
            treatment = EdgeTreatment(
                edge=treatment.edge,
                take_off=max(before.take_off, treatment.take_off),
                bevel=before.bevel or treatment.bevel,
                tabs=before.tabs or treatment.tabs,
                slots=tuple(sorted((*before.slots, *treatment.slots), key=_by_inset)),
                matches=(*before.matches, *treatment.matches),
                place=before.place,
                lines=(*before.lines, *treatment.lines),
                laps=tuple(sorted((*before.laps, *treatment.laps), key=_by_place)),
                rabbet=before.rabbet or treatment.rabbet,
                as_shaped=before.as_shaped and treatment.as_shaped,
                slant=before.slant or treatment.slant,
                to_slope=before.to_slope or treatment.to_slope,
            )
        self.edges[treatment.edge] = treatment


def _by_inset(row: SlotRow) -> tuple[float, int, float, float]:
    return (row.inset, row.count, row.mate, row.play)


def _by_place(lap: LapSlot) -> tuple[float, float, float]:
    return (lap.at, lap.mate, lap.play)


def treat(
    plans: tuple[PanelPlan, ...], complete: tuple[str, ...], known: KnownParts, scope: Scope
) -> dict[str, tuple[EdgeTreatment, ...]]:
    """Return the treatments of each part's edges. Places of one part that are joined differently are findings.

    Places are compared within the assemblies that are ``complete``: elsewhere a join is missing that has its own finding.
    """
    spots_by_part: dict[str, list[_Spot]] = defaultdict(list)
    for plan in plans:
        spots = {p.name: _Spot(plan.name, p.name, p.part, p.place) for p in plan.places}
        for join in plan.joins:
            _treat_join(join, spots, known)
        for seat in plan.seats:
            if seat.slope is not None:
                cut = EdgeTreatment(seat.edge, 0.0, seat.bevel, None, (), (), seat.place, slant=seat.slant)
                spots[seat.panel].add(cut)
        for rest in plan.rests:
            for ref in rest.cut_to_slope:
                spots[ref.panel].add(EdgeTreatment(ref.edge, 0.0, 0.0, None, (), (), rest.place, to_slope=True))
        for spot in spots.values():
            spots_by_part[spot.part].append(spot)
    return {part: _merge(part, spots, complete, scope) for part, spots in spots_by_part.items()}


def _treat_join(join: Join, spots: dict[str, _Spot], known: KnownParts) -> None:
    """Give both edges what the joint asks for."""
    a, b = spots[join.a.panel], spots[join.b.panel]
    a_thick, b_thick = known.thickness(a.part), known.thickness(b.part)
    if join.at is not None:
        a.add(_crossed(join.a, join, LapSlot(join.at[0], b_thick, join.play, _letters(join))))
        b.add(_crossed(join.b, join, LapSlot(join.at[1], a_thick, join.play, _letters(join))))
        return
    a_edge = _plain(join.a, join, JointLine(join.inset, b_thick, _letters(join)))
    b_edge = _plain(join.b, join, JointLine(0.0, a_thick, _letters(join), forward=False))
    if join.joint in ("mitre", "fold"):  # a V-groove has the same two slopes
        bevel = (180.0 - join.corner) / 2.0
        a_edge, b_edge = (replace(edge, bevel=bevel, as_shaped=join.unsaid) for edge in (a_edge, b_edge))
    elif join.joint == "butt":
        b_edge = replace(b_edge, take_off=a_thick)
    elif join.joint == "rabbet":
        board = known.board(a.part)
        paper = board.paper if board else 0.0
        a_edge = replace(a_edge, rabbet=Rabbet(b_thick, paper))
        b_edge = replace(b_edge, take_off=paper)
    else:
        a_edge = replace(a_edge, slots=(SlotRow(join.tabs, join.inset, b_thick, join.play),))
        b_edge = replace(b_edge, take_off=a_thick, tabs=TabRow(join.tabs, a_thick))
    a.add(a_edge)
    b.add(b_edge)


def _letters(join: Join) -> tuple[str, ...]:
    return (join.match,) if join.match else ()


def _plain(ref: EdgeRef, join: Join, line: JointLine) -> EdgeTreatment:
    return EdgeTreatment(ref.edge, 0.0, 0.0, None, (), _letters(join), join.place, (line,))


def _crossed(ref: EdgeRef, join: Join, lap: LapSlot) -> EdgeTreatment:
    return EdgeTreatment(ref.edge, 0.0, 0.0, None, (), lap.matches, join.place, (), (lap,))


def _merge(part: str, spots: list[_Spot], complete: tuple[str, ...], scope: Scope) -> tuple[EdgeTreatment, ...]:
    """One set of treatments for a part: all its places must agree but for their matching letters."""
    edges = list(dict.fromkeys(edge for spot in spots for edge in spot.edges))
    first, *others = [spot for spot in spots if spot.assembly in complete] or spots[:1]
    for edge in edges:
        unlike = next((other for other in others if _what(first, edge) != _what(other, edge)), None)
        if unlike is not None:
            _refuse(part, edge, first, unlike, scope)
    return tuple(_lettered([spot.edges[edge] for spot in spots if edge in spot.edges]) for edge in edges)


def _lettered(alike: Sequence[EdgeTreatment]) -> EdgeTreatment:
    """Return treatments of one edge at several places, which are alike, as one with the matching letters of all."""
    matches = _in_order(match for treatment in alike for match in treatment.matches)
    lines = _gathered([line for treatment in alike for line in treatment.lines])
    laps = tuple(
        replace(lap, matches=_in_order(m for own in alike for other in own.laps[i : i + 1] for m in other.matches))
        for i, lap in enumerate(alike[0].laps)
    )
    return replace(alike[0], matches=matches, lines=lines, laps=laps)


def _in_order(letters: Iterable[str]) -> tuple[str, ...]:
    """Return each letter once: a … z, aa …"""
    return tuple(sorted(set(letters), key=lambda match: (len(match), match)))


def _gathered(lines: Sequence[JointLine]) -> tuple[JointLine, ...]:
    """Return one line for all joins that lie at it, with their letters in order; the nearest to the edge first."""
    at: dict[tuple[float, float], list[JointLine]] = defaultdict(list)
    for line in lines:
        # what stands on the edge itself may be of any board; rounded as in _what
        at[round(line.inset, 6), round(line.mate, 6) if line.inset else 0.0].append(line)
    return tuple(
        replace(own[0], matches=_in_order(match for line in own for match in line.matches))
        for _, own in sorted(at.items())
    )


def _what(spot: _Spot, edge: str) -> _What:
    treatment = spot.edges.get(edge)
    if treatment is None:
        return (0.0, 0.0, None, (), (), None, 0.0, False)
    # rounded to a millionth: 480 - 470 and 10.0 are one length, whatever binary fractions make of them
    rows = tuple(SlotRow(s.count, round(s.inset, 6), round(s.mate, 6), round(s.play, 6)) for s in treatment.slots)
    tabs = treatment.tabs and TabRow(treatment.tabs.count, round(treatment.tabs.depth, 6))
    laps = tuple((round(lap.at, 6), round(lap.mate, 6), round(lap.play, 6)) for lap in treatment.laps)
    rabbet = treatment.rabbet and Rabbet(round(treatment.rabbet.width, 6), round(treatment.rabbet.paper, 6))
    return (
        round(treatment.take_off, 6),
        round(treatment.bevel, 6),
        tabs,
        rows,
        laps,
        rabbet,
        round(treatment.slant, 6),
        treatment.to_slope,
    )


def _refuse(part: str, edge: str, first: _Spot, other: _Spot, scope: Scope) -> None:
    written = other.edges.get(edge) or first.edges.get(edge)
    scope.findings.append(
        rules.PLACES_DIFFER.found(
            f"the places {first.name} and {other.name} of the part {part} are joined differently at the edge {edge}: "
            f"{first.name} {_words(_what(first, edge))}, {other.name} {_words(_what(other, edge))}",
            subject=f"part {part}",
            hint="join both places alike, or make them two parts",
            place=written.place if written else other.place,
        )
    )


def _words(what: _What) -> str:
    take_off, bevel, tabs, slots, laps, rabbet, slant, to_slope = what
    said = []
    if tabs is not None:
        said.append(f"has {tabs.count} tabs {say_mm(tabs.depth)} deep")
    elif take_off:
        said.append(f"is {say_mm(take_off)} shorter")
    if slant:
        said.append(f"is cut to a slope of {trimmed(slant, 2)}°")
    if to_slope:
        said.append("is cut to the slope of what rests on it")
    if bevel:
        said.append(f"is bevelled by {trimmed(bevel, 2)}°")
    said.extend(f"has {row.count} slots {say_mm(row.inset)} from the edge" for row in slots)
    said.extend(f"is crossed {say_mm(at)} from its left end" for at, _, _ in laps)
    if rabbet:
        said.append(f"has a rabbet {say_mm(rabbet.width)} wide")
    return " and ".join(said) or "has nothing there"
