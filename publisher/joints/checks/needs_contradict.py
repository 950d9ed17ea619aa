"""Needs that cannot both be met."""

from publisher.basics import Check, Outcome, Severity
from publisher.joints.assembled import Assembled
from publisher.joints.facts import NEED_CLOSE, limit_of


def run(subject: Assembled, check: Check[Assembled]) -> Outcome:
    """Compare every two needs that limit one fact. (Needs that pull one size both ways are found when it is solved for.)"""
    needs = subject.design.needs
    found = []
    for at, need in enumerate(needs):
        for other in needs[:at]:
            if other.fact != need.fact or other.kind != need.kind:
                continue
            for low, high in ((need, other), (other, need)):
                if low.at_least is None or high.at_most is None or low.at_least <= high.at_most + NEED_CLOSE:
                    continue
                found.append(
                    check.found(
                        f"{need.fact} is to be {limit_of(need)} here and {limit_of(other)} at {other.place}: nothing is both",
                        subject=need.fact,
                        hint="change or remove one of the two needs",
                        place=need.place,
                        value=low.at_least,
                        limit=high.at_most,
                    )
                )
    return Outcome(len(needs), tuple(found))


CHECK = Check(
    "joints/needs-contradict",
    "Needs do not contradict each other",
    "when two needs exclude each other no size can help, and the designer must choose",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
