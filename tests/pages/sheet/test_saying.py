"""A pack in German: nothing of ours stays in English, and what would is told."""

from dataclasses import replace
from pathlib import Path
from typing import NamedTuple

import pytest

from publisher.basics import Box, Finding, Layer, TextPromise
from publisher.brief import read_brief
from publisher.design import Design
from publisher.pages.model import Pack, Picture, Words
from publisher.pages.sheet import Body, PageDraft, make_frame, paper_for
from publisher.pages.sheet.saying import said_body, said_draft, tongue_of, untranslated
from publisher.pipeline import compose_packs, work

TOLL_HOUSE = Path(__file__).parents[3] / "designs" / "toll-house"


class German(NamedTuple):
    """The German toll house on A4, and what was found on its pages."""

    design: Design
    pack: Pack
    findings: tuple[Finding, ...]


@pytest.fixture(scope="module")
def german() -> German:
    worked = work(read_brief(TOLL_HOUSE), "de")
    packs, findings = compose_packs(worked, ("a4",))
    assert worked.design is not None
    return German(worked.design, packs[0], findings)


@pytest.mark.keeps("pages/not-translated")
def test_the_german_toll_house_has_no_english_words_of_ours(german: German) -> None:
    pack, findings = german.pack, german.findings
    assert [f for f in findings if f.check == "pages/not-translated"] == []
    said = " ".join(thing.text for page in pack.pages for thing in page.drawn if isinstance(thing, Words))
    assert "Kontroll" in said or "Quadrat" in said
    for word in ("the", "with", "cut", "page", "and", "board", "sheet"):
        assert f" {word} " not in f" {said} ", word


def test_titles_bookmarks_tasks_and_pictures_are_german(german: German) -> None:
    pack = german.pack
    assert pack.language == "de"
    assert pack.title.startswith("Zollhaus")
    assert [mark.title for mark in pack.bookmarks if mark.depth == 0][:2] == ["Titel", "Druckprüfung"]
    assert pack.print_plan[0][0] == "Zuerst lesen"
    alts = [element.alt for page in pack.pages for element in page.structure if element.alt]
    assert alts and not any(" the " in alt or " of " in alt for alt in alts)


@pytest.mark.breaks("pages/not-translated")
def test_a_text_without_a_row_is_told_once(german: German) -> None:
    design = german.design
    tongue = tongue_of(design)
    assert tongue is not None
    tongue.say("Nobody translated this.")
    tongue.say("Nor this.")
    (found,) = untranslated(design, tongue)
    assert found.check == "pages/not-translated" and "“Nobody translated this.”" in found.message
    assert found.message.startswith("2 texts of ours")


def test_english_and_languages_without_a_table_have_no_tongue(german: German) -> None:
    design = german.design
    assert tongue_of(replace(design, language="en-GB")) is None
    assert tongue_of(replace(design, language="fr")) is None
    assert untranslated(design, None) == ()


def test_a_page_in_the_language(german: German) -> None:
    design = german.design
    tongue = tongue_of(design)
    frame = make_frame(paper_for(design, "a4"), landscape=False, calibration=0.0)
    marks = (("Print and measure", 1, ""),)
    draft = PageDraft("steps", "steps:1", "Steps 1 to 4", frame, lambda _: Body(), "templates", marks)
    said = said_draft(draft, tongue)
    assert (said.title, said.task, said.bookmarks[0][0]) == ("Schritte 1 bis 4", "Schablonen", "Drucken und messen")
    picture = Picture("x.png", Box(0.0, 0.0, 1.0, 1.0), "With glue", Layer.PAGE)
    body = said_body(Body((picture,), texts=(TextPromise(1, "page 1 of 2"),)), tongue)
    assert (body.drawn[0].alt, body.texts[0].text) == ("Mit Leim", "Seite 1 von 2")  # type: ignore[union-attr]
    assert said_body(body, None) is body and said_draft(draft, None) is draft
