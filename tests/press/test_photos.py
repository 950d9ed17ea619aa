"""Photographs: upright by EXIF, RGB, at most 300 dpi at size."""

from io import BytesIO

import pytest
from PIL import Image

from publisher.press.photos import prepared


def jpeg(mode: str, orientation: int = 1) -> bytes:
    out = BytesIO()
    exif = Image.Exif()
    exif[274] = orientation
    Image.new(mode, (1200, 600)).save(out, "JPEG", exif=exif)
    return out.getvalue()


def test_a_turned_photo_stands_upright_and_is_reduced() -> None:
    image = prepared(jpeg("RGB", 6), 25.4, 50.8)._image
    assert image.size == (300, 600)


@pytest.mark.parametrize("mode", ["L", "CMYK", "RGB"])
def test_every_mode_becomes_rgb(mode: str) -> None:
    assert prepared(jpeg(mode), 100, 50)._image.mode == "RGB"


def test_a_see_through_picture_lies_on_white() -> None:
    out = BytesIO()
    Image.new("RGBA", (10, 10), (0, 0, 0, 0)).save(out, "PNG")
    assert prepared(out.getvalue(), 10, 10)._image.getpixel((5, 5)) == (255, 255, 255)
