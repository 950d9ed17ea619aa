"""The listing says what a buyer gets and needs, with both units."""

from publisher.design import ShopBoard
from publisher.joints import BoardRange
from publisher.release import Listing, SheetsToBuy, listing_text

FOAM = BoardRange("foam", "3/16 in", ShopBoard("3/16 in", 4.4, 5.0), 4.7625, 0.2, 4.662, 5.062)
LISTING = Listing(
    "Quay", "1.0.0", "Ebbwater Patterns", "CC-BY-NC-4.0", "A length of quay.",
    (("", "A4", 12), ("for wide decks", "Letter", 13)), (FOAM,),
    (SheetsToBuy("", "foam", "20 x 30 in", 1), SheetsToBuy("for wide decks", "foam", "20 x 30 in", 2)),
    ("craft knife",), ("white glue",), ("Knife: cut away from your hand.",),
)  # fmt: skip


def test_pages_boards_sheets_and_cautions_are_listed() -> None:
    text = listing_text(LISTING)
    assert "- A4: 12 pages, to print at 100 %" in text
    assert "- for wide decks, Letter: 13 pages" in text
    assert (
        "- board “foam”, sold as 3/16 in, measured 4.76 mm (0.19 in) thick; takes board from 4.7 to 5.0 mm (0.186 to 0.196 in). "
        "Some boards sold as 3/16 in are thinner (4.4 to 5.0 mm, common practice): measure.\n"
    ) in text
    assert "- at least 1 sheet of 20 x 30 in\n" in text
    assert "- at least 2 sheets of 20 x 30 in (for wide decks)" in text
    assert "- Knife: cut away from your hand." in text
    assert text.endswith("Licence: CC-BY-NC-4.0.\n")
