"""What follows from a record is worked out once for it, and for no other that is only equal to it."""

from collections.abc import Callable

import pytest

from publisher.basics import record, remembered, remembered_few, remembered_lately
from publisher.basics.remembered import MOST, MOST_LATELY, MOST_WHOLES


@record
class Block:
    side: int


def test_work_is_done_once_for_a_record_and_again_for_another() -> None:
    done: list[tuple[int, bool]] = []

    @remembered
    def doubled(block: Block, *, up: bool = False) -> list[int]:
        done.append((block.side, up))
        return [2 * block.side]

    one, equal = Block(3), Block(3)
    assert doubled(one) is doubled(one)
    assert doubled(equal) == [6]
    assert doubled(one, up=True) == [6]
    assert done == [(3, False), (3, False), (3, True)]


def test_a_record_that_is_gone_lends_its_place_to_no_other() -> None:
    @remembered
    def side(block: Block) -> int:
        return block.side

    assert all(side(Block(n)) == n for n in range(3 * MOST))


@pytest.mark.parametrize(
    ("keeping", "most"), [(remembered, MOST), (remembered_few, MOST_WHOLES), (remembered_lately, MOST_LATELY)]
)
def test_the_oldest_goes_when_there_are_many(
    keeping: Callable[[Callable[[Block], int]], Callable[[Block], int]], most: int
) -> None:
    done: list[int] = []

    @keeping
    def side(block: Block) -> int:
        done.append(block.side)
        return block.side

    first = Block(-1)
    side(first)
    for n in range(most - 1):
        side(Block(n))
    side(first)
    assert done.count(-1) == 1
    side(Block(most))
    side(first)
    assert done.count(-1) == 2
