"""A part as a flat picture: what is drawn of it, and how finely."""

from dataclasses import replace
from math import cos, pi, radians
from types import SimpleNamespace

import pytest
import shapely

from publisher.basics import LineKind, Purpose, polyline
from publisher.geometry import Mark
from publisher.joints.drawings.part_views import SHOWN, part_view


@pytest.mark.parametrize("purpose", list(Purpose))
def test_only_marks_that_one_looks_for_are_drawn(make: SimpleNamespace, purpose: Purpose) -> None:
    mark = Mark(LineKind.DRAW, purpose, polyline(((10.0, 10.0), (30.0, 10.0))))
    lines = part_view(replace(make.wall("w", 60, 40), marks=(mark,))).lines
    assert [line.length for line in lines.get("detail", [])] == ([20.0] if purpose in SHOWN else [])
    assert sum(line.length for line in lines["outline"]) == pytest.approx(200.0)


def test_a_closed_mark_is_drawn_to_its_end(make: SimpleNamespace) -> None:
    corners = ((10.0, 10.0), (30.0, 10.0), (30.0, 25.0), (10.0, 25.0))
    mark = Mark(LineKind.DRAW, Purpose.SURFACE, polyline(corners, closed=True))
    (line,) = part_view(replace(make.wall("w", 60, 40), marks=(mark,))).lines["detail"]
    assert line.length == pytest.approx(70.0)


@pytest.mark.parametrize("radius", [5.0, 92.0, 400.0])
def test_an_arc_is_drawn_as_finely_as_can_be_seen(make: SimpleNamespace, radius: float) -> None:
    """A chord over the angle t leaves its arc by r (1 - cos t/2) and t is 5 degrees at most."""
    (rim,) = part_view(make.disc(radius=radius, sagitta=0.001)).lines["outline"]
    apart = shapely.hausdorff_distance(shapely.Polygon(rim), shapely.Point(0, 0).buffer(radius, 256), densify=0.1)
    finest = max(0.04, 2 * radius / 1000)
    assert apart <= min(finest, radius * (1 - cos(radians(2.5)))) * 1.02 + 0.001 * radius / 92
    assert rim.length == pytest.approx(2 * pi * radius, rel=5e-4)
    assert len(rim.coords) >= 73
