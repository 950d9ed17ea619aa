"""What a field makes of an amount: a length, an angle, a whole number, a plain number."""

from publisher.design.language.amounts import Amount, Origin, is_whole
from publisher.design.language.lexer import Fault, read_literal
from publisher.design.rules import expressions as rules

_UNIT = {"length": "mm", "angle": "deg"}
_WANTED = {"length": "a length", "angle": "an angle", "count": "a whole number", "number": "a plain number"}


def settle(amount: Amount, kind: str, text: str) -> float:
    """Return the value of an amount, written as ``text``, in a field of this kind (mm, degrees or plain; others take anything).

    Raises Fault when the amount is of another kind. A plain number is no measure, but 0, which is 0 in every unit.
    """
    if kind not in _WANTED:
        return amount.value
    if kind in _UNIT:
        return _measure(amount, kind, text)
    if not amount.plain:
        raise Fault(
            rules.WRONG_KIND,
            f"{amount.words()} stands where {_WANTED[kind]} belongs",
            "leave the unit away, or divide by a length",
            0,
        )
    if kind == "count":
        if not is_whole(amount.value):
            raise Fault(
                rules.NOT_WHOLE,
                f"{amount.value:.10g} is not a whole number",
                "write a whole number, or say how to round it: round(…), floor(…), ceil(…)",
                0,
            )
        return float(round(amount.value))
    return amount.value


def _measure(amount: Amount, kind: str, text: str) -> float:
    if amount.kind() == kind:
        return amount.value
    if not amount.plain:
        raise Fault(
            rules.WRONG_KIND, f"{amount.words()} stands where {_WANTED[kind]} belongs", f"write it in {_UNIT[kind]}", 0
        )
    if amount.origin is not Origin.PLAIN:
        raise Fault(
            rules.RATIO_AS_SIZE,
            f"this is a ratio ({amount.value:.6g}), and {_WANTED[kind]} belongs here",
            f"a quotient never becomes {_UNIT[kind]}: multiply it by {_WANTED[kind]}",
            0,
        )
    if amount.value != 0.0:
        raise Fault(
            rules.NO_UNIT,
            f"a plain number stands where {_WANTED[kind]} belongs",
            unit_hint(text, amount.value, kind),
            0,
        )
    return 0.0


def unit_hint(text: str, value: float, kind: str) -> str:
    """Return how to write a plain number with the unit of a length or an angle; ``text`` is what it was written as."""
    units = ("mm", "in") if kind == "length" else ("deg",)
    try:
        literal = read_literal(text) is not None
    except Fault:
        literal = False
    if literal:
        return "write " + " or ".join(f"{text.strip()} {unit}" for unit in units)
    whose = "the size in it" if any(letter.isalpha() for letter in text) else "the numbers in it"
    return f"it comes out as {value:.6g}: give {whose} a unit, such as {' or '.join(f'{value:.6g} {unit}' for unit in units)}"
