"""Needs that the design does not meet."""

from publisher.basics import Check, Outcome, Severity
from publisher.joints.assembled import Assembled
from publisher.joints.facts import hint_of, message_of, same_kind, shortfall


def run(subject: Assembled, check: Check[Assembled]) -> Outcome:
    """Hold every need against its fact."""
    found = []
    for need in subject.design.needs:
        fact = subject.fact(need.fact)
        short = shortfall(need, fact) if fact is not None and same_kind(need, fact) else None
        if short is not None:
            found.append(
                check.found(
                    message_of(short),
                    subject=need.fact,
                    hint=hint_of(short, subject.design),
                    place=need.place,
                    value=short.fact.value,
                    limit=short.limit,
                )
            )
    return Outcome(len(subject.design.needs), tuple(found))


CHECK = Check(
    "joints/need-not-met",
    "The designer's needs are met",
    "what the designer said must hold does not hold with these sizes",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
