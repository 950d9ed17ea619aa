"""Trace allowance: the outside shrinks, openings and slots grow, arcs stay arcs, names stay."""

from math import pi, radians, sin

import pytest

from publisher.basics import Arc, Line, Path, circle
from publisher.geometry import Region, area, polygon
from publisher.geometry.paths.offset import eroded, shift
from publisher.geometry.paths.rings import Pen, signed_area, straight

SQUARE = straight((((0.0, 0.0), "bottom"), ((40.0, 0.0), "right"), ((40.0, 20.0), "top"), ((0.0, 20.0), "left")))
SLOT = straight([(p, "slot") for p in ((10.0, 5.0), (30.0, 5.0), (30.0, 10.3), (10.0, 10.3))])


def test_a_slot_of_5_3_is_drawn_6_1_with_a_pencil_of_0_4() -> None:
    region = Region(SQUARE, (SLOT.reversed(),))
    template, lost = eroded(region, 0.4)
    assert lost == ()
    assert polygon(template).bounds == pytest.approx((0.4, 0.4, 39.6, 19.6))
    ys = [y for _, y in template.holes[0].points]
    assert max(ys) - min(ys) == pytest.approx(6.1)
    assert [run.name for run in template.outer.edges] == ["bottom", "right", "top", "left"]


def test_no_allowance_changes_nothing() -> None:
    region = Region(SQUARE)
    assert eroded(region, 0.0) == (region, ())


def test_arcs_stay_arcs() -> None:
    ring = Region(circle((0.0, 0.0), 50.0, "rim"), (circle((0.0, 0.0), 20.0, "bore", ccw=False),))
    template, lost = eroded(ring, 0.4)
    assert lost == ()
    assert {run.radius for run in template.outer.edges} == {49.6}
    assert {run.radius for run in template.holes[0].edges} == {20.4}
    assert area(template) == pytest.approx(pi * (49.6**2 - 20.4**2), rel=1e-12)


def test_a_notch_in_the_edge_is_traced_like_the_outside() -> None:
    pen = Pen((0.0, 0.0)).line((40.0, 0.0), "bottom").line((40.0, 20.0), "right").line((24.0, 20.0), "top")
    pen.line((20.0, 16.0), "notch").line((16.0, 20.0), "notch").line((0.0, 20.0), "top").line((0.0, 0.0), "left")
    template, lost = eroded(Region(pen.path()), 0.4)
    assert lost == ()
    low = min(y for x, y in template.outer.points if 19.0 < x < 21.0 and y > 10.0)
    assert low == pytest.approx(16.0 - 0.4 / sin(radians(45.0)))  # the mitre of the two pencil lines


def test_a_tab_narrower_than_the_pencil_is_lost_by_name() -> None:
    pen = Pen((0.0, 0.0)).line((40.0, 0.0), "bottom").line((40.0, 20.0), "right").line((20.7, 20.0), "top")
    pen.line((20.7, 25.0), "tab").line((20.0, 25.0), "tab").line((20.0, 20.0), "tab")
    pen.line((0.0, 20.0), "top").line((0.0, 0.0), "left")
    assert eroded(Region(pen.path()), 0.4)[1] == ("tab",)
    assert eroded(Region(pen.path()), 0.3)[1] == ()


def test_edges_may_move_by_different_distances() -> None:
    gable = straight((((0.0, 0.0), "bottom"), ((60.0, 0.0), "right"), ((60.0, 40.0), "slope"), ((0.0, 40.0), "left")))
    moved, lost = shift(gable, (0.0, 5.0, -2.0, 0.0))
    assert lost == () and signed_area(moved) == pytest.approx(55.0 * 42.0)
    moved, lost = shift(gable, (0.0, 61.0, 0.0, 0.0))
    assert lost == ("bottom", "slope")


def test_a_shifted_line_cuts_the_arc_that_it_touched() -> None:
    half = Path(
        (Line("base", (-10.0, 0.0), (10.0, 0.0)), Arc("rim", (10.0, 0.0), (-10.0, 0.0), (0.0, 0.0), 10.0, 180.0))
    )
    moved, lost = shift(half, (6.0, 0.0))
    assert lost == () and moved.edges[0].start == pytest.approx((-8.0, 6.0))
    assert shift(half, (10.5, 0.0))[1] == ("base", "rim")
    assert shift(half, (0.0, 11.0))[1] == ("rim",)


def test_a_tangent_arc_is_followed_smoothly() -> None:
    pen = Pen((0.0, 0.0)).line((30.0, 0.0), "bottom").arc((30.0, 10.0), (30.0, 5.0), 5.0, "end")
    stadium = pen.line((0.0, 10.0), "top").arc((0.0, 0.0), (0.0, 5.0), 5.0, "end").path()
    moved, lost = shift(stadium, [0.4] * 4)
    assert lost == () and signed_area(moved) == pytest.approx(30.0 * 9.2 + pi * 4.6**2)
