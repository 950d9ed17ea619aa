"""What a person draws first on a sheet: the lines on which rows of pieces stand. Millimetres on the sheet."""

import numpy as np

from publisher.basics import record
from publisher.geometry import Part
from publisher.material import Layout

SAME_GUIDE = 0.3  # mm; pieces whose ends differ by less stand on one line
LEAST_ON_LINE = 2


@record
class RowLines:
    """Lines to draw: ``up``: they run across, at distances from the lower edge; else upright, from the left edge."""

    up: bool
    at: tuple[float, ...]


def row_lines(layout: Layout, parts: tuple[Part, ...], apart: float, turned_in: float | None = None) -> RowLines:
    """Return the lines on which rows stand: those of the direction in which more pieces stand on a line with others.

    ``apart``: the least distance between two lines (mm on the sheet), so that their numbers keep off each other.
    ``turned_in``: the sheet is shown turned by a quarter to the left in a picture this wide (mm on the sheet); lines are then
    those of the picture.
    """
    outlines = {p.id: np.asarray(p.outline.outer.points) for p in parts}
    ends = []
    for item in layout.items:
        if item.part in outlines:
            a, b, c, d, e, f = item.pose.matrix()
            x, y = outlines[item.part].T
            across, up = a * x + c * y + e, b * x + d * y + f
            if turned_in is not None:
                across, up = turned_in - up, across
            ends.append((float(across.min()), float(up.min())))
    left, low = ([e[0] for e in ends], [e[1] for e in ends]) if ends else ([], [])
    level, upright = _lines(low), _lines(left)
    lying = sum(n for _, n in level) >= sum(n for _, n in upright)
    chosen = level if lying else upright
    at: list[float] = []
    for place, _ in chosen:
        if not at or place - at[-1] >= apart:
            at.append(place)
    return RowLines(lying, tuple(at))


def _lines(ends: list[float]) -> list[tuple[float, int]]:
    """Return places where two or more ends lie, with their number, in order."""
    found: list[list[float]] = []
    for end in sorted(ends):
        if found and end - found[-1][0] <= SAME_GUIDE:
            found[-1].append(end)
        else:
            found.append([end])
    return [(group[0], len(group)) for group in found if len(group) >= LEAST_ON_LINE]
