"""How much tape goes over a bent piece before it is bent. Mm.

A margin all round and a usual width of tape: common practice, no source.
"""

from math import ceil

COVER_MARGIN = 5.0  # mm that a cover is cut larger all round; it is trimmed with the piece
TAPE_WIDE, TAPE_INCHES = 50.0, 2.0  # mm, and the inches of the nearest tape on sale
TAPE_OVERLAP = 5.0  # mm by which strips of tape lie over each other


def tape_over(width: float, height: float) -> float:
    """Return the length of tape (mm) that covers a piece: strips along its longer side."""
    long, short = (side + 2.0 * COVER_MARGIN for side in sorted((width, height), reverse=True))
    return long * (1 + max(0, ceil((short - TAPE_WIDE) / (TAPE_WIDE - TAPE_OVERLAP) - 1e-9)))
