"""Shingles and tiles in rows from the eave up: what is seen of each row, joints half a tile apart from row to row."""

from collections.abc import Iterator
from math import pi

import numpy as np
import shapely

from publisher.basics import Finding
from publisher.geometry.model import ParameterInfo, ShapeInfo
from publisher.geometry.registry import Values, length, mm
from publisher.geometry.surfaces.pattern import (
    JOINT_CLEAR,
    PENCIL_APART,
    Array,
    Ground,
    LineFamily,
    Lines,
    Pattern,
    per_area,
)
from publisher.geometry.surfaces.rows import QUARTER, bed_joints, head_joints, numbers

# the lower end of one tile, from its left joint to its right one: share of the width, share of the end's own height from its tip
_ARC = np.linspace(pi, 2.0 * pi, 7)
TAILS: dict[str, tuple[Array, Array, float]] = {
    "square": (np.array([0.0, 1.0]), np.array([0.0, 0.0]), 0.0),
    "pointed": (np.array([0.0, 0.5, 1.0]), np.array([1.0, 0.0, 1.0]), 0.4),
    "round": (0.5 + 0.5 * np.cos(_ARC), 1.0 + np.sin(_ARC), 0.5),
}


def _tail(values: Values) -> float:
    """Height in mm of the shaped lower end: a half circle is half as high as wide, a point somewhat less."""
    return TAILS[values.word("tail")][2] * values.number("width")


def check(values: Values) -> Iterator[Finding]:
    """Find rows too low for the shape of the tiles' ends."""
    shown, tail = values.number("shown"), _tail(values)
    if tail > 0.9 * shown:
        yield values.wrong(
            "shown",
            f"{values.word('tail')} ends of tiles {mm(values.number('width'))} wide are {mm(tail)} high, but only {mm(shown)} is seen",
            "make shown larger, or the tiles narrower",
            tail / 0.9,
        )


def lines(values: Values, ground: Ground) -> tuple[LineFamily, ...]:
    """Return the lower ends of all rows and the joints above them; the first row hangs at the nominal bottom edge or eave."""
    wide, shown, tail, box = values.number("width"), values.number("shown"), _tail(values), ground.box
    left, bottom = ground.origin
    k = numbers(box.bottom, box.top, bottom, shown)
    i = numbers(box.left - wide, box.right + wide, left, wide)
    x = left + (i + 0.5 * (k[:, None] % 2.0)) * wide
    rows = bottom + k * shown
    low = np.broadcast_to(rows[:, None], x.shape)
    # the lowest row ends with the piece: its own ends are cut, not drawn
    first = low <= box.bottom + JOINT_CLEAR
    joints = head_joints(x.ravel(), (low + tail * ~first).ravel(), low.ravel() + shown, box, QUARTER * wide)
    if not tail:
        return bed_joints(rows, box), joints
    drawn = ~first[:, 0]
    return LineFamily(_ends(values, x[drawn], rows[drawn], tail)), joints


def _ends(values: Values, x: Array, y: Array, tail: float) -> Lines:
    """Return one line for the lower ends of each row."""
    across, up, _ = TAILS[values.word("tail")]
    xs = (x[:, :, None] + across[None, None, :-1] * values.number("width")).reshape(
        len(y), (len(across) - 1) * x.shape[1]
    )
    ys = y[:, None] + np.tile(up[:-1] * tail, x.shape[1])[None, :]
    ends: Lines = shapely.linestrings(np.stack([xs, ys], axis=-1))
    return ends


PATTERN = Pattern(
    ShapeInfo(
        "shingles",
        "shingles or tiles in rows from the lower edge up, with square, pointed or round ends",
        (
            length("width", "width of a tile with its joint", least=2.0, most=500.0),
            length("shown", "what is seen of each row, from end to end", least=1.5, most=500.0),
            ParameterInfo("tail", "choice", "form of the lower ends", "square", choices=tuple(TAILS)),
        ),
        least_feature=PENCIL_APART,
    ),
    lines,
    check,
    per_area(lambda values: values.number("width") * values.number("shown")),
    lambda values: min(values.number("width") / 2.0, values.number("shown")),
)
