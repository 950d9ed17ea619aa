"""The boards that a pack is drawn for, in words: a pack for another thickness is another pack, and must not be taken for it."""

from collections.abc import Iterable

from publisher.basics.wording import LengthUnit, say_thickness
from publisher.design import Board
from publisher.geometry import Part


def drawn_for(boards: Iterable[Board], parts: Iterable[Part], first: LengthUnit) -> str:
    """Return name, thickness and name on sale of each board that a part is cut from: ``foam 4.76 mm (0.187 in), sold as 3/16 in``."""
    used = {part.board for part in parts}
    said = (
        f"{board.id.replace('_', ' ')} {say_thickness(board.thickness, first)}"
        + (f", sold as {board.sold_as}" if board.sold_as else "")
        for board in boards
        if board.id in used
    )
    return "; ".join(said)
