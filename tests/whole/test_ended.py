"""How commands end before their time: stopped, killed, with nobody who takes their output; and what stands in place then."""

import errno
import json
import os
import random
import re
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from io import StringIO
from pathlib import Path

import pytest

from publisher import api
from tests.release.dying import failing
from tests.searches.profile import PROFILE, rounds, seeds
from tests.whole.conftest import Run, changed, everything, small_design

ROOT = Path(__file__).parents[2]
Publisher = Callable[..., Run]
posix = pytest.mark.skipif(os.name == "nt", reason="signals and full devices are others there")


def started(*words: str | Path, out: int | None = None) -> "subprocess.Popen[str]":
    """Start a command that hears Ctrl-C, wherever tests run: one that is started in the background does not. It says when its
    first line of ours begins: what comes before is Python's own."""
    begins = (
        "from signal import SIGINT, default_int_handler, signal; signal(SIGINT, default_int_handler); "
        "from publisher.__main__ import main; import os; os.write(2, b'begins\\n'); main()"
    )
    run = subprocess.Popen(
        [sys.executable, "-c", begins, *map(str, words)],
        cwd=ROOT, stdout=subprocess.PIPE if out is None else out, stderr=subprocess.PIPE, text=True,
    )  # fmt: skip
    assert run.stderr is not None and run.stderr.readline() == "begins\n"
    return run


@posix
@pytest.mark.search
@seeds(3, 40)
def test_a_signal_in_the_first_half_second_is_one_line(seed: int, shelf: Path, tmp_path: Path) -> None:
    """Whatever is being imported then."""
    number = (signal.SIGINT, signal.SIGTERM)[seed % 2]
    run = started("build", shelf / "bollard", "--out", tmp_path / "out")
    time.sleep(random.Random(seed).uniform(0.0, 0.5))
    run.send_signal(number)
    _, err = run.communicate(timeout=60)
    assert (run.returncode, err) in ((130, "stopped\n"), (130, "stopped; nothing was put in place\n"))
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize(("words", "code"), [(("shapes",), 0), (("check", "no-such-folder"), 2)])
def test_a_command_that_frees_nothing_at_its_end_does_what_was_asked_for_then(
    words: tuple[str, ...], code: int
) -> None:
    """Output into a pipe stands whole, the exit code is the command's, and what others want done at the end is done."""
    late = "import atexit, publisher.cli; run = publisher.cli.main\n"
    late += "def main(): atexit.register(print, 'asked for', flush=True); run()\n"
    late += "publisher.cli.main = main; from publisher.__main__ import command; command()"
    done = subprocess.run([sys.executable, "-c", late, *words], cwd=ROOT, capture_output=True, text=True, check=False)
    plain = subprocess.run(
        [sys.executable, "-m", "publisher", *words], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert (done.returncode, plain.returncode) == (code, code)
    assert done.stdout == plain.stdout + "asked for\n" and done.stderr == plain.stderr


@posix
@pytest.mark.parametrize("words", [("shapes",), ("build", "--help")])
def test_a_reader_that_leaves_ends_a_command_in_silence(words: tuple[str, ...]) -> None:
    reads, writes = os.pipe()
    os.close(reads)
    run = started(*words, out=writes)
    os.close(writes)
    _, err = run.communicate(timeout=60)
    assert (run.returncode, err) == (141, "")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no device that is always full")
def test_a_full_output_is_said_with_what_was_put_in_place(shelf: Path, tmp_path: Path) -> None:
    with Path("/dev/full").open("w") as full:
        run = started("build", shelf / "bollard", "--paper", "a4", "--out", tmp_path / "out", out=full.fileno())
        _, err = run.communicate(timeout=60)
    said = "cannot write the output: no space left on device; put in place before that: bollard\n"
    assert (run.returncode, err) == (2, said)
    assert (tmp_path / "out/bollard/packs.json").exists()


FULL = (
    ("build", "FOLDER", "--out", "OUT", "--json"),
    ("check", "FOLDER"),
    ("measure", "--across", "100", "--down", "100"),
    ("release", "FOLDER", "--out", "OUT"),
    ("schema",),
    ("shapes",),
    ("show", "FOLDER", "--stage", "sizes"),
    ("sizes", "FOLDER"),
    ("yield", "FOLDER"),
    ("--version",),
)
LOST = (
    *((errno.ENOSPC, words) for words in FULL),
    (errno.EPIPE, ("build", "FOLDER", "--paper", "a4", "--out", "OUT")),
    (errno.EPIPE, ("sizes", "FOLDER")),
    (errno.EIO, ("sizes", "FOLDER")),
)


@pytest.mark.parametrize(("number", "words"), LOST)
def test_every_command_ends_alike_when_its_output_is_lost(
    words: tuple[str, ...],
    number: int,
    publisher: Publisher,
    shelf: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    class Lost(StringIO):
        def write(self, _: str) -> int:
            raise OSError(number, os.strerror(number))

    monkeypatch.setattr(sys, "stdout", Lost())
    given = [str(shelf / "bollard") if w == "FOLDER" else str(tmp_path / "out") if w == "OUT" else w for w in words]
    run = publisher(*given)
    assert run.code == (141 if number == errno.EPIPE else 2)
    placed = words[0] in ("build", "release")
    assert ("put in place before that: bollard" in run.err) is placed
    assert (run.err == "") is (number == errno.EPIPE and not placed)


def test_an_interrupt_while_files_are_put_in_place_says_what_stands_there(
    publisher: Publisher, shelf: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    words = ("build", shelf / "bollard", "--paper", "a4", "--out", tmp_path / "out")
    built = api.build(api.read(shelf / "bollard", papers=("a4",)))
    monkeypatch.setattr("publisher.batch.build", lambda *_, **__: built)
    with monkeypatch.context() as patch:
        found = failing(patch)
        assert publisher(*words).code == 0
    whole, said = everything(tmp_path / "out"), set()
    for last in range(1, found.count + 1, 4):
        shutil.rmtree(tmp_path / "out", ignore_errors=True)
        with monkeypatch.context() as patch:
            failing(patch, last, KeyboardInterrupt, dead=False)
            run = publisher(*words)
        assert run.code == 130
        stands = everything(tmp_path / "out") == whole
        assert stands or everything(tmp_path / "out") == {}
        assert run.err == (
            "stopped; put in place before that: bollard\n" if stands else "stopped; nothing was put in place\n"
        )
        said.add(stands)
    assert said == {True, False}


@posix
def test_a_signal_of_which_a_library_makes_an_error_stops_all_the_same(
    publisher: Publisher, shelf: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def converted(*_: object, **__: object) -> None:
        try:
            signal.raise_signal(signal.SIGTERM)
        except KeyboardInterrupt:
            raise ImportError("half a library") from None

    monkeypatch.setattr("publisher.batch.build", converted)
    run = publisher("build", shelf / "bollard", "--out", tmp_path / "out")
    assert (run.code, run.err) == (130, "stopped; nothing was put in place\n")


@pytest.mark.keeps("cli/one-name-twice")
def test_one_folder_given_twice_is_built_once(publisher: Publisher, shelf: Path, tmp_path: Path) -> None:
    run = publisher(
        "build", shelf, shelf / "bollard", shelf / "../shelf", "--paper", "a4", "--out", tmp_path / "out", "--json"
    )
    assert run.code == 0
    assert len(json.loads(run.out)["packs"]) == 1


@pytest.mark.breaks("cli/one-name-twice")
def test_two_folders_of_one_name_are_refused_and_the_others_go_on(
    publisher: Publisher, shelf: Path, tmp_path: Path
) -> None:
    small_design(tmp_path / "other", "bollard")
    small_design(tmp_path / "other", "anchor")
    run = publisher("build", shelf, tmp_path / "other", "--paper", "a4", "--out", tmp_path / "out")
    assert run.code == 2
    assert "hold designs of one name, “bollard”" in run.err
    assert [p.name for p in (tmp_path / "out").iterdir()] == ["anchor"]


CLASHES = {
    "capitals": (
        "papers",
        "variants: {big: {sizes: {radius: 30 mm}}, Big: {sizes: {radius: 31 mm}}}\npapers",
        "spec.yaml:11:43: error: the cut files of the variant “big” and the cut files of the variant “Big” would be called",
    ),
    "standard": (
        "papers",
        "variants: {Standard: {sizes: {radius: 30 mm}}}\npapers",
        "cut files of the variant “Standard” would be called",
    ),
    "a device": (
        "papers",
        "variants: {con: {sizes: {radius: 30 mm}}}\npapers",
        "would have the name “con”, which Windows keeps for a device",
    ),
    "two papers": (
        "[a4, letter]",
        "[a4, {name: a4, width: 300 mm, height: 400 mm}]",
        "would both be called “bollard-1.0.0-foam-5mm-a4.pdf”",
    ),
    "the folder": ("papers", "papers", "the design “con” would have the name “con”"),
}


@pytest.mark.parametrize("case", CLASHES)
def test_names_that_clash_are_said_by_check_and_nothing_is_written(
    case: str, publisher: Publisher, tmp_path: Path
) -> None:
    old, new, said = CLASHES[case]
    folder = small_design(tmp_path / "shelf", "con" if case == "the folder" else "bollard")
    changed(folder, old, new)
    check = publisher("check", folder)
    assert check.code == 1 and said in check.err, check.err
    assert "release/name-taken" in check.err
    assert publisher("build", folder, "--variant", "standard", "--out", tmp_path / "out").code == 1
    assert not (tmp_path / "out").exists()


@posix
@pytest.mark.search
def test_killed_at_random_or_two_at_once_no_set_is_ever_mixed(tmp_path: Path) -> None:
    """Processes that place real builds are killed while they do, and the next command looks; then two at once place two specs."""
    folder = small_design(tmp_path / "shelf", "bollard")
    kills, pairs = rounds(2, 100), rounds(1, 50)
    run = subprocess.run(
        [sys.executable, "-m", "tests.whole.kills", str(folder), str(tmp_path), str(PROFILE.seed), str(kills), str(pairs)],
        cwd=ROOT, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert run.returncode == 0, run.stdout + run.stderr
    assert f"build: {kills} killed" in run.stdout and f"release: {kills} killed" in run.stdout
    assert f"{pairs} pairs" in run.stdout


def test_the_table_of_exit_codes_and_the_help_name_the_same(publisher: Publisher) -> None:
    table = (ROOT / "docs/placing.md").read_text(encoding="utf-8")
    codes = re.findall(r"^\| (\d+) \|", table, re.M)
    assert codes == ["0", "1", "2", "3", "130", "141"]
    assert re.findall(r"^ +(?:Exit codes: +)?(\d+) [a-z]", publisher("--help").out, re.M) == codes
