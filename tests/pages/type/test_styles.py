"""The type scale and the line kinds keep the numbers that they promise."""

from itertools import combinations

import pytest

from publisher.basics import LineKind
from publisher.pages.model import LineStyle
from publisher.pages.type import styles
from publisher.pages.type.fonts import face
from publisher.pages.type.styles import BODY, DISPLAY, HEADING, LEAST, LETTER, NOTE, SMALL, TITLE, TypeStyle, line_style

SERIES = (0.13, 0.18, 0.25, 0.35, 0.5, 0.7)  # ISO 128-2, mm
TYPE = (DISPLAY, TITLE, HEADING, BODY, SMALL, NOTE, LEAST, LETTER)


def contrast(grey: float) -> float:
    """WCAG 2 contrast ratio of an sRGB grey on white."""
    linear = grey / 12.92 if grey <= 0.04045 else ((grey + 0.055) / 1.055) ** 2.4
    return 1.05 / (linear + 0.05)


def test_body_text_is_clear_print_and_nothing_is_under_the_legal_least() -> None:
    # clear print: x-height of 2 mm; fluent reading from 1.4 mm (Legge & Bigelow 2011); labels 1.2 mm (EU 1169/2011)
    heights = {s.name: face(s.weight).x_height * s.size for s in TYPE}
    assert heights["body"] >= 2.0
    assert heights["note"] >= 1.4
    assert min(heights.values()) >= 1.2
    assert all(s.leading > s.size for s in TYPE)


def test_words_and_lines_stand_out_from_white() -> None:
    assert contrast(0.349) == pytest.approx(7.0, abs=0.05)  # the check value: #595959
    assert styles.TEXT_GREY == 0.0  # a printer in black and white sets grey words in dots
    assert {styles.RULE.grey, styles.HATCH.grey, styles.PICTURE_GHOST.grey} == {0.0}
    lines = [s for s in vars(styles).values() if isinstance(s, LineStyle)]
    assert len(lines) > 10
    for line in lines:
        assert contrast(line.grey) >= 3.0, line.name
        assert line.width >= 0.18, line.name


def test_line_kinds_differ_by_type_or_width_and_never_by_grey() -> None:
    kinds = [line_style(kind) for kind in LineKind]
    assert all(k.grey == 0.0 and k.width in SERIES for k in kinds)
    for one, two in combinations(kinds, 2):
        shape = lambda k: tuple(round(d / k.width, 2) for d in k.dash)  # noqa: E731
        assert shape(one) != shape(two) or one.width >= 2 * two.width, (one.name, two.name)


def test_variants_of_a_type_style() -> None:
    bold = BODY.bold()
    assert isinstance(bold, TypeStyle)
    assert (bold.weight, bold.size) == ("bold", BODY.size)
    assert BODY.tagged("td").tag == "td"
    assert BODY.quiet().grey == styles.TEXT_GREY
