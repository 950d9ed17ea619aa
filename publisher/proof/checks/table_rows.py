"""Printed tables: the rows between long level lines, with the words that stand in them."""

from itertools import pairwise

import numpy as np

from publisher.basics import record
from publisher.proof.reading import PageRead, TextRun

ROW_LEVEL = 0.01  # mm between the ends of a level line
SAME_SIDE = 0.5  # mm between the left ends of a table's lines


@record
class Band:
    """What stands between two level lines that follow each other: their left end (mm), and the runs of letters there."""

    left: float
    runs: tuple[TextRun, ...]


def bands(page: PageRead, longer: float) -> list[Band]:
    """Return the rows of all tables whose lines are longer than ``longer`` mm, each table from its top."""
    levels: list[tuple[float, float, float]] = []  # left, right, height
    for piece in page.pieces:
        if piece.visible and piece.grey is not None and piece.box.width > longer:
            first = piece.starts[:-1][np.diff(piece.starts) == 2]
            (ax, ay), (bx, by) = piece.points[first].T, piece.points[first + 1].T
            left, right = np.minimum(ax, bx), np.maximum(ax, bx)
            some = (np.abs(ay - by) < ROW_LEVEL) & (right - left > longer)
            for x, end, y in zip(left[some].tolist(), right[some].tolist(), ay[some].tolist(), strict=True):
                levels.append((round(x / SAME_SIDE) * SAME_SIDE, end, y))
    found = []
    for (left, right, high), (other, _, low) in pairwise(sorted(levels, key=lambda level: (level[0], -level[2]))):
        if other == left:
            runs = tuple(
                run
                for run in page.texts
                if run.visible
                and low < run.y < high
                and left - SAME_SIDE <= run.x <= right + SAME_SIDE
                and run.text.strip()
            )
            found.append(Band(left, runs))
    return found
