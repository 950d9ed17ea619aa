"""Which way is up: an arrow with the word “top” on every part that stands in an assembly, to be copied to the foam."""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import shapely

from publisher.basics import LineKind, Point, Purpose, polyline, record
from publisher.geometry import (
    Mark,
    Part,
    half_marks,
    line_string,
    polygon,
)
from publisher.joints import Joined

FROM_TOP = (3.0, 5.0, 8.0, 12.0)  # mm between its tip and the highest edge over it
LOWER = (0.1, 0.15, 0.2, 0.3, 0.4)  # of the part's height: the same in a spire, which is narrow at its top
TOP = "top"
LEAVES_ROOM = 900.0  # mm²: a part with less leaves room for its other words
PAGE = 180.0  # mm: a wider part may be cut into tiles
ASIDE = 0.17  # of its width: there no part of two, three or four tiles has a seam


@record
class ArrowForm:
    """An arrow with its word: its ``length``, how far both keep off cuts, what they take on the left, on the right and below the
    arrow's foot, and the middle of the word from there (mm)."""

    length: float
    clear: float
    left: float
    right: float
    below: float
    word: Point


FORMS = (
    ArrowForm(7.0, 2.0, 1.5, 9.0, 0.0, (4.9, 3.5)),
    ArrowForm(5.0, 1.2, 1.5, 7.2, 0.0, (4.2, 2.5)),
    ArrowForm(3.6, 0.7, 1.3, 6.4, 0.0, (4.0, 1.8)),
    ArrowForm(4.0, 0.7, 2.2, 2.2, 3.0, (0.0, -1.6)),  # the word under the foot, on a narrow part
)


def with_top_marks(parts: Sequence[Part], joined: Joined) -> tuple[Part, ...]:
    """Return the parts, those that stand in every place of theirs with the mark; of half a template with the marks on that half."""
    standing = {side.part for side in joined.sides if side.top}
    parts = [replace(part, marks=half_marks(part)) if part.half else part for part in parts]
    return tuple(_marked(part) if part.id in standing else part for part in parts)


def _marked(part: Part) -> Part:
    forms = FORMS if polygon(part.template).area > LEAVES_ROOM else FORMS[2:]
    found = next((spot for form in forms if (spot := _place(part, form))), None)
    if found is None:
        return part  # its label says it
    form, (x, y) = found
    foot = (x, y - form.length)
    arrow = Mark(LineKind.DRAW, Purpose.TOP, polyline((foot, (x, y))), name=TOP)
    at = polyline(((foot[0] + form.word[0], foot[1] + form.word[1]),))
    word = Mark(LineKind.REFERENCE, Purpose.NAME, at, name=TOP, text=TOP)
    return replace(part, marks=(*part.marks, arrow, word))


def _place(part: Part, form: ArrowForm) -> tuple[ArrowForm, Point] | None:
    """Return where the arrow's tip goes: under the highest edge, clear of cuts and words; near the middle of a small part."""
    body = polygon(part.template)
    left, bottom, right, top = body.bounds
    lines = [line_string(m.path) for m in part.marks if len(m.path.points) > 1 and m.purpose is not Purpose.SURFACE]
    words = [_room(m) for m in part.marks if m.text]
    free = body.buffer(-form.clear).difference(
        shapely.union_all([*(line.buffer(form.clear) for line in lines), *words])
    )
    shapely.prepare(free)
    wished = 0.5 if right - left <= PAGE else ASIDE
    shares = np.array(sorted(np.linspace(0.08, 0.92, 57), key=lambda share: (abs(share - wished), share)))
    for x in (left + (right - left) * shares).tolist():
        over = shapely.intersection(shapely.LineString([(x, bottom - 1.0), (x, top + 1.0)]), body)
        if over.is_empty or over.bounds[3] < top - 0.35 * (top - bottom):
            continue
        for down in (*FROM_TOP, *((top - bottom) * share for share in LOWER)):
            y = over.bounds[3] - max(down, form.clear + 0.5)
            foot = y - form.length
            if free.covers(shapely.box(x - form.left, foot - form.below, x + form.right, y)):
                return form, (x, y)
    return None


def _room(mark: Mark) -> shapely.Polygon:
    """Return about the place that a mark's words take, centred on its point."""
    (x, y), half = mark.path.points[0], 2.0 + 0.75 * len(mark.text)
    return shapely.box(x - half, y - 3.0, x + half, y + 3.0)
