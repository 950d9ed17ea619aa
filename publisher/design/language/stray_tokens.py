"""Words for a token that does not fit where it stands: what it is likely to be, and what to write."""

from publisher.basics.wording import nearest
from publisher.design.language.lexer import Fault, Token
from publisher.design.language.units import LIKELY_UNITS, LONG_UNITS, UNIT_BY_NAME, unit_names
from publisher.design.rules import expressions as rules


def misplaced(token: Token, before: Token | None) -> Fault:
    """Return the fault for a token that cannot follow ``before`` (None at the start)."""
    after_number = before is not None and before.kind == "literal"
    if token.kind == "end":
        message, hint = "the expression ends too early", "a number or a size is missing at the end"
    elif token.text == "," and after_number:
        message, hint = "a comma stands here", "decimals are written with a point: 7.5"
    elif token.kind == "name" and before is not None and after_number:
        return _stray_unit(token, before)
    elif token.kind == "name" and token.text in UNIT_BY_NAME:
        message, hint = f"the unit {token.text} does not follow a number", f"multiply by it: * 1 {token.text}"
    elif token.text == ")":
        message, hint = "this bracket was never opened, or is empty", "remove it, or add ("
    elif token.kind == "mark":
        message, hint = f"“{token.text}” does not fit here", "a number or a size is missing before it"
    else:
        message, hint = f"“{token.text}” does not fit here", "an operator is missing: + - * / ^"
    return Fault(rules.SYNTAX, message, hint, token.start)


def _stray_unit(token: Token, before: Token) -> Fault:
    small = token.text.lower()
    likely = small if small in UNIT_BY_NAME and small != token.text else LIKELY_UNITS.get(small)
    if likely:
        hint = f"write {likely}"
    elif small in UNIT_BY_NAME:
        hint = "a number has one unit; an operator is missing: + - * / ^"
    elif small not in LONG_UNITS and (near := nearest(small, [*UNIT_BY_NAME, *LIKELY_UNITS])):
        hint = f"did you mean “{LIKELY_UNITS.get(near, near)}”?"
    else:
        hint = f"units are {unit_names()}; to multiply, write {before.text} * {token.text}"
    return Fault(rules.UNKNOWN_UNIT, f"“{token.text}” follows a number but is no unit of it", hint, token.start)
