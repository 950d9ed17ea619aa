"""A version is a folder that never changes."""

import hashlib
import json
import zipfile
from io import BytesIO
from pathlib import Path

import pytest

from publisher.basics import Refusal
from publisher.release import Release, is_released, make_bundle, place_bundle, settle
from tests.release.dying import Death, everything, failing

FILES = (("stair-a4.pdf", b"%PDF"), ("cut-files/standard/part-a.svg", b"<svg/>"))


def test_the_manifest_names_every_file_with_its_sum() -> None:
    bundle = dict(make_bundle("stair", "1.0.0", FILES).files)
    manifest = json.loads(bundle["manifest.json"])
    assert {f["path"]: f["sha256"] for f in manifest["files"]} == {
        name: hashlib.sha256(data).hexdigest() for name, data in FILES
    }


def test_the_zip_holds_the_files_and_the_manifest() -> None:
    bundle = dict(make_bundle("stair", "1.0.0", FILES).files)
    with zipfile.ZipFile(BytesIO(bundle["stair-1.0.0.zip"])) as box:
        assert box.testzip() is None
        assert set(box.namelist()) == {f"stair-1.0.0/{n}" for n in ("manifest.json", *dict(FILES))}
        assert box.read("stair-1.0.0/stair-a4.pdf") == b"%PDF"


def test_same_files_same_bytes_whatever_the_order() -> None:
    assert make_bundle("stair", "1.0.0", FILES) == make_bundle("stair", "1.0.0", FILES[::-1])


@pytest.mark.keeps("release/version-exists")
def test_a_bundle_is_placed_once_and_the_same_again_is_fine(tmp_path: Path) -> None:
    bundle = make_bundle("stair", "1.0.0", FILES)
    assert not is_released(bundle, tmp_path)
    released = place_bundle(bundle, tmp_path)
    assert released.new and is_released(bundle, tmp_path)
    assert (released.folder / "cut-files/standard/part-a.svg").read_bytes() == b"<svg/>"
    assert place_bundle(bundle, tmp_path) == Release(released.folder, False)
    assert [p.name for p in (tmp_path / "stair").iterdir()] == ["1.0.0"]


@pytest.mark.breaks("release/version-exists")
def test_other_content_under_a_released_version_is_refused(tmp_path: Path) -> None:
    place_bundle(make_bundle("stair", "1.0.0", FILES), tmp_path)
    before = (tmp_path / "stair/1.0.0/stair-a4.pdf").read_bytes()
    other = make_bundle("stair", "1.0.0", (("stair-a4.pdf", b"%PDF-new"), FILES[1]))
    with pytest.raises(Refusal) as caught:
        place_bundle(other, tmp_path)
    assert "stair-a4.pdf" in str(caught.value)
    assert "higher version" in caught.value.findings[0].hint
    assert (tmp_path / "stair/1.0.0/stair-a4.pdf").read_bytes() == before


def test_two_files_of_one_name_are_refused() -> None:
    with pytest.raises(ValueError, match="one name"):
        make_bundle("stair", "1.0.0", (FILES[0], FILES[0]))


BUNDLE = make_bundle("stair", "1.0.0", FILES)


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """A released version."""
    return place_bundle(BUNDLE, tmp_path).folder


@pytest.mark.keeps("release/damaged-copy")
@pytest.mark.parametrize("name", [".DS_Store", "Thumbs.db", "desktop.ini", "cut-files/.DS_Store", "._stair-a4.pdf"])
def test_droppings_of_file_browsers_are_no_content(name: str, copy: Path, tmp_path: Path) -> None:
    (copy / name).write_bytes(b"dropped")
    assert place_bundle(BUNDLE, tmp_path) == Release(copy, False)
    assert (copy / name).exists()


def test_what_somebody_laid_beside_a_release_is_told_and_no_other_content(copy: Path, tmp_path: Path) -> None:
    (copy / "notes.txt").write_bytes(b"mine")
    assert place_bundle(BUNDLE, tmp_path) == Release(copy, False, ("notes.txt",))


def test_the_same_files_zipped_by_another_library_are_the_same_release(copy: Path, tmp_path: Path) -> None:
    path = copy / "stair-1.0.0.zip"
    with zipfile.ZipFile(path) as box:
        members = [(info.filename, box.read(info)) for info in box.infolist()]
    before = path.read_bytes()
    with zipfile.ZipFile(path, "w", zipfile.ZIP_STORED) as box:
        for name, data in members[::-1]:
            box.writestr(name, data)
    assert path.read_bytes() != before
    assert place_bundle(BUNDLE, tmp_path) == Release(copy, False)


@pytest.mark.breaks("release/damaged-copy")
@pytest.mark.parametrize(
    ("name", "data", "said"),
    [
        ("stair-a4.pdf", b"", "stair-a4.pdf has 0 bytes in place of 4"),
        ("stair-a4.pdf", b"%PDX", "stair-a4.pdf has other bytes"),
        ("stair-a4.pdf", None, "stair-a4.pdf is missing"),
        ("manifest.json", b"", "manifest.json has 0 bytes"),
        ("manifest.json", None, "manifest.json is missing"),
        ("stair-1.0.0.zip", b"", "stair-1.0.0.zip has 0 bytes"),
        ("stair-1.0.0.zip", None, "stair-1.0.0.zip is missing"),
    ],
)
def test_a_damaged_copy_is_told_from_other_content(
    name: str, data: bytes | None, said: str, copy: Path, tmp_path: Path
) -> None:
    if data is None:
        (copy / name).unlink()
    else:
        (copy / name).write_bytes(data)
    before = everything(tmp_path)
    with pytest.raises(Refusal) as caught:
        place_bundle(BUNDLE, tmp_path)
    (found,) = caught.value.findings
    assert found.check == "release/damaged-copy"
    assert "with the same content, but the copy" in found.message and said in found.message
    assert everything(tmp_path) == before and not is_released(BUNDLE, tmp_path)


def test_a_zip_with_other_members_is_damaged(copy: Path, tmp_path: Path) -> None:
    with zipfile.ZipFile(copy / "stair-1.0.0.zip", "a") as box:
        box.writestr("stair-1.0.0/more.txt", b"more")
    with pytest.raises(Refusal, match="is damaged"):
        place_bundle(BUNDLE, tmp_path)


@pytest.mark.parametrize("manifest", [None, b"[]", b"[" * 100_000])
def test_a_changed_file_with_no_manifest_is_other_content(manifest: bytes | None, copy: Path, tmp_path: Path) -> None:
    (copy / "stair-a4.pdf").write_bytes(b"%PDX")
    (copy / "manifest.json").unlink() if manifest is None else (copy / "manifest.json").write_bytes(manifest)
    with pytest.raises(Refusal, match="manifest is missing or damaged"):
        place_bundle(BUNDLE, tmp_path)


def test_a_file_fewer_is_other_content_and_a_damaged_one_hides_it_not(copy: Path, tmp_path: Path) -> None:
    (copy / "stair-a4.pdf").write_bytes(b"")
    with pytest.raises(Refusal, match=r"other content \(cut-files/standard/part-a.svg differs\)"):
        place_bundle(make_bundle("stair", "1.0.0", FILES[:1]), tmp_path)


@pytest.mark.parametrize(
    ("there", "said"),
    [
        (
            {"files": [], "inputs": [1], "versions": {"numpy": "2.1", "publisher": "1"}},
            "of the same files, by another version of numpy",
        ),
        ({"files": [], "inputs": [2], "versions": {"numpy": "2.1"}}, "differ)"),
        ({"files": []}, "differ)"),
    ],
)
def test_a_release_made_of_the_same_files_by_other_libraries_is_said_so(
    there: object, said: str, tmp_path: Path
) -> None:
    now = {"files": [], "inputs": [1], "versions": {"numpy": "2.2", "publisher": "1"}}
    before, after = (
        make_bundle("stair", "1.0.0", (("stair-a4.pdf", made), ("packs.json", json.dumps(listed).encode())))
        for made, listed in ((b"old", there), (b"new", now))
    )
    place_bundle(before, tmp_path)
    with pytest.raises(Refusal) as caught:
        place_bundle(after, tmp_path)
    assert caught.value.findings[0].message.endswith(said)


def test_versions_that_differ_by_capitals_are_one(tmp_path: Path) -> None:
    place_bundle(make_bundle("stair", "1.0.0-RC", FILES), tmp_path)
    with pytest.raises(Refusal, match="released before"):
        place_bundle(make_bundle("stair", "1.0.0-rc", FILES[:1]), tmp_path)
    assert [p.name for p in (tmp_path / "stair").iterdir()] == ["1.0.0-RC"]


def test_dying_before_each_change_releases_all_or_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    found = failing(monkeypatch)
    first = make_bundle("stair", "0.9.0", FILES)
    whole = everything(place_bundle(BUNDLE, tmp_path / "counted").folder)
    assert found.count > 15
    seen = set()
    for last in range(1, found.count + 1):
        home = tmp_path / f"{last}" / "stair"
        failing(monkeypatch)
        before = everything(place_bundle(first, home.parent).folder)
        failing(monkeypatch, last)
        try:
            place_bundle(BUNDLE, home.parent)
        except Death:
            failing(monkeypatch)
            settle(home)
            stands = is_released(BUNDLE, home.parent)
            seen.add(stands)
            assert sorted(p.name for p in home.iterdir()) == ["0.9.0", *(["1.0.0"] if stands else [])]
            assert place_bundle(BUNDLE, home.parent).new is not stands
        failing(monkeypatch)
        assert everything(home / "1.0.0") == whole and everything(home / "0.9.0") == before
    assert seen == {True, False}
