"""Curved arrows are read with the way they run; straight ones are none."""

import cv2
import numpy as np
import pytest

from tests.rehearsal.raster import DOTS, pieces_of
from tests.rehearsal.turns import curved_arrows

SIDE, RADIUS = 60.0, 20.0  # mm


def arrow(start: float, end: float) -> np.ndarray:
    """Return the ink of an arrow half a millimetre wide, from one angle (degrees, anticlockwise) to another about the middle of a page."""
    ink = np.zeros((round(SIDE * DOTS), round(SIDE * DOTS)), dtype=np.uint8)
    angles = np.radians(np.linspace(start, end, 60))
    line = np.column_stack((SIDE / 2 + RADIUS * np.cos(angles), SIDE / 2 - RADIUS * np.sin(angles))) * DOTS
    cv2.polylines(ink, [line.round().astype(np.int32)], isClosed=False, color=255, thickness=11)
    tip, way = line[-1], line[-1] - line[-3]
    way = way / np.hypot(*way) * DOTS
    across = np.array((-way[1], way[0]))
    head = np.array((tip + 2.2 * way, tip - 0.8 * way + 1.3 * across, tip - 0.8 * way - 1.3 * across))
    cv2.fillPoly(ink, [head.round().astype(np.int32)], 255)
    return ink


@pytest.mark.parametrize(
    ("start", "end", "anticlockwise"), [(20, 80, True), (80, 20, False), (200, 245, True), (130, 70, False)]
)
def test_an_arrow_runs_the_way_of_its_head(start: float, end: float, anticlockwise: bool) -> None:
    (found,) = curved_arrows(pieces_of(arrow(start, end)))
    assert found.anticlockwise == anticlockwise
    middle = np.radians((start + end) / 2)
    at = (SIDE / 2 + RADIUS * np.cos(middle), SIDE / 2 + RADIUS * np.sin(middle))
    assert (found.x, found.y) == pytest.approx(at, abs=1.5)


def test_a_straight_arrow_turns_nothing() -> None:
    ink = np.zeros((round(SIDE * DOTS), round(SIDE * DOTS)), dtype=np.uint8)
    a, b = ((round(x * DOTS), round(30 * DOTS)) for x in (10, 40))
    cv2.line(ink, a, b, 255, 11)
    cv2.fillPoly(
        ink, [np.array([(x * DOTS, y * DOTS) for x, y in ((40, 28.6), (40, 31.4), (43, 30))], dtype=np.int32)], 255
    )
    assert list(curved_arrows(pieces_of(ink))) == []
