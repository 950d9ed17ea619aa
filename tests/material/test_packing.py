"""Packing through its public door: exact fits, any pieces, mirrored copies, the same twice."""

from math import ceil

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from publisher.material import Piece, pack
from publisher.material.bottom_left import fill
from publisher.material.container import container
from publisher.material.judge import flaws
from publisher.material.outlines import outline
from publisher.material.packing import items, kinds_of, numbered, usual_turns
from tests.searches.profile import cases

QUARTERS = (0.0, 90.0, 180.0, 270.0)


def test_twelve_rectangles_fill_their_sheet(shop) -> None:
    """12 rectangles 50 × 100 tile 200 × 300 exactly (arithmetic): all must lie on one sheet."""
    sheets = pack((shop.piece((shop.box(50.0, 100.0),), 12, QUARTERS),), (shop.box(200.0, 300.0),), 0.0)
    assert [len(s) for s in sheets] == [12]


def test_exact_fit_with_gaps(shop) -> None:
    """With gaps of 1 mm between them the same 12 need 203 × 302 (four across, three high), not a hair more."""
    piece = shop.piece((shop.box(50.0, 100.0),), 12, (0.0,))
    assert [len(s) for s in pack((piece,), (shop.box(203.0, 302.0),), 1.0)] == [12]
    assert max(len(s) for s in pack((piece,), (shop.box(202.9, 302.0),), 1.0)) < 12


def jigsaw(shop) -> tuple[Piece, ...]:
    """dighe1 (Dighe & Jakiela 1996, ESICUP, CC0): 16 pieces that fill a square without a gap; 10 mm to a unit."""
    return tuple(
        Piece(p["id"], (tuple((10 * x, 10 * y) for x, y in p["polygon"]),), tuple(p["angles"]), p["quantity"])
        for p in shop.instance("dighe1")["pieces"]
    )


def test_an_exact_jigsaw_in_fixed_orders_is_stated(shop) -> None:
    """The few fixed orders do not solve the jigsaw: 10 of its 16 pieces or more on the first square, the rest on a second."""
    sheets = pack(jigsaw(shop), (shop.box(1000.0, 1000.0),), 0.0)
    assert len(sheets) == 2
    assert sum(len(s) for s in sheets) == 16
    assert len(sheets[0]) >= 10


def test_an_exact_jigsaw_in_the_published_order(shop) -> None:
    """Taken from the bottom up in the published solution, all 16 fall into place: no exact fit is lost to rounding."""
    pieces = jigsaw(shop)
    kinds = {pieces[k.piece].id: k for k in kinds_of(pieces, 0.0)}
    corners = {p.id: [min(c) for c in zip(*p.rings[0], strict=True)] for p in pieces}
    placed = shop.instance("dighe1")["solutions"][1]["placements"]
    order = sorted(placed, key=lambda a: (10 * a["y"] + corners[a["piece"]][1], 10 * a["x"] + corners[a["piece"]][0]))
    (sheet,) = fill(container((shop.box(1000.0, 1000.0),)), [kinds[a["piece"]] for a in order], 1, False, empty={})
    (items_,) = numbered(pieces, items(pieces, [sheet]))
    assert flaws(pieces, (shop.box(1000.0, 1000.0),), 0.0, (items_,), complete=True) == ()


def test_a_piece_that_fits_nowhere_is_left_out(shop) -> None:
    """It opens no sheets for ever; the others are laid."""
    pieces = (
        shop.piece((shop.box(400.0, 10.0),), 3, name="long"),
        shop.piece((shop.box(40.0, 10.0),), 3, name="short"),
    )
    sheets = pack(pieces, (shop.box(100.0, 50.0),), 1.0)
    assert [{i.part for i in s} for s in sheets] == [{"short"}]


def test_bins_limit_the_sheets(shop) -> None:
    """As many as two sheets take, and no more."""
    sheets = pack((shop.piece((shop.box(50.0, 50.0),), 20, (0.0,)),), (shop.box(100.0, 100.0),), 0.0, bins=2)
    assert [len(s) for s in sheets] == [4, 4]


def test_nothing_to_pack(shop) -> None:
    """No pieces, no sheets."""
    assert pack((), (shop.box(100.0, 100.0),), 1.0) == ()
    assert pack((shop.piece((shop.box(5.0, 5.0),), 0),), (shop.box(100.0, 100.0),), 1.0) == ()


def test_mirrored_copies_are_mirrored(shop) -> None:
    """Three of five copies are mirror images, numbered last; the pose mirrors first."""
    rings = shop.layer(30.0, 92.0, 40.0)
    (laid,) = pack((shop.piece(rings, 5, QUARTERS, mirrored=3),), (shop.box(500.0, 400.0),), 1.0)
    assert sorted((i.copy, i.pose.mirrored) for i in laid) == [(1, False), (2, False), (3, True), (4, True), (5, True)]


def test_small_pieces_use_the_holes_of_large_ones(shop) -> None:
    """A disc of 25 lies in a ring of 50/35: both on a sheet that holds nothing but the ring."""
    pieces = (
        shop.piece(shop.disc(50.0, 35.0), 1, (0.0,), name="ring"),
        shop.piece(shop.disc(25.0), 1, (0.0,), name="disc"),
    )
    sheets = pack(pieces, (shop.box(100.0, 100.0),), 1.0)
    assert [sorted(i.part for i in s) for s in sheets] == [["disc", "ring"]]


def test_the_same_twice(shop) -> None:
    """Equal input, equal layout."""
    pieces = (
        shop.piece(shop.layer(30.0, 92.0, 40.0), 9, name="a"),
        shop.piece(shop.disc(40.0, 20.0), 3, name="b"),
        shop.piece((shop.box(60.0, 200.0),), 2, (0.0, 90.0), name="c"),
    )
    first = pack(pieces, (shop.box(291.0, 414.0),), 1.0)
    assert first == pack(pieces, (shop.box(291.0, 414.0),), 1.0)
    assert sum(len(s) for s in first) == 14


def test_usual_turns_stand_the_least_rectangle_upright(shop) -> None:
    """A bar drawn at 30° is tried flat."""
    bar = shapely.affinity.rotate(shapely.box(0, 0, 100, 10), 30.0)
    turns = usual_turns(shop.rings(bar)[0])
    upright = [shapely.affinity.rotate(bar, t).bounds for t in turns]
    assert min(b[3] - b[1] for b in upright) == pytest.approx(10.0, abs=1e-6)
    assert set(QUARTERS) <= set(turns)


@st.composite
def lists(draw: st.DrawFn) -> tuple[tuple[Piece, ...], float]:
    """Rectangles and triangles, some mirrored, some that may not be turned, with a gap."""
    pieces = []
    for i in range(draw(st.integers(1, 4))):
        size = st.floats(8.0, 60.0)
        wide, high, tip = draw(size), draw(size), draw(st.floats(-20.0, 60.0))
        ring = (
            ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high))
            if draw(st.booleans())
            else ((0.0, 0.0), (wide, 0.0), (tip, high))
        )
        count = draw(st.integers(1, 6))
        angles = draw(st.sampled_from([(), (0.0,), (0.0, 180.0), QUARTERS, (33.0, 77.7)]))
        pieces.append(Piece(f"p{i}", (ring,), angles, count, draw(st.integers(0, count))))
    return tuple(pieces), draw(st.sampled_from([0.0, 0.5, 1.0, 3.0]))


@pytest.mark.search
@cases(15, 600)
@given(lists())
def test_all_layouts_hold(todo: tuple[tuple[Piece, ...], float]) -> None:
    """Whatever the list, the judge finds nothing, all copies are laid, and no fewer sheets than the area needs."""
    pieces, gap = todo
    sheet = (((0.0, 0.0), (130.0, 0.0), (130.0, 110.0), (0.0, 110.0)),)
    sheets = pack(pieces, sheet, gap)
    assert flaws(pieces, sheet, gap, sheets, complete=True) == ()
    area = sum(shapely.Polygon(p.rings[0]).area * p.count for p in pieces)
    assert len(sheets) >= ceil(area / (130.0 * 110.0) - 1e-9)


def test_an_outline_is_prepared_once_for_equal_rings_and_gap() -> None:
    ring = ((0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0))
    assert outline((ring,), 1.0) is outline((ring[:],), 1.0)
    assert outline((ring,), 1.0) is not outline((ring,), 2.0)
