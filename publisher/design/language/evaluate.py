"""Working out an expression: a stack machine over the steps of the parser, with dimensions."""

from collections.abc import Callable
from dataclasses import replace
from math import isfinite

from publisher.basics import record
from publisher.design.language.amounts import Amount, Origin
from publisher.design.language.functions import FUNCTIONS, root
from publisher.design.language.lexer import LARGEST_NUMBER, Fault
from publisher.design.language.parser import Expression, Step
from publisher.design.rules import expressions as rules

MOST_EXPONENT = 16


@record
class _Held:
    """An amount on the stack and the stretch of text that it came from."""

    amount: Amount
    start: int
    end: int


def evaluate(expression: Expression, lookup: Callable[[str, int], Amount]) -> Amount:
    """Work out an expression. ``lookup`` gives a name's amount (name, offset) or raises Fault.

    Raises Fault for mixed kinds, for results that are not finite or beyond a thousand million, and for no value at all.
    """
    stack: list[_Held] = []
    for step in expression.steps:
        if step.amount is not None:
            stack.append(_Held(step.amount, step.at, step.end))
        elif step.is_name:
            stack.append(_Held(lookup(step.word, step.at), step.at, step.end))
        else:
            taken = stack[-step.takes :]
            del stack[-step.takes :]
            amount = _finite(_do(step, taken, expression.text), step)
            stack.append(_Held(amount, min(step.at, taken[0].start), taken[-1].end))
    result = stack[0].amount
    if abs(result.value) > LARGEST_NUMBER:
        raise Fault(rules.NUMBER_RANGE, f"this comes out as {result.value:.3g}, too large a number", "", 0)
    return result


def _do(step: Step, taken: list[_Held], text: str) -> Amount:
    match step.word:
        case "+" | "-":
            return _add(step, taken[0], taken[1], text)
        case "*":
            return _times(taken[0].amount, taken[1].amount, 1)
        case "/":
            if taken[1].amount.value == 0:
                raise Fault(
                    rules.NO_VALUE, "this divides by zero", f"“{text[taken[1].start : taken[1].end]}” is 0", step.at
                )
            return _times(taken[0].amount, taken[1].amount, -1)
        case "^":
            return _power(taken[0].amount, taken[1].amount, step.at)
        case "negative":
            return replace(taken[0].amount, value=-taken[0].amount.value)
        case name:
            return FUNCTIONS[name].run([held.amount for held in taken], name, step.at)


def _add(step: Step, left: _Held, right: _Held, text: str) -> Amount:
    a, b = left.amount, right.amount
    if a.dimension != b.dimension:
        plain = left if a.plain else right if b.plain else None
        joined = "plus" if step.word == "+" else "minus"
        hint = ""
        if plain is not None:
            hint = _unit_hint(plain, b if plain is left else a, text)
        raise Fault(rules.MIXED, f"{a.words()} {joined} {b.words()} says nothing", hint, step.at)
    value = a.value + b.value if step.word == "+" else a.value - b.value
    return replace(a, value=value, origin=max(a.origin, b.origin))


def _unit_hint(plain: _Held, other: Amount, text: str) -> str:
    unit = {"length": "mm", "angle": "deg"}.get(other.kind() or "")
    if unit is None:
        return "both sides must be of one kind"
    source = text[plain.start : plain.end]
    if plain.amount.origin is Origin.RATIO:
        return f"“{source}” is a ratio, not a measure: multiply it by {other.words()}"
    if source.replace(".", "", 1).isdigit() or ("/" in source and source.replace("/", "", 1).isdigit()):
        return f"write {source} {unit}"
    return f"write {source} * 1 {unit}, if {unit} are meant"


def _times(a: Amount, b: Amount, sign: int) -> Amount:
    value = a.value * b.value if sign > 0 else a.value / b.value
    mm, deg, grams, newtons = (one + sign * other for one, other in zip(a.dimension, b.dimension, strict=True))
    result = Amount(value, mm, deg, grams, newtons)
    origin = max(a.origin, b.origin)
    if result.plain and not (a.plain and b.plain):
        origin = Origin.RATIO
    return replace(result, origin=origin)


def _power(base: Amount, exponent: Amount, at: int) -> Amount:
    if not exponent.plain:
        raise Fault(rules.EXPONENT, f"the exponent is {exponent.words()}", "an exponent is a plain number: x ^ 2", at)
    doubled = exponent.value * 2
    if abs(exponent.value) > MOST_EXPONENT or doubled != round(doubled):
        raise Fault(
            rules.EXPONENT,
            f"the exponent {exponent.value:g} is not a whole or half number from -{MOST_EXPONENT} to {MOST_EXPONENT}",
            "",
            at,
        )
    if base.value == 0 and exponent.value < 0:
        raise Fault(rules.NO_VALUE, "zero to a negative power divides by zero", "", at)
    if base.value < 0 and doubled % 2:
        raise Fault(rules.NO_VALUE, "the root of a negative number has no value", f"it came out as {base.value:g}", at)
    half = int(doubled)
    if half % 2 and not base.plain:
        base, half = root(base, at), half * 2
    n = half // 2
    try:
        value = base.value ** (half / 2)
    except OverflowError:
        raise Fault(rules.NUMBER_RANGE, "this power is too large a number", "", at) from None
    origin = max(base.origin, exponent.origin)
    mm, deg, grams, newtons = (own * n for own in base.dimension)
    return Amount(float(value), mm, deg, grams, newtons, origin)


def _finite(amount: Amount, step: Step) -> Amount:
    if not isfinite(amount.value):
        raise Fault(rules.NUMBER_RANGE, "this comes out too large to work with", "", step.at)
    return amount
