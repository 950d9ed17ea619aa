"""Tabs that meet board where their slot should be."""

from publisher.basics import Check, Findings, checked
from publisher.joints.assembled import Assembled

MOST_MISS = 0.05
"""mm of board that a tab may meet: rounding."""


@checked(
    "joints/tab-misses-slot",
    "Tabs go into their slots",
    f"a tab that meets more than {MOST_MISS:g} mm of board cannot be pushed in",
    may_be_empty=True,
)
def tab_misses_slot(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Lay the section of every tab over the slotted panel, where both stand."""
    looked_at = 0
    for mated in subject.panels:
        for mating in mated.matings:
            if mating.tab_misses is None:
                continue
            looked_at += 1
            if mating.tab_misses > MOST_MISS:
                join = mating.join
                yield check.found(
                    f"the tabs of {join.b} do not go into the slots of {join.a}: board up to "
                    f"{mating.tab_misses:.2f} mm thick is in the way",
                    subject=mated.assembly.plan.name,
                    hint="tabs and slots must agree in number, place and size; check tabs, inset and play of this join, "
                    "and that the edges are equally long",
                    place=join.place,
                    value=mating.tab_misses,
                    limit=MOST_MISS,
                )
    return looked_at
