"""Sizes of a spiral stair's layer that do not go together."""

from collections.abc import Callable

import pytest

from publisher.basics import Finding
from publisher.design import PartPlan

Plan = Callable[..., PartPlan]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
DEMO: dict[str, float | str] = {"core_radius": 30.0, "reach": 92.0, "step_angle": 40.0, "turn": 20.0}


@pytest.mark.parametrize(
    ("sizes", "name", "words"),
    [
        ({"core_sides": 2.0}, "core_sides", "cannot have 2 sides"),
        ({"hole_radius": 28.0}, "hole_radius", "leaves 2 mm of the core"),
        ({"hole_radius": 13.0, "core_sides": 3.0}, "hole_radius", "leaves 2 mm of the core"),
        ({"hole_radius": 0.2}, "hole_radius", "cannot be cut"),
        ({"step_end": "straight", "step_angle": 150.0}, "step_end", "comes within 23.811 mm of the axis"),
        ({"step_end": "straight", "notch": 4.0, "turn": 2.0}, "turn", "straight end"),
    ],
)
def test_layers_that_cannot_be(
    plan: Plan, refused: Refuse, sizes: dict[str, float | str], name: str, words: str
) -> None:
    (finding,) = refused(plan("spiral_stair_layer", {**DEMO, **sizes}))
    assert words in finding.message and finding.place is not None and finding.place.pointer.endswith(f"/{name}")
