"""What the files beside a pack must show of the boards comes from the layouts themselves."""

from pathlib import Path

from publisher.brief import read_brief
from publisher.geometry import promised_piece
from publisher.material import promised_sheet, promised_yields
from publisher.pipeline import work

DESIGN = Path(__file__).parents[2] / "designs" / "quay"


def test_sheets_and_the_table_are_promised_from_the_layouts() -> None:
    worked = work(read_brief(DESIGN))
    assert worked.needs is not None and worked.design is not None
    pieces = {part.id: promised_piece(part) for part in worked.pieces}
    (board,) = worked.design.boards
    need = worked.needs.yields[0]
    sheet = promised_sheet(need.sheets[0], pieces, board, "sheet.svg")
    assert (sheet.width, sheet.height, sheet.gap, sheet.margin) == (
        need.sheet.width, need.sheet.height, board.knife_gap, board.edge_margin,
    )  # fmt: skip
    assert [(piece.part, pose) for piece, pose in sheet.copies] == [
        (item.part, item.pose) for item in need.sheets[0].items
    ]
    promised = promised_yields(worked.needs.yields, pieces)
    assert [one.label for one in promised] == [one.sheet.label for one in worked.needs.yields]
    assert (promised[0].pieces, promised[0].cuts) == (need.pieces, need.cut_lengths)
    assert [row.careful for row in promised[0].alone] == [row.careful for row in need.rows]
