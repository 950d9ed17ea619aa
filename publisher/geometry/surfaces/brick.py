"""Brick courses: running bond (half over half), one-third bond, and Flemish bond (a stretcher and a header in turn).

Running bond asks for an overlap of at least a quarter of the unit's length (TMS 402); half a brick is the stretcher bond,
and Flemish bond overlaps by a quarter. Nothing smaller than half a brick stands in the middle of a wall; a closer of a
quarter stands only beside the header at the corner.
"""

from collections.abc import Iterator

import numpy as np

from publisher.basics import Finding
from publisher.geometry.model import ParameterInfo, ShapeInfo
from publisher.geometry.registry import Values, length, mm
from publisher.geometry.surfaces.pattern import PENCIL_APART, Array, Ground, LineFamily, Pattern, per_area
from publisher.geometry.surfaces.rows import QUARTER, bed_joints, head_joints, numbers

SHIFT = {"running": 0.5, "one_third": 1.0 / 3.0, "flemish": QUARTER}  # of a brick, from course to course


def check(values: Values) -> Iterator[Finding]:
    """Find bricks that stand on end."""
    long, high = values.number("length"), values.number("height")
    if high > long:
        yield values.wrong(
            "height",
            f"bricks {mm(long)} long and {mm(high)} high stand on end",
            "courses are laid flat: make height at most the length",
            long,
        )


def lines(values: Values, ground: Ground) -> tuple[LineFamily, ...]:
    """Return bed joints and head joints over the box; the first course stands on the nominal bottom edge."""
    long, high, box = values.number("length"), values.number("height"), ground.box
    k = numbers(box.bottom, box.top, ground.origin[1], high)
    odd = (k % 2.0 == 1.0) != (values.word("first") == "half")
    x = _places(values.word("bond"), long, odd, ground)
    low = np.broadcast_to((ground.origin[1] + k * high)[:, None], x.shape)
    heads = head_joints(x.ravel(), low.ravel(), low.ravel() + high, box, QUARTER * long)
    return bed_joints(ground.origin[1] + k * high, box), heads


def _places(bond: str, long: float, odd: Array, ground: Ground) -> Array:
    """Return the head joints (mm along the wall) of each course, (courses, joints)."""
    box, (left, _) = ground.box, ground.origin
    if bond != "flemish":
        i = np.unique(np.append(numbers(box.left, box.right, left, long), 0.0))  # one joint at the origin, not two
        return np.asarray(left + (i + SHIFT[bond] * odd[:, None]) * long)
    i = numbers(box.left - 1.5 * long, box.right, left, 1.5 * long)
    even = left + np.sort(np.concatenate([1.5 * i, 1.5 * i + 1.0])) * long
    over = left + np.sort(np.concatenate([1.5 * i + 0.25, 1.5 * i + 0.75])) * long
    # at the corner a header, then a closer of a quarter: a quarter alone at the end would not hold
    over[np.isclose(over, left + 0.25 * long, atol=1e-9)] = left + 0.5 * long
    return np.where(odd[:, None], over, even)


PATTERN = Pattern(
    ShapeInfo(
        "brick",
        "brick courses with their bed and head joints; the first course stands on the part's lower edge",
        (
            length("length", "length of a brick with its joint", least=2.0, most=500.0),
            length("height", "height of a course with its joint", least=1.0, most=500.0),
            ParameterInfo("bond", "choice", "how the courses overlap", "running", choices=tuple(SHIFT)),
            ParameterInfo(
                "first",
                "choice",
                "how the lowest course begins at the left end; walls that meet at a corner take one each",
                "whole",
                choices=("whole", "half"),
            ),
        ),
        least_feature=PENCIL_APART,
    ),
    lines,
    check,
    per_area(lambda values: values.number("length") * values.number("height")),
    lambda values: min(values.number("height"), SHIFT[values.word("bond")] * values.number("length")),
)
