"""Syntax errors in our own words: the place, what was found, what to do; alike with both of PyYAML's parsers."""

import pytest
import yaml

from publisher.basics import Refusal
from publisher.brief import yaml_reader
from publisher.brief.yaml_reader import read_nodes

LIBRARY_WORDS = (
    "while parsing",
    "while scanning",
    "token",
    "did not find",
    "block mapping",
    "flow",
    "scalar",
    "stream",
)

CASES = [
    ("say: {stair.layers} layers of board\n", "unquoted-text", 1, "opens with “{”", "say: >"),
    ("say: Note: glue the step\n", "unquoted-text", 1, "holds a colon", "say: >"),
    ("steps:\n  - title: A\n    say: First: cut\n", "unquoted-text", 3, "the text of “say”", "say: >"),
    ("a: {title: for {x} bases}\n", "unquoted-text", 1, "without quotes", "double quotes"),
    ("a: {name: Stair: layer}\n", "unquoted-text", 1, "without quotes", "double quotes"),
    ("say: > Turn each layer\n  again\n", "unquoted-text", 1, "opens a block", "next line"),
    ("a:\n\tb: 1\n", "tab-indent", 2, "a tab", "blanks"),
    ("a: 'open\nb: 1\n", "yaml-syntax", 1, "never closed", "close it"),
    ('a: "\\q"\n', "yaml-syntax", 1, "backslash", "twice"),
    ("a: @x\n", "yaml-syntax", 1, "cannot begin with “@”", "quotes"),
    ("a: `x`\n", "yaml-syntax", 1, "cannot begin with “`”", "quotes"),
    ("a: %x\n", "yaml-syntax", 1, "cannot begin with “%”", "quotes"),
    ("a: [1, 2\nb: 3\n", "yaml-syntax", 1, "is not closed", "commas"),
    ("a: {b: 1\n", "yaml-syntax", 1, "is not closed", "close with “}”"),
    ("a: ]\n", "yaml-syntax", 1, "closes something", "partner"),
    ("a: 1\n b: 2\n", "yaml-syntax", 2, "indented otherwise", "one column"),
    ("a: 1\n- 2\n", "yaml-syntax", 2, "", ""),
    ("a\nb: 1\n", "yaml-syntax", 2, "", ""),
    ("a: 'q' z\n", "yaml-syntax", 1, "after the closing quotation mark", "whole value"),
    ("  format: 2\ntitle: a\n", "yaml-syntax", 2, "indented otherwise", "one column"),
    ("{a: 1}}\n", "yaml-syntax", 1, "closes something", "partner"),
    ("a:\n  b: 1\n   with: {c: d, e: f}\n  g: 1\n", "yaml-syntax", 3, "indented otherwise", "one column"),
    ("a: {b: 0.2 mm faces: bare}\n", "unquoted-text", 1, "without quotes", "comma before it"),
    ("a: !x!y z\n", "foreign-tag", 1, "tag", "delete"),
    ("%YAML 3.0\n---\na: 1\n", "several-documents", 1, "another document", "one document"),
    ("a: " + "[" * 5000, "too-deep", 1, "nested", "bracket"),
]


@pytest.mark.parametrize("parser", ["CSafeLoader", "SafeLoader"])
@pytest.mark.parametrize(("text", "check", "line", "message", "hint"), CASES)
def test_a_fault_is_explained(
    text: str, check: str, line: int, message: str, hint: str, parser: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(yaml_reader, "PARSER", getattr(yaml, parser))
    with pytest.raises(Refusal) as caught:
        read_nodes(text, "spec.yaml")
    (finding,) = caught.value.findings
    assert finding.check == f"brief/{check}"
    assert finding.place is not None
    assert finding.place.line == line
    assert message in finding.message
    assert hint in finding.hint
    assert finding.hint
    assert not any(word in finding.message + finding.hint for word in LIBRARY_WORDS)
