"""Every rule has a good and a bad case: on disk under tests/cases/brief, or made here where a file system is needed."""

import os
import struct
import zlib
from collections.abc import Callable
from pathlib import Path

import pytest

from publisher.basics import Finding, Refusal, Rule, Severity
from publisher.brief import RULES, limits, read_brief, rules
from publisher.brief.validate import validate
from publisher.brief.yaml_reader import read_nodes

CASES = Path(__file__).parent.parent / "cases" / "brief"
Findings = Callable[[Path], tuple[Finding, ...]]
Maker = Callable[[Path, str, bool], Path]


def _spec(folder: Path, text: str | bytes) -> Path:
    folder.mkdir()
    (folder / "spec.yaml").write_bytes(text if isinstance(text, bytes) else text.encode())
    return folder


def _no_folder(tmp: Path, good: str, bad: bool) -> Path:
    return tmp / "nowhere" if bad else _spec(tmp / "landing", good)


def _folder_name(tmp: Path, good: str, bad: bool) -> Path:
    return _spec(tmp / ("My Landing" if bad else "my-landing-2"), good)


def _no_spec(tmp: Path, good: str, bad: bool) -> Path:
    folder = _spec(tmp / "landing", good)
    if bad:
        (folder / "spec.yaml").rename(folder / "spec.yml")
    return folder


def _unreadable(tmp: Path, good: str, bad: bool) -> Path:
    folder = _spec(tmp / "landing", good)
    if bad:
        (folder / "spec.yaml").unlink()
        os.mkfifo(folder / "spec.yaml")
    return folder


def _spec_size(tmp: Path, good: str, bad: bool) -> Path:
    room = limits.SPEC_BYTES - len(good) - 1
    return _spec(tmp / "landing", good + "#" * (room + (2 if bad else 0)) + "\n")


def _file_size(tmp: Path, good: str, bad: bool) -> Path:
    text = good.replace("shape: disc, with: {radius: 20 mm}", "drawing: {file: landing.svg}")
    folder = _spec(tmp / "landing", text)
    with (folder / "landing.svg").open("wb") as drawing:
        drawing.truncate(limits.DRAWING_BYTES + (1 if bad else 0))
    return folder


def _png(width: int, height: int) -> bytes:
    """A grey PNG by hand (ISO/IEC 15948): one chunk of rows that compress to almost nothing."""

    def chunk(name: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))

    head = struct.pack(">IIBBBBB", width, height, 1, 0, 0, 0, 0)
    rows = zlib.compress(bytes((width + 7) // 8 + 1) * height)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")


def _pixels(tmp: Path, good: str, bad: bool) -> Path:
    folder = _spec(tmp / "landing", good + "cover: {photo: photo.png}\n")
    (folder / "photo.png").write_bytes(_png(8000 + bad, limits.PICTURE_PIXELS // 8000))
    return folder


def _many(tmp: Path, good: str, bad: bool) -> Path:
    lines = "".join(f"colour{i}: red\n" for i in range(limits.FINDINGS + 5 if bad else 0))
    return _spec(tmp / "landing", good + lines)


MADE: dict[str, Maker] = {
    rules.NO_FOLDER.id: _no_folder,
    rules.FOLDER_NAME.id: _folder_name,
    rules.NO_SPEC.id: _no_spec,
    rules.UNREADABLE.id: _unreadable,
    rules.SPEC_SIZE.id: _spec_size,
    rules.FILE_SIZE.id: _file_size,
    rules.PIXELS.id: _pixels,
    rules.MANY.id: _many,
}
ELSEWHERE = {rules.MISFIT.id, rules.NOT_NEW.id}  # see test_what_has_no_words_of_its_own and test_starts.py
TABLED = {rule.id for rule in RULES} - ELSEWHERE


@pytest.mark.parametrize("rule", [r for r in RULES if r.id in TABLED], ids=lambda rule: rule.id)
def test_every_rule_finds_its_bad_case_and_lets_the_good_one_pass(
    rule: Rule, tmp_path: Path, good: str, findings_of: Findings
) -> None:
    folders: dict[bool, Path] = {}
    for bad in (False, True):
        if rule.id in MADE:
            parent = tmp_path / ("bad" if bad else "good")
            parent.mkdir()
            folders[bad] = MADE[rule.id](parent, good, bad)
        else:
            folders[bad] = CASES / rule.id.removeprefix("brief/") / ("bad" if bad else "good")
    assert findings_of(folders[False]) == ()
    assert read_brief(folders[False]).fields.text("title")
    found = [f for f in findings_of(folders[True]) if f.check == rule.id]
    assert found
    for finding in found:
        assert finding.message
        assert finding.hint
        assert finding.place is not None
        assert finding.place.file


@pytest.mark.breaks("brief/does-not-fit-the-form")
def test_what_has_no_words_of_its_own(good: str) -> None:
    """A keyword of the schema that no words were written for is still a finding, never a pass and never raw text."""
    top, _ = read_nodes(good, "spec.yaml")
    schema = {"type": "object", "properties": {"format": {"x-kind": "count", "maximum": 0}}}
    assert [f.check for f in validate(top, "spec.yaml", schema).findings] == [rules.MISFIT.id]


@pytest.mark.keeps("brief/does-not-fit-the-form")
def test_what_has_no_words_of_its_own_may_fit(good: str) -> None:
    top, _ = read_nodes(good, "spec.yaml")
    schema = {"type": "object", "properties": {"format": {"x-kind": "count", "maximum": 2}}}
    assert validate(top, "spec.yaml", schema).findings == ()


def test_ids_are_unique_and_every_field_is_filled() -> None:
    assert len({rule.id for rule in RULES}) == len(RULES)
    for rule in RULES:
        assert rule.id.startswith("brief/")
        assert rule.title
        assert rule.rationale
        assert rule.severity is Severity.ERROR


def test_every_case_on_disk_belongs_to_a_rule() -> None:
    assert {p.name for p in CASES.iterdir()} <= {rule.id.removeprefix("brief/") for rule in RULES}


def test_a_refusal_is_raised_only_when_nothing_can_be_read() -> None:
    with pytest.raises(Refusal):
        read_brief(CASES / "yaml-syntax" / "bad")
    assert read_brief(CASES / "duplicate-key" / "bad").findings
