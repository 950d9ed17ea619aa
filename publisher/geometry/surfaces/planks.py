"""Planks side by side, their butt joints staggered by at least a quarter of a plank, with grain on request."""

from collections.abc import Iterator

import numpy as np
import shapely

from publisher.basics import Box, Finding
from publisher.geometry.model import ParameterInfo, ShapeInfo
from publisher.geometry.registry import Values, count, length, mm
from publisher.geometry.surfaces.noise import noise
from publisher.geometry.surfaces.pattern import (
    PENCIL_APART,
    Array,
    Ground,
    LineFamily,
    Lines,
    Pattern,
    per_area,
    segments,
)
from publisher.geometry.surfaces.rows import QUARTER, bed_joints, head_joints, numbers, spread


def check(values: Values) -> Iterator[Finding]:
    """Find planks wider than long."""
    long, wide = values.number("length"), values.number("width")
    if wide > long:
        hint = "swap the two, or make the planks longer"
        yield values.wrong("width", f"planks {mm(long)} long and {mm(wide)} wide run the other way", hint, long)


def lines(values: Values, ground: Ground) -> tuple[LineFamily, ...]:
    """Return the long joints, the butt joints and the grain; worked out lying, turned when the planks run upwards."""
    up = values.word("run") == "up"
    box, (left, bottom) = ground.box, ground.origin
    if up:
        box, left, bottom = Box(box.bottom, box.left, box.top, box.right), bottom, left
    long, wide = values.number("length"), values.number("width")
    k = numbers(box.bottom, box.top, bottom, wide)
    # each row is shifted by a quarter to three quarters of a plank against the one below
    steps = QUARTER + (1.0 - 2.0 * QUARTER) * noise(ground.seed, 2, np.arange(len(k)))
    shift = np.cumsum(steps) % 1.0
    i = numbers(box.left - 2.0 * long, box.right, left, long)
    rows = [left + (i + each) * long for each in shift]
    low = bottom + k * wide
    families = [
        bed_joints(low, box),
        head_joints(*spread(rows, low, low + wide), box, QUARTER * long),
        *_grain(values.count("grain"), rows, low, long, wide, ground.seed),
    ]
    return tuple(_turned(f) for f in families) if up else tuple(families)


def _grain(many: int, rows: list[Array], low: Array, long: float, wide: float, seed: int) -> tuple[LineFamily, ...]:
    """Return ``many`` lines along each plank, of a third to two thirds of its length."""
    if not many or not rows:
        return ()
    starts = np.stack(rows)[:, :, None]
    row, plank, line = np.ogrid[: starts.shape[0], : starts.shape[1], :many]
    size = long * (1.0 + noise(seed, 3, row, plank, line)) / 3.0
    first = starts + 0.1 * long + noise(seed, 4, row, plank, line) * (0.8 * long - size)
    y = low[:, None, None] + wide * (line + 1.0) / (many + 1.0)
    return (LineFamily(segments(first, y, first + size, y)),)


def _turned(family: LineFamily) -> LineFamily:
    """Return the family with x and y exchanged."""

    def swap(lines: Lines) -> Lines:
        swapped: Lines = shapely.transform(lines, lambda xy: xy[:, ::-1])
        return swapped

    return LineFamily(swap(family.lines), None if family.guards is None else swap(family.guards))


PATTERN = Pattern(
    ShapeInfo(
        "planks",
        "planks side by side, with butt joints that never stand in line and grain on request",
        (
            length("width", "width of a plank with its joint", least=2.0, most=500.0),
            length("length", "length of a plank", least=6.0, most=2000.0),
            count("grain", "lines of grain on each plank", 0, 4, 0),
            ParameterInfo("run", "choice", "which way the planks run", "across", choices=("across", "up")),
        ),
        least_feature=PENCIL_APART,
    ),
    lines,
    check,
    per_area(lambda values: values.number("length") * values.number("width") / (1.0 + values.number("grain"))),
    lambda values: values.number("width") / (1.0 + values.number("grain")),
)
