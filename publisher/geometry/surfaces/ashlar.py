"""Ashlar: courses of squared stone, of one height or high and low in turn, in even blocks or in blocks of many lengths.

Joints of neighbouring courses keep at least a quarter of a block apart (TMS 402, running bond), also where lengths vary.
"""

from collections.abc import Iterator

import numpy as np

from publisher.basics import Finding
from publisher.geometry.model import ParameterInfo, ShapeInfo
from publisher.geometry.registry import Values, length, mm
from publisher.geometry.surfaces.noise import noise
from publisher.geometry.surfaces.pattern import PENCIL_APART, Array, Ground, LineFamily, Pattern, per_area
from publisher.geometry.surfaces.rows import (
    QUARTER,
    bed_joints,
    draws_needed,
    head_joints,
    numbers,
    random_joints,
    spread,
)

SHIFT = {"running": 0.5, "one_third": 1.0 / 3.0}
VARY = 0.3  # blocks of bond random are this much longer or shorter than stated


def _low(values: Values) -> float:
    """Height in mm of every second course."""
    return values.number("low") if values.says("low") else values.number("height")


def check(values: Values) -> Iterator[Finding]:
    """Find blocks that stand on end, and low courses that are the high ones."""
    long, high, low = values.number("length"), values.number("height"), _low(values)
    if high > long:
        hint = "squared stone is laid flat: make height at most the length"
        yield values.wrong("height", f"blocks {mm(long)} long and {mm(high)} high stand on end", hint, long)
    if low > high:
        hint = "swap the two: height is that of the first course, low that of the next"
        yield values.wrong("low", f"the low courses are {mm(low)} high, the others {mm(high)}", hint, high)


def lines(values: Values, ground: Ground) -> tuple[LineFamily, ...]:
    """Return bed joints and head joints over the box; the first course stands on the nominal bottom edge."""
    long, high, low, box = values.number("length"), values.number("height"), _low(values), ground.box
    left, bottom = ground.origin
    k = numbers(box.bottom, box.top, bottom, high + low)
    beds = bottom + (k[:, None] * (high + low) + np.array([0.0, high])).ravel()
    tops = np.append(beds[1:], beds[-1] + low)
    bond = values.word("bond")
    if bond == "random":
        draws = noise(ground.seed, 1, np.arange(len(beds))[:, None], np.arange(draws_needed(box, left, long, VARY)))
        rows: tuple[Array, ...] = random_joints(box, left, long, VARY, draws)
    else:
        i = numbers(box.left - long, box.right, left, long)
        rows = tuple(left + (i + SHIFT[bond] * (row % 2)) * long for row in range(len(beds)))
    return bed_joints(beds, box), head_joints(*spread(rows, beds, tops), box, QUARTER * long)


PATTERN = Pattern(
    ShapeInfo(
        "ashlar",
        "courses of squared stone, all of one height or high and low in turn; the first stands on the part's lower edge",
        (
            length("length", "length of a block with its joint; on average in bond random", least=3.0, most=500.0),
            length("height", "height of the first course and every second one, with its joint", least=2.0, most=500.0),
            ParameterInfo("low", "length", "height of the courses between, with their joint", "height", 1.0, 500.0),
            ParameterInfo("bond", "choice", "how the courses overlap", "running", choices=(*SHIFT, "random")),
        ),
        least_feature=PENCIL_APART,
    ),
    lines,
    check,
    per_area(lambda values: values.number("length") * (values.number("height") + _low(values)) / 2.0),
    lambda values: min(_low(values), SHIFT.get(values.word("bond"), QUARTER) * values.number("length")),
)
