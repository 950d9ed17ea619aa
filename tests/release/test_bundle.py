"""A version is a folder that never changes."""

import hashlib
import json
import zipfile
from io import BytesIO
from pathlib import Path

import pytest

from publisher.basics import Refusal
from publisher.release import make_bundle, place_bundle

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
    folder, new = place_bundle(bundle, tmp_path)
    assert new
    assert (folder / "cut-files/standard/part-a.svg").read_bytes() == b"<svg/>"
    assert place_bundle(bundle, tmp_path) == (folder, False)
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
