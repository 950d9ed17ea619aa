"""Needs whose limit is of another kind than their fact."""

from publisher.basics import Check, Findings, checked
from publisher.design import Kind
from publisher.joints.assembled import Assembled
from publisher.joints.facts import same_kind

WORDS: dict[Kind, str] = {
    "length": "a length",
    "angle": "an angle",
    "area": "an area",
    "mass": "a mass",
    "force": "a force",
    "count": "a plain number",
    "number": "a plain number",
    "ratio": "a plain number",
}
HOW: dict[Kind, str] = {
    "length": "write a length, such as 25 mm",
    "angle": "write an angle, such as 20 deg",
    "area": "write an area, such as 10 mm * 10 mm",
    "mass": "write a plain number of grams, such as 80",
    "force": "write a plain number of newtons, such as 0.5",
}


@checked(
    "joints/need-of-another-kind",
    "Needs compare like with like",
    "a length cannot be held against a plain number: nobody knows whether mm or inches were meant",
    may_be_empty=True,
)
def need_of_another_kind(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Compare the kinds of every need's limit and fact."""
    for need in subject.design.needs:
        fact = subject.fact(need.fact)
        if fact is not None and not same_kind(need, fact):
            yield check.found(
                f"{need.fact} is {WORDS[fact.kind]}, but this need's limit is {WORDS[need.kind]}",
                subject=need.fact,
                hint=HOW.get(fact.kind, "write a plain number, without a unit"),
                place=need.place,
            )
    return len(subject.design.needs)
