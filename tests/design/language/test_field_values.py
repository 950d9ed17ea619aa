"""What fields make of amounts: a length or an angle has a unit, 0 excepted; a ratio never becomes one."""

import pytest

from publisher.design.language.amounts import Amount, Origin
from publisher.design.language.field_values import settle
from publisher.design.language.lexer import Fault

LENGTH = Amount(7.5, mm=1)
ANGLE = Amount(7.5, deg=1)
PLAIN = Amount(7.5)
NOTHING = Amount(0.0)
RATIO = Amount(8.0, origin=Origin.RATIO)
ROUNDED = Amount(8.0, origin=Origin.ROUNDED)


@pytest.mark.parametrize(
    ("amount", "kind", "value"),
    [
        (LENGTH, "length", 7.5),
        (NOTHING, "length", 0.0),
        (ANGLE, "angle", 7.5),
        (NOTHING, "angle", 0.0),
        (PLAIN, "number", 7.5),
        (RATIO, "number", 8.0),
        (RATIO, "count", 8.0),
        (ROUNDED, "count", 8.0),
        (Amount(14.0000000009), "count", 14.0),
        (LENGTH, "quantity", 7.5),
    ],
)
def test_what_fits(amount: Amount, kind: str, value: float) -> None:
    assert settle(amount, kind, "x") == value


@pytest.mark.parametrize(
    ("amount", "kind", "rule"),
    [
        (ANGLE, "length", "design/wrong-kind"),
        (LENGTH, "angle", "design/wrong-kind"),
        (LENGTH, "count", "design/wrong-kind"),
        (ANGLE, "number", "design/wrong-kind"),
        (Amount(1.0, mm=2), "length", "design/wrong-kind"),
        (PLAIN, "length", "design/no-unit"),
        (PLAIN, "angle", "design/no-unit"),
        (Amount(1e-12), "length", "design/no-unit"),
        (Amount(0.0, origin=Origin.RATIO), "length", "design/ratio-as-size"),
        (RATIO, "length", "design/ratio-as-size"),
        (ROUNDED, "length", "design/ratio-as-size"),
        (RATIO, "angle", "design/ratio-as-size"),
        (PLAIN, "count", "design/not-whole"),
        (Amount(14.00000001), "count", "design/not-whole"),
    ],
)
def test_what_does_not(amount: Amount, kind: str, rule: str) -> None:
    with pytest.raises(Fault) as caught:
        settle(amount, kind, "x")
    assert caught.value.rule is not None
    assert caught.value.rule.id == rule


@pytest.mark.parametrize(
    ("text", "amount", "kind", "hint"),
    [
        ("3", Amount(3.0), "length", "write 3 mm or 3 in"),
        ("3/16", Amount(0.1875), "length", "write 3/16 mm or 3/16 in"),
        ("40", Amount(40.0), "angle", "write 40 deg"),
        ("reach", Amount(92.0), "length", "it comes out as 92: give the size in it a unit, such as 92 mm or 92 in"),
        ("360 / 18", Amount(20.0), "angle", "it comes out as 20: give the numbers in it a unit, such as 20 deg"),
    ],
)
def test_what_to_write_for_a_plain_number(text: str, amount: Amount, kind: str, hint: str) -> None:
    with pytest.raises(Fault) as caught:
        settle(amount, kind, text)
    assert caught.value.hint == hint
