"""Needs that the design does not meet."""

from publisher.basics import Check, Findings, checked
from publisher.joints.assembled import Assembled
from publisher.joints.facts import hint_of, message_of, same_kind, shortfall


@checked(
    "joints/need-not-met",
    "The designer's needs are met",
    "what the designer said must hold does not hold with these sizes",
    may_be_empty=True,
)
def need_not_met(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Hold every need against its fact."""
    for need in subject.design.needs:
        fact = subject.fact(need.fact)
        short = shortfall(need, fact) if fact is not None and same_kind(need, fact) else None
        if short is not None:
            yield check.found(
                message_of(short),
                subject=need.fact,
                hint=hint_of(short, subject.design),
                place=need.place,
                value=short.fact.value,
                limit=short.limit,
            )
    return len(subject.design.needs)
