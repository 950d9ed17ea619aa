"""Words and numbers of an expression. A literal (number, n/m or w n/m, with its unit) is one token."""

import re
import unicodedata
from fractions import Fraction
from typing import Literal

from publisher.basics import Rule, record
from publisher.design.language.amounts import Amount
from publisher.design.language.units import LIKELY_UNITS, UNIT_BY_NAME
from publisher.design.rules import expressions as rules

LONGEST = 300  # letters
LARGEST_NUMBER = 1e9

#: w n/m or n/m without blanks at the stroke, or a decimal number; then the unit, if one follows.
_LITERAL = re.compile(
    r"(?:(?P<whole>[0-9]+)\s+)?(?P<top>[0-9]+)/(?P<bottom>[0-9]+)(?![0-9.])|(?P<decimal>[0-9]+(?:\.[0-9]*)?|\.[0-9]+)"
)
_UNIT = re.compile(r"\s*(?P<unit>" + "|".join(UNIT_BY_NAME) + r")(?![\w.])")
_NAME = re.compile(r"[^\W\d]\w*(?:\.[^\W\d]\w*)*")
_POWER_OF_TEN = re.compile(r"(?P<number>[0-9]+(?:\.[0-9]*)?|\.[0-9]+)[eE](?P<power>[+-]?[0-9]+)(?![\w.])")
_FRACTION_STROKE = "\N{FRACTION SLASH}"
_SIGN_OF_FRACTION = re.compile(r"(?:(?P<whole>[0-9]{1,9})\s*)?(?P<sign>[¼½¾⅐-⅞↉])")
MOST_DIGITS = 9  # of a power of ten, and of the number that is written out for it
_BLANKS = re.compile(r"\s+")
_SAME = {"−": "-", "–": "-", "×": "*", "·": "*", "÷": "/"}
_MARKS = frozenset("+-*/^(),")


class Fault(Exception):
    """Why an expression has no value: the rule, what was found, what to do, and the offset in the text.

    ``rule`` is None when the cause has been reported elsewhere (a size that has no value itself). ``cause`` as in findings.
    """

    def __init__(self, rule: Rule | None, message: str, hint: str, at: int, cause: str = "") -> None:
        """Keep the parts of the finding to be."""
        super().__init__(message)
        self.rule = rule
        self.message = message
        self.hint = hint
        self.at = at
        self.cause = cause


@record
class Token:
    """One word of an expression; ``start`` and ``end`` are offsets in the text."""

    kind: Literal["literal", "name", "mark", "end"]
    text: str
    start: int
    end: int
    amount: Amount | None = None


def read_tokens(text: str) -> tuple[Token, ...]:
    """Return the tokens of an expression, an ``end`` token last. Raises Fault for what is no word of the language."""
    if len(text) > LONGEST:
        raise Fault(
            rules.TOO_BIG,
            f"this expression has {len(text)} letters; at most {LONGEST} are read",
            "give parts of it names under sizes",
            0,
        )
    tokens: list[Token] = []
    at = 0
    while at < len(text):
        if blank := _BLANKS.match(text, at):
            at = blank.end()
            continue
        token = _read(text, at)
        tokens.append(token)
        at = token.end
    tokens.append(Token("end", "", len(text), len(text)))
    return tuple(tokens)


def read_literal(text: str) -> Amount | None:
    """Return the amount when the whole text is one literal, else None. Raises Fault for a number that cannot be."""
    stripped = text.strip()
    _refuse_foreign_number(stripped, 0)
    if _LITERAL.match(stripped):
        token = _literal(stripped, 0)
        if token.end == len(stripped):
            return token.amount
    return None


def _read(text: str, at: int) -> Token:
    _refuse_foreign_number(text, at)
    if _LITERAL.match(text, at):
        return _literal(text, at)
    if name := _NAME.match(text, at):
        return Token("name", name.group(), at, name.end())
    mark = _SAME.get(text[at], text[at])
    if mark == "*" and text.startswith("**", at):
        raise Fault(rules.SYNTAX, "“**” is not part of the language", "a power is written with ^: 2 ^ 3", at)
    if mark in _MARKS:
        return Token("mark", mark, at, at + 1)
    if unit := LIKELY_UNITS.get(text[at]):
        raise Fault(rules.UNKNOWN_UNIT, f"“{text[at]}” is not a unit here", f"write {unit}", at)
    shown = text[at] if text[at].isprintable() else f"U+{ord(text[at]):04X}"
    raise Fault(
        rules.SYNTAX,
        f"“{shown}” is not part of an expression",
        "an expression has numbers with units, names of sizes, + - * / ^ and brackets",
        at,
    )


def _refuse_foreign_number(text: str, at: int) -> None:
    """Raise Fault for a number in another way of writing, saying it in this one: 1e3 is 1000, 3½ is 3 1/2."""
    if found := _POWER_OF_TEN.match(text, at):
        number, power = Fraction(found["number"]), int(found["power"][:MOST_DIGITS])
        plain = (
            f"{float(number * Fraction(10) ** power):.12f}".rstrip("0").rstrip(".") if abs(power) < MOST_DIGITS else ""
        )
        hint = f"write {plain}" if plain.strip("0.") else "write the number out"
        raise Fault(rules.SYNTAX, f"“{found.group()}” is a power of ten in short", hint, at)
    if found := _SIGN_OF_FRACTION.match(text, at):
        sign, whole = found["sign"], int(found["whole"] or 0)
        over, under = unicodedata.normalize("NFKC", sign).split(_FRACTION_STROKE)
        if not (over and under):
            return  # a part of one, such as ⅟
        value, unit = whole + Fraction(int(over), int(under)), _UNIT.match(text, found.end())
        said = f" {unit['unit']}" if unit else ""
        ways = [f"{float(value):g}{said}"] if value * 10_000 % 1 == 0 else []
        ways.append(f"{f'{whole} ' if whole else ''}{over}/{under}{said}")
        raise Fault(rules.SYNTAX, f"“{found.group()}” has a fraction as one sign", f"write {' or '.join(ways)}", at)


def _literal(text: str, at: int) -> Token:
    found = _LITERAL.match(text, at)
    assert found is not None
    if found["decimal"]:
        value = Fraction(found["decimal"])
    else:
        if int(found["bottom"]) == 0:
            raise Fault(rules.NO_VALUE, f"{found.group()} divides by zero", "the number under the stroke is 0", at)
        value = int(found["whole"] or 0) + Fraction(int(found["top"]), int(found["bottom"]))
    if value > LARGEST_NUMBER:
        raise Fault(
            rules.NUMBER_RANGE, f"{found.group()} is more than {LARGEST_NUMBER:,.0f}", "write a smaller number", at
        )
    unit = _UNIT.match(text, found.end())
    if unit is None and found["decimal"] is None and not found["whole"] and text[at - 1 : at] == "/":
        n, m = found["top"], found["bottom"]
        raise Fault(
            rules.SYNTAX,
            f"“/{n}/{m}” can be read in two ways",
            f"write / ({n}/{m}) or / {n} / {m}, with blanks",
            at - 1,
        )
    if unit is None:
        return Token("literal", found.group(), at, found.end(), Amount(float(value)))
    meaning = UNIT_BY_NAME[unit["unit"]]
    # exact until the last step: 3/16 in is 4.7625 mm, and 3/16 * INCH_MM in floats is not
    scaled = float(value * meaning.factor)
    amount = Amount(scaled, mm=1) if meaning.measures == "length" else Amount(scaled, deg=1)
    return Token("literal", text[at : unit.end()], at, unit.end(), amount)
