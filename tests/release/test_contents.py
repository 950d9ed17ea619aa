"""What lies in a folder or a zip to be proved: all of it, with bounds, and nothing that is no set of packs."""

import io
import zipfile
from pathlib import Path

import pytest

from publisher.basics import Refusal
from publisher.release import contents, contents_of, make_bundle, place_bundle

BUNDLE = make_bundle("stair", "1.0.0", (("stair-a4.pdf", b"pdf"), ("cut-files/standard/part-a.svg", b"svg")))


@pytest.mark.keeps("release/not-an-output")
def test_a_release_and_its_zip_hold_the_same_files(tmp_path: Path) -> None:
    folder = place_bundle(BUNDLE, tmp_path).folder
    (folder / ".DS_Store").write_bytes(b"left")
    (folder / "trials/reach").mkdir(parents=True)
    (folder / "trials/reach/packs.json").write_bytes(b"{}")
    whole = dict(contents_of(folder).files)
    assert whole == dict(BUNDLE.files)
    zipped = dict(contents_of(folder / "stair-1.0.0.zip").files)
    assert zipped == {name: data for name, data in whole.items() if not name.endswith(".zip")}


def _zip(*members: tuple[str, bytes]) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as box:
        for name, data in members:
            box.writestr(name, data)
    return out.getvalue()


@pytest.mark.breaks("release/not-an-output")
@pytest.mark.parametrize(
    ("data", "said"),
    [
        (_zip(("stair/readme.txt", b"hello")), "has no list"),
        (_zip(("stair/packs.json", b"{}"))[:60], "damaged or cut short"),
        (b"PK", "damaged or cut short"),
        (_zip(("stair/packs.json", bytes(401_000_000))), "more than is reasonable"),
    ],
    ids=["no list", "cut", "no zip", "bomb"],
)
def test_a_zip_that_is_no_release_is_refused(data: bytes, said: str, tmp_path: Path) -> None:
    (tmp_path / "stair.zip").write_bytes(data)
    with pytest.raises(Refusal) as caught:
        contents_of(tmp_path / "stair.zip")
    assert [(f.check, said in f.message) for f in caught.value.findings] == [("release/not-an-output", True)]


@pytest.mark.breaks("release/not-an-output")
def test_a_folder_that_nobody_built_or_that_holds_too_much_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "a.txt").write_bytes(b"a")
    with pytest.raises(Refusal, match="has no list"):
        contents_of(tmp_path)
    with pytest.raises(Refusal, match="cannot be read: no such file"):
        contents_of(tmp_path / "away.zip")
    monkeypatch.setattr(contents, "MOST_FILES", 0)
    with pytest.raises(Refusal, match="more files than any set"):
        contents_of(tmp_path)
