"""Bottom-left placement: lowest spot, first sheet that has room, fixed orders."""

from publisher.material.bottom_left import CopyKind, fill, orders
from publisher.material.container import container
from publisher.material.outlines import NESTING_GRID, outline


def kind(shop, width, height, count, number=0):
    """A rectangle that may not be turned."""
    return CopyKind(number, outline((shop.box(width, height),), 0.0), False, (0.0,), count)


def test_first_pieces_go_to_the_corner(shop) -> None:
    """Filling from below lays a row first; from the left, a column."""
    free = container((shop.box(100.0, 100.0),))
    for across, second in ((False, (30.0, 0.0)), (True, (0.0, 20.0))):
        (sheet,) = fill(free, [kind(shop, 30.0, 20.0, 2)] * 2, None, across, empty={})
        places = [(round(s.x / NESTING_GRID, 1), round(s.y / NESTING_GRID, 1)) for s in sheet.spots()]
        assert places == [(0.0, 0.0), second]


def test_first_sheet_with_room(shop) -> None:
    """A small piece that comes late goes back to the first sheet."""
    free = container((shop.box(100.0, 100.0),))
    large, small = kind(shop, 90.0, 90.0, 2), kind(shop, 10.0, 10.0, 1, 1)
    sheets = fill(free, [large, large, small], None, False, empty={})
    assert [[s.kind.piece for s in sheet.spots()] for sheet in sheets] == [[0, 1], [0]]


def test_a_sheet_already_begun_goes_on(shop) -> None:
    """What lies there stays, and the rest comes beside it."""
    free = container((shop.box(60.0, 20.0),))
    (begun,) = fill(free, [kind(shop, 30.0, 20.0, 1)], 1, False, empty={})
    (sheet,) = fill(free, [kind(shop, 30.0, 20.0, 1)], 1, False, [begun], empty={})
    assert sorted(round(s.x / NESTING_GRID) for s in sheet.spots()) == [0, 30]


def test_what_is_known_of_an_empty_sheet_changes_no_layout(shop) -> None:
    """Laid again from the left, and anew, with all that was found out from below: as with nothing known."""
    free = container((shop.box(100.0, 70.0), shop.box(30.0, 20.0)))
    queue = [kind(shop, 40.0, 20.0, 3), kind(shop, 25.0, 30.0, 2, 1)] * 2
    known: dict = {}

    def places(across: bool, empty: dict) -> list[tuple[int, int, int]]:
        return [
            (s.kind.piece, s.x, s.y) for sheet in fill(free, queue, None, across, empty=empty) for s in sheet.spots()
        ]

    fresh = [places(across, {}) for across in (False, True, False)]
    assert [places(across, known) for across in (False, True, False)] == fresh and len(known) == 2


def test_orders_are_few_fixed_and_complete(shop) -> None:
    """Each order holds all copies; the largest comes first in the first; equal orders count once."""
    kinds = [kind(shop, 10.0, 10.0, 3, 0), kind(shop, 80.0, 5.0, 2, 1), kind(shop, 30.0, 30.0, 1, 2)]
    queues = orders(kinds, 9)
    assert all(sorted(k.piece for k in queue) == [0, 0, 0, 1, 1, 2] for queue in queues)
    assert [k.piece for k in queues[0]] == [2, 1, 1, 0, 0, 0]
    assert [k.piece for k in queues[1]] == [1, 1, 2, 0, 0, 0]
    assert len({tuple(k.piece for k in queue) for queue in queues}) == len(queues)
    assert len(orders(kinds, 2)) == 2
