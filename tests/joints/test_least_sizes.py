from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.joints.least_sizes import LONG_BAR, SHORT_BAR, TAB, WHOLE_PART, least


@pytest.mark.parametrize(
    ("thickness", "faces", "size"),
    [(5.0, "bare", 6.0), (3.0, "bare", 6.0), (10.0, "bare", 12.0), (5.0, "paper_both", 4.2), (10.0, "paper_one", 8.4)],
)
def test_sizes_follow_the_board(make: SimpleNamespace, thickness: float, faces: str, size: float) -> None:
    """As stated up to 5 mm, in proportion beyond, and 0.7 of it with paper."""
    assert least(WHOLE_PART, make.board(thickness, faces)) == pytest.approx(size)


def test_card_has_sizes_of_its_own_and_paper_none(make: SimpleNamespace) -> None:
    card, paper = (replace(make.board(1.0), material=what) for what in ("card", "paper"))
    assert [least(size, card) for size in (WHOLE_PART, SHORT_BAR, LONG_BAR, TAB)] == [3.0, 2.0, 2.0, 0.0]
    assert [least(size, paper) for size in (WHOLE_PART, SHORT_BAR, LONG_BAR, TAB)] == [0.0, 0.0, 0.0, 0.0]
