"""Which boards a design takes: every meeting solved for the thickness of board, as it is for the print scale."""

from math import inf

from publisher.design import Board
from publisher.joints.model import BoardRange, Meeting


def board_ranges(meetings: tuple[Meeting, ...], boards: tuple[Board, ...]) -> tuple[BoardRange, ...]:
    """Return for each board of the design the thicknesses with which all its meetings hold, at true size; where one is unsure of a board,
    those that the spec says of it are all that is known."""
    return tuple(
        _range(board, [m for m in meetings if m.board == board.id or board.id in m.unsure]) for board in boards
    )


def _range(board: Board, meetings: list[Meeting]) -> BoardRange:
    least, most, least_by, most_by = 0.0, inf, "", ""
    for meeting in meetings:
        low, high = meeting.takes_board() if meeting.board == board.id else (0.0, inf)
        if board.id in meeting.unsure:
            low, high = max(low, board.thickness - board.spread), min(high, board.thickness + board.spread)
        if low > least:
            least, least_by = low, meeting.name
        if high < most:
            most, most_by = high, meeting.name
    return BoardRange(
        board.id, board.sold_as, board.shop, board.thickness, board.spread, least, most, least_by, most_by
    )
