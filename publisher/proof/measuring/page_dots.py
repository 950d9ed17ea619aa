"""Whole pages as dots, drawn by the second reader as large as somebody else's picture of them."""

from contextlib import closing

import numpy as np

from publisher.proof.reading import Array

SHAPE = 0.01  # share by which a picture's sides may differ from those of its page, beside one dot


def page_dots(data: bytes, sizes: tuple[tuple[int, int], ...]) -> tuple[Array | None, ...] | None:
    """Return the greys (rows, columns; 0 black, 255 white) of each page, drawn on so many dots across and down: None where these
    have not the shape of the page, or are none; None instead of all for a file that cannot be drawn, or has other pages."""
    import pypdfium2
    from pypdfium2 import raw

    try:
        document = pypdfium2.PdfDocument(data)
        with closing(document):
            if len(document) != len(sizes):
                return None
            drawn: list[Array | None] = []
            for number, (across, down) in enumerate(sizes):
                with closing(document[number]) as page:
                    width, height = page.get_size()
                    if (
                        not across
                        or not down
                        or abs(across * height - down * width) > SHAPE * across * height + max(width, height)
                    ):
                        drawn.append(None)
                        continue
                    buffer = np.full((down, (across + 3) // 4 * 4), 255, dtype=np.uint8)
                    bitmap = raw.FPDFBitmap_CreateEx(
                        across, down, raw.FPDFBitmap_Gray, buffer.ctypes.data, buffer.shape[1]
                    )
                    try:
                        raw.FPDF_RenderPageBitmap(
                            bitmap, page.raw, 0, 0, across, down, 0, raw.FPDF_ANNOT | raw.FPDF_GRAYSCALE
                        )
                    finally:
                        raw.FPDFBitmap_Destroy(bitmap)
                    drawn.append(buffer[:, :across])
            return tuple(drawn)
    except pypdfium2.PdfiumError:
        return None
