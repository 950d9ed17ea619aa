"""Packs in other languages: no words of ours stay English in any demo or random design, and what is promised of them is proved."""

import re
from dataclasses import replace
from pathlib import Path
from shutil import copytree

import pytest

from publisher import api
from publisher.basics import errors
from publisher.brief import STARTS, read_brief
from publisher.pages import Drawn, Words, language_titles
from publisher.pipeline import Worked, compose_packs, work
from publisher.pipeline.extras import free_pages, phone_copies
from publisher.press import write_pdf
from publisher.proof import prove
from tests.random_designs.make import true_design
from tests.random_designs.tool import written
from tests.searches.profile import seeds
from tests.whole.conftest import ROOT

DEMOS = sorted(spec.parent.name for spec in (ROOT / "designs").glob("*/spec.yaml"))
SMALL = sorted(spec.parent for spec in (ROOT / "docs" / "specs").glob("*/spec.yaml"))
OTHERS = [language for language, _ in language_titles() if language != "en"]


def left_english(worked: Worked, language: str) -> set[str]:
    """Return what the build says of words of ours that have no form in the language."""
    assert worked.design is not None
    there = replace(worked, design=replace(worked.design, language=language))
    packs, _ = compose_packs(there)
    extras = (*free_pages(there, [pack.paper.name for pack in packs[:1]]), *phone_copies(there, packs[:1]))
    found = (finding for pack in (*packs, *extras) for finding in pack.findings)
    return {finding.message for finding in found if finding.check == "pages/not-translated"}


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.parametrize("slug", DEMOS)
def test_no_words_of_ours_stay_english_in_a_demo(slug: str, language: str) -> None:
    assert left_english(work(read_brief(ROOT / "designs" / slug)), language) == set()


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.parametrize("folder", SMALL, ids=[folder.name for folder in SMALL])
def test_no_words_of_ours_stay_english_in_a_small_design(folder: Path, language: str) -> None:
    """What no demo has: seams, pockets, rabbets, things, sections, two boards, materials in a designer's own words."""
    assert left_english(work(read_brief(folder)), language) == set()


COVERED = """
  tower: {name: Tower, board: foam, count: 1, shape: tube_wrap, with: {tube_diameter: 80 mm, height: 60 mm, covered: paper}}
  silo: {name: Silo, like: tower, count: 2, with: {tube_diameter: 60 mm}}
  cask: {name: Cask, like: tower, with: {tube_diameter: 50 mm, covered: FIRST}}
  drum: {name: Drum, like: tower, count: 3, with: {tube_diameter: 40 mm, covered: tape}}
  keg: {name: Keg, like: drum, count: 1, with: {tube_diameter: 48 mm}}
"""


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.parametrize("first", ["paper", "tape"])
def test_no_words_of_ours_stay_english_where_several_parts_are_covered(
    first: str, language: str, tmp_path: Path
) -> None:
    """Two or three parts under paper, as many under tape; one piece of some, several of others."""
    text = (ROOT / "docs" / "specs" / "combined" / "spec.yaml").read_text(encoding="utf-8")
    begin, _, rest = text.partition("\nparts:\n")
    _, _, after = rest.partition("\ntools:")
    after = re.sub(r"(?s)\nsteps:.*?\npapers: .*", "\n", after)
    parts = COVERED.replace("FIRST", first).strip("\n")
    folder = tmp_path / "covered"
    folder.mkdir()
    (folder / "spec.yaml").write_text(f"{begin}\nparts:\n{parts}\n\ntools:{after}", encoding="utf-8")
    worked = work(read_brief(folder))
    assert not errors(worked.findings), worked.findings
    assert left_english(worked, language) == set()
    built = api.build(api.read(folder, papers=("a4",)), previews=False)
    assert [one.message for one in built.findings if one.check.startswith("proof/")] == []


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.parametrize("start", list(STARTS))
def test_no_words_of_ours_stay_english_in_a_design_just_begun(start: str, language: str, tmp_path: Path) -> None:
    api.new(tmp_path / "begun", start, "Brine and Sedge")
    assert left_english(work(read_brief(tmp_path / "begun")), language) == set()


@pytest.mark.parametrize("language", OTHERS)
def test_no_words_of_ours_stay_english_on_a_paper_with_another_name(language: str, tmp_path: Path) -> None:
    """Names of two words, of two papers, and a designer's own with its size."""
    papers = ("arch_d", "a1", "common", "big")
    spec = (ROOT / "designs/toll-house/spec.yaml").read_text("utf-8")
    own = f"papers: [{', '.join(papers[:3])}, {{name: big, width: 500 mm, height: 700 mm}}]"
    there = tmp_path / "toll-house"
    copytree(ROOT / "designs" / "toll-house", there)
    (there / "spec.yaml").write_text(re.sub(r"^papers:.*$", own, spec, flags=re.M), "utf-8")
    assert left_english(work(read_brief(there)), language) == set()


@pytest.mark.parametrize("language", OTHERS)
@seeds(2, 20)
def test_no_words_of_ours_stay_english_in_a_random_design(seed: int, language: str, tmp_path: Path) -> None:
    design = true_design(seed, "", "")
    assert left_english(work(read_brief(written(tmp_path, design.spec, design.files))), language) == set()


def test_a_number_retyped_in_a_german_pack_is_found() -> None:
    worked = work(read_brief(ROOT / "designs" / "toll-house"), "de")
    (pack,), _ = compose_packs(worked, ("a4",))
    assert errors(prove(write_pdf(pack), pack.promises, "pack.pdf").findings) == ()
    spoilt = replace(
        pack,
        pages=tuple(
            replace(page, drawn=tuple(_retyped(thing) for thing in page.drawn)) if page.number == 1 else page
            for page in pack.pages
        ),
    )
    found = {finding.check for finding in errors(prove(write_pdf(spoilt), pack.promises, "pack.pdf").findings)}
    assert {"proof/sentence", "proof/print-list", "proof/page-reference"} <= found


def _retyped(thing: Drawn) -> Drawn:
    """Retype a size in the summary, a page of the print list, and the page that is to be read."""
    for here, there in (
        (r"142,1 mm", "143,1 mm"),
        (r"dann (\d+)-\d+", r"dann \1-99"),
        (r"Seite (\d) lesen", r"Seite \g<1>0 lesen"),
    ):
        if isinstance(thing, Words) and re.search(here, thing.text):
            return replace(thing, text=re.sub(here, there, thing.text))
    return thing
