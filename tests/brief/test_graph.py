"""The node graph as it grows: its limits, and what is reported without stopping."""

import pytest

from publisher.basics import Refusal
from publisher.brief import limits
from publisher.brief.nodes import Scalar
from publisher.brief.yaml_reader import read_nodes

FILE = "spec.yaml"


def _refused(text: str) -> tuple[str, int, int]:
    with pytest.raises(Refusal) as caught:
        read_nodes(text, FILE)
    place = caught.value.findings[-1].place
    assert place is not None
    return caught.value.findings[-1].check.removeprefix("brief/"), place.line, place.column


def test_limits_hold_exactly() -> None:
    deep = "a: " + "[" * (limits.DEPTH - 1) + "]" * (limits.DEPTH - 1)
    assert read_nodes(deep, FILE)[1] == ()
    many = limits.NODES - 3  # the top mapping, the key and the list count too
    assert read_nodes("a: [" + "1," * many + "]", FILE)[1] == ()
    assert _refused("a: [" + "1," * (many + 1) + "]")[0] == "too-many-values"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("a: 1\nb: 2\na: 3\n", [("duplicate-key", 3, 1)]),
        ("a: {b: 1, 'b': 2}\nc: 1\nc: 2\n", [("duplicate-key", 1, 11), ("duplicate-key", 3, 1)]),
        ("a: &x {b: 1}\nc:\n  <<: *x\n", [("merge-key", 3, 3)]),
        ("a: !!binary aGk=\nb: !mine x\n", [("foreign-tag", 1, 4), ("foreign-tag", 2, 4)]),
        ("a: !!map 5\n", [("foreign-tag", 1, 4)]),
        ("a: !!str 5\nb: !!seq [1]\nc: !!map {}\nd: !!int 5\n", []),
        ("'': 1\n", [("bad-key", 1, 1)]),
        ('"a\\e[31m": 1\n', [("hidden-character", 1, 1)]),
    ],
)
def test_what_can_be_read_on_is_reported_together(text: str, expected: list[tuple[str, int, int]]) -> None:
    _, findings = read_nodes(text, FILE)
    assert [(f.check.removeprefix("brief/"), f.place.line, f.place.column) for f in findings if f.place] == expected


def test_of_two_keys_the_first_counts() -> None:
    top, _ = read_nodes("a: 1\na: 2\n", FILE)
    assert [(key.text, key.line, node.text) for key, node in top.entries if isinstance(node, Scalar)] == [("a", 1, "1")]
