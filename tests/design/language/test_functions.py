"""Functions and what they do with dimensions."""

import math

import pytest

from publisher.design.language.amounts import Amount
from publisher.design.language.evaluate import evaluate
from publisher.design.language.functions import FUNCTIONS, cosine, sine, tangent
from publisher.design.language.lexer import Fault
from publisher.design.language.parser import parse


def work(text: str) -> Amount:
    def none(name: str, at: int) -> Amount:
        raise AssertionError(f"{name} at {at}")

    return evaluate(parse(text), none)


def test_the_functions_are_those_of_the_language() -> None:
    assert set(FUNCTIONS) == {
        "min",
        "max",
        "sqrt",
        "sin",
        "cos",
        "tan",
        "asin",
        "acos",
        "atan",
        "abs",
        "floor",
        "ceil",
        "round",
    }


def test_trigonometry_takes_degrees_and_is_exact_at_the_common_angles() -> None:
    for degrees in range(-720, 721, 30):
        for ours, theirs in ((sine, math.sin), (cosine, math.cos)):
            value = ours(degrees)
            assert value == pytest.approx(theirs(math.radians(degrees)), abs=1e-12)
            if abs(value) < 0.51 or abs(value) > 0.99:
                assert value in (-1.0, -0.5, 0.0, 0.5, 1.0)
    assert [tangent(angle) for angle in (-45, 0, 45, 135, 225)] == [-1.0, 0.0, 1.0, -1.0, 1.0]
    assert work("sin(30 deg)").value == 0.5
    assert [work(f"{name}(0)").value for name in ("sin", "cos", "tan")] == [0.0, 1.0, 0.0]  # 0 is 0 in every unit
    assert work("110 mm / 2 * tan(45 deg)") == Amount(55.0, mm=1, origin=work("tan(45 deg)").origin)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("round(2.5)", 3.0),
        ("round(-2.5)", -3.0),
        ("round(0.1 * 3 / 0.6 + 2)", 3.0),  # 2.5 but for dust
        ("floor(0.3 / 0.1)", 3.0),  # 2.9999999999999996 in binary
        ("ceil(0.7 * 100)", 70.0),  # 70.00000000000001 in binary
        ("ceil(7.00001)", 8.0),
        ("floor(-0.5)", -1.0),
        ("round(100 mm / 3/16 in)", 21.0),
        ("round(100 mm / 5 mm)", 20.0),
        ("abs(-3 mm)", 3.0),
        ("max(3 mm, 1/2 in, 1 cm)", 12.7),
        ("min(3, 2, 5)", 2.0),
        ("sqrt(9 mm * 4 mm)", 6.0),
        ("asin(0.5)", 30.0),
        ("asin(-1)", -90.0),
        ("acos(-0.5)", 120.0),
        ("acos(60 mm / 60 mm)", 0.0),
        ("acos(0.1 * 3 / 0.3)", 0.0),  # 1.0000000000000002 in binary
        ("atan(50 mm / 50 mm)", 45.0),
        ("180 deg - 2 * atan(1)", 90.0),
    ],
)
def test_values(text: str, value: float) -> None:
    assert work(text).value == value


@pytest.mark.parametrize(
    ("text", "rule", "says"),
    [
        ("round(3.4 mm)", "design/rounded-length", "round(x / 1 mm) * 1 mm"),
        ("ceil(3.4 deg)", "design/rounded-length", "ceil(x / 1 deg) * 1 deg"),
        ("floor(3 mm * 2 mm)", "design/rounded-length", "divide by something of its own kind"),
        ("max(0, 3 mm)", "design/mixed-kinds", "0 mm, not 0"),
        ("sin(3 mm)", "design/wrong-kind", "write degrees"),
        ("cos(3 mm / 2 mm)", "design/ratio-as-size", "not an angle"),
        ("asin(1.01)", "design/no-value", "from -1 to 1"),
        ("acos(-2)", "design/no-value", "acos of -2"),
        ("atan(3 mm)", "design/wrong-kind", "atan(rise / run)"),
        ("acos(30 deg)", "design/wrong-kind", "plain number"),
        ("tan(90 deg)", "design/no-value", "tan of 90°"),
        ("2 * sin(30)", "design/no-unit", "write sin(30 deg)"),
        ("tan(-270 deg)", "design/no-value", "tan of -270°"),
        ("sqrt(-4)", "design/no-value", "negative"),
        ("sqrt(4 mm)", "design/wrong-kind", "the root of a length is not a size"),
    ],
)
def test_faults(text: str, rule: str, says: str) -> None:
    with pytest.raises(Fault) as caught:
        work(text)
    assert caught.value.rule is not None
    assert caught.value.rule.id == rule
    assert says in f"{caught.value.message} | {caught.value.hint}"


def test_inverse_functions_undo_the_others() -> None:
    """Whole degrees from -89 to 89, and what comes out is an angle that adds to others."""
    for angle in range(-89, 90):
        assert work(f"asin(sin({angle} deg))").value == pytest.approx(angle, abs=1e-9)
        assert work(f"atan(tan({angle} deg)) + 0 deg").value == pytest.approx(angle, abs=1e-9)
        assert work(f"acos(cos({angle + 90} deg))").value == pytest.approx(angle + 90, abs=1e-6)
