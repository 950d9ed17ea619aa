"""What is said of the boards that a design takes."""

from math import inf

import pytest

from publisher.design import ShopBoard
from publisher.joints.budget import board_ends, safe_ends, sold_words, spread_words, takes_words
from publisher.joints.model import BoardRange


@pytest.mark.parametrize(
    ("least", "most", "thickness", "ends", "words"),
    [
        (4.7, 5.3, 5.0, (4.7, 5.3), "from 4.7 to 5.3 mm (0.186 to 0.208 in)"),
        (4.62, 5.36, 5.0, (4.7, 5.3), "from 4.7 to 5.3 mm (0.186 to 0.208 in)"),
        (4.97, 5.03, 5.0, (4.97, 5.03), "from 4.97 to 5.03 mm (0.196 to 0.198 in)"),
        (0.0, 5.38, 5.0, (0.0, 5.3), "up to 5.3 mm (0.208 in)"),
        (4.62, inf, 5.0, (4.7, inf), "of 4.7 mm (0.186 in) or more"),
        (0.0, inf, 5.0, (0.0, inf), ""),
    ],
)
def test_ends_are_rounded_inwards(
    least: float, most: float, thickness: float, ends: tuple[float, float], words: str
) -> None:
    found = BoardRange("foam", "", None, thickness, 0.2, least, most)
    assert safe_ends(found) == pytest.approx(ends)
    assert takes_words(found) == words


@pytest.mark.parametrize(
    ("least", "most", "says"),
    [
        (4.8, 5.3, "Most boards sold as 3/16 in are thinner (usually 4.4 to 5.0 mm): measure."),
        (4.6, 5.3, "Some boards sold as 3/16 in are thinner (usually 4.4 to 5.0 mm): measure."),
        (4.2, 4.6, "Most boards sold as 3/16 in are thicker (usually 4.4 to 5.0 mm): measure."),
        (4.3, 5.1, "Boards sold as 3/16 in are usually 4.4 to 5.0 mm: measure yours."),
    ],
)
def test_what_boards_of_a_name_are_like(least: float, most: float, says: str) -> None:
    assert sold_words(BoardRange("foam", "", ShopBoard("3/16 in", 4.4, 5.0), 4.7, 0.2, least, most)) == says
    assert sold_words(BoardRange("foam", "", None, 4.7, 0.2, least, most)) == ""


def test_inches_come_first_where_they_are_asked_for() -> None:
    found = BoardRange("foam", "", ShopBoard("5 mm", 4.8, 5.2), 5.0, 0.2, 4.7, 5.3)
    assert takes_words(found, "in") == "from 0.186 to 0.208 in (4.7 to 5.3 mm)"
    assert (
        sold_words(found, "in") == "Boards sold as 5 mm are usually 0.189 to 0.204 in (4.8 to 5.2 mm): measure yours."
    )


def test_a_spread_is_said_inwards_too() -> None:
    """5.0625 mm was said as 5.1, past the end of the bar over the gauge."""
    assert board_ends(4.7625, 0.3) == pytest.approx((4.5, 5.0))
    assert spread_words(4.7625, 0.3) == "between 4.5 and 5.0 mm (0.178 and 0.196 in)"
    assert spread_words(5.0, 0.2, "in") == "between 0.189 and 0.204 in (4.8 and 5.2 mm)"
