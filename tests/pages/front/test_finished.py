"""Elevation and plan stand at one scale with their sizes beside them, whatever the shape of the box."""

from collections.abc import Callable

import pytest

from publisher.basics import Box
from publisher.pages.front.finished import LEAST_VIEWS, finished
from publisher.pages.sheet.draft import Context
from publisher.pages.sheet.page_checks import ink_box

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


def test_a_low_box_shows_the_picture_alone(demo: Callable[..., Context]) -> None:
    low = Box(12.0, 120.0, 198.0, 120.0 + LEAST_VIEWS - 1.0)
    body = finished(demo("bridge"), low, 1)
    assert not {where.key.split(":")[1] for where in body.carried} & {"front", "above"}
    left = {
        "cover:front:crossing",
        "cover:above:crossing",
        *(f"cover:crossing:{s}" for s in ("width", "depth", "height")),
    }
    assert left <= set(body.left_out) and not {where.key for where in body.carried} & set(body.left_out)
    assert finished(demo("bridge"), BOXES[0], 1).left_out == ()
