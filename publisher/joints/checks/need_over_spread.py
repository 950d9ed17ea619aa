"""Needs that bind over the whole spread of board, and not only at its measured thickness."""

from publisher.basics import Check, Findings, checked
from publisher.joints.assembled import Assembled
from publisher.joints.facts import message_of as words_of
from publisher.joints.facts import shortfall, spread_ends


@checked(
    "joints/need-over-spread",
    "A need that binds over the spread of board holds at both of its ends",
    "layers of one batch are all thick or all thin: twenty of them, each 0.2 mm off, are 4 mm off together",
    may_be_empty=True,
)
def need_over_spread(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Hold every such need against both ends of its fact."""
    needs = [need for need in subject.design.needs if need.over == "spread"]
    for need in needs:
        fact = subject.fact(need.fact)
        if fact is None or shortfall(need, fact) is not None:
            continue  # told by other checks
        ends = spread_ends(need.fact, subject.facts)
        if not ends:
            yield check.found(
                f"{need.fact} is not so many boards high: nothing is known of its spread",
                subject=need.fact,
                hint="leave “over” out, or name the height, climb or headroom of a stack",
                place=need.place,
            )
            continue
        short = next((short for end in ends if (short := shortfall(need, end)) is not None), None)
        if short is not None:
            yield check.found(
                f"over the spread of the board, {words_of(short)}",
                subject=need.fact,
                hint="write the spread that your own boards have, take the layers from mixed boards, or widen the limit; "
                "left out, “over” judges at the measured thickness and the pack says how to cure a pile that is off",
                place=need.place,
                value=short.fact.value,
                limit=short.limit,
            )
    return len(needs)
