"""The pen of sketches: what leans, what is hatched, where an arrow ends."""

from math import isclose

import pytest
import shapely

from publisher.pages.instructions.sketch_areas import HATCH_APART
from publisher.pages.instructions.sketch_pen import SketchPen, along_arc, leaning
from publisher.pages.model import Fill, Stroke
from publisher.pages.type import HATCH, Setter


def test_waste_is_hatched_inside_its_ring_alone_and_a_board_in_section_is_not(setter: Setter) -> None:
    """Hatched is what is thrown away: a board that is kept and looks like it would be thrown away too."""
    board = SketchPen(setter, (10.0, 20.0))
    board.section((0.0, 0.0), (20.0, 0.0), (20.0, 8.0), (0.0, 8.0))
    assert not [thing for thing in board.drawn if isinstance(thing, Stroke) and thing.style == HATCH]
    pen = SketchPen(setter, (10.0, 20.0))
    pen.hatched(shapely.box(0.0, 0.0, 20.0, 8.0))
    (hatch,) = [thing for thing in pen.drawn if isinstance(thing, Stroke) and thing.style == HATCH]
    points = [point for path in hatch.paths for point in path.points]
    assert len(hatch.paths) > 28 / HATCH_APART - 3
    assert all(10.0 <= x <= 30.0 and 20.0 <= y <= 28.0 for x, y in points)


def test_an_arrow_ends_at_its_last_point(setter: Setter) -> None:
    pen = SketchPen(setter, (0.0, 0.0))
    pen.arrow((0.0, 0.0), (10.0, 0.0))
    (head,) = [thing for thing in pen.drawn if isinstance(thing, Fill)]
    assert max(x for x, _ in head.paths[0].points) == pytest.approx(10.0)


def test_a_line_of_no_length_is_not_drawn(setter: Setter) -> None:
    """An arrow as short as its head has a shaft of a rounding's length, which a printer sets as a dot."""
    pen = SketchPen(setter, (0.0, 0.0))
    pen.line((22.69267496101047, 34.1), (22.692674961010475, 34.1))
    pen.line((1.0, 1.0), (1.0, 1.0))
    assert not pen.drawn and not pen.lines
    pen.line((1.0, 1.0), (1.1, 1.0))
    assert len(pen.drawn) == 1


def test_a_tool_leans_about_its_tip(setter: Setter) -> None:
    pen = SketchPen(setter, (0.0, 0.0))
    pen.pencil((5.0, 5.0), 90.0)
    lines = [thing for thing in pen.drawn if isinstance(thing, Stroke)]
    xs = [x for line in lines for path in line.paths for x, _ in path.points]
    assert isclose(max(xs), 5.0, abs_tol=1e-9) and min(xs) < -10.0  # it lies to the left
    assert leaning(10.0, 45.0) == pytest.approx(10.0)
    assert along_arc((0.0, 0.0), 2.0, 0.0, 90.0, 2)[-1] == pytest.approx((0.0, 2.0))


def test_nothing_is_drawn_that_is_covered(setter: Setter) -> None:
    """What lies under a white area would be in the file and nobody would see it."""
    pen = SketchPen(setter, (0.0, 0.0))
    pen.line((0.0, 5.0), (30.0, 5.0))
    pen.line((12.0, 4.0), (18.0, 4.0))
    pen.white((10.0, 0.0), (20.0, 0.0), (20.0, 10.0), (10.0, 10.0))
    pen.line((14.0, 6.0), (16.0, 6.0))
    seen = [path.points for thing in pen.seen() if isinstance(thing, Stroke) for path in thing.paths]
    assert not [thing for thing in pen.seen() if isinstance(thing, Fill)]
    assert sorted(points[0][0] for points in seen) == pytest.approx([0.0, 14.0, 20.0], abs=0.1)
    assert max(points[-1][0] for points in seen) == pytest.approx(30.0) and len(seen) == 3


def test_an_arrow_as_short_as_its_head_has_no_shaft(setter: Setter) -> None:
    pen = SketchPen(setter, (0.0, 0.0))
    pen.arrow((0.0, 0.0), (2.0, 0.0))
    assert [type(thing) for thing in pen.seen()] == [Fill]


def test_what_is_counted_goes_in_lines_that_keep_to_a_width(setter: Setter) -> None:
    pen = SketchPen(setter, (0.0, 0.0))
    said = [f"{count} × {letter}" for count, letter in enumerate("ABCDEFGH", 3)]
    two = max(map(pen.wide, ("3 × A   4 × B", "5 × C   6 × D"))) + 0.01
    assert pen.broken(said[:4], two, 2) == ("3 × A   4 × B", "5 × C   6 × D")
    assert pen.broken(said, two, 2) == ("3 × A   4 × B", "5 × C   …")
    assert pen.broken(said[:2], 1.0) == ("3 × A   …",) and pen.broken((), 1.0) == ()
    for wide in (20.0, 40.0, 70.0):
        assert all(pen.wide(line) <= wide for line in pen.broken(said, wide, 3)), wide


def test_a_full_turn_is_a_closed_line(setter: Setter) -> None:
    """A path whose ends meet is closed, whatever rounding makes of them: readers else disagree."""
    pen = SketchPen(setter, (46.6, 30.7), 1.1)
    pen.arc((26.0, 17.0), 12.0, 0.0, 360.0)
    pen.arc((26.0, 17.0), 12.0, 0.0, 350.0)
    full, open_one = [thing.paths[0] for thing in pen.drawn if isinstance(thing, Stroke)]
    assert full.closed and not open_one.closed
