"""Openings drawn on a panel: closed ones become holes, a door on the bottom edge is let into the outline."""

from collections.abc import Sequence

from publisher.basics import Finding
from publisher.design import OpeningPlan
from publisher.geometry.openings.kind import DrawnOpening
from publisher.geometry.openings.kinds import OPENINGS
from publisher.geometry.registry import checked


def draw_openings(
    plans: Sequence[OpeningPlan], middle: float, subject: str, thickness: float = 0.0
) -> tuple[tuple[DrawnOpening, ...], tuple[Finding, ...]]:
    """Return the openings that could be drawn; ``middle`` is the centre (mm) of those that do not say where they stand,
    ``thickness`` that of the board (mm)."""
    drawn: list[DrawnOpening] = []
    found: list[Finding] = []
    for plan in plans:
        kind = next(kind for kind in OPENINGS if kind.info.name == plan.kind)
        what = f"{plan.kind} “{plan.name}”"
        values, problems = checked(what, kind.info.parameters, plan.parameters, subject, plan.place, thickness)
        problems = problems or tuple(kind.check(values))
        found.extend(problems)
        if not problems:
            drawn.append(kind.draw(plan, values, middle))
    return tuple(drawn), tuple(found)
