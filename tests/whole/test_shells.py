"""Terminals and shells: completion, colours, narrow windows, files and paths of other systems."""

import os
import pty
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from publisher.cli import COMMANDS
from tests.whole.conftest import SMALL, Run, changed

Publisher = Callable[..., Run]
ROOT = Path(__file__).parents[2]
# how a shell is asked what it would offer after the words; zsh offers through a function of its own, here one that prints
ASK = {
    "bash": 'eval "$({source})"; '
    'COMP_WORDS=({words}); COMP_CWORD={last}; _publisher_completion publisher; printf "%s\\n" "${{COMPREPLY[@]}}"',
    "zsh": 'compdef() {{}}; _describe() {{ print -l -- "${{(@P)3}}" }}; compadd() {{ print -l -- "${{(@P)@[-1]}}" }}; '
    'eval "$({source})"; words=({words}); CURRENT=$(({last} + 1)); _publisher_completion',
    "fish": '{source} | source; complete -C "{words}"',
}


@pytest.fixture
def path(tmp_path: Path) -> dict[str, str]:
    """An environment where the command is found by its name."""
    command = tmp_path / "bin" / "publisher"
    command.parent.mkdir()
    command.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m publisher "$@"\n')
    command.chmod(0o755)
    home = {"HOME": str(tmp_path), "PYTHONPATH": str(ROOT)}
    return {**os.environ, **home, "PATH": f"{command.parent}{os.pathsep}{os.environ['PATH']}"}


@pytest.mark.parametrize("shell", ASK)
def test_shells_complete_commands_and_names(shell: str, path: dict[str, str]) -> None:
    if shutil.which(shell) is None:
        pytest.skip(f"{shell} is not installed")
    source = f"env _PUBLISHER_COMPLETE={shell}_source publisher"

    def offered(words: str) -> list[str]:
        asked = ASK[shell].format(source=source, words=words, last=len(words.split()) - 1)
        plain = {"bash": ["--norc"], "zsh": ["-f"], "fish": ["--no-config"]}[shell]
        run = subprocess.run([shell, *plain, "-c", asked], env=path, capture_output=True, text=True, check=False)
        assert run.stderr == ""
        return [line.split("\t")[0].split(":")[0] for line in run.stdout.split("\n") if line]

    assert offered("publisher sh") == ["shapes", "show"]
    assert offered("publisher words to") == ["tools"]


@pytest.mark.parametrize(("told", "coloured"), [({"NO_COLOR": "1"}, False), ({"NO_COLOR": ""}, True)])
def test_colours_are_for_terminals_that_want_them(told: dict[str, str], coloured: bool, tmp_path: Path) -> None:
    ours, theirs = pty.openpty()
    words = [sys.executable, "-m", "publisher", "check", str(tmp_path)]
    told = {**os.environ, "TERM": "xterm", **told}
    run = subprocess.run(words, cwd=ROOT, env=told, stdin=theirs, stdout=theirs, stderr=theirs, check=False)
    said = os.read(ours, 4096)
    os.close(theirs)
    os.close(ours)
    assert run.returncode == 2 and b"error" in said
    assert (b"\x1b[31m" in said) is coloured


@pytest.mark.parametrize("columns", ["20", "40", "300"])
def test_help_reads_in_any_window(columns: str, publisher: Publisher, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", columns)
    for words in ((), *((name,) for name in COMMANDS)):
        run = publisher(*words, "--help")
        assert run.code == 0
        told = run.out.split("Options:")[1].splitlines()
        assert max(map(len, told)) <= max(50, min(int(columns), 100))


def test_a_spec_with_the_line_ends_and_the_mark_of_another_system_is_the_same_design(
    publisher: Publisher, shelf: Path
) -> None:
    plain = publisher("sizes", shelf / "bollard", "--json")
    spec = shelf / "bollard" / "spec.yaml"
    spec.write_bytes(b"\xef\xbb\xbf" + spec.read_bytes().replace(b"\n", b"\r\n"))
    assert publisher("sizes", shelf / "bollard", "--json") == plain
    spec.write_bytes(spec.read_bytes().replace(b"radius}}", b"radios}}"))
    wrong = publisher("check", shelf / "bollard")
    assert wrong.code == 1 and f"spec.yaml:10:{SMALL.splitlines()[9].index('radius}}') + 1}: error" in wrong.err


def test_a_path_of_another_system_is_said(publisher: Publisher, shelf: Path) -> None:
    changed(shelf / "bollard", "shape: disc, with: {radius: radius}", "drawing: {file: 'art\\disc.svg'}")
    run = publisher("check", shelf / "bollard")
    assert run.code == 1 and "backslash" in run.err and "write “/”" in run.err


def test_exit_codes_are_those_of_the_table(publisher: Publisher) -> None:
    """One table says what the codes mean; the help has its short form."""
    page = (ROOT / "docs/placing.md").read_text(encoding="utf-8")
    rows = [line.split("|")[1].strip() for line in page.splitlines() if line.startswith("| ") and line[2].isdigit()]
    told = publisher("--help").out.split("Exit codes:")[1].split("Options:")[0].splitlines()
    assert rows == [line.split()[0] for line in told if line.strip()] == ["0", "1", "2", "3", "130", "141"]
