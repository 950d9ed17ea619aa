"""Values of all kinds as buyers read them."""

import math

import pytest

from publisher.basics.wording import say_length
from publisher.design import say
from publisher.design.language.wording import pick_hint


def test_other_kinds_are_said_in_their_own_way() -> None:
    assert say(70.0, "length") == "70.0 mm (2.76 in)"
    assert say(20.0, "angle") == "20°"
    assert say(360 / 7, "angle") == "51.43°"
    assert say(14.0, "count") == "14"
    assert say(0.5, "ratio") == "0.50"
    assert say(2.5, "number") == "2.5"
    assert say(1 / 3, "number") == "0.333"
    assert say(1234.0, "area") == "12.3 cm² (1.91 sq in)"
    assert say(48.2, "mass") == "48 g"
    assert say(3.14, "mass") == "3.1 g"
    assert say(math.inf, "count") == "open"


def test_what_is_not_a_number_cannot_be_said() -> None:
    for say_it in (lambda: say(math.nan, "angle"), lambda: say_length(math.nan)):
        with pytest.raises(ValueError, match="not a number"):
            say_it()


def test_a_name_that_is_not_known_gets_the_nearest_or_the_list() -> None:
    assert pick_hint("bord", ["board", "reach"], "sizes") == "did you mean “board”?"
    assert pick_hint("zzz", ["board", "reach"], "sizes") == "known sizes: board, reach"
    assert pick_hint("zzz", [], "sizes") == "the spec has no sizes"
