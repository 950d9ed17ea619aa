"""What sketches show in the hand follows from what a step uses, and what no step says they do not show."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Purpose
from publisher.design import StepPlan
from publisher.joints import (
    acts_of_step,
    brushed_on,
    coat_scenes,
    covering_of,
    cut_with_knife,
    from_bottle,
    has_relief,
    painted_with,
    sealed_with,
)
from publisher.joints.act_scenes import act_scenes
from publisher.joints.glue_signs import glue_signs
from publisher.pages.instructions.step_acts import acts_after, acts_before
from publisher.pages.instructions.step_block import things_needed
from publisher.pages.sheet.draft import Context

SEALED = [
    (("white_glue",), ("brush", "bottle", "pot", "sealed"), "thinned glue"),
    (("filler", "white_glue"), ("brush", "bottle", "pot", "sealed"), "thinned glue"),
    (("acrylic_paint", "brushes"), ("brush", "pot", "sealed"), "with paint on"),
    (("filler", "brushes"), ("brush", "pot"), "A brush with filler"),
    (("filler",), ("pot",), "A pot of filler"),
    (("spray_can",), ("can",), "A spray can"),
    (("file",), ("brush", "pot"), "A brush and a pot"),
    ((), ("brush", "pot"), "A brush and a pot"),
]
PAINTED = [
    (("acrylic_paint",), ("brush", "pot"), "two pots of paint"),
    ((), ("brush", "pot"), "two pots of paint"),
    (("spray_paint", "brushes"), ("brush", "pot"), "two pots of paint"),
    (("spray_paint",), ("can",), "A spray can"),
    (("spray_can", "varnish"), ("can",), "A spray can"),
    (("varnish", "brushes"), ("brush", "pot"), "a pot of varnish"),
]


def changed(context: Context, stage: str, uses: tuple[str, ...], **more: object) -> tuple[Context, StepPlan]:
    """Return a demo whose last step is of this stage and uses this, and that step."""
    plain = replace(context.design.steps[-1], stage=stage, uses=uses, acts=None, wait="", picture=None)
    last = replace(plain, **more)  # type: ignore[arg-type]
    return replace(context, design=replace(context.design, steps=(*context.design.steps[:-1], last))), last


def promised(context: Context, act: str) -> set[str]:
    """Return the scenes that are promised of an act of the last step."""
    key = f"step:{len(context.design.steps)}:does:{act}:scene:"
    found = (one.key for one in act_scenes(context.design, context.parts, context.joined))
    return {name.removeprefix(key) for name in found if name.startswith(key)}


@pytest.mark.parametrize(("stage", "uses", "scenes", "shows"), [
    *(("seal", *row) for row in SEALED), *(("paint", *row) for row in PAINTED),
])  # fmt: skip
def test_a_coat_is_drawn_of_what_the_step_takes(
    demo: Callable[..., Context], stage: str, uses: tuple[str, ...], scenes: tuple[str, ...], shows: str
) -> None:
    context, step = changed(demo("island"), stage, uses)
    assert coat_scenes(stage, uses) == scenes
    assert promised(context, stage) == set(scenes)
    (made,) = acts_after(context, step, len(context.design.steps))
    assert shows in made.shows
    assert ("brushes" in things_needed(context, step)) is ("brush" in scenes)


def test_what_coats_is_told_from_what_fills() -> None:
    assert sealed_with(("filler",)) == "filler" and sealed_with(("filler", "varnish")) == "paint"
    assert painted_with(("varnish", "acrylic_paint")) == "paint"
    assert not brushed_on("seal", ("filler",)) and brushed_on("paint", ())


def test_only_paint_from_pots_is_shown_on_what_is_raised(demo: Callable[..., Context]) -> None:
    house = demo("toll-house")
    assert has_relief(house)
    for uses, wanted in ((("acrylic_paint",), True), (("spray_paint",), False), (("varnish",), False)):
        context, _ = changed(house, "paint", uses)
        assert ("painted_raised" in promised(context, "paint")) is wanted


@pytest.mark.parametrize(
    ("uses", "act"),
    [(("pins",), None), ((), None), (("file",), None), (("pencil",), "draw"), (("blunt_pencil",), "press")],
)
def test_what_has_no_pattern_is_pressed_by_a_blunt_pencil_alone(
    demo: Callable[..., Context], uses: tuple[str, ...], act: str | None
) -> None:
    """Layers whose marks are pricked through were shown with dents, and painted with paint in these."""
    island = demo("island")
    context, step = changed(island, "texture", uses, parts=tuple(part.id for part in island.parts))
    assert not any(
        mark.purpose in (Purpose.SURFACE, Purpose.JOINT_TICK) for part in context.parts for mark in part.marks
    )
    assert acts_of_step(context, step) == ((act,) if act else ())
    assert has_relief(context) is (act == "press")
    assert ("blunt_pencil" in things_needed(context, step)) is (act == "press")


def test_the_island_is_painted_without_dents(demo: Callable[..., Context]) -> None:
    island = demo("island")
    assert not has_relief(island) and "painted_raised" not in promised(island, "paint")
    assert promised(island, "seal") == {"brush", "bottle", "pot", "sealed"}


def test_no_knife_follows_an_outline_that_a_hot_wire_cuts(demo: Callable[..., Context]) -> None:
    house = demo("toll-house")
    for uses, knife in ((("hot_wire_cutter",), False), (("hot_wire_cutter", "craft_knife"), True), ((), True)):
        context, step = changed(house, "cut", uses, parts=("gable",), acts=("cut_openings", "cut_outlines"))
        assert cut_with_knife(step) is knife
        for act in ("cut_openings", "cut_outlines"):
            assert ("knife" in promised(context, act)) is knife
        assert all(("knife" in made.shows) is knife for made in acts_before(context, step))


def test_a_bottle_stands_for_glue_that_comes_out_of_one(demo: Callable[..., Context]) -> None:
    house, bridge = demo("toll-house"), demo("bridge")
    for uses, bottle in (
        (("white_glue", "masking_tape"), True), (("superglue",), True), ((), True),
        (("hot_glue",), False), (("hot_glue_gun",), False), (("masking_tape",), False), (("spray_glue",), False),
    ):  # fmt: skip
        number = next(n for n, one in enumerate(house.design.steps) if one.acts == ("glue",))
        step = replace(house.design.steps[number], uses=uses)
        design = replace(house.design, steps=(*house.design.steps[:number], step, *house.design.steps[number + 1 :]))
        assert from_bottle(step) is bottle
        found = {one.key for one in act_scenes(design, house.parts, house.joined)}
        assert (f"step:{number + 1}:does:glue:scene:bottle" in found) is bottle
        assert (f"step:{number + 1}:does:wait:scene:bottle" in found) is (bottle and bool(uses))
        every = tuple(replace(one, uses=uses) for one in bridge.design.steps)
        signs = glue_signs(replace(bridge.design, steps=every), bridge.joined.drawings)
        assert any(one.drawing.endswith(":with_glue") for one in signs) is (bottle and bool(uses))


@pytest.mark.parametrize(
    ("uses", "what", "scenes"),
    [
        (("masking_tape",), "masking_tape", {"coming_down_tape"}),
        (("white_glue", "masking_tape"), "thin_paper", {"coming_down_paper", "bottle"}),
        (("spray_glue",), "thin_paper", {"coming_down_paper"}),
        ((), "thin_paper", {"coming_down_paper", "bottle"}),
    ],
)
def test_what_is_not_bent_is_covered_with_what_the_step_names(
    demo: Callable[..., Context], uses: tuple[str, ...], what: str, scenes: set[str]
) -> None:
    context, step = changed(demo("toll-house"), "cut", uses, parts=("gable",))
    step = replace(step, acts=("cover",))
    context = replace(context, design=replace(context.design, steps=(*context.design.steps[:-1], step)))
    assert covering_of(context, step) == (what,)
    assert promised(context, "cover") == scenes
    (made,) = acts_before(context, step)
    assert ("tape" in made.shows) is (what == "masking_tape") and ("glued" in made.shows) is ("bottle" in scenes)
