"""Sheets as sold: ``20 x 30 in``, ``297 x 420 mm``, ``A3``."""

import re

from publisher.basics import Finding, Place, Refusal
from publisher.brief import Node, Value
from publisher.design.language import UNITS, Fault, Scope, read_literal
from publisher.design.records import LONGEST_MM, SheetSize
from publisher.design.rules import plans as rules

_CROSS = re.compile(r"\s*[xX×*]\s*|\s+by\s+")
_UNIT_AT_END = re.compile(r"(" + "|".join(u.name for u in UNITS if u.measures == "length") + r")\s*$")
SAME_SHEET = 0.05  # mm: sides that differ by less are one size in two units
_HINT = "write width, x, height and the unit: 20 x 30 in, or 297 x 420 mm; or the name of a size: A3"


def _halved(most: int, width: int = 841, height: int = 1189) -> dict[str, tuple[int, int]]:
    """The A sizes of ISO 216 in mm: each is the one before, halved across its long side and rounded down."""
    named = {}
    for number in range(most + 1):
        named[f"A{number}"] = width, height
        width, height = height // 2, width
    return named


_NAMED = _halved(5)


def read_sheet(value: Value, scope: Scope, subject: str) -> SheetSize | None:
    """Return a sheet's size in mm, with the label kept as written, of a name its size. None after a finding."""
    text = value.text.strip()
    if text.upper() in _NAMED:
        width, height = _NAMED[text.upper()]
        return SheetSize(f"{width} x {height} mm", float(width), float(height))
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
            return _refuse(f"“{text}”: {fault.message}", value, scope, subject, fault.hint or _HINT)
        if amount is None or amount.kind() != "length" or not 0 < amount.value <= LONGEST_MM:
            return _refuse(
                f"“{text}”: each side is a length above 0 and up to {LONGEST_MM / 1000:g} m", value, scope, subject
            )
        measured.append(amount.value)
    return SheetSize(text, measured[0], measured[1])


def read_sheets(nodes: tuple[Node, ...], grain: str, scope: Scope, subject: str) -> tuple[SheetSize, ...]:
    """Return the sheets of a board, each once; findings for those that cannot be and for the same size in other words: ``20 × 30 in``
    beside ``20 x 30 in`` or ``508 x 762 mm``, and, where the board has no ``grain``, turned."""
    sheets: list[SheetSize] = []
    for node in nodes:
        sheet = read_sheet(node, scope, subject) if isinstance(node, Value) else None
        if sheet is None:
            continue
        twin = next((one for one in sheets if _same(one, sheet, grain == "none")), None)
        if twin is None:
            sheets.append(sheet)
        else:
            what = f"“{sheet.label}” is the same sheet as “{twin.label}”"
            found = rules.SHEET_TWICE.found(what, subject=subject, hint="delete one of the two", place=node.place)
            scope.findings.append(found)
    return tuple(sheets)


def _same(one: SheetSize, other: SheetSize, turned: bool) -> bool:
    sides = (one.width, one.height)
    ways = ((other.width, other.height), (other.height, other.width))[: 2 if turned else 1]
    return any(max(abs(a - b) for a, b in zip(sides, way, strict=True)) < SAME_SHEET for way in ways)


def named_sheets() -> tuple[tuple[str, str], ...]:
    """Return every name that a sheet size has, with the size."""
    return tuple((name, f"{width} x {height} mm") for name, (width, height) in _NAMED.items())


def sheet_size(text: str) -> SheetSize:
    """Return a sheet given on the command line, such as ``500x700 mm``. Raises Refusal when it is none."""
    findings: list[Finding] = []
    sheet = read_sheet(Value(text, "text", Place("--sheet")), Scope({}, findings), "--sheet")
    if sheet is None:
        raise Refusal(*findings)
    return sheet


def _refuse(message: str, value: Value, scope: Scope, subject: str, hint: str = _HINT) -> SheetSize | None:
    scope.findings.append(rules.SHEET_SIZE.found(message, subject=subject, hint=hint, place=value.place))
    return None
