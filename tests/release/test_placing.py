"""Files are put in place all or none."""

import errno
import os
import shutil
import time
from pathlib import Path

import pytest

from publisher.basics import Refusal
from publisher.release import put_in_place


def everything(folder: Path) -> dict[str, bytes]:
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in folder.rglob("*") if p.is_file()}


@pytest.mark.keeps("release/cannot-write")
def test_files_arrive_and_the_staging_goes(tmp_path: Path) -> None:
    put_in_place(tmp_path, [("a.pdf", b"1"), ("previews/x/page-01.png", b"2")])
    assert everything(tmp_path) == {"a.pdf": b"1", "previews/x/page-01.png": b"2"}
    assert not list(tmp_path.glob(".staging*"))


def test_what_an_earlier_build_left_in_its_own_folders_goes(tmp_path: Path) -> None:
    put_in_place(tmp_path, [("previews/x/page-01.png", b"1"), ("previews/x/page-02.png", b"1"), ("other/a", b"3")])
    put_in_place(tmp_path, [("previews/x/page-01.png", b"2")], ("previews/x",))
    assert everything(tmp_path) == {"previews/x/page-01.png": b"2", "other/a": b"3"}


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
    assert not list(tmp_path.glob(".staging*"))


@pytest.mark.breaks("release/cannot-write")
def test_an_output_folder_that_is_a_file_is_refused(tmp_path: Path) -> None:
    (tmp_path / "packs").write_bytes(b"mine")
    with pytest.raises(Refusal, match="cannot write to"):
        put_in_place(tmp_path / "packs", [("a.pdf", b"1")])
    assert (tmp_path / "packs").read_bytes() == b"mine"


def test_an_interrupt_leaves_no_staging(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def stop(self: Path, data: bytes) -> int:
        raise KeyboardInterrupt

    monkeypatch.setattr(Path, "write_bytes", stop)
    with pytest.raises(KeyboardInterrupt):
        put_in_place(tmp_path, [("a.pdf", b"1")])
    assert everything(tmp_path) == {}
    assert not list(tmp_path.glob(".staging*"))


def test_a_move_that_fails_takes_back_those_before_it(tmp_path: Path) -> None:
    put_in_place(tmp_path, [("a.pdf", b"old")])
    (tmp_path / "c.pdf").mkdir()  # a folder where the third file should go
    with pytest.raises(Refusal, match="cannot write to"):
        put_in_place(tmp_path, [("a.pdf", b"new"), ("b.pdf", b"new"), ("c.pdf", b"new")])
    assert everything(tmp_path) == {"a.pdf": b"old"}
    assert not list(tmp_path.glob(".staging*"))


def test_two_files_of_one_name_are_a_fault_of_ours(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="two files"):
        put_in_place(tmp_path, [("a.pdf", b"1"), ("a.pdf", b"2")])
    assert everything(tmp_path) == {}


def test_what_a_killed_run_left_is_swept_and_a_running_one_is_not(tmp_path: Path) -> None:
    for name, age in ((".staging-1", 7200.0), (".staging-2", 10.0)):
        (tmp_path / name).mkdir()
        then = time.time() - age
        os.utime(tmp_path / name, (then, then))
    put_in_place(tmp_path, [("a.pdf", b"1")])
    assert sorted(p.name for p in tmp_path.iterdir()) == [".staging-2", "a.pdf"]


def test_ctrl_c_while_the_staging_folder_is_removed_leaves_none(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    remove, calls = shutil.rmtree, []

    def interrupted(path: Path, ignore_errors: bool = False) -> None:
        calls.append(path)
        if len(calls) == 1:
            raise KeyboardInterrupt
        remove(path, ignore_errors=ignore_errors)

    monkeypatch.setattr(shutil, "rmtree", interrupted)
    with pytest.raises(KeyboardInterrupt):
        put_in_place(tmp_path / "out", [("a.txt", b"a")])
    assert [p.name for p in (tmp_path / "out").iterdir()] == ["a.txt"]
