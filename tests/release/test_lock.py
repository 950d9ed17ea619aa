"""One run at a time works in a folder."""

import os
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from publisher.basics import Refusal
from publisher.release.lock import LOCK, locked

HOLDS = """\
import sys, time
from pathlib import Path
from publisher.release.lock import locked
with locked(Path(sys.argv[1])):
    print("held", flush=True)
    sys.stdin.read()
"""


@pytest.fixture
def holder(tmp_path: Path) -> Iterator[subprocess.Popen[str]]:
    """A process that holds the folder until its input ends."""
    run = subprocess.Popen(
        [sys.executable, "-c", HOLDS, str(tmp_path)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    )
    assert run.stdout is not None and run.stdout.readline() == "held\n"
    yield run
    run.kill()
    run.communicate()


@pytest.mark.keeps("release/busy")
def test_a_folder_is_held_and_let_go(tmp_path: Path) -> None:
    for _ in range(2):
        with locked(tmp_path):
            assert (tmp_path / LOCK).read_text() == f"{os.getpid()}\n"
        assert list(tmp_path.iterdir()) == []


@pytest.mark.breaks("release/busy")
def test_a_live_owner_is_named_and_a_dead_one_is_none(holder: subprocess.Popen[str], tmp_path: Path) -> None:
    with (
        pytest.raises(Refusal, match=rf"another run \(process {holder.pid}\) is putting files into"),
        locked(tmp_path, 0.0),
    ):
        raise AssertionError
    holder.kill()
    holder.wait()
    assert (tmp_path / LOCK).exists()
    with locked(tmp_path, 0.0):
        pass
    assert list(tmp_path.iterdir()) == []


def test_a_live_owner_is_waited_for(
    holder: subprocess.Popen[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def end(_seconds: float) -> None:
        holder.communicate("")

    monkeypatch.setattr(time, "sleep", end)
    with locked(tmp_path, 60.0):
        assert holder.returncode == 0


def test_two_in_one_process_do_not_share_a_folder(tmp_path: Path) -> None:
    with locked(tmp_path), pytest.raises(Refusal, match="another run"), locked(tmp_path, 0.0):
        raise AssertionError


def test_a_lock_that_its_owner_removed_meanwhile_is_none(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Between opening and locking, the last owner may have removed the file, and another run have made a new one."""
    same, looked = os.path.samestat, []

    def once_not(one: os.stat_result, other: os.stat_result) -> bool:
        looked.append(one)
        return len(looked) > 1 and same(one, other)

    monkeypatch.setattr(os.path, "samestat", once_not)
    with locked(tmp_path):
        assert len(looked) == 2
