"""Parameters of shapes, openings and surfaces: numbers worked out by the kind of their field, or words."""

from collections.abc import Container

from publisher.brief import Table, Value
from publisher.design.language import Scope
from publisher.design.records import OpeningPlan, Parameter, SurfacePlan

_NUMBERS = ("length", "angle", "count", "number", "quantity")


def read_parameters(table: Table, scope: Scope, subject: str, skip: Container[str] = ()) -> tuple[Parameter, ...]:
    """Return the parameters of a mapping, without the keys to skip and without those that have no value."""
    found = [
        _parameter(entry.key, entry.node, scope, subject)
        for entry in table.entries
        if entry.key not in skip and isinstance(entry.node, Value)
    ]
    return tuple(parameter for parameter in found if parameter is not None)


def read_openings(table: Table, scope: Scope, subject: str) -> tuple[OpeningPlan, ...]:
    """Return the openings of a part."""
    return tuple(
        OpeningPlan(
            name=entry.key,
            kind=entry.node.text("kind"),
            parameters=read_parameters(entry.node, scope, f"{subject}, opening {entry.key}", ("kind",)),
            place=entry.place,
        )
        for entry in table.entries
        if isinstance(entry.node, Table)
    )


def read_surface(table: Table, scope: Scope, subject: str) -> SurfacePlan:
    """Return the pattern of a part's face."""
    seed = table.value("seed")
    return SurfacePlan(
        pattern=table.text("pattern"),
        parameters=read_parameters(table.table("with"), scope, f"{subject}, surface"),
        seed=0 if seed is None else int(scope.number(seed, subject, "count") or 0),
        place=table.place,
        how=table.text("how"),
    )


def _parameter(name: str, value: Value, scope: Scope, subject: str) -> Parameter | None:
    if value.kind not in _NUMBERS:
        return Parameter(name, value.text, value.text, value.place)
    number = scope.number(value, f"{subject}, {name}")
    return None if number is None else Parameter(name, number, value.text, value.place)
