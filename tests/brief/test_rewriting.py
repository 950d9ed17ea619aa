"""Words of a spec replaced in place: everything else stays to the letter."""

import pytest

from publisher.brief import SpecText

TEXT = """\
# a comment
sizes: {a: 5,  b: '7', "c": "8" }   # end
rows:
  - x: &one 3    # three
    y: *one
  - say: >
      words 3
    end: 4
"""


def test_keys_and_values_are_replaced_and_comments_keep_their_column() -> None:
    spec = SpecText(TEXT)
    new = spec.replaced(
        {"/sizes/a": "5 mm", "/sizes/b": "7 in", "/rows/0/x": "3 mm", "/rows/1/end": "44"},
        {"/sizes/c": "cc", "/rows/1/end": "stop"},
    )
    assert (
        new
        == """\
# a comment
sizes: {a: 5 mm,  b: '7 in', "cc": "8" }   # end
rows:
  - x: &one 3 mm # three
    y: *one
  - say: >
      words 3
    stop: 44
"""
    )


@pytest.mark.parametrize("end", ["\r\n", "\r", "\n"])
def test_line_ends_stay(end: str) -> None:
    text = TEXT.replace("\n", end)
    assert SpecText(text).replaced({"/rows/1/end": "5"}) == text.replace("end: 4", "end: 5")


def test_what_cannot_be_replaced_is_refused() -> None:
    spec = SpecText(TEXT + 'quoted: "a\\x20b"\n')
    assert spec.values["/rows/1/say"] is None  # on lines of its own
    assert spec.values["/quoted"] is None  # what it says is not what stands there
    for at in ("/rows/1/say", "/quoted", "/nothing"):
        with pytest.raises(ValueError, match="cannot be written"):
            spec.replaced({at: "1"})
    with pytest.raises(ValueError, match="cannot be written"):
        spec.replaced({"/rows/0/x": "1", "/rows/0/y": "2"})  # one value, repeated by its alias


def test_places_of_words_and_their_aliases() -> None:
    spec = SpecText(TEXT)
    assert spec.line("/rows/1/end") == (8, 5)
    assert spec.line("/nothing") == (0, 0)
    assert spec.alike("/rows/0/x") == ("/rows/0/x", "/rows/0/y")
    assert spec.below("/rows") == ("/rows/0", "/rows/1")
