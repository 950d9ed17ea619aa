"""Contours of what is added are told from what stands by their width."""

import cv2
import numpy as np

from tests.rehearsal.outlines import outlines
from tests.rehearsal.raster import DOTS, Grey

WIDE = (0.7, 0.25)  # mm: contours of what is added and of what stands


def page(*boxes: tuple[float, float, float, float, float]) -> Grey:
    """Return the ink of a page of 100 × 80 mm with rectangles: left, bottom, right, top, and the width of the line."""
    ink = np.zeros((round(80 * DOTS), round(100 * DOTS)), dtype=np.uint8)
    for left, bottom, right, top, wide in boxes:
        for off, value in ((0.0, 255), (wide, 0)):
            x, y, x_end, y_end = (
                round(at * DOTS) for at in (left + off, 80 - top + off, right - off, 80 - bottom - off)
            )
            ink[y:y_end, x:x_end] = value
    return ink


def test_thick_and_thin_outlines_are_told_apart() -> None:
    found = outlines(page((10, 50, 40, 70, WIDE[0]), (10, 10, 60, 40, WIDE[1])), [])
    assert [(one.weight, round(one.left), round(one.bottom), round(one.right), round(one.top)) for one in found] == [
        ("thick", 10, 50, 40, 70),
        ("thin", 10, 10, 60, 40),
    ]


def test_rings_of_details_arrows_and_words_are_no_outlines() -> None:
    ink = page((70, 60, 76, 72, WIDE[0]))
    cv2.circle(ink, (round(30 * DOTS), round(30 * DOTS)), round(12 * DOTS), 255, round(WIDE[1] * DOTS))
    cv2.fillPoly(
        ink, [np.array([(x * DOTS, y * DOTS) for x, y in ((70, 50), (73, 58), (76, 50))], dtype=np.int32)], 255
    )
    assert outlines(ink, [(69, 59, 77, 73)]) == ()
