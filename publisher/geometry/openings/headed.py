"""Openings with a sill, two jambs and a head: doors, windows, slits."""

from collections.abc import Iterator

from publisher.basics import Finding
from publisher.design import OpeningPlan
from publisher.geometry.model import Opening, ParameterInfo, ShapeInfo
from publisher.geometry.openings.heads import HEADS, Head
from publisher.geometry.openings.kind import CENTRE, DrawnOpening, OpeningKind, centre_of
from publisher.geometry.paths import Pen
from publisher.geometry.registry import Values, length


def _head(values: Values) -> Head:
    return next(head for head in HEADS if head.name == values.word("head"))


def _check(values: Values) -> Iterator[Finding]:
    yield from _head(values).check(values)


def _draw(plan: OpeningPlan, values: Values, middle: float) -> DrawnOpening:
    head = _head(values)
    width, height, sill = (values.number(name) for name in ("width", "height", "sill"))
    centre = centre_of(values, middle)
    left, right, spring = centre - width / 2.0, centre + width / 2.0, sill + height - head.spring(values)
    pen = Pen((left, sill)).line((right, sill), f"{plan.name}.sill").line((right, spring), f"{plan.name}.right")
    path = head.draw(pen, values, f"{plan.name}.head").line((left, sill), f"{plan.name}.left").path()
    opening = Opening(plan.name, plan.kind, path.reversed(), width, height, sill, centre)
    return DrawnOpening(opening, path, plan.kind == "door" and sill == 0.0)


def headed(name: str, meaning: str, sill: float | None) -> OpeningKind:
    """Return a kind of opening with a head; ``sill`` is the default height of its lower end (mm), None if it must be said."""
    info = ShapeInfo(
        name,
        meaning,
        (
            ParameterInfo("head", "choice", "form of the upper end", "square", choices=tuple(h.name for h in HEADS)),
            length("width", "clear width"),
            length("height", "overall height, head included"),
            CENTRE,
            length("sill", "height of its lower end over the panel's bottom edge", sill, 0.0),
            length("rise", "how far a segmental head rises over its ends", "needed by a segmental head only", 0.5),
            length("radius", "radius of both arcs of a pointed head", "as the width: equilateral"),
        ),
    )
    return OpeningKind(info, _draw, _check)
