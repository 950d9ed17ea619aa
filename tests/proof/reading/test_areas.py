from typing import Any

import pytest

from publisher.basics import Box
from publisher.proof.reading.areas import clip_area, covers, filled_area
from publisher.proof.reading.model import Clip
from publisher.proof.reading.reader import read_file

MM = 25.4 / 72


def piece(kit: Any, content: bytes) -> Any:
    return read_file(kit.raw_pdf(content), "test.pdf").pages[0].pieces[0]


EVERYWHERE = Box(0.0, 0.0, 1000.0, 1000.0)


@pytest.mark.parametrize(
    ("content", "area"),
    [
        (b"0 0 10 10 re 2 2 4 4 re f*", 84.0),
        (b"0 0 10 10 re 2 2 4 4 re f", 100.0),
        (b"0 0 10 10 re 2 2 m 2 6 l 6 6 l 6 2 l h f", 84.0),
        (b"0 0 m 10 10 l 10 0 l 0 10 l h f", 50.0),
        (b"5 0 99 99 re W n 0 0 10 10 re f", 50.0),
    ],
)
def test_areas_by_the_two_rules(kit: Any, content: bytes, area: float) -> None:
    assert filled_area(piece(kit, content), EVERYWHERE).area / MM**2 == pytest.approx(area)


def test_rings_far_away_do_not_matter(kit: Any) -> None:
    near = Box(0.0, 0.0, 1.0, 1.0)
    assert filled_area(piece(kit, b"0 0 10 10 re 100 100 50 50 re f"), near).area / MM**2 == pytest.approx(100)


def test_an_empty_clip_shows_nothing() -> None:
    assert clip_area(Clip(Box(5.0, 0.0, 5.0, 9.0))).is_empty


def test_what_can_cover(kit: Any) -> None:
    page = read_file(kit.raw_pdf(b"1 g 0 0 9 9 re f 0 0 m 5 5 l S 0.2 g 5 5 9 9 re f"), "test.pdf").pages[0]
    assert [(order, round(grey or 0, 6)) for order, grey, _, _ in covers(page)] == [(1, 1.0), (3, 0.2)]
