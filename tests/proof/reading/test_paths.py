from typing import Any

import numpy as np
import pytest

from publisher.basics import Box
from publisher.proof.reading.model import Clip, PageRead
from publisher.proof.reading.paths import clipped
from publisher.proof.reading.reader import read_file

MM = 25.4 / 72


def page_of(kit: Any, content: bytes) -> PageRead:
    return read_file(kit.raw_pdf(content), "test.pdf").pages[0]


def test_the_three_curve_operators_agree(kit: Any) -> None:
    by_c, by_v = page_of(kit, b"0 0 m 0 0 50 80 90 0 c S 0 0 m 50 80 90 0 v S").pieces
    assert np.allclose(by_c.points, by_v.points)
    by_c, by_y = page_of(kit, b"0 0 m 50 80 90 0 90 0 c S 0 0 m 50 80 90 0 y S").pieces
    assert np.allclose(by_c.points, by_y.points)


@pytest.mark.parametrize(
    ("operator", "stroked", "filled", "even_odd", "closed"),
    [
        (b"S", True, False, False, False), (b"s", True, False, False, True), (b"f", False, True, False, False),
        (b"F", False, True, False, False), (b"f*", False, True, True, False), (b"B", True, True, False, False),
        (b"B*", True, True, True, False), (b"b", True, True, False, True), (b"b*", True, True, True, True),
    ],
)  # fmt: skip
def test_painting_operators(
    kit: Any, operator: bytes, stroked: bool, filled: bool, even_odd: bool, closed: bool
) -> None:
    (piece,) = page_of(kit, b"0 0 m 9 0 l 9 9 l " + operator).pieces
    assert (piece.grey is not None, piece.fill_grey is not None, piece.even_odd) == (stroked, filled, even_odd)
    assert (len(piece.points) == 4) is closed


@pytest.mark.parametrize("content", [b"9 9 l S", b"9 9 9 9 9 9 c S", b"h S", b"1 m S", b"0 0 m (x) 3 l S", b"S"])
def test_a_path_that_makes_no_sense_draws_nothing_wrong(kit: Any, content: bytes) -> None:
    page = page_of(kit, content + b" 20 20 m 30 30 l S")
    assert np.allclose(page.pieces[-1].points / MM, [(20, 20), (30, 30)])


def test_upright_rectangles_stay_boxes_and_others_become_shapes() -> None:
    whole = Clip(Box(0.0, 0.0, 100.0, 100.0))
    upright = np.array(((10.0, 10.0), (60.0, 10.0), (60.0, 40.0), (10.0, 40.0)))
    tilted = np.array(((10.0, 10.0), (60.0, 20.0), (50.0, 60.0), (0.0, 50.0)))
    thin = np.array(((10.0, 10.0), (60.0, 10.0), (60.0, 10.0), (10.0, 10.0)))
    assert clipped(whole, upright, (upright,), False) == Clip(Box(10.0, 10.0, 60.0, 40.0))
    assert len(clipped(whole, tilted, (tilted,), False).shapes) == 1
    assert clipped(whole, thin, (thin,), False).box.height == 0.0


def test_a_path_is_forgotten_after_it_is_painted(kit: Any) -> None:
    page = page_of(kit, b"0 0 m 9 9 l n S 1 1 m 2 2 l S S")
    assert len(page.pieces) == 1
