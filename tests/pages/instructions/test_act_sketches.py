"""The sketches of acts keep to their fields."""

from collections.abc import Callable
from functools import partial

import pytest

from publisher.basics import Box
from publisher.pages.instructions import act_sketches as sketches
from publisher.pages.instructions.act_sketches import TALL, WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.model import Words
from publisher.pages.sheet import ink_box
from publisher.pages.type import Setter

SKETCHES = [
    sketches.tracing, sketches.knife_off_the_card, sketches.strokes, sketches.turning, sketches.corners, sketches.slitting,
    partial(sketches.bevelling, outwards=False), partial(sketches.bevelling, outwards=True),
    sketches.pushing, sketches.pinning, sketches.weighing, sketches.sanding, sketches.peeling,
]  # fmt: skip


@pytest.mark.parametrize("sketch", SKETCHES)
def test_a_sketch_keeps_to_its_field(sketch: Callable[[SketchPen], None], setter: Setter) -> None:
    pen = SketchPen(setter, (100.0, 50.0))
    sketch(pen)
    field = Box(100.0, 50.0, 100.0 + WIDE, 50.0 + TALL).grown(1.0)
    boxes = [box for thing in pen.drawn if (box := ink_box(setter.faces, thing))]
    assert len(boxes) > 5
    assert max(box.beyond(field) for box in boxes) <= 0.0


def test_what_is_kept_has_its_longer_face_up_unless_all_bevels_go_outwards(setter: Setter) -> None:
    for outwards, first in ((False, "waste"), (True, "keep")):
        pen = SketchPen(setter, (0.0, 0.0))
        sketches.bevelling(pen, outwards=outwards)
        sides = {
            thing.text: thing.x for thing in pen.drawn if isinstance(thing, Words) if thing.text in {"keep", "waste"}
        }
        assert min(sides, key=lambda side: sides[side]) == first and len(sides) == 2
