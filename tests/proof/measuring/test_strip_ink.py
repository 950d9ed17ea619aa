"""A strip's own lines and words, and what looks like them and may not stand on it."""

from typing import Any

import pytest

from publisher.basics import CompassPromise, PieceLine, PrintPromise, RowPromise
from publisher.proof.measuring.ink import Ink
from publisher.proof.measuring.strip_ink import HOW, QUARTERS, SAYINGS, StripInk, quartered, title_of
from publisher.proof.reading import TextLine, read_file, reader_of

PT = 72 / 25.4
RING = ((10.0, 10.0), (128.0, 10.0), (128.0, 40.0), (10.0, 40.0))
STRIP = CompassPromise(1, "rim", "B", (19.0, 22.0), ((119.0, 22.0), (89.0, 22.0)), (100.0, 70.0), 1.25, RING)
ROW = RowPromise("rim", "B", "Rim of the pinwheel", "foam", 2, 1, 0, 200.0, 200.0)
LABELS = ("pencil, radius 100.0 mm (3.94 in)", "pencil, radius 70.0 mm (2.76 in)")
STRIP_OF = StripInk(STRIP, ROW, LABELS)


def line(text: str, x: float = 40.0, y: float = 14.0) -> TextLine:
    return TextLine(text, x, y, x + 20.0, y, 2.4)


def stray(kit: Any, content: str, *lines: TextLine) -> list[str]:
    page = read_file(kit.raw_pdf(f"{PT:.6f} 0 0 {PT:.6f} 0 0 cm 0.18 w {content}".encode()), "test.pdf").pages[0]
    return [what for what, _ in STRIP_OF.stray(page, Ink(page, ()), lines)]


@pytest.mark.parametrize(
    "content",
    [
        "10 10 m 128 10 l 128 40 l 10 40 l s",
        "19 22 m 119 22 l S",
        "16 22 m 22 22 l S",
        "89 24.5 m 89 27 l S",
        "119 24.5 m 119 28 l S",
    ],
)
def test_its_sides_its_line_its_crosses_and_the_lines_up_to_its_words_are_its_own(kit: Any, content: str) -> None:
    assert stray(kit, content) == []


@pytest.mark.parametrize("content", ["19 26 m 119 26 l S", "60 22 m 60 30 l S", "89 19 m 89 12 l S", "40 30 8 3 re f"])
def test_other_lines_and_areas_are_found(kit: Any, content: str) -> None:
    assert stray(kit, content)


@pytest.mark.parametrize(
    "said", [title_of(ROW), "pin", f"pin {LABELS[1]}", LABELS[0], HOW[:36], QUARTERS[:24], f"{HOW} {QUARTERS}"]
)
def test_words_of_a_strip_are_known_in_whatever_lines_they_are_set(kit: Any, said: str) -> None:
    assert stray(kit, "", line(said)) == []


@pytest.mark.parametrize(
    "said", ["pins", "pencil, radius 90.0 mm (3.54 in)", "B Rim of the pinwheel, cut 3", f"pin {LABELS[1]} 12"]
)
def test_other_words_are_found(kit: Any, said: str) -> None:
    assert stray(kit, "", line(said)) == [f"“{said}”"]


def test_a_strip_is_read_in_the_language_of_its_pack() -> None:
    take_down = reader_of("de")
    assert take_down is not None
    strip = StripInk(STRIP, ROW, (), take_down)
    how = SAYINGS[1][0].replace("Bleistiftlinie", "Blei\u2010 stiftlinie")
    first, rest = how.split("\u2010 ")
    said = ("B Rim of the pinwheel, Anzahl 2 + 1 Ersatz: Zirkelstreifen", "Nadel", f"{first}\u2010", rest)
    words = tuple(line(take_down(text), y=30.0 - 3.0 * n) for n, text in enumerate(said))
    assert strip.lacks(words) == ""
    assert not strip._is_said(strip._joined((*words, line("anders"))))
    assert strip.lacks(words[:3]) == HOW


def test_a_strip_bears_its_name_its_count_and_how_it_is_used() -> None:
    words = (line(title_of(ROW)), line("pin"), line(HOW[:36]), line(HOW[37:]))
    assert title_of(ROW) == "B Rim of the pinwheel, cut 2 + 1 spare: compass strip"
    assert STRIP_OF.lacks(words) == ""
    assert STRIP_OF.lacks(words[1:]) == title_of(ROW)
    assert STRIP_OF.lacks(words[:3]) == HOW


def test_a_strip_of_a_piece_with_quarters_says_how_they_are_found() -> None:
    words = (line(title_of(ROW)), line("pin"), line(HOW))
    strip = StripInk(STRIP, ROW, LABELS, quarters=True)
    assert strip.lacks(words) == QUARTERS
    assert strip.lacks((*words, line(QUARTERS))) == ""


def test_quarters_are_four_lines_from_the_rim_towards_the_centre() -> None:
    ticks = [((x, y), (0.9 * x, 0.9 * y)) for x, y in ((99.6, 0.0), (0.0, 99.6), (-99.6, 0.0), (0.0, -99.6))]
    ring = ((100.0, 0.0), (0.0, 100.0), (-100.0, 0.0), (0.0, -100.0))

    def piece(*lines: tuple[tuple[float, float], ...]) -> PrintPromise:
        return PrintPromise("rim", "B", "foam", 5.0, (ring,), lines=tuple(PieceLine("draw", one) for one in lines))

    assert quartered(piece(*ticks), 100.0)
    assert not quartered(piece(*ticks[:2]), 100.0)
    assert not quartered(piece(*ticks), 80.0)
    assert not quartered(piece(*(((x, y), (y, x)) for (x, y), _ in ticks)), 100.0)
