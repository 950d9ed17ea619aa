"""The shape buttress against closed forms."""

from collections.abc import Callable
from math import radians, tan

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Sizes = dict[str, float | str]
FIN: Sizes = {"foot": 30.0, "head": 6.0, "height": 90.0, "stages": 3.0, "slope": 60.0}


@pytest.mark.parametrize(("stages", "head"), [(1, 0.0), (1, 6.0), (3, 6.0), (4, 0.0)])
def test_area_and_edges(plan: Plan, drawn: Draw, stages: int, head: float) -> None:
    part = drawn(plan("buttress", {**FIN, "stages": float(stages), "head": head}))
    back, each = (30.0 - head) / stages, 90.0 / stages
    up = back * tan(radians(60.0))
    # each stage: a rectangle as deep as its foot, less the triangle over its weathering
    assert area(part.outline) == pytest.approx(
        sum(each * (30.0 - k * back) - back * up / 2.0 for k in range(stages)), rel=1e-12
    )
    steps = [f"{kind}_{k + 1}" for k in range(stages) for kind in ("front", "weathering")]
    assert [e.name for e in part.edges] == ["bottom", *steps, *(["top"] if head else []), "back"]
    for k in range(stages):
        slope = part.edge(f"weathering_{k + 1}")
        assert slope is not None
        (ax, ay), (bx, by) = slope.start, slope.end
        assert (by - ay) / (ax - bx) == pytest.approx(tan(radians(60.0)))
    wall = part.edge("back")
    assert wall is not None and wall.nominal_length == pytest.approx(90.0)


@pytest.mark.parametrize(
    ("sizes", "name", "words"),
    [
        ({"head": 29.0}, "head", "steps back 0.333 mm"),
        ({"head": 1.0}, "head", "too thin to cut"),
        ({"height": 45.0}, "height", "no upright face"),
    ],
)
def test_buttresses_that_cannot_be(plan: Plan, refused: Refuse, sizes: Sizes, name: str, words: str) -> None:
    (finding,) = refused(plan("buttress", {**FIN, **sizes}))
    assert words in finding.message and finding.place is not None and finding.place.pointer.endswith(f"/{name}")
