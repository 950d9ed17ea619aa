"""Lines of pictures give way to others beside them, with which they would print as one; nothing else does."""

from dataclasses import replace

import pytest
import shapely

from publisher.basics import Box, Layer, Point, polyline
from publisher.pages.model import Drawn, Fill, LineStyle, Stroke
from publisher.pages.sheet.clearing import LEAST_WHITE, cleared
from publisher.pages.type import CUT, DRAW, HATCH, PICTURE_CONTOUR, PICTURE_DETAIL, PICTURE_OUTLINE


def line(style: LineStyle, *points: Point, closed: bool = False) -> Stroke:
    return Stroke(style, (polyline(points, closed),), Layer.PAGE)


def lengths(drawn: tuple[Drawn, ...]) -> list[float]:
    """Return how long each stroke is (mm)."""
    found = []
    for thing in drawn:
        assert isinstance(thing, Stroke)
        rings = ((*path.points, path.points[0]) if path.closed else path.points for path in thing.paths)
        found.append(round(sum(shapely.LineString(ring).length for ring in rings), 2))
    return found


def test_the_finer_of_two_lines_that_would_print_as_one_goes() -> None:
    """0.5 and 0.25 mm wide, 0.6 mm apart: 0.225 mm of white."""
    heavy, fine = line(PICTURE_CONTOUR, (0, 0), (30, 0)), line(PICTURE_OUTLINE, (2, 0.6), (20, 0.6))
    assert lengths(cleared((fine, heavy))) == [0.0, 30.0]
    apart = 0.375 + LEAST_WHITE + 0.01
    far = line(PICTURE_OUTLINE, (2, apart), (20, apart))
    assert cleared((far, heavy)) == (far, heavy)


def test_of_two_alike_the_shorter_goes_and_only_where_they_run_together() -> None:
    """The shorter one comes down to the longer and runs beside it for half of its way."""
    long, bent = line(PICTURE_OUTLINE, (0, 0), (40, 0)), line(PICTURE_OUTLINE, (5, 0.4), (15, 0.4), (15, 10))
    left = lengths(cleared((bent, long)))
    assert left[1] == 40.0
    assert left[0] == pytest.approx(9.6, abs=0.3)


def test_what_is_at_true_size_and_what_rules_stay() -> None:
    """A cut line and a pencil line give way to nobody; a picture gives way to them."""
    cut, drawn = line(CUT, (0, 0), (30, 0)), line(DRAW, (0, 0.5), (30, 0.5))
    assert cleared((cut, drawn)) == (cut, drawn)
    assert lengths(cleared((cut, drawn, line(PICTURE_CONTOUR, (0, 1.0), (30, 1.0))))) == [30.0, 30.0, 0.0]


def test_lines_that_meet_stay() -> None:
    """Two lines that meet at a sharp corner are seen as two up to where it begins, and so are those at the blunted tip of a wedge."""
    spike = line(PICTURE_OUTLINE, (40, 0), (70, 0), (40, 4), closed=True)
    assert cleared((spike,)) == (spike,)
    blunt = line(PICTURE_OUTLINE, (20, 8), (0, 0), (0.1, -0.1), (20, -2))
    assert cleared((blunt,)) == (blunt,)


def test_lines_that_meet_and_do_not_quite_part_give_way_behind() -> None:
    """They meet in a point, are 0.255 mm of white apart for 2 mm, which is enough for print, and close up from there on."""
    heavy = line(PICTURE_CONTOUR, (0, 0), (45, 0))
    fine = line(PICTURE_OUTLINE, (0, 0), (5, 0.3), (10, 0.63), (12, 0.63), (16, 0.5), (22, 0.5))
    left = lengths(cleared((fine, heavy)))
    assert left[0] == pytest.approx(12.2, abs=0.3)
    assert left[1] == 45.0


def test_short_rests_that_lead_nowhere_go_with_their_line() -> None:
    """The front and the back edge of a board so thin in its picture that they are one: what joined them has no end any more."""
    front, back = (0.0, 0.0), (20.0, 0.5)
    edge = line(PICTURE_OUTLINE, front, (20.0, 0.0), back, (0.0, 0.5), closed=True)
    assert lengths(cleared((edge,))) == [20.0]


def test_hatch_keeps_off_a_line_along_it() -> None:
    slant = [line(HATCH, (x, 0.0), (x + 5.0, 5.0)) for x in (0.0, 1.4, 2.8)]
    arrow = line(PICTURE_CONTOUR, (0.4, 0.0), (5.4, 5.0))
    left = lengths(cleared((*slant, arrow)))
    assert left[0] < 1.0
    assert left[1:] == [7.07, 7.07, 7.07]


def test_a_line_gives_way_only_where_it_is_seen() -> None:
    """What a window cuts off runs beside nothing on the page."""
    fine = replace(line(PICTURE_DETAIL, (0, 0.4), (30, 0.4)), clip=Box(0, -1, 10, 1))
    other = line(PICTURE_OUTLINE, (12, 0), (30, 0))
    assert cleared((fine, other)) == (fine, other)
    assert lengths(cleared((fine, line(PICTURE_OUTLINE, (4, 0), (30, 0)))))[0] == pytest.approx(4.0, abs=0.5)


def test_a_page_without_pictures_is_left_as_it_is() -> None:
    page = (line(CUT, (0, 0), (30, 0)), line(CUT, (0, 0.3), (30, 0.3)))
    assert cleared(page) is page


def test_a_page_with_other_words_is_cleared_alike() -> None:
    """What stands between the strokes, which a page asked for again has elsewhere, changes no line and no order."""
    heavy, fine = line(PICTURE_CONTOUR, (0, 0), (30, 0)), line(PICTURE_OUTLINE, (2, 0.6), (20, 0.6))
    area = Fill(0.5, (polyline(((50, 50), (60, 50), (60, 60)), True),), Layer.PAGE)
    first, second = cleared((fine, heavy, area)), cleared((area, fine, heavy))
    assert second == (area, *first[:2])
    assert lengths(second[1:]) == [0.0, 30.0]
