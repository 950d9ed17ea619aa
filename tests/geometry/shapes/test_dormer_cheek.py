"""The shape dormer_cheek against closed forms."""

from collections.abc import Callable
from math import cos, radians, sin, tan

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan
from publisher.geometry import Part, area

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Sizes = dict[str, float | str]
CHEEK: Sizes = {"height": 30.0, "pitch": 40.0}


@pytest.mark.parametrize("top", [0.0, 10.0, 25.0])
@pytest.mark.parametrize("hand", ["right", "left"])
def test_edges_and_area(plan: Plan, drawn: Draw, top: float, hand: str) -> None:
    part = drawn(plan("dormer_cheek", {**CHEEK, "top_pitch": top, "hand": hand}))
    back = 30.0 / (tan(radians(40.0)) - tan(radians(top)))
    assert area(part.outline) == pytest.approx(30.0 * back / 2.0, rel=1e-12)
    lengths = {e.name: e.nominal_length for e in part.edges}
    assert lengths == pytest.approx(
        {"slope": back / cos(radians(40.0)), "top": back / cos(radians(top)), "front": 30.0}
    )
    if top == 0.0:
        assert lengths["slope"] == pytest.approx(30.0 / sin(radians(40.0)))
    front = part.edge("front")
    assert front is not None and front.start[0] == front.end[0] == pytest.approx(0.0 if hand == "right" else back)


@pytest.mark.parametrize(
    ("sizes", "name", "words"),
    [
        ({"top_pitch": 40.0}, "top_pitch", "never meets the main roof"),
        ({"top_pitch": 39.9}, "top_pitch", "too far away"),
        ({"pitch": 85.0, "height": 20.0}, "height", "runs only 1.75 mm back"),
    ],
)
def test_cheeks_that_cannot_be(plan: Plan, refused: Refuse, sizes: Sizes, name: str, words: str) -> None:
    (finding,) = refused(plan("dormer_cheek", {**CHEEK, **sizes}))
    assert words in finding.message and finding.place is not None and finding.place.pointer.endswith(f"/{name}")
