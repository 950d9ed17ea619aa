from typing import Any

import pytest

from publisher.proof.reading.areas import covers
from publisher.proof.reading.reader import read_file
from publisher.proof.reading.texts import normal, says, text_lines, why_hidden


@pytest.mark.parametrize(
    ("line", "wanted", "found"),
    [
        ("cut 14", "cut 14", True),
        ("cut 140", "cut 14", False),
        ("page 1 of 11, cut 14.", "cut 14", True),
        ("cut 14.5 mm", "cut 14", False),
        ("2.50 mm", "50 mm", False),
        ("part A", "A", True),
        ("part Ab", "A", False),
        ("100 % / actual size", "100 %", True),
        ("B1", "B1", True),
        ("B12 B1", "B1", True),
        ("", "A", False),
    ],
)
def test_whole_words_and_whole_numbers(line: str, wanted: str, found: bool) -> None:
    assert says(line, wanted) is found


def test_text_that_a_reader_cannot_tell_apart_is_the_same() -> None:
    assert normal("of\ufb01ce\u00a0 mm\u00ad") == "office mm"


def page_with(kit: Any, **items: Any) -> Any:
    pack = kit.good()
    pack.sheets = pack.sheets[:1]
    pack.sheets[0].items = items
    return read_file(pack.write(), "test.pdf").pages[0]


def hidden(page: Any) -> tuple[str, ...]:
    return why_hidden(page, covers(page))


def test_runs_that_follow_each_other_are_one_line(kit: Any) -> None:
    first = page_with(kit, a=kit.words("cut ", 20, 50)).texts[0]
    page = page_with(kit, a=kit.words("cut ", 20, 50), b=kit.words("14", first.end_x, 50), c=kit.words("x", 20, 80))
    assert [line.text for line in text_lines(page, hidden(page))] == ["cut 14", "x"]


def test_white_words_show_on_a_dark_ground_only(kit: Any) -> None:
    white = kit.words("north", 20, 50, 4, grey=1)
    dark = kit.literal("q 0 g 50 130 100 40 re f Q")
    assert hidden(page_with(kit, a=dark, b=white)) == ("",)
    assert hidden(page_with(kit, b=white)) == ("is as light as what lies behind it",)
    assert hidden(page_with(kit, a=dark, b=kit.words("north", 20, 50))) == ("is as light as what lies behind it",)


def test_a_dark_area_over_dark_words_still_hides_nothing_else(kit: Any) -> None:
    page = page_with(kit, a=kit.words("north", 20, 50), b=kit.literal("q 1 g 300 300 50 50 re f Q"))
    assert hidden(page) == ("",)
