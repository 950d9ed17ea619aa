"""One wall of a tower with equal sides."""

from collections.abc import Iterator
from math import pi, tan

from publisher.basics import Finding
from publisher.geometry.registry import (
    LOWER_LEFT,
    SIDES,
    Shape,
    Values,
    count,
    just_one,
    length,
    mm,
    rectangle,
    shape_kind,
)
from publisher.geometry.rules import LEAST_WALL


def outside_width(values: Values) -> float:
    """Return the panel's outside width in mm: as given, or W = 2·a·tan(π/n) for the outside apothem a."""
    if values.says("width"):
        return values.number("width")
    return 2.0 * values.number("apothem") * tan(pi / values.count("sides"))


def inside_width(values: Values) -> float:
    """Return the width in mm of the face inside the tower: W − 2·t·tan(π/n)."""
    return outside_width(values) - 2.0 * values.thickness * tan(pi / values.count("sides"))


def check(values: Values) -> Iterator[Finding]:
    """Find both or neither of width and apothem, or a tower that the board fills."""
    yield from just_one(values, "apothem", "width")
    named = "width" if values.says("width") else "apothem"
    if values.says("width") != values.says("apothem") and inside_width(values) < LEAST_WALL:
        slope = tan(pi / values.count("sides"))
        least = LEAST_WALL + 2.0 * values.thickness * slope
        least = least if named == "width" else least / 2.0 / slope
        yield values.wrong(
            named,
            f"the panel is {mm(outside_width(values))} wide outside; with board of {mm(values.thickness)} and"
            f" {values.count('sides')} sides, {mm(max(inside_width(values), 0.0))} of it stay inside the tower",
            f"make {named} at least {mm(least)}, or the board thinner",
            least,
        )


def build(values: Values) -> Shape:
    """Return the panel seen from outside, lower left corner at the origin; area W·height.

    The stated size holds on the outside face, so the side edges are nominal there and are bevelled by 180/n from square:
    the inside face is then 2·t·tan(π/n) narrower. A mitre join at the corner 180 − 360/n asks for the same bevel. Side and
    apothem of a polygon: Machinery's Handbook, 31st ed., p. 82.
    """
    w, h, bevel = outside_width(values), values.number("height"), 180.0 / values.count("sides")
    return rectangle(w, h, bevels={"right": bevel, "left": bevel})


KIND = shape_kind(
    "tower_panel",
    "one wall of a tower with equal sides, seen from outside; its side edges are bevelled to meet",
    (
        count("sides", "number of sides of the tower", 3, 100),
        length("apothem", "distance from the axis to the middle of the outside face", "from width"),
        length("width", "outside width of one panel", "from apothem"),
        length("height", "finished height"),
    ),
    SIDES,
    build,
    check,
    openings=True,
    origin=LOWER_LEFT,
)
