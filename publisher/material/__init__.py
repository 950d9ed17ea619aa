"""Room 6: parts and counts in, board sheets out.

Comes in: a ``Design``'s boards and its ``Part``s. Goes out: cut list, verified layouts, yield. Never: imports joints,
knows printer pages.
"""

from publisher.material.model import (
    BoardNeeds,
    CutRow,
    Item,
    Layout,
    Piece,
    Yield,
    YieldRow,
)
from publisher.material.packing import pack

__all__ = ["BoardNeeds", "CutRow", "Item", "Layout", "Piece", "Yield", "YieldRow", "pack"]
