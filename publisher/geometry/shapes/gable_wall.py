"""A wall with two roof slopes that runs past the long walls."""

from collections.abc import Iterator
from math import radians, tan

from publisher.basics import Finding
from publisher.geometry.model import ShapeInfo
from publisher.geometry.rings import straight
from publisher.geometry.shapes.shape import Shape, ShapeKind, angle, edges_of, length
from publisher.geometry.values import Values, deg, mm

EDGES = ("bottom", "right", "right_slope", "left_slope", "left")


def check(values: Values) -> Iterator[Finding]:
    """Find slopes that reach the ground before the panel ends."""
    past, eaves, pitch = (values.number(name) for name in ("past", "eaves", "pitch"))
    drop = past * tan(radians(pitch))
    if eaves - drop < 1.0:
        yield values.wrong(
            "past",
            f"the slope of {deg(pitch)} drops {mm(drop)} over the {mm(past)} that the gable runs past the long wall,"
            f" but the eaves are only {mm(eaves)} high",
            f"make past at most {mm((eaves - 1.0) / tan(radians(pitch)))}, or the eaves higher",
            (eaves - 1.0) / tan(radians(pitch)),
        )


def build(values: Values) -> Shape:
    """Return a gable seen from outside, lower left corner at the origin, width span + 2·past.

    ``eaves`` is the height at the long walls' outside faces (x = past); the slopes go on down to the panel's ends at
    eaves − past·tan(pitch), and meet at eaves + span/2·tan(pitch).
    """
    span, past, eaves = (values.number(name) for name in ("span", "past", "eaves"))
    rise = tan(radians(values.number("pitch")))
    w, end, ridge = span + 2.0 * past, eaves - past * rise, eaves + span / 2.0 * rise
    outer = straight(
        (
            ((0.0, 0.0), "bottom"),
            ((w, 0.0), "right"),
            ((w, end), "right_slope"),
            ((w / 2.0, ridge), "left_slope"),
            ((0.0, end), "left"),
        )
    )
    return Shape(outer, edges_of(outer, EDGES))


KIND = ShapeKind(
    ShapeInfo(
        "gable_wall",
        "a wall with two roof slopes, seen from outside, that runs past the long walls",
        (
            length("span", "width over the outside faces of the long walls"),
            length("past", "how far the gable runs past each long wall", 0.0, 0.0),
            length("eaves", "height at the long walls' outside faces"),
            angle("pitch", "angle of the slopes against the horizontal", 1.0, 85.0),
        ),
        EDGES,
        True,
    ),
    build,
    check,
)
