"""The page frames that templates and tiles may use, and the area of each that is free for parts."""

from functools import cache

import shapely

from publisher.basics import Box, remembered
from publisher.pages.model import Paper
from publisher.pages.sheet import Corner, Frame, make_frame
from publisher.pages.templates.template_forms import PART_AWAY
from publisher.pages.type import as_polygon

CORNERS: tuple[Corner, ...] = ("lower_right", "lower_left", "upper_right", "upper_left")


def frames(paper: Paper, square: float) -> tuple[Frame, ...]:
    """Return the page frames to try, the usual one first."""
    return tuple(page_frame(paper, landscape, square, corner) for landscape in (False, True) for corner in CORNERS)


@cache
def page_frame(paper: Paper, landscape: bool, square: float, corner: Corner) -> Frame:
    """Return a frame; made once for each set of arguments."""
    return make_frame(paper, landscape, square, corner)


@remembered
def free_area(frame: Frame) -> shapely.Polygon:
    """Return where templates may lie: the live area less what is blocked, with paper between."""
    live = frame.live
    area = shapely.box(live.left, live.bottom + PART_AWAY - 1.0, live.right, live.top - PART_AWAY + 1.0)
    for box in frame.blocked:
        area = area.difference(shapely.box(*box.grown(PART_AWAY / 2).sides))
    return area


def areas_beside(frame: Frame, kept: tuple[tuple[float, float], ...]) -> tuple[shapely.Polygon, ...]:
    """Return the areas where templates may lie that leave room for words of one of these sizes (mm) beside what is blocked: for each
    size as many as there are such places; the whole free area where none is ``kept``."""
    free = free_area(frame)
    if not kept or not frame.blocked:
        return (free,)
    box, found = frame.blocked[0], []
    for wide, tall in kept:
        left, right = box.left - PART_AWAY - wide, box.right + PART_AWAY
        low, high = box.bottom - PART_AWAY - tall, box.top + PART_AWAY
        for x, y in ((left, box.bottom), (left, box.top - tall), (right, box.bottom), (right, box.top - tall),
                     (box.right - wide, high), (box.left, high), (box.right - wide, low), (box.left, low)):  # fmt: skip
            place = Box(x, y, x + wide, y + tall)
            if place.beyond(frame.live) <= 0.0:
                rest = free.difference(as_polygon(place.grown(PART_AWAY)))
                if isinstance(rest, shapely.Polygon) and not rest.interiors:
                    found.append(rest)
    return tuple(found)
