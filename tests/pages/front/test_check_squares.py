"""The squares of the print check: what a rule of there shows is never beyond what the design allows."""

from collections.abc import Callable

import pytest

from publisher.basics import Box
from publisher.pages.front.check_squares import (
    SQUARE_SIDE,
    CheckForm,
    forms_of,
    inch_readings,
    inch_square_words,
    square_box,
)
from publisher.pages.front.scale_range import ScaleRange
from publisher.pages.sheet.draft import Context


@pytest.mark.parametrize(
    ("least", "most", "fraction"),
    [(0.995, 1.005, "1/64"), (0.9, 1.1, "1/32"), (0.9961, 1.005, ""), (0.995, 1.0, ""), (0.99609375, 1.005, "1/64")],
)
def test_the_words_allow_no_more_than_the_design(least: float, most: float, fraction: str) -> None:
    said = inch_square_words(ScaleRange(least, most, None, None))
    assert said == (f"4 in, less than {fraction} in more or less" if fraction else "")


def test_the_square_of_4_in_is_tried_first_where_inches_come_first(make_context: Callable[..., Context]) -> None:
    roomy_and_small = [CheckForm(inch, small) for inch in (True, False) for small in (False, True)]
    assert forms_of(make_context("letter")) == tuple(roomy_and_small)
    assert forms_of(make_context("a4")) == tuple(roomy_and_small[2:])


def test_the_square_of_100_mm_keeps_its_size_inside_the_other() -> None:
    for form, off in ((CheckForm(True), 0.8), (CheckForm(False), 0.0)):
        box = square_box(Box(20.0, 30.0, 200.0, 250.0), form)
        assert (box.left, box.top) == pytest.approx((20.0 + off, 250.0 - off))
        assert (box.width, box.height) == pytest.approx((SQUARE_SIDE, SQUARE_SIDE))


def test_rows_of_the_inch_square_say_what_those_of_100_mm_say() -> None:
    """98 mm of 100 are 3.92 in of 4, 95 mm are 3.80 in: the first marks from there on, of 64 or of 32 to the inch."""
    fine, coarse = ScaleRange(0.995, 1.005, None, None), ScaleRange(0.99, 1.01, None, None)
    assert inch_readings(fine)[1:5] == (
        "3 59/64 to 3 63/64 in",
        "3 13/16 to 3 29/32 in",
        "under 3 13/16 in",
        "4 1/64 in or more",
    )
    assert inch_readings(coarse)[1:5] == (
        "3 15/16 to 3 31/32 in",
        "3 13/16 to 3 29/32 in",
        "under 3 13/16 in",
        "4 1/32 in or more",
    )
