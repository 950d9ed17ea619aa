"""The listing says what a buyer gets and needs, with both units: each variant apart, and nothing that is empty."""

import re
from dataclasses import replace

import pytest

from publisher.design import ShopBoard
from publisher.joints import BoardRange
from publisher.release import FinishedSize, Listing, SheetsToBuy, Variant, listing_text
from publisher.release.listing import sheet_words

FOAM = BoardRange("foam", "3/16 in", ShopBoard("3/16 in", 4.4, 5.0), 4.7625, 0.2, 4.662, 5.062)
ONE = Variant(
    "", (("A4", 12), ("Letter", 1)), (FinishedSize("box", 480.0, 80.0, 100.0),), 3, 10, 1, (FOAM,),
    (SheetsToBuy("foam", "20 × 30 in", 1), SheetsToBuy("foam", "A3 (297 × 420 mm)", 2)), ("white glue", "six wooden dowels"),
)  # fmt: skip
WIDE = replace(
    ONE,
    title="for wide decks",
    pages=(("Letter", 13),),
    sizes=(FinishedSize("box", 480.0, 120.0, 100.0),),
    sheets=(SheetsToBuy("foam", "20 × 30 in", 2),),
    materials=("white glue", "eight wooden dowels"),
)
LISTING = Listing(
    "Quay", "1.0.0", "Ebbwater Patterns", "CC-BY-NC-4.0", "A length of quay.", (ONE,), ("craft knife",),
    ("Knife: cut away from your hand.",),
)  # fmt: skip
BOARD = (
    "- board “foam”, sold as 3/16 in, measured 4.76 mm (0.187 in) thick: at least 1 sheet of 20 × 30 in or 2 sheets of A3 (297 × 420 mm); "
    "takes board from 4.7 to 5.0 mm (0.186 to 0.196 in). Some boards sold as 3/16 in are thinner (usually 4.4 to 5.0 mm): "
    "measure."
)


def test_one_variant_is_listed_without_headings_of_its_own() -> None:
    text = listing_text(LISTING)
    assert "- A4: 12 pages, to print at 100 %\n- Letter: 1 page, to print at 100 %\n" in text
    assert "- box: 480.0 mm (18.90 in) wide, 80.0 mm (3.15 in) deep, 100.0 mm (3.94 in) high\n" in text
    assert "- 10 pieces of board, 1 of them spare: 3 different parts\n" in text
    assert f"{BOARD}\n- craft knife\n- white glue\n- six wooden dowels\n" in text
    assert "- Knife: cut away from your hand." in text
    assert "###" not in text
    assert text.endswith("\nVersion 1.0.0, by Ebbwater Patterns. Licence: CC-BY-NC-4.0.\n")


def test_sheets_of_several_sizes_are_one_or_the_other() -> None:
    """As bullets of their own they read as if both had to be bought."""
    (line,) = (row for row in listing_text(LISTING).splitlines() if "sheet" in row)
    assert "1 sheet of 20 × 30 in or 2 sheets of A3" in line


def test_what_variants_need_stands_under_the_name_of_each_and_the_rest_once() -> None:
    text = listing_text(replace(LISTING, variants=(ONE, WIDE)))
    assert "- for wide decks, Letter: 13 pages" in text
    needs = text[text.index("## What you need") : text.index("## Cautions")]
    heads = re.findall(r"^### (.*)$", needs, re.M)
    assert heads == ["As designed", "for wide decks", "For all of them"]
    standard, wide, shared = re.split(r"^### .*$", needs, flags=re.M)[1:]
    assert BOARD in standard and "six wooden dowels" in standard and "eight" not in standard
    assert "at least 2 sheets of 20 × 30 in;" in wide and "eight wooden dowels" in wide
    assert shared.split("\n- ")[1:] == ["craft knife", "white glue\n\n"]


@pytest.mark.parametrize(
    ("designer", "licence", "last"),
    [
        ("", "", "Version 1.0.0."),
        ("Ebbwater Patterns", "", "Version 1.0.0, by Ebbwater Patterns."),
        ("", "MIT", "Version 1.0.0. Licence: MIT."),
    ],
)
def test_what_is_unsaid_leaves_nothing_empty(designer: str, licence: str, last: str) -> None:
    bare = replace(ONE, sizes=(), boards=(), sheets=(), materials=(), spare=0)
    empty = replace(LISTING, designer=designer, licence=licence, summary=" ", variants=(bare,), tools=(), cautions=())
    text = listing_text(empty)
    assert text.endswith(f"\n\n{last}\n")
    assert "\n\n\n" not in text and "- \n" not in text and "by ." not in text and "Cautions" not in text


@pytest.mark.parametrize(
    ("label", "sides", "says"),
    [
        ("20 x 30 in", (508.0, 762.0), "20 × 30 in"),
        ("297 x 420 mm", (297.0, 420.0), "A3 (297 × 420 mm)"),
        ("420X297 mm", (420.0, 297.0), "A3 (420 × 297 mm)"),
        ("500 × 700 mm", (500.0, 700.0), "500 × 700 mm"),
        ("0.5 m by 0.7 m", (500.0, 700.0), "0.5 m by 0.7 m"),
    ],
)
def test_sheets_are_named_as_shops_write_them(label: str, sides: tuple[float, float], says: str) -> None:
    assert sheet_words(label, *sides, (("A4", 210.0, 297.0), ("A3", 297.0, 420.0))) == says
