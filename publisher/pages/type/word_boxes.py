"""One line of words with the box that it fills."""

import numpy as np
import shapely

from publisher.basics import Box, Layer, Point, Pose, record
from publisher.pages.model import Words
from publisher.pages.type.styles import TypeStyle
from publisher.pages.type.text import Setter


@record
class Note:
    """Words of a mark on the page: their line of text, where the middle of its baseline is, what they fill from there (``own``, before
    they are turned), and by how many degrees they are turned about it."""

    text: str
    style: TypeStyle
    x: float
    y: float
    own: Box
    turn: float = 0.0

    @property
    def box(self) -> Box:
        """The upright box round them."""
        return Box.round(self.corners())

    def area(self, grown: float = 0.0, along: float = 0.0) -> shapely.Polygon:
        """Return the rectangle that they fill, ``grown`` mm larger on each side, and ``along`` mm more before and behind them."""
        return shapely.polygons(np.array(self.corners(grown, along)))

    def corners(self, grown: float = 0.0, along: float = 0.0) -> tuple[Point, ...]:
        """Return the corners of that rectangle."""
        left, bottom, right, top = self.own.grown(grown).sides
        return Pose(self.x, self.y, self.turn).apply_all(Box(left - along, bottom, right + along, top).corners())

    def drawn(self, setter: Setter) -> tuple[Words, ...]:
        """Return the words as they are drawn: part of the figure that they stand in."""
        return setter.line(
            self.text, self.style.tagged("figure"), self.x, self.y, align="centre", turn=self.turn, layer=Layer.NOTES
        )


def word_in(text: str, style: TypeStyle, area: shapely.Geometry, type_: Setter) -> Note | None:
    """Return the text in the middle of an area when it fits there."""
    if area.is_empty:
        return None
    middle = area.centroid
    note = note_at(text, style, middle.x, middle.y, type_)
    return note if area.contains(note.area(0.8)) else None


def note_at(text: str, style: TypeStyle, x: float, y: float, type_: Setter, turn: float = 0.0) -> Note:
    """Return a line of text whose capitals stand round the point, turned about it by ``turn`` degrees."""
    half, cap = type_.width(text, style) / 2, type_.cap(style)
    below = 0.24 * style.size if any(c in "gjpqy,;()" for c in text) else 0.0
    foot = Pose(x, y, turn).apply((0.0, -cap / 2))
    return Note(text, style, *foot, Box(-half, -below, half, cap + 0.05 * style.size), turn)
