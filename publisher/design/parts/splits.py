"""Seams of parts that are too long for the boards on sale: read from the spec, and the names that their pieces take."""

import re

from publisher.basics.wording import mm_apart, say_mm
from publisher.brief import Node, Row, Table
from publisher.design.language import Scope
from publisher.design.parts.parts_known import KnownParts
from publisher.design.records import SplitPlan
from publisher.design.rules import plans as rules

PLATE_MM = (20.0, 300.0)  # least and most width of a lap plate
STEP_MM = (5.0, 200.0)  # least and most step of a seam
BESIDE_MM = 10.0  # least that a plate reaches beyond a stepped seam on either side


def read_splits(node: Node | None, scope: Scope, subject: str) -> tuple[SplitPlan, ...]:
    """Return the seams of one part in the order of the spec: one seam, or a list. Findings for what cannot be."""
    tables = node.items if isinstance(node, Row) else (node,)
    made = [_split(table, scope, subject) for table in tables if isinstance(table, Table)]
    return tuple(split for split in made if split is not None)


def find_taken(table: Table, known: KnownParts, scope: Scope) -> None:
    """Add a finding for each part that is called as a piece of another one will be."""
    names = [entry for entry in table.entries if isinstance(entry.node, Table)]
    for entry in names:
        if not isinstance(entry.node, Table) or entry.node.get("split") is None:
            continue
        pieces = re.compile("|".join(rf"{re.escape(one)}_(plate_)?[0-9]+" for one in known.ids(entry.key)))
        for other in names:
            if pieces.fullmatch(other.key):
                scope.findings.append(
                    rules.NAME_TAKEN.found(
                        f"“{other.key}” is the name of a piece of {entry.key}, which is split",
                        subject=f"part {other.key}",
                        hint="give this part another name",
                        place=other.place,
                    )
                )


def _split(table: Table, scope: Scope, subject: str) -> SplitPlan | None:
    value = table.value("at")
    at = None if value is None else scope.number(value, subject, "length")
    if at is None:
        return None
    plate = _measure(table, "plate", PLATE_MM, scope, subject)
    step = _measure(table, "step", STEP_MM, scope, subject)
    if plate and plate < step + 2.0 * BESIDE_MM:
        wide, _ = mm_apart(plate, step + 2.0 * BESIDE_MM)
        scope.findings.append(
            rules.SPLIT.found(
                f"a plate {wide} wide does not lap a seam with a step of {say_mm(step)}",
                subject=subject,
                hint=f"write plate: {step + 2.0 * BESIDE_MM:g} mm or more, or a smaller step",
                place=table.place,
                value=plate,
                limit=step + 2.0 * BESIDE_MM,
            )
        )
    return SplitPlan(at, "bottom" if table.text("from") == "bottom" else "left", plate, step, table.place)


def _measure(table: Table, name: str, limits: tuple[float, float], scope: Scope, subject: str) -> float:
    """Return a width in mm; 0 when it is not said or cannot be."""
    value = table.value(name)
    number = None if value is None else scope.number(value, subject, "length")
    if value is None or number is None:
        return 0.0
    least, most = limits
    if least <= number <= most:
        return number
    scope.findings.append(
        rules.SPLIT.found(
            f"the {name} of a seam is {say_mm(number)}",
            subject=subject,
            hint=f"write {least:g} to {most:g} mm, or leave {name} out",
            place=value.place,
            value=number,
            limit=least if number < least else most,
        )
    )
    return 0.0
