"""Paths: lines and arcs, their points, how they are carried, turned round and named."""

import pickle
from collections.abc import Callable, Sequence
from copy import copy
from dataclasses import replace
from itertools import pairwise
from math import dist, hypot, pi

import pytest

from publisher.basics import SAGITTA, Arc, Box, Line, Path, Point, Pose, circle, closed_path, polar, polyline

RIGHT = Line("a", (0.0, 0.0), (10.0, 0.0))
QUARTER = Arc("q", (5.0, 0.0), (0.0, 5.0), (0.0, 0.0), 5.0, 90.0)
SQUARE = polyline(((0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)), True, "side")


def test_lengths_and_sweeps() -> None:
    assert RIGHT.length == 10.0 and RIGHT.reversed().length == 10.0
    assert QUARTER.length == pytest.approx(2.5 * pi) == QUARTER.reversed().length
    assert Arc.between("q", (5.0, 0.0), (0.0, 5.0), (0.0, 0.0), 5.0) == QUARTER
    long_way = Arc.between("q", (5.0, 0.0), (0.0, 5.0), (0.0, 0.0), 5.0, ccw=False)
    assert long_way.sweep == pytest.approx(-270.0) and not long_way.ccw
    assert Path((RIGHT, Line("b", (10.0, 0.0), (10.0, 3.0))), closed=False).length == 13.0


def test_directions() -> None:
    assert RIGHT.direction((3.0, 0.0)) == (1.0, 0.0)
    assert QUARTER.direction((5.0, 0.0)) == pytest.approx((0.0, 1.0))
    assert QUARTER.reversed().direction((0.0, 5.0)) == pytest.approx((1.0, 0.0))


@pytest.mark.parametrize("radius", [0.001, 0.4, 5.0, 92.0, 300.0, 5000.0])
def test_no_chord_is_further_than_the_sagitta_from_its_arc(radius: float) -> None:
    arc = Arc.between("q", (radius, 0.0), polar(radius, 6.1), (0.0, 0.0), radius)
    for a, b in pairwise(Path((arc,), closed=False).points):
        middle = ((a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0)
        assert radius - hypot(*middle) <= SAGITTA + 1e-9
        assert dist(a, (0.0, 0.0)) == pytest.approx(radius, abs=1e-9)


def test_the_points_of_a_closed_path_do_not_repeat_the_first() -> None:
    assert SQUARE.points == ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0))
    assert SQUARE.points is SQUARE.points  # they are made once
    assert Path(SQUARE.edges[:2], closed=False).points == ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0))
    assert Path(SQUARE.edges) == SQUARE  # points are no part of what a path is
    fine, coarse = (circle((1.0, 2.0), 10.0).flattened(sagitta) for sagitta in (0.005, 0.5))
    assert len(coarse) < len(fine) and all(dist(p, (1.0, 2.0)) == pytest.approx(10.0) for p in coarse)


def test_a_full_circle_is_two_half_turns() -> None:
    rim, bore = circle((1.0, 2.0), 10.0, "rim"), circle((1.0, 2.0), 10.0, "bore", ccw=False)
    assert [(edge.name, edge.sweep) for edge in rim.edges if isinstance(edge, Arc)] == [("rim", 180.0)] * 2
    assert [edge.sweep for edge in bore.edges if isinstance(edge, Arc)] == [-180.0, -180.0]
    assert rim.length == pytest.approx(20.0 * pi) and rim.edges[-1].end == rim.edges[0].start == (11.0, 2.0)


def test_specks_are_left_out() -> None:
    specks = (Line("left", (0.0, 4.0), (0.0, 1e-8)), Line("speck", (0.0, 1e-8), (0.0, 0.0)))
    assert [edge.name for edge in closed_path((*SQUARE.edges[:3], *specks)).edges] == ["side"] * 3 + ["left"]
    path = closed_path((*SQUARE.edges[:3], *specks))
    assert all(a.end == b.start for a, b in pairwise((*path.edges, path.edges[0])))


def test_a_mirror_turns_the_sweep_round() -> None:
    over = QUARTER.carried(lambda p: (p[0], -p[1]), mirrored=True)
    assert over == Arc("q", (5.0, 0.0), (0.0, -5.0), (0.0, 0.0), 5.0, -90.0)
    placed = Path((QUARTER,), closed=False).placed(Pose(10.0, 0.0, 90.0, mirrored=True)).edges[0]
    assert isinstance(placed, Arc) and placed.sweep == -90.0
    assert placed.start == pytest.approx((10.0, -5.0)) and placed.end == pytest.approx((5.0, 0.0))


@pytest.mark.parametrize("pose", [Pose(3.0, 4.0, 37.0), Pose(-3.0, 0.5, 211.0, mirrored=True)])
def test_a_placed_path_has_the_placed_points(pose: Pose) -> None:
    path = Path((QUARTER, Line("c", (0.0, 5.0), (5.0, 0.0))))
    for a, b in zip(path.placed(pose).points, pose.apply_all(path.points), strict=True):
        assert a == pytest.approx(b, abs=1e-12)


def test_a_point_is_a_line_of_no_length() -> None:
    word = polyline(((1.0, 2.0),)).placed(Pose(10.0, 20.0))
    assert word.points == word.travelled == ((11.0, 22.0),) and word.length == 0.0


def test_a_pen_comes_back_to_the_first_point_of_a_closed_path() -> None:
    corners = ((0.0, 0.0), (4.0, 0.0), (0.0, 3.0))
    assert polyline(corners).travelled == corners
    assert polyline(corners, closed=True).travelled == (*corners, (0.0, 0.0))


TRIANGLE = ((0.0, 0.0), (4.0, 0.0), (0.0, 3.0))


def with_edges(points: Sequence[Point], closed: bool) -> Path:
    """Return the same as ``polyline`` with all edges made at once."""
    ends = (*points, points[0]) if closed or len(points) == 1 else points
    return Path(tuple(Line("", a, b) for a, b in pairwise(ends)), closed)


@pytest.mark.parametrize("closed", [True, False])
@pytest.mark.parametrize(
    "points", [TRIANGLE, TRIANGLE[:2], TRIANGLE[:1], (*TRIANGLE, TRIANGLE[0]), (*TRIANGLE, TRIANGLE[2])]
)
def test_a_polyline_whose_edges_nobody_asked_for_yet_is_the_same_path(points: tuple[Point, ...], closed: bool) -> None:
    """However it is asked, moved, kept or sent to another process first."""
    made, pose = with_edges(points, closed), Pose(3.0, 4.0, 37.0, mirrored=True)
    late: Callable[[], Path] = lambda: polyline(points, closed)  # noqa: E731
    assert late().placed(pose) == made.placed(pose)
    assert late().placed(pose).points == made.placed(pose).points
    assert late().carried(lambda p: (p[0] / 2, p[1])) == made.carried(lambda p: (p[0] / 2, p[1]))
    assert late().box == made.box
    assert late().corners == made.corners
    assert late() == made and hash(late()) == hash(made) and repr(late()) == repr(made)
    assert pickle.loads(pickle.dumps(late())) == copy(late()) == made
    assert replace(late(), closed=False).edges == made.edges
    assert late().reversed().edges == made.reversed().edges


def test_edges_of_a_polyline_are_made_once_and_a_path_knows_no_other_name() -> None:
    path = polyline(TRIANGLE)
    assert path.edges is path.edges
    with pytest.raises(AttributeError, match=r"a path has no edge$"):
        getattr(path, "edge")  # noqa: B009 - a name that types refuse


def test_the_corners_of_a_path_are_the_ends_of_its_lines() -> None:
    assert polyline(TRIANGLE, True).corners == (*TRIANGLE, TRIANGLE[0]) == with_edges(TRIANGLE, True).corners
    assert polyline(TRIANGLE[:1]).corners == (TRIANGLE[0], TRIANGLE[0])
    assert Path((QUARTER, RIGHT)).corners is None


def test_a_change_of_scale() -> None:
    half = circle((4.0, 0.0), 2.0).carried(lambda p: (p[0] / 2.0, p[1] / 2.0), scale=0.5)
    assert half == circle((2.0, 0.0), 1.0)


def test_the_box_of_a_path_counts_arcs_as_arcs() -> None:
    assert circle((1.0, 2.0), 10.0).box == Box(-9.0, -8.0, 11.0, 12.0)
    bow = Path((Arc.between("b", (6.0, 8.0), (8.0, 6.0), (0.0, 0.0), 10.0, ccw=False),), closed=False)
    assert bow.box == Box(6.0, 6.0, 8.0, 8.0)
    assert bow.reversed().box == bow.box
    far = Arc.between("b", (6.0, 8.0), (8.0, 6.0), (0.0, 0.0), 10.0)
    assert Path((far,), closed=False).box == Box(-10.0, -10.0, 10.0, 10.0)


def test_stretches_are_neighbours_of_one_name_also_over_the_first_point() -> None:
    names = ("bottom", "tab", "tab", "bottom")
    path = Path(tuple(Line(name, edge.start, edge.end) for name, edge in zip(names, SQUARE.edges, strict=True)))
    bottom, tab = path.stretches()
    assert (bottom.name, bottom.points) == ("bottom", ((0.0, 4.0), (0.0, 0.0), (4.0, 0.0)))
    assert (tab.name, tab.points) == ("tab", ((4.0, 0.0), (4.0, 4.0), (0.0, 4.0)))
    assert [len(stretch.edges) for stretch in SQUARE.stretches()] == [4]
    assert {edge.name for edge in path.renamed(str.upper).edges} == {"BOTTOM", "TAB"}


def test_a_path_turned_round_runs_the_other_way() -> None:
    back = SQUARE.reversed()
    assert back.points == ((0.0, 0.0), (0.0, 4.0), (4.0, 4.0), (4.0, 0.0)) and back.reversed() == SQUARE


def test_knots_are_middle_and_end_of_parts_of_at_most_45_degrees() -> None:
    assert RIGHT.knots() == [RIGHT.end]
    assert QUARTER.parts == 2
    assert QUARTER.knots() == [*(pytest.approx(polar(5.0, k * pi / 8)) for k in (1, 2, 3)), QUARTER.end]
    turn = Arc.between("t", (5.0, 0.0), polar(5.0, -pi / 4 - 0.01), (0.0, 0.0), 5.0, ccw=False)
    assert turn.parts == 2 and turn.knots()[1] == pytest.approx(polar(5.0, -pi / 8 - 0.005))
