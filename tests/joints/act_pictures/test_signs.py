"""Signs find room: arrows between what is held off and its place, labels on what they name or beside it with a line."""

import numpy as np
import shapely

from publisher.basics import Box
from publisher.joints.act_pictures.paper_grid import grid_over
from publisher.joints.act_pictures.signs import (
    UP_LETTERS,
    UP_WORD,
    Sheet,
    Turning,
    put_arrow,
    put_label,
    put_sweep,
    put_times,
    put_turn,
    put_up,
)
from publisher.joints.drawings import Sketch
from publisher.pages.type.languages import known_languages, table_of

PAPER = Box(0.0, 0.0, 70.0, 50.0)


def sheet() -> Sheet:
    return Sheet(Sketch(), grid_over(PAPER), [])


def test_an_arrow_points_along_the_way_and_keeps_off_lines() -> None:
    made = sheet()
    goal = np.array([(20.0, 10.0), (50.0, 10.0)])
    line = shapely.LineString([(35.0, 8.0), (35.0, 40.0)])
    made.ground.mark(np.array([line]))
    put_arrow(made, np.array([0.0, -1.0]), 20.0, goal, shapely.box(20.0, 30.0, 50.0, 34.0))
    (shaft,), (head,) = made.sketch.lines["cue"], made.sketch.lines["head"]
    (x, top), (_, low) = shaft.coords
    assert top > low > head.coords[0][1] and head.distance(line) > 0.3
    assert 15.0 < x < 55.0 and 8.0 < low < top < 34.0


def test_a_label_stands_on_what_it_names_or_beside_it_with_a_line() -> None:
    made = sheet()
    own = shapely.box(10.0, 10.0, 40.0, 30.0)
    put_label(made, "4 × C", own, shapely.Polygon())
    ((_, x, y),) = made.sketch.labels
    assert own.contains(shapely.Point(x, y).buffer(2.0)) and "leader" not in made.sketch.lines
    crowded = sheet()
    crowded.ground.mark_area(own.buffer(4.0))
    put_label(crowded, "4 × C", own, shapely.Polygon())
    ((_, x, y),) = crowded.sketch.labels
    assert not own.contains(shapely.Point(x, y)) and crowded.sketch.lines["leader"]


def test_the_line_of_a_label_ends_within_what_it_names() -> None:
    """Another thing may share its border."""
    made = sheet()
    own = shapely.box(10.0, 10.0, 40.0, 30.0)
    made.ground.mark_area(own.buffer(4.0))
    put_label(made, "4 × C", own, shapely.Polygon())
    (line,) = made.sketch.lines["leader"]
    assert own.buffer(-1.0).contains(shapely.Point(line.coords[-1]))


def test_a_label_stands_where_there_is_most_room() -> None:
    made = sheet()
    wedge = shapely.Polygon([(5.0, 5.0), (65.0, 5.0), (65.0, 45.0)])
    put_label(made, "A", wedge, shapely.Polygon())
    ((_, x, y),) = made.sketch.labels
    assert wedge.exterior.distance(shapely.Point(x, y)) > 9.0


def test_the_sign_for_turning_stands_beside_all_parts_with_its_words_or_not_at_all() -> None:
    nothing, part = shapely.Polygon(), shapely.box(40.0, 5.0, 70.0, 50.0)
    hows: tuple[Turning, ...] = ("turn round", "turn over", "stand up", "lay down")
    for how in hows:
        made, full = sheet(), sheet()
        put_turn(made, how, part)
        assert {"cue", "head", "ring"} == set(made.sketch.lines)
        assert all(part.distance(line) > 0.5 for lines in made.sketch.lines.values() for line in lines)
        ((said, x, y),) = made.sketch.labels
        assert said == how and shapely.Point(x, y).distance(made.sketch.lines["ring"][0]) < 9.0
        full.ground.mark_area(shapely.box(*PAPER.sides))
        put_turn(full, how, nothing)
        assert not full.sketch.lines


def test_an_arrow_along_a_curve_says_its_angle_and_is_crossed_out_where_nothing_turns() -> None:
    path = np.array([(20.0 + 10.0 * np.cos(a), 20.0 + 10.0 * np.sin(a)) for a in np.linspace(0.0, 1.2, 16)])
    made, wrong = sheet(), sheet()
    put_sweep(made, path, "20°", wrong=False)
    put_sweep(wrong, path, "0°", wrong=True)
    assert [text for text, _, _ in made.sketch.labels] == ["20°"] and len(made.sketch.lines["cue"]) == 1
    assert len(wrong.sketch.lines["cue"]) == 3


def test_how_often_all_is_done_stands_in_a_frame_where_there_is_room() -> None:
    made, full = sheet(), sheet()
    put_times(made, 2)
    ((text, x, y),) = made.sketch.labels
    (frame,) = made.sketch.lines["ring"]
    assert text == "2 ×" and shapely.Polygon(frame).contains(shapely.Point(x, y))
    full.ground.mark_area(shapely.box(*PAPER.sides))
    put_times(full, 2)
    assert not full.sketch.labels


def test_the_upper_end_of_a_part_is_said_by_a_fine_arrow_on_it_with_its_word() -> None:
    made = sheet()
    face = shapely.box(10.0, 10.0, 50.0, 40.0)
    assert put_up(made, np.array([-2.0, 0.0]), face, word=True)
    (shaft,), (tip,) = made.sketch.lines["leader"], made.sketch.lines["head"]
    assert face.contains(shaft) and face.contains(shapely.Polygon(tip.coords))
    assert tip.coords[0][0] < shaft.bounds[0] < 16.0, "near the upper end, which is at the left"
    ((text, x, y),) = made.sketch.labels
    assert text == "top" and 1.0 < shapely.Point(x, y).distance(shaft) < 5.0


def test_an_arrow_that_finds_no_room_is_left_out() -> None:
    made = sheet()
    face = shapely.box(10.0, 10.0, 50.0, 40.0)
    made.ground.mark_area(face)
    assert not put_up(made, np.array([0.0, 1.0]), face, word=False) and not made.sketch.lines


def test_the_word_at_the_upper_end_has_room_in_every_language() -> None:
    words = [table_of(name).rows[UP_WORD] for name in known_languages() if name != "en"]
    assert words and max(map(len, (UP_WORD, *words))) <= UP_LETTERS


def test_strokes_keep_off_an_arrow_along_a_curve_and_off_no_box_round_it() -> None:
    """A box without strokes would be read as an opening."""
    made = sheet()
    turns = np.radians(np.linspace(0.0, 90.0, 24))
    put_sweep(made, np.column_stack([10.0 + 30.0 * np.cos(turns), 5.0 + 30.0 * np.sin(turns)]), "90°", wrong=False)
    clear = shapely.union_all(made.clear)
    assert clear.contains(shapely.Point(10.0 + 30.0 * np.cos(0.7), 5.0 + 30.0 * np.sin(0.7)))
    assert not clear.contains(shapely.Point(14.0, 9.0))


def test_the_line_of_a_label_runs_through_no_other_words_and_later_words_keep_off_it() -> None:
    """Words stand between what is named and where its label has most room: the label goes where its line passes beside them."""
    made, own = sheet(), shapely.box(30.0, 40.0, 40.0, 44.0)
    made.ground.mark_area(shapely.box(0.0, 28.0, 70.0, 50.0))  # nothing is free near it but below
    made.take(Box(16.0, 24.0, 54.0, 27.0))
    put_label(made, "a", own, shapely.Polygon())
    (line,) = made.sketch.lines["leader"]
    assert not line.intersects(shapely.box(16.0, 24.0, 54.0, 27.0)) and line.length > 5.0
    before = made.ground.busy.copy()
    put_label(made, "b", line.buffer(2.0), shapely.Polygon())
    (_, (_, x, y)) = made.sketch.labels
    assert before.any() and not line.intersects(shapely.box(x - 1.0, y - 1.0, x + 1.0, y + 1.0))


def test_where_no_place_leaves_other_words_free_the_line_is_broken_at_them() -> None:
    made, own = sheet(), shapely.box(33.0, 40.0, 37.0, 44.0)
    made.ground.mark_area(shapely.box(0.0, 24.0, 70.0, 50.0))
    wall = Box(0.5, 25.0, 69.5, 28.0)
    made.take(wall)
    put_label(made, "a", own, shapely.Polygon())
    (line,) = made.sketch.lines["leader"]
    assert not line.crosses(shapely.box(*wall.sides)) and line.length > 5.0
