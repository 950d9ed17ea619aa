"""Each check of composed pages finds its fault, and nothing on a good page."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Box, Layer, LengthPromise, PagePromise, polyline, run_checks
from publisher.pages.model import Drawn, Fill, Page, Stroke
from publisher.pages.sheet.page_checks import CHECKS, Composed, ink_box, own_faults
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


def faults(subject: Composed) -> list[str]:
    """What is wrong with the pages in the last words of each fault."""
    return [fault.split(" lie")[-1].split(" is set ")[-1] for fault in own_faults(subject)]


OUTSIDE = "outside the printable limit"


@pytest.mark.keeps("pages/letter-missing")
def test_a_good_page_has_no_finding(composed: Callable[..., Composed]) -> None:
    inside = Stroke(CUT, (polyline(((6.6, 12.95), (203.4, 284.05))),), Layer.OUTLINES)
    assert ids(composed(inside)) == [] and faults(composed(inside)) == []


@pytest.mark.parametrize(
    "thing",
    [
        Stroke(CUT, (polyline(((6.5, 20.0), (50.0, 20.0))),), Layer.OUTLINES),  # half the line's width is outside
        Fill(0.0, (polyline(((200.0, 20.0), (203.7, 20.0), (200.0, 30.0)), True),), Layer.PAGE),
    ],
)
def test_ink_outside_the_limit_is_found(composed: Callable[..., Composed], thing: Drawn) -> None:
    (fault,) = faults(composed(thing))
    assert fault.endswith(OUTSIDE)


def test_words_outside_the_limit_are_found_turned_too(composed: Callable[..., Composed], setter: Setter) -> None:
    for at, turn in (((180.0, 100.0), 0.0), ((100.0, 270.0), 90.0)):
        (fault,) = faults(composed(*setter.line("a long line that runs off", BODY, *at, turn=turn)))
        assert fault.endswith(OUTSIDE)


def test_what_a_clip_hides_is_not_ink(composed: Callable[..., Composed]) -> None:
    wide = Stroke(CUT, (polyline(((0.0, 20.0), (300.0, 20.0))),), Layer.OUTLINES, clip=Box(10.0, 13.0, 200.0, 280.0))
    assert faults(composed(wide)) == []
    (fault,) = faults(composed(replace(wide, clip=Box(0.0, 13.0, 200.0, 280.0))))
    assert fault.endswith(OUTSIDE)


def test_small_words_are_found(composed: Callable[..., Composed], setter: Setter) -> None:
    (words,) = setter.line("tiny", BODY, 50.0, 50.0)
    assert faults(composed(replace(words, size=2.2))) == ["at 2.20 mm"]


@pytest.mark.breaks("pages/letter-missing")
def test_letters_that_no_font_has_are_found_once(composed: Callable[..., Composed], setter: Setter) -> None:
    findings = run_checks(CHECKS, composed(*setter.line("漢字漢", BODY, 50.0, 50.0)))
    assert [f.check for f in findings] == ["pages/letter-missing"] * 2
    assert "U+6F22" in findings[0].message


def test_words_on_words_are_found(composed: Callable[..., Composed], setter: Setter) -> None:
    assert faults(composed(*setter.line("Gable", BODY, 22.0, 101.0))) == [" on each other"]
    assert faults(composed(*setter.line("Gable", BODY, 22.0, 96.0))) == []
    assert faults(composed(*setter.line("Gable", BODY, 25.0, 98.0, turn=90.0))) == [" on each other"]


def test_capitals_close_over_each_other_are_apart(composed: Callable[..., Composed], setter: Setter) -> None:
    """Letters of pieces laid close together: room for what hangs under a line is no ink where nothing hangs."""
    over = 100.0 + BODY.size * 0.76
    assert faults(composed(*setter.line("G", BODY, 20.0, over))) == []
    assert faults(composed(*setter.line("J", BODY, 20.0, over))) == [" on each other"]


def test_words_that_lie_aslant_side_by_side_are_apart(composed: Callable[..., Composed], setter: Setter) -> None:
    """Their upright boxes meet; they do not."""
    one = setter.line("THIS SIDE UP", BODY, 100.0, 200.0, turn=45.0)
    beside = setter.line("Do not flip.", BODY, 104.0, 196.0, turn=45.0)
    on = setter.line("Do not flip.", BODY, 101.0, 200.0, turn=45.0)
    assert faults(composed(*one, *beside)) == []
    assert faults(composed(*one, *on)) == [" on each other"]


def test_words_on_a_line_to_be_measured_are_found(composed: Callable[..., Composed], setter: Setter) -> None:
    ruler = LengthPromise(1, (20.0, 50.0), (120.0, 50.0), 100.0, "ruler", "100")
    tick = LengthPromise(1, (60.0, 50.0), (60.0, 53.2), 3.2, "tick", "40")
    apart, on_ruler, on_tick = (setter.line("what a card is", BODY, x, y) for x, y in ((30, 55), (30, 49), (50, 51.5)))
    for words, found in ((apart, 0), (on_ruler, 1), (on_tick, 1)):
        page = replace(composed(*words), lengths=(ruler, tick))
        assert [fault.endswith("0)") for fault in faults(page)] == [True] * found
    (fault,) = own_faults(replace(composed(*on_ruler), lengths=(ruler,)))
    assert fault == "page 1 (Steps): “what a card is” lies on a line to be measured (ruler 100)"
    assert faults(replace(composed(*on_ruler), lengths=(replace(ruler, page=2),))) == []


def test_words_in_the_corner_of_the_square_are_found(composed: Callable[..., Composed], setter: Setter) -> None:
    kept = ((Box(150.0, 20.0, 203.0, 70.0),),)
    (fault,) = own_faults(replace(composed(*setter.line("Stray", BODY, 160.0, 40.0)), kept=kept))
    assert fault.endswith("lies in the corner that is kept for the square and the code")
    own = setter.line("50 mm", BODY.tagged("artifact"), 160.0, 40.0)
    assert faults(replace(composed(*own, *setter.line("Near", BODY, 160.0, 72.0)), kept=kept)) == []
    over = "Bevel: the face underneath ends at the line"
    beside, across = (setter.line(over, BODY, x, 52.0, turn=25.0) for x in (95.0, 125.0))  # the box of both reaches in
    assert faults(replace(composed(*beside), kept=kept)) == []
    assert len(faults(replace(composed(*across), kept=kept))) == 1


def test_a_pack_without_pages_is_not_a_good_pack(setter: Setter) -> None:
    assert len(run_checks(CHECKS, Composed((), (), (), setter.faces))) == len(CHECKS)
