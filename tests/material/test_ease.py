"""The easier of two layouts: nothing askew, then fewer measures, then the larger offcut."""

from dataclasses import replace

import pytest

from publisher.basics import Pose
from publisher.material import Item
from publisher.material import ease as module
from publisher.material.ease import ease, easiest_first, offcut_area
from publisher.material.model import Ease
from publisher.material.packing import Packed
from publisher.material.problem import alone


def test_what_is_counted(shop) -> None:
    """Three squares of 50 on 300 × 200: in a row two measures up and across fewer than scattered; one turned by 10° is askew."""
    board = shop.board((300.0, 200.0), margin=0.0)
    piece = shop.piece((shop.box(50.0, 50.0),), 3)
    problem = alone(piece, board, board.sheets[0])

    def told(*places: tuple[float, float, float]) -> Ease:
        sheets = (tuple(Item("p", k, Pose(*at)) for k, at in enumerate(places, 1)),)
        return ease((piece,), sheets, offcut_area(problem, sheets))

    row = told((0, 0, 0), (51, 0, 0), (102, 0, 0))
    loose = told((0, 0, 0), (51, 7, 0), (110, 30, 0))
    askew = told((0, 0, 0), (51, 0, 0), (150, 0, 10))
    assert (row.askew, row.measures) == (0, 4)
    assert (loose.askew, loose.measures) == (0, 6)
    assert askew.askew == 1
    assert row.order < loose.order < askew.order
    assert row.density < loose.density
    assert row.offcut >= 149.0 * 299.0


@pytest.mark.parametrize(("prefer", "first"), [("ease", "close"), ("density", "corner")])
def test_of_layouts_as_easy_the_offcut_decides_and_is_looked_for_only_then(
    shop, monkeypatch: pytest.MonkeyPatch, prefer: str, first: str
) -> None:
    """Two squares beside each other, in the corner or away from it, and one with more measures and a larger offcut."""
    board = replace(shop.board((300.0, 200.0), margin=0.0), prefer=prefer)
    problem = alone(shop.piece((shop.box(50.0, 50.0),), 2), board, board.sheets[0])

    def laid(name: str, *places: tuple[float, float]) -> Packed:
        return Packed((tuple(Item("p", k, Pose(*at)) for k, at in enumerate(places, 1)),), name, 0)

    away, close = laid("away", (0, 70), (51, 70)), laid("close", (0, 0), (51, 0))
    corner = laid("corner", (0, 0), (1, 51))
    looked: list[object] = []
    monkeypatch.setattr(module, "offcut_area", lambda *asked: looked.append(asked) or offcut_area(*asked))
    order = [packed.engine for packed in easiest_first(problem, (away, corner, close, replace(close, engine="again")))]
    assert order[0] == first and len(order) == 3
    assert len(looked) == (2 if prefer == "ease" else 3)
    assert [*easiest_first(problem, (corner, corner))] == [corner]
