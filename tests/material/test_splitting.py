"""Where a part that is too large may be split."""

import pytest

from publisher.material import lay_out
from publisher.material.problem import piece_of
from publisher.material.splitting import LAP, propose_split

ROOM = (291.0, 414.0)


def split(shop, *rings, turning="any", room=ROOM):
    """Propose a split of a part on a board without grain."""
    part = shop.part("side", rings, 2, turning=turning)
    return propose_split(part, piece_of(part, shop.board((297.0, 420.0))), room, (0.0, 90.0))


def test_in_the_middle(shop) -> None:
    """A strip of 700 × 100 on 291 × 414 (turned): the cut at 350; anywhere from 286 to 414 both sides are at most 414."""
    found = split(shop, shop.box(700.0, 100.0), turning="quarter")
    assert found is not None
    assert (found.upright, found.at, found.length) == (True, 350.0, 100.0)
    assert (found.least, found.most) == pytest.approx((286.0, 414.0))


def test_off_the_openings(shop) -> None:
    """A window round the middle moves the cut aside, by the lap of the plate."""
    found = split(shop, shop.box(700.0, 100.0), shop.box(60.0, 50.0, 320.0, 20.0), turning="quarter")
    assert found is not None
    assert min(abs(found.at - (320.0 - LAP)), abs(found.at - (380.0 + LAP))) <= 1.0


def test_across_a_tall_part(shop) -> None:
    """The cut lies across the longer side, wherever the part stands in its own coordinates."""
    found = split(shop, shop.box(100.0, 700.0, -50.0, -900.0), turning="quarter")
    assert found is not None
    assert (found.upright, found.at) == (False, 350.0)


def test_one_cut_may_not_do(shop) -> None:
    """1 300 long needs three parts; 600 × 600 needs four."""
    assert split(shop, shop.box(1300.0, 100.0)) is None
    assert split(shop, shop.box(900.0, 900.0)) is None


def test_the_finding_proposes_it(shop) -> None:
    """With the place, the range and the plate, in both units."""
    part = shop.part("side", (shop.box(700.0, 100.0),), 2, turning="quarter")
    (found,) = (f for f in lay_out(shop.design(shop.board((297.0, 420.0))), (part,)).findings if f.severity == "error")
    assert "350.0 mm (13.78 in) from its left end" in found.hint
    assert "a plate of 60.0 mm (2.36 in)" in found.hint
    assert "“split: {at: 350 mm, from: left, plate: 60 mm}”" in found.hint
