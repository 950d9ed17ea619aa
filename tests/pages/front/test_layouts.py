"""The pictures of all sheets as blocks: each sheet once, and a note that explains what they show and no more."""

from collections.abc import Callable

from publisher.pages import Words
from publisher.pages.front.layouts import FORMS, layout_blocks
from publisher.pages.sheet import make_frame
from publisher.pages.sheet.draft import Context, Numbers

NUMBERS = Numbers(3, 9, (), (), ())


def said(context: Context) -> str:
    frame = make_frame(context.paper, False, 0.0)
    blocks = layout_blocks(context, frame, FORMS[-1])
    assert len(blocks) == len(context.needs.layouts)
    return " ".join(t.text for block in blocks for t in block.draw(250.0, NUMBERS).drawn if isinstance(t, Words))


def test_the_note_says_what_the_pictures_show(demo: Callable[..., Context]) -> None:
    stair, quay = said(demo("lock-stair")), said(demo("quay"))
    assert stair.count("Layouts to copy") == 1
    assert "askew" in stair and "askew" not in quay
    assert "Thick dashes" in quay and "upper edge" in quay and "lower" not in quay


def test_a_smaller_form_takes_less_room(demo: Callable[..., Context]) -> None:
    context = demo("quay")
    frame = make_frame(context.paper, False, 0.0)
    heights = [sum(block.height for block in layout_blocks(context, frame, form)) for form in FORMS]
    assert heights[-1] < heights[0] and heights[1:] == sorted(heights[1:], reverse=True)
