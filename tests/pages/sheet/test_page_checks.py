"""Each check of composed pages finds its fault, and nothing on a good page."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Box, Layer, PagePromise, polyline, run_checks
from publisher.pages.model import Drawn, Fill, Page, Stroke
from publisher.pages.sheet.page_checks import CHECKS, Composed, ink_box
from publisher.pages.type.styles import BODY, CUT
from publisher.pages.type.text import Setter

LIMIT = Box(6.35, 12.7, 203.65, 284.3)


@pytest.fixture
def composed(setter: Setter) -> Callable[..., Composed]:
    def make(*drawn: Drawn) -> Composed:
        good = setter.line("Gable wall", BODY, 20.0, 100.0)
        page = Page(1, "1", "steps", "Steps", 210.0, 297.0, (*good, *drawn))
        promise = PagePromise(1, 210.0, 297.0, "1", "steps", LIMIT, True)
        boxes = tuple(ink_box(setter.faces, thing) for thing in page.drawn)
        return Composed((page,), (promise,), (boxes,), setter.faces)

    return make


def ids(subject: Composed) -> list[str]:
    return [f.check for f in run_checks(CHECKS, subject)]


@pytest.mark.keeps("pages/over-the-limit", "pages/words-too-small", "pages/letter-missing", "pages/words-collide")
def test_a_good_page_has_no_finding(composed: Callable[..., Composed]) -> None:
    inside = Stroke(CUT, (polyline(((6.6, 12.95), (203.4, 284.05))),), Layer.OUTLINES)
    assert ids(composed(inside)) == []


@pytest.mark.breaks("pages/over-the-limit")
@pytest.mark.parametrize(
    "thing",
    [
        Stroke(CUT, (polyline(((6.5, 20.0), (50.0, 20.0))),), Layer.OUTLINES),  # half the line's width is outside
        Fill(0.0, (polyline(((200.0, 20.0), (203.7, 20.0), (200.0, 30.0)), True),), Layer.PAGE),
    ],
)
def test_ink_outside_the_limit_is_found(composed: Callable[..., Composed], thing: Drawn) -> None:
    assert ids(composed(thing)) == ["pages/over-the-limit"]


def test_words_outside_the_limit_are_found_turned_too(composed: Callable[..., Composed], setter: Setter) -> None:
    assert ids(composed(*setter.line("a long line that runs off", BODY, 180.0, 100.0))) == ["pages/over-the-limit"]
    assert ids(composed(*setter.line("a long line that runs off", BODY, 100.0, 270.0, turn=90.0))) == [
        "pages/over-the-limit"
    ]


def test_what_a_clip_hides_is_not_ink(composed: Callable[..., Composed]) -> None:
    wide = Stroke(CUT, (polyline(((0.0, 20.0), (300.0, 20.0))),), Layer.OUTLINES, clip=Box(10.0, 13.0, 200.0, 280.0))
    assert ids(composed(wide)) == []
    assert ids(composed(replace(wide, clip=Box(0.0, 13.0, 200.0, 280.0)))) == ["pages/over-the-limit"]


@pytest.mark.breaks("pages/words-too-small")
def test_small_words_are_found(composed: Callable[..., Composed], setter: Setter) -> None:
    (words,) = setter.line("tiny", BODY, 50.0, 50.0)
    assert ids(composed(replace(words, size=2.2))) == ["pages/words-too-small"]


@pytest.mark.breaks("pages/letter-missing")
def test_letters_that_no_font_has_are_found_once(composed: Callable[..., Composed], setter: Setter) -> None:
    findings = run_checks(CHECKS, composed(*setter.line("漢字漢", BODY, 50.0, 50.0)))
    assert [f.check for f in findings] == ["pages/letter-missing"] * 2
    assert "U+6F22" in findings[0].message


@pytest.mark.breaks("pages/words-collide")
def test_words_on_words_are_found(composed: Callable[..., Composed], setter: Setter) -> None:
    assert ids(composed(*setter.line("Gable", BODY, 22.0, 101.0))) == ["pages/words-collide"]
    assert ids(composed(*setter.line("Gable", BODY, 22.0, 96.0))) == []
    assert ids(composed(*setter.line("Gable", BODY, 25.0, 98.0, turn=90.0))) == ["pages/words-collide"]


def test_a_pack_without_pages_is_not_a_good_pack(setter: Setter) -> None:
    assert len(run_checks(CHECKS, Composed((), (), (), setter.faces))) == len(CHECKS)


def test_only_a_text_that_somebody_wrote_can_be_shortened(composed: Callable[..., Composed], setter: Setter) -> None:
    letters = composed(*setter.line("AK", BODY, 60.0, 60.0), *setter.line("AH", BODY, 60.5, 60.0))
    (found,) = run_checks(CHECKS, letters)
    assert "shorten" not in found.hint and "too small" in found.hint
    written = composed(*setter.line("A very long name", BODY, 60.0, 60.0), *setter.line("AH", BODY, 60.5, 60.0))
    (found,) = run_checks(CHECKS, written)
    assert found.hint == "shorten the text “A very long name”"
