"""Names under which boards are sold are no measures: the name and what is known of it."""

from collections.abc import Callable
from typing import Any

import pytest

from publisher.design.offer.sold_as import sold_as


@pytest.mark.parametrize(
    ("names", "thickness", "said", "known"),
    [
        (("5 mm",), 4.6, "5 mm", "5 mm"),
        (("5 mm", "3/16 in"), 4.6, "3/16 in", "3/16 in"),  # 4.7 is nearer to it than 5.0
        (("5 mm", "3/16 in"), 4.95, "5 mm", "5 mm"),
        (("white foam board 3/16 inch",), 4.7, "white foam board 3/16 inch", "3/16 in"),
        (('3/16"',), 4.7, '3/16"', "3/16 in"),
        (("15 mm",), 15.0, "15 mm", None),
        (("0.5 mm",), 0.5, "0.5 mm", None),
        (("card 300 g",), 0.4, "card 300 g", None),
        ((), 5.0, "", "5 mm"),
        ((), 4.7625, "", "3/16 in"),
        ((), 4.7, "", None),
    ],
)
def test_names(names: tuple[str, ...], thickness: float, said: str, known: str | None) -> None:
    name, shop = sold_as(names, thickness)
    assert name == said
    assert (shop and shop.name) == known


def test_the_name_and_the_measured_thickness_are_two_fields(tried: Callable[..., Any]) -> None:
    text = "boards: {foam: {thickness: 4.6 mm, sold_as: [5 mm, 3/16 in], sheets: [20 x 30 in]}}"
    (board,) = tried(text).design.boards
    assert (board.thickness, board.sold_as) == (4.6, "3/16 in")
    assert (board.shop.least, board.shop.most) == (4.4, 5.0)
