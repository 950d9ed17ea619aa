"""The page frames that templates and tiles may use, and the area of each that is free for parts."""

from functools import cache

import shapely

from publisher.pages.model import Paper
from publisher.pages.sheet import Corner, Frame, make_frame
from publisher.pages.templates.template_forms import PART_AWAY

CORNERS: tuple[Corner, ...] = ("lower_right", "lower_left", "upper_right", "upper_left")


def frames(paper: Paper, square: float) -> tuple[Frame, ...]:
    """Return the page frames to try, the usual one first."""
    return tuple(page_frame(paper, landscape, square, corner) for landscape in (False, True) for corner in CORNERS)


@cache
def page_frame(paper: Paper, landscape: bool, square: float, corner: Corner) -> Frame:
    """Return a frame; made once for each set of arguments."""
    return make_frame(paper, landscape, square, corner)


def free_area(frame: Frame) -> shapely.Polygon:
    """Return where templates may lie: the live area less what is blocked, with paper between."""
    live = frame.live
    area = shapely.box(live.left, live.bottom + PART_AWAY - 1.0, live.right, live.top - PART_AWAY + 1.0)
    for box in frame.blocked:
        area = area.difference(shapely.box(*box.grown(PART_AWAY / 2).sides))
    return area
