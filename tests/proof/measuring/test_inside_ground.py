"""What lies on a ground: found inside it, and not beside it or where it belongs."""

from typing import Any

import numpy as np
import pytest
import shapely

from publisher.proof.measuring.ink import Ink
from publisher.proof.measuring.inside_ground import areas_on, pale_lines_on, pictures_on, strokes_off
from publisher.proof.measuring.outlines import StrokeSegments
from publisher.proof.reading import PageRead, read_file

PT = 72 / 25.4
GROUND = shapely.box(10.0, 10.0, 60.0, 40.0)
OWN = StrokeSegments(np.array([[20.0, 20.0]]), np.array([[50.0, 20.0]]), np.zeros(1, dtype=int), np.zeros(1))


def page(kit: Any, content: str) -> PageRead:
    found: PageRead = read_file(kit.raw_pdf(f"{PT:.6f} 0 0 {PT:.6f} 0 0 cm 0.18 w {content}".encode()), "x.pdf").pages[
        0
    ]
    return found


@pytest.mark.parametrize(
    ("content", "found"),
    [
        ("20 20 m 50 20 l S", 0),  # its own
        ("20 20.05 m 50 20.05 l S", 0),
        ("20 21 m 50 21 l S", 1),
        ("20 20 m 50 20 l 50 30 l S", 1),  # leaves it
        ("70 21 m 90 21 l S", 0),  # beside the ground
        ("0 21 m 90 21 l S", 1),  # across
    ],
)
def test_strokes_that_leave_their_lines(kit: Any, content: str, found: int) -> None:
    read = page(kit, content)
    off = list(strokes_off(Ink(read, ()), GROUND, OWN))
    assert len(off) == found
    assert all(GROUND.covers(shapely.Point(at)) for _, at in off)


def test_pale_lines_and_areas_are_found_on_the_ground_alone(kit: Any) -> None:
    read = page(kit, "0.99 G 20 30 m 50 30 l S 0.99 G 70 30 m 90 30 l S 0.5 g 20 15 5 5 re f 70 15 5 5 re f")
    (pale,), ((piece, at),) = list(pale_lines_on(read, GROUND)), list(areas_on(read, GROUND))
    assert GROUND.covers(shapely.Point(pale)) and piece.fill_grey == pytest.approx(0.5)
    assert 20.0 <= at[0] <= 25.0 and list(pictures_on(read, GROUND)) == []


def test_a_page_without_ink_has_nothing(kit: Any) -> None:
    read = page(kit, "")
    assert list(strokes_off(Ink(read, ()), GROUND, OWN)) == [] == list(pale_lines_on(read, GROUND))
