"""The files that a spec names: read once, in the order of the spec, and the layout store beside it."""

from collections.abc import Callable
from pathlib import Path

import pytest
from PIL import Image

from publisher.basics import Finding
from publisher.brief import files, limits, read_brief

Maker = Callable[[str], Path]
Findings = Callable[[Path], tuple[Finding, ...]]
STEPS = "steps:\n  - {title: A, say: B, picture: {photo: b.png}}\n  - {title: C, say: D, picture: {photo: a.png}}\n"
STEPS += "  - {title: E, say: F, picture: {photo: b.png}}\n"


def _picture(path: Path, size: tuple[int, int] = (8, 6)) -> None:
    Image.new("L", size, 128).save(path)


def test_files_come_in_the_order_of_the_spec_and_once(make_folder: Maker, good: str) -> None:
    folder = make_folder(good + STEPS)
    _picture(folder / "a.png")
    _picture(folder / "b.png", (9, 5))
    brief = read_brief(folder)
    assert brief.findings == ()
    assert [f.name for f in brief.files] == ["b.png", "a.png"]
    picture = brief.file("b.png")
    assert picture is not None
    assert (picture.kind, picture.width_px, picture.height_px) == ("picture", 9, 5)
    assert picture.data == (folder / "b.png").read_bytes()
    assert picture.place is not None
    assert picture.place.pointer == "/steps/0/picture/photo"


def test_the_layout_store_is_read_when_there_is_one(make_folder: Maker, good: str) -> None:
    folder = make_folder(good)
    assert read_brief(folder).file("layouts.json") is None
    (folder / "layouts.json").write_bytes(b"{}")
    store = read_brief(folder).file("layouts.json")
    assert store is not None
    assert (store.kind, store.data, store.place) == ("layouts", b"{}", None)


def test_a_layout_store_that_is_a_link_out_is_refused(make_folder: Maker, good: str, findings_of: Findings) -> None:
    folder = make_folder(good)
    (folder.parent / "other.json").write_bytes(b"{}")
    (folder / "layouts.json").symlink_to("../other.json")
    assert [f.check for f in findings_of(folder)] == ["brief/path-leaves-folder"]


def test_every_missing_file_is_reported(make_folder: Maker, good: str, findings_of: Findings) -> None:
    found = findings_of(make_folder(good + STEPS))
    assert [(f.check, f.place.line) for f in found if f.place] == [("brief/missing-file", 12), ("brief/missing-file", 13),
                                                                  ("brief/missing-file", 14)]  # fmt: skip


def test_all_files_together_are_bounded(
    make_folder: Maker, good: str, findings_of: Findings, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = make_folder(good + STEPS)
    _picture(folder / "a.png")
    _picture(folder / "b.png")
    size = (folder / "a.png").stat().st_size
    monkeypatch.setattr(limits, "FILES_BYTES", 2 * size)
    assert findings_of(folder) == ()
    monkeypatch.setattr(limits, "FILES_BYTES", 2 * size - 1)
    (finding,) = findings_of(folder)
    assert finding.check == "brief/file-too-big"
    assert "together" in finding.message


def test_a_drawing_and_a_font_keep_their_bytes(make_folder: Maker, good: str) -> None:
    spec = good.replace("shape: disc, with: {radius: 20 mm}", "drawing: {file: art/sign.svg, id: outline}")
    folder = make_folder(spec)
    (folder / "art").mkdir()
    (folder / "art" / "sign.svg").write_bytes(b"<svg/>")
    (drawing,) = read_brief(folder).files
    assert (drawing.name, drawing.kind, drawing.data) == ("art/sign.svg", "drawing", b"<svg/>")
    assert files.LAYOUTS == "layouts.json"
