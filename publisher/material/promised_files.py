"""What the files beside a pack must show of its boards: the sheets as cut files, and the table of what they give."""

from collections.abc import Iterable, Mapping

from publisher.basics import AlonePromise, CutFilePromise, PiecePromise, YieldPromise
from publisher.design import Board
from publisher.material.model import Layout, Yield


def promised_sheet(layout: Layout, pieces: Mapping[str, PiecePromise], board: Board, path: str) -> CutFilePromise:
    """Return what the cut file of a laid-out sheet must show: each copy where it was laid, apart by the knife's gap, off the edge."""
    sheet = layout.sheet
    copies = tuple((pieces[item.part], item.pose) for item in layout.items)
    size = (sheet.width, sheet.height, board.knife_gap, board.edge_margin)
    return CutFilePromise(path, copies, *size, board.id, sheet.label)


def promised_yields(yields: Iterable[Yield], pieces: Mapping[str, PiecePromise]) -> tuple[YieldPromise, ...]:
    """Return what the table of yields must say, in its order."""
    return tuple(_promised(one, pieces) for one in yields)


def _promised(one: Yield, pieces: Mapping[str, PiecePromise]) -> YieldPromise:
    spares = {spare.part: spare.copies for spare in one.spares}
    alone = tuple(
        AlonePromise(
            pieces[row.part].letter,
            pieces[row.part].name,
            row.careful,
            row.most,
            row.known_as,
            row.ease.askew,
            row.ease.measures,
            row.ease.shared,
            row.grid,
            spares.get(row.part),
        )
        for row in one.rows
    )
    if not one.sheets:
        return YieldPromise(one.board, one.sheet.label, one.sheet.width, one.sheet.height, alone)
    return YieldPromise(
        one.board,
        one.sheet.label,
        one.sheet.width,
        one.sheet.height,
        alone,
        one.pieces,
        one.grid_sheets,
        one.bound,
        one.ease.askew,
        one.ease.measures,
        one.ease.shared,
        one.offcut_share,
        one.cut_length,
        one.cut_lengths,
        one.score_length,
    )
