"""Elevation and plan stand at one scale with their sizes beside them, whatever the shape of the box."""

from collections.abc import Callable

import pytest

from publisher.basics import Box
from publisher.joints import LEAST_VIEWS
from publisher.pages.front import finished as maker
from publisher.pages.front.finished import finished
from publisher.pages.sheet.draft import Body, Context
from publisher.pages.sheet.page_checks import ink_box
from tests.proof.refused import refused_by

BOXES = (Box(12.0, 120.0, 198.0, 220.0), Box(12.0, 150.0, 198.0, 206.0))


@pytest.mark.parametrize("box", BOXES)
@pytest.mark.parametrize(("slug", "name"), [("bridge", "crossing"), ("quay", "box"), ("lock-stair", "stair")])
def test_both_views_have_one_scale_and_stay_in_the_box(
    demo: Callable[..., Context], slug: str, name: str, box: Box
) -> None:
    context = demo(slug)
    body = finished(context, box, 1)
    carried = {where.key: where for where in body.carried}
    front, above = carried[f"cover:front:{name}"], carried[f"cover:above:{name}"]
    assert front.scale == pytest.approx(above.scale)
    for thing in body.drawn:
        reach = ink_box(context.type.faces, thing)
        assert reach is None or reach.beyond(box.grown(0.6)) <= 0.0, thing
    for side, view in (("width", front), ("height", front), ("depth", above)):
        words = carried[f"cover:{name}:{side}"].box
        assert words.overlap(view.box) <= 0.0
    assert context.joined.drawing(f"front:{name}") is not None


def test_an_upright_sheet_shows_the_piece_over_its_views_and_a_lying_one_beside_them(
    demo: Callable[..., Context],
) -> None:
    upright, lying = Box(12.0, 20.0, 138.0, 165.0), Box(12.0, 120.0, 198.0, 220.0)

    def shown(box: Box) -> tuple[Box, Box]:
        carried = {where.key: where.box for where in finished(demo("toll-house"), box, 1).carried}
        (name,) = (key.removeprefix("cover:whole:") for key in carried if key.startswith("cover:whole:"))
        return carried[f"cover:whole:{name}"], carried[f"cover:front:{name}"]

    whole, front = shown(upright)
    assert whole.bottom >= front.top and whole.width > 0.7 * upright.width
    whole, front = shown(lying)
    assert whole.right <= front.left


def test_a_low_box_shows_the_picture_and_says_the_sizes(demo: Callable[..., Context]) -> None:
    low = Box(12.0, 120.0, 198.0, 120.0 + LEAST_VIEWS - 1.0)
    context = demo("bridge")
    assert {where.key for where in finished(context, low, 1).carried} == {"cover:crossing:sizes"}
    assert "cover:crossing:sizes" not in {where.key for where in finished(context, BOXES[0], 1).carried}
    no_room = Box(12.0, 120.0, 198.0, 121.0)
    assert finished(context, no_room, 1).drawn == (), "there is no room for a line of words either"


def test_sizes_in_words_are_as_good_for_proof_as_views(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(maker, "LEAST_VIEWS", 500.0)
    assert refused_by("toll-house") == set()


@pytest.mark.parametrize("name", ["_sizes_in_words", "finished_piece"])
def test_a_cover_that_leaves_out_what_it_has_room_for_is_refused(monkeypatch: pytest.MonkeyPatch, name: str) -> None:
    monkeypatch.setattr(maker, "LEAST_VIEWS", 500.0)
    nothing = {"_sizes_in_words": (Body(), 0.0), "finished_piece": Body()}
    monkeypatch.setattr(maker, name, lambda *_: nothing[name])
    missing = {"_sizes_in_words": {"proof/sentence", "proof/step-picture"}, "finished_piece": {"proof/step-picture"}}
    assert missing[name] <= refused_by("toll-house")
