"""Slots that leave too little board beside them."""

from collections.abc import Sequence
from functools import partial
from itertools import pairwise
from math import inf

import shapely

from publisher.basics import Check, Findings, Severity, checked
from publisher.basics.wording import lengths_apart
from publisher.design import Join
from publisher.geometry import Part
from publisher.joints.assembled import Assembled
from publisher.joints.facts import beside, slots_of
from publisher.joints.least_sizes import TAB, least
from publisher.joints.panels import slots_of_join


@checked(
    "joints/slot-too-close-to-edge",
    "Slots keep board around them",
    "foam narrower than it is thick tears out beside a slot (common practice, no source)",
    Severity.WARNING,
    may_be_empty=True,
)
def slot_too_close_to_edge(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Measure from every closed slot to the outline and to every other hole."""
    looked_at = 0
    for part in subject.parts:
        slots = slots_of(part)
        looked_at += len(slots)
        least = min((beside(part, slot) for slot in slots), default=part.thickness)
        if least < part.thickness - 1e-6:
            left, thick = lengths_apart(least, part.thickness)
            yield check.found(
                f"a slot of part {part.letter} ({part.name}) leaves {left} of board beside it, less than the board is thick ({thick})",
                subject=part.id,
                hint=f"move the slot away from the edge or opening, {_fewer(subject, part)}or make it an open notch (inset: 0 mm)",
                place=part.place,
                value=least,
                limit=part.thickness,
            )
    return looked_at


def _fewer(subject: Assembled, part: Part) -> str:
    """Say how many tabs would leave their slots as much board as it is thick: the most of those that were tried and do."""
    slots = slots_of(part)
    holes = (hole for hole in part.outline.holes if hole not in slots)
    lines = [shapely.LinearRing(ring.points) for ring in (part.outline.outer, *holes)]
    shortest = least(TAB, subject.design.board(part.board))
    for mated in subject.panels:
        part_at = {panel.name: panel.part for panel in mated.assembly.panels}
        for join in mated.assembly.plan.joins:
            if join.joint != "tab_and_slot" or part_at.get(join.a.panel) is not part or join.inset == 0.0:
                continue
            holds = partial(_holds, join, part_at, lines, shortest)
            if not holds(join.tabs):
                fits = next((n for n in range(join.tabs - 1, 0, -1) if holds(n)), 0)
                return f"say tabs: {fits} (that many fit between {join.a} and {join.b}), " if fits else ""
    return ""


def _holds(
    join: Join, part_at: dict[str, Part], lines: Sequence[shapely.LinearRing], shortest: float, count: int
) -> bool:
    """Tell whether the slots of so many tabs keep board as wide as it is thick from these lines and between them, with tabs long
    enough."""
    slots, thickness = slots_of_join(part_at, join, count), part_at[join.a.panel].thickness
    if not slots or any(float(slot.distance(line)) < thickness - 1e-6 for slot in slots for line in lines):
        return False
    between = min((float(a.distance(b)) for a, b in pairwise(slots)), default=inf)
    long = max(float(slot.length) / 2.0 - part_at[join.b.panel].thickness for slot in slots)
    return between >= thickness and long >= shortest
