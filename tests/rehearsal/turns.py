"""Which way a layer is turned, by the curved arrow that a picture draws round it.

An arrow is one piece of ink: a line, and a head that is wider than any line. All pictures look down on their stack, so that what runs
clockwise on the page is turned clockwise.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import cv2
import numpy as np

from tests.rehearsal.raster import DOTS, Pieces

HEAD = 1.2  # mm: an arrow's head is wider, its line is not
LONG = (6.0, 90.0)  # mm over all
INK = (3.0, 60.0)  # mm²
BENT = 0.04  # of an arrow's length by which its middle is off the straight line, at least
MIDDLE = (0.4, 0.6)  # of the way from its end to its head
ENDS = 0.9


@dataclass(frozen=True, slots=True)
class Curved:
    """A curved arrow: its middle in mm of the page; ``anticlockwise``: which way it runs."""

    x: float
    y: float
    anticlockwise: bool


def curved_arrows(seen: Pieces) -> Iterator[Curved]:
    """Yield the curved arrows of a page's picture."""
    boxes = seen.boxes / DOTS
    long, ink = boxes[:, 2:4].max(axis=1), seen.boxes[:, 4] / DOTS**2
    fits = (long > LONG[0]) & (long < LONG[1]) & (ink > INK[0]) & (ink < INK[1])
    disc = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (round(HEAD * DOTS), round(HEAD * DOTS)))
    for number in np.flatnonzero(fits):
        left, top, width, height, _ = (int(value) for value in seen.boxes[number])
        own = np.pad((seen.labels[top : top + height, left : left + width] == number).astype(np.uint8), 2)
        heads, labels = cv2.connectedComponents(cv2.morphologyEx(own, cv2.MORPH_OPEN, disc))
        if heads != 2:
            continue
        rows, columns = np.nonzero(own)
        points = np.column_stack((columns, -rows)).astype(float)
        head = np.column_stack(np.nonzero(labels == 1)[::-1]).astype(float).mean(axis=0) * (1.0, -1.0)
        away = np.hypot(*(points - head).T)
        end = points[away > ENDS * away.max()].mean(axis=0)
        way = head - end
        share = (points - end) @ way / (way @ way)
        middle = points[(share > MIDDLE[0]) & (share < MIDDLE[1])]
        if not len(middle):
            continue
        aside = float(way[0] * (middle[:, 1].mean() - end[1]) - way[1] * (middle[:, 0].mean() - end[0])) / float(
            way @ way
        )
        if abs(aside) > BENT:
            x, y = middle.mean(axis=0)
            yield Curved((left - 2 + x) / DOTS, (len(seen.labels) - top + 2 + y) / DOTS, aside < 0.0)
