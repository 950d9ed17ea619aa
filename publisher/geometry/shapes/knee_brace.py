"""A knee brace: a three-cornered board that stands on edge under a step, against its core."""

from collections.abc import Iterator

from publisher.basics import Finding
from publisher.geometry.model import ShapeInfo
from publisher.geometry.paths import straight
from publisher.geometry.registry import LOWER_LEFT, Shape, ShapeKind, Values, edges_of, length, mm

BLUNT = 2.0
"""mm: how wide its two points are cut off in board up to ``TIP_BOARD`` mm, wider in thicker board. Common practice, no source."""

TIP_BOARD = 5.0


def check(values: Values) -> Iterator[Finding]:
    """Find sides of which the points take all."""
    least = 3.0 * _blunt(values)
    for name in ("run", "drop"):
        if values.number(name) < least:
            yield values.wrong(
                name,
                f"a knee brace with a {name} of {mm(values.number(name))} is all point",
                f"make it at least {mm(least)}: its points are cut off {mm(_blunt(values))} wide",
                least,
            )


def build(values: Values) -> Shape:
    """Return the brace as it stands: its upright side, against the core, on the y axis, its level side, under the step, on top.

    A right-angled triangle of the sides run and drop, whose two points are cut off b wide, the lower one level and the outer
    one upright. The slope goes from (b, 0) to (run, drop - b), so that the area is run·drop - (run - b)·(drop - b)/2.
    """
    run, drop, blunt = values.number("run"), values.number("drop"), _blunt(values)
    corners = [
        ((0.0, 0.0), "foot"),
        ((blunt, 0.0), "slope"),
        ((run, drop - blunt), "toe"),
        ((run, drop), "top"),
        ((0.0, drop), "core"),
    ]
    outer = straight(corners)
    return Shape(outer, edges_of(outer, [name for _, name in corners]))


def _blunt(values: Values) -> float:
    return BLUNT * max(1.0, values.thickness / TIP_BOARD)


KIND = ShapeKind(
    ShapeInfo(
        "knee_brace",
        "a knee brace that props a step from its core: its points are cut off 2 mm wide, wider in board over 5 mm",
        (
            length("run", "how far it reaches out under the step, from the core"),
            length("drop", "how far down the core its foot lies"),
        ),
        ("foot", "slope", "toe", "top", "core"),
        openings=False,
        origin=LOWER_LEFT,
    ),
    build,
    check,
)
