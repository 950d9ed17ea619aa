"""Where a part that is too large may be split."""

from random import Random

import pytest
import shapely
import shapely.affinity

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


def test_every_place_that_is_said_leaves_two_pieces_that_fit(shop) -> None:
    """Combs, whose cuts through two teeth leave three pieces, and walls with steps: against halves cut by shapely."""
    chance = Random(3)
    for _ in range(30):
        long, high = chance.uniform(430.0, 700.0), chance.uniform(40.0, 250.0)
        whole = shapely.box(0, 0, long, high)
        for _ in range(2):
            left, deep = chance.uniform(0.0, long), chance.uniform(0.0, 0.8 * high)
            whole = whole.difference(shapely.box(left, -1.0, left + chance.uniform(5.0, 90.0), deep))
        if chance.random() < 0.5:
            whole = shapely.affinity.rotate(whole, 90.0)
        ring = tuple(whole.exterior.coords[:-1])
        found = split(shop, ring, turning="quarter")
        along = 1 if found is not None and not found.upright else 0
        low = whole.bounds[along]
        for at in (found.at, found.least, found.most) if found else ():
            far = 2000.0
            cut = shapely.box(-far, -far, *((low + at, far) if along == 0 else (far, low + at)))
            for half in (whole.intersection(cut), whole.difference(cut)):
                assert isinstance(half, shapely.Polygon)
                left, bottom, right, top = half.bounds
                sides = (right - left, top - bottom)
                assert min(sides) <= ROOM[0] + 1e-6 and max(sides) <= ROOM[1] + 1e-6


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
