"""What a release offers follows from the finished packs of a real design."""

import json
from dataclasses import replace
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from publisher.brief import read_brief
from publisher.design import Blank, MaterialPlan, TextPlan, own_licence, work_out
from publisher.pages import Covering
from publisher.pipeline import build
from publisher.release import Offer, listing_of, proof_of, proof_schema
from publisher.release.offer import licence_name, licence_text

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


def test_the_proof_says_of_each_page_what_was_looked_at_and_how_far_it_was_off(offer: Offer) -> None:
    document = proof_of((offer,))
    Draft202012Validator(proof_schema()).validate(json.loads(json.dumps(document)))
    (one,) = document["packs"]
    assert one["readings"] == len(offer.packs[0][1].measured) > 50
    assert one["largest_difference_mm"] < 0.006
    assert one["judged"] and one["pictures"] == 0
    assert [page["page"] for page in one["pages"]] == [page.number for page in offer.packs[0][0].pages]
    check = {(look["what"], look["reader"]): look for look in one["pages"][1]["looked_at"]}
    assert check["lengths", "operators"]["things"] > 500
    assert 0.0 <= check["sides of squares", "dots"]["largest_difference_mm"] < 0.01
    (beside,) = document["beside"]
    assert {file["path"].split("/")[0] for file in beside["files"]} == {"cut-files"}
    assert sum(look["things"] for look in beside["looked_at"]) > 50


def test_what_covers_bent_pieces_is_listed_with_the_materials(offer: Offer) -> None:
    covers = (Covering("wall", "A", "paper", "outside", 2, 191.9, 75.0),)
    (one,) = listing_of((replace(offer, covers=covers),)).variants
    assert one.materials[-1] == "plain paper to cover 2 pieces of A, 191.9 × 75.0 mm (7.56 × 2.95 in) each"


def test_the_licence_stands_beside_packs_in_their_language() -> None:
    brief = read_brief(DESIGNS / "toll-house")
    first, german = work_out(brief), work_out(brief, "de")
    licence = own_licence(first.licence, first.designer)
    assert licence is not None
    assert [licence_name(one, first) for one in (first, german)] == ["LICENCE.txt", "LICENCE-de.txt"]
    assert (
        licence_text(licence, first).decode().startswith("Toll house, version 1.0.0\n\nWhat you may do: personal use")
    )
    said = licence_text(licence, german).decode()
    assert said.startswith("Zollhaus, Version 1.0.0\n\nWas erlaubt ist: privater Gebrauch") and " the " not in said
