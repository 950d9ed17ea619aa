"""What was put up dry is taken apart: it is shown whole, ticked, and then each of its parts, counted; only where a step ends so."""

from collections.abc import Callable
from dataclasses import replace

from publisher.basics import Box
from publisher.joints import APART, taken_apart
from publisher.pages.instructions.apart_sketches import taking_apart
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.instructions.step_acts import acts_after
from publisher.pages.model import Words
from publisher.pages.sheet import ink_box
from publisher.pages.sheet.draft import Context


def test_the_parts_are_counted_and_the_sketch_keeps_to_its_field(demo: Callable[..., Context]) -> None:
    context = demo("bridge")
    trial = next(d for d in context.joined.drawings if d.name.startswith("trial:"))
    pen = SketchPen(context.type, (0.0, 0.0))
    taking_apart(pen, trial, [(part, 2) for part in context.parts[:4]])
    assert {"2 × A", "2 × D"} <= {thing.text for thing in pen.drawn if isinstance(thing, Words)}
    boxes = [box for thing in pen.drawn if (box := ink_box(context.type.faces, thing))]
    assert max(box.beyond(Box(0.0, 0.0, FIELD_WIDE, FIELD_TALL).grown(1.5)) for box in boxes) <= 0.0


def test_only_the_last_step_that_puts_something_up_dry_ends_with_it_apart(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    steps = context.design.steps
    apart = [number for number, step in enumerate(steps, 1) if taken_apart(context, step)]
    (dry,) = (number for number, step in enumerate(steps, 1) if step.stage == "dry_fit")
    assert apart == [dry]
    assert [act.does.rpartition(":")[2] for act in acts_after(context, steps[dry - 1], dry)] == [APART]
    again = replace(steps[dry], stage="dry_fit")
    design = replace(context.design, steps=(*steps[:dry], again, *steps[dry + 1 :]))
    assert not taken_apart(replace(context, design=design), steps[dry - 1])
