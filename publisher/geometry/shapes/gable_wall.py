"""A wall with two roof slopes that runs past the long walls."""

from collections.abc import Iterator
from math import atan2, degrees, radians, tan

from publisher.basics import Finding
from publisher.geometry.registry import (
    LOWER_LEFT,
    Shape,
    Values,
    angle,
    cornered,
    deg,
    just_one,
    length,
    mm,
    shape_kind,
)

EDGES = ("bottom", "right", "right_slope", "left_slope", "left")
FLATTEST_GABLE, STEEPEST_GABLE = 1.0, 85.0  # degrees


def pitch(values: Values) -> float:
    """Return the pitch in degrees: as given, or atan((ridge − eaves)/(span/2)) from the ridge's height."""
    if values.says("pitch"):
        return values.number("pitch")
    return degrees(atan2(values.number("ridge") - values.number("eaves"), values.number("span") / 2.0))


def check(values: Values) -> Iterator[Finding]:
    """Find a pitch given twice or not at all, a ridge under the eaves, slopes that reach the ground before the panel ends."""
    yield from just_one(values, "pitch", "ridge")
    if values.says("pitch") == values.says("ridge"):
        return
    past, eaves, slope = values.number("past"), values.number("eaves"), pitch(values)
    if not FLATTEST_GABLE <= slope <= STEEPEST_GABLE:
        half = values.number("span") / 2.0
        least, most = (eaves + half * tan(radians(limit)) for limit in (FLATTEST_GABLE, STEEPEST_GABLE))
        yield values.wrong(
            "ridge",
            f"a ridge {mm(values.number('ridge'))} high over eaves of {mm(eaves)} gives slopes of {deg(slope)}",
            f"slopes are {deg(FLATTEST_GABLE)} … {deg(STEEPEST_GABLE)}: make the ridge {mm(least)} … {mm(most)} high",
            least if slope < FLATTEST_GABLE else most,
        )
        return
    drop = past * tan(radians(slope))
    if eaves - drop < 1.0:
        most = (eaves - 1.0) / tan(radians(slope))
        yield values.wrong(
            "past",
            f"the slope of {deg(slope)} drops {mm(drop)} over the {mm(past)} that the gable runs past the long wall,"
            f" but the eaves are only {mm(eaves)} high",
            f"make past at most {mm(most)}, or the eaves higher",
            most,
        )


def build(values: Values) -> Shape:
    """Return a gable seen from outside, lower left corner at the origin, width span + 2·past.

    ``eaves`` is the height at the long walls' outside faces (x = past); the slopes go on down to the panel's ends at
    eaves − past·tan(pitch), and meet at eaves + span/2·tan(pitch).
    """
    span, past, eaves = (values.number(name) for name in ("span", "past", "eaves"))
    rise = tan(radians(pitch(values)))
    w, end, ridge = span + 2.0 * past, eaves - past * rise, eaves + span / 2.0 * rise
    return cornered(
        (
            ((0.0, 0.0), "bottom"),
            ((w, 0.0), "right"),
            ((w, end), "right_slope"),
            ((w / 2.0, ridge), "left_slope"),
            ((0.0, end), "left"),
        ),
        EDGES,
    )


KIND = shape_kind(
    "gable_wall",
    "a wall with two roof slopes, seen from outside, that runs past the long walls",
    (
        length("span", "width over the outside faces of the long walls"),
        length("past", "how far the gable runs past each long wall", 0.0, 0.0),
        length("eaves", "height at the long walls' outside faces"),
        angle("pitch", "angle of the slopes against the horizontal", FLATTEST_GABLE, STEEPEST_GABLE, "from ridge"),
        length("ridge", "height of the ridge", "from pitch"),
    ),
    EDGES,
    build,
    check,
    openings=True,
    origin=LOWER_LEFT,
)
