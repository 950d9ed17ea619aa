"""The least sizes that a knife and board allow: common practice for bare foam of 5 mm, carried over to other boards, and for card."""

from publisher.basics import record
from publisher.design import Board


@record
class Least:
    """A least size (mm) in bare foam of 5 mm, and in card (0: nobody asks). Common practice, no source."""

    foam: float
    card: float = 0.0


WHOLE_PART = Least(6.0, card=3.0)
"""The width of a whole part."""

SHORT_BAR, LONG_BAR, BAR = Least(5.0, card=2.0), Least(8.0, card=2.0), 30.0
"""The width of a bar beside an opening, up to ``BAR`` mm long and longer."""

CROWN, FOOT = Least(8.0), Least(10.0)
"""How thick an arch is at its crown, and how wide its foot is."""

BLUNT = Least(2.0)
"""How wide a point is cut off."""

TAB = Least(12.0)
"""The length of a tab."""

GLUED_SHARE, GLUED_STRIP = 0.25, Least(8.0)
"""Of the smaller of two layers, and its width: what must lie on the other to hold by glue. Common practice, no source."""

OVERHANG = 4.0
"""Boards that a deck may reach beyond what carries it. Common practice, no source."""

THICKNESS = 5.0  # mm: the board that the sizes are stated for

PAPERED = 0.7
"""Papered board holds at this share of the size. An assumption."""


def least(size: Least, board: Board) -> float:
    """Return a least size (mm) for a board: of foam as stated at 5 mm and thinner, more in thicker board, less with paper; of
    card as it is; of paper none."""
    if board.material != "foam":
        return size.card if board.material == "card" else 0.0
    return size.foam * max(1.0, board.thickness / THICKNESS) * (1.0 if board.faces == "bare" else PAPERED)
