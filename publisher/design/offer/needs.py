"""Needs: limits on facts, and the sizes that may be changed to meet them."""

from collections.abc import Iterable
from typing import Literal

from publisher.brief import Table, Value
from publisher.design.language import Scope, pick_hint
from publisher.design.records import Kind, NeedPlan
from publisher.design.rules import plans as rules

_FACT_HINT = "the fact stands under fact; its limits are worked out from sizes"


def read_needs(nodes: Iterable[object], owners: tuple[str, ...], scope: Scope) -> tuple[NeedPlan, ...]:
    """Return the needs of a design. ``owners``: the parts and assemblies that facts start with."""
    limits = Scope(scope.sizes, scope.findings, fact_hint=_FACT_HINT)
    plans = [_need(node, owners, limits) for node in nodes if isinstance(node, Table)]
    return tuple(plan for plan in plans if plan is not None)


def _need(table: Table, owners: tuple[str, ...], scope: Scope) -> NeedPlan | None:
    named, fact = table.value("fact"), table.text("fact").strip()
    subject = f"need {fact}"
    if named is None or not known_owner(named, owners, scope, subject):
        return None
    least, least_kind = _limit(table.value("at_least"), scope, subject)
    most, most_kind = _limit(table.value("at_most"), scope, subject)
    if table.value("at_least") is None and table.value("at_most") is None:
        _refuse("this need has no limit", "say at_least: …, at_most: …, or both", table, scope, subject)
        return None
    if least_kind and most_kind and least_kind != most_kind:
        _refuse("at_least and at_most are of different kinds", "give both the same unit", table, scope, subject)
        return None
    if least is not None and most is not None and least > most:
        _refuse(
            f"at_least ({least:g}) is more than at_most ({most:g}): no size can meet both",
            "change one of them",
            table,
            scope,
            subject,
        )
        return None
    kind = least_kind or most_kind
    if kind is None:
        return None
    over: Literal["measured", "spread"] = "spread" if table.text("over") == "spread" else "measured"
    return NeedPlan(fact, least, most, kind, _adjust(table.value("adjust"), scope, subject), table.place, over)


def known_owner(value: Value, owners: tuple[str, ...], scope: Scope, subject: str) -> bool:
    """True when a fact is named after a part or an assembly; otherwise a finding says why not."""
    fact = value.text.strip()
    owner, dot, rest = fact.partition(".")
    if dot and rest and owner in owners:
        return True
    what = f"there is no part or assembly “{owner}”" if dot else f"“{fact}” is no fact"
    hint = pick_hint(owner, owners, "parts and assemblies") if dot else "facts are named part.fact or assembly.fact"
    cause = f"name {owner}" if dot else ""
    scope.findings.append(rules.UNKNOWN_FACT.found(what, subject=subject, hint=hint, place=value.place, cause=cause))
    return False


def _limit(value: Value | None, scope: Scope, subject: str) -> tuple[float | None, Kind | None]:
    amount = None if value is None else scope.amount(value, subject)
    if value is None or amount is None:
        return None, None
    kind = amount.kind()
    if kind is None:
        hint = "a limit is a length, an angle, an area or a plain number"
        scope.findings.append(
            rules.NEED_LIMIT.found(
                f"this limit comes out as {amount.words()}", subject=subject, hint=hint, place=value.place
            )
        )
        return None, None
    # whole or not is chance here: 7 and 7.5 are limits of one kind
    return amount.value, "number" if kind == "count" else kind


def _adjust(value: Value | None, scope: Scope, subject: str) -> str:
    if value is None or value.text in scope.sizes:
        return value.text if value else ""
    hint = pick_hint(value.text, scope.sizes, "sizes")
    scope.findings.append(
        rules.NEED_ADJUST.found(
            f"there is no size “{value.text}” to adjust", subject=subject, hint=hint, place=value.place
        )
    )
    return ""


def _refuse(message: str, hint: str, table: Table, scope: Scope, subject: str) -> None:
    scope.findings.append(rules.NEED_LIMIT.found(message, subject=subject, hint=hint, place=table.place))
