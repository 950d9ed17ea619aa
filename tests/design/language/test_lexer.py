"""Words and numbers of an expression."""

import pytest

from publisher.design.language.lexer import LONGEST, Fault, read_literal, read_tokens


def words(text: str) -> list[str]:
    return [token.text for token in read_tokens(text)[:-1]]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("3/16 in", ["3/16 in"]),
        ("1 3/4 in", ["1 3/4 in"]),
        ("3 / 16 in", ["3", "/", "16 in"]),
        ("2*1 3/4in+.5 cm", ["2", "*", "1 3/4in", "+", ".5 cm"]),
        ("10/2.5", ["10", "/", "2.5"]),
        ("10/25.5", ["10", "/", "25.5"]),
        ("1.5/2", ["1.5", "/", "2"]),
        ("5 mmx", ["5", "mmx"]),
        ("stair.height/2", ["stair.height", "/", "2"]),
        ("a − b × c", ["a", "-", "b", "*", "c"]),
        ("7.", ["7."]),
        ("reach / 3/4", ["reach", "/", "3/4"]),
        ("reach/3/4 in", ["reach", "/", "3/4 in"]),
    ],
)
def test_tokens(text: str, expected: list[str]) -> None:
    assert words(text) == expected


# Check values, sections 3 and 10.1: 3/16 in = 4.7625 mm and 1/8 in = 3.175 mm exactly, by the inch of 1959
@pytest.mark.parametrize(
    ("text", "mm"),
    [("3/16 in", 4.7625), ("1/8 in", 3.175), ("1 3/4 in", 44.45), ("20 in", 508.0), ("30 in", 762.0), ("0.1 cm", 1.0)],
)
def test_literals_are_exact(text: str, mm: float) -> None:
    amount = read_literal(text)
    assert amount is not None
    assert amount.value == mm
    assert amount.kind() == "length"


def test_what_is_more_than_a_literal_is_none() -> None:
    assert read_literal("2 * 3 mm") is None
    assert read_literal("reach") is None
    assert read_literal("") is None


@pytest.mark.parametrize(
    ("text", "at", "says"),
    [
        ('3/16"', 4, "write in"),
        ("20°", 2, "write deg"),
        ("2 ** 3", 2, "a power is written with ^"),
        ("a; b", 1, "not part of an expression"),
        ("3/0 in", 0, "divides by zero"),
        ("2000000000", 0, "more than 1,000,000,000"),
        ("a\u200bb", 1, "U+200B"),
        ("1" * (LONGEST + 1), 0, "at most 300"),
        ("reach/3/4", 5, "write / (3/4) or / 3 / 4"),
        ("٣ mm", 0, "not part of an expression"),
    ],
)
def test_faults_point_at_the_letter(text: str, at: int, says: str) -> None:
    with pytest.raises(Fault) as caught:
        read_tokens(text)
    assert caught.value.at == at
    assert says in f"{caught.value.message} | {caught.value.hint}"
    assert caught.value.rule is not None


@pytest.mark.parametrize(
    ("text", "at", "hint"),
    [
        ("1e3", 0, "write 1000"),
        ("2 * 1.5E-2 in", 4, "write 0.015"),
        ("1e999999999", 0, "write the number out"),
        ("½ in", 0, "write 0.5 in or 1/2 in"),
        ("board + 3½ in", 8, "write 3.5 in or 3 1/2 in"),
        ("⅓ in", 0, "write 1/3 in"),
        ("2 * ⅛", 4, "write 0.125 or 1/8"),
    ],
)
def test_numbers_in_other_ways_of_writing_are_said_in_this_one(text: str, at: int, hint: str) -> None:
    with pytest.raises(Fault) as caught:
        read_tokens(text)
    assert (caught.value.hint, caught.value.at) == (hint, at)
    mended = hint.removeprefix("write ").split(" or ")[0]
    assert "out" in mended or read_literal(mended) is not None


@pytest.mark.parametrize("text", ["e3", "a½", "1e3x"])
def test_names_with_such_signs_are_names(text: str) -> None:
    assert read_tokens(text)[-2].kind == "name"
