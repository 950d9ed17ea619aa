"""A picture of what the tool sees in a drawing, on the drawing's page: what is filled in grey, outlines as black lines under their
names, lines that do not close in red with a ring at each loose end."""

from collections.abc import Iterable, Sequence
from io import BytesIO
from typing import TYPE_CHECKING

from publisher.basics import Point

if TYPE_CHECKING:
    from PIL.ImageDraw import ImageDraw

LONGEST_PX = 1200
NAMES_IN_PICTURE = 200  # in one picture: more nobody can tell apart
_MARGIN = 10
_TEXT_PX = 15
_PAGE, _FILLED, _LINE, _EDGE, _OPEN = "white", (205, 205, 205), "black", (130, 130, 130), (200, 0, 0)
_END_PX = 6  # radius of the ring at a loose end

Rings = Sequence[Sequence[Point]]


def draw_outlines(
    width: float,
    height: float,
    filled: Rings,
    outlines: Sequence[tuple[str, Rings]],
    open_lines: Sequence[tuple[str, Sequence[Point]]] = (),
) -> bytes:
    """Return a PNG of a page of this size (mm).

    ``filled``: rings of the filled area, holes by even-odd; ``outlines``: name and rings of each; ``open_lines``: name and points
    of each. Raises ValueError for a page of no size.
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
    for _, rings in outlines:
        for ring in rings:
            draw.line([*pixels(ring), pixels(ring[:1])[0]], fill=_LINE, width=2)
    for _, points in open_lines:
        line = pixels(points)
        draw.line(line, fill=_OPEN, width=2)
        for x, y in (line[0], line[-1]):
            draw.ellipse((x - _END_PX, y - _END_PX, x + _END_PX, y + _END_PX), outline=_OPEN, width=2)
    named = [(name, pixels(rings[0]), _LINE) for name, rings in outlines if rings]
    _names(draw, size, [*((name, pixels(line), _OPEN) for name, line in open_lines), *named])
    out = BytesIO()
    image.save(out, "PNG", compress_level=4)
    return out.getvalue()


def _names(draw: "ImageDraw", size: tuple[int, int], named: Iterable[tuple[str, list[Point], object]]) -> None:
    """Write each name right of the top of its line, on white, lower where another stands already."""
    from PIL import ImageFont

    font = ImageFont.load_default(_TEXT_PX)
    taken: list[tuple[float, float, float, float]] = []
    for name, line, colour in list(named)[:NAMES_IN_PICTURE]:
        x, y = min(line, key=lambda point: (point[1], point[0]))
        wide, high = draw.textlength(name, font) + 6, _TEXT_PX + 4
        left = min(x + _END_PX + 2, max(0.0, size[0] - wide))
        top = min(max(0.0, y + 3 if colour == _LINE else y - high / 2), size[1] - high)
        while any(left < r and left + wide > a and top < d and top + high > b for a, b, r, d in taken):
            top += high
        taken.append((left, top, left + wide, top + high))
        draw.rectangle(taken[-1], fill=_PAGE)
        draw.text((left + 3, top + 1), name, fill=colour, font=font)  # type: ignore[arg-type]
