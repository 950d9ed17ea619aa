"""A designer's picture made ready for the page: as it is to be seen, at most 300 dots per inch at its size."""

from typing import Any

from publisher.basics.units import INCH_MM
from publisher.brief import shown_pixels

DOTS_PER_MM = 300 / INCH_MM


def prepared(data: bytes, width_mm: float, height_mm: float) -> Any:
    """Return a reportlab image of the picture, upright, in RGB, reduced to 300 dpi at the given size."""
    from PIL import Image
    from reportlab.lib.utils import ImageReader

    image = shown_pixels(data)
    most = (max(1, round(width_mm * DOTS_PER_MM)), max(1, round(height_mm * DOTS_PER_MM)))
    if image.width > most[0]:
        image = image.resize(most, Image.Resampling.LANCZOS)
    return ImageReader(image)
