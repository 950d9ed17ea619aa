"""Which acts a step shows: those that it names, else what follows from its stage, its parts and what it uses."""

from collections.abc import Callable
from dataclasses import replace

from publisher.design import StepPlan
from publisher.joints import acts_of_step
from publisher.pages.instructions.step_acts import acts_after, acts_before, standing
from publisher.pages.sheet.draft import Context


def step(context: Context, **changes: object) -> StepPlan:
    plain = replace(context.design.steps[0], uses=(), acts=None, picture=None)
    return replace(plain, **changes)  # type: ignore[arg-type]


def test_acts_follow_from_the_stage_unless_a_step_names_them(demo: Callable[..., Context]) -> None:
    house, stair = demo("toll-house"), demo("lock-stair")
    assert acts_of_step(house, step(house, uses=("pencil",))) == ("trace",)
    assert acts_of_step(house, step(house)) == ("cut_openings", "cut_outlines", "bevel")
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
    openings, outlines, bevels = acts_before(house, step(house))
    assert "2 × A and 2 × B" in openings.shows and "2 × C" not in openings.shows
    assert "2 × A, 2 × B and 2 × C" in outlines.shows
    assert "2 × C" in bevels.shows and "2 × A" not in bevels.shows
    assert acts_before(house, step(house, parts=())) == ()


def test_what_waits_is_what_stands_by_then(demo: Callable[..., Context]) -> None:
    house = demo("toll-house")
    glued = next(n for n, one in enumerate(house.design.steps, 1) if one.wait)
    walls, roofed = standing(house, glued), standing(house, glued + 1)
    assert walls is not None and walls.name == f"state:{glued}"
    assert roofed is not None and roofed.name == "whole:house"
    assert standing(house, 1) is None
    (shown,) = acts_after(house, house.design.steps[glued - 1], glued)
    assert "24 h" in shown.shows
    assert acts_after(house, step(house), 1) == ()
