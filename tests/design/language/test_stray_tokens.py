"""Words for what stands where it cannot."""

import pytest

from publisher.design.language.lexer import Fault
from publisher.design.language.parser import parse


@pytest.mark.parametrize(
    ("text", "rule", "says"),
    [
        ("5 inch", "design/unknown-unit", "write in"),
        ("5 Millimetres", "design/unknown-unit", "write mm"),
        ("5 MM", "design/unknown-unit", "write mm"),
        ("5 degres", "design/unknown-unit", "did you mean “deg”?"),
        ("5 milimetres", "design/unknown-unit", "did you mean “mm”?"),
        ("5 metre", "design/unknown-unit", "units are mm, cm, in, deg; to multiply, write 5 * metre"),
        ("5 mm mm", "design/unknown-unit", "a number has one unit"),
        ("5 board", "design/unknown-unit", "to multiply, write 5 * board"),
        ("board 5 mm", "design/unreadable-expression", "an operator is missing"),
        ("2 * )", "design/unreadable-expression", "never opened"),
    ],
)
def test_stray_words(text: str, rule: str, says: str) -> None:
    with pytest.raises(Fault) as caught:
        parse(text)
    assert caught.value.rule is not None
    assert caught.value.rule.id == rule
    assert says in f"{caught.value.message} | {caught.value.hint}"
