"""Lines and arcs: shifting, meeting."""

import pytest

from publisher.basics import Arc, Line
from publisher.geometry.paths.curves import meet, shifted

RIGHT = Line("a", (0.0, 0.0), (10.0, 0.0))
QUARTER = Arc("q", (5.0, 0.0), (0.0, 5.0), (0.0, 0.0), 5.0, 90.0)


def test_a_line_moves_to_its_left_and_an_arc_keeps_its_centre() -> None:
    assert shifted(RIGHT, 2.0) == Line("a", (0.0, 2.0), (10.0, 2.0))
    inner = shifted(QUARTER, 2.0)
    assert isinstance(inner, Arc) and inner.radius == 3.0 and inner.start == (3.0, 0.0) and inner.sweep == 90.0
    outer = shifted(QUARTER.reversed(), 2.0)
    assert isinstance(outer, Arc) and outer.radius == 7.0
    assert shifted(QUARTER, 5.0) is None  # the arc has shrunk to a point


def test_where_lines_and_circles_meet() -> None:
    up = Line("b", (3.0, -1.0), (3.0, 1.0))
    assert meet(RIGHT, up, (0.0, 0.0)) == pytest.approx((3.0, 0.0))
    assert meet(up, QUARTER, (3.0, 4.2)) == pytest.approx((3.0, 4.0))
    assert meet(QUARTER, up, (3.0, -4.2)) == pytest.approx((3.0, -4.0))
    other = Arc("o", (11.0, 0.0), (6.0, 5.0), (6.0, 0.0), 5.0, 90.0)
    assert meet(QUARTER, other, (3.0, 4.0)) == pytest.approx((3.0, 4.0))
    assert meet(RIGHT, Line("p", (0.0, 1.0), (5.0, 1.0)), (0.0, 0.0)) is None
    assert meet(Line("p", (0.0, 9.0), (5.0, 9.0)), QUARTER, (0.0, 0.0)) is None
    far = Arc("o", (105.0, 0.0), (100.0, 5.0), (100.0, 0.0), 5.0, 90.0)
    assert meet(QUARTER, far, (0.0, 0.0)) is None
    assert meet(QUARTER, Arc("o", (2.0, 0.0), (0.0, 2.0), (0.0, 0.0), 2.0, 90.0), (0.0, 0.0)) is None
