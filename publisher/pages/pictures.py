"""Line drawings of the piece and photographs, placed in a box of a page."""

from publisher.basics import Box, Layer
from publisher.design import Design
from publisher.joints import Drawing
from publisher.pages.model import Drawn, LineStyle, Path, Picture, Stroke
from publisher.pages.styles import (
    LEAST,
    NOTE,
    PICTURE_CUE,
    PICTURE_DETAIL,
    PICTURE_GHOST,
    PICTURE_OUTLINE,
    TypeStyle,
)
from publisher.pages.text import Setter

WEIGHTS: dict[str, LineStyle] = {
    "outline": PICTURE_OUTLINE,
    "detail": PICTURE_DETAIL,
    "ghost": PICTURE_GHOST,
    "cue": PICTURE_CUE,
}


def drawn_size(drawing: Drawing, width: float, height: float, largest: float = 1.0) -> tuple[float, float, float]:
    """Return (scale, width, height) in which a drawing fits into a box of this size (mm), never above scale ``largest``."""
    scale = min(width / max(drawing.width, 1e-6), height / max(drawing.height, 1e-6), largest)
    return scale, drawing.width * scale, drawing.height * scale


def place_drawing(
    setter: Setter,
    drawing: Drawing,
    box: Box,
    *,
    largest: float = 1.0,
    labels: bool = True,
    details: bool = True,
    layer: Layer = Layer.PAGE,
) -> tuple[Drawn, ...]:
    """Draw a line drawing in the middle of a box, as large as fits. Not at true size: it is a picture, nothing is measured on it.

    ``details`` False leaves texture and marks out, as for a silhouette of a few millimetres.
    """
    scale, width, height = drawn_size(drawing, box.width, box.height, largest)
    x, y = (box.left + box.right - width) / 2, (box.bottom + box.top - height) / 2
    drawn: list[Drawn] = []
    for weight, line_style in WEIGHTS.items():
        if not details and weight != "outline":
            continue
        paths = tuple(
            Path(tuple((x + px * scale, y + py * scale) for px, py in line.points))
            for line in drawing.lines
            if line.weight == weight
        )
        if paths:
            drawn.append(Stroke(line_style, paths, layer, tag="figure"))
    if labels:
        style: TypeStyle = NOTE.bold() if min(width, height) > 40 else LEAST.bold()
        for label in drawing.labels:
            at = (x + label.at[0] * scale, y + label.at[1] * scale - setter.cap(style) / 2)
            drawn += setter.line(label.text, style.tagged("figure"), *at, align="centre", layer=layer)
    return tuple(drawn)


def photo_size(design: Design, name: str, width: float, height: float) -> tuple[float, float] | None:
    """Return the size in mm at which a photograph fits into a box of this size; None when the folder has no such picture."""
    file = design.file(name)
    if file is None or not file.width_px or not file.height_px:
        return None
    scale = min(width / file.width_px, height / file.height_px)
    return file.width_px * scale, file.height_px * scale


def place_photo(design: Design, name: str, box: Box, alt: str) -> tuple[Drawn, ...]:
    """Place a photograph in the middle of a box, as large as fits."""
    size = photo_size(design, name, box.width, box.height)
    if size is None:
        return ()
    x, y = (box.left + box.right - size[0]) / 2, (box.bottom + box.top - size[1]) / 2
    return (Picture(name, Box(x, y, x + size[0], y + size[1]), alt, Layer.PAGE),)
