"""What a release offers follows from the finished packs of a real design."""

import json
from dataclasses import replace
from pathlib import Path

import pytest

from publisher.brief import read_brief
from publisher.design import Blank, MaterialPlan, TextPlan
from publisher.pipeline import build
from publisher.release import Offer, listing_of, proof_record

DESIGNS = Path(__file__).parents[2] / "designs"


@pytest.fixture(scope="module")
def offer() -> Offer:
    return build(read_brief(DESIGNS / "quay", papers=("a4",)), previews=False).offer


def test_the_listing_counts_pages_and_sheets_of_the_pack_itself(offer: Offer) -> None:
    listing = listing_of((offer,))
    (one,) = listing.variants
    assert one.pages == (("A4 paper", len(offer.packs[0][0].pages)),)
    assert [(s.sheet, s.sheets) for s in one.sheets] == [("20 × 30 in", len(offer.needs.yields[0].sheets))]
    assert [(b.board, b.thickness, b.least, b.most) for b in one.boards] == [
        ("foam", 5.0, pytest.approx(4.7), pytest.approx(5.3))
    ]
    assert any(c.startswith("Knife:") for c in listing.cautions)
    assert (one.parts, one.pieces, one.spare) == (3, 7, 0)  # two sides, four ribs, a deck
    (box,) = one.sizes
    assert (box.name, box.width, box.height) == ("box", pytest.approx(480.0), pytest.approx(100.0))


def test_materials_in_the_specs_own_words_and_with_amounts_are_listed(offer: Offer) -> None:
    place = offer.design.materials[0].place
    words = TextPlan(("two rods, ", Blank("length", place), " long"), place)
    more = (MaterialPlan("", words, None, place), MaterialPlan("dowel", None, Blank("box.width", place), place))
    (one,) = listing_of((replace(offer, design=replace(offer.design, materials=more)),)).variants
    assert one.materials == ("two rods, 480 mm (18.90 in) long", "wooden dowel: 480.0 mm (18.90 in)")


def test_a_sheet_that_does_not_take_every_part_is_not_one_way_to_buy(offer: Offer) -> None:
    (need,) = offer.needs.yields
    needs = replace(offer.needs, yields=(replace(need, left_out=("side",)),))
    assert listing_of((replace(offer, needs=needs),)).variants[0].sheets == ()


def test_the_proof_record_holds_the_readings(offer: Offer) -> None:
    (record,) = json.loads(proof_record((offer,)))["files"]
    assert record["readings"] == len(offer.packs[0][1].measured) > 50
    assert record["largest_difference_mm"] < 0.1
    assert record["judged"]
