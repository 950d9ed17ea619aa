"""Files are put in place all or none."""

import errno
import json
from contextlib import nullcontext
from pathlib import Path

import pytest

from publisher.basics import Refusal
from publisher.release import disk, placing, put_in_place, settle
from publisher.release.placing import WORK
from tests.release.dying import Death, everything

JOURNAL = f"{WORK}/journal.json"


@pytest.mark.keeps("release/cannot-write")
def test_files_arrive_and_nothing_else(tmp_path: Path) -> None:
    placed = put_in_place(tmp_path, [("a.pdf", b"1"), ("previews/x/page-01.png", b"2")])
    assert everything(tmp_path) == {"a.pdf": b"1", "previews/x/page-01.png": b"2"}
    assert placed == (tmp_path / "a.pdf", tmp_path / "previews/x/page-01.png")


def test_a_full_disk_changes_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    put_in_place(tmp_path, [("a.pdf", b"old"), ("b.pdf", b"old")])
    write = Path.write_bytes

    def full(self: Path, data: bytes) -> int:
        if self.name == "b.pdf":
            write(self, data[:1])
            raise OSError(errno.ENOSPC, "No space left on device")
        return write(self, data)

    monkeypatch.setattr(Path, "write_bytes", full)
    with pytest.raises(Refusal, match="no space left on device"):
        put_in_place(tmp_path, [("a.pdf", b"new"), ("b.pdf", b"new")])
    assert everything(tmp_path) == {"a.pdf": b"old", "b.pdf": b"old"}


@pytest.mark.breaks("release/cannot-write")
def test_an_output_folder_that_is_a_file_is_refused(tmp_path: Path) -> None:
    (tmp_path / "packs").write_bytes(b"mine")
    with pytest.raises(Refusal, match="cannot write to") as caught:
        put_in_place(tmp_path / "packs", [("a.pdf", b"1")])
    assert "build and release go elsewhere with --out" in str(caught.value.findings[0].hint)
    assert (tmp_path / "packs").read_bytes() == b"mine"


@pytest.mark.parametrize("name", ["x" * 300, "x/" * 3000])
def test_a_name_that_no_disk_can_hold_is_refused_and_not_repeated_in_full(name: str, tmp_path: Path) -> None:
    with pytest.raises(Refusal, match="file name too long") as caught:
        put_in_place(tmp_path / name, [("a.pdf", b"1")])
    assert len(caught.value.findings[0].message) < 300
    settle(tmp_path / name)
    assert everything(tmp_path) == {}


def test_a_folder_that_was_made_for_nothing_goes(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def stop(self: Path, data: bytes) -> int:
        raise KeyboardInterrupt

    monkeypatch.setattr(Path, "write_bytes", stop)
    with pytest.raises(KeyboardInterrupt):
        put_in_place(tmp_path / "out", [("a.pdf", b"1")])
    assert list(tmp_path.iterdir()) == []


def test_a_move_that_fails_takes_back_those_before_it(tmp_path: Path) -> None:
    put_in_place(tmp_path, [("a.pdf", b"old")])
    (tmp_path / "c.pdf").mkdir()  # a folder where the third file should go
    with pytest.raises(Refusal, match=r"cannot write to .*: a folder is called “c.pdf”"):
        put_in_place(tmp_path, [("a.pdf", b"new"), ("b.pdf", b"new"), ("c.pdf", b"new")])
    assert everything(tmp_path) == {"a.pdf": b"old"}
    assert sorted(p.name for p in tmp_path.iterdir()) == ["a.pdf", "c.pdf"]


def test_two_files_of_one_name_are_a_fault_of_ours(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="two files"):
        put_in_place(tmp_path, [("a.pdf", b"1"), ("a.pdf", b"2")])
    assert everything(tmp_path) == {}


@pytest.mark.parametrize("name", ["../a.pdf", "/a.pdf", "b/../../a.pdf", "..\\a.pdf", "c:a.pdf", ""])
def test_a_file_that_would_leave_the_folder_is_a_fault_of_ours(name: str, tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="leads out of its folder"):
        put_in_place(tmp_path / "out", [(name, b"1")])
    assert everything(tmp_path) == {}


def test_files_that_a_dead_run_had_staged_never_come_in(tmp_path: Path) -> None:
    """Whatever lies in the work folder, by whatever process: it goes before anything is staged."""
    for name in ("new/stale.pdf", "new/a.pdf/in-the-way", "old/b.pdf", "draft.json"):
        (tmp_path / WORK / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / WORK / name).write_bytes(b"stale")
    put_in_place(tmp_path, [("a.pdf", b"1")])
    assert everything(tmp_path) == {"a.pdf": b"1"}
    assert [p.name for p in tmp_path.iterdir()] == ["a.pdf"]


def test_a_work_folder_that_is_a_link_is_removed_and_what_it_leads_to_stays(tmp_path: Path) -> None:
    mine = tmp_path / "mine"
    mine.mkdir()
    (mine / "journal.json").write_text('{"moves": [{"name": "a.pdf", "old": null, "new": null}]}')
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / WORK).symlink_to(mine)
    put_in_place(tmp_path / "out", [("a.pdf", b"1")])
    assert everything(tmp_path / "out") == {"a.pdf": b"1"}
    assert (mine / "journal.json").exists()


@pytest.mark.parametrize("text", ["", "[]", '{"moves": [{}]}'])
def test_a_journal_that_cannot_be_read_is_asked_about(text: str, tmp_path: Path) -> None:
    (tmp_path / WORK).mkdir()
    (tmp_path / WORK / "journal.json").write_text(text)
    with pytest.raises(Refusal, match="cannot be read") as caught:
        put_in_place(tmp_path, [("a.pdf", b"1")])
    assert "remove" in caught.value.findings[0].hint
    assert (tmp_path / WORK / "journal.json").read_text() == text


def test_a_journal_that_names_files_elsewhere_moves_none(tmp_path: Path) -> None:
    (tmp_path / "mine").write_bytes(b"mine")
    (tmp_path / "out" / WORK).mkdir(parents=True)
    journal = tmp_path / "out" / WORK / "journal.json"
    journal.write_text(json.dumps({"moves": [{"name": "../mine", "old": None, "new": "0"}]}))
    with pytest.raises(Refusal, match="cannot be read"):
        settle(tmp_path / "out")
    assert (tmp_path / "mine").read_bytes() == b"mine"


@pytest.mark.parametrize("mine", ["a file", "a link", "a folder"])
def test_what_somebody_put_where_a_dead_run_had_moved_a_file_away_stays(
    mine: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The run died between its two moves of one file: the old one is away, the new one not there yet."""
    out = tmp_path / "out"
    put_in_place(out, (("a.pdf", b"old"), ("b.pdf", b"old")))
    replace = disk.replace

    def dies(old: Path, new: Path) -> None:
        if new == out / "b.pdf":
            raise Death
        replace(old, new)

    with monkeypatch.context() as dead:
        dead.setattr(disk, "replace", dies)
        dead.setattr(disk, "remove_tree", lambda _: None)
        with pytest.raises(Death):
            put_in_place(out, (("a.pdf", b"new"), ("b.pdf", b"new")))
    assert everything(out)["a.pdf"] == b"new" and not (out / "b.pdf").exists()
    (tmp_path / "mine").write_bytes(b"mine")
    if mine == "a file":
        (out / "b.pdf").write_bytes(b"mine")
    elif mine == "a link":
        (out / "b.pdf").symlink_to(tmp_path / "mine")
    else:
        (out / "b.pdf").mkdir()
    settle(out)
    assert (out / "a.pdf").read_bytes() == b"old"
    assert (out / "b.pdf").is_dir() if mine == "a folder" else (out / "b.pdf").read_bytes() == b"mine"
    assert sorted(path.name for path in out.iterdir()) == ["a.pdf", "b.pdf"]


@pytest.mark.parametrize(
    ("left", "refused"), [(".publisher-lock", False), (f"{WORK}/new/a.pdf", False), (JOURNAL, True)]
)
def test_who_only_reads_needs_no_rights_where_nothing_is_half_moved(
    left: str, refused: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / left).parent.mkdir(parents=True, exist_ok=True)
    (tmp_path / left).write_text('{"moves": []}')

    def read_only(what: str, path: Path) -> None:
        raise PermissionError(errno.EACCES, "Permission denied", str(path))

    monkeypatch.setattr(disk, "before", read_only)
    with pytest.raises(Refusal, match="some files there are new") if refused else nullcontext():
        settle(tmp_path)


def test_a_file_that_changes_its_capitals_alone_does_not_lock_the_folder_when_the_run_dies(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    put_in_place(tmp_path / "out", (("Base.svg", b"old"),))

    def dies(*_: object) -> None:
        raise SystemExit

    with monkeypatch.context() as dead:
        dead.setattr(placing, "_finish", dies)
        with pytest.raises(SystemExit), placing.held(tmp_path / "out"):
            placing.place(tmp_path / "out", (("base.svg", b"new"),), gone=("Base.svg",))
    placing.settle(tmp_path / "out")
    assert {p.name: p.read_bytes() for p in (tmp_path / "out").iterdir()} == {"base.svg": b"new"}
