"""The side of a quay: a wall that leans back, with its coping, its courses and holes for mooring rings."""

from collections.abc import Iterator
from math import cos, radians

from publisher.basics import Finding, LineKind, Purpose, circle, polyline
from publisher.geometry.model import Mark
from publisher.geometry.registry import (
    LOWER_LEFT,
    SIDES,
    Shape,
    Values,
    angle,
    count,
    length,
    mm,
    rectangle,
    shape_kind,
)
from publisher.geometry.rules import LEAST_HOLE, LEAST_WALL


def slope_length(values: Values) -> float:
    """Return the height of the board in mm: height / cos(batter), the true length of a wall that leans back."""
    return values.number("height") / cos(radians(values.number("batter")))


def check(values: Values) -> Iterator[Finding]:
    """Find copings, courses and rings that the wall has no room for."""
    wide, high = values.number("length"), slope_length(values)
    coping, course, rings = values.number("coping"), values.number("course"), values.count("rings")
    if coping > high - LEAST_WALL:
        yield values.wrong(
            "coping",
            f"a coping of {mm(coping)} covers the whole wall, which is {mm(high)} high on its slope",
            f"make it at most {mm(high - LEAST_WALL)}",
            high - LEAST_WALL,
        )
        return
    if 0.0 < course < 1.0:
        yield values.wrong("course", f"courses of {mm(course)} cannot be drawn", "make them at least 1 mm high", 1.0)
    if not rings:
        return
    hole, drop = values.number("ring_radius"), values.number("ring_drop")
    if hole < LEAST_HOLE:
        yield values.wrong(
            "ring_radius",
            f"mooring rings need holes that can be cut, and their radius is {mm(hole)}",
            f"make ring_radius at least {mm(LEAST_HOLE)}",
            LEAST_HOLE,
        )
    elif drop - hole < LEAST_WALL or drop + hole > high - LEAST_WALL:
        yield values.wrong(
            "ring_drop",
            f"ring holes {mm(drop)} under the top leave less than {mm(LEAST_WALL)} of board above or below them",
            f"put them between {mm(hole + LEAST_WALL)} and {mm(max(high - hole - LEAST_WALL, 0.0))} under the top",
            hole + LEAST_WALL,
        )
    elif wide / rings - 2.0 * hole < LEAST_WALL or wide / rings / 2.0 - hole < LEAST_WALL:
        yield values.wrong(
            "rings",
            f"{rings} ring holes on {mm(wide)} stand too close",
            f"at most {int(wide / (2.0 * hole + 2.0 * LEAST_WALL))} fit",
            wide / (2.0 * hole + 2.0 * LEAST_WALL),
        )


def build(values: Values) -> Shape:
    """Return the wall flat, seen from the water, lower left corner at the origin; area length × height / cos(batter)."""
    wide, high = values.number("length"), slope_length(values)
    coping, course, rings = values.number("coping"), values.number("course"), values.count("rings")
    marks = []
    top = high - coping
    if coping > 0.0:
        marks.append(Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((0.0, top), (wide, top))), name="coping"))
    if course > 0.0:
        lines = [top - k * course for k in range(1, int(top / course) + 1) if top - k * course > 0.5]
        marks += [Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((0.0, y), (wide, y))), name="course") for y in lines]
    at = high - values.number("ring_drop")
    holes = tuple(
        circle(((i + 0.5) * wide / rings, at), values.number("ring_radius"), f"ring{i + 1}", ccw=False)
        for i in range(rings)
    )
    return rectangle(wide, high, holes=holes, marks=tuple(marks))


KIND = shape_kind(
    "quay_side",
    "the side of a quay seen from the water: true length on its slope, coping and courses drawn, ring holes cut",
    (
        length("length", "length of the quay"),
        length("height", "upright height of the quay", None, 6.0),
        angle("batter", "how far the wall leans back from upright", 0.0, 45.0, 0.0),
        length("coping", "height of the coping drawn along the top, on the slope (0 = none)", 0.0, 0.0),
        length("course", "height of the courses drawn under the coping (0 = none)", 0.0, 0.0),
        count("rings", "holes for mooring rings, evenly along the quay (0 = none)", 0, 60, 0),
        length("ring_radius", "radius of each ring's hole", 0.0, 0.0, 20.0),
        length("ring_drop", "how far under the top the ring holes stand, on the slope", 0.0, 0.0),
    ),
    SIDES,
    build,
    check,
    origin=LOWER_LEFT,
)
