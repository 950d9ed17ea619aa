"""``publisher steps``: what it proposes is pasted, and nothing is found."""

import re
from collections.abc import Callable
from pathlib import Path
from shutil import copytree

import pytest

from publisher import api
from tests.whole.conftest import ROOT, Run, changed

Publisher = Callable[..., Run]
DESIGNS = sorted(path.parent.name for path in (ROOT / "designs").glob("*/spec.yaml"))


def pasted(folder: Path, text: str) -> None:
    """Put steps in the place of those of a spec, or at its end."""
    spec = folder / "spec.yaml"
    old = re.sub(r"(?ms)^steps:.*?(?=^\w|\Z)", "", spec.read_text(encoding="utf-8"))
    spec.write_text(f"{old}\n{text}", encoding="utf-8")


@pytest.mark.parametrize("name", [*DESIGNS, *api.STARTS])
def test_steps_that_are_pasted_leave_nothing_to_find(name: str, tmp_path: Path) -> None:
    folder = tmp_path / "piece"
    if name in DESIGNS:
        copytree(ROOT / "designs" / name, folder)
    else:
        api.new(folder, name)
    text, found = api.steps(api.read(folder))
    assert found == () and text.startswith("steps:\n")
    pasted(folder, text)
    worked = api.work(api.read(folder))
    assert worked.findings == ()
    assert worked.joined is not None and (worked.joined.additions or worked.joined.layers == worked.joined.placed == ())


def test_a_pack_with_the_proposed_steps_is_built_and_proved(publisher: Publisher, shelf: Path) -> None:
    run = publisher("steps", shelf / "bollard")
    assert (run.code, run.err) == (0, "")
    pasted(shelf / "bollard", run.out)
    built = api.build(api.read(shelf / "bollard", papers=("a4",)), previews=False)
    assert built.good and built.findings == ()


def test_a_design_that_cannot_be_made_gets_no_steps(publisher: Publisher, shelf: Path) -> None:
    changed(shelf / "bollard", "board: foam", "board: fome")
    run = publisher("steps", shelf / "bollard")
    assert run.code == 1 and run.out == "" and "fome" in run.err
