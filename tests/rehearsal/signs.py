"""Signs beside the pictures of a step: the bottle of glue at the left of what is put together, crossed out where it is put up dry."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from tests.rehearsal.raster import DOTS, Pieces

BOTTLE, CROSSED = (4.05, 9.25), (6.4, 12.0)  # mm over all, wide and high
OFF = 0.3
INK = 0.45  # share of a sign's box that is ink at most


@dataclass(frozen=True, slots=True)
class Sign:
    """A bottle of glue: its middle in mm of the page; ``dry``: it is crossed out."""

    x: float
    y: float
    dry: bool


def glue_signs(seen: Pieces) -> Iterator[Sign]:
    """Yield the bottles of a page's picture."""
    tall = len(seen.labels) / DOTS
    boxes = seen.boxes / DOTS
    for size, dry in ((BOTTLE, False), (CROSSED, True)):
        fits = (np.abs(boxes[:, 2:4] - size) < OFF).all(axis=1)
        for number in np.flatnonzero(fits):
            left, top, width, height = (float(value) for value in boxes[number, :4])
            if seen.boxes[number, 4] / DOTS**2 < INK * width * height:
                yield Sign(left + width / 2, tall - top - height / 2, dry)
