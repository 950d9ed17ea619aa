"""Tabs, notches and doors let into straight edges."""

import pytest

from publisher.geometry.paths.bumps import Bump, box_bump, let_in
from publisher.geometry.paths.rings import signed_area, straight

SQUARE = straight((((0.0, 0.0), "bottom"), ((40.0, 0.0), "right"), ((40.0, 20.0), "top"), ((0.0, 20.0), "left")))
UP = (0.0, 1.0)


def on_bottom(a: float, b: float, depth: float) -> Bump:
    return box_bump("bottom", "bottom.tab", f"tab {a:g}", ((a, 0.0), (b, 0.0)), UP, depth)


def test_tabs_add_and_notches_take() -> None:
    chain, refused = let_in(SQUARE, (on_bottom(20.0, 30.0, -5.0), on_bottom(5.0, 10.0, 3.0)))
    assert refused == ()
    assert signed_area(chain) == pytest.approx(800.0 + 50.0 - 15.0)
    assert [c.name for c in chain.edges[:9]] == ["bottom", *["bottom.tab"] * 3, "bottom", *["bottom.tab"] * 3, "bottom"]
    assert [on_bottom(5.0, 10.0, d).inwards for d in (3.0, -3.0)] == [True, False]


@pytest.mark.parametrize(
    ("bumps", "why"),
    [
        ((on_bottom(-1.0, 9.0, -5.0),), "runs 1.00 mm over the end of the edge, which is 40.00 mm long"),
        ((on_bottom(35.0, 42.5, -5.0),), "runs 2.50 mm over the end of the edge, which is 40.00 mm long"),
        ((on_bottom(0.0, 9.0, -5.0),), "reaches the end of the edge, which is 40.00 mm long"),
        ((on_bottom(5.0, 15.0, -5.0), on_bottom(12.0, 20.0, -5.0)), "overlaps its neighbour on the edge"),
    ],
)
def test_bumps_that_do_not_stand_whole_on_their_edge(bumps: tuple[Bump, ...], why: str) -> None:
    chain, refused = let_in(SQUARE, bumps)
    assert refused == ((bumps[-1], why),)
    assert signed_area(chain) == pytest.approx(800.0 + 50.0 * (len(bumps) - 1))
