"""The triangular side wall of a dormer on a roof slope."""

from collections.abc import Iterator
from math import atan, degrees, radians, tan

from publisher.basics import Finding, Point
from publisher.design import LONGEST_MM
from publisher.geometry.registry import Shape, Values, angle, choice, cornered, deg, length, mm, shape_kind
from publisher.geometry.rules import LEAST_WALL


def reach(values: Values) -> float:
    """Return how far the cheek runs back, level, mm: height/(tan(pitch) − tan(top pitch)) where both slopes meet."""
    return values.number("height") / (_slope(values, "pitch") - _slope(values, "top_pitch"))


def _slope(values: Values, name: str) -> float:
    return tan(radians(values.number(name)))


def check(values: Values) -> Iterator[Finding]:
    """Find a dormer's roof that never meets the main roof, or only far away; a cheek too small to cut."""
    height = values.number("height")
    steepest = degrees(atan(_slope(values, "pitch") - height / LONGEST_MM))
    if values.number("top_pitch") > steepest - 0.5:
        yield values.wrong(
            "top_pitch",
            f"the dormer's roof at {deg(values.number('top_pitch'))} never meets the main roof at {deg(values.number('pitch'))}, or too"
            " far away",
            f"make top_pitch at most {deg(max(steepest - 0.5, 0.0))}",
            max(steepest - 0.5, 0.0),
        )
    elif reach(values) < LEAST_WALL:
        yield values.wrong(
            "height",
            f"a cheek {mm(height)} high on a roof of {deg(values.number('pitch'))} runs only {mm(reach(values))} back",
            "make it higher",
        )


def build(values: Values) -> Shape:
    """Return the cheek seen from outside: ``front`` upright, ``slope`` on the main roof, ``top`` under the dormer's roof.

    The right cheek (right when one faces the dormer) has its front at the left, foot at the origin. All edges are cut
    square: the main roof's face stands square to the cheek. Area height·reach/2; with a level top the slope is
    height/sin(pitch) long.
    """
    h, back = values.number("height"), reach(values)
    up = back * _slope(values, "pitch")
    if values.word("hand") == "right":
        corners: list[tuple[Point, str]] = [((0.0, 0.0), "slope"), ((back, up), "top"), ((0.0, h), "front")]
    else:
        corners = [((0.0, up), "slope"), ((back, 0.0), "front"), ((back, h), "top")]
    return cornered(corners)


KIND = shape_kind(
    "dormer_cheek",
    "the triangular side wall of a dormer, seen from outside, cut to the slope of the main roof",
    (
        length("height", "height of its front, upright"),
        angle("pitch", "angle of the main roof against the horizontal", 5.0, 85.0),
        angle("top_pitch", "angle at which its top rises towards the main roof (0 = level)", 0.0, 80.0, 0.0),
        choice("hand", "side of the dormer when one faces it", ("right", "left")),
    ),
    ("slope", "top", "front"),
    build,
    check,
    origin="the foot of its front edge",
)
