"""Papers that the spec asks for: names of known ones, or sizes of its own."""

from collections.abc import Iterable

from publisher.basics import PaperPromise
from publisher.basics.wording import say_mm
from publisher.brief import Node, Row, Table, Value
from publisher.design.language import Scope
from publisher.design.records import LEAST_PAPER_MM, LEAST_ROOM_MM, LONGEST_MM, PaperWish
from publisher.design.rules import plans as rules


def read_papers(nodes: tuple[Node, ...], scope: Scope) -> tuple[PaperWish, ...]:
    """Return the papers in the order of the spec."""
    wishes = [
        PaperWish(node.text, None, None, None, node.place) if isinstance(node, Value) else _own(node, scope)
        for node in nodes
        if isinstance(node, Value | Table)
    ]
    return tuple(wish for wish in wishes if wish is not None)


def promised_paper(wishes: Iterable[PaperWish], name: str) -> PaperPromise:
    """Return what pages for a paper must be: as the spec describes the one of this name, else by the name alone."""
    for wish in wishes:
        if wish.name.casefold() == name and wish.width is not None and wish.height is not None:
            return PaperPromise(name, wish.width, wish.height, wish.margins)
    return PaperPromise(name)


def _own(table: Table, scope: Scope) -> PaperWish | None:
    name = table.text("name")
    subject = f"paper {name}"
    width_value, height_value = table.value("width"), table.value("height")
    if width_value is None and height_value is None and table.get("margins") is None:
        return PaperWish(name, None, None, None, table.place)
    width = None if width_value is None else scope.number(width_value, subject, "length")
    height = None if height_value is None else scope.number(height_value, subject, "length")
    margins = _margins(table.get("margins"), scope, subject)
    if width is None or height is None:
        if width_value is None or height_value is None:
            _refuse(f"the paper {name} lacks a width or a height", "say both", table, scope, subject)
        return None
    left, bottom, right, top = margins or (0.0, 0.0, 0.0, 0.0)
    if not LEAST_PAPER_MM <= min(width, height) <= max(width, height) <= LONGEST_MM:
        _refuse(
            f"the paper {name} is {say_mm(width)} × {say_mm(height)}; a side is from {LEAST_PAPER_MM:g} to {LONGEST_MM:g} mm",
            "measure the sheet, and check the units",
            table,
            scope,
            subject,
        )
        return None
    if min(left, bottom, right, top) < 0:
        _refuse(f"a margin of the paper {name} is negative", "write 0 mm or more", table, scope, subject)
        return None
    if width - left - right < LEAST_ROOM_MM or height - bottom - top < LEAST_ROOM_MM:
        _refuse(
            f"the paper {name} is {say_mm(width)} × {say_mm(height)}; its margins leave less than "
            f"{LEAST_ROOM_MM:g} mm for a page",
            "a page needs room for its calibration box: use larger paper or smaller margins",
            table,
            scope,
            subject,
        )
        return None
    return PaperWish(name, width, height, margins, table.place)


def _margins(node: Node | None, scope: Scope, subject: str) -> tuple[float, float, float, float] | None:
    """Margins in mm as left, bottom, right, top: from one length for all, a list of four, or a mapping by name."""
    if isinstance(node, Value):
        every = scope.number(node, subject, "length")
        return None if every is None else (every, every, every, every)
    if isinstance(node, Row) and len(node.items) == 4:
        sides = [scope.number(item, subject, "length") if isinstance(item, Value) else None for item in node.items]
    elif isinstance(node, Table):
        values = [node.value(side) for side in ("left", "bottom", "right", "top")]
        sides = [0.0 if value is None else scope.number(value, subject, "length") for value in values]
    else:
        return None
    left, bottom, right, top = (side or 0.0 for side in sides)
    return (left, bottom, right, top)


def _refuse(message: str, hint: str, table: Table, scope: Scope, subject: str) -> None:
    scope.findings.append(rules.PAPER_SIZE.found(message, subject=subject, hint=hint, place=table.place))
