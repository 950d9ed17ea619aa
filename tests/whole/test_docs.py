"""The docs: generated pages are fresh, links lead somewhere, commands run, output shown is real."""

import json
import re
import shlex
import shutil
from collections.abc import Callable
from pathlib import Path

import jsonschema
import pytest
import yaml

from docs import generate
from docs.assembled import ASSEMBLED
from docs.spec_page import wrong_examples
from publisher.brief import schema_text
from publisher.geometry.surfaces.draw import MOST_PATTERN_POINTS, MOST_UNITS
from publisher.geometry.surfaces.pattern import JOINT_CLEAR
from tests.random_designs.solids import in_common
from tests.reference.solids import build
from tests.whole.conftest import Run

ROOT = Path(__file__).parents[2]
PAGES = sorted([*(ROOT / "docs").glob("*.md"), ROOT / "README.md", ROOT / "DEVELOPERS.md"])
WRITTEN = [page for page in PAGES if "```sh" in page.read_text(encoding="utf-8") and page.parent.name == "docs"]
Publisher = Callable[..., Run]
Block = tuple[list[str], list[str]]


def test_generated_pages_are_fresh(capsys: pytest.CaptureFixture[str]) -> None:
    assert generate.main(["--check"]) == 0, capsys.readouterr().err


def test_a_stale_page_is_found_with_its_remedy(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    monkeypatch.setattr(generate, "DOCS", tmp_path)
    monkeypatch.setattr(generate, "fresh", lambda: {"a.md": "new\n", "pictures/shapes/b.svg": "<svg/>\n"})
    assert generate.main([]) == 0
    assert generate.main(["--check"]) == 0
    (tmp_path / "a.md").write_text("old\n")
    (tmp_path / "pictures/shapes/gone.svg").write_text("<svg/>\n")
    capsys.readouterr()
    assert generate.main(["--check"]) == 1
    said = capsys.readouterr().err
    assert "a.md, pictures/shapes/gone.svg" in said and "python -m docs.generate" in said
    assert generate.main([]) == 0
    assert not (tmp_path / "pictures/shapes/gone.svg").exists()
    assert generate.main(["--chek"]) == 2


def test_examples_of_fields_fit_the_schema() -> None:
    assert wrong_examples() == []


def test_examples_of_assemblies_say_what_the_schema_knows() -> None:
    known = json.loads(schema_text())["$defs"]
    blocks = re.findall(r"```yaml\n(.*?)```", (ROOT / "docs/spec_examples.md").read_text(encoding="utf-8"), flags=re.S)
    said = [yaml.safe_load(block.replace("…", "{}")) for block in blocks]
    rows = [row for block in said if isinstance(block, list) for row in block]
    wholes = [whole for block in said if isinstance(block, dict) for whole in block.get("assembly", {}).values()]
    things = [thing for whole in wholes for thing in whole.get("things", {}).values()]
    assert len(rows) > 10 and len(things) > 5
    for section, examples in (("join", rows), ("thing", things)):
        judge = jsonschema.Draft202012Validator({**known[section], "$defs": known})
        for example in examples:
            judge.validate(example)


def test_limits_of_surfaces_are_those_of_the_tool() -> None:
    text = (ROOT / "docs/surfaces.md").read_text(encoding="utf-8")
    assert f"more than {MOST_UNITS} units" in text and f"more than {MOST_PATTERN_POINTS} path operators" in text
    assert f"keep {JOINT_CLEAR:g} mm from every cut" in text


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_links_lead_to_files_and_headings(page: Path) -> None:
    text = page.read_text(encoding="utf-8")
    links = re.findall(r"\]\(([^)\s]+)\)", re.sub(r"```.*?```", "", text, flags=re.S))
    for link in links:
        file, _, heading = link.partition("#")
        if file.startswith(("http://", "https://")):
            continue
        target = (page.parent / file).resolve() if file else page
        assert target.is_file(), f"{page.name}: {link}"
        if heading:
            titles = re.findall(r"^#+ (.*)$", target.read_text(encoding="utf-8"), re.M)
            assert heading in [re.sub(r"[^\w -]", "", t).strip().lower().replace(" ", "-") for t in titles], link


def blocks(page: Path) -> list[Block]:
    """The commands of each sh block, and the lines of the text block that follows it."""
    found: list[Block] = []
    for kind, body in re.findall(r"```(sh|text)\n(.*?)```", page.read_text(encoding="utf-8"), re.S):
        lines = [line.strip() for line in body.splitlines() if line.strip()]
        if kind == "sh":
            found.append((lines, []))
        else:
            found[-1][1].extend(lines)
    return found


@pytest.mark.parametrize("page", WRITTEN, ids=lambda page: page.name)
def test_commands_run_and_output_is_real(
    page: Path, publisher: Publisher, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Commands run one after the other beside a copy of the demos; lines shown stand in the output, in that order
    (blanks, which only align columns, apart)."""
    shutil.copytree(ROOT / "designs", tmp_path / "designs")
    monkeypatch.chdir(tmp_path)
    ran = 0
    for commands, shown in blocks(page):
        said = ""
        for command in commands:
            words = shlex.split(command)
            if words[0] != "publisher":
                continue
            run = publisher(*words[1:])
            bad = any("error:" in line or "BAD" in line for line in shown)
            assert run.code == (1 if bad else 0), f"{command}\n{run.out}{run.err}"
            said += " ".join((run.out + run.err).split()) + " "
            ran += 1
        for line in (" ".join(line.split()) for line in shown):
            assert line in said, f"“{line}” is not what {commands[-1]} says:\n{said}"
            said = said[said.index(line) + len(line) :]
    assert ran > 0


@pytest.mark.parametrize(("title", "text"), [(title, text) for title, _, text in ASSEMBLED])
def test_every_assembly_of_the_docs_is_true(title: str, text: str, tmp_path: Path) -> None:
    built = build(text, tmp_path)
    assert built.findings == (), title
    solids = built.solids(built.design.panels[0].name)
    assert in_common(list(solids.values())) < 0.5
