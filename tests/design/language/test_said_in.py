"""Texts that stand in several languages, and packs for each language of a spec."""

from collections.abc import Callable
from pathlib import Path

import pytest

from publisher.brief import Brief, read_brief
from publisher.design import asked_variants, work_out

SPEC = """\
format: 2
title: {en: Bollard, de: Poller}
version: 1.0.0
languages: [en, de]
use: trace
summary: TOLD
sizes: {board: 5 mm, radius: 20 mm}
boards: {foam: {thickness: board, sheets: [20 x 30 in]}}
parts:
  disc: {name: {en: Disc, de: Scheibe}, board: foam, count: 3, shape: disc, with: {radius: radius}}
variants: {wide: {title: {en: wide, de: breit}, sizes: {radius: 25 mm}}}
"""


@pytest.fixture
def brief(tmp_path: Path) -> Callable[[str], Brief]:
    def make(told: str = "Said once.") -> Brief:
        folder = tmp_path / "bollard"
        folder.mkdir()
        (folder / "spec.yaml").write_text(SPEC.replace("TOLD", told), encoding="utf-8")
        return read_brief(folder)

    return make


def test_a_further_language_makes_a_pack_of_each_variant(brief: Callable[[], Brief]) -> None:
    assert asked_variants(brief()) == ("", "wide", "de", "wide_de")


@pytest.mark.parametrize(
    ("variant", "language", "title", "part", "variant_title"),
    [
        ("", "en", "Bollard", "Disc", ""),
        ("wide", "en", "Bollard", "Disc", "wide"),
        ("de", "de", "Poller", "Scheibe", ""),
        ("wide_de", "de", "Poller", "Scheibe", "breit"),
    ],
)
def test_each_pack_stands_in_its_language(
    brief: Callable[[], Brief], variant: str, language: str, title: str, part: str, variant_title: str
) -> None:
    design = work_out(brief(), variant)
    assert (design.language, design.title, design.parts[0].name, design.variant_title) == (
        language, title, part, variant_title,
    )  # fmt: skip
    assert "".join(map(str, design.summary.pieces)) == "Said once."


@pytest.mark.keeps("design/text-language")
def test_a_text_in_all_languages(brief: Callable[[str], Brief]) -> None:
    design = work_out(brief("{en: One, de: Eins}"), "de")
    assert "design/text-language" not in {found.check for found in design.findings}
    assert design.summary.pieces == ("Eins",)


@pytest.mark.breaks("design/text-language")
def test_a_text_that_lacks_the_language(brief: Callable[[str], Brief]) -> None:
    design = work_out(brief("{en: One}"), "de")
    (found,) = [found for found in design.findings if found.check == "design/text-language"]
    assert "not in “de”" in found.message and found.place is not None and found.place.line == 6
    assert design.summary.pieces == ("One",)


def test_a_language_without_a_table_is_refused_by_name(tmp_path: Path) -> None:
    folder = tmp_path / "bollard"
    folder.mkdir()
    (folder / "spec.yaml").write_text(SPEC.replace("languages: [en, de]", "language: fr"), encoding="utf-8")
    said = " ".join(f"{found.message} {found.hint}" for found in read_brief(folder).findings)
    assert "language" in said and "de (Deutsch)" in said


def test_a_text_in_a_language_without_a_table_is_named_at_its_place(brief: Callable[[str], Brief]) -> None:
    (found,) = [found for found in brief("{en: One, fr: Un}").findings if found.check == "brief/unknown-word"]
    assert "“fr”" in found.message and "en, de" in found.hint
    assert found.place is not None and (found.place.line, found.place.column) == (6, 20)


def test_of_several_languages_the_longest_text_is_held_against_the_schema(brief: Callable[[str], Brief]) -> None:
    (found,) = brief("{en: Short, de: " + "lang " * 200 + "}").findings
    assert found.check == "brief/too-long" or "600" in found.message
