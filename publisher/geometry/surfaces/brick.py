"""Brick courses in running bond: every course shifted by half a brick against its neighbours.

Running bond asks for an overlap of at least a quarter of the unit's length (TMS 402); half a brick is the stretcher bond.
"""

from collections.abc import Iterator
from math import ceil

from publisher.basics import Box, Finding
from publisher.geometry.model import ParameterInfo, ShapeInfo
from publisher.geometry.shapes.shape import length
from publisher.geometry.surfaces.pattern import Line, Pattern
from publisher.geometry.values import Values, mm

SHIFT = {"running": 0.5}  # of a brick, from course to course


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


def lines(values: Values, box: Box, seed: int) -> tuple[tuple[Line, ...], tuple[Line, ...]]:
    """Return bed joints and head joints over the box, from its lower left corner; the first course starts with a whole brick."""
    del seed
    long, high, shift = values.number("length"), values.number("height"), SHIFT[values.word("bond")]
    courses = ceil(box.height / high - 1e-9)
    beds = tuple(((box.left, box.bottom + k * high), (box.right, box.bottom + k * high)) for k in range(1, courses))
    heads: list[Line] = []
    for k in range(courses):
        low, top = box.bottom + k * high, min(box.bottom + (k + 1) * high, box.top)
        first = box.left + (shift * k % 1.0 or 1.0) * long
        for i in range(max(0, ceil((box.right - first) / long - 1e-9))):
            heads.append(((first + i * long, low), (first + i * long, top)))
    return beds, tuple(heads)


PATTERN = Pattern(
    ShapeInfo(
        "brick",
        "brick courses with their bed and head joints; the first course stands on the part's lower edge",
        (
            length("length", "length of a brick with its joint", least=2.0, most=500.0),
            length("height", "height of a course with its joint", least=1.0, most=500.0),
            ParameterInfo("bond", "choice", "how the courses overlap", "running", choices=tuple(SHIFT)),
        ),
        (),
        False,
    ),
    lines,
    check,
    lambda values: values.number("length") * values.number("height"),
)
