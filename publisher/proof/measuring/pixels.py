"""The second road: PDFium draws the pages, and the pixels are measured: whole pages at 127 dpi, squares to measure at 300 dpi."""

from collections.abc import Callable
from contextlib import closing
from math import ceil, floor
from typing import Any

import numpy as np

from publisher.basics import Box, LengthPromise, Promises, record
from publisher.proof.measuring.page_sight import Crop, PageSight
from publisher.proof.measuring.witness import RingSight, see_ring
from publisher.proof.reading import MM_PER_INCH, MM_PER_PT, Array

FINE_DPI = 300.0  # dpi for lengths
COMPARED_DPI = 100.0  # dpi for one page beside another
PAGE_DPI = 127.0  # dpi for whole pages, 5 dots for each mm: the thinnest line is nearly one dot wide
LEAST_DPI = 75.0  # a line of 0.5 mm is 1.5 dots wide: its darkest one is at least three quarters dark
MOST_DOTS = 12_000_000  # of one page; on larger ones the dots are coarser
MARGIN_ROUNDING = 1.0  # mm over the limit within which a dot may carry ink from inside
AROUND_PIXEL = 1.6  # mm drawn round a square
SIDE_DISTANCE = 0.6  # mm on either side of a promised line in which it is looked for
DARK_PIXEL = 24  # of 255: what counts as ink
ONE_SQUARE = 0.01  # mm between the ends of sides that make one square
LARGEST_PICTURE = 3000.0  # mm: no page larger than this is drawn


@record
class SquareReading:
    """A calibration square by pixels: promised box (mm), width across and height down found (None: its lines were not found)."""

    page: int
    box: Box
    across: float | None
    down: float | None


@record
class MarginReading:
    """Ink outside the printable limit of a page, seen by pixels: how many pixels, and one of them in mm."""

    page: int
    pixels: int
    at: tuple[float, float]


@record
class PixelReadings:
    """All that pixels say of a file. ``trouble``: why the second reader could not open it."""

    squares: tuple[SquareReading, ...] = ()
    margins: tuple[MarginReading, ...] = ()
    rings: tuple[RingSight, ...] = ()
    sights: tuple[PageSight, ...] = ()
    trouble: str = ""


def read_pixels(
    data: bytes, promises: Promises, see: Callable[[int, Crop], PageSight | None] = lambda _, __: None
) -> PixelReadings:
    """Return what the second reader sees of the promised squares, margins and outlines; ``see`` looks at the dots of a page."""
    import pypdfium2

    try:
        document = pypdfium2.PdfDocument(data)
    except pypdfium2.PdfiumError:
        return PixelReadings(trouble="it does not open the file")
    try:
        squares: list[SquareReading] = []
        margins: list[MarginReading] = []
        rings: list[RingSight] = []
        sights: list[PageSight | None] = []
        count = len(document)
        for promise in promises.pages:
            if promise.page > count:
                continue
            with _page(document, promise.page - 1) as page:
                if not 1.0 < max(page.width, page.height) < LARGEST_PICTURE:
                    continue
                squares += [_square(page, promise.page, box) for box in squares_of(promises.lengths, promise.page)]
                dots = page.whole()
                margins.append(_margin(dots, promise.page, promise.limit))
                rings += [see_ring(outline, dots) for outline in promises.outlines if outline.page == promise.page]
                sights.append(see(promise.page, dots))
        seen = tuple(sight for sight in sights if sight is not None)
        return PixelReadings(tuple(squares), tuple(margins), tuple(rings), seen)
    except pypdfium2.PdfiumError:
        return PixelReadings(trouble="it cannot draw a page of the file")
    finally:
        document.close()


def pages_seen(data: bytes, other: bytes, most: int) -> set[int]:
    """Return the numbers of the pages whose dots are darker or lighter than those of another file's page by more than ``most`` of
    255; the pages that one of them cannot draw as well."""
    import pypdfium2

    try:
        first, second = pypdfium2.PdfDocument(data), pypdfium2.PdfDocument(other)
    except pypdfium2.PdfiumError:
        return {1}
    differing: set[int] = set()
    with closing(first), closing(second):
        for index in range(min(len(first), len(second))):
            try:
                with _page(first, index) as page, _page(second, index) as old:
                    sizes = (page.width, page.height) == (old.width, old.height)
                    sizes = sizes and max(page.width, page.height) < LARGEST_PICTURE
                    whole = Box(0.0, 0.0, old.width, old.height)
                    dots = [side.crop(whole, COMPARED_DPI)[0].astype(int) for side in (page, old)] if sizes else []
                    if not sizes or int(np.abs(dots[0] - dots[1]).max()) > most:
                        differing.add(index + 1)
            except pypdfium2.PdfiumError:
                differing.add(index + 1)
    return differing


def squares_of(lengths: tuple[LengthPromise, ...], page: int) -> tuple[Box, ...]:
    """Return the boxes that the calibration promises of a page make up: sides that share an end belong together."""
    boxes: list[Box] = []
    for side in lengths:
        if side.page != page or side.purpose != "calibration":
            continue
        box = Box.round((side.start, side.end))
        for other in [other for other in boxes if box.overlap(other) >= -ONE_SQUARE]:
            boxes.remove(other)
            box = Box.round((*box.corners(), *other.corners()))
        boxes.append(box)
    return tuple(b for b in boxes if b.width > 5 and b.height > 5)


class _page:
    """One page of the second reader: its size in mm, and crops of it as arrays of darkness (0 paper, 255 black).

    Darkness is in bytes: a plotter's page has millions of pixels.
    """

    def __init__(self, document: Any, index: int) -> None:
        self.page = document[index]
        width, height = self.page.get_size()
        self.width, self.height = width * MM_PER_PT, height * MM_PER_PT

    def __enter__(self) -> "_page":
        return self

    def __exit__(self, *_: object) -> None:
        self.page.close()

    def whole(self) -> Crop:
        """Return the whole page, on fewer dots where it is very large."""
        most = (MOST_DOTS / (self.width * self.height)) ** 0.5 * MM_PER_INCH
        return self.crop(Box(0.0, 0.0, self.width, self.height), max(LEAST_DPI, min(PAGE_DPI, most)))

    def crop(self, box: Box, dpi: float) -> Crop:
        """Return (darkness (rows, columns), mm of column 0, pixels per mm across, mm of row 0, pixels per mm down).

        The page is drawn on a whole number of pixels, so that the true scale of each axis differs a little from the dpi.
        """
        from pypdfium2 import raw

        wide, high = max(1, round(self.width * dpi / MM_PER_INCH)), max(1, round(self.height * dpi / MM_PER_INCH))
        kx, ky = wide / self.width, high / self.height
        left, top = max(0, floor(box.left * kx)), max(0, floor((self.height - box.top) * ky))
        right, bottom = min(wide, ceil(box.right * kx)), min(high, ceil((self.height - box.bottom) * ky))
        columns, rows = max(1, right - left), max(1, bottom - top)
        buffer = np.full((rows, (columns + 3) // 4 * 4), 255, dtype=np.uint8)
        bitmap = raw.FPDFBitmap_CreateEx(columns, rows, raw.FPDFBitmap_Gray, buffer.ctypes.data, buffer.shape[1])
        try:
            flags = raw.FPDF_ANNOT | raw.FPDF_PRINTING | raw.FPDF_GRAYSCALE
            raw.FPDF_RenderPageBitmap(bitmap, self.page.raw, -left, -top, wide, high, 0, flags)
        finally:
            raw.FPDFBitmap_Destroy(bitmap)
        return 255 - buffer[:, :columns], left / kx, kx, self.height - top / ky, ky


def _square(page: _page, number: int, box: Box) -> SquareReading:
    dark, x0, kx, y0, ky = page.crop(box.grown(AROUND_PIXEL), FINE_DPI)
    left = _line_at(dark, (box.left - x0) * kx, kx, (y0 - box.top) * ky, (y0 - box.bottom) * ky)
    right = _line_at(dark, (box.right - x0) * kx, kx, (y0 - box.top) * ky, (y0 - box.bottom) * ky)
    top = _line_at(dark.T, (y0 - box.top) * ky, ky, (box.left - x0) * kx, (box.right - x0) * kx)
    bottom = _line_at(dark.T, (y0 - box.bottom) * ky, ky, (box.left - x0) * kx, (box.right - x0) * kx)
    across = None if left is None or right is None else (right - left) / kx
    down = None if top is None or bottom is None else (bottom - top) / ky
    return SquareReading(number, box, across, down)


def _line_at(dark: Array, expected: float, scale: float, first: float, last: float) -> float | None:
    """Return where an upright line stands (pixels, to a fraction): the median over rows of the darkness's middle.

    Ticks that meet the line pull the middle aside in fewer than half of the rows, so that the median does not notice them.
    """
    reach = SIDE_DISTANCE * scale
    low, high = max(0, floor(expected - reach)), min(dark.shape[1], ceil(expected + reach))
    margin = 0.06 * (last - first)
    rows = dark[max(0, ceil(first + margin)) : max(0, floor(last - margin)), low:high]
    if rows.size == 0:
        return None
    weight = rows.sum(axis=1)
    inked = weight > 255 * 0.1 * scale
    if inked.sum() < 0.8 * len(rows):
        return None
    middles = (rows[inked] @ (np.arange(low, high) + 0.5)) / weight[inked]
    return float(np.median(middles))


def _margin(dots: Crop, number: int, limit: Box) -> MarginReading:
    dark, _, kx, y0, ky = dots
    shown = limit.grown(MARGIN_ROUNDING)
    top, bottom = max(0, floor((y0 - shown.top) * ky)), max(0, ceil((y0 - shown.bottom) * ky))
    left, right = max(0, floor(shown.left * kx)), max(0, ceil(shown.right * kx))
    count, at = 0, (0.0, 0.0)
    for first_row, first_column, strip in (
        (0, 0, dark[:top]), (bottom, 0, dark[bottom:]), (top, 0, dark[top:bottom, :left]), (top, right, dark[top:bottom, right:]),
    ):  # fmt: skip
        if not strip.size or int(strip.max()) <= DARK_PIXEL:
            continue
        found = np.argwhere(strip > DARK_PIXEL)
        if not count:
            row, column = found[0]
            at = ((first_column + column + 0.5) / kx, y0 - (first_row + row + 0.5) / ky)
        count += len(found)
    return MarginReading(number, count, at)
