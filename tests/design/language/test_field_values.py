"""What fields make of amounts: plain numbers become mm or degrees, ratios never do."""

import pytest

from publisher.design.language.amounts import Amount, Origin
from publisher.design.language.field_values import settle
from publisher.design.language.lexer import Fault

LENGTH = Amount(7.5, mm=1)
ANGLE = Amount(7.5, deg=1)
PLAIN = Amount(7.5)
RATIO = Amount(8.0, origin=Origin.RATIO)
ROUNDED = Amount(8.0, origin=Origin.ROUNDED)


@pytest.mark.parametrize(
    ("amount", "kind", "value"),
    [
        (LENGTH, "length", 7.5),
        (PLAIN, "length", 7.5),
        (ANGLE, "angle", 7.5),
        (PLAIN, "angle", 7.5),
        (PLAIN, "number", 7.5),
        (RATIO, "number", 8.0),
        (RATIO, "count", 8.0),
        (ROUNDED, "count", 8.0),
        (Amount(14.0000000009), "count", 14.0),
        (LENGTH, "quantity", 7.5),
    ],
)
def test_what_fits(amount: Amount, kind: str, value: float) -> None:
    assert settle(amount, kind) == value


@pytest.mark.parametrize(
    ("amount", "kind", "rule"),
    [
        (ANGLE, "length", "design/wrong-kind"),
        (LENGTH, "angle", "design/wrong-kind"),
        (LENGTH, "count", "design/wrong-kind"),
        (ANGLE, "number", "design/wrong-kind"),
        (Amount(1.0, mm=2), "length", "design/wrong-kind"),
        (RATIO, "length", "design/ratio-as-size"),
        (ROUNDED, "length", "design/ratio-as-size"),
        (RATIO, "angle", "design/ratio-as-size"),
        (PLAIN, "count", "design/not-whole"),
        (Amount(14.00000001), "count", "design/not-whole"),
    ],
)
def test_what_does_not(amount: Amount, kind: str, rule: str) -> None:
    with pytest.raises(Fault) as caught:
        settle(amount, kind)
    assert caught.value.rule is not None
    assert caught.value.rule.id == rule
