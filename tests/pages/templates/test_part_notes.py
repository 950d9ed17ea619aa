"""Words of marks stand near their marks and touch nothing."""

from collections.abc import Callable
from dataclasses import replace
from itertools import combinations
from math import atan2, hypot, radians, sin

import pytest
import shapely

from publisher.basics import Box, LineKind, Pose, Purpose, polyline
from publisher.geometry import Mark, Part, polygon
from publisher.pages.templates.part_notes import _lies, mark_notes, quiet_boxes
from publisher.pages.templates.part_strokes import quiet_lines
from publisher.pages.templates.top_marks import TOP
from publisher.pages.type import LEAST
from publisher.pages.type.rectangles import as_polygon
from publisher.pages.type.text import Setter


@pytest.mark.parametrize("pose", [Pose(), Pose(80, 90, 137.0, True)])
def test_words_cross_no_line_and_no_other_words(make_part: Callable[..., Part], setter: Setter, pose: Pose) -> None:
    marks = (
        Mark(LineKind.REFERENCE, Purpose.MATCH, polyline(((3.0, 20.0),)), text="a"),
        Mark(LineKind.REFERENCE, Purpose.MATCH, polyline(((3.2, 20.0),)), text="b"),
        Mark(LineKind.REFERENCE, Purpose.BEVEL, polyline(((0.0, 38.0), (60.0, 38.0))), text="45°"),
    )
    part = make_part(marks=marks)
    notes = mark_notes(part, pose, setter)
    assert {n.text for n in notes} == {"a", "b", "bevel 45°"}
    lines = shapely.union_all([polygon(part.template, pose).boundary, quiet_lines(part, pose)])
    for note in notes:
        assert not as_polygon(note.box).intersects(lines)
    for one, other in combinations(notes, 2):
        assert not as_polygon(one.box).intersects(as_polygon(other.box))


def test_words_lie_as_a_narrow_part_lies_where_they_find_no_room_level(
    make_part: Callable[..., Part], setter: Setter
) -> None:
    mark = Mark(LineKind.REFERENCE, Purpose.MATCH, polyline(((3.0, 2.2),)), text="12.5°")
    for turn, lies in ((140.0, -40.0), (90.0, 90.0), (270.0, 90.0), (20.0, 20.0)):
        part, pose = make_part(width=12.0, height=4.5, marks=(mark,)), Pose(turn=turn)
        (note,) = mark_notes(part, pose, setter)
        assert note.turn in (lies, 0.0) and (note.turn == lies or turn % 180.0 != 90.0)
        ground = polygon(part.template, pose)
        assert ground.contains(note.area(0.4))
        (drawn,) = note.drawn(setter)
        assert drawn.turn == note.turn and ground.contains(shapely.Point(drawn.x, drawn.y))


def test_words_run_up_a_part_that_is_narrower_than_they_are(make_part: Callable[..., Part], setter: Setter) -> None:
    mark = Mark(LineKind.REFERENCE, Purpose.BEVEL, polyline(((3.0, 50.0),)), text="5.67° out")
    for turn in (0.0, 30.0):
        part, pose = make_part(width=6.0, height=60.0, marks=(mark,)), Pose(turn=turn)
        (note,) = mark_notes(part, pose, setter)
        assert note.turn == (90.0 if not turn else turn - 90.0) and polygon(part.template, pose).contains(
            note.area(0.4)
        )


def test_words_stay_near_their_mark(stair_layer: Part, setter: Setter) -> None:
    notes = {note.text: note for note in mark_notes(stair_layer, Pose(), setter)}
    assert set(notes) == {"climbs", "front edge", "next layer’s front edge here"}
    for mark in (m for m in stair_layer.marks if m.text):
        box = notes[mark.text].box
        middle = ((box.left + box.right) / 2, (box.bottom + box.top) / 2)
        assert hypot(middle[0] - mark.path.points[0][0], middle[1] - mark.path.points[0][1]) < 12.0


@pytest.mark.parametrize("pose", [Pose(), Pose(50.0, 40.0, 137.0), Pose(90.0, 5.0, 90.0, True)])
def test_words_too_long_for_a_level_place_near_by_run_along_what_they_belong_to(
    make_part: Callable[..., Part], setter: Setter, pose: Pose
) -> None:
    seat = Mark(
        LineKind.GLUE,
        Purpose.LAP,
        polyline(((20.0, 20.0), (52.0, 38.0), (50.5, 40.6), (18.5, 22.6)), True),
        name="seat",
    )
    near = (35.0, 26.0)
    words = Mark(LineKind.REFERENCE, Purpose.MATCH, polyline((near,)), name="seat", text="C, below steps 9-10")
    # lines along the seat leave a strip that is too narrow for level words, and none but that one
    walls = [polyline(((0.0, y), (90.0, y + 50.6))) for y in range(-64, 96, 8) if y != 8]
    drawn = tuple(Mark(LineKind.DRAW, Purpose.NAME, wall) for wall in walls)
    (note,) = mark_notes(make_part(width=90.0, height=90.0, marks=(*drawn, seat, words)), pose, setter)
    (ax, ay), (bx, by) = (pose.apply(corner) for corner in ((20.0, 20.0), (52.0, 38.0)))
    assert abs(sin(radians(note.turn) - atan2(by - ay, bx - ax))) < 1e-6
    assert -90.0 < note.turn <= 90.0 and note.area(0.0).distance(shapely.Point(pose.apply(near))) < 5.0


@pytest.mark.parametrize(("line", "lies"), [
    (shapely.Point(1.0, 2.0), None), (shapely.LineString([(0, 0), (1, 1)]), 45.0), (shapely.box(0, 0, 5, 5).boundary, None),
    (shapely.box(0, 0, 5, 11).boundary, 90.0),
])  # fmt: skip
def test_only_what_is_long_and_narrow_lies_one_way(line: shapely.Geometry, lies: float | None) -> None:
    assert (turn := _lies(line)) == lies or (turn is not None and lies is not None and abs(turn) == lies)


def test_words_are_left_out_where_they_would_cross_a_line(make_part: Callable[..., Part], setter: Setter) -> None:
    words = "a sentence much longer than the part is wide, and wider than any place on it could ever be, by far"
    for purpose in (Purpose.NAME, Purpose.BEVEL):
        part = replace(make_part(), marks=(Mark(LineKind.REFERENCE, purpose, polyline(((5.0, 5.0),)), text=words * 3),))
        assert mark_notes(part, Pose(), setter) == ()


def test_a_pattern_is_broken_round_words_and_round_the_arrow_up(make_part: Callable[..., Part], setter: Setter) -> None:
    arrow = Mark(LineKind.DRAW, Purpose.TOP, polyline(((20.0, 10.0), (20.0, 17.0))))
    word = Mark(LineKind.REFERENCE, Purpose.NAME, polyline(((30.0, 13.0),)), text="top")
    part = replace(make_part(), marks=(arrow, word))
    pose = Pose(100.0, 0.0)
    notes = mark_notes(part, pose, setter)
    around_word, around_arrow = quiet_boxes(part, pose, notes)
    assert around_word == notes[0].box.grown(0.5)
    assert around_arrow == Box(120.0, 10.0, 120.0, 17.0).grown(1.2)


def test_a_part_without_words_has_none(make_part: Callable[..., Part], setter: Setter) -> None:
    assert mark_notes(make_part(), Pose(), setter) == ()


def test_the_word_at_the_arrow_stands_by_it_small_rather_than_farther_off(
    make_part: Callable[..., Part], setter: Setter
) -> None:
    """Dotted lines leave 4.9 mm there: too little for the word in its usual size, which finds room 10 mm lower."""
    sides = [((4.0 + side * 2.45, 39.0), (4.0 + side * 2.45, 14.0), (4.0 + side * 3.0, 5.0)) for side in (-1.0, 1.0)]
    lines = [Mark(LineKind.REFERENCE, Purpose.BEVEL, polyline(side)) for side in sides]
    word = Mark(LineKind.REFERENCE, Purpose.NAME, polyline(((4.0, 17.0),)), name=TOP, text=TOP)
    (note,) = mark_notes(make_part(width=8.0, height=40.0, marks=(*lines, word)), Pose(), setter)
    assert note.style == LEAST
    assert shapely.distance(shapely.Point(4.0, 17.0), note.area()) < 3.5
