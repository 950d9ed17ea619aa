"""A rib of an egg-crate: open slots half its height deep take the ribs that cross it."""

from collections.abc import Iterator

from publisher.basics import Finding, Point
from publisher.geometry.model import DrawnFor
from publisher.geometry.registry import (
    LOWER_LEFT,
    SIDES,
    Shape,
    Values,
    choice,
    cornered,
    count,
    length,
    mm,
    shape_kind,
)
from publisher.geometry.rules import LEAST_WALL


def slot_width(values: Values) -> float:
    """Return the width of a slot in mm: the crossing board and its play (common practice 0.2-0.5 mm)."""
    mate = values.number("mate") if values.says("mate") else values.thickness
    return mate + values.number("play")


def slot_middles(values: Values) -> tuple[float, ...]:
    """Return where the slots' middles stand from the left end, mm: the outermost ``end`` from both ends, the rest evenly.

    Without ``end`` the slots part the rib into equal lengths.
    """
    whole, number = values.number("length"), values.count("slots")
    first = values.number("end") if values.says("end") else whole / (number + 1)
    if number == 1:
        return (first if values.says("end") else whole / 2.0,)
    return tuple(first + k * (whole - 2.0 * first) / (number - 1) for k in range(number))


def check(values: Values) -> Iterator[Finding]:
    """Find slots too near to each other or to the ends, and a rib too low for half of it to hold."""
    wide, middles, whole = slot_width(values), slot_middles(values), values.number("length")
    said = "end" if values.says("end") else "slots"
    end = min(middles[0], whole - middles[-1]) - wide / 2.0
    if end < LEAST_WALL - 1e-9:
        yield values.wrong(
            said,
            f"a slot {mm(wide)} wide leaves {mm(max(end, 0.0))} of board at the end of the rib",
            f"keep the slots' middles at least {mm(LEAST_WALL + wide / 2.0)} from both ends",
            LEAST_WALL + wide / 2.0,
        )
    elif len(middles) > 1 and middles[1] - middles[0] - wide < LEAST_WALL - 1e-9:
        yield values.wrong(
            "slots",
            f"{len(middles)} slots {mm(wide)} wide leave {mm(max(middles[1] - middles[0] - wide, 0.0))} of board between them",
            f"leave at least {mm(LEAST_WALL)}: use fewer slots, or a longer rib",
            LEAST_WALL,
        )
    if values.number("height") < 2.0 * LEAST_WALL:
        yield values.wrong(
            "height",
            f"slots in a rib {mm(values.number('height'))} high leave {mm(values.number('height') / 2.0)} under them",
            f"make it at least {mm(2.0 * LEAST_WALL)} high",
            2.0 * LEAST_WALL,
        )


def build(values: Values) -> Shape:
    """Return the rib, lower left corner at the origin; area length·height − slots·(t + play)·height/2.

    Ribs one way have their slots ``above``, those that cross them ``below``, each half the height deep.
    """
    w, h, half = values.number("length"), values.number("height"), slot_width(values) / 2.0
    above = values.word("slots_from") == "above"
    notches = [(x - half, x + half) for x in slot_middles(values)]
    bottom: list[tuple[Point, str]] = [((0.0, 0.0), "bottom")]
    top: list[tuple[Point, str]] = [((w, h), "top")]
    for left, right in reversed(notches) if above else notches:
        first, second = (right, left) if above else (left, right)
        y = h if above else 0.0
        cut = [((first, y), "slot"), ((first, h / 2.0), "slot"), ((second, h / 2.0), "slot")]
        (top if above else bottom).extend([*cut, ((second, y), "top" if above else "bottom")])
    wide = slot_width(values)
    crossing = DrawnFor("slot", wide, wide - values.number("play"))
    return cornered([*bottom, ((w, 0.0), "right"), *top, ((0.0, h), "left")], SIDES, drawn_for=(crossing,))


KIND = shape_kind(
    "cross_lap_rib",
    "a rib of an egg-crate with open slots half its height deep, as wide as the crossing board and its play",
    (
        length("length", "length of the rib"),
        length("height", "height of the rib"),
        count("slots", "number of slots", 1, 200),
        length("end", "distance of the outermost slots' middles from the ends", "slots part the rib evenly"),
        choice("slots_from", "where the slots are open: above, or below for the ribs that cross", ("above", "below")),
        length("mate", "thickness of the crossing board", "the rib's own board", 0.5, 100.0),
        length("play", "how much wider than the board a slot is", 0.3, 0.0, 5.0),
    ),
    SIDES,
    build,
    check,
    origin=LOWER_LEFT,
)
