"""Dimensions through the operators; and arithmetic against Python's own on generated expressions."""

import math
from collections.abc import Mapping

import pytest
from hypothesis import given
from hypothesis import strategies as st

from publisher.design.language.amounts import Amount, Origin
from publisher.design.language.evaluate import evaluate
from publisher.design.language.lexer import Fault
from publisher.design.language.parser import parse
from tests.searches.profile import cases

NAMES: Mapping[str, Amount] = {
    "board": Amount(5.0, mm=1),
    "height": Amount(100.0, mm=1),
    "reach": Amount(30.0, mm=1),
    "turn": Amount(20.0, deg=1),
    "layers": Amount(14.0),
    "share": Amount(0.5, origin=Origin.RATIO),
    "nothing": Amount(0.0),
}


def work(text: str) -> Amount:
    return evaluate(parse(text), lambda name, _: NAMES[name])


@pytest.mark.parametrize(
    ("text", "amount"),
    [
        ("20 * board", Amount(100.0, mm=1)),
        ("21 * 3/16 in", Amount(21 * 4.7625, mm=1)),  # 100.0125
        ("20 × 5 mm", Amount(100.0, mm=1)),
        ("reach / (3/4)", Amount(40.0, mm=1)),
        ("360 deg / 18", Amount(20.0, deg=1)),
        ("height / board", Amount(20.0, origin=Origin.RATIO)),
        ("round(height / board)", Amount(20.0, origin=Origin.ROUNDED)),
        ("board * board", Amount(25.0, mm=2)),
        ("height * board / height", Amount(5.0, mm=1)),
        ("board ^ 2", Amount(25.0, mm=2)),
        ("(board ^ 2) ^ 0.5", Amount(5.0, mm=1)),
        ("board ^ -1 * height", Amount(20.0, origin=Origin.RATIO)),
        ("2 ^ 3 ^ 2", Amount(512.0)),
        ("-2 ^ 2", Amount(-4.0)),
        ("2 mm ^ 2", Amount(4.0, mm=2)),  # a literal binds tighter than any operator
        ("share * 2", Amount(1.0, origin=Origin.RATIO)),
        ("share * board", Amount(2.5, mm=1, origin=Origin.RATIO)),
        ("180 deg - 2 * turn", Amount(140.0, deg=1)),
        ("25 mm + 7 mm", Amount(32.0, mm=1)),
        ("1 in − 1 cm", Amount(15.4, mm=1)),
        ("abs(board - height)", Amount(95.0, mm=1)),
    ],
)
def test_dimensions(text: str, amount: Amount) -> None:
    worked_out = work(text)
    assert worked_out.value == pytest.approx(amount.value, abs=1e-12)
    assert (worked_out.dimension, worked_out.origin) == (amount.dimension, amount.origin)


@pytest.mark.parametrize(
    ("text", "rule", "at", "says"),
    [
        ("board + 5", "design/mixed-kinds", 6, "write 5 mm"),
        ("5/2 - board", "design/mixed-kinds", 4, "write 5/2 mm"),
        ("turn + 5", "design/mixed-kinds", 5, "write 5 deg"),
        ("board + layers", "design/mixed-kinds", 6, "write layers * 1 mm, if mm are meant"),
        ("board + share", "design/mixed-kinds", 6, "multiply it by a length"),
        ("board + turn", "design/mixed-kinds", 6, "a length plus an angle says nothing"),
        ("board - board * board", "design/mixed-kinds", 6, "a length minus an area"),
        ("1 / nothing", "design/no-value", 2, "“nothing” is 0"),
        ("nothing ^ -1", "design/no-value", 8, "divides by zero"),
        ("(-4) ^ 0.5", "design/no-value", 5, "negative"),
        ("2 ^ 0.3", "design/exponent", 2, "whole or half"),
        ("2 ^ 17", "design/exponent", 2, "from -16 to 16"),
        ("2 ^ board", "design/exponent", 2, "the exponent is a length"),
        ("board ^ 0.5", "design/wrong-kind", 6, "the root of a length"),
        ("100000 * 100000", "design/number-out-of-range", 0, "too large"),
        ("(9999999 ^ 16) ^ 16", "design/number-out-of-range", 15, "too large"),
        ("9999999 ^ 16 * 9999999 ^ 16 * 9999999 ^ 16", "design/number-out-of-range", 28, "too large"),
    ],
)
def test_faults(text: str, rule: str, at: int, says: str) -> None:
    with pytest.raises(Fault) as caught:
        work(text)
    assert caught.value.rule is not None
    assert caught.value.rule.id == rule
    assert caught.value.at == at
    assert says in f"{caught.value.message} | {caught.value.hint}"


NUMBERS = st.one_of(
    st.integers(0, 999).map(str),
    st.decimals(0, 999, places=3, allow_nan=False).map(str),
)
TREES = st.recursive(
    NUMBERS,
    lambda inner: st.one_of(
        st.tuples(inner, st.sampled_from([" + ", " - ", " * ", " / "]), inner).map("".join),
        inner.map(lambda text: f"({text})"),
        inner.map(lambda text: f"-{text}"),
        st.tuples(inner, st.sampled_from(["2", "3"])).map(lambda pair: f"({pair[0]}) ^ {pair[1]}"),
        st.tuples(st.sampled_from(["min", "max"]), inner, inner).map(lambda t: f"{t[0]}({t[1]}, {t[2]})"),
        inner.map(lambda text: f"abs({text})"),
    ),
    max_leaves=12,
)


@pytest.mark.search
@cases(100, 20_000)
@given(TREES)
def test_plain_arithmetic_agrees_with_python(text: str) -> None:
    if len(text) > 300:
        return
    try:
        # the same words mean the same in Python once a power is written its way; only this test may use eval
        expected = eval(text.replace("^", "**"), {"__builtins__": {}}, {"min": min, "max": max, "abs": abs})
    except ZeroDivisionError:
        with pytest.raises(Fault):
            work(text)
        return
    if abs(expected) > 1e9:
        with pytest.raises(Fault):
            work(text)
        return
    try:
        ours = work(text).value
    except Fault as fault:
        # Python's powers of whole numbers never overflow; depth is bounded here
        assert fault.rule is not None
        assert fault.rule.id in ("design/expression-too-big", "design/number-out-of-range")
        return
    assert math.isclose(ours, expected, rel_tol=1e-9, abs_tol=1e-6)
