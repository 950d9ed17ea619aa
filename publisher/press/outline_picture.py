"""A picture of what the tool sees in a drawing: what is filled in grey, outlines as black lines, on the drawing's page."""

from collections.abc import Sequence
from io import BytesIO

from publisher.basics import Point

LONGEST_PX = 1200
_MARGIN = 10
_PAGE, _FILLED, _LINE, _EDGE = "white", (205, 205, 205), "black", (130, 130, 130)

Rings = Sequence[Sequence[Point]]


def draw_outlines(width: float, height: float, filled: Rings, outlines: Sequence[Rings]) -> bytes:
    """Return a PNG of a page of this size (mm). ``filled``: rings of the filled area, holes by even-odd; ``outlines``: rings of each.

    Raises ValueError for a page of no size.
    """
    from PIL import Image, ImageChops, ImageDraw

    if not (width > 0.0 and height > 0.0):
        raise ValueError("a page of no size cannot be pictured")
    scale = LONGEST_PX / max(width, height)
    size = (round(width * scale) + 2 * _MARGIN, round(height * scale) + 2 * _MARGIN)

    def pixels(ring: Sequence[Point]) -> list[Point]:
        return [(_MARGIN + x * scale, size[1] - _MARGIN - y * scale) for x, y in ring]

    inside = Image.new("1", size)
    for ring in filled:
        if len(ring) > 2:
            one = Image.new("1", size)
            ImageDraw.Draw(one).polygon(pixels(ring), fill=1)
            inside = ImageChops.logical_xor(inside, one)
    image = Image.new("RGB", size, _PAGE)
    image.paste(_FILLED, mask=inside)
    draw = ImageDraw.Draw(image)
    draw.rectangle((_MARGIN, _MARGIN, size[0] - _MARGIN, size[1] - _MARGIN), outline=_EDGE)
    for rings in outlines:
        for ring in rings:
            draw.line([*pixels(ring), pixels(ring[:1])[0]], fill=_LINE, width=2)
    out = BytesIO()
    image.save(out, "PNG", compress_level=4)
    return out.getvalue()
