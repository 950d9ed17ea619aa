"""The commands as a user runs them, in this process: what is printed, what the exit code is."""

import shutil
from collections.abc import Callable
from contextlib import redirect_stderr, redirect_stdout
from dataclasses import dataclass
from functools import cache
from io import StringIO
from pathlib import Path

import pytest

from publisher.brief import read_brief
from publisher.cli import main
from publisher.pages import Pack
from publisher.pipeline import Worked, compose_packs, work
from tests.once import made_once, shared

ROOT = Path(__file__).parents[2]
SMALL = """\
format: 2
title: Bollard
version: 1.0.0
designer: Ebbwater Patterns
licence: CC-BY-NC-4.0
use: trace
sizes: {board: 5 mm, radius: 20 mm}
boards: {foam: {thickness: board, sheets: [20 x 30 in]}}
parts:
  disc: {name: Disc, board: foam, count: 3, shape: disc, with: {radius: radius}}
papers: [a4, letter]
steps: [{title: Print and cut, stage: print, say: Print page 2 first., parts: [disc]}]
"""
TOO_LARGE = "radius: 900 mm"  # in place of 20 mm: larger than the sheet


@dataclass(frozen=True)
class Run:
    """What a command left behind."""

    code: int
    out: str
    err: str


@pytest.fixture
def publisher(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Callable[..., Run]:
    """Run a command line: ``publisher("build", "designs")``."""

    def run(*words: str | Path) -> Run:
        code = exit_code(monkeypatch, *words)
        said = capsys.readouterr()
        assert "Traceback" not in said.err
        return Run(code, said.out, said.err)

    return run


def exit_code(patch: pytest.MonkeyPatch, *words: str | Path) -> int:
    """Run a command line in this process; return its exit code."""
    patch.setattr("sys.argv", ["publisher", *(str(w) for w in words)])
    try:
        main()
    except SystemExit as leave:
        return int(leave.code or 0)
    return 0


@pytest.fixture(scope="session")
def packs(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the packs of every demo, built once in a run, without a word on stderr. Nobody writes into it."""

    def build(slug: str, room: Path) -> Path:
        said = StringIO()
        with pytest.MonkeyPatch.context() as patch, redirect_stderr(said), redirect_stdout(StringIO()):
            code = exit_code(patch, "build", ROOT / "designs" / slug, "--out", room)
        assert (code, said.getvalue()) == (0, "")
        return room / slug

    slugs = sorted(spec.parent.name for spec in (ROOT / "designs").glob("*/spec.yaml"))
    return made_once(shared(tmp_path_factory) / "packs", slugs, build)


@cache
def demo(slug: str) -> Worked:
    """A demo as written, worked out once in a process."""
    return work(read_brief(ROOT / "designs" / slug))


@cache
def demo_pack(slug: str, paper: str) -> Pack:
    """A demo's pack, composed once in a process."""
    return compose_packs(demo(slug), (paper,))[0][0]


@pytest.fixture
def designs(tmp_path: Path) -> Path:
    """A folder with a copy of the demo designs."""
    shutil.copytree(ROOT / "designs", tmp_path / "designs")
    return tmp_path / "designs"


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    """A folder with the smallest design, “bollard”: where any design would do, it costs a fifth of a demo."""
    return small_design(tmp_path / "shelf", "bollard").parent


def small_design(shelf: Path, slug: str, more: str = "") -> Path:
    """Put the smallest design on a shelf, with more lines to its spec; return its folder."""
    folder = shelf / slug
    folder.mkdir(parents=True)
    (folder / "spec.yaml").write_text(SMALL + more, encoding="utf-8")
    return folder


def changed(folder: Path, old: str, new: str) -> None:
    """Put other words into a design's spec, once."""
    spec = folder / "spec.yaml"
    text = spec.read_text(encoding="utf-8")
    assert old in text
    spec.write_text(text.replace(old, new, 1), encoding="utf-8")


def everything(folder: Path) -> dict[str, bytes]:
    """Return the bytes of every file below a folder."""
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}
