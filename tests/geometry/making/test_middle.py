"""The middle of a part: its axis where its shape has one, else the middle of its box."""

from collections.abc import Callable
from typing import Any

import pytest

from publisher.geometry import middle_of


@pytest.mark.parametrize(
    ("shape", "sizes", "middle"),
    [
        ("rectangle", {"width": 120.0, "height": 60.0}, (60.0, 30.0)),
        ("disc", {"radius": 40.0}, (0.0, 0.0)),
        ("regular_polygon", {"sides": 3.0, "radius": 40.0}, (0.0, 0.0)),  # the middle of its box lies 10 mm lower
        ("spiral_stair_layer", {"core_radius": 30.0, "reach": 92.0, "step_angle": 40.0, "turn": 20.0}, (0.0, 0.0)),
        (
            "spiral_stair_layer",
            {"core_radius": 30.0, "reach": 92.0, "step_angle": 40.0, "turn": 20.0, "hole_radius": 3.0},
            (0.0, 0.0),
        ),
    ],
)
def test_the_middle_of_a_shape(
    plan: Callable[..., Any],
    drawn: Callable[..., Any],
    shape: str,
    sizes: dict[str, float],
    middle: tuple[float, float],
) -> None:
    assert middle_of(drawn(plan(shape, sizes))) == pytest.approx(middle, abs=1e-9)
