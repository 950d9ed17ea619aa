"""Which way is up: an arrow with the word “top” on every part that stands in an assembly, to be copied to the foam."""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import shapely

from publisher.basics import LineKind, Point, Purpose, polyline
from publisher.geometry import (
    Mark,
    Part,
    line_string,
    polygon,
)
from publisher.joints import Joined

ARROW_LENGTH = 7.0  # mm: the arrow
FROM_TOP = (3.0, 5.0, 8.0, 12.0)  # mm between its tip and the highest edge over it
ARROW_CLEAR = 2.0  # mm between the arrow with its word and any cut
ARROW_WORD, BESIDE_ARROW = 9.0, 1.5  # mm: what the word takes on the right of the arrow, and the arrow on the left
PAGE = 180.0  # mm: a wider part may be cut into tiles
ASIDE = 0.17  # of its width: there no part of two, three or four tiles has a seam


def with_top_marks(parts: Sequence[Part], joined: Joined) -> tuple[Part, ...]:
    """Return the parts, those that stand in every place of theirs with the mark."""
    standing = {side.part for side in joined.sides if side.top}
    return tuple(_marked(part) if part.id in standing else part for part in parts)


def _marked(part: Part) -> Part:
    at = _place(part)
    if at is None:
        return part
    x, y = at
    arrow = Mark(LineKind.DRAW, Purpose.TOP, polyline(((x, y - ARROW_LENGTH), (x, y))), name="top")
    word = Mark(
        LineKind.REFERENCE,
        Purpose.NAME,
        polyline(((x + BESIDE_ARROW + 3.4, y - ARROW_LENGTH / 2.0),)),
        name="top",
        text="top",
    )
    return replace(part, marks=(*part.marks, arrow, word))


def _place(part: Part) -> Point | None:
    """Return where the arrow's tip goes: under the highest edge, clear of cuts and words; near the middle of a small part."""
    body = polygon(part.template)
    left, bottom, right, top = body.bounds
    lines = [line_string(m.path) for m in part.marks if len(m.path.points) > 1 and m.purpose is not Purpose.SURFACE]
    words = [_room(m) for m in part.marks if m.text]
    free = body.buffer(-ARROW_CLEAR).difference(
        shapely.union_all([*(line.buffer(ARROW_CLEAR) for line in lines), *words])
    )
    shapely.prepare(free)
    wished = 0.5 if right - left <= PAGE else ASIDE
    shares = np.array(sorted(np.linspace(0.08, 0.92, 57), key=lambda share: (abs(share - wished), share)))
    for x in (left + (right - left) * shares).tolist():
        over = shapely.intersection(shapely.LineString([(x, bottom - 1.0), (x, top + 1.0)]), body)
        if over.is_empty or over.bounds[3] < top - 0.35 * (top - bottom):
            continue
        for down in FROM_TOP:
            y = over.bounds[3] - down
            if free.covers(shapely.box(x - BESIDE_ARROW, y - ARROW_LENGTH, x + ARROW_WORD, y)):
                return (x, y)
    return None


def _room(mark: Mark) -> shapely.Polygon:
    """Return about the place that a mark's words take, centred on its point."""
    (x, y), half = mark.path.points[0], 2.0 + 0.75 * len(mark.text)
    return shapely.box(x - half, y - 3.0, x + half, y + 3.0)
