"""One line of words with the box that it fills."""

import shapely

from publisher.basics import Box, record
from publisher.pages.type.rectangles import as_polygon
from publisher.pages.type.styles import TypeStyle
from publisher.pages.type.text import Setter


@record
class Note:
    """Words of a mark on the page: their line of text, where the middle of its baseline is, and the box they fill."""

    text: str
    style: TypeStyle
    x: float
    y: float
    box: Box


def word_in(text: str, style: TypeStyle, area: shapely.Geometry, type_: Setter) -> Note | None:
    """Return the text in the middle of an area when it fits there."""
    if area.is_empty:
        return None
    middle = area.centroid
    note = note_at(text, style, middle.x, middle.y, type_)
    return note if area.contains(as_polygon(note.box.grown(0.8))) else None


def note_at(text: str, style: TypeStyle, x: float, y: float, type_: Setter) -> Note:
    """Return a line of text whose capitals stand round the point."""
    half, cap = type_.width(text, style) / 2, type_.cap(style)
    below = 0.24 * style.size if any(c in "gjpqy,;()" for c in text) else 0.0
    return Note(
        text, style, x, y - cap / 2, Box(x - half, y - cap / 2 - below, x + half, y + cap / 2 + 0.05 * style.size)
    )
