"""Blocks are shared out over the fewest pages, evenly, none lost."""

from hypothesis import given
from hypothesis import strategies as st

from publisher.pages.sheet.filling import share_out


def test_eleven_steps_are_not_ten_and_one() -> None:
    shared = share_out([20.0] * 11, 100.0, 100.0)
    assert [end - start for start, end in shared] == [3, 4, 4]


def test_what_does_not_fit_under_the_tables_opens_a_page() -> None:
    assert share_out([50.0, 30.0], 20.0, 100.0) == ((0, 0), (0, 2))


def test_a_block_taller_than_a_page_stands_alone() -> None:
    assert share_out([10.0, 300.0, 10.0], 100.0, 100.0) == ((0, 1), (1, 2), (2, 3))


def test_nothing_needs_no_page() -> None:
    assert share_out([], 100.0, 100.0) == ()


@given(st.lists(st.floats(1.0, 100.0), max_size=30), st.floats(0.0, 100.0))
def test_every_block_once_in_order_and_no_more_pages_than_a_greedy_filling(heights: list[float], first: float) -> None:
    shared = share_out(heights, first, 100.0)
    assert [b for start, end in shared for b in range(start, end)] == list(range(len(heights)))
    for page, (start, end) in enumerate(shared):
        assert sum(heights[start:end]) <= (first if page == 0 else 100.0) + 1e-6
    pages, left = 1, first
    for height in heights:
        if height > left + 1e-9:
            pages, left = pages + 1, 100.0
        left -= height
    assert len(shared) <= pages
