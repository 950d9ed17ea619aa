"""What was read from a folder, kept as one value that gives the brief again without the folder."""

import pickle
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from PIL import Image

from publisher.brief import brief_of, read_brief

Maker = Callable[[str], Path]
STEPS = (
    "steps:\n  - {title: A, say: B, picture: {photo: photo.png}}\n  - {title: C, say: D, picture: {photo: gone.png}}\n"
)


@pytest.fixture
def folder(make_folder: Maker, good: str) -> Path:
    """A folder with a picture that is there, one that is not, a store of layouts, and a file that nobody names."""
    made = make_folder(good + STEPS)
    Image.new("L", (8, 6), 128).save(made / "photo.png")
    (made / "layouts.json").write_bytes(b"{}")
    (made / "notes.txt").write_text("not asked for")
    return made


def test_every_file_that_was_opened_is_in_it_and_no_other(folder: Path) -> None:
    inputs = read_brief(folder, (("board", "6 mm"),), ("a3",)).inputs
    assert [f.name for f in inputs.files] == ["layouts.json", "photo.png", "spec.yaml"]
    assert all(f.data == (folder / f.name).read_bytes() for f in inputs.files)
    assert [name for name, _ in inputs.unread] == ["gone.png"]
    assert (inputs.slug, inputs.sets, inputs.papers) == ("landing", (("board", "6 mm"),), ("a3",))
    assert dict(inputs.versions).keys() >= {"publisher", "reportlab", "shapely"}


def test_inputs_give_the_brief_again_when_the_folder_is_gone(folder: Path) -> None:
    brief = read_brief(folder)
    assert [f.check for f in brief.findings] == ["brief/missing-file"]
    handed_on = pickle.loads(pickle.dumps(brief.inputs))
    shutil.rmtree(folder)
    assert brief_of(handed_on) == brief


def test_a_name_that_cannot_be_read_twice_is_found_at_both_places(folder: Path) -> None:
    spec = folder / "spec.yaml"
    spec.write_text(spec.read_text() + "  - {title: E, say: F, picture: {photo: gone.png}}\n")
    brief = read_brief(folder)
    lines = [f.place.line for f in brief.findings if f.place]
    assert len(lines) == len(set(lines)) == 2
    assert brief_of(brief.inputs) == brief


def test_where_the_folder_stands_does_not_change_the_digest(folder: Path, tmp_path: Path) -> None:
    shutil.copytree(folder, tmp_path / "else" / folder.name)
    assert read_brief(tmp_path / "else" / folder.name).inputs.digest == read_brief(folder).inputs.digest
