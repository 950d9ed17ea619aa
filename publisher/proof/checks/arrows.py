"""Which way arrows point: along the grain, up a stair, to a part's top, to the ends of a length."""

from collections.abc import Iterator
from itertools import pairwise
from math import hypot

import numpy as np
import shapely

from publisher.basics import Check, Findings, OutlinePromise, Point
from publisher.proof.checks.frame import about, copy_name, judged, page_name
from publisher.proof.measuring import ARROW, HEAD_AT, TOP, TOP_NEAR, Case, shown_ground
from publisher.proof.reading import Array, normal

HEAD_LEAST = 0.8  # mm from a head's tip to its other corners
BACK = -0.5  # cosine below which a line turns back on itself: there its barbs begin
POINTS_ALIKE = 0.9  # cosine of two directions that are the same
IN_WINDOW = 6.0  # mm inside a window from where a head is shown whole


@judged(
    "proof/arrow",
    "Arrows point where they were worked out to",
    "a piece is laid along its grain, a stair built up and a part stood up by the way an arrow points: its head stands at the end of its "
    "line and looks away from it; on a part that stands it looks to the part's top, and at the ends of a length outwards",
    may_be_empty=True,
)
def arrows_point(case: Case, check: Check[Case]) -> Findings:
    """Look for the head of each arrow of each copy, for those beside the word that names a top, and for those of lengths."""
    arrows = {
        piece.part: lines
        for piece in case.promises.prints
        if (lines := [x.points for x in piece.lines if x.kind == ARROW])
    }
    tops = {(side.part, side.mirrored) for side in case.promises.sides if side.top}
    looked, hint = 0, "draw an arrow from its foot to its tip, with the head at the tip"
    for outline in case.promises.outlines:
        who = f"{page_name(outline.page)}: {copy_name(outline)}"
        for points in arrows.get(outline.part, ()):
            shaft = outline.pose.apply_all(_shaft(points))
            if outline.window is None or _inside(outline, shaft):
                looked += 1
                if fault := _headed(case.heads(outline.page), shaft[-2], shaft[-1]):
                    yield about(check, who, f": an arrow {fault}", hint)
        if (outline.part, outline.pose.mirrored) in tops:
            looked += 1
            for fault in _top_wrong(case, outline, case.heads(outline.page)):
                yield about(check, who, f": {fault}", hint)
    on_pieces = {outline.page for outline in case.promises.outlines}
    for length in case.promises.lengths:
        if length.purpose == "dimension" and length.page in on_pieces:
            for start, end in ((length.start, length.end), (length.end, length.start)):
                if any(_at(head, end) for head in case.heads(length.page)):
                    looked += 1
                    if fault := _headed(case.heads(length.page), start, end):
                        yield about(check, page_name(length.page), f": an arrow of “{length.label}” {fault}", hint)
    return looked


def _shaft(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """Return an arrow's line without its barbs: up to where it first turns back on itself."""
    for place in range(1, len(points) - 1):
        (ax, ay), (bx, by), (cx, cy) = points[place - 1 : place + 2]
        ways = hypot(bx - ax, by - ay) * hypot(cx - bx, cy - by)
        if ways and ((bx - ax) * (cx - bx) + (by - ay) * (cy - by)) / ways < BACK:
            return points[: place + 1]
    return points


def _inside(outline: OutlinePromise, shaft: tuple[Point, ...]) -> bool:
    """Say whether a tile shows the tip of an arrow with its head."""
    (x, y), box = shaft[-1], outline.window
    return (
        box is not None
        and box.left + IN_WINDOW <= x <= box.right - IN_WINDOW
        and box.bottom + IN_WINDOW <= y <= box.top - IN_WINDOW
    )


def _at(head: Array, tip: Point) -> bool:
    """Say whether a corner of a head stands at a point."""
    return bool(np.hypot(*(head - tip).T).min() <= HEAD_AT)


def _headed(heads: list[Array], before: Point, tip: Point) -> str:
    """Return in words what is wrong with the head at the end of a line that comes from ``before``; empty when nothing."""
    here = [head for head in heads if _at(head, tip)]
    if not here:
        return "has no head at its tip"
    way = np.subtract(tip, before) / (hypot(tip[0] - before[0], tip[1] - before[1]) or 1.0)
    for head in here:
        off = (head - tip) @ way
        away = np.hypot(*(head - tip).T) > HEAD_AT
        if (off[away] < -HEAD_LEAST).all():
            return ""
    return "has a head that points back along its line"


def _top_wrong(case: Case, outline: OutlinePromise, heads: list[Array]) -> Iterator[str]:
    """Yield that an arrow beside the word that names a copy's top does not point there."""
    if TOP in case.titles:
        return  # a part may be called so
    ground = shown_ground(outline)
    (x, y), (up_x, up_y) = outline.pose.apply((0.0, 0.0)), outline.pose.apply((0.0, 1.0))
    up = np.array((up_x - x, up_y - y))
    for line in case.lines(outline.page):
        middle = line.middle()
        if normal(line.text) == TOP and shapely.contains_xy(ground, *middle):
            near = [_way(head) for head in heads if np.hypot(*(head.mean(axis=0) - middle)) <= TOP_NEAR]
            if near and not any(way @ up > POINTS_ALIKE for way in near):
                yield "the arrow to its top points elsewhere"


def _way(head: Array) -> Array:
    """Return the direction in which a head points: from the middle of its shortest side to the corner over it."""
    corners = [*head, head[0]]
    short = min(range(3), key=lambda n: float(np.hypot(*np.subtract(*list(pairwise(corners))[n]))))
    tip, base = head[(short + 2) % 3], (head[short] + head[(short + 1) % 3]) / 2
    way: Array = (tip - base) / (np.hypot(*(tip - base)) or 1.0)
    return way
