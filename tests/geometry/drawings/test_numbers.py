"""Lengths, lists and transforms as SVG writes them."""

from math import sqrt

import pytest

from publisher.geometry.drawings.numbers import (
    MM_PER_PX,
    carried,
    inverse,
    keeps_circles,
    numbers,
    points_of,
    px,
    times,
    transform,
)
from publisher.geometry.drawings.tree import Unreadable


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("96", 25.4), ("96px", 25.4), ("1in", 25.4), ("2.54cm", 25.4), ("25.4mm", 25.4), ("101.6Q", 25.4), ("72pt", 25.4),
        ("6pc", 25.4), (" 1e2MM ", 100.0),
    ],
)  # fmt: skip
def test_css_lengths(text: str, mm: float) -> None:
    # CSS Values and Units 3, section 5.2: 1 in = 2.54 cm = 96 px; 1 pt = 1/72 in; 1 pc = 1/6 in; 1 Q = 1/40 cm
    value = px(text)
    assert value is not None and value * MM_PER_PX == pytest.approx(mm)


def test_no_length() -> None:
    assert px("") is None and px("100%") is None and px("auto") is None
    assert px("25%", 80.0) == 20.0 and px("2em", font=10.0) == 20.0 and px("2ex", font=10.0) == 10.0
    for text in ("5 furlongs", "wide", "1e999mm", "9e9"):
        with pytest.raises(Unreadable):
            px(text)


def test_lists() -> None:
    assert numbers("0,0 10-5.5.5") == [0.0, 0.0, 10.0, -5.5, 0.5]
    for text in ("1 2 x", "1e999", "nan", "1,,2"):
        with pytest.raises(Unreadable):
            numbers(text)


@pytest.mark.parametrize(
    ("text", "point"),
    [
        ("", (3.0, 1.0)),
        ("translate(10)", (13.0, 1.0)),
        ("translate(10, 5) scale(2)", (16.0, 7.0)),
        ("scale(2 -1)", (6.0, -1.0)),
        ("rotate(90)", (-1.0, 3.0)),
        ("rotate(180 5 5)", (7.0, 9.0)),
        ("matrix(0 1 -1 0 2 0)", (1.0, 3.0)),
        ("skewX(45)", (4.0, 1.0)),
        ("skewY(45),translate(0,1)", (3.0, 5.0)),
    ],
)
def test_transforms(text: str, point: tuple[float, float]) -> None:
    a, b, c, d, e, f = transform(text)
    assert (a * 3.0 + c * 1.0 + e, b * 3.0 + d * 1.0 + f) == pytest.approx(point)


def test_transforms_multiply_in_order_and_nonsense_is_refused() -> None:
    half = transform("rotate(45)")
    assert times(half, half) == pytest.approx(transform("rotate(90)"))
    assert half[0] == pytest.approx(1.0 / sqrt(2.0))
    for text in ("rotate(", "spin(5)", "scale()", "translate(1) x", "translate(" + "1" * 5000 + ")"):
        with pytest.raises(Unreadable):
            transform(text)


def test_pairs_end_at_the_first_error() -> None:
    # SVG 2, section 10.6: an odd number of values is an error; the pairs before it are drawn
    assert points_of("0,0 10-5.5.5 1") == ([(0.0, 0.0), (10.0, -5.5), (0.5, 1.0)], True)
    assert points_of("0,0 1 1 7") == ([(0.0, 0.0), (1.0, 1.0)], False)
    assert points_of("0,0 1 1 x 7") == ([(0.0, 0.0), (1.0, 1.0)], False)


def test_undoing_a_matrix() -> None:
    there = transform("translate(3 4) rotate(30) scale(2 3)")
    back = inverse(there)
    assert back is not None and carried(back, carried(there, (5.0, -7.0))) == pytest.approx((5.0, -7.0))
    assert inverse(transform("scale(0 1)")) is None
    assert keeps_circles(transform("rotate(30) scale(-2 2)")) and not keeps_circles(there)
