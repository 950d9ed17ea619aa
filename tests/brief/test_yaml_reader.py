"""The node graph: text as written, places from 1, and every refusal at its place."""

from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from publisher.basics import Refusal
from publisher.brief import yaml_reader
from publisher.brief.nodes import Mapping, RawNode, Scalar, Sequence
from publisher.brief.yaml_reader import read_nodes
from tests.searches.profile import dice, rounds

FILE = "spec.yaml"


def _dump(node: RawNode) -> object:
    if isinstance(node, Mapping):
        return ("map", node.line, node.column, [(k.text, k.line, k.column, _dump(v)) for k, v in node.entries])
    if isinstance(node, Sequence):
        return ("list", node.line, node.column, [_dump(item) for item in node.items])
    return (node.text, node.plain, node.line, node.column)


def _refused(text: str) -> tuple[str, int, int]:
    with pytest.raises(Refusal) as caught:
        read_nodes(text, FILE)
    place = caught.value.findings[-1].place
    assert place is not None
    return caught.value.findings[-1].check.removeprefix("brief/"), place.line, place.column


def test_text_stays_as_written() -> None:
    """What YAML 1.1 reads as a number in base 8 or 60, a date or a truth value is text here."""
    words = ["1.10", "012", "1_000", "2024-02-30", "yes", "0x1F", "190:20:30", "null", "~", "1e3", ".5", "3/16 in"]
    top, findings = read_nodes("".join(f"k{i}: {word}\n" for i, word in enumerate(words)), FILE)
    assert findings == ()
    assert [node.text for _, node in top.entries if isinstance(node, Scalar)] == words


def test_places_count_from_one_and_in_letters() -> None:
    top, _ = read_nodes("title: Brücke\nsizes: {ä: 'x', reach: 92 mm}\n", FILE)
    sizes = top.get("sizes")
    assert isinstance(sizes, Mapping)
    assert (sizes.line, sizes.column, sizes.flow) == (2, 8, True)
    reach, key = sizes.get("reach"), sizes.key("reach")
    assert isinstance(reach, Scalar)
    assert key is not None
    assert (key.line, key.column, reach.line, reach.column) == (2, 17, 2, 24)


def test_the_text_of_an_anchored_value_has_its_own_place() -> None:
    top, _ = read_nodes("a: &b 5 mm\nc: *b\n", FILE)
    assert _dump(top) == ("map", 1, 1, [("a", 1, 1, ("5 mm", True, 1, 7)), ("c", 2, 1, ("5 mm", True, 1, 7))])


def test_windows_line_ends_change_no_place(rich: str) -> None:
    assert _dump(read_nodes(rich.replace("\n", "\r\n"), FILE)[0]) == _dump(read_nodes(rich, FILE)[0])


def test_both_parsers_see_the_same(rich: str, monkeypatch: pytest.MonkeyPatch) -> None:
    fast = _dump(read_nodes(rich, FILE)[0])
    assert yaml.__with_libyaml__
    assert yaml_reader.PARSER is yaml.CSafeLoader
    monkeypatch.setattr(yaml_reader, "PARSER", yaml.SafeLoader)
    assert _dump(read_nodes(rich, FILE)[0]) == fast


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("", ("empty-spec", 0, 0)),
        ("# only a remark\n", ("empty-spec", 0, 0)),
        ("just words\n", ("not-a-mapping", 1, 1)),
        ("- a\n- b\n", ("not-a-mapping", 1, 1)),
        ("a: 1\n---\nb: 2\n", ("several-documents", 2, 1)),
        ("a: 1\n...\n---\nb: 2\n", ("several-documents", 3, 1)),
        ("a: " + "[" * 13 + "]" * 13, ("too-deep", 1, 15)),
        ("a:\n  b: *unknown\n", ("yaml-syntax", 2, 6)),
        ("a: &x [1, *x]\n", ("yaml-syntax", 1, 11)),
        ("? [a, b]\n: 1\n", ("bad-key", 1, 3)),
        ("a: &x b\n*x : 1\n", ("bad-key", 2, 1)),
        ("x: &x [" + "1," * 5000 + "]\ny: [*x, *x, *x]\n", ("too-many-values", 2, 13)),
        ("x: &x " + "[" * 8 + "1" + "]" * 8 + "\ny: [[[[*x]]]]\n", ("too-deep", 2, 8)),
    ],
)
def test_what_cannot_be_read_is_refused_at_its_place(text: str, expected: tuple[str, int, int]) -> None:
    assert _refused(text) == expected


@settings(deadline=None, derandomize=True)
@given(st.text(alphabet="ab:-?[]{}>|'\"&*!%@#,\n \t0\\<", max_size=60))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        top, findings = read_nodes(text, FILE)
    except Refusal as refusal:
        assert all(f.message and f.hint and f.place for f in refusal.findings)
    else:
        assert top.entries or findings or not text.strip(" \n{}#") or "{" in text


@pytest.mark.search
def test_a_spec_with_letters_changed_is_read_or_refused(rich: str) -> None:
    """Small damage to a whole spec: never an exception, always a place inside the file."""
    chance, many = dice(7), rounds(100, 5000)
    lines = rich.count("\n") + 1
    refused = 0
    for _ in range(many):
        letters = list(rich)
        for _ in range(chance.randint(1, 3)):
            letters[chance.randrange(len(letters))] = chance.choice("{}[]:#'\"&*!|>-?, \n\t%@`")
        try:
            read_nodes("".join(letters), FILE)
        except Refusal as refusal:
            refused += 1
            place = refusal.findings[-1].place
            assert place is not None
            assert 0 <= place.line <= lines + 4
    assert refused > many / 10


def test_the_demo_specs_are_read(tmp_path: Path) -> None:
    designs = Path(__file__).parent.parent.parent / "designs"
    for spec in sorted(designs.glob("*/spec.yaml")):
        top, findings = read_nodes(spec.read_text(encoding="utf-8"), str(tmp_path))
        assert findings == ()
        assert top.get("steps") is not None
