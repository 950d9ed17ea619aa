"""Where a section of a stack sits on the one below: how high, how far turned and shifted against the layer that it lies on."""

from itertools import pairwise
from math import cos, radians, sin

from publisher.basics import Place
from publisher.design import Fact, Kind
from publisher.joints.stacks.layers import LaidStack


def seats_of(stack: LaidStack, places: dict[str, Place]) -> list[Fact]:
    """Return, for every section that lies on another one of an assembly, ``SECTION.underside`` (mm above the table),
    ``SECTION.seat_layer`` (number of the layer below), ``SECTION.seat_turn`` (degrees against it, −180 to 180) and
    ``SECTION.seat_across`` and ``SECTION.seat_up`` (mm, in the lower layer's own directions)."""
    facts: list[Fact] = []
    for lower, upper in pairwise(stack.layers):
        if lower.section == upper.section:
            continue
        turn = (upper.pose.turn - lower.pose.turn + 180.0) % 360.0 - 180.0
        x, y = upper.pose.x - lower.pose.x, upper.pose.y - lower.pose.y
        c, s = cos(radians(lower.pose.turn)), sin(radians(lower.pose.turn))
        values: tuple[tuple[str, float, Kind], ...] = (
            ("underside", upper.bottom, "length"),
            ("seat_layer", lower.number, "count"),
            ("seat_turn", turn, "angle"),
            ("seat_across", x * c + y * s, "length"),
            ("seat_up", y * c - x * s, "length"),
        )
        place = places.get(upper.section)
        facts += [Fact(f"{upper.section}.{name}", float(value), kind, place) for name, value, kind in values]
    return facts
