"""Bytes to text: UTF-8 only, with the place of what is not, and no hidden characters."""

import pytest

from publisher.basics import Refusal
from publisher.brief.source import decode, hidden_characters

FILE = "spec.yaml"


def test_a_byte_order_mark_is_accepted() -> None:
    assert decode(b"\xef\xbb\xbfa: 1\n", FILE) == "a: 1\n"


@pytest.mark.parametrize(
    ("data", "line", "column", "byte"),
    [
        (b"a: 1\nb: caf\xe9\n", 2, 7, "byte 12"),
        (b"a: 1\r\nb: \xc3\xa9\xff\r\n", 2, 5, "byte 12"),
        (b"a: 1\rb: \xff", 2, 4, "byte 9"),
        (b"\xed\xa0\x80", 1, 1, "byte 1"),  # half of a surrogate pair is no UTF-8 (RFC 3629)
        (b"\xc0\xaf", 1, 1, "byte 1"),  # nor is a slash in two bytes
    ],
)
def test_what_is_not_utf8_has_its_place(data: bytes, line: int, column: int, byte: str) -> None:
    with pytest.raises(Refusal) as caught:
        decode(data, FILE)
    (finding,) = caught.value.findings
    assert finding.place is not None
    assert (finding.place.line, finding.place.column) == (line, column)
    assert byte in finding.message


def test_utf16_is_named() -> None:
    with pytest.raises(Refusal) as caught:
        decode("a: 1".encode("utf-16"), FILE)
    assert "UTF-16" in caught.value.findings[0].message


@pytest.mark.parametrize(
    "character", ["\0", "\x1b", "\x7f", "\x85", "\u200b", "\u200f", "\u2028", "\u202e", "\u2066", "\ufeff"]
)
def test_hidden_characters_are_named_with_their_place(character: str) -> None:
    (finding,) = hidden_characters(f"a: 1\r\nb: x{character}y\n", FILE)
    assert finding.place is not None
    assert (finding.place.line, finding.place.column) == (2, 5)
    assert f"U+{ord(character):04X}" in finding.message


def test_letters_of_all_scripts_are_no_hidden_characters() -> None:
    assert hidden_characters("a: Ærøskøbing, Αθήνα, Київ, 東京, עברית, नमस्ते, 90° × 2 − ½ “x”\t\r\n", FILE) == ()
