"""Sheets as sold: ``20 x 30 in``, ``297 x 420 mm``."""

import re

from publisher.basics import Finding, Place, Refusal
from publisher.brief import Value
from publisher.design.language import UNITS, Fault, Scope, read_literal
from publisher.design.records import LONGEST_MM, SheetSize
from publisher.design.rules import plans as rules

_CROSS = re.compile(r"\s*[xX×*]\s*|\s+by\s+")
_UNIT_AT_END = re.compile(r"(" + "|".join(u.name for u in UNITS if u.measures == "length") + r")\s*$")
_HINT = "write width, x, height and the unit: 20 x 30 in, or 297 x 420 mm"


def read_sheet(value: Value, scope: Scope, subject: str) -> SheetSize | None:
    """Return a sheet's size in mm, with the label kept as written. None after a finding."""
    text = value.text.strip()
    sides = _CROSS.split(text) if len(text) <= 60 else []
    unit = _UNIT_AT_END.search(text)
    if len(sides) != 2 or unit is None:
        return _refuse(f"“{text[:60]}” is no sheet size", value, scope, subject)
    measured: list[float] = []
    for side in sides:
        try:
            amount = read_literal(side)
            if amount is not None and amount.plain:
                amount = read_literal(f"{side} {unit[1]}")
        except Fault as fault:
            return _refuse(f"“{text}”: {fault.message}", value, scope, subject)
        if amount is None or amount.kind() != "length" or not 0 < amount.value <= LONGEST_MM:
            return _refuse(
                f"“{text}”: each side is a length above 0 and up to {LONGEST_MM / 1000:g} m", value, scope, subject
            )
        measured.append(amount.value)
    return SheetSize(text, measured[0], measured[1])


def sheet_size(text: str) -> SheetSize:
    """Return a sheet given on the command line, such as ``500x700 mm``. Raises Refusal when it is none."""
    findings: list[Finding] = []
    sheet = read_sheet(Value(text, "text", Place("--sheet")), Scope({}, findings), "--sheet")
    if sheet is None:
        raise Refusal(*findings)
    return sheet


def _refuse(message: str, value: Value, scope: Scope, subject: str) -> SheetSize | None:
    scope.findings.append(rules.SHEET_SIZE.found(message, subject=subject, hint=_HINT, place=value.place))
    return None
