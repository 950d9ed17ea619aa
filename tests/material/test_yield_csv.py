"""The yield for a spreadsheet."""

import csv
import io

from publisher.material import gain, lay_out, yield_csv
from publisher.material.yield_csv import COLUMNS


def test_lines_and_columns(shop) -> None:
    """One line for each part alone and one for the list, on each sheet size; figures are those of the yields."""
    board = shop.board((200.0, 300.0), (300.0, 300.0), gap=0.0, margin=0.0)
    parts = (shop.part("tile", (shop.box(50.0, 100.0),), 13), shop.part("side", (shop.box(250.0, 20.0),), 1))
    needs = lay_out(shop.design(board), parts)
    rows = list(csv.DictReader(io.StringIO(yield_csv(needs, parts))))
    assert list(rows[0]) == list(COLUMNS)
    assert [r["row"] for r in rows] == ["part alone", "part alone", "whole list"] * 2
    tile, _, whole = rows[:3]
    assert (tile["letter"], tile["part"], tile["careful_at_least"], tile["grid"], tile["gain"]) == (
        "T", "Tile", "12", "12", "0 %",
    )  # fmt: skip
    assert (whole["sheets_at_least"], whole["pieces"], whole["sheets_by_area"]) == ("2", "14", "2")
    assert whole["cut_m"] == "4.44"  # 13 · 0.3 + 0.54
    assert sum(round(100 * float(m)) for m in whole["cut_m_a_sheet"].split(" + ")) == 444
    assert (tile["sheet_width_in"], tile["sheet_height_in"]) == ("7.87", "11.81")


def test_gain() -> None:
    """8 against 6 is a third more; nothing can be said of a grid that takes none."""
    assert (gain(8, 6), gain(6, 6), gain(1, 0)) == (33, 0, None)
