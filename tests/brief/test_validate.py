"""The schema's verdict: every wrong kind at every depth is a finding in our own words, never an exception."""

import pickle
from collections.abc import Callable, Iterator
from functools import cache
from json import loads
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from publisher.basics import Finding
from publisher.brief import schema_text
from publisher.brief.bind import KeyPath as Steps
from publisher.brief.nodes import Key, Mapping, RawNode, Scalar, Sequence
from publisher.brief.validate import find, validate
from publisher.brief.yaml_reader import read_nodes
from tests.searches.profile import cases

FILE = "spec.yaml"
RAW_WORDS = ("is not of type", "is not valid under", "is a required property", "does not match", "were unexpected")


def _walk(node: RawNode, path: Steps = ()) -> Iterator[tuple[Steps, RawNode]]:
    yield path, node
    if isinstance(node, Mapping):
        for key, value in node.entries:
            yield from _walk(value, (*path, key.text))
    elif isinstance(node, Sequence):
        for i, item in enumerate(node.items):
            yield from _walk(item, (*path, i))


def _replace(top: Mapping, path: Steps, new: RawNode) -> None:
    parent, _ = find(top, path[:-1])
    step = path[-1]
    if isinstance(parent, Mapping):
        parent.entries = [(k, new if k.text == step else v) for k, v in parent.entries]
    elif isinstance(parent, Sequence):
        assert isinstance(step, int)
        parent.items[step] = new


@cache
def _kept(spec: str) -> bytes:
    return pickle.dumps(read_nodes(spec, FILE)[0])


def _fresh(spec: str) -> Mapping:
    """The nodes of a spec, for one test to spoil: read once, copied each time."""
    top: Mapping = pickle.loads(_kept(spec))
    return top


def _about(findings: tuple[Finding, ...], node: RawNode) -> list[Finding]:
    return [f for f in findings if f.place and (f.place.line, f.place.column) == (node.line, node.column)]


def test_the_rich_spec_has_no_mistakes(rich: str) -> None:
    assert validate(_fresh(rich), FILE).findings == ()


WRONG: tuple[Callable[[int], RawNode], ...] = (  # on a line
    lambda line: Sequence(True, line, 7, [Scalar("x", True, line, 8)]),
    lambda line: Mapping(True, line, 7, [(Key("strange-key", line, 8), Scalar("x", True, line, 9))]),
    lambda line: Scalar("12 by the lock", True, line, 7),
)


def _silent(rich: str, wrong: Callable[[int], RawNode], paths: list[Steps]) -> list[Steps]:
    """Spoil the places, none of which lies in another, each on a line of its own; return those at whose line nothing is found."""
    top = _fresh(rich)
    for line, path in enumerate(paths, 1000):
        _replace(top, path, wrong(line))
    findings = validate(top, FILE).findings
    for finding in findings:
        assert finding.message
        assert finding.hint
        assert not any(words in finding.message + finding.hint for words in RAW_WORDS)
    said = {finding.place.line for finding in findings if finding.place is not None}
    return [path for line, path in enumerate(paths, 1000) if line not in said]


def test_a_wrong_kind_at_every_depth_is_a_finding_at_its_place(rich: str) -> None:
    """Places of one depth are spoilt together; those that fall silent beside others speak alone."""
    whole = _fresh(rich)
    paths = [path for path, _ in _walk(whole) if path]
    assert len(paths) > 150
    for wrong in WRONG:
        others = [path for path in paths if type(find(whole, path)[0]) is not type(wrong(0))]
        for depth in {len(path) for path in others}:
            for path in _silent(rich, wrong, [path for path in others if len(path) == depth]):
                assert _silent(rich, wrong, [path]) == [], f"{path} accepts {wrong(0)}"


def test_an_unknown_key_at_every_mapping_is_a_finding(rich: str) -> None:
    for path, node in _walk(_fresh(rich)):
        if not isinstance(node, Mapping):
            continue
        top = _fresh(rich)
        mapping, _ = find(top, path)
        assert isinstance(mapping, Mapping)
        mapping.entries.append((Key("Strange key", 900, 3), Scalar("x", True, 900, 16)))
        findings = validate(top, FILE).findings
        assert [f for f in findings if f.place and f.place.line == 900], path


def test_every_misspelt_key_is_answered_with_the_right_one(rich: str) -> None:
    own = {"sizes", "boards", "parts", "assembly", "variants", "panels", "openings"}  # names here are the designer's
    asked = 0
    for path, node in _walk(_fresh(rich)):
        if not isinstance(node, Mapping) or (path and path[-1] in own):
            continue
        for key, _ in node.entries:
            if len(key.text) < 4:
                continue
            top = _fresh(rich)
            mapping, _ = find(top, path)
            assert isinstance(mapping, Mapping)
            spelt = mapping.key(key.text)
            assert spelt is not None
            spelt.text = key.text[0] + key.text[2] + key.text[1] + key.text[3:]
            if spelt.text == key.text:
                continue
            asked += 1
            hints = [f.hint for f in _about(validate(top, FILE).findings, Scalar("", True, spelt.line, spelt.column))]
            assert f"did you mean “{key.text}”?" in hints, (path, spelt.text, hints)
    assert asked > 60


@pytest.mark.search
@cases(12, 3000)
@given(data=st.data())
def test_random_changes_never_raise(rich: str, data: st.DataObject) -> None:
    top = _fresh(rich)
    for _ in range(data.draw(st.integers(1, 4))):
        paths = [path for path, _ in _walk(top) if path]
        if not paths:
            break
        text = data.draw(st.text(max_size=12))
        new = data.draw(
            st.sampled_from(
                [Scalar(text, True, 1, 1), Sequence(True, 1, 1), Mapping(True, 1, 1), Scalar("", True, 1, 1)]
            )
        )
        _replace(top, data.draw(st.sampled_from(paths)), new)
    for finding in validate(top, FILE).findings:
        assert finding.message.isprintable()


def _core(node: RawNode) -> object:
    """A node as an editor with the YAML 1.2 core schema reads it."""
    if isinstance(node, Mapping):
        return {key.text: _core(value) for key, value in node.entries}
    if isinstance(node, Sequence):
        return [_core(item) for item in node.items]
    if node.plain:
        for read in (int, float):
            try:
                return read(node.text.replace("_", "x"))
            except ValueError:
                continue
        return {"true": True, "false": False, "null": None}.get(node.text, node.text)
    return node.text


@pytest.fixture(scope="module")
def judge() -> Draft202012Validator:
    """The schema as an editor has it: checked to be one."""
    schema = loads(schema_text())
    Draft202012Validator.check_schema(schema)
    return Draft202012Validator(schema)


@pytest.mark.parametrize("name", ["", "lock-stair", "toll-house", "quay"])
def test_editors_accept_what_we_accept(name: str, rich: str, judge: Draft202012Validator) -> None:
    """The schema alone, as an editor applies it, has nothing against good specs."""
    designs = Path(__file__).parent.parent.parent / "designs"
    text = (designs / name / "spec.yaml").read_text(encoding="utf-8") if name else rich
    assert [error.message for error in judge.iter_errors(_core(_fresh(text)))] == []
