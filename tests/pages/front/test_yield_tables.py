"""The tables of the yield, and the notes on tracing and cutting."""

from collections.abc import Callable
from dataclasses import replace

from publisher.pages.front.yield_tables import cut_note, metres, sheet_table
from publisher.pages.sheet.draft import Context


def cells(table) -> list[list[str]]:
    """Return the words of each cell of a table."""
    return [[" ".join(cell).replace("\xa0", " ") for cell in row] for row in table.rows]


def test_sheets_for_the_list(demo: Callable[..., Context]) -> None:
    """Sheets, grid, area, pieces, left over, metres in all and on one sheet."""
    context = demo("lock-stair")
    one = context.needs.yields[0]
    row = cells(sheet_table(context, 187.0, None))[0]
    assert row[1:5] == [str(len(one.sheets)), str(one.grid_sheets), str(one.bound), str(one.pieces)]
    assert row[5] == str(one.ease.shared)
    assert row[7] == metres(one.cut_length)


def test_scoring_has_a_column_only_when_there_is_some(demo: Callable[..., Context]) -> None:
    """A design without scored lines shows no empty column."""
    context = demo("lock-stair")
    scored = replace(context.needs.yields[0], score_length=1234.0)
    more = replace(context, needs=replace(context.needs, yields=(scored,)))
    assert "1.2 m" in cells(sheet_table(more, 187.0, None))[0]
    assert len(sheet_table(more, 187.0, None).columns) == len(sheet_table(context, 187.0, None).columns) + 1


def test_a_template_traced_often_wants_card_and_a_spare(demo: Callable[..., Context]) -> None:
    """20 tracings of one template are said; with 10 nothing is."""
    context = demo("lock-stair")
    assert "A (20 times)" in cut_note(context)
    rows = tuple(replace(row, tracings=10, sturdy=False) for row in context.needs.cut_list)
    assert "Traced often" not in cut_note(replace(context, needs=replace(context.needs, cut_list=rows)))
