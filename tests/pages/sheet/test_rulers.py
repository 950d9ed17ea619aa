"""Graduations: every tick where it should be, numbered, promised."""

import pytest

from publisher.pages.model import Stroke, Words
from publisher.pages.sheet.rulers import MILLIMETRES, SIXTEENTHS, base_line, graduation
from publisher.pages.type.text import Setter


def test_millimetres_across(setter: Setter) -> None:
    body = graduation(setter, 2, (20.0, 30.0), 180.0, MILLIMETRES, False, 1)
    assert len(body.lengths) == 181
    for number, tick in enumerate(body.lengths):
        assert tick.start == pytest.approx((20.0 + number, 30.0))
        assert tick.end[1] - 30.0 == pytest.approx(tick.length)
        assert tick.length == (3.2 if number % 10 == 0 else 2.4 if number % 5 == 0 else 1.6)
        assert tick.label == (str(number) if number % 10 == 0 else "")
    numbers = [t.text for t in body.drawn if isinstance(t, Words)]
    assert numbers == [str(n) for n in range(0, 181, 10)]


def test_inches_up_the_other_side(setter: Setter) -> None:
    # the inch of 1959 is 25.4 mm: 240 mm hold 9.4488 in, so 151 sixteenths and zero
    body = graduation(setter, 2, (20.0, 30.0), 240.0, SIXTEENTHS, True, -1)
    assert len(body.lengths) == 152
    whole = [t for t in body.lengths if t.label]
    assert [t.label for t in whole] == [str(n) for n in range(10)]
    for tick in whole:
        assert tick.start == pytest.approx((20.0, 30.0 + 25.4 * int(tick.label)))
        assert tick.end[0] < 20.0


def test_inside_a_square_the_ends_are_left_out(setter: Setter) -> None:
    body = graduation(setter, 1, (0.0, 0.0), 50.0, MILLIMETRES, False, 1, ends=False)
    assert len(body.lengths) == 49
    assert [t.label for t in body.lengths if t.label] == ["10", "20", "30", "40"]


def test_the_drawing_is_what_is_promised(setter: Setter) -> None:
    body = graduation(setter, 1, (5.0, 6.0), 30.0, MILLIMETRES, True, 1) + base_line(1, (5.0, 6.0), 30.0, True, "30")
    drawn = {path.points for thing in body.drawn if isinstance(thing, Stroke) for path in thing.paths}
    assert {(p.start, p.end) for p in body.lengths} == drawn
    assert body.lengths[-1].purpose == "ruler"
    assert body.lengths[-1].length == 30.0
