"""What is done to what stands: a clock with its time, weights and pins where the step takes them."""

from collections.abc import Callable

import pytest
import shapely

from publisher.basics import Box
from publisher.joints import Drawing, DrawnLine, pins_from
from publisher.pages.instructions import finish_sketches as sketches
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.model import Drawn, Words
from publisher.pages.sheet import ink_box
from publisher.pages.sheet.draft import Context

HELD: list[tuple[str, ...]] = [(), ("books",), ("pins", "white_glue"), ("masking_tape", "flat_board")]


def whole(context: Context) -> Drawing:
    return next(d for d in context.joined.drawings if d.name.startswith("whole:"))


def keeps(context: Context, things: list[Drawn]) -> None:
    field = Box(0.0, 0.0, FIELD_WIDE, FIELD_TALL).grown(1.5)
    assert max(box.beyond(field) for thing in things if (box := ink_box(context.type.faces, thing))) <= 0.0


@pytest.mark.parametrize("slug", ["toll-house", "bridge", "lock-stair"])
def test_what_waits_says_how_long_and_is_held(slug: str, demo: Callable[..., Context]) -> None:
    context, counts = demo(slug), []
    for uses in HELD:
        pen = SketchPen(context.type, (0.0, 0.0))
        sketches.waiting(pen, whole(context), "24 h", uses, ["2 × A"])
        keeps(context, pen.drawn)
        assert {"24 h", "2 × A"} <= {thing.text for thing in pen.drawn if isinstance(thing, Words)}
        counts.append(len(pen.drawn))
    assert all(count > counts[0] for count in counts[1:])


@pytest.mark.parametrize("share", [0.25, 0.45])
def test_pins_go_through_the_left_corner_of_what_dries(share: float) -> None:
    """Of a roof, a triangle 40 wide and 20 high, the outline begins farther in the higher one looks."""
    box = Box(17.0, 5.0, 57.0, 25.0)
    roof = (DrawnLine("contour", ((0.0, 0.0), (20.0, 20.0), (40.0, 0.0), (0.0, 0.0))),)
    assert sketches._corner(Drawing("whole:roof", "A roof", roof, (), 40.0, 20.0), box, share) == pytest.approx(
        17.0 + 20.0 * share
    )
    assert sketches._corner(None, box, share) == box.left


def test_pins_lean_to_one_another_and_meet_no_line_outside_what_they_hold(demo: Callable[..., Context]) -> None:
    """They come together in the board, where nobody sees them: two that cross before it would hold nothing."""
    context = demo("toll-house")
    with_pins = SketchPen(context.type, (0.0, 0.0))
    sketches.waiting(with_pins, whole(context), "24 h", ("pins",), [])
    lines = [shapely.LineString(points) for points in with_pins.lines]
    shafts = [line for line in lines if len(line.coords) == 2 and 5.0 < line.length < sketches.PIN_OUT + 0.1]
    upper, lower = sorted(shafts, key=lambda line: -line.coords[0][1])[:2]
    assert not upper.intersects(lower)
    assert upper.coords[1][1] > upper.coords[0][1] and lower.coords[1][1] < lower.coords[0][1]  # heads apart
    assert upper.coords[1][0] < upper.coords[0][0]  # and outside, at the left


def test_pins_come_from_where_they_hold_what_is_added(demo: Callable[..., Context]) -> None:
    bridge, house, island = demo("bridge"), demo("toll-house"), demo("island")

    def of(context: Context, title: str) -> str:
        steps = ["".join(map(str, step.title.pieces)) for step in context.design.steps]
        return pins_from(context.joined, next(n for n, said in enumerate(steps, 1) if title in said))

    assert of(bridge, "Bend the soffit in") == "below"
    assert of(house, "Glue the walls") == "corner"
    assert of(island, "Glue from the bottom") == "above"


def test_pins_from_above_and_below_end_at_what_they_hold() -> None:
    roof = (DrawnLine("contour", ((0.0, 0.0), (20.0, 20.0), (40.0, 0.0), (0.0, 0.0))),)
    stands = Drawing("whole:roof", "A roof", roof, (), 40.0, 20.0)
    box = Box(17.0, 5.0, 57.0, 25.0)
    assert sketches._upright(stands, box, 0.25, highest=True) == pytest.approx(15.0)
    assert sketches._upright(stands, box, 0.25, highest=False) == pytest.approx(5.0)
