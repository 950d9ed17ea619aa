"""Joint ticks round the edge of a layer: the ring closes, corners keep free of slivers, courses can be shifted."""

from collections.abc import Callable
from math import atan2, hypot, pi

import numpy as np
import pytest
import shapely

from publisher.basics import Purpose
from publisher.design import PartPlan, SurfacePlan
from publisher.geometry import Part, polygon
from tests.geometry.surfaces.conftest import Drawing

On = Callable[..., Drawing]
Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]


@pytest.mark.parametrize(("radius", "wanted"), [(40.0, 9.0), (25.0, 7.3), (90.0, 11.0)])
def test_whole_units_close_the_ring(
    plan: Plan, drawn: Draw, surface: Callable[..., SurfacePlan], radius: float, wanted: float
) -> None:
    part = drawn(plan("disc", {"radius": radius}, surface=surface("edge_joints", length=wanted)))
    ticks = [m for m in part.marks if m.purpose is Purpose.JOINT_TICK]
    assert len(ticks) == round(2.0 * pi * radius / wanted)
    at = np.sort([atan2(m.path.points[0][1], m.path.points[0][0]) % (2.0 * pi) for m in ticks])
    gaps = np.diff(np.append(at, at[0] + 2.0 * pi)) * radius
    assert gaps == pytest.approx(2.0 * pi * radius / len(ticks), rel=1e-3)
    for tick in ticks:
        outer, inner = (hypot(*p) for p in tick.path.points)
        assert outer == pytest.approx(radius, abs=0.006) and inner == pytest.approx(radius - 3.0, abs=0.006)


def test_an_offset_of_half_a_unit_breaks_joint(on: On) -> None:
    layer = shapely.Point(0.0, 0.0).buffer(40.0, quad_segs=64)
    even, _ = on(layer, "edge_joints", length=9.0)
    odd, _ = on(layer, "edge_joints", length=9.0, offset=0.5)
    rim = shapely.LineString(layer.exterior.coords)
    a, b = (shapely.line_locate_point(rim, shapely.points([m.path.points[0] for m in marks])) for marks in (even, odd))
    away = np.abs(a[:, None] - b[None, :])
    unit = rim.length / len(even)
    assert np.minimum(away, rim.length - away).min() == pytest.approx(unit / 2.0, rel=1e-3)


def test_no_sliver_beside_a_corner(on: On) -> None:
    for turns in np.linspace(0.0, 1.0, 9)[:-1]:
        marks, _ = on(shapely.box(0.0, 0.0, 95.0, 62.0), "edge_joints", length=9.0, offset=float(turns))
        unit = 2.0 * (95.0 + 62.0) / round(2.0 * (95.0 + 62.0) / 9.0)
        corners = shapely.multipoints([(0, 0), (95, 0), (95, 62), (0, 62)])
        ticks = shapely.points([m.path.points[0] for m in marks])
        assert shapely.distance(ticks, corners).min() >= unit / 4.0 - 0.01


@pytest.mark.parametrize(
    ("shape", "sizes"),
    [
        ("regular_polygon", {"sides": 6, "radius": 50.0}),
        ("disc", {"radius": 45.0}),
        ("ring", {"radius": 50.0, "hole_radius": 38.0}),
    ],
)
def test_ticks_stand_on_a_traced_template(
    plan: Plan, drawn: Draw, surface: Callable[..., SurfacePlan], shape: str, sizes: dict[str, float]
) -> None:
    part = drawn(plan(shape, sizes, surface=surface("edge_joints", length=9.0), trace_allowance=0.4))
    traced = polygon(part.template).buffer(1e-6)
    ticks = [m for m in part.marks if m.purpose is Purpose.JOINT_TICK]
    assert len(ticks) > 25
    assert all(traced.covers(shapely.LineString(m.path.points)) for m in ticks)
    assert max(traced.exterior.distance(shapely.Point(m.path.points[0])) for m in ticks) < 0.03
