"""What a picture of a step draws thick and what thin: thick is what is added, thin what stands there already.

Looked at with half the dots, which is enough for lines of a third of a millimetre. Words are left out.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

import cv2
import numpy as np
import numpy.typing as npt

from tests.rehearsal.raster import DOTS, Grey

COARSE = 2
THICK = 0.6  # mm: the contour of what is added is wider, all other lines are narrower
HEAVIEST = 1.3  # mm: a corner is hardly wider; wider ink is the head of an arrow, or a coat
LEAST_THICK, LEAST_THIN = 6.0, 10.0  # mm over all, of a thick and of a thin outline
ROUND = 0.03  # by which the form of a detail's ring may be off
WORD_HIGH, WORD_DEEP = 0.8, 0.25  # of the em: what words take above and below their base line

Boxes = Sequence[tuple[float, float, float, float]]


@dataclass(frozen=True, slots=True)
class Outline:
    """Connected ink of one weight: its box in mm from the lower left of the page."""

    weight: Literal["thick", "thin"]
    left: float
    bottom: float
    right: float
    top: float

    @property
    def middle(self) -> tuple[float, float]:
        """Return the middle of the box."""
        return (self.left + self.right) / 2, (self.bottom + self.top) / 2

    @property
    def size(self) -> float:
        """Return the longer side of the box."""
        return max(self.right - self.left, self.top - self.bottom)

    def within(self, other: "Outline", by: float) -> bool:
        """Say whether it lies in the box of another one made larger by so many mm."""
        return (
            self.left > other.left - by
            and self.right < other.right + by
            and self.bottom > other.bottom - by
            and self.top < other.top + by
        )


def outlines(ink: Grey, words: Boxes) -> tuple[Outline, ...]:
    """Return the thick outlines of a page's picture, and the thin ones that are more than a line or a ring. ``words``: boxes (mm) to leave
    out."""
    tall, wide = len(ink) // COARSE, ink.shape[1] // COARSE
    coarse = cv2.resize(ink, (wide, tall), interpolation=cv2.INTER_AREA)
    dots = DOTS / COARSE
    for left, bottom, right, top in words:
        coarse[
            max(round(tall - top * dots), 0) : round(tall - bottom * dots), round(left * dots) : round(right * dots)
        ] = 0
    black = (coarse > 127).astype(np.uint8)
    heavy = _opened(black, THICK * dots)
    solid = cv2.dilate(_opened(heavy, HEAVIEST * dots), np.ones((5, 5), np.uint8))
    thick = heavy & ~solid & 1
    thin = black & ~cv2.dilate(heavy, np.ones((5, 5), np.uint8)) & 1
    found = [*_pieces(thick, "thick", dots, LEAST_THICK, 0.0), *_pieces(thin, "thin", dots, LEAST_THIN, LEAST_THIN / 3)]
    return tuple(found)


def _opened(black: npt.NDArray[np.uint8], across: float) -> npt.NDArray[np.uint8]:
    kernel = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (max(1, int(across)), max(1, int(across))))
    return np.asarray(cv2.morphologyEx(black, cv2.MORPH_OPEN, kernel), dtype=np.uint8)


def _pieces(
    black: npt.NDArray[np.uint8], weight: Literal["thick", "thin"], dots: float, least: float, narrow: float
) -> Iterator[Outline]:
    """Yield pieces so long at least, and so wide, that are no ring."""
    count, labels, boxes, _ = cv2.connectedComponentsWithStats(black, connectivity=8)
    for number in range(1, count):
        x, y, width, height, _ = (float(value) for value in boxes[number])
        if max(width, height) < least * dots or min(width, height) < narrow * dots:
            continue
        if abs(width - height) < ROUND * height and _is_ring(labels, number, boxes[number]):
            continue
        left, top = x / dots, (len(black) - y) / dots
        yield Outline(weight, left, top - height / dots, left + width / dots, top)


def _is_ring(labels: npt.NDArray[np.int32], number: int, box: npt.NDArray[np.int32]) -> bool:
    """Say whether ink lies on a circle that fills its box."""
    x, y, width, height = (int(value) for value in box[:4])
    rows, columns = np.nonzero(labels[y : y + height, x : x + width] == number)
    far = np.hypot(rows - (height - 1) / 2, columns - (width - 1) / 2) / (height / 2)
    return bool(np.quantile(far, 0.05) > 1.0 - 4 * ROUND)
