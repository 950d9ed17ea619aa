"""The shape hip_panel: the four slopes of a hipped roof fold up to one roof."""

from collections.abc import Callable
from math import acos, cos, degrees, dist, radians, sin, sqrt, tan

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Sizes = dict[str, float | str]


def nominal_area(part: Part) -> float:
    """Area in mm² inside the nominal edges: the underside of the slope."""
    points = [edge.nominal_start for edge in part.edges]
    pairs = zip(points, [*points[1:], points[0]], strict=True)
    return sum(ax * by - bx * ay for (ax, ay), (bx, by) in pairs) / 2.0


def length_of(part: Part, name: str) -> float:
    edge = part.edge(name)
    assert edge is not None
    return edge.nominal_length


@pytest.mark.parametrize("overhang", [0.0, 12.0])
@pytest.mark.parametrize(("along", "across", "pitch"), [(140.0, 110.0, 45.0), (200.0, 80.0, 30.0), (90.0, 90.0, 60.0)])
def test_hips_agree_and_the_slopes_cover_the_plan(
    plan: Plan, drawn: Draw, along: float, across: float, pitch: float, overhang: float
) -> None:
    sizes: Sizes = {"pitch": pitch, "overhang": overhang}
    side = drawn(plan("hip_panel", {"eave": along, "depth": across, **sizes}))
    end = drawn(plan("hip_panel", {"eave": across, "depth": along, **sizes}))
    # the hip over the plan's diagonal: run √2, rise tan(pitch), both on the overhang's larger plan
    run = across / 2.0 + overhang * cos(radians(pitch))
    hip = run * sqrt(2.0 + tan(radians(pitch)) ** 2)
    for part in (side, end):
        assert length_of(part, "right_hip") == pytest.approx(hip, abs=1e-9)
        assert length_of(part, "left_hip") == pytest.approx(hip, abs=1e-9)
    # net area = surface area: plan area / cos(pitch)
    more = 2.0 * overhang * cos(radians(pitch))
    surface = (along + more) * (across + more) / cos(radians(pitch))
    assert 2.0 * (nominal_area(side) + nominal_area(end)) == pytest.approx(surface, rel=1e-12)
    if along > across:
        assert length_of(side, "ridge") == pytest.approx(along - across)
    assert (end.edge("ridge") is None) and (side.edge("ridge") is None) == (along == across)
    assert length_of(side, "eave") == pytest.approx(along + more)
    assert length_of(end, "eave") == pytest.approx(across + more)


@pytest.mark.parametrize(("pitch", "other"), [(45.0, 45.0), (30.0, 60.0), (60.0, 35.0)])
def test_slopes_of_unlike_pitch(plan: Plan, drawn: Draw, pitch: float, other: float) -> None:
    along, across = 160.0, 100.0
    side = drawn(plan("hip_panel", {"eave": along, "depth": across, "pitch": pitch, "neighbour_pitch": other}))
    end = drawn(plan("hip_panel", {"eave": across, "depth": along, "pitch": other, "neighbour_pitch": pitch}))
    hips = [length_of(part, name) for part in (side, end) for name in ("right_hip", "left_hip")]
    assert hips == pytest.approx([hips[0]] * 4, abs=1e-9)
    covered = 2.0 * nominal_area(side) * cos(radians(pitch)) + 2.0 * nominal_area(end) * cos(radians(other))
    assert covered == pytest.approx(along * across, rel=1e-12)


def test_the_bevels_close_the_upper_faces(plan: Plan, drawn: Draw) -> None:
    side = drawn(plan("hip_panel", {"eave": 140.0, "depth": 110.0, "pitch": 35.0}))
    end = drawn(plan("hip_panel", {"eave": 110.0, "depth": 140.0, "pitch": 35.0}))
    hip, ridge = side.edge("right_hip"), side.edge("ridge")
    assert hip is not None and ridge is not None
    # half of the angle between the slopes' normals (0, −sin p, cos p) and (sin p, 0, cos p)
    assert hip.bevel == pytest.approx(degrees(acos(cos(radians(35.0)) ** 2)) / 2.0)
    assert ridge.bevel == pytest.approx(35.0)

    # on the drawn upper faces the hips agree too; the roof there is that of planes shifted outwards by the board
    def upper(part: Part) -> float:
        edge = part.edge("right_hip")
        assert edge is not None
        return dist(edge.start, edge.end)

    assert upper(side) == pytest.approx(upper(end), abs=1e-9)
    eave_up = hip.start[0] - hip.nominal_start[0]  # along the eave, t·tan(bevel)/sin(angle of the hip)
    angle = acos((140.0 / 2.0 - 15.0) / dist(hip.nominal_start, hip.nominal_end))
    assert eave_up == pytest.approx(5.0 * tan(radians(hip.bevel)) / sin(angle))


def test_a_ridge_too_short_to_cut(plan: Plan, refused: Refuse, drawn: Draw) -> None:
    (finding,) = refused(plan("hip_panel", {"eave": 111.0, "depth": 110.0, "pitch": 45.0}))
    assert "ridge is only 1 mm long" in finding.message and finding.limit == pytest.approx(110.0)
    drawn(plan("hip_panel", {"eave": finding.limit or 0.0, "depth": 110.0, "pitch": 45.0}))
