"""Promises carried to a page, and strokes held against them both ways."""

import numpy as np

from publisher.basics import Box, Carried, Pose
from publisher.proof.measuring.carried import CLOSED_UP, carried_lines, carried_points, lines_in, met_by, only
from publisher.proof.measuring.outlines import StrokeSegments
from publisher.proof.reading import TextLine

BOX = Box(0.0, 0.0, 100.0, 100.0)


def strokes(*lines: tuple[tuple[float, float], tuple[float, float]]) -> StrokeSegments:
    ends = np.array(lines)
    return StrokeSegments(ends[:, 0], ends[:, 1], np.arange(len(lines)), np.full(len(lines), 0.35))


def test_points_are_scaled_first_and_then_carried_by_the_pose() -> None:
    where = Carried("layout", 1, BOX, Pose(50.0, 10.0, 90.0), 0.1)
    assert np.allclose(carried_points(where, ((0.0, 0.0), (100.0, 20.0))), ((50.0, 10.0), (48.0, 20.0)))


def test_points_that_make_no_bend_are_left_out_and_lines_stay_apart() -> None:
    lines = carried_lines(Carried("drawing", 1, BOX), [((0, 0), (5, 0.01), (10, 0)), ((10, 0), (10, 4), (8, 4))])
    assert [line.tolist() for line in lines] == [[[0, 0], [10, 0]], [[10, 0], [10, 4], [8, 4]]]
    assert carried_lines(Carried("drawing", 1, BOX), []) == []


def test_a_promised_line_is_met_along_its_whole_length() -> None:
    promised = [np.array(((0.0, 0.0), (20.0, 0.0)))]
    assert met_by(promised, strokes(((0.0, 0.05), (20.0, 0.05)))).missing == 0
    half = met_by(promised, strokes(((0.0, 0.0), (10.0, 0.0))))
    assert (half.missing, half.tried, half.at) == (5, 11, (12.0, 0.0))
    assert met_by([], strokes(((0.0, 0.0), (1.0, 0.0)))).tried == 0


def test_a_line_may_be_left_out_beside_another_as_far_as_is_said() -> None:
    promised = [np.array(((0.0, 0.0), (20.0, 0.0)))]
    beside = strokes(((0.0, 0.9), (20.0, 0.9)))
    assert met_by(promised, beside).missing == 11
    assert met_by(promised, beside, CLOSED_UP).missing == 0
    assert met_by(promised, strokes(((0.0, 1.1), (20.0, 1.1))), CLOSED_UP).missing == 11


def test_a_stroke_beside_what_was_promised_is_seen_though_it_crosses_it() -> None:
    promised = [np.array(((0.0, 0.0), (20.0, 0.0)))]
    assert only(strokes(((0.0, 0.0), (9.0, 0.0))), promised).missing == 0
    assert only(strokes(((10.0, -5.0), (10.0, 5.0))), promised).missing > 0
    assert only(strokes(((1.0, 1.0), (2.0, 1.0))), []).missing == 2


def test_words_are_in_a_box_when_their_middle_is() -> None:
    inside, over = TextLine("in", 95.0, 50.0, 103.0, 50.0, 3.0), TextLine("out", 99.0, 50.0, 110.0, 50.0, 3.0)
    assert lines_in((inside, over), BOX) == [inside]


def test_a_dot_is_a_line_too() -> None:
    # a ring that is smaller than a bend shrinks to one point
    promised, dot = [np.array(((0.0, 0.0), (20.0, 0.0)))], ((5.0, 0.0), (5.0, 0.0))
    assert only(strokes(dot, ((1.0, 0.0), (2.0, 0.0))), promised).missing == 0
    assert only(strokes(((5.0, 3.0), (5.0, 3.0))), promised).missing > 0
    assert met_by([np.array(dot)], strokes(((0.0, 0.0), (9.0, 0.0)))).missing == 0
