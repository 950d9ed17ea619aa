"""Tables: figures under each other at their point, rows as high as their words, any stretch of rows."""

from dataclasses import replace

import pytest

from publisher.pages.model import Stroke, Words
from publisher.pages.type.styles import SMALL
from publisher.pages.type.tables import PAD, Column, make_table
from publisher.pages.type.text import Setter

COLUMNS = (Column("Part", 30.0, bold=True), Column("Width", 30.0, "point"), Column("Count", 20.0, "right"))
ROWS = (("Gable wall", "110.0 mm", "2"), ("Side", "92.5 mm", "14"), ("A much longer name of a part", "5.25 mm", "3"))


def texts(drawn: tuple[object, ...]) -> list[Words]:
    return [t for t in drawn if isinstance(t, Words)]


def test_points_stand_under_each_other(setter: Setter) -> None:
    table = make_table(setter, COLUMNS, ROWS)
    figures = [w for w in texts(table.place(10.0, 100.0)) if w.text.endswith("mm")]
    points = {round(w.x + setter.width(w.text.split(".")[0], SMALL), 6) for w in figures}
    assert len(points) == 1
    ends = [w.x + setter.width(w.text, SMALL) for w in figures]
    assert max(ends) == pytest.approx(10.0 + 30.0 + 27.0)


def test_whole_numbers_end_together_at_the_right_side(setter: Setter) -> None:
    table = make_table(setter, COLUMNS, ROWS)
    counts = [w for w in texts(table.place(10.0, 100.0)) if w.text in {"2", "14", "3"}]
    assert {round(w.x + setter.width(w.text, SMALL), 6) for w in counts} == {90.0}


def test_rows_grow_with_their_words(setter: Setter) -> None:
    table = make_table(setter, COLUMNS, ROWS)
    one = SMALL.leading + 2 * PAD
    assert table.heights == pytest.approx((one, one, one + SMALL.leading))
    assert table.height() == pytest.approx(4 * one + SMALL.leading)


def test_any_stretch_of_rows_repeats_the_headings(setter: Setter) -> None:
    table = make_table(setter, COLUMNS, ROWS)
    room = table.head_height + table.heights[0] + 1.0
    assert table.rows_in(room) == 1
    assert table.rows_in(1.0) == 1  # a row that fits nowhere is still given out
    assert table.rows_in(1e9, 1) == 2
    said = [w.text for w in texts(table.place(0.0, 0.0, 1, 2))]
    assert said[:3] == ["Part", "Width", "Count"]
    assert "Side" in said and "Gable wall" not in said


def test_rules_are_as_wide_as_the_table(setter: Setter) -> None:
    drawn = make_table(setter, COLUMNS, ROWS, headed=False).place(10.0, 100.0)
    for stroke in drawn:
        if isinstance(stroke, Stroke):
            assert all((p.points[0][0], p.points[1][0]) == (10.0, 90.0) for p in stroke.paths)


@pytest.mark.parametrize(("width", "whole"), [(60.0, True), (50.0, True), (30.0, False)])
def test_no_word_is_broken_while_another_column_has_room(width: float, whole: bool, setter: Setter) -> None:
    columns = (
        Column("Part", width - 48.0 if width > 48.0 else 4.0),
        Column("Width", width - 30.0),
        Column("Count", 26.0),
    )
    columns = tuple(replace(c, width=c.width * width / sum(d.width for d in columns)) for c in columns)
    table = make_table(setter, columns, (("Gable wall", "110.0 mm", "2"),))
    words = {word for row in (table.head, *table.rows) for cell in row for line in cell for word in line.split()}
    assert ({"Part", "Gable", "wall", "Width", "110.0", "Count"} <= words) is whole
    assert table.width == pytest.approx(width)


def test_rows_stand_below_each_other_under_the_headings(setter: Setter) -> None:
    table = make_table(setter, (Column("What", 30.0), Column("How", 20.0)), (("a", "b"), ("c", "d"), ("e", "f")))
    first, second, third = table.row_boxes(10.0, 100.0)
    assert first.top == 100.0 - table.head_height and (first.left, first.right) == (10.0, 60.0)
    assert (second.top, third.top) == (first.bottom, second.bottom)
    assert third.bottom == pytest.approx(100.0 - table.height())
    (alone,) = table.row_boxes(10.0, 100.0, 1, 2)
    assert alone.top == first.top and alone.height == pytest.approx(table.heights[1])
