"""An axis is marked where there is board: a cross at the origin, ticks at the rim."""

from math import hypot

import pytest

from publisher.basics import LineKind, Purpose
from publisher.geometry.shapes.centre import ARM, CENTRE_TICK, cross, quarter_ticks


def test_the_cross_meets_at_the_axis() -> None:
    level, upright = (mark.path.points for mark in cross())
    assert level == ((-ARM, 0.0), (ARM, 0.0))
    assert upright == ((0.0, -ARM), (0.0, ARM))
    assert {(m.kind, m.purpose) for m in cross()} == {(LineKind.REFERENCE, Purpose.CENTRE)}


def test_ticks_point_from_the_rim_to_the_axis_a_quarter_apart() -> None:
    ticks = [mark.path.points for mark in quarter_ticks(92.0)]
    assert [t[0] for t in ticks] == [pytest.approx(p) for p in ((92.0, 0.0), (0.0, 92.0), (-92.0, 0.0), (0.0, -92.0))]
    assert [hypot(*t[1]) for t in ticks] == pytest.approx([92.0 - CENTRE_TICK] * 4)


def test_a_narrow_ring_has_shorter_ticks() -> None:
    assert [hypot(*mark.path.points[1]) for mark in quarter_ticks(20.0, 16.0)] == pytest.approx([18.0] * 4)
