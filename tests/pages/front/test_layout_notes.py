"""The list beside a picture: columns that are filled in order, none ending with a heading."""

from publisher.pages.front.layout_notes import SheetNote, column_height, filled, in_columns

HEAD = SheetNote(("Measures",))
ROWS = tuple(SheetNote(("→1 ↓2",), f"k:{n}", str(n), "A") for n in range(12))


def test_columns_hold_all_entries_in_order() -> None:
    for count in (1, 2, 3, 4):
        columns = in_columns((HEAD, *ROWS), count)
        assert len(columns) <= count
        assert [entry for column in columns for entry in column] == [HEAD, *ROWS]
        assert max(map(column_height, columns)) <= column_height((HEAD, *ROWS)) / len(columns) + 2 * ROWS[0].height


def test_no_heading_ends_a_column() -> None:
    """Two rows and the heading fit; the heading goes to the next column with its first row."""
    columns = filled((*ROWS[:2], HEAD, *ROWS[2:]), 2 * ROWS[0].height + HEAD.height)
    assert columns[0] == ROWS[:2]
    assert columns[1][0] == HEAD
