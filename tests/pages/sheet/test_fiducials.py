"""Fiducial marks: eight on a page that must print true, off everything else that it shows."""

from math import dist

import pytest

from publisher.basics import Box, FiducialPromise, Layer, polyline
from publisher.pages.model import Drawn, Fill, LineStyle, Stroke, Words
from publisher.pages.sheet.fiducials import FIDUCIAL, FIDUCIAL_CLEAR, FIDUCIAL_GAP, corner_marks, fiducials
from publisher.pages.type import Faces, face

LIMIT = Box(6.35, 12.7, 203.65, 284.3)
FACES = Faces(face("regular"), face("bold"))
LINE = LineStyle("cut", 0.5)
HALF = 0.175  # mm: half of a mark's line
ROOM = FIDUCIAL / 2 + HALF + FIDUCIAL_CLEAR  # mm from the centre of a mark at a side to what may stand beside it


def marks(*shown: Drawn, limit: Box = LIMIT) -> dict[str, FiducialPromise]:
    return {mark.place: mark for mark in fiducials(limit, shown, FACES, 3).fiducials}


def wall(bottom: float, top: float, x: float = 6.9) -> Stroke:
    """A line up the left side of the page."""
    return Stroke(LINE, (polyline(((x, bottom), (x, top))),), Layer.OUTLINES)


@pytest.mark.parametrize("limit", [LIMIT, Box(12.7, 6.35, 266.7, 209.55), Box(5.0, 5.0, 65.0, 90.0)])
def test_eight_marks_stand_at_the_corners_and_in_the_middle_of_the_sides(limit: Box) -> None:
    found = marks(limit=limit)
    edge = limit.grown(-HALF)
    x, y = (edge.left + edge.right) / 2, (edge.bottom + edge.top) / 2
    assert {place: mark.centre for place, mark in found.items()} == {
        "lower left": (edge.left, edge.bottom),
        "lower right": (edge.right, edge.bottom),
        "upper right": (edge.right, edge.top),
        "upper left": (edge.left, edge.top),
        "bottom": (pytest.approx(x, abs=1e-3), edge.bottom),
        "right": (edge.right, pytest.approx(y, abs=1e-3)),
        "top": (pytest.approx(x, abs=1e-3), edge.top),
        "left": (edge.left, pytest.approx(y, abs=1e-3)),
    }
    for mark in found.values():
        ends = [point for line in mark.lines for point in line]
        assert mark.page == 3
        assert max(dist(mark.centre, end) for end in ends) == pytest.approx(FIDUCIAL / (2 if mark.gap else 1))
        assert min(dist(mark.centre, end) for end in ends) == pytest.approx(mark.gap / 2)
        assert all(
            any(box.grown(-HALF - FIDUCIAL_CLEAR).beyond(room) < 1e-9 for room in (limit,)) for box in mark.clear
        )


def test_what_is_drawn_is_what_is_promised_and_lies_inside_the_limit() -> None:
    body = fiducials(LIMIT, (), FACES, 3)
    strokes = [thing for thing in body.drawn if isinstance(thing, Stroke)]
    assert Box.round(point for one in strokes for path in one.paths for point in path.points).grown(HALF) == LIMIT
    drawn = {frozenset((edge.start, edge.end)) for one in strokes for path in one.paths for edge in path.edges}
    assert drawn == {frozenset(line) for mark in body.fiducials for line in mark.lines}
    assert all(one.style.width == mark.width for one in strokes for mark in body.fiducials)
    assert len(corner_marks(LIMIT).paths) == 4


def test_a_mark_gives_way_to_a_part_as_little_as_it_must() -> None:
    middle = (LIMIT.bottom + LIMIT.top) / 2
    found = marks(wall(100.0, middle + 20.0))["left"]
    assert found.centre[1] == pytest.approx(middle + 20.0 + LINE.width / 2 + ROOM, abs=1e-3)
    assert found.lines[0][1][1] == pytest.approx(found.centre[1] - FIDUCIAL_GAP / 2)
    assert marks(wall(100.0, middle + 20.0, x=8.0))["left"].centre[1] == middle  # it does not reach into the strip
    assert marks(wall(20.0, 30.0))["left"].centre[1] == middle


def test_areas_and_words_push_a_mark_as_lines_do() -> None:
    area = Fill(0.5, (polyline(((6.85, 140.0), (20.0, 140.0), (20.0, 150.0), (6.85, 150.0)), True),), Layer.NOTES)
    assert marks(area)["left"].centre[1] == pytest.approx(150.0 + ROOM, abs=1e-3)
    said = Words("side", FACES.regular.name, 3.0, 7.0, 148.0, Layer.NOTES)
    low = marks(said)["left"].centre[1]
    assert low < 148.0 - 0.2 * 3.0 - FIDUCIAL / 2


def test_what_a_clip_hides_is_not_there() -> None:
    line = wall(20.0, 280.0)
    hidden = Stroke(line.style, line.paths, line.layer, Box(30.0, 30.0, 60.0, 60.0))
    assert marks(hidden) == marks()


def test_a_side_that_is_filled_from_end_to_end_has_no_mark() -> None:
    assert len(marks(wall(LIMIT.bottom + 15.0, LIMIT.top - 15.0))) == 7
    assert "left" not in marks(wall(LIMIT.bottom + 15.0, LIMIT.top - 15.0))


def test_a_mark_that_is_pushed_up_to_a_corner_keeps_its_white_off_the_ink_there() -> None:
    ends = [LIMIT.top - HALF - FIDUCIAL - 10.0 + 0.05 * k for k in range(60)]
    found = [mark for end in ends if (mark := marks(wall(LIMIT.bottom + 10.0, end)).get("left"))]
    arm = LIMIT.top - HALF - FIDUCIAL - HALF  # lowest ink of the corner over it
    assert 3 < len(found) < len(ends) and max(mark.clear[0].top for mark in found) <= arm + 1e-9
    assert max(mark.clear[0].top for mark in found) > arm - 0.1  # one comes as near as it may
