"""A folder to a brief: names, refusals, and findings in the order of the file."""

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from publisher.basics import Finding, Refusal
from publisher.brief import limits, read_brief

Maker = Callable[[str | bytes], Path]
Findings = Callable[[Path], tuple[Finding, ...]]


def test_a_good_folder(make_folder: Maker, good: str) -> None:
    folder = make_folder(good)
    brief = read_brief(folder)
    assert (brief.slug, brief.files, brief.findings) == ("landing", (), ())
    assert brief.fields.table("parts").table("landing").text("shape") == "disc"
    assert brief.fields.place.file == (folder / "spec.yaml").as_posix()


def test_the_same_folder_gives_the_same_brief(make_folder: Maker, good: str) -> None:
    folder = make_folder(good)
    assert read_brief(folder) == read_brief(folder)


def test_the_folder_may_be_named_from_inside(make_folder: Maker, good: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(make_folder(good))
    brief = read_brief(Path())
    assert brief.slug == "landing"
    assert brief.fields.place.file == "spec.yaml"


def test_marks_and_line_ends_of_other_systems(make_folder: Maker, good: str) -> None:
    folder = make_folder(b"\xef\xbb\xbf" + good.replace("\n", "\r\n").encode())
    assert read_brief(folder).findings == ()


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("spec.yml", "rename “spec.yml”"),
        ("Spec.YAML", "rename “Spec.YAML”"),
        ("notes.txt", "write a spec.yaml"),
        ("", "empty"),
    ],
)
def test_a_folder_without_a_spec_says_what_is_there(
    name: str, words: str, tmp_path: Path, findings_of: Findings
) -> None:
    if name:
        (tmp_path / name).write_text("x")
    (finding,) = findings_of(tmp_path)
    assert finding.check == "brief/no-spec"
    assert words in finding.message + finding.hint


def test_a_file_is_no_folder(tmp_path: Path, findings_of: Findings) -> None:
    (tmp_path / "a").write_text("x")
    (finding,) = findings_of(tmp_path / "a")
    assert finding.check == "brief/no-folder"
    assert "is a file" in finding.message


def test_a_spec_that_is_a_link_out_of_the_folder_is_refused(
    make_folder: Maker, good: str, findings_of: Findings
) -> None:
    folder = make_folder(good)
    (folder / "spec.yaml").rename(folder.parent / "other.yaml")
    (folder / "spec.yaml").symlink_to("../other.yaml")
    (finding,) = findings_of(folder)
    assert finding.check == "brief/path-leaves-folder"


def test_a_spec_that_is_a_folder(tmp_path: Path, findings_of: Findings) -> None:
    (tmp_path / "spec.yaml").mkdir()
    assert [f.check for f in findings_of(tmp_path)] == ["brief/unreadable-file"]


@pytest.mark.parametrize("name", ["lock-stair", "a", "7", "a-1", "x" * 40])
def test_good_folder_names(name: str, tmp_path: Path, good: str, findings_of: Findings) -> None:
    (tmp_path / name).mkdir()
    (tmp_path / name / "spec.yaml").write_text(good)
    assert findings_of(tmp_path / name) == ()


@pytest.mark.parametrize("name", ["Lock", "lock_stair", "lock stair", "-a", "a-", "a--b", "ä", "x" * 61, "a.b"])
def test_bad_folder_names(name: str, tmp_path: Path, good: str, findings_of: Findings) -> None:
    (tmp_path / name).mkdir()
    (tmp_path / name / "spec.yaml").write_text(good)
    assert [f.check for f in findings_of(tmp_path / name)] == ["brief/folder-name"]


def test_all_mistakes_are_reported_at_once_in_the_order_of_the_file(
    make_folder: Maker, good: str, findings_of: Findings
) -> None:
    spec = good.replace("use: trace", "use: stick").replace("  board: 5 mm", "  board: 5 mm\n  board: 6 mm")
    spec = spec.replace("shape: disc", "shape: dics") + "colour: red\ncover: {photo: none.jpg}\n"
    found = findings_of(make_folder(spec))
    assert [(f.check.removeprefix("brief/"), f.place.line) for f in found if f.place] == [
        ("unknown-word", 4), ("duplicate-key", 7), ("unknown-word", 11), ("unknown-key", 12), ("missing-file", 13),
    ]  # fmt: skip


def test_many_mistakes_are_cut_and_said(make_folder: Maker, good: str, findings_of: Findings) -> None:
    found = findings_of(make_folder(good + "".join(f"colour{i}: red\n" for i in range(3000))))
    assert len(found) == limits.FINDINGS + 1
    assert found[-1].check == "brief/more-findings"


def test_a_refusal_carries_what_was_found_before_it(make_folder: Maker) -> None:
    with pytest.raises(Refusal) as caught:
        read_brief(make_folder("a: 1\na: 2\nb: [\n"))
    assert [f.check for f in caught.value.findings] == ["brief/duplicate-key", "brief/yaml-syntax"]


@pytest.mark.parametrize("name", ["x" * 300, "a\0b", "nowhere/at/all"])
def test_names_that_no_disk_holds(name: str, tmp_path: Path, findings_of: Findings) -> None:
    assert [f.check for f in findings_of(tmp_path / name)] == ["brief/no-folder"]


def test_a_folder_that_may_not_be_opened(
    make_folder: Maker, good: str, findings_of: Findings, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = make_folder(good)
    monkeypatch.setattr(os, "access", lambda *_: False)
    (finding,) = findings_of(folder)
    assert finding.check == "brief/unreadable-file"
    assert "permissions" in finding.hint
