"""A designer's own SVG drawings: safely read, at true size, as outlines and marks.

The reader is our own. A general SVG parser was weighed (svgelements 1.9.6, MIT, no release since 2023): it reads shapes and transforms
well, but sets no limits to a hostile file, applies no clips, works out no areas, and knows no lines of the file to name in a finding.
What stands here is measured against an independent renderer in ``tests/reference/test_svg_areas.py``.

A shape that needs an outline from a drawing imports ``outline_of`` from here; nothing here imports the shapes.
"""

from publisher.geometry.drawings.drawn_part import drawn_shape
from publisher.geometry.drawings.outline import outline_of
from publisher.geometry.drawings.overview import Look, Seen, look_at
from publisher.geometry.drawings.tree import MOST_SVG_BYTES as DRAWING_BYTES
from publisher.geometry.drawings.tree import Unreadable

__all__ = ["DRAWING_BYTES", "Look", "Seen", "Unreadable", "drawn_shape", "look_at", "outline_of"]
