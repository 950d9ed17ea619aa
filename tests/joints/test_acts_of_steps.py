"""Which acts are done to which parts, and on which face."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Purpose
from publisher.design import StepPlan, SurfacePlan
from publisher.joints import (
    acts_of_step,
    bevelled_later,
    counted_parts,
    covering_of,
    face_up,
    has_relief,
    how_made,
    opened_before,
    parts_of_act,
    pricked_marks,
    turned_over,
)
from publisher.joints.acts_of_steps import LEAST_PRICKED
from publisher.pages.instructions.step_acts import acts_before, strip_parts
from publisher.pages.instructions.step_block import things_needed
from publisher.pages.sheet.draft import Context


def step(context: Context, **changes: object) -> StepPlan:
    plain = replace(context.design.steps[0], uses=(), acts=None, picture=None)
    return replace(plain, **changes)  # type: ignore[arg-type]


def with_steps(context: Context, *steps: StepPlan) -> Context:
    return replace(context, design=replace(context.design, steps=steps))


def made(context: Context, **how: str) -> Context:
    """The design with the patterns of some parts made so."""

    def surface(name: str, before: SurfacePlan | None) -> SurfacePlan | None:
        return replace(before, how=how[name]) if before is not None and name in how else before

    plans = tuple(replace(plan, surface=surface(plan.id, plan.surface)) for plan in context.design.parts)
    return replace(context, design=replace(context.design, parts=plans))


def test_a_pattern_is_made_as_its_surface_says(demo: Callable[..., Context]) -> None:
    house = demo("toll-house")
    texture = step(house, stage="texture", parts=("gable", "side"), uses=("blunt_pencil",))
    assert acts_of_step(house, texture) == ("press",)
    assert acts_of_step(made(house, gable="drawn", side="drawn"), texture) == ("draw",)
    mixed = made(house, side="drawn")
    assert acts_of_step(mixed, texture) == ("press", "draw")
    pressed, drawn = acts_before(mixed, texture)
    assert "of 2 × A, ticked" in pressed.shows and "faces of 2 × B" in drawn.shows
    assert [part.letter for part, _ in parts_of_act(mixed, texture, "draw")] == ["B"]


def test_what_is_left_to_the_buyer_follows_from_the_paper_on_the_board(demo: Callable[..., Context]) -> None:
    house = demo("toll-house")
    gable = house.parts[0]
    papered = replace(
        house,
        design=replace(house.design, boards=tuple(replace(board, faces="paper_both") for board in house.design.boards)),
    )
    assert how_made(house, step(house), gable) == "press"
    assert how_made(papered, step(papered), gable) == "draw"
    assert how_made(papered, step(papered, uses=("blunt_pencil",)), gable) == "press"
    assert how_made(made(papered, gable="pressed"), step(papered), gable) == "press"


def test_what_is_bent_is_covered_and_slit_when_it_is_cut_unless_a_step_says_so(demo: Callable[..., Context]) -> None:
    bridge = demo("bridge")
    cut = step(bridge, stage="cut", parts=("soffit",))
    assert acts_of_step(bridge, cut) == ("cut_outlines",)
    alone = with_steps(bridge, cut)
    assert acts_of_step(alone, cut) == ("cut_outlines", "cover", "slit")
    rolled = step(bridge, stage="glue", parts=("soffit",), uses=("bottle",))
    assert acts_of_step(with_steps(bridge, rolled), rolled) == ("roll",)
    assert acts_of_step(bridge, rolled) == ()


def test_a_piece_is_turned_over_where_the_next_act_is_on_its_other_face(demo: Callable[..., Context]) -> None:
    bridge = demo("bridge")
    both = next(one for one in bridge.design.steps if one.acts == ("cover", "slit"))
    soffit = next(part for part in bridge.parts if part.bending is not None)
    assert face_up(bridge, soffit) == "inside"
    assert turned_over(bridge, both, "cover") and turned_over(bridge, both, "slit")
    cover, slit = (step(bridge, parts=("soffit",), acts=(act,)) for act in ("cover", "slit"))
    assert not turned_over(with_steps(bridge, cover), cover, "cover")  # nothing was done to it before
    parted = with_steps(bridge, cover, slit)
    assert turned_over(parted, slit, "slit")
    assert "It was turned over before." in acts_before(parted, slit)[0].shows
    first = next(one for one in bridge.design.steps if one.parts and one.stage == "cut")
    assert not any(turned_over(bridge, first, act) for act in acts_of_step(bridge, first))


def test_a_compass_strip_draws_what_has_no_template(demo: Callable[..., Context]) -> None:
    stair = demo("lock-stair")
    assert strip_parts(stair) == {"plinth"}
    first = stair.design.steps[0]
    traced, drawn = acts_before(stair, first)
    assert "20 × A" in traced.shows and "1 × B" not in traced.shows
    assert drawn.shows == "A strip of card on a pin, and a pencil in its other end that draws 1 × B"


@pytest.mark.parametrize(("cover", "what"), [("paper", "thin_paper"), ("tape", "masking_tape"), ("none", "thin_paper")])
def test_what_covers_is_among_what_is_needed(demo: Callable[..., Context], cover: str, what: str) -> None:
    bridge = demo("bridge")
    covered = tuple(
        replace(part, bending=replace(part.bending, covered=cover)) if part.bending is not None else part
        for part in bridge.parts
    )
    context = replace(bridge, parts=covered)
    one = step(context, parts=("soffit",), acts=("cover",))
    assert covering_of(context, one) == (what,)
    assert what in things_needed(context, one)
    assert covering_of(context, replace(one, acts=())) == ()


def test_a_tool_that_a_picture_shows_is_among_what_is_needed(demo: Callable[..., Context]) -> None:
    house = demo("toll-house")
    assert "blunt_pencil" in things_needed(house, step(house, stage="texture", parts=("gable",), uses=("steel_rule",)))


@pytest.mark.parametrize(
    ("slug", "wanted"),
    [
        (
            "lock-stair",
            {"Stack the stair dry": (19, 1), "Glue the first layer to the plinth": (1, 1), "Wind up": (18,)},
        ),
        ("bridge", {"Stack the piers": (8,), "Cut the piers": (9,)}),
    ],
)
def test_a_step_says_how_many_layers_it_takes_in_hand(
    demo: Callable[..., Context], slug: str, wanted: dict[str, tuple[int, ...]]
) -> None:
    """Of layers those that it adds, without spares; all of them where they are put up dry; cutting takes the spares too."""
    context = demo(slug)
    said = {
        context.say(one.title): tuple(sorted((n for _, n in counted_parts(context, one)), reverse=True))
        for one in context.design.steps
    }
    assert {title: said[title] for title in wanted} == wanted
    promised = {figure.value for figure in context.joined.figures if figure.name.startswith("copies of")}
    assert {
        count for title, counts in wanted.items() if "Cut" not in title and "dry" not in title for count in counts
    } <= promised


def test_edges_are_left_for_a_bevel_only_where_a_step_cuts_it(demo: Callable[..., Context]) -> None:
    house = demo("toll-house")
    (roof,) = [part for part in house.parts if any(edge.bevel for edge in part.edges)]
    outlines = step(house, stage="cut", parts=(roof.id,), acts=("cut_outlines",))
    bevels = step(house, stage="cut", parts=(roof.id,), acts=("bevel",))
    for steps, left in (((outlines,), set()), ((outlines, bevels), {roof.id}), ((bevels, outlines), set())):
        assert bevelled_later(with_steps(house, *steps), outlines) == left


def test_openings_are_open_where_an_act_before_cut_them(demo: Callable[..., Context]) -> None:
    house = demo("toll-house")
    gable = house.parts[0]
    outlines = step(house, stage="cut", parts=(gable.id,), acts=("cut_outlines",))
    openings = step(house, stage="cut", parts=(gable.id,), acts=("cut_openings",))
    both = step(house, stage="cut", parts=(gable.id,), acts=("cut_openings", "cut_outlines"))
    for steps, asked, opened in (
        ((openings, outlines), outlines, {gable.id}),
        ((outlines, openings), outlines, set()),
        ((both,), both, {gable.id}),
    ):
        assert opened_before(with_steps(house, *steps), asked) == opened


def test_pins_go_through_long_straight_lines_of_a_card_but_no_slits(demo: Callable[..., Context]) -> None:
    parts = {part.letter: part for part in demo("bridge").parts}
    assert pricked_marks(parts["A"]) and pricked_marks(parts["F"]) and not pricked_marks(parts["E"])
    assert all(mark.path.length >= LEAST_PRICKED for mark in pricked_marks(parts["A"]))
    assert not {mark.purpose for part in parts.values() for mark in pricked_marks(part)} & {Purpose.BEND}


def test_of_what_is_built_more_than_once_each_has_its_share(demo: Callable[..., Context]) -> None:
    figures = {figure.name: figure.value for figure in demo("bridge").joined.figures}
    shares = {name: value for name, value in figures.items() if name.endswith(" to each")}
    assert shares == {"copies of pier_layer that step 10 adds to each": 4.0}
    assert figures["copies of pier_layer that step 10 adds"] == 8.0


def test_what_is_pressed_in_leaves_the_rest_raised(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    smooth = tuple(one for one in context.design.steps if "press" not in acts_of_step(context, one))
    assert has_relief(context)
    assert not has_relief(replace(context, design=replace(context.design, steps=smooth)))


def test_openings_are_cut_once(demo: Callable[..., Context]) -> None:
    house = demo("toll-house")
    holes = step(house, stage="cut", parts=("gable",), acts=("cut_openings",))
    outlines = step(house, stage="cut", parts=("gable",), uses=("craft_knife",))
    assert acts_of_step(with_steps(house, holes, outlines), outlines) == ("cut_outlines",)
    assert acts_of_step(with_steps(house, outlines), outlines) == ("cut_openings", "cut_outlines")
    both = step(house, stage="cut", parts=("gable", "side"), uses=("craft_knife",))
    assert acts_of_step(with_steps(house, holes, both), both) == ("cut_openings", "cut_outlines")  # those of the side
