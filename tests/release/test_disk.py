"""Changes to a disk, each told of before it is made."""

import errno
import os
from pathlib import Path

import pytest

from publisher.release import disk


def test_every_change_is_told_of_before_it_is_made(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    told: list[tuple[str, str, bool]] = []
    monkeypatch.setattr(disk, "before", lambda what, path: told.append((what, path.name, path.exists())))
    disk.make_folder(tmp_path / "a")
    disk.write(tmp_path / "a/b", b"1")
    disk.replace(tmp_path / "a/b", tmp_path / "a/c")
    disk.sync([tmp_path / "a/c"])
    disk.remove_tree(tmp_path / "a")
    assert told == [
        ("make", "a", False),
        ("write", "b", False),
        ("replace", "c", False),
        ("sync", "c", True),
        ("remove", "c", True),
        ("remove", "a", True),
    ]


def test_a_tree_goes_and_what_links_in_it_lead_to_stays(tmp_path: Path) -> None:
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine/file").write_bytes(b"mine")
    (tmp_path / "tree/deep/er").mkdir(parents=True)
    (tmp_path / "tree/deep/file").symlink_to(tmp_path / "mine/file")
    (tmp_path / "tree/folder").symlink_to(tmp_path / "mine")
    disk.remove_tree(tmp_path / "tree")
    disk.remove_tree(tmp_path / "tree")  # nothing is there
    assert sorted(p.name for p in tmp_path.rglob("*")) == ["file", "mine"]


def test_a_folder_with_something_in_it_stays(tmp_path: Path) -> None:
    (tmp_path / "a/b").mkdir(parents=True)
    disk.remove_empty(tmp_path / "a")
    assert (tmp_path / "a/b").exists()
    disk.remove_empty(tmp_path / "a/b")
    assert not (tmp_path / "a/b").exists()


def test_files_and_folders_are_waited_for_and_a_fault_is_heard(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "file").write_bytes(b"1")
    waited: list[int] = []
    monkeypatch.setattr(os, "fsync", waited.append)
    disk.sync([tmp_path / "file", tmp_path])
    assert len(waited) == 2

    def fail(number: int) -> None:
        raise OSError(number, "")

    monkeypatch.setattr(os, "fsync", lambda _: fail(errno.EINVAL))
    disk.sync([tmp_path])  # some disks know no such thing for a folder
    with pytest.raises(OSError, match=str(errno.EINVAL)):
        disk.sync([tmp_path / "file"])
    monkeypatch.setattr(os, "fsync", lambda _: fail(errno.EIO))
    with pytest.raises(OSError, match=str(errno.EIO)):
        disk.sync([tmp_path])


def test_the_digest_of_a_link_or_a_folder_is_none(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"")
    (tmp_path / "link").symlink_to(tmp_path / "file")
    assert (
        disk.digest(tmp_path / "file") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"
    )  # FIPS 180-4: no bytes
    assert [disk.digest(tmp_path / name) for name in ("link", "none", ".")] == [None, None, None]
