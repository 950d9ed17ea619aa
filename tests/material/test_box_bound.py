"""Bounds on equal rectangles: worked examples, and never below what anyone lays (full searches are in ``test_blocks``)."""

from fractions import Fraction

import pytest

from publisher.material.box_bound import most_boxes, partitions, reach, telling_ratios


def test_partitions_of_a_length() -> None:
    """13 holds 4 + 4 + 4, 5 + 4 + 4, 5 + 5: nothing can be added to any of them."""
    assert partitions(13, 5, 4) == ((0, 3), (1, 2), (2, 0))


def test_telling_ratios_are_where_the_longest_changes() -> None:
    """Three short sides are as long as two long ones at 3 : 2; one long and two short are longer than both there."""
    kind = partitions(13, 5, 4)
    assert telling_ratios((kind,)) == (Fraction(1), Fraction(2))
    assert reach(kind, 3, 2) == 7


@pytest.mark.parametrize(
    ("wide", "high", "most", "by_area"),
    [(75, 85, 54, 58), (60, 200, 28, 31), (210, 63, 25, 28)],
)
def test_equivalent_problems_bound_better_than_area(wide, high, most, by_area) -> None:
    """Sizes for which plain area is too weak (20 × 30 in, gap 1 mm, margin 3 mm)."""
    long, short = max(wide, high) + 1, min(wide, high) + 1
    assert 503 * 757 // (long * short) == by_area
    assert most_boxes(503, 757, long, short) == most


def test_an_exact_tiling_is_not_bounded_away() -> None:
    """54 squares of a ninth by a sixth fill the sheet; a nanometre more each and 40 are left."""
    assert most_boxes(508_000_002, 762_000_003, 84_666_667, 84_666_667) == 54
    assert most_boxes(508_000_001, 762_000_003, 84_666_667, 84_666_667) == 45
    assert most_boxes(508_000_001, 762_000_002, 84_666_667, 84_666_667) == 40
