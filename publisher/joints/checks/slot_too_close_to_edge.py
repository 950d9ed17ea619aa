"""Slots that leave too little board beside them."""

from publisher.basics import Check, Outcome, Severity
from publisher.basics.wording import say_length
from publisher.joints.assembled import Assembled
from publisher.joints.facts import beside, slots_of


def run(subject: Assembled, check: Check[Assembled]) -> Outcome:
    """Measure from every closed slot to the outline and to every other hole."""
    looked_at, found = 0, []
    for part in subject.parts:
        slots = slots_of(part)
        looked_at += len(slots)
        least = min((beside(part, slot) for slot in slots), default=part.thickness)
        if least < part.thickness - 1e-6:
            found.append(
                check.found(
                    f"a slot of part {part.letter} ({part.name}) leaves {say_length(least)} of board beside it, "
                    f"less than the board is thick ({say_length(part.thickness)})",
                    subject=part.id,
                    hint="move the slot away from the edge or opening, use fewer tabs, or make it an open notch (inset: 0 mm)",
                    place=part.place,
                    value=least,
                    limit=part.thickness,
                )
            )
    return Outcome(looked_at, tuple(found))


CHECK = Check(
    "joints/slot-too-close-to-edge",
    "Slots keep board around them",
    "foam narrower than it is thick tears out beside a slot (common practice, no source)",
    Severity.WARNING,
    run=run,
    may_be_empty=True,
)
