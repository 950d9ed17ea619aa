"""Needs that cannot both be met."""

from publisher.basics import Check, Findings, checked
from publisher.joints.assembled import Assembled
from publisher.joints.facts import NEED_CLOSE, limit_of


@checked(
    "joints/needs-contradict",
    "Needs do not contradict each other",
    "when two needs exclude each other no size can help, and the designer must choose",
    may_be_empty=True,
)
def needs_contradict(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Compare every two needs that limit one fact. (Needs that pull one size both ways are found when it is solved for.)"""
    needs = subject.design.needs
    for at, need in enumerate(needs):
        for other in needs[:at]:
            if other.fact != need.fact or other.kind != need.kind:
                continue
            for low, high in ((need, other), (other, need)):
                if low.at_least is None or high.at_most is None or low.at_least <= high.at_most + NEED_CLOSE:
                    continue
                yield check.found(
                    f"{need.fact} is to be {limit_of(need)} here and {limit_of(other)} at {other.place}: nothing is both",
                    subject=need.fact,
                    hint="change or remove one of the two needs",
                    place=need.place,
                    value=low.at_least,
                    limit=high.at_most,
                )
    return len(needs)
