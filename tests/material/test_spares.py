"""Spare copies that go on a list's sheets free: found, judged, stored."""

from dataclasses import replace
from pathlib import Path

import pytest

from publisher.basics import Pose
from publisher.brief import read_brief
from publisher.material import Layout, lay_out, layouts_document, spares, yields
from publisher.material.problem import Problem
from publisher.material.spares import find_spares, spare_flaw, spare_key
from publisher.pipeline import work

ROOT = Path(__file__).parents[2]


@pytest.fixture
def laid(shop):
    """Two boxes of 50 × 100 on 203 × 100 (four would fill it), without gap or margin."""
    board = shop.board((200.0, 100.0), gap=0.0, margin=0.0)
    parts = (shop.part("tile", (shop.box(50.0, 100.0),), 2), shop.part("bit", (shop.box(50.0, 40.0),), 1))
    return shop.design(board), parts, lay_out(shop.design(board), parts).yields[0]


def test_spares_by_arithmetic(laid) -> None:
    """Beside two tiles and a bit: one more tile, or of the bits as many as the area left takes at most."""
    *_, one = laid
    copies = {s.part: s.copies for s in one.spares}
    assert copies["tile"] == 1
    assert 2 <= copies["bit"] <= 4
    assert one.pieces == 3


def test_a_copy_that_fits_by_a_hair_is_found(monkeypatch) -> None:
    """A side wall goes on the toll house's small sheet with just the knife's gap on both sides: a buyer found it, the table said none."""
    monkeypatch.setattr(yields, "recall_spare", lambda *_: None)
    needs = work(read_brief(ROOT / "designs" / "toll-house")).needs
    assert needs is not None
    small = next(one for one in needs.yields if one.sheet.label == "297 x 420 mm")
    assert {spare.part: spare.copies for spare in small.spares} == {"gable": 0, "side": 1, "roof": 0}


def test_the_search_ends(shop) -> None:
    """Of small parts only so many are looked for, and it is said."""
    part = shop.part("tag", (shop.box(10.0, 10.0),), 1)
    (one,) = lay_out(shop.design(shop.board((297.0, 420.0))), (part,)).yields
    assert (one.spares[0].copies, one.spares[0].capped) == (spares.MOST_SPARES, True)


def test_spares_lie_in_holes_too(shop) -> None:
    """On a sheet that holds a ring and nothing else, a second disc finds the second ring's hole."""
    parts = (shop.part("ring", shop.disc(50.0, 35.0), 2), shop.part("disc", shop.disc(30.0), 1))
    (one,) = lay_out(shop.design(shop.board((207.0, 106.0))), parts).yields
    assert {s.part: s.copies for s in one.spares} == {"ring": 0, "disc": 1}


def test_stored_spares_are_judged(shop, laid) -> None:
    """As they are they hold; moved onto others, of another part, or on another number of sheets they do not."""
    design, parts, one = laid
    spare = one.spares[0]
    pieces = tuple(shop.piece(tuple(r.points for r in (p.outline.outer,)), p.count, (), name=p.id) for p in parts)
    problem = Problem(pieces, design.boards[0], one.sheet, (0.0, 90.0), False)
    assert spare_flaw(problem, one.sheets, spare) == ""
    (item,) = spare.sheets[0]
    heaped = replace(spare, sheets=((replace(item, pose=one.sheets[0].items[0].pose),),))
    assert "closer than the gap" in spare_flaw(problem, one.sheets, heaped)
    assert spare_flaw(problem, one.sheets, replace(spare, part="bit"))
    assert spare_flaw(problem, one.sheets, replace(spare, sheets=()))
    assert spare_flaw(problem, one.sheets, replace(spare, sheets=((replace(item, pose=Pose(900.0)),),)))


def test_another_layout_has_other_spares(laid) -> None:
    """The name of stored spares depends on every pose of the list."""
    design, _, one = laid
    problem = Problem((), design.boards[0], one.sheet, (0.0,), False)
    sheet: Layout = one.sheets[0]
    moved = replace(sheet, items=(replace(sheet.items[0], pose=Pose(1.0)), *sheet.items[1:]))
    assert spare_key(problem, (sheet,), "tile") == spare_key(problem, (sheet,), "tile")
    assert spare_key(problem, (sheet,), "tile") != spare_key(problem, (moved,), "tile")
    assert spare_key(problem, (sheet,), "tile") != spare_key(problem, (sheet,), "bit")


def test_nothing_is_packed_when_all_is_stored(shop, laid, monkeypatch) -> None:
    """With a store the spares come from it."""
    design, parts, one = laid
    store = layouts_document((lay_out(design, parts),))
    monkeypatch.setattr(spares, "fill", None)
    assert lay_out(shop.with_store(design, store), parts).yields[0].spares == one.spares


def test_long_lists_are_passed_over(shop) -> None:
    """For hundreds of copies nobody needs to know."""
    board = shop.board((508.0, 762.0))
    problem = Problem((shop.piece((shop.box(5.0, 5.0),), 1),), board, board.sheets[0], (0.0,), False)
    many = Layout("", "foam", board.sheets[0], (object(),) * 301, "rows", 0)  # type: ignore[arg-type]
    assert find_spares(problem, (many,), "p") is None
