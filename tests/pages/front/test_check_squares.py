"""The squares of the print check: what a rule of there shows is never beyond what the design allows."""

from collections.abc import Callable

import pytest

from publisher.basics import Box
from publisher.pages.front.check_squares import SQUARE_SIDE, CheckForm, forms_of, inch_square_words, square_box
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
