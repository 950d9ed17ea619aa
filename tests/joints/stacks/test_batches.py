"""How high layers come out. By hand: 20 layers of 5 ± 0.2 mm are 96 to 104 mm, with 19 lines of glue 104.95."""

from math import sqrt
from random import Random
from types import SimpleNamespace

import pytest

from publisher.joints.stacks.batches import likely_ends, worst_ends
from publisher.joints.stacks.layers import lay_all


def stack_of(make: SimpleNamespace, count: int) -> SimpleNamespace:
    part = make.disc()
    (laid,), _ = lay_all((make.stack("pile", ("plinth", count, 0.0, (0, 0))),), {"plinth": part})
    return SimpleNamespace(layers=laid.layers, parts={"plinth": part}, boards={"foam": make.board()})


def test_boards_of_one_batch_are_all_thick_or_all_thin(make: SimpleNamespace) -> None:
    pile = stack_of(make, 20)
    assert worst_ends(pile.layers, 19, pile.parts, pile.boards) == pytest.approx((96.0, 104.95))


@pytest.mark.parametrize(
    ("count", "sheets", "squares"),
    [(20, 4, 4 * 5**2), (20, 3, 2 * 7**2 + 6**2), (20, 20, 20), (20, 400, 20), (3, 2, 2**2 + 1)],
)
def test_mixed_boards_balance(count: int, sheets: int, squares: int, make: SimpleNamespace) -> None:
    pile = stack_of(make, count)
    half = 1.96 * sqrt(squares) * 0.2 / sqrt(3.0)
    low, high = likely_ends(pile.layers, 0, pile.parts, pile.boards, sheets)
    assert (low, high) == pytest.approx((count * 5.0 - half, count * 5.0 + half))


def test_mixed_boards_are_never_worse_than_the_worst_case(make: SimpleNamespace) -> None:
    """Two layers from two batches: 1.96 · √2 · 0.2 / √3 = 0.32 < 0.4; one layer: 0.226 would be more than its spread."""
    for count, sheets, half in ((2, 2, 1.96 * sqrt(2.0) * 0.2 / sqrt(3.0)), (1, 2, 0.2)):
        pile = stack_of(make, count)
        low, _ = likely_ends(pile.layers, 0, pile.parts, pile.boards, sheets)
        assert low == pytest.approx(5.0 * count - half)


def test_95_of_100_mixed_stacks_lie_between(make: SimpleNamespace) -> None:
    """Drawn at random from the assumption itself: each batch anywhere within its spread."""
    random, pile = Random(3), stack_of(make, 20)
    low, high = likely_ends(pile.layers, 0, pile.parts, pile.boards, 5)
    inside = sum(low <= sum(4 * (5.0 + random.uniform(-0.2, 0.2)) for _ in range(5)) <= high for _ in range(4000))
    assert 0.94 < inside / 4000 < 0.97
