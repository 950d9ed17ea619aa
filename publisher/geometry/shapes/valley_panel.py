"""The slopes of a roof that runs into another one: the wing's slope with its valley, and the main slope that takes it."""

from collections.abc import Iterator
from math import radians, sin, tan

from publisher.basics import Finding, Point
from publisher.geometry.registry import LOWER_LEFT, Shape, Values, angle, choice, cornered, length, mm, shape_kind
from publisher.geometry.rules import LEAST_WALL
from publisher.geometry.shapes.slopes import bevel_between

HANDS = ("right", "left")


def main_pitch(values: Values) -> float:
    """Return the pitch in degrees of the roof that the wing runs into."""
    return values.number("main_pitch") if values.says("main_pitch") else values.number("pitch")


def eave_at_overhang(values: Values) -> float:
    """Return the eave's length in mm: the main roof, drawn down as far as the overhang, takes drop/tan(main pitch) off it."""
    drop = values.number("overhang") * sin(radians(values.number("pitch")))
    return values.number("eave") - drop / tan(radians(main_pitch(values))) + values.number("verge")


def check(values: Values) -> Iterator[Finding]:
    """Find an eave that the main roof covers."""
    if eave_at_overhang(values) < LEAST_WALL:
        more = LEAST_WALL - eave_at_overhang(values)
        yield values.wrong(
            "eave",
            f"with its overhang of {mm(values.number('overhang'))} the main roof leaves no eave on a wing {mm(values.number('eave'))}"
            " long",
            f"make the eave at least {mm(values.number('eave') + more)}, or the overhang shorter",
            values.number("eave") + more,
        )


def build(values: Values) -> Shape:
    """Return a wing's slope seen from above it, eave at the bottom, its left end at x = 0.

    Both eaves lie at one height. The wing's ridge, rise = span/2·tan(pitch) above it, runs on over the main roof by
    rise/tan(main pitch). The valley is rise·√(1 + cot²(pitch) + cot²(main pitch)) long on both roofs. Sizes hold on the
    underside; ridge and valley are nominal on the inside face. The valley's bevel is negative: the inside face is longer.
    """
    own, main, past = values.number("pitch"), main_pitch(values), values.number("overhang")
    rise = values.number("span") / 2.0 * tan(radians(own))
    eave, height = eave_at_overhang(values), rise / sin(radians(own)) + past
    ridge = values.number("eave") + rise / tan(radians(main)) + values.number("verge")
    bevels = {"ridge": own, "valley": -bevel_between(own, main)}
    right: list[tuple[Point, str]] = [
        ((0.0, 0.0), "eave"),
        ((eave, 0.0), "valley"),
        ((ridge, height), "ridge"),
        ((0.0, height), "verge"),
    ]
    left: list[tuple[Point, str]] = [
        ((0.0, 0.0), "eave"),
        ((eave, 0.0), "verge"),
        ((eave, height), "ridge"),
        ((eave - ridge, height), "valley"),
    ]
    corners = right if values.word("valley_at") == "right" else left
    return cornered(corners, inside=tuple(bevels), bevels=bevels)


KIND = shape_kind(
    "valley_panel",
    "one slope of a wing's roof that runs into a main roof at the same eaves, seen from above",
    (
        length("eave", "length of the wing's wall, from its gable to the main wall"),
        length("span", "width that both slopes of the wing cover together, measured level on the underside"),
        angle("pitch", "angle of the wing's slopes against the horizontal", 1.0, 80.0),
        angle("main_pitch", "angle of the main roof's slope", 1.0, 80.0, "as pitch"),
        length("overhang", "how far the eave runs on down the slope beyond the wall", 0.0, 0.0),
        length("verge", "how far the roof runs past the wing's gable", 0.0, 0.0),
        choice("valley_at", "side of the valley, seen from above with the eave at the bottom", HANDS),
    ),
    ("eave", "valley", "ridge", "verge"),
    build,
    check,
    origin=LOWER_LEFT,
)
