"""Paths of a spec: nothing outside the folder is read, whatever is written and whatever the disk holds."""

import os
from pathlib import Path

import pytest

from publisher.basics import Finding, Place
from publisher.brief.files_inside import path_finding, read_inside

PLACE = Place("spec.yaml", 3, 7)


def _check(result: bytes | Finding) -> str:
    assert isinstance(result, Finding)
    assert result.place == PLACE
    assert result.hint
    return result.check.removeprefix("brief/")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    made = tmp_path / "design"
    (made / "pictures").mkdir(parents=True)
    (made / "pictures" / "door.jpg").write_bytes(b"inside")
    (tmp_path / "secret.jpg").write_bytes(b"outside")
    return made


@pytest.mark.parametrize(
    "name",
    ["../secret.jpg", "/etc/passwd", "pictures/../../secret.jpg", "~/secret.jpg", "C:/secret.jpg", "c:secret.jpg",
     "\\\\host\\share\\a.jpg", "..\\secret.jpg", "a/.."],
)  # fmt: skip
def test_paths_that_lead_out_are_refused_unread(name: str, folder: Path) -> None:
    assert _check(read_inside(folder, name, 100, PLACE)) == "path-leaves-folder"


@pytest.mark.parametrize(
    "name",
    ["pictures\\door.jpg", "pictures//door.jpg", "./door.jpg", "pictures/./door.jpg", "door.jpg/", " door.jpg", "door.jpg.",
     "CON", "nul.jpg", "pictures/com1.png", "door:b.jpg", "what?.jpg", "a*b.jpg", "a\x00b.jpg", "a\nb.jpg", "x" * 201],
)  # fmt: skip
def test_paths_that_not_every_computer_reads_are_refused(name: str, folder: Path) -> None:
    assert _check(read_inside(folder, name, 100, PLACE)) == "path-form"


@pytest.mark.parametrize(
    "name", ["door.jpg", "pictures/door.jpg", "a b/c-d_e.jpg", "Brücke.jpg", "..door.jpg", "icons.jpg"]
)
def test_plain_paths_pass(name: str) -> None:
    assert path_finding(name, PLACE) is None


def test_a_file_inside_is_read(folder: Path) -> None:
    assert read_inside(folder, "pictures/door.jpg", 6, PLACE) == b"inside"
    assert _check(read_inside(folder, "pictures/door.jpg", 5, PLACE)) == "file-too-big"


def test_links_are_followed_only_inside(folder: Path) -> None:
    (folder / "in.jpg").symlink_to("pictures/door.jpg")
    (folder / "out.jpg").symlink_to("../secret.jpg")
    (folder / "away").symlink_to(folder.parent)
    (folder / "loop.jpg").symlink_to("loop.jpg")
    (folder / "dangling.jpg").symlink_to("nothing.jpg")
    assert read_inside(folder, "in.jpg", 100, PLACE) == b"inside"
    assert _check(read_inside(folder, "out.jpg", 100, PLACE)) == "path-leaves-folder"
    assert _check(read_inside(folder, "away/secret.jpg", 100, PLACE)) == "path-leaves-folder"
    assert _check(read_inside(folder, "loop.jpg", 100, PLACE)) in ("unreadable-file", "missing-file")
    assert _check(read_inside(folder, "dangling.jpg", 100, PLACE)) == "missing-file"


def test_a_folder_reached_by_a_link_is_read(folder: Path) -> None:
    link = folder.parent / "link"
    link.symlink_to(folder)
    assert read_inside(link, "pictures/door.jpg", 100, PLACE) == b"inside"


def test_names_outside_are_not_told(folder: Path) -> None:
    """A hint proposes names of the folder, never of another one that a link leads to."""
    (folder / "away").symlink_to(folder.parent)
    result = read_inside(folder, "away/secrets.jpg", 100, PLACE)
    assert _check(result) == "path-leaves-folder"
    assert isinstance(result, Finding)
    assert "secret.jpg" not in result.hint.replace("secrets.jpg", "")


def test_capital_letters_must_be_those_of_the_disk(folder: Path) -> None:
    assert _check(read_inside(folder, "Pictures/door.jpg", 100, PLACE)) == "file-name-case"
    assert _check(read_inside(folder, "pictures/Door.jpg", 100, PLACE)) == "file-name-case"


def test_a_missing_file_proposes_a_near_name(folder: Path) -> None:
    result = read_inside(folder, "pictures/dor.jpg", 100, PLACE)
    assert _check(result) == "missing-file"
    assert isinstance(result, Finding)
    assert "“door.jpg”" in result.hint


def test_only_ordinary_files_are_opened(folder: Path) -> None:
    """A pipe would make the tool wait for ever, a folder has no bytes."""
    os.mkfifo(folder / "pipe.jpg")
    assert _check(read_inside(folder, "pipe.jpg", 100, PLACE)) == "unreadable-file"
    assert _check(read_inside(folder, "pictures", 100, PLACE)) == "unreadable-file"


def test_a_file_that_may_not_be_opened(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> int:
        raise PermissionError(13, "no")

    monkeypatch.setattr(os, "open", refuse)
    assert _check(read_inside(folder, "pictures/door.jpg", 100, PLACE)) == "unreadable-file"
