"""Knee braces of stacks, and the sizes at which a design meets other packs."""

from publisher.basics.wording import say_mm
from publisher.brief import Table, Value
from publisher.design.language import Scope, read_count
from publisher.design.records import Blank, BracePlan, MeetPlan
from publisher.design.rules import plans as rules

MOST_STEPS = 400


def read_brace(table: Table, scope: Scope, assembly: str) -> BracePlan | None:
    """Return the braces of a stack assembly, or None when it has none or they have no size."""
    if not table.entries:
        return None
    subject = f"assembly {assembly}"
    run, drop = (_side(table, key, scope, subject) for key in ("run", "drop"))
    numbers = [
        read_count(node, 0, 1, MOST_STEPS, "the number of a step", scope, subject)
        for node in table.row("under")
        if isinstance(node, Value)
    ]
    under = tuple(sorted({number for number in numbers if number}))
    if run is None or drop is None or 0 in numbers:
        return None
    weak = table.text("under") == "weak"
    return BracePlan(run, drop, under, weak, table.place, f"{assembly}_brace", table.text("board"))


def _side(table: Table, key: str, scope: Scope, subject: str) -> float | None:
    value = table.value(key)
    side = None if value is None else scope.number(value, subject, "length")
    if value is None or side is None or side > 0:
        return side
    scope.findings.append(
        rules.BRACE.found(
            f"the {key} of a knee brace is {say_mm(side)}",
            subject=subject,
            hint="write a length of more than 0",
            place=value.place,
            value=side,
            limit=0.0,
        )
    )
    return None


def read_meets(table: Table) -> tuple[MeetPlan, ...]:
    """Return the sizes at which the design meets other packs; they are worked out when the facts are known."""
    return tuple(
        MeetPlan(entry.key, Blank(entry.node.text.strip(), entry.node.place), entry.place)
        for entry in table.entries
        if isinstance(entry.node, Value)
    )
