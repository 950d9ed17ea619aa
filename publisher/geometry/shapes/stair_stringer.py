"""The side of a straight flight: steps above, a floor or a sloping underside below."""

from collections.abc import Iterator
from math import atan2, cos, sin

from publisher.basics import Finding, Point
from publisher.geometry.registry import LOWER_LEFT, Shape, Values, cornered, count, deg, length, mm, shape_kind
from publisher.geometry.rules import LEAST_WALL


def check(values: Values) -> Iterator[Finding]:
    """Find a throat that leaves no board, or that reaches the floor before the flight ends."""
    if values.number("throat") == 0.0:
        return
    steps, rise, going, throat = _sizes(values)
    pitch = atan2(rise, going)
    most = (steps * going - LEAST_WALL) * sin(pitch)
    if throat < LEAST_WALL:
        yield values.wrong(
            "throat",
            f"a throat of {mm(throat)} tears: board needs at least {mm(LEAST_WALL)} between two cuts",
            f"make it {mm(LEAST_WALL)} or more; 0 mm leaves the flight solid down to the floor",
            LEAST_WALL,
        )
    elif throat > most:
        yield values.wrong(
            "throat",
            f"a throat of {mm(throat)} under a pitch of {deg(pitch * 57.29577951308232)} meets the floor only beyond the end"
            f" of the flight, which is {mm(steps * going)} long",
            f"make it at most {mm(max(most, 0.0))}, or 0 mm for a flight that is solid down to the floor",
            most,
        )


def _sizes(values: Values) -> tuple[int, float, float, float]:
    return values.count("steps"), values.number("rise"), values.number("going"), values.number("throat")


def build(values: Values) -> Shape:
    """Return the flight climbing to the right, foot at the origin; solid, its area is rise·going·steps·(steps + 1)/2.

    Edges ``bottom``, ``underside`` (with a throat), ``back``, then ``tread_n``, ``riser_n`` … down to ``riser_1``, counted
    from the floor. The throat is measured square to the pitch, from the inner corners of the steps: the underside runs
    throat/cos(pitch) below them.
    """
    steps, rise, going, throat = _sizes(values)
    far, pitch = steps * going, atan2(rise, going)
    corners: list[tuple[Point, str]] = [((0.0, 0.0), "bottom")]
    if throat > 0.0:
        corners += [((throat / sin(pitch), 0.0), "underside"), ((far, steps * rise - throat / cos(pitch)), "back")]
    else:
        corners.append(((far, 0.0), "back"))
    for k in range(steps, 0, -1):
        corners += [((k * going, k * rise), f"tread_{k}"), (((k - 1) * going, k * rise), f"riser_{k}")]
    return cornered(corners)


KIND = shape_kind(
    "stair_stringer",
    "the side of a straight flight of stairs, solid to the floor or with a sloping underside",
    (
        count("steps", "number of treads; a floor above is one more rise", 1, 60),
        length("rise", "height of each step"),
        length("going", "depth of each step, nose to nose"),
        length("throat", "board left under the steps, square to the pitch (0 = solid to the floor)", 0.0, 0.0),
    ),
    ("bottom", "underside", "back", "tread_n … tread_1", "riser_n … riser_1"),
    build,
    check,
    origin=LOWER_LEFT,
)
