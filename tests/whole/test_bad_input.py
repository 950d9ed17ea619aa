"""Bad input: one clear message each, the right exit code, no trace, earlier output untouched."""

import errno
import json
import os
import signal
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tests.whole.conftest import Run, changed, everything, small_design

ROOT = Path(__file__).parents[2]
Publisher = Callable[..., Run]


def test_an_empty_folder_and_no_folder(publisher: Publisher, tmp_path: Path) -> None:
    for folder in (tmp_path, tmp_path / "nowhere"):
        run = publisher("build", folder)
        assert run.code == 2
        assert str(folder) in run.err


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"\xff\xfe title", "UTF-8"),
        (b"title: [", "spec.yaml:"),
        (b"", "empty"),
        (b"a: &a [*a]", "spec.yaml:1:"),
    ],
)
def test_specs_that_cannot_be_read(publisher: Publisher, tmp_path: Path, content: bytes, words: str) -> None:
    folder = tmp_path / "bad"
    folder.mkdir()
    (folder / "spec.yaml").write_bytes(content)
    run = publisher("build", folder, "--out", tmp_path / "out")
    assert run.code in {1, 2}
    assert words in run.err
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("title: {en: Toll house, de: Zollhaus}", "title: [1, 2]", "title"),
        ("title: {en: Toll house, de: Zollhaus}", "title: " + "x" * 10_000, "title"),
        ("tools: [craft_knife", "tols: [craft_knife", "tools"),
        ("shape: wall_panel", "shape: wal_panel", "wall_panel"),
        ("board: 5 mm", "board: 0 mm", "board"),
        ("length: 140 mm", "length: 10 m", "length"),
        ("length: 140 mm", "length: 10000 mm", "at most 5000 mm"),
        ("length: 140 mm", "length: span / 0", "zero"),
        ("length: 140 mm", "length: lenght + 1 mm", "lenght"),
        ("length: 140 mm", "length: span + 30", "write 30 mm"),
        ("acts: [glue]", "picture: {photo: missing.jpg}", "missing.jpg"),
        ("acts: [glue]", "picture: {photo: ../other.jpg}", "folder"),
        ("width: door_width, height: 50 mm", "width: door_width, height: 150 mm", "door"),
        ("inset: past, play", "inset: 6 mm, play", "inset"),
    ],
)
def test_mistakes_in_a_spec(
    publisher: Publisher, designs: Path, tmp_path: Path, old: str, new: str, words: str
) -> None:
    changed(designs / "toll-house", old, new)
    run = publisher("build", designs / "toll-house", "--paper", "a4", "--out", tmp_path / "out")
    assert run.code == 1, run.err
    assert words in run.err
    assert "spec.yaml:" in run.err
    assert not (tmp_path / "out").exists()


DISC = """format: 2
title: Disc
version: 1.0.0
use: paste
boards: {foam: {thickness: 5 mm, sheets: [20 x 30 in]}}
parts:
  one: {name: One, board: foam, count: 1, shape: disc, with: {SIZES}}
"""


@pytest.mark.parametrize(
    ("sizes", "column", "found", "do"),
    [
        ("radius: 6000 mm", 71, "radius of shape disc is 6000 mm; it must be at most 5000 mm", "or check its unit"),
        ("radius: 4000 mm", 71, "part “one” is 8000 mm long; it must be at most 5000 mm", "check the sizes and their units"),
        ("radius: 20 mm, radius2: 3 mm", 78, "the shape “disc” has no size “radius2”; its sizes are “radius”", "did you mean “radius”?"),
    ],
)  # fmt: skip
def test_each_wrong_size_is_told_with_what_is_allowed_and_what_to_do(
    publisher: Publisher, tmp_path: Path, sizes: str, column: int, found: str, do: str
) -> None:
    (tmp_path / "disc").mkdir()
    (tmp_path / "disc" / "spec.yaml").write_text(DISC.replace("SIZES", sizes))
    run = publisher("check", tmp_path / "disc")
    assert run.code == 1
    assert f"spec.yaml:7:{column}: error: {found}\n" in run.err
    assert do in run.err
    assert run.err.count("error: ") == 1


def test_a_million_layers(publisher: Publisher, designs: Path, tmp_path: Path) -> None:
    changed(designs / "lock-stair", "layers: boards_high - 2", "layers: 1000000")
    run = publisher("build", designs / "lock-stair", "--out", tmp_path / "out")
    assert run.code == 1
    assert "layers" in run.err


def test_a_picture_that_is_not_one(publisher: Publisher, designs: Path, tmp_path: Path) -> None:
    (designs / "toll-house/wall.jpg").write_bytes(b"%!PS-Adobe-3.0 EPSF-3.0\n")
    changed(designs / "toll-house", "acts: [glue]", "picture: {photo: wall.jpg}")
    run = publisher("build", designs / "toll-house", "--out", tmp_path / "out")
    assert run.code == 1
    assert "wall.jpg" in run.err


def test_unknown_papers_and_variants(publisher: Publisher, designs: Path) -> None:
    run = publisher("build", designs / "quay", "--paper", "a44")
    assert run.code == 2
    assert "a4" in run.err
    run = publisher("build", designs / "quay", "--variant", "huge")
    assert run.code == 2
    assert "standard" in run.err
    assert publisher("build", designs / "quay", "--set", "board").code == 2


def test_an_output_folder_that_is_a_file(publisher: Publisher, shelf: Path, tmp_path: Path) -> None:
    (tmp_path / "out").write_text("mine")
    run = publisher("build", shelf / "bollard", "--paper", "a4", "--out", tmp_path / "out")
    assert run.code == 2
    assert "cannot write" in run.err
    assert (tmp_path / "out").read_text() == "mine"


def test_a_read_only_output_folder(
    publisher: Publisher, shelf: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Rights are simulated, since the superuser may write everywhere."""
    out = tmp_path / "out"
    out.mkdir()
    make = Path.mkdir

    def refused(self: Path, *args: Any, **more: Any) -> None:
        if out in self.parents:
            raise PermissionError(errno.EACCES, "Permission denied")
        make(self, *args, **more)

    monkeypatch.setattr(Path, "mkdir", refused)
    run = publisher("build", shelf / "bollard", "--paper", "a4", "--out", out)
    assert run.code == 2
    assert "cannot write" in run.err
    assert "permission denied" in run.err
    assert list(out.iterdir()) == []


def test_a_full_disk(publisher: Publisher, shelf: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    out = tmp_path / "out"
    assert publisher("build", shelf / "bollard", "--paper", "a4", "--out", out).code == 0
    before = everything(out)
    write = Path.write_bytes

    def full(self: Path, data: bytes) -> int:
        if self.suffix == ".svg":
            write(self, data[:10])
            raise OSError(errno.ENOSPC, "No space left on device")
        return write(self, data)

    monkeypatch.setattr(Path, "write_bytes", full)
    changed(shelf / "bollard", "version: 1.0.0", "version: 1.0.1")
    for command in (("build", "--paper", "a4"), ("release",)):  # one exit code for all
        run = publisher(*command, shelf / "bollard", "--out", out)
        assert run.code == 2
        assert "no space left on device" in run.err
        assert everything(out) == before


@pytest.mark.skipif(os.name == "nt", reason="signals are sent otherwise there")
def test_an_interrupt_puts_nothing_in_place(shelf: Path, designs: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    folders = [str(shelf / "bollard"), str(designs / "lock-stair")]  # the second takes long enough to be stopped in it
    # a process that is started in the background does not hear Ctrl-C, nor do its children: this one shall, wherever tests run
    hears = "from signal import SIGINT, default_int_handler, signal; signal(SIGINT, default_int_handler)"
    process = subprocess.Popen(
        [sys.executable, "-c", f"{hears}; from publisher.cli import main; main()", "build", *folders, "--out", str(out)],
        cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
    )  # fmt: skip
    assert process.stderr is not None
    # it is said when the first pack is in place and others are in the making
    assert process.stderr.readline() == "1 of 2: bollard built\n"
    process.send_signal(signal.SIGINT)
    _, err = process.communicate(timeout=60)
    assert process.returncode == 130
    assert err == "stopped; put in place before that: bollard\n"
    assert not list(out.rglob(".publisher*"))
    for pdf in out.rglob("*.pdf"):  # what had been finished before is whole
        assert pdf.read_bytes().rstrip().endswith(b"%%EOF")


def test_our_own_fault_is_short_and_says_how_to_see_more(
    publisher: Publisher, designs: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(*_: object) -> None:
        raise ZeroDivisionError("planted")

    monkeypatch.setattr("publisher.pipeline.trying.make_parts", fail)
    run = publisher("build", designs / "quay")
    assert run.code == 3
    assert "PUBLISHER_TRACE=1" in run.err


def test_one_unreadable_design_does_not_stop_the_others(publisher: Publisher, shelf: Path, tmp_path: Path) -> None:
    folders = [small_design(shelf, "anchor"), shelf / "bollard"]
    (shelf / "anchor/spec.yaml").write_bytes(b"title: [")
    run = publisher("build", *folders, "--paper", "a4", "--variant", "standard", "--out", tmp_path / "out")
    assert run.code == 2
    assert "anchor/spec.yaml" in run.err
    assert (tmp_path / "out/bollard/bollard-1.0.0-foam-5mm-a4.pdf").exists()


@pytest.mark.breaks("design/variant-name-taken")
def test_a_variant_called_standard_is_refused(publisher: Publisher, designs: Path, tmp_path: Path) -> None:
    changed(designs / "lock-stair", "  wide_bases: {", "  standard: {")
    run = publisher("build", designs / "lock-stair", "--paper", "a4", "--out", tmp_path / "out")
    assert run.code == 1
    assert "design/variant-name-taken" in run.err
    assert not (tmp_path / "out").exists()


def test_a_size_set_twice_is_asked_about(publisher: Publisher, designs: Path) -> None:
    run = publisher("check", designs / "quay", "--set", "board=5 mm", "--set", "board=6 mm")
    assert run.code == 2
    assert "set twice" in run.err


@pytest.mark.breaks("design/unknown-variant")
def test_a_variant_that_one_design_lacks_does_not_stop_the_others(
    publisher: Publisher, shelf: Path, tmp_path: Path
) -> None:
    small_design(shelf, "capstan", "variants: {wide: {title: Wide, sizes: {radius: 30 mm}}}\n")
    run = publisher("build", shelf, "--variant", "wide", "--paper", "a4", "--out", tmp_path / "out", "--json")
    assert run.code == 2
    assert "bollard has no variant" in run.err
    assert [p["slug"] for p in json.loads(run.out)["packs"]] == ["capstan"]
