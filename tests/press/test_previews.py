"""Previews come from the finished file, at its size."""

from collections.abc import Callable
from io import BytesIO

from PIL import Image

from publisher.pages import Drawn, Pack
from publisher.press import render_previews, write_pdf


def test_a_preview_shows_the_square_where_it_is(make_pack: Callable[..., Pack], sample: tuple[Drawn, ...]) -> None:
    (png,) = render_previews(write_pdf(make_pack(*sample)), dpi=96)
    image = Image.open(BytesIO(png))
    assert image.size == (794, 1123)  # 210 x 297 mm at 96 dpi, rounded up as PDFium does
    x, y = round(50 / 25.4 * 96), round((297 - 100) / 25.4 * 96)
    assert image.crop((x - 2, y - 2, x + 3, y + 3)).getextrema()[0] < 128
    assert image.getpixel((x + 20, y)) == 255
