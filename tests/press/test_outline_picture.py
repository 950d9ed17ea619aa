"""Pictures of what is seen in a drawing."""

from io import BytesIO

import pytest
from PIL import Image

from publisher.press import draw_outlines

SQUARE = ((10.0, 10.0), (50.0, 10.0), (50.0, 50.0), (10.0, 50.0))
HOLE = ((20.0, 20.0), (40.0, 20.0), (40.0, 40.0), (20.0, 40.0))


def test_filled_areas_are_grey_with_holes_white_and_outlines_black() -> None:
    image = Image.open(BytesIO(draw_outlines(100.0, 50.0, (SQUARE, HOLE), (("a", (SQUARE,)),))))
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


def test_names_stand_at_their_outlines_and_open_lines_are_red_with_their_ends_ringed() -> None:
    line = ((60.0, 40.0), (60.0, 10.0), (90.0, 10.0))
    plain = Image.open(BytesIO(draw_outlines(100.0, 50.0, (), ())))
    named = Image.open(BytesIO(draw_outlines(100.0, 50.0, (), (("Left wall", (SQUARE,)), ("roof", (SQUARE,))))))
    box = (
        10 + 11 * 12,
        610 - 49 * 12,
        10 + 49 * 12,
        610 - 40 * 12,
    )  # below the square's upper line, clear of its sides
    assert plain.crop(box).getextrema() == ((255, 255),) * 3
    assert named.crop(box).getextrema()[0][0] == 0
    opened = Image.open(BytesIO(draw_outlines(100.0, 50.0, (), (), (("x, open", line),))))
    assert opened.getpixel((10 + 60 * 12, 610 - 25 * 12)) == (200, 0, 0)
    for x, y in (line[0], line[-1]):
        assert opened.getpixel((round(10 + x * 12) + 6, round(610 - y * 12))) == (200, 0, 0)


def test_a_hundred_names_at_one_place_do_not_keep_the_picture_from_ending() -> None:
    assert draw_outlines(100.0, 50.0, (), (("same", (SQUARE,)),) * 1000)
