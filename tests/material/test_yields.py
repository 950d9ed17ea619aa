"""The yield of one board and sheet size, and who is told of each layout."""

import pytest

from publisher.material import Stored, lay_out, store_document
from publisher.material.store import parse


@pytest.fixture
def order(shop):
    """A design with two sizes of sheet, and its parts."""
    return shop.design(shop.board((297.0, 420.0), (200.0, 160.0))), (
        shop.part("rib", (shop.box(90.0, 70.0),), 6),
        shop.part("disc", shop.disc(30.0), 2),
    )


def test_cutting_length_of_each_sheet(order) -> None:
    """The lengths of the sheets add up to that of the list; there is one for each sheet."""
    for one in lay_out(*order).yields:
        assert len(one.cut_lengths) == len(one.sheets) == len(one.offcuts)
        assert sum(one.cut_lengths) == pytest.approx(one.cut_length)
        assert one.pieces == 8


def test_each_verified_layout_is_told_at_once(shop, order) -> None:
    """A run that is stopped half way has told what it verified; a store of that is used by the next run."""
    design, parts = order
    told: dict[str, Stored] = {}

    def stop(key: str, stored: Stored) -> None:
        if len(told) == 4:
            raise KeyboardInterrupt
        told[key] = stored

    with pytest.raises(KeyboardInterrupt):
        lay_out(design, parts, settled=stop)
    document = store_document(tuple(told.items()))
    assert len(parse(document, "layouts.json").entries) == 4
    whole = lay_out(design, parts)
    after = lay_out(shop.with_store(design, document), parts)
    assert sum(y.fresh for y in after.yields) < sum(y.fresh for y in whole.yields)
    assert [len(y.sheets) for y in after.yields] == [len(y.sheets) for y in whole.yields]
