"""The improver: in a process of its own, judged like any other engine, and never needed."""

import subprocess
import sys
from dataclasses import replace

import pytest

from publisher.material import strip_search as improver
from publisher.material.judge import flaws
from publisher.material.packing import kinds_of
from publisher.material.strip_search import Strip, ask, one_sheet


def strip(shop, count, size, *, upright=False, mirrored=0, seconds=5):
    """Ask for stair layers on one sheet."""
    pieces = (shop.piece(shop.layer(30.0, 92.0, 40.0), count, (0.0, 90.0, 180.0, 270.0), mirrored),)
    return Strip(kinds_of(pieces, 1.0), size, 1.0, 2, seconds, upright), pieces


@pytest.mark.parametrize("upright", [False, True])
@pytest.mark.parametrize("mirrored", [0, 2])
def test_a_layout_holds_and_is_the_same_twice(shop, upright, mirrored) -> None:
    """Five layers on a sheet with room to spare: both ways of the strip, mirrored copies, an origin that is not 0."""
    asked, pieces = strip(shop, 5, (330.0, 270.0), upright=upright, mirrored=mirrored)
    items = one_sheet(asked, pieces, (3.0, 4.0))
    assert len(items) == 5
    sheet = (shop.box(330.0, 270.0, 3.0, 4.0),)
    assert flaws(pieces, sheet, 1.0, (items,), complete=True) == ()
    assert items == one_sheet(asked, pieces, (3.0, 4.0))


def test_what_cannot_be_is_not_found(shop) -> None:
    """Twenty do not go where area allows ten; the process ends at its time."""
    asked, pieces = strip(shop, 20, (300.0, 250.0), seconds=1)
    assert one_sheet(asked, pieces, (0.0, 0.0)) == ()


def test_a_worker_that_fails_is_no_answer(shop, monkeypatch, tmp_path) -> None:
    """Without the library, or with an answer that is none, nothing is found and nothing breaks."""
    broken = tmp_path / "worker.py"
    broken.write_text("raise SystemExit(3)")
    monkeypatch.setattr(improver, "WORKER", broken)
    asked, pieces = strip(shop, 2, (330.0, 270.0))
    assert ask(asked.request()) == (None, [])
    assert one_sheet(asked, pieces, (0.0, 0.0)) == ()


def test_a_worker_that_does_not_end_is_ended(shop, monkeypatch, tmp_path) -> None:
    """It is given its time, and a little; it does not come to its end."""
    endless, ended = tmp_path / "worker.py", tmp_path / "ended"
    endless.write_text(f"import pathlib, time\ntime.sleep(60)\npathlib.Path({str(ended)!r}).touch()")
    monkeypatch.setattr(improver, "WORKER", endless)
    monkeypatch.setattr(improver, "PATIENCE", 0.2)
    asked, _ = strip(shop, 2, (330.0, 270.0))
    assert ask(replace(asked, seconds=0).request()) == (None, [])
    assert not ended.exists()


def test_builds_do_not_load_it() -> None:
    """Only the process that is asked imports the library; other tests of this process may have."""
    asked = "import sys, publisher.pipeline; sys.exit('spyrrow' in sys.modules)"
    assert subprocess.run((sys.executable, "-c", asked), check=False).returncode == 0
