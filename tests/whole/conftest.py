"""The commands as a user runs them, in this process: what is printed, what the exit code is."""

import shutil
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from publisher.cli import main

ROOT = Path(__file__).parents[2]


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
        monkeypatch.setattr("sys.argv", ["publisher", *(str(w) for w in words)])
        code = 0
        try:
            main()
        except SystemExit as leave:
            code = int(leave.code or 0)
        said = capsys.readouterr()
        assert "Traceback" not in said.err
        return Run(code, said.out, said.err)

    return run


@pytest.fixture
def designs(tmp_path: Path) -> Path:
    """A folder with a copy of the demo designs."""
    shutil.copytree(ROOT / "designs", tmp_path / "designs")
    return tmp_path / "designs"


def everything(folder: Path) -> dict[str, bytes]:
    """Return the bytes of every file below a folder."""
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}
