"""Cuts, their names and the measure along the edges of a sheet's picture."""

from publisher.basics import Box, CutPromise, LayoutPromise, PlacePromise, Pose
from publisher.pages import Stroke, Words
from publisher.pages.front.layout_edges import cut_lines, edge_scale, offcut_box
from publisher.pages.front.layout_words import SheetWords
from publisher.pages.type import Setter

SHEET = Box(10.0, 10.0, 94.0, 69.4)  # 420 × 297 mm at 1 : 5
PIECE = PlacePromise("p", "A", 1, (((0.0, 0.0), (200.0, 0.0), (200.0, 100.0), (0.0, 100.0)),))
POSE = Pose(10.0, 10.0)


def words(*cuts: CutPromise, offcut: Box | None = None) -> SheetWords:
    return SheetWords(LayoutPromise("k", "foam", "A3", 420.0, 297.0, 1, 1, 1, (PIECE,), cuts, offcut), "mm")


def test_names_of_cuts_stand_beside_the_sheet_or_on_bare_board(setter: Setter) -> None:
    """One that ends at the right edge, one at the upper one, and one that ends on the way, over bare board."""
    through = CutPromise(True, 100.0, 0.0, 420.0, 1), CutPromise(False, 200.0, 0.0, 297.0, 1)
    drawn, taken = cut_lines(setter, words(*through, CutPromise(True, 50.0, 0.0, 210.0, 1)), SHEET, POSE, 0.2)
    names = {thing.text: thing for thing in drawn if isinstance(thing, Words)}
    assert set(names) == {"cut 1", "cut 2", "cut 3"} and len(taken) == 3
    assert names["cut 1"].x > SHEET.right and names["cut 2"].y > SHEET.top
    assert SHEET.left + 42.0 < names["cut 3"].x < SHEET.right


def test_a_name_that_would_lie_on_another_or_on_a_piece_is_left_to_the_list(setter: Setter) -> None:
    near = CutPromise(True, 100.0, 0.0, 420.0, 1), CutPromise(True, 103.0, 0.0, 420.0, 1)
    drawn, taken = cut_lines(setter, words(*near, CutPromise(True, 50.0, 0.0, 100.0, 1)), SHEET, POSE, 0.2)
    assert [thing.text for thing in drawn if isinstance(thing, Words)] == ["cut 1"] and len(taken) == 1
    (lines,) = (thing for thing in drawn if isinstance(thing, Stroke))
    assert len(lines.paths) == 3


def test_names_of_cuts_that_run_close_stand_beside_each_other(setter: Setter) -> None:
    near = CutPromise(False, 200.0, 0.0, 297.0, 1), CutPromise(False, 212.0, 0.0, 297.0, 1)
    drawn, taken = cut_lines(setter, words(*near), SHEET, POSE, 0.2)
    assert [thing.text for thing in drawn if isinstance(thing, Words)] == ["cut 1", "cut 2"]
    assert taken[0].overlap(taken[1]) <= 0.0


def test_the_name_of_a_cut_near_the_measured_edge_keeps_off_its_numbers(setter: Setter) -> None:
    near = [CutPromise(False, at, 0.0, 297.0, 1) for at in (3.0, 9.0, 15.0, 21.0)]
    _, taken = cut_lines(setter, words(*near), SHEET, POSE, 0.2)
    assert taken and all(box.left >= SHEET.left for box in taken)


def test_the_measure_runs_from_the_corner_that_is_measured_from(setter: Setter) -> None:
    drawn = edge_scale(setter, words(), SHEET, 0.2)
    numbers = {(thing.text, round(thing.y, 1)) for thing in drawn if isinstance(thing, Words)}
    assert {text for text, _ in numbers} == {"mm", "0", "100", "200", "300", "400"}
    assert all(y < SHEET.bottom for text, y in numbers if text in ("0", "300", "400"))


def test_the_offcut_says_its_size_where_nothing_else_stands(setter: Setter) -> None:
    kept = words(offcut=Box(203.0, 3.0, 417.0, 294.0))
    drawn, (where,) = offcut_box(setter, kept, POSE, 0.2, (), 4)
    assert [thing.text for thing in drawn if isinstance(thing, Words)] == ["keep", "214 × 291 mm", "8.4 × 11.4 in"]
    assert (where.key, where.page) == ("k:offcut:0", 4)
    assert offcut_box(setter, kept, POSE, 0.2, (where.box,), 4)[1] == ()
    assert offcut_box(setter, words(), POSE, 0.2, (), 4) == ((), ())


def test_no_name_of_a_cut_stands_across_another_cut_or_the_side_of_what_is_kept(setter: Setter) -> None:
    """The name of a cut that ends on the way would stand on bare board, which another cut or the offcut to keep parts there."""
    ends = CutPromise(True, 50.0, 0.0, 210.0, 2)
    free, _ = cut_lines(setter, words(ends), SHEET, POSE, 0.2)
    assert [thing.text for thing in free if isinstance(thing, Words)] == ["cut 1"]
    crossed, _ = cut_lines(setter, words(CutPromise(False, 235.0, 0.0, 297.0, 1), ends), SHEET, POSE, 0.2)
    assert [thing.text for thing in crossed if isinstance(thing, Words)] == ["cut 1"]
    kept, _ = cut_lines(setter, words(ends, offcut=Box(235.0, 3.0, 417.0, 294.0)), SHEET, POSE, 0.2)
    assert not [thing for thing in kept if isinstance(thing, Words)]
