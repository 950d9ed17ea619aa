"""Fits: things that go into rooms of parts and assemblies: dowels, magnets, parts that slide or lift off."""

from collections.abc import Iterable

from publisher.basics.wording import say_length, say_mm
from publisher.brief import Table, Value
from publisher.design.language import Scope
from publisher.design.offer.needs import known_owner
from publisher.design.records import FitPlan
from publisher.design.rules import plans as rules


def read_fits(nodes: Iterable[object], owners: tuple[str, ...], scope: Scope) -> tuple[FitPlan, ...]:
    """Return the fits whose measures can be; findings for the others. ``owners``: the parts and assemblies that facts start with."""
    plans = [_fit(node, owners, scope) for node in nodes if isinstance(node, Table)]
    return tuple(plan for plan in plans if plan is not None)


def _fit(table: Table, owners: tuple[str, ...], scope: Scope) -> FitPlan | None:
    into, goes = table.value("into"), table.value("goes")
    if into is None or goes is None:
        return None  # the schema has said so
    subject = f"fit {into.text.strip()}"
    before = len(scope.findings)
    known_owner(into, owners, scope, subject)
    fact = goes.text.strip() if "." in goes.text and not goes.text.strip()[0].isdigit() else ""
    if fact:
        known_owner(goes, owners, scope, subject)
    wide = None if fact else _width(goes, scope, subject)
    spread, paint = (_measure(table, key, scope, subject) for key in ("spread", "paint"))
    loosest = _measure(table, "loosest", scope, subject) if table.value("loosest") else None
    if fact and spread:
        hint = "leave spread out: the spread of board is said with the board, and what is printed has none"
        _refuse("spread is that of a thing on the table, and a part of this design goes in", hint, goes, scope, subject)
    if len(scope.findings) > before:
        return None
    name = table.text("name") or (fact or say_length(wide or 0.0))
    return FitPlan(name, into.text.strip(), wide, fact, spread, paint, loosest, table.place)


def _width(goes: Value, scope: Scope, subject: str) -> float | None:
    """Return how wide the thing is that goes in; None, with a finding, where it cannot be told."""
    wide = scope.number(goes, subject, "length")
    if wide is not None and wide <= 0.0:
        hint = "write its width or diameter as measured"
        _refuse(f"what goes in is {say_mm(wide)} wide", hint, goes, scope, subject)
    return wide


def _measure(table: Table, key: str, scope: Scope, subject: str) -> float:
    value = table.value(key)
    measure = None if value is None else scope.number(value, subject, "length")
    if value is None or measure is None:
        return 0.0
    if measure < 0.0:
        _refuse(f"{key} is {say_mm(measure)}", "write a length of 0 or more", value, scope, subject)
    return measure


def _refuse(message: str, hint: str, value: Value, scope: Scope, subject: str) -> None:
    scope.findings.append(rules.FIT_MEASURE.found(message, subject=subject, hint=hint, place=value.place))
