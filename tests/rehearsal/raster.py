"""Pages as pictures: what a printer would put on paper, at 600 dots to the inch."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil
from pathlib import Path

import cv2
import numpy as np
import numpy.typing as npt
import pypdfium2

DPI = 600
DOTS = DPI / 25.4  # a millimetre at true scale

Grey = npt.NDArray[np.uint8]


@dataclass(frozen=True, slots=True, eq=False)
class Pieces:
    """Connected pieces of ink: for each dot the number of its piece, and of each its left, top, width, height and dots. 0 is the paper."""

    labels: npt.NDArray[np.int32]
    boxes: npt.NDArray[np.int32]


def pieces_of(ink: Grey) -> Pieces:
    """Return the pieces that are at least half black."""
    _, labels, boxes, _ = cv2.connectedComponentsWithStats((ink > 127).astype(np.uint8), connectivity=8)
    return Pieces(labels, boxes)


class PagePicture:
    """A page's number from 1, and its ink: 0 is white paper and 255 is black; row 0 is the top. An A4 page has 35 million dots: it is
    drawn when it is asked for."""

    def __init__(self, number: int, page: pypdfium2.PdfPage) -> None:
        self.number = number
        self._page = page

    @property
    def height(self) -> int:
        """Dots from the upper to the lower edge."""
        return ceil(self._page.get_height() * DPI / 72)

    def ink(self) -> Grey:
        """Return the whole page."""
        return self._drawn((0.0, 0.0, 0.0, 0.0))

    def head(self, tall: float) -> Grey:
        """Return its uppermost ``tall`` mm."""
        return self._drawn((0.0, self._page.get_height() - tall * 72 / 25.4, 0.0, 0.0))

    def _drawn(self, crop: tuple[float, float, float, float]) -> Grey:
        bitmap = self._page.render(scale=DPI / 72, grayscale=True, crop=crop)
        return 255 - bitmap.to_numpy().reshape(bitmap.height, -1)[:, : bitmap.width]


def page_pictures(pdf: Path) -> Iterator[PagePicture]:
    """Yield the pages of a PDF one by one."""
    document = pypdfium2.PdfDocument(pdf)
    try:
        for index in range(len(document)):
            page = document[index]
            yield PagePicture(index + 1, page)
            page.close()
    finally:
        document.close()
