"""What pixels show along a ring: a drawn line, a gap, an area beside it."""

import numpy as np
import pytest

from publisher.basics import Box, OutlinePromise, Pose
from publisher.proof.measuring.witness import SOLID, WITNESS_GAP, see_ring
from publisher.proof.reading.model import Array

HERE = Pose()
K = 5.0  # pixels per mm
SQUARE = ((10.0, 10.0), (50.0, 10.0), (50.0, 50.0), (10.0, 50.0))


def promise(pose: Pose = HERE, window: Box | None = None) -> OutlinePromise:
    return OutlinePromise(1, "a", "A", 1, pose, (SQUARE,), window)


def paper(*marks: tuple[float, float, float, float, int]) -> Array:
    """Darkness of 60 × 60 mm: rectangles (left, bottom, right, top in mm) of one darkness, later ones over earlier."""
    dark = np.zeros((300, 300), dtype=int)
    for left, bottom, right, top, value in marks:
        dark[round(300 - top * K) : round(300 - bottom * K), round(left * K) : round(right * K)] = value
    return dark


def crop(*marks: tuple[float, float, float, float, int]) -> tuple[Array, float, float, float, float]:
    return paper(*marks), 0.0, K, 60.0, K


LINE = ((9.8, 9.8, 50.2, 50.2, 255), (10.2, 10.2, 49.8, 49.8, 0))


def test_a_drawn_ring_has_no_gap_and_paper_beside_it() -> None:
    sight = see_ring(promise(), crop(*LINE))
    assert sight.light == 0.0
    assert sight.smeared == 0.0


def test_a_gap_is_measured_where_it_begins() -> None:
    """5 mm of the bottom side are missing; the darkest neighbour of a pixel counts, so the ends reach in a little."""
    sight = see_ring(promise(), crop(*LINE, (20.0, 9.0, 25.0, 11.0, 0)))
    assert sight.light == pytest.approx(5.0, abs=1.0)
    assert sight.light > WITNESS_GAP
    assert sight.light_at == pytest.approx((20.25, 10.0), abs=0.76)


def test_an_empty_page_shows_nothing_of_the_whole_ring() -> None:
    assert see_ring(promise(), crop()).light >= 39.0


def test_a_pale_line_is_none() -> None:
    pale = ((9.8, 9.8, 50.2, 50.2, 140), (10.2, 10.2, 49.8, 49.8, 0))
    assert see_ring(promise(), crop(*pale)).light > WITNESS_GAP


@pytest.mark.parametrize("area", [(20.0, 4.0, 32.0, 10.0), (20.0, 10.0, 32.0, 16.0)])
def test_an_area_along_the_ring_is_seen_from_either_side(area: tuple[float, float, float, float]) -> None:
    sight = see_ring(promise(), crop(*LINE, (*area, 255)))
    assert sight.light == 0.0
    assert sight.smeared == pytest.approx(12.0, abs=1.1)
    assert sight.smeared > SOLID
