"""What sketches of acts say is promised by the acts and their parts; a page whose sketch says less is refused."""

from collections.abc import Callable

import pytest

from publisher.basics import SaidPromise
from publisher.joints import UNDERNEATH, UP, times_built
from publisher.joints.act_words import act_words
from publisher.pages.sheet.draft import Context


def words(context: Context) -> dict[str, SaidPromise]:
    return {one.key: one for one in act_words(context.design, context.parts, context.joined)}


def test_steps_promise_which_side_is_up_and_their_angles(demo: Callable[..., Context]) -> None:
    house = words(demo("toll-house"))
    assert house["step:1:does:trace"].texts == (UP,) and set(house["step:1:does:trace"].carded) >= {"gable"}
    (bevel,) = (one for key, one in house.items() if key.endswith(":bevel"))
    assert bevel.texts == (UP,) and all(angle.endswith("°") for angle in bevel.listed)
    (seal, paint) = (next(one for key, one in house.items() if key.endswith(act)) for act in (":seal", ":paint"))
    assert seal.texts == ("+",) and paint.texts == ("1", "2")


def test_layers_that_have_joints_alone_may_lie_either_way(demo: Callable[..., Context]) -> None:
    assert not any(key.endswith(":press") for key in words(demo("lock-stair")))
    assert any(key.endswith(":press") for key in words(demo("toll-house")))


def test_what_is_bent_says_its_slits_and_what_covers_it(demo: Callable[..., Context]) -> None:
    bridge = words(demo("bridge"))
    slit = next(one for key, one in bridge.items() if key.endswith(":slit"))
    cover = next(one for key, one in bridge.items() if key.endswith(":cover"))
    assert "tape" in slit.texts and all(count.endswith("×") for count in slit.listed)
    assert UP in cover.texts and set(cover.texts) <= {UP, UNDERNEATH}


def test_the_board_is_marked_out_with_all_copies(demo: Callable[..., Context]) -> None:
    context = demo("quay")
    said = words(context)["act:mark:does:mark"]
    assert said.listed == tuple(f"{part.count + part.spare} × {part.letter}" for part in context.parts)


@pytest.mark.parametrize("slug", ["lock-stair", "toll-house"])
def test_each_of_several_is_built_alike(slug: str, demo: Callable[..., Context]) -> None:
    context = demo(slug)
    assert all(times_built(context, number) >= 1 for number in range(1, len(context.design.steps) + 1))


def test_a_design_without_steps_says_nothing(demo: Callable[..., Context]) -> None:
    from dataclasses import replace

    context = demo("quay")
    assert act_words(replace(context.design, steps=()), context.parts, context.joined) == ()
