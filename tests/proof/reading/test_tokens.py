import pytest

from publisher.proof.reading.objects import TooMuch
from publisher.proof.reading.tokens import Name, operations, string_at


def test_numbers_before_an_operator_come_as_floats() -> None:
    assert list(operations(b"1 0 0 -1 .5 +7. cm\n10 20 m S")) == [
        (b"cm", [1.0, 0.0, 0.0, -1.0, 0.5, 7.0]),
        (b"m", [10.0, 20.0]),
        (b"S", []),
    ]


def test_names_strings_arrays_and_dictionaries() -> None:
    content = rb"/F#31 12 Tf [(a\)b) -20 <4142>] TJ /OC << /A [1 (x)] /B true >> BDC (\101\n) Tj"
    found = list(operations(content))
    assert found[0] == (b"Tf", ["F1", 12.0])
    assert isinstance(found[0][1][0], Name)
    assert found[1] == (b"TJ", [[b"a)b", -20.0, b"AB"]])
    assert found[2] == (b"BDC", ["OC", {"A": [1.0, b"x"], "B": True}])
    assert found[3] == (b"Tj", [b"A\n"])


def test_nested_brackets_in_a_string() -> None:
    assert string_at(b"(a(b)c)d", 0) == (b"a(b)c", 7)


def test_comments_are_passed_over() -> None:
    assert list(operations(b"% 1 2 m\n3 4 l")) == [(b"l", [3.0, 4.0])]


def test_an_inline_image_is_one_operation() -> None:
    found = list(operations(b"q BI /W 2 /H 3 /BPC 8 ID \x00Q q\xff EI Q"))
    assert [word for word, _ in found] == [b"q", b"BI", b"Q"]
    assert found[1][1] == [{"W": 2.0, "H": 3.0, "BPC": 8.0}]


@pytest.mark.parametrize("content", [b"(", b"<<", b"[", b"<", b"]", b">>", b")", b"1.2.3 --4 m", b"/", b"BI", b"\\"])
def test_broken_content_ends_quietly(content: bytes) -> None:
    assert isinstance(list(operations(content)), list)


def test_words_without_end_are_too_much() -> None:
    with pytest.raises(TooMuch):
        list(operations(b"1 " * 3_000_000))
