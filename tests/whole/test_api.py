"""The door for programs: its examples are true, it is the only one that commands use, and it is light to import."""

import doctest
import inspect
import re
import subprocess
import sys
from ast import literal_eval
from pathlib import Path

import pytest

from publisher import api

ROOT = Path(__file__).parents[2]
PAGE = ROOT / "docs/api.md"


def test_the_examples_of_the_page_are_true(designs: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(designs.parent)
    text = PAGE.read_text(encoding="utf-8")
    blocks = "\n".join(re.findall(r"```pycon\n(.*?)```", text, re.S))
    test = doctest.DocTestParser().get_doctest(blocks, {}, "api.md", "docs/api.md", 0)
    said: list[str] = []
    result = doctest.DocTestRunner().run(test, out=said.append)
    assert result.attempted > 15
    assert result.failed == 0, "".join(said)


def test_every_function_of_the_door_is_on_the_page_and_says_what_it_does() -> None:
    text = PAGE.read_text(encoding="utf-8")
    functions = [name for name in api.__all__ if inspect.isfunction(vars(api).get(name))]
    assert len(functions) > 20
    for name in functions:
        assert inspect.getdoc(getattr(api, name)), name
        assert f"`{name}`" in text or f"api.{name}(" in text, f"{name} is not on the page"


def test_every_name_of_the_door_leads_somewhere() -> None:
    for name in api.__all__:
        assert getattr(api, name) is not None
    with pytest.raises(AttributeError, match="nothing called nonsense"):
        api.nonsense  # noqa: B018
    assert (ROOT / "publisher/py.typed").exists()


def test_importing_the_door_loads_no_room() -> None:
    words = "import sys, publisher.api; print({'.'.join(m.split('.')[:2]) for m in sys.modules if m.startswith('publisher.')})"
    run = subprocess.run([sys.executable, "-c", words], cwd=ROOT, capture_output=True, text=True, check=True)
    assert run.stdout.strip() == "{'publisher.api'}"


def test_a_name_of_the_ruler_loads_no_other_room() -> None:
    words = "import sys, publisher.api; publisher.api.Verdict; print([m for m in sys.modules if m.count('.') == 1])"
    run = subprocess.run([sys.executable, "-c", words], cwd=ROOT, capture_output=True, text=True, check=True)
    rooms = {"brief", "design", "geometry", "joints", "material", "pages", "pipeline", "press", "proof", "release"}
    assert not {f"publisher.{room}" for room in rooms} & set(literal_eval(run.stdout))
