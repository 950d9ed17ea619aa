"""Which layers of a stack wind or climb: told by how they lie, however the spec has written them. Mm, degrees."""

from collections.abc import Iterator
from itertools import pairwise
from math import hypot

from publisher.basics import Point, remembered
from publisher.joints.model import StackLayer

LaidOn = tuple[float, Point]
"""A turn and a shift."""

LIES_OVER = 0.01
"""mm and degrees: a layer that is moved by less against the one below lies just over it."""


@remembered
def climbs_of(layers: tuple[StackLayer, ...]) -> tuple[range, ...]:
    """Return the runs of layers (indices) of one part that each lie turned or shifted on the one below: stairs that wind or climb.

    A block on which a single layer of its part lies moved is no stair: two layers climb where the lower is no top of a block, or where
    it doubles a step.
    """
    moves, found, first = _moves(layers), list[range](), 1
    while first < len(layers):
        last = first
        while last < len(layers) and _is_moved(moves[last]):
            last += 1
        on_a_step = bool(found) and _top(moves, found[-1][-1]) == first - 1
        if last - first > 1 or (last - first == 1 and (moves[first - 1] is None or on_a_step)):
            found.append(range(first - 1, last))
        first = last + 1
    return tuple(found)


@remembered
def thickened(layers: tuple[StackLayer, ...]) -> tuple[tuple[int, ...], ...]:
    """Return each last step of a stair that is doubled: its index, and those of the layers of its part that lie just over it."""
    moves = _moves(layers)
    ends = [(climb[-1], _top(moves, climb[-1])) for climb in climbs_of(layers)]
    return tuple(tuple(range(last, top + 1)) for last, top in ends if top > last)


def alike(layers: tuple[StackLayer, ...], climb: range) -> tuple[range, ...]:
    """Return a stair in runs of layers that lie by one turn and shift on each other, its lowest layer with those above it."""
    moves = [moved_on(layers[k - 1], layers[k]) for k in climb[1:]]
    cuts = [k for k, (before, move) in enumerate(pairwise(moves), climb[0] + 2) if not _same(before, move)]
    return tuple(range(a, b) for a, b in pairwise((climb[0], *cuts, climb[-1] + 1)))


def moved_on(lower: StackLayer, upper: StackLayer) -> LaidOn:
    """Return by how many degrees, and how far in the lower one's own coordinates, a layer lies turned and shifted on another."""
    turn = (upper.pose.turn - lower.pose.turn + 180.0) % 360.0 - 180.0
    a, b, c, d, _, _ = lower.pose.matrix()
    x, y = upper.pose.x - lower.pose.x, upper.pose.y - lower.pose.y
    return turn, (a * x + b * y, c * x + d * y)


def _moves(layers: tuple[StackLayer, ...]) -> list[LaidOn | None]:
    """Return how each layer lies on the one below; None where that is of another part, or the table."""
    return [None, *_on_its_like(layers)]


def _on_its_like(layers: tuple[StackLayer, ...]) -> Iterator[LaidOn | None]:
    for lower, upper in pairwise(layers):
        yield moved_on(lower, upper) if lower.part == upper.part else None


def _is_moved(move: LaidOn | None) -> bool:
    return move is not None and not _same(move, (0.0, (0.0, 0.0)))


def _same(one: LaidOn, other: LaidOn) -> bool:
    (turn, (x, y)), (its_turn, (its_x, its_y)) = one, other
    return abs((turn - its_turn + 180.0) % 360.0 - 180.0) < LIES_OVER and hypot(x - its_x, y - its_y) < LIES_OVER


def _top(moves: list[LaidOn | None], step: int) -> int:
    """Return the highest layer that lies just over a step, each over the next lower one; the step itself where none does."""
    top = step
    while top + 1 < len(moves) and moves[top + 1] is not None and not _is_moved(moves[top + 1]):
        top += 1
    return top
