"""The least sizes that a knife and foam allow: common practice for bare board of 5 mm, carried over to other boards."""

from publisher.design import Board

WHOLE_PART = 6.0
"""mm: the width of a whole part. Common practice, no source."""

SHORT_BAR, LONG_BAR, BAR = 5.0, 8.0, 30.0
"""mm: the width of a bar beside an opening, up to ``BAR`` long and longer. Common practice, no source."""

GLUED_SHARE, GLUED_STRIP = 0.25, 8.0
"""Of the smaller of two layers, and mm: what must lie on the other to hold by glue. Common practice, no source."""

OVERHANG = 4.0
"""Boards that a deck may reach beyond what carries it. Common practice, no source."""

THICKNESS = 5.0  # mm: the board that the sizes are stated for

PAPERED = 0.7
"""Papered board holds at this share of the size. An assumption."""


def least(size: float, board: Board) -> float:
    """Return a least size (mm) for a board: as stated at 5 mm and thinner, more in thicker board, less with paper."""
    return size * max(1.0, board.thickness / THICKNESS) * (1.0 if board.faces == "bare" else PAPERED)
