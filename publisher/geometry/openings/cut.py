"""Openings drawn on a panel: closed ones become holes, a door on the bottom edge is let into the outline."""

from collections.abc import Sequence
from dataclasses import dataclass

from publisher.basics import Finding
from publisher.design import OpeningPlan
from publisher.geometry.curves import Curve
from publisher.geometry.model import Opening
from publisher.geometry.openings.heads import HEADS
from publisher.geometry.openings.kinds import MIDDLE, OPENINGS
from publisher.geometry.rings import Pen, reverse, ring_of
from publisher.geometry.rules import UNKNOWN_SHAPE
from publisher.geometry.values import Values, checked, nearest


@dataclass(frozen=True, slots=True)
class Drawn:
    """An opening in the panel's frame: its closed chain anticlockwise (runs ``NAME.sill`` ``.right`` ``.head`` ``.left``),
    and whether it is open at the bottom edge (then the chain begins with the sill)."""

    opening: Opening
    chain: tuple[Curve, ...]
    open_below: bool


def draw_openings(
    plans: Sequence[OpeningPlan], middle: float, subject: str
) -> tuple[tuple[Drawn, ...], tuple[Finding, ...]]:
    """Return the openings that could be drawn; ``middle`` is the centre (mm) of those that do not say where they stand."""
    drawn: list[Drawn] = []
    found: list[Finding] = []
    for plan in plans:
        info = next((kind for kind in OPENINGS if kind.name == plan.kind), None)
        if info is None:
            message = f"there is no kind of opening called “{plan.kind}”"
            hint = nearest(plan.kind, [kind.name for kind in OPENINGS])
            found.append(UNKNOWN_SHAPE.found(message, subject=subject, hint=hint, place=plan.place))
            continue
        values, problems = checked(f"{plan.kind} “{plan.name}”", info.parameters, plan.parameters, subject, plan.place)
        problems = problems or _disagreements(values)
        found.extend(problems)
        if not problems:
            drawn.append(_draw(plan, values, middle))
    return tuple(drawn), tuple(found)


def _disagreements(values: Values) -> tuple[Finding, ...]:
    head = next(head for head in HEADS if head.name == values.word("head"))
    return tuple(head.check(values))


def _draw(plan: OpeningPlan, values: Values, middle: float) -> Drawn:
    head = next(head for head in HEADS if head.name == values.word("head"))
    width, height, sill = (values.number(name) for name in ("width", "height", "sill"))
    centre = middle if values.word("centre") == MIDDLE else values.number("centre")
    left, right, spring = centre - width / 2.0, centre + width / 2.0, sill + height - head.spring(values)
    pen = Pen((left, sill)).line((right, sill), f"{plan.name}.sill").line((right, spring), f"{plan.name}.right")
    chain = tuple(head.draw(pen, values, f"{plan.name}.head").line((left, sill), f"{plan.name}.left").curves)
    opening = Opening(plan.name, plan.kind, ring_of(reverse(chain)), width, height, sill, centre)
    return Drawn(opening, chain, plan.kind == "door" and sill == 0.0)
