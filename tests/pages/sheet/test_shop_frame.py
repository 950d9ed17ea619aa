"""Pages that become pictures: their shapes."""

import pytest

from publisher.pages.sheet import SHOP_LONG, SHOP_SHORT, shop_frame
from tests.pages.conftest import a_context


@pytest.mark.parametrize(
    ("width", "height"), [(SHOP_LONG, SHOP_SHORT), (SHOP_SHORT, SHOP_LONG), (SHOP_LONG, SHOP_LONG)]
)
def test_a_picture_has_white_all_round(width: float, height: float) -> None:
    frame = shop_frame(a_context().paper, width, height)
    assert (frame.width, frame.height) == (width, height)
    assert frame.text.left == frame.text.bottom == width - frame.text.right == height - frame.text.top > 5.0
    assert frame.text.beyond(frame.limit) < 0.0
    assert pytest.approx(4 / 3) == SHOP_LONG / SHOP_SHORT
