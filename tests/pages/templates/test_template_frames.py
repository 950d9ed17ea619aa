"""Frames that templates may use, and their free areas."""

import pytest
import shapely

from publisher.pages.sheet.frame import LEAST_SQUARE, PAGE_SQUARE
from publisher.pages.sheet.paper_table import papers
from publisher.pages.templates.template_forms import PART_AWAY
from publisher.pages.templates.template_frames import frames, free_area, page_frame
from publisher.pages.type.rectangles import as_polygon

A4 = next(p for p in papers() if p.name == "a4")


def test_both_ways_and_every_corner_are_tried_the_usual_one_first() -> None:
    found = frames(A4, PAGE_SQUARE)
    assert len(found) == 8 and not found[0].landscape
    assert len({(f.landscape, f.blocked) for f in found}) == 8
    assert found[0].calibration and found[0].calibration.left > A4.width / 2 > found[0].calibration.bottom


@pytest.mark.parametrize("square", [PAGE_SQUARE, LEAST_SQUARE])
def test_the_free_area_keeps_away_from_furniture(square: float) -> None:
    for frame in frames(A4, square):
        free = free_area(frame)
        assert frame.calibration
        assert as_polygon(frame.calibration).distance(free) >= PART_AWAY - 1e-9
        assert as_polygon(frame.limit).covers(free)
        assert free.geom_type == "Polygon" and not free.interiors


def test_a_smaller_square_frees_room() -> None:
    assert free_area(frames(A4, LEAST_SQUARE)[0]).area > free_area(frames(A4, PAGE_SQUARE)[0]).area + 1000


def test_frames_are_made_once() -> None:
    assert page_frame(A4, True, PAGE_SQUARE, "lower_right") is page_frame(A4, True, PAGE_SQUARE, "lower_right")
    assert isinstance(free_area(page_frame(A4, True, PAGE_SQUARE, "lower_right")), shapely.Polygon)
