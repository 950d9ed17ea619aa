"""What is said of a laid-out sheet: measures as read on a rule, cuts, which sheet it is."""

from publisher.basics import Box, CutPromise, LayoutPromise, MeasurePromise, PlacePromise
from publisher.pages.front.layout_words import SheetWords, sheet_name

STANDING = LayoutPromise("k", "bare_foam", "20 x 30 in", 508.0, 762.0, 2, 1, 3, (), (), None, 0.5, 32)
PLACE = PlacePromise("rib", "C", 1, (), measures=(MeasurePromise((2.9, 115.3), (0.0, 0.0)),), order=7)
ASKEW = PlacePromise(
    "rib", "C", 1, (), measures=(MeasurePromise((0.0, 25.4), (0.0, 0.0)), MeasurePromise((50.8, 10.0), (1.0, 0.0)))
)


def test_a_sheet_that_stands_is_measured_as_it_is_shown() -> None:
    """What lies over its lower edge is then to the right."""
    words = SheetWords(STANDING, "mm")
    assert (words.name(PLACE), words.measures(PLACE)) == ("7 C", (("→115.5", "↓3"),))
    lying = SheetWords(LayoutPromise("k", "foam", "A3", 420.0, 297.0, 1, 1, 1, ()), "mm")
    assert lying.measures(PLACE) == (("→2.9", "↑115.3"),)


def test_inches_are_those_of_a_rule() -> None:
    assert SheetWords(STANDING, "in").measures(ASKEW) == (("● →1", "↓0"), ("○ →13/32", "↓2"))


def test_cuts_say_which_way_they_run_on_the_page() -> None:
    words = SheetWords(STANDING, "mm")
    assert words.cut(CutPromise(True, 355.9879, 0.0, 508.0, 4)) == "upright at 356"
    assert words.cut(CutPromise(False, 98.0, 276.0, 355.9879, 1)) == "across at 98, from 276 to 356"


def test_the_caption_says_which_sheet_in_both_units_and_from_where() -> None:
    assert SheetWords(STANDING, "mm").caption() == (
        "bare foam, 20 x 30 in (508 × 762 mm): sheet 2 of 3. Measured in mm from the left and the top edge."
    )
    many = LayoutPromise("k", "foam", "A3", 420.0, 297.0, 1, 2, 3, ())
    assert SheetWords(many, "in").caption() == (
        "foam, A3 (16.5 × 11.7 in): 2 sheets of 3 are laid out like this. Measured in inches from the left and the bottom edge."
    )


def test_what_is_left_is_never_said_to_be_more() -> None:
    assert SheetWords(STANDING, "mm").offcut(Box(3.0, 386.0, 504.9, 759.0)) == (
        "keep",
        "373 × 501 mm",
        "14.6 × 19.7 in",
    )


def test_a_sheet_in_the_words_of_the_shop_and_the_other_unit() -> None:
    """Inches with mm, mm with inches."""
    assert sheet_name("20 x 30 in", 508.0, 762.0) == "20 x 30 in (508 × 762 mm)"
    assert sheet_name("297 x 420 mm", 297.0, 420.0) == "297 x 420 mm (11.7 × 16.5 in)"
