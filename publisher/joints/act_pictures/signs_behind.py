"""Signs that are pencilled on a face that looks away: dashed, and beside the part, never on the face that is seen. Mm of the paper."""

from math import hypot

import numpy as np
import shapely

from publisher.basics import Box
from publisher.joints.act_pictures.paper_grid import nearest
from publisher.joints.act_pictures.signs import (
    LABEL_HIGH,
    LABEL_ROOM,
    LABEL_WIDE,
    UP_SAID,
    UP_WIDE,
    Sheet,
    up_arrow,
    up_word,
    up_words_at,
)
from publisher.joints.outlines import Array

BEHIND_LONG = 6.0
"""mm: an arrow of which three dashes are seen."""

BEHIND_FAR = 5.0
"""mm: a sign farther off its part would be read of another one."""

LETTER_NEAR, LETTER_FAR = 6.5, 16.0
"""mm from its place to a letter: on the way three dashes are seen; one farther off would not be found."""


def put_up_behind(sheet: Sheet, way: Array, on: shapely.Geometry, parts: shapely.Geometry, *, word: bool) -> bool:
    """Add the arrow that says which end of a part is up, along a way (2,), where the face that carries it looks away: dashed, beside
    what is seen of the part (``on``), clear of all ``parts``, with its ``word``; tell whether there was room."""
    way = way / max(hypot(*way), 1e-9)
    side = np.array([-way[1], way[0]])
    points = sheet.ground.grid(1)
    covered = sheet.ground.inside(parts)
    fits = np.ones(len(points), dtype=bool)
    for along in (-0.5, -0.25, 0.0, 0.25, 0.5):
        at = points + along * BEHIND_LONG * way
        fits &= (sheet.ground.crossed(at, UP_WIDE, UP_WIDE) == 0) & (sheet.ground.shares(covered, at, 0.6, 0.6) == 0.0)
    fits &= shapely.distance(shapely.points(points), on) <= BEHIND_FAR
    words = points
    if word:
        both = up_words_at(points, side, (1.0, -1.0))
        free = [
            fits & (sheet.ground.crossed(at, *UP_SAID) == 0) & (sheet.ground.shares(covered, at, *UP_SAID) == 0.0)
            for at in both
        ]
        fits = free[0] | free[1]
        words = np.where(free[0][:, None], both[0], both[1])
    if not fits.any():
        return False
    cost = np.where(fits, 0.0, np.inf) + shapely.distance(shapely.points(points), on) - 0.3 * points @ way
    best = int(cost.argmin())
    up_arrow(sheet, "behind", points[best], way, BEHIND_LONG)
    if word:
        up_word(sheet, words[best])
    return True


def put_label_behind(sheet: Sheet, text: str, at: shapely.Point, parts: shapely.Geometry) -> bool:
    """Add a letter of a face that looks away, beside all ``parts``, with a dashed line to its place there; tell whether there was
    room."""
    wide, high = LABEL_WIDE * len(text) + 2 * LABEL_ROOM, LABEL_HIGH + 2 * LABEL_ROOM
    points = sheet.ground.grid(1)
    free = sheet.ground.crossed(points, wide, high) == 0
    free &= sheet.ground.shares(sheet.ground.inside(parts), points, wide, high) == 0.0
    away = nearest(points, (at.x, at.y))
    free &= (away >= LETTER_NEAR) & (away <= LETTER_FAR)
    if not free.any():
        return False
    x, y = (float(v) for v in points[int(np.where(free, away, np.inf).argmin())])
    sheet.sketch.label(text, x, y)
    box = Box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2).grown(-LABEL_ROOM / 2)
    near = shapely.get_coordinates(shapely.shortest_line(shapely.box(*box.sides), at))
    sheet.sketch.add_path("behind", near)
    sheet.take(box)
    line = shapely.LineString(near)
    sheet.ground.mark(np.array([line]))
    sheet.clear.append(shapely.buffer(line, 0.6, quad_segs=2))
    return True
