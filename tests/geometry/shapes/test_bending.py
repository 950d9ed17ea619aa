"""One rule of slits for all that is bent."""

from itertools import pairwise

import pytest

from publisher.basics import LineKind, Purpose
from publisher.geometry.shapes.bending import slit_depth, slit_marks, slits_in


@pytest.mark.parametrize(
    ("thickness", "depth"), [(4.5, 3.0), (5.0, 3.3), (25.4 * 3 / 16, 3.1), (10.0, 6.6), (3.0, 1.5), (1.0, 0.0)]
)
def test_a_slit_reaches_two_thirds_and_leaves_a_millimetre_and_a_half(thickness: float, depth: float) -> None:
    assert slit_depth(thickness) == pytest.approx(depth)
    assert slit_depth(thickness) <= min(2 * thickness / 3, max(thickness - 1.5, 0.0)) + 1e-9


def test_slits_stand_a_thickness_apart(thickness: float = 5.0) -> None:
    marks = tuple(slit_marks(10.0, 112.0, 60.0, thickness))
    xs = [mark.path.points[0][0] for mark in marks]
    assert len(xs) == slits_in(102.0, thickness) == 20
    assert [b - a for a, b in pairwise(xs)] == pytest.approx([5.1] * 19)
    assert (xs[0], xs[-1]) == pytest.approx((12.55, 109.45))
    assert {(m.kind, m.purpose, m.text) for m in marks} == {(LineKind.SCORE, Purpose.BEND, "")}
