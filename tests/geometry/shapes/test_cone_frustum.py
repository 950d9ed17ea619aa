"""The shape cone_frustum against closed forms."""

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


@pytest.mark.parametrize(
    ("radius", "top", "height"), [(30.0, 20.0, 30.0), (50.0, 30.0, 80.0), (100.0, 99.0, 50.0), (60.0, 20.0, 15.0)]
)
def test_a_ring_sector_that_closes(plan: Plan, drawn: Draw, radius: float, top: float, height: float) -> None:
    part = drawn(plan("cone_frustum", {"radius": radius, "top_radius": top, "height": height}))
    slant = hypot(height, radius - top)
    assert area(part.outline) == pytest.approx(pi * (radius + top) * slant, rel=1e-9)
    lengths = {edge.name: edge.length for edge in part.outline.outer.edges}
    assert lengths["outer"] == pytest.approx(2.0 * pi * radius, abs=1e-6)
    assert lengths["inner"] == pytest.approx(2.0 * pi * top, abs=1e-6)
    assert lengths["seam_left"] == pytest.approx(slant, abs=1e-9)
    assert lengths["seam_right"] == pytest.approx(slant, abs=1e-9)
    assert [e.name for e in part.edges] == ["outer", "seam_right", "inner", "seam_left"]


@pytest.mark.parametrize(
    ("sizes", "name", "words"),
    [
        ({"top_radius": 30.0}, "top_radius", "does not taper"),
        ({"top_radius": 31.0}, "top_radius", "does not taper"),
        ({"height": 1.0}, "height", "at the inner arc"),
        ({"top_radius": 28.0, "height": 2.0}, "height", "mm wide"),
    ],
)
def test_frustums_that_cannot_be(plan: Plan, refused: Refuse, sizes: Sizes, name: str, words: str) -> None:
    (finding, *_) = refused(plan("cone_frustum", {"radius": 30.0, "top_radius": 2.0, "height": 30.0, **sizes}))
    assert words in finding.message and finding.place is not None and finding.place.pointer.endswith(f"/{name}")
