"""The pictures of all sheets as blocks: each sheet once, and a note that explains what they show and no more."""

from collections.abc import Callable
from dataclasses import replace

from publisher.pages import Words
from publisher.pages.front.layouts import FORMS, forms_for, layout_blocks, least_heights
from publisher.pages.sheet import make_frame
from publisher.pages.sheet.draft import Context, Numbers
from publisher.pages.type import SPACE

NUMBERS = Numbers(3, 9, (), (), ())


def said(context: Context) -> str:
    frame = make_frame(context.paper, False, 0.0)
    blocks = layout_blocks(context, frame, FORMS[-1])
    assert len(blocks) == len(context.needs.layouts)
    return " ".join(t.text for block in blocks for t in block.draw(250.0, NUMBERS).drawn if isinstance(t, Words))


def test_the_note_says_what_the_pictures_show(demo: Callable[..., Context]) -> None:
    stair, quay = said(demo("lock-stair")), said(demo("quay"))
    assert stair.count("Layouts to copy") == 1
    assert "at an angle" in stair and "at an angle" not in quay
    assert "Thick dashes" in quay and "upper edge" in quay and "lower" not in quay


def test_a_smaller_form_takes_less_room(demo: Callable[..., Context]) -> None:
    context = demo("quay")
    frame = make_frame(context.paper, False, 0.0)
    blocks = [layout_blocks(context, frame, form) for form in FORMS]
    heights = [sum(block.height for block in own) for own in blocks]
    assert heights[-1] < heights[0] and heights[1:] == sorted(heights[1:], reverse=True)
    # what is foretold without setting any words is never more
    for form, own in zip(FORMS, blocks, strict=True):
        least = least_heights(context, frame, form)
        assert len(least) == len(own) and all(low <= block.height for low, block in zip(least, own, strict=True))


def test_a_list_that_is_taller_than_its_page_runs_on_to_the_next(demo: Callable[..., Context]) -> None:
    """All that is promised of a sheet stands on some page once, and no block is taller than its page."""

    def keys(context: Context) -> tuple[int, list[str]]:
        frame = make_frame(context.paper, False, 0.0)
        blocks = layout_blocks(context, frame, forms_for(frame)[0])
        assert all(block.height <= frame.text.height + 1.5 * SPACE for block in blocks)
        return len(blocks), sorted(c.key for b in blocks for c in b.draw(frame.text.top, NUMBERS).carried)

    usual = demo("lock-stair")
    low = replace(usual, paper=replace(usual.paper, width=134.0, height=168.0))
    (blocks, there), (more, shown) = keys(usual), keys(low)
    assert more > blocks and shown == there and len(set(shown)) == len(shown)


def test_no_list_stands_beside_a_picture_on_a_narrow_page(demo: Callable[..., Context]) -> None:
    context = demo("quay")
    narrow = replace(context.paper, width=140.0, height=210.0)
    assert [form.beside for form in forms_for(make_frame(narrow, False, 0.0))] == [False]
    assert forms_for(make_frame(context.paper, False, 0.0)) == FORMS
