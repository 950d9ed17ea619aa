"""How high layers of board come out: boards of one batch are all thick or all thin, and glue lies between them.

The worst case adds all spreads up. Only where a stack's layers come on purpose from sheets of different batches do errors balance:
with kᵢ layers from sheet i, each sheet's error anywhere within its spread (a rectangle, so spread/√3 is its standard deviation, an
assumption), 95 % of such stacks lie within 1.96·√(Σkᵢ²)·spread/√3. That is never taken for more than the worst case.
"""

from collections import Counter
from collections.abc import Sequence
from math import sqrt

from publisher.design import Board
from publisher.geometry import Part
from publisher.joints.model import StackLayer

GLUE_LINE = 0.05
"""mm: what a line of white glue adds between two boards at most. Assumption, no source."""
NINETY_FIVE = 1.96  # standard deviations of a normal distribution that hold 95 %


def worst_ends(
    layers: Sequence[StackLayer], lines: int, parts: dict[str, Part], boards: dict[str, Board]
) -> tuple[float, float]:
    """Return the least and greatest height (mm) of layers with ``lines`` glue lines among them: all thin and no glue, all thick
    and all glue."""
    high = sum(layer.thickness for layer in layers)
    spread = sum(boards[parts[layer.part].board].spread for layer in layers)
    return high - spread, high + spread + lines * GLUE_LINE


def likely_ends(
    layers: Sequence[StackLayer], lines: int, parts: dict[str, Part], boards: dict[str, Board], sheets: int
) -> tuple[float, float]:
    """Return between which heights (mm) 95 % of such stacks lie when their layers come in turn from ``sheets`` batches of each
    board."""
    high = sum(layer.thickness for layer in layers)
    counts = Counter(parts[layer.part].board for layer in layers)
    variance = sum(boards[board].spread ** 2 / 3.0 * _squares(count, sheets) for board, count in counts.items())
    worst = sum(boards[board].spread * count for board, count in counts.items())
    half = min(worst, NINETY_FIVE * sqrt(variance))
    return high - half, high + half + lines * GLUE_LINE


def _squares(count: int, sheets: int) -> int:
    """Return Σkᵢ² of ``count`` layers dealt out in turn to that many sheets."""
    each, more = divmod(count, sheets)
    return more * (each + 1) ** 2 + (sheets - more) * each**2
