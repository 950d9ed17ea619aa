"""What a release offers follows from the finished packs of a real design."""

import json
from pathlib import Path

import pytest

from publisher.brief import read_brief
from publisher.pipeline import build
from publisher.release import Offer, listing_of, proof_record

DESIGNS = Path(__file__).parents[2] / "designs"


@pytest.fixture(scope="module")
def offer() -> Offer:
    return build(read_brief(DESIGNS / "quay", papers=("a4",)), previews=False).offer


def test_the_listing_counts_pages_and_sheets_of_the_pack_itself(offer: Offer) -> None:
    listing = listing_of((offer,))
    assert listing.pages == (("", "A4 paper", len(offer.packs[0][0].pages)),)
    assert [(s.sheet, s.sheets) for s in listing.sheets] == [("20 x 30 in", len(offer.needs.yields[0].sheets))]
    assert [(b.board, b.thickness, b.least, b.most) for b in listing.boards] == [
        ("foam", 5.0, pytest.approx(4.7), pytest.approx(5.3))
    ]
    assert any(c.startswith("Knife:") for c in listing.cautions)


def test_the_proof_record_holds_the_readings(offer: Offer) -> None:
    (record,) = json.loads(proof_record((offer,)))["files"]
    assert record["readings"] == len(offer.packs[0][1].measured) > 50
    assert record["largest_difference_mm"] < 0.1
    assert record["judged"]
