"""Only what a reader sees counts as drawn."""

from typing import Any

import numpy as np
import pytest

from publisher.proof.measuring.ink import Ink
from publisher.proof.reading.areas import covers
from publisher.proof.reading.objects import TooMuch
from publisher.proof.reading.reader import read_file

MM = 25.4 / 72


def ink_of(kit: Any, content: bytes, **more: Any) -> Ink:
    page = read_file(kit.raw_pdf(content, **more), "test.pdf").pages[0]
    return Ink(page, covers(page))


def lines(ink: Ink) -> list[list[list[float]]]:
    return [(ink.line(i) / MM).round(4).tolist() for i in range(len(ink.piece))]


def test_a_clip_cuts_lines(kit: Any) -> None:
    ink = ink_of(kit, b"10 0 50 100 re W n 0 20 m 100 20 l S")
    assert sorted(lines(ink)[0]) == [[10, 20], [60, 20]]


def test_a_clip_that_is_no_rectangle_cuts_lines(kit: Any) -> None:
    ink = ink_of(kit, b"0 0 m 100 0 l 0 100 l h W n 0 50 m 100 50 l S")
    assert sorted(lines(ink)[0]) == [[0, 50], [50, 50]]


def test_a_later_white_area_takes_lines_away_and_an_earlier_one_does_not(kit: Any) -> None:
    ink = ink_of(kit, b"1 g 0 0 30 100 re f 0 20 m 100 20 l S 40 0 20 100 re f")
    assert sorted(sorted(line) for line in lines(ink)) == [[[0, 20], [40, 20]], [[60, 20], [100, 20]]]


def test_an_arrow_head_does_not_hide_its_line(kit: Any) -> None:
    assert lines(ink_of(kit, b"0 G 0 20 m 100 20 l S 0 g 90 15 m 100 20 l 90 25 l f")) == [[[0, 20], [100, 20]]]


def test_a_picture_covers_what_lies_under_it(kit: Any) -> None:
    ink = ink_of(kit, b"0 20 m 100 20 l S q 100 0 0 100 0 0 cm BI /W 1 /H 1 /BPC 8 /CS /G ID a EI Q")
    assert lines(ink) == []


@pytest.mark.parametrize("content", [b"1 G 0 0 m 9 9 l S", b"0 0 m 9 9 l n", b"0 0 m 9 9 l f", b"5 5 m S"])
def test_what_leaves_no_stroke(kit: Any, content: bytes) -> None:
    ink = ink_of(kit, content)
    assert lines(ink) == []
    assert len(ink.segments[0]) == 0


def test_dashes_and_widths_belong_to_lines(kit: Any) -> None:
    ink = ink_of(kit, b"2 w [3 1] 0 d 0 0 m 9 0 l S 1 w [] 0 d 0 5 m 9 5 l 0 8 m 9 8 l S")
    assert ink.dashed.tolist() == [True, False, False]
    assert ink.width / MM == pytest.approx([2, 1, 1])
    starts, ends, owners = ink.segments
    assert owners.tolist() == [0, 1, 2]
    assert np.allclose((ends - starts) / MM, (9, 0))


def test_thousands_of_cut_lines_are_too_much(kit: Any) -> None:
    content = b"10 0 50 100 re W n " + b"0 20 m 100 20 l S " * 7000
    with pytest.raises(TooMuch):
        ink_of(kit, content)
