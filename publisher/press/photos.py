"""A designer's picture made ready for the page: upright, RGB, at most 300 dots per inch at its size."""

from io import BytesIO
from typing import Any

from publisher.basics.units import INCH_MM

DOTS_PER_MM = 300 / INCH_MM
FORMATS = ("JPEG", "PNG", "WEBP", "TIFF")  # an explicit list: some formats hand their content to helper programs


def prepared(data: bytes, width_mm: float, height_mm: float) -> Any:
    """Return a reportlab image of the picture, turned upright by EXIF, in RGB, reduced to 300 dpi at the given size."""
    from PIL import Image, ImageOps
    from reportlab.lib.utils import ImageReader

    with Image.open(BytesIO(data), formats=FORMATS) as opened:
        image = ImageOps.exif_transpose(opened)
        if image.mode in ("RGBA", "LA", "P"):
            white = Image.new("RGBA", image.size, "white")
            white.alpha_composite(image.convert("RGBA"))
            image = white
        image = image.convert("RGB")
    most = (max(1, round(width_mm * DOTS_PER_MM)), max(1, round(height_mm * DOTS_PER_MM)))
    if image.width > most[0]:
        image = image.resize(most, Image.Resampling.LANCZOS)
    return ImageReader(image)
