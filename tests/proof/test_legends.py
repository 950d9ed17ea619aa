"""Legends show each kind of line as the templates have it: another line beside a meaning, or none, is refused in each language."""

import pytest

from publisher.pages.front import cautions, legend
from publisher.pages.front.legend import LINES, SLIT
from publisher.pages.type import Setter, Tongue
from publisher.proof.checks.legends import MEANINGS
from tests.proof.refused import refused_by


@pytest.mark.parametrize("language", ["en", "de"])
def test_each_meaning_is_known_in_each_language(language: str) -> None:
    tongue = Tongue(language) if language != "en" else None
    for kind, name, meaning in (*LINES, (LINES[1][0], LINES[1][1], SLIT)):
        said = f"{name} {meaning}" if tongue is None else f"{tongue.say(name)} {tongue.say(meaning)}"
        assert said in MEANINGS[kind.value]


def test_samples_that_are_exchanged_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    kinds = [kind for kind, _, _ in LINES]
    exchanged = tuple((kinds[-1 - n], name, meaning) for n, (_, name, meaning) in enumerate(LINES))
    monkeypatch.setattr(legend, "LINES", exchanged)
    assert "proof/legend" in refused_by("quay")


def test_a_kind_of_line_without_a_row_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(legend, "LINES", tuple(row for row in LINES if row[1] != "drawn line"))
    assert "proof/legend" in refused_by("quay")


def test_a_sample_of_waste_elsewhere_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    real = legend._hatched
    monkeypatch.setattr(legend, "_hatched", lambda left, middle: real(left, middle + 9.0))
    assert "proof/legend" in refused_by("quay")


@pytest.mark.parametrize("words", ["hatched", "cut line", "cut right through"])
def test_a_row_without_its_words_is_refused(words: str, monkeypatch: pytest.MonkeyPatch) -> None:
    line = Setter.line
    monkeypatch.setattr(
        Setter, "line", lambda setter, text, *rest, **ways: line(setter, text, *rest, **ways) if text != words else ()
    )
    assert "proof/legend" in refused_by("quay")


def test_what_is_hatched_without_a_row_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    real = cautions.legend
    monkeypatch.setattr(cautions, "legend", lambda *given, **ways: real(*given, **{**ways, "waste": False}))
    assert "proof/legend" in refused_by("quay")
