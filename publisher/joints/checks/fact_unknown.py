"""Needs of facts that this design does not have."""

from publisher.basics import Check, Findings, checked
from publisher.joints.assembled import Assembled
from publisher.joints.facts import nearest_fact


@checked(
    "joints/fact-unknown",
    "Needs name facts that there are",
    "a need that is held against nothing protects nobody",
    may_be_empty=True,
)
def fact_unknown(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look up the fact of every need."""
    for need in subject.design.needs:
        if subject.fact(need.fact) is None:
            near = nearest_fact(need.fact, subject.facts)
            own = [f.name for f in subject.facts if f.name.startswith(need.fact.partition(".")[0] + ".")]
            known = f"known facts: {', '.join(own)}" if own else "the part or assembly could not be made"
            yield check.found(
                f"there is no fact “{need.fact}” to hold this need against",
                subject=need.fact,
                hint=f"did you mean “{near}”?" if near else known,
                place=need.place,
            )
    return len(subject.design.needs)
