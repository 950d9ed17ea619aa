"""Several designs on one shopping list: fewer sheets together where they go, never more."""

from dataclasses import replace

from publisher.material import lay_out
from publisher.material.shopping import ListedDesign, shop_together


def listed(shop, name, *sizes, board=None):
    """Return a design of rectangles and what it needs by itself."""
    board = board or shop.board((300.0, 200.0), gap=0.0, margin=0.0)
    parts = tuple(shop.part(f"p{k}", (shop.box(w, h),), count) for k, (w, h, count) in enumerate(sizes))
    design = shop.design(board)
    return ListedDesign(name, design, parts, lay_out(design, parts))


def test_three_halves_take_two_sheets_together(shop) -> None:
    """A design of half a sheet three times over: three sheets one after another, two together, every copy on one of them."""
    members = tuple(listed(shop, name, (150, 200, 1)) for name in ("mill", "lock", "weir"))
    (shared,) = shop_together(members)
    assert shared.members == (("mill", 1), ("lock", 1), ("weir", 1))
    assert (len(shared.sheets), shared.saved) == (2, 1)
    assert sorted(i.part for sheet in shared.sheets for i in sheet) == ["lock p0", "mill p0", "weir p0"]


def test_other_board_is_bought_apart(shop) -> None:
    """Of two thicknesses nothing is shared; a part that fits no such sheet keeps its design off the list."""
    thick = replace(shop.board((300.0, 200.0), gap=0.0, margin=0.0), thickness=10.0)
    assert shop_together((listed(shop, "mill", (150, 200, 1)), listed(shop, "lock", (150, 200, 1), board=thick))) == ()
    assert shop_together((listed(shop, "mill", (150, 200, 1)), listed(shop, "lock", (301, 201, 1)))) == ()


def test_never_more_than_one_after_another(shop) -> None:
    """Two full sheets stay two."""
    members = tuple(listed(shop, name, (300, 200, 1)) for name in ("mill", "lock"))
    (shared,) = shop_together(members)
    assert (len(shared.sheets), shared.saved) == (2, 0)


def test_the_widest_knife_gap_holds_for_all_on_one_sheet(shop) -> None:
    """Two halves of a sheet go on one with no gap between them, and on none with 3 mm: the gap is the hand's, the board is the same."""
    wide = shop.board((300.0, 200.0), gap=3.0, margin=0.0)
    (close,) = shop_together((listed(shop, "mill", (150, 200, 1)), listed(shop, "lock", (150, 200, 1))))
    (apart,) = shop_together((listed(shop, "mill", (150, 200, 1)), listed(shop, "lock", (150, 200, 1), board=wide)))
    assert (len(close.sheets), len(apart.sheets)) == (1, 2)
    (narrower,) = shop_together((listed(shop, "mill", (148, 200, 1)), listed(shop, "lock", (149, 200, 1), board=wide)))
    assert len(narrower.sheets) == 1
