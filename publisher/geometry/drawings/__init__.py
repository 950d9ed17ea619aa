"""A designer's own SVG drawings: safely read, at true size, as outlines and marks.

The reader is our own. A general SVG parser was weighed (svgelements 1.9.6, MIT, no release since 2023): it reads shapes and transforms
well, but sets no limits to a hostile file, applies no clips, works out no areas, and knows no lines of the file to name in a finding.
What stands here is measured against an independent renderer in ``tests/reference/test_svg_areas.py``.
"""

from publisher.geometry.drawings.drawn_part import drawn_shape
from publisher.geometry.drawings.overview import Look, Seen, look_at
from publisher.geometry.drawings.tree import MOST_SVG_BYTES as DRAWING_BYTES
