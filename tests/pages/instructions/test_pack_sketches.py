"""The sketches of a pack's own acts keep to their fields and say the pack's own numbers."""

from collections.abc import Callable

import pytest

from publisher.basics import Box
from publisher.pages.instructions.pack_acts import pack_acts
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.model import Drawn, Stroke, Words
from publisher.pages.sheet import ink_box
from publisher.pages.sheet.draft import Context
from publisher.pages.type import PICTURE_CUE, TRIM


def drawn(context: Context) -> dict[str, list[Drawn]]:
    found = {}
    for act in pack_acts(context, None):
        assert act.sketch is not None
        pen = SketchPen(context.type, (100.0, 50.0))
        act.sketch.draw(pen)
        found[act.key] = pen.drawn
    return found


def said(things: list[Drawn]) -> list[str]:
    return [thing.text for thing in things if isinstance(thing, Words)]


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("slug", ["toll-house", "bridge", "lock-stair", "island", "quay"])
def test_each_act_has_a_sketch_that_keeps_to_its_field(slug: str, paper: str, demo: Callable[..., Context]) -> None:
    context = demo(slug, paper)
    field = Box(100.0, 50.0, 100.0 + FIELD_WIDE, 50.0 + FIELD_TALL).grown(1.5)
    for key, things in drawn(context).items():
        boxes = [box for thing in things if (box := ink_box(context.type.faces, thing))]
        assert len(boxes) > 5 and max(box.beyond(field) for box in boxes) <= 0.0, key


def test_sketches_say_what_is_measured_and_how_many(demo: Callable[..., Context]) -> None:
    house, stair, bridge = drawn(demo("toll-house")), drawn(demo("lock-stair")), drawn(demo("bridge"))
    assert "99.5 to 100.5 mm (3.92 to 3.95 in)" in said(house["act:print"])
    assert "4.7 to 5.3 mm (0.186 to 0.208 in)" in said(house["act:board"])
    assert {"20 scraps", "100.0 mm (3.94 in)"} <= {*said(stair["act:board"])}
    assert "2 × A   2 × B   2 × C" in said(house["act:mark"])
    assert {"1 × A", "1 × B"} <= {*said(bridge["act:tape"])} and "act:tape" not in house
    assert {"1 × A", "1 × B", "1 × C", "0.3 to 0.5 mm"} <= {*said(house["act:card"])}


def test_the_arrow_of_one_taped_template_stands_beside_its_word(demo: Callable[..., Context]) -> None:
    """It leads from tiles to what they become, which both stand in the middle."""
    things = drawn(demo("island", "letter"))["act:tape"]
    (word,) = (thing for thing in things if isinstance(thing, Words) and thing.text.startswith("A: page"))
    (arrow,) = (thing for thing in things if isinstance(thing, Stroke) and thing.style == PICTURE_CUE)
    box = ink_box(demo("island", "letter").type.faces, word)
    assert box is not None
    assert 0.5 < arrow.paths[0].points[0][0] - box.right < 5.0


def test_a_tile_ends_at_its_trim_line_and_has_paper_round_it_elsewhere(demo: Callable[..., Context]) -> None:
    """Two tiles: one of them is trimmed at its one seam, and no trim line runs round a sheet."""
    strokes = [t for t in drawn(demo("island", "letter"))["act:tape"] if isinstance(t, Stroke)]
    assert [len(t.paths[0].points) for t in strokes if t.style == TRIM] == [2]
