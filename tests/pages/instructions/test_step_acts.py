"""Which acts a step shows: those that it names, else what follows from its stage, its parts and what it uses."""

from collections import Counter
from collections.abc import Callable
from dataclasses import replace

from publisher.design import StepPlan
from publisher.geometry import Part
from publisher.joints import acts_of_step, parts_of_act, scored, standing
from publisher.joints.promised_acts import APART, SIGNS
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.instructions.step_acts import OF_PARTS, acts_after, acts_before
from publisher.pages.model import Stroke
from publisher.pages.sheet.draft import Context
from publisher.pages.type import PICTURE_CUE, Setter


def step(context: Context, **changes: object) -> StepPlan:
    plain = replace(context.design.steps[0], uses=(), acts=None, picture=None)
    return replace(plain, **changes)  # type: ignore[arg-type]


def without_steps(context: Context) -> Context:
    """No step names an act: else what a demo's own steps name is not done again."""
    return replace(context, design=replace(context.design, steps=()))


def test_acts_follow_from_the_stage_unless_a_step_names_them(demo: Callable[..., Context]) -> None:
    house, stair = demo("toll-house"), demo("lock-stair")
    assert acts_of_step(house, step(house, uses=("pencil",))) == ("trace",)
    assert acts_of_step(without_steps(house), step(house)) == ("cut_openings", "cut_outlines", "bevel")
    assert acts_of_step(house, step(house)) == ("cut_outlines", "bevel")  # its own steps cut the openings before
    assert acts_of_step(house, step(house, parts=("roof",))) == ("cut_outlines", "bevel")
    assert acts_of_step(stair, step(stair)) == ("cut_outlines",)
    assert acts_of_step(house, step(house, stage="texture")) == ("press",)
    assert acts_of_step(house, step(house, stage="glue")) == ()
    assert (
        acts_of_step(house, step(house, acts=("slit",))) == ("slit",)
        and acts_of_step(house, step(house, acts=())) == ()
    )


def test_an_act_shows_the_parts_that_it_is_done_to(demo: Callable[..., Context]) -> None:
    house = demo("toll-house")
    openings, outlines, bevels = acts_before(without_steps(house), step(house))
    assert "2 × A and 2 × B" in openings.shows and "2 × C" not in openings.shows
    assert "2 × A, 2 × B and 2 × C" in outlines.shows
    assert "2 × C" in bevels.shows and "2 × A" not in bevels.shows
    assert acts_before(house, step(house, parts=())) == ()


def test_what_waits_is_what_stands_by_then(demo: Callable[..., Context]) -> None:
    house = demo("toll-house")
    glued = next(n for n, one in enumerate(house.design.steps, 1) if one.wait)
    walls, roofed = standing(house.joined, glued), standing(house.joined, glued + 1)
    assert walls is not None and walls.name == f"state:{glued}"
    assert roofed is not None and roofed.name == "whole:house"
    assert standing(house.joined, 1) is None
    (shown,) = acts_after(house, house.design.steps[glued - 1], glued)
    assert "24 h" in shown.shows
    assert acts_after(house, step(house), 1) == ()


def signs_of(act: str, part: Part, setter: Setter) -> tuple[int, int]:
    """Return how often a sketch says that something is right, and that it is wrong."""
    pen = SketchPen(setter, (0.0, 0.0))
    OF_PARTS[act][0](pen, ((part, 1),))
    cues = [
        path.points
        for thing in pen.seen()
        if isinstance(thing, Stroke) and thing.style is PICTURE_CUE
        for path in thing.paths
    ]
    ticks = [line for line in cues if len(line) == 3 and line[1][1] < min(line[0][1], line[2][1])]
    ends = [frozenset((round(x, 3), round(y, 3)) for x, y in line) for line in cues if len(line) == 2]
    boxes = [(min(a for a, _ in e), min(b for _, b in e), max(a for a, _ in e), max(b for _, b in e)) for e in ends]
    return len(ticks), sum(count == 2 for count in Counter(boxes).values())


def test_the_signs_that_are_promised_of_each_act_are_those_that_its_sketch_has(demo: Callable[..., Context]) -> None:
    contexts = [demo(slug) for slug in ("toll-house", "bridge", "lock-stair", "quay", "island")]
    assert set(SIGNS) == {*OF_PARTS, APART}
    for act, signs in ((act, signs) for act, signs in SIGNS.items() if act in OF_PARTS):
        steps = [
            (context, step)
            for context in contexts
            for step in context.design.steps
            if act in acts_of_step(context, step)
        ]
        parts = [part for context, step in steps for part, _ in parts_of_act(context, step, act)]
        every = parts or [part for context in contexts for part in context.parts]
        fitting = [part for part in every if act != "score" or scored(part)] or every[:1]
        assert {signs_of(act, part, contexts[0].type) for part in fitting[:4]} == {signs}, act
