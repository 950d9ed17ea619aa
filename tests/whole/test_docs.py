"""The docs: generated pages are fresh, links lead somewhere, commands run, output shown is real."""

import json
import re
import shlex
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
import yaml

from docs import generate
from docs.assembled import ASSEMBLED
from docs.example import TABLE
from docs.spec_page import examples, table, wrong_examples
from publisher import api
from publisher.basics import Finding
from publisher.brief import schema_text
from publisher.geometry.surfaces.draw import MOST_PATTERN_POINTS, MOST_UNITS
from publisher.geometry.surfaces.pattern import JOINT_CLEAR
from tests.random_designs.solids import in_common
from tests.reference.solids import build
from tests.searches.profile import PROFILE
from tests.whole.conftest import Run, small_design

ROOT = Path(__file__).parents[2]
PAGES = sorted([*(ROOT / "docs").glob("*.md"), ROOT / "README.md", ROOT / "DEVELOPERS.md"])
WRITTEN = [page for page in PAGES if "```sh" in page.read_text(encoding="utf-8") and page.parent.name == "docs"]
SPECS = sorted((ROOT / "docs/specs").glob("*/spec.yaml"))
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


def test_a_field_that_no_whole_design_has_is_told() -> None:
    schema = json.loads(schema_text())
    schema["$defs"]["join"]["properties"]["my_own"] = {"x-kind": "length"}
    with pytest.raises(LookupError, match=r"join\.my_own"):
        table(schema["$defs"]["join"], "join", examples(schema), schema)


def test_the_example_of_fonts_is_true_where_the_file_is(tmp_path: Path) -> None:
    """The one field whose example is in no whole design: a font is a large file, and a designer's own."""
    assert TABLE["spec"].keys() == {"fonts"}
    folder = small_design(tmp_path, "lettered", f"fonts: [{', '.join(TABLE['spec']['fonts'])}]\n")
    assert {finding.check for finding in api.read(folder).findings} == {"brief/missing-file"}
    for name in TABLE["spec"]["fonts"]:
        shutil.copy(next((ROOT / "publisher/pages/type/fonts").glob("*.ttf")), folder / name)
    assert api.with_pages(api.work(api.read(folder))).findings == ()


def examples_of(page: Path) -> list[tuple[str, str]]:
    """The yaml blocks of a page, each with the link to the whole design that was named last before it."""
    found = []
    spec = ""
    for link, block in re.findall(
        r"\]\(([^)\s]*spec\.yaml)\)|```yaml\n(.*?)```", page.read_text(encoding="utf-8"), re.S
    ):
        spec = link or spec
        if block:
            found.append((spec, block))
    return found


def stands_in(fragment: Any, whole: Any) -> bool:
    """Whether a fragment is part of a node: fields among its fields, items among its items."""
    if isinstance(fragment, dict):
        return isinstance(whole, dict) and all(k in whole and stands_in(v, whole[k]) for k, v in fragment.items())
    if isinstance(fragment, list):
        return isinstance(whole, list) and all(any(stands_in(item, own) for own in whole) for item in fragment)
    return bool(fragment == whole)


def stands_somewhere_in(fragment: Any, whole: Any) -> bool:
    """Whether a fragment is part of a node or of any below it."""
    below = whole.values() if isinstance(whole, dict) else whole if isinstance(whole, list) else ()
    return stands_in(fragment, whole) or any(stands_somewhere_in(fragment, node) for node in below)


@pytest.mark.parametrize(("page", "least"), [("spec_examples.md", 12), ("cut-yield.md", 1), ("drawings.md", 1)])
def test_every_example_is_part_of_the_whole_design_that_it_names(page: str, least: int) -> None:
    blocks = examples_of(ROOT / "docs" / page)
    assert len(blocks) >= least
    for spec, block in blocks:
        assert spec, f"no whole design is named before\n{block}"
        whole = yaml.safe_load((ROOT / "docs" / spec).read_text(encoding="utf-8"))
        assert stands_somewhere_in(yaml.safe_load(block), whole), f"this is not in {spec}:\n{block}"


def test_no_other_page_has_examples_that_nothing_tries() -> None:
    """Those of shapes and surfaces are drawn when their pages are made, those of assemblies in spec.md below, its others above."""
    with_blocks = {page.name for page in PAGES if "```yaml" in page.read_text(encoding="utf-8")}
    assert with_blocks == {"cut-yield.md", "drawings.md", "shapes.md", "spec.md", "spec_examples.md", "surfaces.md"}


def test_an_example_that_is_in_no_whole_design_is_told() -> None:
    whole = {"assembly": {"house": {"joins": [{"place": "sign", "lies_on": "front", "turn": "0 deg"}]}}}
    assert stands_somewhere_in([{"place": "sign", "lies_on": "front"}], whole)
    assert not stands_somewhere_in([{"place": "sign", "lies_on": "back"}], whole)
    assert not stands_somewhere_in([{"place": "sign", "lies_on": "front"}, {"place": "frame"}], whole)
    assert not stands_somewhere_in({"joins": [], "stack": []}, whole)


@pytest.mark.parametrize("spec", SPECS, ids=lambda spec: spec.parent.name)
def test_small_designs_of_the_docs_are_true(spec: Path, tmp_path: Path) -> None:
    """Nothing is found in them, not even a warning; a search builds and proves them too."""
    brief = api.read(spec.parent)
    for variant in api.variants(brief):
        assert said_of(api.with_pages(api.work(brief, variant)).findings) == [], variant
        if PROFILE.large:
            built = api.build(brief, variant, previews=False)
            assert built.good and said_of(built.findings) == [], variant


def said_of(findings: tuple[Finding, ...]) -> list[tuple[str, str]]:
    """Findings as text."""
    return [(finding.check, finding.message) for finding in findings]


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
