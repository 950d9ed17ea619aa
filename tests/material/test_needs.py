"""Cut list and yield of a whole design."""

from math import pi

import pytest

from publisher.basics import LineKind, Purpose, RowPromise, polyline
from publisher.design import SheetSize
from publisher.geometry import Mark
from publisher.material import lay_out, layouts_document


def test_cut_list(shop) -> None:
    """Sizes overall, counts, and cutting length of all copies: outline and openings."""
    wall = shop.part("wall", (shop.box(100.0, 60.0), shop.box(20.0, 30.0, 40.0, 10.0)), 3, spare=1, mirrored=2)
    needs = lay_out(shop.design(shop.board((297.0, 420.0))), (wall,))
    (row,) = needs.cut_list
    assert (row.part, row.letter, row.name, row.board) == ("wall", "W", "Wall", "foam")
    assert (row.count, row.spare, row.mirrored, row.width, row.height) == (3, 1, 2, 100.0, 60.0)
    assert needs.promises == (RowPromise("wall", "W", "Wall", "foam", 3, 1, 2, 100.0, 60.0),)
    assert row.cut_length == pytest.approx(4 * (320.0 + 100.0))
    assert needs.yields[0].cut_length == pytest.approx(row.cut_length)
    laid = [i for layout in needs.yields[0].sheets for i in layout.items]
    assert sum(i.pose.mirrored for i in laid) == 2
    assert len(laid) == 4


def test_yield_by_real_layout(shop) -> None:
    """12 of 50 × 100 fill a sheet of 200 × 300 (no gap, no margin): no offcut; 13 take two."""
    board = shop.board((200.0, 300.0), gap=0.0, margin=0.0)
    for count, sheets in ((12, 1), (13, 2)):
        (one,) = lay_out(shop.design(board), (shop.part("tile", (shop.box(50.0, 100.0),), count),)).yields
        assert (len(one.sheets), one.grid_sheets, one.bound) == (sheets, sheets, sheets)
        assert one.offcut_share == pytest.approx(1 - count * 5000 / (sheets * 60000))
        assert [(r.careful, r.grid) for r in one.rows] == [(12, 12)]
        assert sum(len(layout.items) for layout in one.sheets) == count


def test_score_length(shop) -> None:
    """Marks to score and fold count, drawn ones do not; a closed mark goes round."""
    marks = (
        Mark(LineKind.SCORE, Purpose.SURFACE, polyline(((0.0, 0.0), (30.0, 40.0)))),
        Mark(
            LineKind.FOLD, Purpose.SURFACE, polyline(((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)), closed=True)
        ),
        Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((0.0, 0.0), (99.0, 0.0)))),
    )
    part = shop.part("skin", (shop.box(60.0, 60.0),), 2, marks=marks)
    (one,) = lay_out(shop.design(shop.board((297.0, 420.0))), (part,)).yields
    assert one.score_length == pytest.approx(2 * (50.0 + 40.0))


def test_boards_are_laid_out_apart(shop) -> None:
    """Each board has its own yields, a board without parts none, a part that nobody needs is in no list."""
    boards = (
        shop.board((297.0, 420.0)),
        shop.board((500.0, 700.0), name="card"),
        shop.board((300.0, 300.0), name="cork"),
    )
    parts = (
        shop.part("wall", (shop.box(100.0, 60.0),), 2),
        shop.part("floor", shop.disc(60.0), 1, board="card"),
        shop.part("none", (shop.box(10.0, 10.0),), 0),
    )
    needs = lay_out(shop.design(*boards), parts)
    assert [(y.board, [r.part for r in y.rows]) for y in needs.yields] == [("foam", ["wall"]), ("card", ["floor"])]
    assert [r.part for r in needs.cut_list] == ["wall", "floor"]


def test_a_part_that_does_not_fit_one_size(shop) -> None:
    """Its row says 0, it is named as left out, and the numbers are of the others."""
    board = shop.board((297.0, 420.0), (508.0, 762.0))
    parts = (shop.part("side", (shop.box(480.0, 100.0),), 2), shop.part("rib", (shop.box(90.0, 70.0),), 4))
    small, large = lay_out(shop.design(board), parts).yields
    assert next((r.part, r.careful, r.grid) for r in small.rows) == ("side", 0, 0)
    assert small.rows[0].layout.items == ()
    assert (small.left_out, large.left_out) == (("side",), ())
    assert small.cut_length == pytest.approx(4 * 320.0)
    assert {i.part for layout in small.sheets for i in layout.items} == {"rib"}
    assert {i.part for layout in large.sheets for i in layout.items} == {"side", "rib"}


def test_a_part_larger_than_all_sheets_stops_the_pack(shop) -> None:
    """An error, and no layout that promises otherwise."""
    needs = lay_out(shop.design(shop.board((297.0, 420.0))), (shop.part("side", (shop.box(900.0, 100.0),), 2),))
    assert [(f.check, f.severity) for f in needs.findings] == [("material/part-larger-than-sheets", "error")]
    (one,) = needs.yields
    assert (one.sheets, one.bound, one.offcut_share) == ((), 0, 0.0)


def test_a_sheet_on_the_spot(shop) -> None:
    """An offcut that one has, instead of the sheets on sale."""
    part = shop.part("rib", (shop.box(90.0, 70.0),), 4)
    needs = lay_out(shop.design(shop.board((297.0, 420.0))), (part,), sheets=(SheetSize("200 x 160 mm", 200.0, 160.0),))
    assert [(y.sheet.label, len(y.sheets)) for y in needs.yields] == [("200 x 160 mm", 1)]


def test_too_many_copies_are_not_laid_out(shop) -> None:
    """The error stands; nothing runs for hours."""
    needs = lay_out(shop.design(shop.board((297.0, 420.0))), (shop.part("tile", (shop.box(20.0, 20.0),), 100_000),))
    assert [f.check for f in needs.findings] == ["material/too-many-copies"]
    assert needs.yields == ()


def test_rings_are_laid_with_their_holes(shop) -> None:
    """Area is net: a ring's hole is offcut that smaller parts use."""
    parts = (shop.part("ring", shop.disc(50.0, 35.0), 1), shop.part("disc", shop.disc(25.0), 1))
    (one,) = lay_out(shop.design(shop.board((106.0, 106.0))), parts).yields
    assert len(one.sheets) == 1
    assert one.offcut_share == pytest.approx(1 - pi * (2500 - 1225 + 625) / 106.0**2, abs=0.001)


def test_unknown_effort(shop) -> None:
    """A word that names no effort is refused."""
    with pytest.raises(KeyError):
        lay_out(shop.design(), (), "heroic")


@pytest.mark.parametrize(("steps", "bars"), [(3, 8), (40, 160)])
def test_the_same_twice_and_from_the_store(shop, steps, bars) -> None:
    """Equal input, equal layouts, byte for byte; a store of 200 parts is verified, not made again."""
    design = shop.design(shop.board((508.0, 762.0)))
    parts = (shop.part("step", shop.wedge(92.0), steps), shop.part("bar", (shop.box(60.0, 20.0),), bars))
    first = layouts_document((lay_out(design, parts),))
    again = design if steps == 3 else shop.with_store(design, first)
    needs = lay_out(again, parts)
    assert layouts_document((needs,)) == first
    assert (needs.yields[0].fresh == 0) is (steps > 3)
