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


def german(folder: Path) -> None:
    """Write a spec's own few words in German, and no others."""
    spec = folder / "spec.yaml"
    text = spec.read_text(encoding="utf-8")
    text = re.sub(r"(?m)^summary: .*$", "summary: Ein Haus am Kanal.\nlanguage: de", text)
    for name, said in (("Gable wall", "Giebelwand"), ("Side wall", "Seitenwand"), ("Roof slope", "Dachfläche")):
        text = text.replace(name, said)
    spec.write_text(text, encoding="utf-8")


def test_a_german_spec_gets_german_steps_and_they_are_built(publisher: Publisher, tmp_path: Path) -> None:
    folder = tmp_path / "haus"
    api.new(folder, "house", "Salzufer Muster")
    german(folder)
    run = publisher("steps", folder)
    assert (run.code, run.err) == (0, "")
    assert "Teile nachzeichnen" in run.out and "left und right (Seitenwand)" in run.out
    words = re.sub(r"(?m)^    (?:stage|parts|acts|uses|adds|wait):.*$", "", run.out)
    assert not re.search(r"\b(?:the|and|with|each|glue|cut)\b", words, re.IGNORECASE)
    pasted(folder, run.out)
    built = api.build(api.read(folder, papers=("a4",)), previews=False)
    assert built.good and built.findings == ()


def test_a_spec_in_two_languages_gets_steps_in_both(publisher: Publisher) -> None:
    run = publisher("steps", ROOT / "designs" / "toll-house")
    assert "      en: Trace the parts\n      de: Teile nachzeichnen\n" in run.out
    assert "(Giebelwand)" in run.out and "(gable wall)" in run.out
    assert publisher("steps", ROOT / "designs" / "toll-house", "--variant", "de").out == run.out


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
