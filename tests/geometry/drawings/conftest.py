"""Parts from small drawings."""

from collections.abc import Callable

import pytest

from publisher.basics import Place
from publisher.design import DrawingPlan, PartPlan
from publisher.geometry import Part
from publisher.geometry.parts import make_part

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="80mm" viewBox="0 0 50 40">'
Lines = tuple[tuple[str, tuple[str, ...]], ...]


@pytest.fixture(scope="module")
def draw(plan: Callable[..., PartPlan]) -> Callable[..., tuple[Part | None, str]]:
    def run(
        body: str, head: str = HEAD, width: float | None = None, lines: Lines = (), **more: object
    ) -> tuple[Part | None, str]:
        drawing = DrawingPlan("sign.svg", "outline", width, None, lines, Place("spec.yaml", 70, 5))
        part, found = make_part(plan("", {}, drawing=drawing, **more), f"{head}{body}</svg>".encode())
        for finding in found:
            assert finding.place is not None and finding.hint
        return part, " / ".join(f.message for f in found)

    return run
