"""Room 5: parts in, how they go together out.

Comes in: a ``Design`` and its ``Part``s. Goes out: layers of stacks, placed panels, facts, meetings of printed and
unprinted things, findings, line drawings. Never: repairs a shape, knows paper, imports material.
"""

from publisher.joints.model import (
    Drawing,
    DrawnLine,
    Joined,
    Label,
    Layer,
    Matrix,
    Meeting,
    Placed,
)

__all__ = ["Drawing", "DrawnLine", "Joined", "Label", "Layer", "Matrix", "Meeting", "Placed"]
