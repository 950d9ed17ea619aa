"""Pictures of what is seen in a drawing."""

from io import BytesIO

import pytest
from PIL import Image

from publisher.press import draw_outlines

SQUARE = ((10.0, 10.0), (50.0, 10.0), (50.0, 50.0), (10.0, 50.0))
HOLE = ((20.0, 20.0), (40.0, 20.0), (40.0, 40.0), (20.0, 40.0))


def test_filled_areas_are_grey_with_holes_white_and_outlines_black() -> None:
    image = Image.open(BytesIO(draw_outlines(100.0, 50.0, (SQUARE, HOLE), ((SQUARE,),))))
    assert image.size == (1220, 620)  # 12 px a mm and a margin of 10
    assert image.getpixel((10 + 15 * 12, 610 - 15 * 12)) == (205, 205, 205)
    assert image.getpixel((10 + 30 * 12, 610 - 30 * 12)) == (255, 255, 255)
    assert image.getpixel((10 + 50 * 12, 610 - 30 * 12)) == (0, 0, 0)
    assert image.getpixel((10 + 70 * 12, 610 - 30 * 12)) == (255, 255, 255)


def test_the_same_drawing_gives_the_same_bytes() -> None:
    assert draw_outlines(100.0, 50.0, (SQUARE,), ()) == draw_outlines(100.0, 50.0, (SQUARE,), ())


def test_no_size_is_an_error() -> None:
    with pytest.raises(ValueError, match="no size"):
        draw_outlines(0.0, 50.0, (), ())
