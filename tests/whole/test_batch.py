"""Many designs in one run: each is named in what is said, what stops one does not stop the others, whoever shares the work."""

import json
import re
import signal
import subprocess
import sys
from collections.abc import Callable
from io import StringIO
from pathlib import Path
from typing import Any

import pytest

from publisher import api, batch
from publisher.pipeline import Built
from publisher.pipeline import build as build_one
from tests.whole.conftest import TOO_LARGE, Run, changed, everything, small_design
from tests.whole.test_ended import posix, started

Publisher = Callable[..., Run]
PAPERS = "papers: [a4, letter]"


@pytest.fixture
def street(tmp_path: Path) -> Path:
    """Five designs: two good, two with one fault, one that cannot be read."""
    shelf = tmp_path / "street"
    for slug in ("ash", "birch", "cedar", "elm"):
        changed(small_design(shelf, slug), PAPERS, "papers: [a4]")
    for slug in ("birch", "cedar"):
        changed(shelf / slug, "radius: 20 mm", TOO_LARGE)
    (small_design(shelf, "dogwood") / "spec.yaml").write_text("[[")
    return shelf


def failing_for(slug: str, patch: pytest.MonkeyPatch) -> None:
    """Let the build of one design meet a fault of ours."""

    def build(brief: Any, variant: str, offered: bool = False) -> Built:
        if brief.slug == slug:
            raise ValueError("no such corner")
        return build_one(brief, variant, offered=offered)

    patch.setattr(batch, "build", build)


def without_seconds(text: str) -> str:
    """Take away the only figures that differ between two runs, and the folders in which they place."""
    return re.sub(r" +\d+\.\d\n|/out-\d", "\n", text)


def test_one_process_or_two_give_the_same_files_and_words(publisher: Publisher, street: Path, tmp_path: Path) -> None:
    one, two = (publisher("build", street, "--out", tmp_path / f"out-{n}", "--jobs", n) for n in ("1", "2"))
    assert one.code == two.code == 2
    assert without_seconds(one.out) == without_seconds(two.out)
    assert one.err == two.err
    assert everything(tmp_path / "out-1") == everything(tmp_path / "out-2")
    assert sorted(path.name for path in (tmp_path / "out-1").iterdir()) == ["ash", "elm"]


def test_the_last_table_has_every_design(publisher: Publisher, street: Path, tmp_path: Path) -> None:
    run = publisher("build", street, "--out", tmp_path / "out", "--jobs", "1")
    *rows, last = run.out.splitlines()[-6:]
    assert [row.split()[:2] for row in rows] == [
        ["ash", "built"], ["birch", "refused"], ["cedar", "refused"], ["dogwood", "unreadable"], ["elm", "built"]
    ]  # fmt: skip
    pages = [int(row.split()[2]) for row in rows if "built" in row]
    made = json.loads((tmp_path / "out/ash/packs.json").read_text())["packs"]
    assert pages == [sum(pack["pages"] for pack in made)] * 2
    assert last == f"5 designs: 2 built, 2 refused, 1 unreadable; {sum(pages)} pages, 2 sheets"


def test_findings_name_their_designs_and_equal_ones_of_two_are_two(
    publisher: Publisher, street: Path, tmp_path: Path
) -> None:
    run = publisher("build", street, "--out", tmp_path / "out", "--jobs", "1", "--json")
    document = json.loads(run.out)
    found = [(one["design"], one["check"]) for one in document["findings"] if one["severity"] == "error"]
    assert [design for design, _ in found] == ["birch", "cedar", "dogwood"]
    assert found[0][1] == found[1][1]
    assert [(one["slug"], one["state"]) for one in document["designs"]] == [
        ("ash", "built"), ("birch", "refused"), ("cedar", "refused"), ("dogwood", "unreadable"), ("elm", "built")
    ]  # fmt: skip
    for line in run.err.splitlines():
        if re.search(r"\b(error|warning): ", line):
            assert re.search("ash|birch|cedar|dogwood|elm", line), line


@pytest.mark.breaks("cli/own-fault")
def test_a_fault_of_ours_names_its_design_and_the_others_go_on(
    publisher: Publisher, street: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    failing_for("ash", monkeypatch)
    run = publisher("build", street, "--out", tmp_path / "out", "--jobs", "1", "--json")
    assert run.code == 3
    document = json.loads(run.out)
    assert [one["state"] for one in document["designs"]] == ["fault", "refused", "refused", "unreadable", "built"]
    (fault,) = [one for one in document["findings"] if one["check"] == "cli/own-fault"]
    assert (fault["design"], "ValueError: no such corner" in fault["message"]) == ("ash", True)
    assert (tmp_path / "out/elm/packs.json").exists() and not (tmp_path / "out/ash").exists()


@pytest.mark.keeps("cli/own-fault")
def test_a_good_design_meets_no_fault_of_ours(publisher: Publisher, shelf: Path, tmp_path: Path) -> None:
    assert "fault" not in publisher("build", shelf, "--paper", "a4", "--out", tmp_path / "out").err


@pytest.mark.parametrize("command", ["check", "sizes", "show"])
def test_other_commands_go_on_after_a_fault_too(
    command: str, publisher: Publisher, street: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    work = api.work

    def failing(brief: api.Brief, *given: Any, **more: Any) -> api.Worked:
        if brief.slug == "ash":
            raise ValueError("no such corner")
        return work(brief, *given, **more)

    monkeypatch.setattr(api, "work", failing)
    run = publisher(command, street, *(("--stage", "sizes") if command == "show" else ()))
    assert run.code == 3
    assert "ash met a fault of ours, not of your design (ValueError: no such corner)" in run.err
    assert "radius" in run.out or "elm" in run.out


def test_how_far_a_run_is_stands_in_one_line_of_a_terminal_and_in_lines_of_a_log(
    publisher: Publisher, street: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    class Terminal(StringIO):
        def isatty(self) -> bool:
            return True

    for slug in ("ash", "elm"):
        changed(street / slug, "radius: 20 mm", TOO_LARGE)  # sooner done
    words = ("build", street, "--out", tmp_path / "out", "--jobs", "1")
    log = publisher(*words).err.splitlines()
    assert [line for line in log if " of 5" in line] == [
        "1 of 5: ash refused", "2 of 5: birch refused", "3 of 5: cedar refused", "4 of 5: dogwood unreadable",
        "5 of 5: elm refused",
    ]  # fmt: skip
    screen = Terminal()
    monkeypatch.setattr(sys, "stderr", screen)
    publisher(*words)
    shown = screen.getvalue()
    assert "\r1 of 5\r" in shown and "of 5:" not in shown
    assert shown.endswith("\r5 of 5\r      \r")  # nothing of it stays


@posix
def test_ctrl_c_ends_all_processes_and_says_what_stands(tmp_path: Path) -> None:
    shelf = tmp_path / "street"
    for number in range(8):
        small_design(shelf, f"post-{number:02}")
    run = started("build", shelf, "--out", tmp_path / "out", "--jobs", "2")
    assert run.stderr is not None
    assert "1 of 8: post-00 built\n" in iter(run.stderr.readline, "")
    run.send_signal(signal.SIGINT)
    _, err = run.communicate(timeout=60)
    assert run.returncode == 130
    stands = sorted(path.parent.name for path in (tmp_path / "out").glob("*/packs.json"))
    assert err.splitlines()[-1] == f"stopped; put in place before that: {', '.join(stands)}"
    assert len(re.findall("stopped", err)) == 1 and "Traceback" not in err
    if Path("/proc").is_dir():
        listed = subprocess.run(["ps", "-eo", "ppid"], capture_output=True, text=True, check=False).stdout
        assert str(run.pid) not in listed.split()
