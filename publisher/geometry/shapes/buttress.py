"""A buttress seen from its side: it steps back to the wall over sloped weatherings."""

from collections.abc import Iterator
from math import radians, tan

from publisher.basics import Finding, Point
from publisher.geometry.registry import LOWER_LEFT, Shape, Values, angle, cornered, count, deg, length, mm, shape_kind
from publisher.geometry.rules import LEAST_WALL


def check(values: Values) -> Iterator[Finding]:
    """Find a head as deep as the foot, weatherings that are nothing, and slopes that leave no upright face."""
    foot, head, height = values.number("foot"), values.number("head"), values.number("height")
    stages, slope = values.count("stages"), values.number("slope")
    back = (foot - head) / stages
    if back < 1.0:
        yield values.wrong(
            "head",
            f"a buttress {mm(foot)} deep at its foot and {mm(head)} at its head steps back {mm(max(back, 0.0))} at each of"
            f" {stages} weatherings",
            f"make head at most {mm(max(foot - stages, 0.0))}, or use fewer stages",
            foot - stages,
        )
        return
    if 0.0 < head < LEAST_WALL:
        yield values.wrong(
            "head",
            f"a head {mm(head)} deep is too thin to cut",
            f"make it at least {mm(LEAST_WALL)}, or 0 mm to end at the wall",
            LEAST_WALL,
        )
    taken = (foot - head) * tan(radians(slope))
    if height - taken < stages * LEAST_WALL:
        yield values.wrong(
            "height",
            f"weatherings at {deg(slope)} take {mm(taken)} of the height of {mm(height)}: no upright face of {mm(LEAST_WALL)} is"
            " left under each",
            f"make it at least {mm(taken + stages * LEAST_WALL)} high, or the slope flatter",
            taken + stages * LEAST_WALL,
        )


def build(values: Values) -> Shape:
    """Return the buttress with its back (the wall) along the y axis and its foot on the x axis.

    Each of n stages has an upright face and a weathering; both are alike in all stages. With the step back d = (foot − head)/n
    and the rise d·tan(slope) of a weathering, stage k (from 0) has the area (height/n)·(foot − k·d) − d²·tan(slope)/2.
    """
    foot, head, stages = values.number("foot"), values.number("head"), values.count("stages")
    back, each = (foot - head) / stages, values.number("height") / stages
    up = back * tan(radians(values.number("slope")))
    corners: list[tuple[Point, str]] = [((0.0, 0.0), "bottom")]
    for k in range(stages):
        x, y = foot - k * back, k * each
        corners += [((x, y), f"front_{k + 1}"), ((x, y + each - up), f"weathering_{k + 1}")]
    if head > 0.0:
        corners.append(((head, values.number("height")), "top"))
    corners.append(((0.0, values.number("height")), "back"))
    return cornered(corners)


KIND = shape_kind(
    "buttress",
    "a buttress seen from its side, with a sloped weathering on each stage; its back stands against the wall",
    (
        length("foot", "depth at the foot, from the wall outwards", None, LEAST_WALL),
        length("head", "depth at the head (0 = it ends at the wall)", 0.0, 0.0),
        length("height", "overall height"),
        count("stages", "number of stages, each with a weathering", 1, 12, 1),
        angle("slope", "angle of the weatherings against the horizontal", 5.0, 85.0, 60.0),
    ),
    ("bottom", "front_1 … front_n", "weathering_1 … weathering_n", "top", "back"),
    build,
    check,
    origin=LOWER_LEFT,
)
