"""Joints of neighbouring courses that stand nearly over each other."""

from publisher.basics import Check, Outcome, Severity
from publisher.design import say_length
from publisher.joints.subject import Assembled

RUNNING_BOND = 0.25
"""Share of the unit's length. Definition of running bond in TMS 402 (Building Code Requirements for Masonry Structures):
head joints in successive courses are offset by at least one quarter of the unit length."""


ROUNDING = 0.001
"""Of a unit: arcs are flattened before lengths along them are taken."""


def run(subject: Assembled, check: Check[Assembled]) -> Outcome:
    """Look at every pair of neighbouring courses; say once per stack which pairs are in line."""
    looked_at, found = 0, []
    for report in subject.stacks:
        looked_at += len(report.staggers)
        layers = report.stack.layers
        bad = [s for s in report.staggers if s.share < RUNNING_BOND - ROUNDING]
        if not bad:
            continue
        worst = min(bad, key=lambda s: s.share)
        first, last = layers[bad[0].lower].number, layers[bad[-1].lower].number
        which = (
            f"layers {first} and {first + 1}" if len(bad) == 1 else f"neighbouring layers from {first} to {last + 1}"
        )
        found.append(
            check.found(
                f"the joints of {which} stand nearly over each other: {worst.share:.2f} of a unit apart at the closest "
                f"(a unit is {say_length(worst.unit)}); at least {RUNNING_BOND} breaks joint",
                subject=report.stack.name,
                hint="change the number of joints so that a turn is not a whole number of units; a turn of so many units "
                "and a half is best",
                place=report.place,
                value=worst.share,
                limit=RUNNING_BOND,
            )
        )
    return Outcome(looked_at, tuple(found))


CHECK = Check(
    "joints/straight-joint",
    "Joints of neighbouring courses are staggered",
    "a joint over a joint looks wrong and is weak; running bond offsets them by at least a quarter of the unit (TMS 402)",
    Severity.WARNING,
    run=run,
    may_be_empty=True,
)
