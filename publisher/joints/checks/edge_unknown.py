"""Edges that a panel assembly names and its parts do not have."""

from collections.abc import Iterator

from publisher.basics import Check, Findings, Place, checked
from publisher.basics.wording import did_you_mean, listed
from publisher.design import EdgeRef, PanelPlan
from publisher.joints.assembled import Assembled


@checked(
    "joints/edge-unknown",
    "Joins name edges that their parts have",
    "a slip in an edge's name would leave a panel without its place",
    may_be_empty=True,
)
def edge_unknown(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look up every edge that joins, rests and ``stands_on`` name, in the part at its place."""
    looked_at = 0
    parts = {part.id: part for part in subject.parts}
    for mated in subject.panels:
        plan = mated.assembly.plan
        part_at = {place.name: parts[place.part] for place in plan.places if place.part in parts}
        for ref, place in _refs(plan):
            part = part_at.get(ref.panel)
            if part is None:
                continue  # design or geometry has said why
            looked_at += 1
            if part.edge(ref.edge) is not None:
                continue
            known = [edge.name for edge in part.edges]
            yield check.found(
                f"{ref.panel} (part {part.letter}) has no edge “{ref.edge}”",
                subject=plan.name,
                hint=f"{did_you_mean(ref.edge, known)} it has: {listed(known)}".lstrip(),
                place=place,
            )
    return looked_at


def _refs(plan: PanelPlan) -> Iterator[tuple[EdgeRef, Place]]:
    if plan.stands_on.edge:
        yield plan.stands_on, plan.place
    for join in plan.joins:
        yield join.a, join.place
        yield join.b, join.place
    for seat in plan.seats:
        if seat.edge:
            yield EdgeRef(seat.panel, seat.edge), seat.place
    for lining in plan.linings:
        for ref in lining.along:
            yield ref, lining.place
    for rest in plan.rests:
        for ref in rest.on:
            yield ref, rest.place
