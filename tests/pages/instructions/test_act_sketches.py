"""The sketches of acts keep to their fields."""

from collections.abc import Callable
from functools import partial
from math import atan2, degrees

import pytest

from publisher.basics import Box
from publisher.pages.instructions import act_sketches as sketches
from publisher.pages.instructions.act_sketches import TALL, WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.model import Stroke, Words
from publisher.pages.sheet import ink_box
from publisher.pages.type import CUT, Setter

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


@pytest.mark.parametrize("bevel", [15.0, 45.0, 60.0])
def test_what_is_kept_is_at_the_left_and_the_blade_leans_by_the_bevel_away_from_what_it_must_not_cut(
    setter: Setter, bevel: float
) -> None:
    for outwards in (False, True):
        pen = SketchPen(setter, (0.0, 0.0))
        sketches.bevelling(pen, outwards=outwards, bevel=bevel)
        field = Box(0.0, 0.0, WIDE, TALL).grown(1.0)
        assert all(box.beyond(field) <= 0.0 for thing in pen.drawn if (box := ink_box(setter.faces, thing)))
        sides = {
            thing.text: thing.x for thing in pen.drawn if isinstance(thing, Words) if thing.text in {"keep", "waste"}
        }
        assert sides["keep"] < sides["waste"]
        ((top, low),) = [
            path.points
            for thing in pen.drawn
            if isinstance(thing, Stroke) and thing.style == CUT
            for path in thing.paths
        ]
        lean = degrees(atan2(low[0] - top[0], top[1] - low[1]))
        assert lean == pytest.approx(
            bevel if outwards else -bevel
        )  # inwards the face underneath, of what is kept at the left, is shorter


@pytest.mark.parametrize("bevel", [15.0, 45.0, 60.0])
def test_the_face_that_is_kept_ends_where_the_bevel_or_its_guide_begins(bevel: float) -> None:
    inwards, outwards = (sketches.kept_face(side, bevel) for side in (False, True))
    assert inwards.top == outwards.top == sketches.TOP and outwards.left >= 4.0
    assert outwards.right <= inwards.right < sketches.BEVEL_EDGE and outwards.width >= 1.0
