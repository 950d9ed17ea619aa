"""The order of operators, and what cannot be read."""

import pytest

from publisher.design.language.lexer import Fault
from publisher.design.language.parser import DEEPEST_EXPRESSION, parse


def order(text: str) -> str:
    return " ".join(step.word for step in parse(text).steps)


@pytest.mark.parametrize(
    ("text", "postfix"),
    [
        ("a + b * c", "a b c * +"),
        ("a - b - c", "a b - c -"),
        ("a / b / c", "a b / c /"),
        ("a ^ b ^ c", "a b c ^ ^"),
        ("-a ^ 2", "a 2 ^ negative"),
        ("a ^ -2", "a 2 negative ^"),
        ("a * -b", "a b negative *"),
        ("+-+a", "a negative"),
        ("(a + b) * c", "a b + c *"),
        ("min(a, b + 1, c)", "a b 1 + c min"),
        ("2 * 3/4 in", "2 3/4 in *"),
        ("pi * a", "pi a *"),
    ],
)
def test_order(text: str, postfix: str) -> None:
    assert order(text) == postfix


def test_names_come_with_their_offsets() -> None:
    assert parse("2 * reach + stair.height").names == (("reach", 4), ("stair.height", 12))


@pytest.mark.parametrize(
    ("text", "at", "says"),
    [
        ("", 0, "there is no value here"),
        ("   ", 0, "there is no value here"),
        ("a +", 3, "ends too early"),
        ("(a + b", 0, "never closed"),
        ("a)", 1, "never opened"),
        ("()", 1, "is empty"),
        ("* a", 0, "missing before it"),
        ("a b", 2, "an operator is missing"),
        ("min(a)", 0, "takes two values or more"),
        ("sqrt(a, b)", 0, "takes one value"),
        ("maxx(a, b)", 0, "did you mean “max”?"),
        ("reach(2)", 0, "write * before the bracket"),
        ("max", 0, "is a function"),
        ("mm", 0, "has no number before it"),
        ("reach mm", 6, "does not follow a number"),
        ("7,5 mm", 1, "decimals are written with a point"),
        ("5 mm 3", 5, "an operator is missing"),
    ],
)
def test_faults(text: str, at: int, says: str) -> None:
    with pytest.raises(Fault) as caught:
        parse(text)
    assert caught.value.at == at
    assert says in f"{caught.value.message} | {caught.value.hint}"


def test_depth_is_bounded_for_every_way_to_nest() -> None:
    for opened, closed in (("(", ")"), ("-", ""), ("sqrt(", ")"), ("2^", "")):
        parse(opened * DEEPEST_EXPRESSION + "1" + closed * DEEPEST_EXPRESSION)
        with pytest.raises(Fault, match="nested more than 40 deep"):
            parse(opened * (DEEPEST_EXPRESSION + 1) + "1" + closed * (DEEPEST_EXPRESSION + 1))
