"""A designer's own SVG drawings: safely read, at true size, as outlines and marks."""

from publisher.geometry.drawings.look import Look, Seen, look_at
from publisher.geometry.drawings.outline import outline_of
from publisher.geometry.drawings.tree import MOST_BYTES as DRAWING_BYTES
from publisher.geometry.drawings.tree import Unreadable

__all__ = ["DRAWING_BYTES", "Look", "Seen", "Unreadable", "look_at", "outline_of"]
