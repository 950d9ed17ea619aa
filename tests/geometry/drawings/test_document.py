"""The size that a drawing states, and which way is up."""

from collections.abc import Callable

import pytest

from publisher.design import PartPlan
from publisher.geometry import Part, polygon

Plan = Callable[..., PartPlan]
HEAD = '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="80mm" viewBox="0 0 50 40">'
Lines = tuple[tuple[str, tuple[str, ...]], ...]
Draw = Callable[..., tuple[Part | None, str]]


def test_up_is_up(draw: Draw) -> None:
    part, _ = draw('<path id="outline" d="M0 0 H20 V10 Z"/>')
    assert part is not None
    corners = {(round(x, 6), round(y, 6)) for x, y in part.outline.outer.points}
    assert corners == {(0.0, 20.0), (40.0, 20.0), (40.0, 0.0)}


def test_plain_pixels_are_96_to_the_inch(draw: Draw) -> None:
    part, _ = draw('<rect id="outline" width="96" height="192"/>', head='<svg xmlns="http://www.w3.org/2000/svg">')
    assert part is not None and polygon(part.outline).bounds == pytest.approx((0.0, 0.0, 25.4, 50.8))


@pytest.mark.parametrize(
    ("aspect", "size"),
    [("", (20.0, 20.0)), ("xMinYMax slice", (40.0, 40.0)), ("none", (20.0, 40.0))],
)
def test_preserve_aspect_ratio(draw: Draw, aspect: str, size: tuple[float, float]) -> None:
    told = f'preserveAspectRatio="{aspect}"' if aspect else ""
    head = f'<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="200mm" viewBox="0 0 50 50" {told}>'
    part, _ = draw('<rect id="outline" width="10" height="10"/>', head=head)
    assert part is not None and polygon(part.outline).bounds[2:] == pytest.approx(size)
