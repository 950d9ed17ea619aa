"""A design at many values of one size or two: what its needs leave, what boards, sheets and pages it takes, and where that jumps.

Comes in: a brief, a variant, ranges of sizes. Goes out: a ``Sweep``: a row for each value, the jumps between them, the best value.
Never: stores a layout, draws a page, changes the design.

What does not change between two values is not worked out anew between them, and jumps are found one quantity at a time.
"""

from publisher.sweep.model import Jump, JumpKind, Missed, Saving, Sweep, SweepRow, Told, VariedNeed, VariedSheet
from publisher.sweep.plotting import plot_of
from publisher.sweep.varying import vary

__all__ = [
    "Jump",
    "JumpKind",
    "Missed",
    "Saving",
    "Sweep",
    "SweepRow",
    "Told",
    "VariedNeed",
    "VariedSheet",
    "plot_of",
    "vary",
]
