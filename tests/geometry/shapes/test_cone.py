"""The shape cone against closed forms."""

from collections.abc import Callable
from math import hypot, pi

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Sizes = dict[str, float | str]


@pytest.mark.parametrize(("radius", "height"), [(3.0, 4.0), (60.0, 80.0), (50.0, 10.0), (20.0, 200.0)])
def test_a_sector_that_closes(plan: Plan, drawn: Draw, radius: float, height: float) -> None:
    part = drawn(plan("cone", {"radius": radius, "height": height}))
    slant = hypot(radius, height)
    assert area(part.outline) == pytest.approx(pi * radius * slant, rel=1e-12)
    outer = next(edge for edge in part.outline.outer.edges if edge.name == "outer")
    assert outer.length == pytest.approx(2.0 * pi * radius, abs=1e-9)
    assert [e.name for e in part.edges] == ["outer", "seam_right", "seam_left"]
    seams = [e.nominal_length for e in part.edges if e.centre is None]
    assert seams == pytest.approx([slant, slant], abs=1e-9)


def test_a_cone_that_is_nearly_a_disc(plan: Plan, refused: Refuse, drawn: Draw) -> None:
    (finding,) = refused(plan("cone", {"radius": 50.0, "height": 5.0}))
    assert "seams stand only 1.79° apart" in finding.message and finding.limit is not None
    part = drawn(plan("cone", {"radius": 50.0, "height": finding.limit + 1e-6}))
    assert 360.0 * 50.0 / part.edges[0].radius == pytest.approx(356.0)


def test_a_cone_too_small_to_cut(plan: Plan, refused: Refuse) -> None:
    (finding,) = refused(plan("cone", {"radius": 5.0, "height": 1.2}))
    assert "at the rim" in finding.message


def test_a_cone_bends_most_next_to_its_tip(plan: Plan, drawn: Draw) -> None:
    """Its radius of curvature grows in proportion to the way from the apex, by r/h: where it is a board's thickness, that is t·r/h."""
    part = drawn(plan("cone", {"radius": 130.0, "height": 120.0}))
    assert part.bending is not None
    assert part.bending.radius == pytest.approx(part.thickness * 130.0 / 120.0)
