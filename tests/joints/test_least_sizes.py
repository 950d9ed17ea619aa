from types import SimpleNamespace

import pytest

from publisher.joints.least_sizes import WHOLE_PART, least


@pytest.mark.parametrize(
    ("thickness", "faces", "size"),
    [(5.0, "bare", 6.0), (3.0, "bare", 6.0), (10.0, "bare", 12.0), (5.0, "paper_both", 4.2), (10.0, "paper_one", 8.4)],
)
def test_sizes_follow_the_board(make: SimpleNamespace, thickness: float, faces: str, size: float) -> None:
    """As stated up to 5 mm, in proportion beyond, and 0.7 of it with paper."""
    assert least(WHOLE_PART, make.board(thickness, faces)) == pytest.approx(size)
