"""Texts with blanks: ``{expression}`` prints a size or a fact, ``{{`` and ``}}`` print braces."""

import re
from collections.abc import Iterable
from math import isfinite

from publisher.basics import Finding, gathered
from publisher.basics.wording import LengthUnit, Rounds, say_inches, say_length, say_mm
from publisher.brief import Value
from publisher.design.language import Amount, Fault, Scope, column_of, of_kind, parse, pick_hint, say
from publisher.design.records import Blank, Design, Fact, Quantity, TextPlan
from publisher.design.rules import expressions as rules

_IN_UNIT = re.compile(r"(?P<what>.*\S)\s+in\s+(?P<unit>mm|inches)")
_HINT = "write {name} to print a size or fact, and {{ or }} to print a brace"


def read_text(value: Value, owners: Iterable[str], scope: Scope, subject: str) -> TextPlan:
    """Split a text into words and blanks, and check that each blank can be read and names sizes and facts.

    ``owners``: the parts and assemblies that facts may start with. Facts themselves are known only to ``fill``.
    """
    pieces: list[str | Blank] = []
    words = ""
    text, at = value.text, 0
    while at < len(text):
        two, one = text[at : at + 2], text[at]
        if two in ("{{", "}}"):
            words += one
            at += 2
        elif one == "{":
            end = text.find("}", at)
            if end < 0:
                _refuse("a { in this text is never closed", at, text[at : at + 30], value, scope, subject)
                return TextPlan((text,), value.place)
            if words:
                pieces.append(words)
            words = ""
            blank = _blank(value, at + 1, end)
            check_blank(blank, owners, scope, subject)
            pieces.append(blank)
            at = end + 1
        elif one == "}":
            _refuse("a } in this text closes nothing", at, text[max(0, at - 20) : at + 1], value, scope, subject)
            words += one
            at += 1
        else:
            words += one
            at += 1
    if words or not pieces:
        pieces.append(words)
    return TextPlan(tuple(pieces), value.place)


def check_blank(blank: Blank, owners: Iterable[str], scope: Scope, subject: str) -> None:
    """Add a finding when a blank cannot be read, or names what is neither a size nor a fact of a part or assembly."""
    try:
        expression = parse(blank.expression)
    except Fault as fault:
        scope.report(fault, _value(blank), subject)
        return
    if not any("." in name for name, _ in expression.names) and all(
        name in scope.sizes for name, _ in expression.names
    ):
        _quantity(blank, scope, subject)
        return
    known = list(owners)
    for name, _ in expression.names:
        owner, dot, _rest = name.partition(".")
        if (dot and owner in known) or (not dot and name in scope.sizes):
            continue
        candidates = known if dot else [*scope.sizes]
        message = f"“{{{blank.expression}}}”: there is no size “{name}”"
        if dot:
            message = f"“{{{blank.expression}}}”: there is no part or assembly “{owner}”"
        hint = pick_hint(owner, candidates, "parts and assemblies" if dot else "sizes")
        cause = f"name {owner}" if dot else f"size {name}"
        found = rules.TEXT_NAME.found(message, subject=subject, hint=hint, place=blank.place, cause=cause)
        scope.findings.append(found)


def _blank(value: Value, start: int, end: int) -> Blank:
    inside = value.text[start:end]
    shift = len(inside) - len(inside.lstrip())
    asked = _IN_UNIT.fullmatch(inside.strip())
    if asked is None:
        return Blank(inside.strip(), column_of(value, start + shift))
    return Blank(asked["what"], column_of(value, start + shift), "mm" if asked["unit"] == "mm" else "in")


def _value(blank: Blank) -> Value:
    """A blank as a value whose place is that of the whole: inside it no column is counted."""
    return Value(blank.expression, "fact", blank.place)


def _refuse(message: str, at: int, near: str, value: Value, scope: Scope, subject: str) -> None:
    scope.findings.append(
        rules.TEXT_BLANK.found(f"{message}: “{near.strip()}”", subject=subject, hint=_HINT, place=column_of(value, at))
    )


def fill(
    text: TextPlan, design: Design, facts: tuple[Fact, ...], first: LengthUnit = "mm"
) -> tuple[str, tuple[Finding, ...]]:
    """Return a text with its blanks filled: lengths in mm and inches, the ``first`` one first and the other in brackets, or in
    the one that the text asks for; angles in degrees, counts plain; facts rounded as they promise.

    A blank that has no value is printed as written, and a finding says why.
    """
    if not any(isinstance(piece, Blank) for piece in text.pieces):
        return "".join(piece for piece in text.pieces if isinstance(piece, str)), ()
    findings: list[Finding] = []
    return filled(text, _scope(design, facts, findings), first), tuple(findings)


def filled(text: TextPlan, scope: Scope, first: LengthUnit = "mm") -> str:
    """Return a text with its blanks filled from what the scope knows; a blank without a value as it is written."""
    words = []
    for piece in text.pieces:
        if isinstance(piece, str):
            words.append(piece)
            continue
        quantity = _quantity(piece, scope)
        words.append("{" + piece.expression + "}" if quantity is None else _said(piece, quantity, scope, first))
    return "".join(words)


def _said(blank: Blank, quantity: Quantity, scope: Scope, first: LengthUnit) -> str:
    """Return a quantity as a text prints it: a fact alone is rounded as it promises. Its inches are the nearest to the millimetres that
    are shown, as in the tables beside it: one length has one figure in a pack."""
    fact = (scope.facts or {}).get(blank.expression)
    rounds: Rounds = "nearest" if fact is None else fact.rounds
    if quantity.kind != "length" or not isfinite(quantity.value):
        return say(quantity.value, quantity.kind, rounds, first, plain=True)
    shown = say_mm(quantity.value, rounds, plain=True)
    mm = float(shown.removesuffix(" mm"))
    if blank.unit:
        return shown if blank.unit == "mm" else say_inches(mm, fractions=True)
    return say_length(mm, first=first, plain=True)


def said_numbers(
    text: TextPlan, design: Design, facts: tuple[Fact, ...], first: LengthUnit = "mm"
) -> tuple[tuple[str, Quantity, str], ...]:
    """Return what stands in the blanks of a text, in order: expression, value, and the words for it; blanks without a value are
    left out."""
    scope = _scope(design, facts, [])
    blanks = (piece for piece in text.pieces if isinstance(piece, Blank))
    return tuple(
        (blank.expression, found, _said(blank, found, scope, first))
        for blank in blanks
        if (found := _quantity(blank, scope)) is not None
    )


def text_findings(design: Design, facts: tuple[Fact, ...]) -> tuple[Finding, ...]:
    """Fill every text and amount of a design once; return what is wrong with them."""
    texts = [design.summary, *(m.text for m in design.materials)]
    for step in design.steps:
        texts += [step.title, step.say, step.picture.alt if step.picture else None]
    found = [finding for text in texts if text is not None for finding in fill(text, design, facts)[1]]
    amounts = [material.amount for material in design.materials if material.amount is not None]
    return gathered((*found, *(finding for blank in amounts for finding in amount(blank, design, facts)[1])))


def amount(blank: Blank, design: Design, facts: tuple[Fact, ...]) -> tuple[Quantity | None, tuple[Finding, ...]]:
    """Return what a blank comes to; None with findings when it has no value."""
    findings: list[Finding] = []
    return _quantity(blank, _scope(design, facts, findings)), tuple(findings)


def _scope(design: Design, facts: tuple[Fact, ...], findings: list[Finding]) -> Scope:
    sizes: dict[str, Amount | None] = {size.name: of_kind(size.value, size.kind) for size in design.sizes}
    return Scope(sizes, findings, {fact.name: fact for fact in facts}, rules.TEXT_NAME)


def _quantity(blank: Blank, scope: Scope, subject: str = "") -> Quantity | None:
    worked_out = scope.amount(_value(blank), subject)
    if worked_out is None:
        return None
    kind = worked_out.kind()
    if kind is None:
        scope.findings.append(
            rules.WRONG_KIND.found(
                f"“{{{blank.expression}}}” comes out as {worked_out.words()}, which cannot be said",
                subject=subject,
                hint="print a length, an angle, an area, a weight or a plain number",
                place=blank.place,
            )
        )
        return None
    if blank.unit and kind != "length":
        scope.findings.append(
            rules.WRONG_KIND.found(
                f"“{{{blank.expression} in {blank.unit}}}”: {worked_out.words()} cannot be said in {blank.unit}",
                subject=subject,
                hint="only a length can be asked for in mm or inches",
                place=blank.place,
            )
        )
        return None
    return Quantity(worked_out.value, kind)
