"""The easier of two layouts: nothing askew, then fewer measures, then the larger offcut."""

from publisher.basics import Pose
from publisher.material import Item
from publisher.material.ease import ease_and_offcut
from publisher.material.problem import alone


def test_what_is_counted(shop) -> None:
    """Three squares of 50 on 300 × 200: in a row two measures up and across fewer than scattered; one turned by 10° is askew."""
    board = shop.board((300.0, 200.0), margin=0.0)
    piece = shop.piece((shop.box(50.0, 50.0),), 3)
    free = alone(piece, board, board.sheets[0]).free()

    def told(*places: tuple[float, float, float]):
        return ease_and_offcut((piece,), (tuple(Item("p", k, Pose(*at)) for k, at in enumerate(places, 1)),), free, 1.0)

    row = told((0, 0, 0), (51, 0, 0), (102, 0, 0))
    loose = told((0, 0, 0), (51, 7, 0), (110, 30, 0))
    askew = told((0, 0, 0), (51, 0, 0), (150, 0, 10))
    assert (row.askew, row.measures) == (0, 4)
    assert (loose.askew, loose.measures) == (0, 6)
    assert askew.askew == 1
    assert row.order < loose.order < askew.order
    assert row.density < loose.density
    assert row.offcut >= 149.0 * 299.0
