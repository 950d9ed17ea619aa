"""A heading with a note under it."""

from collections.abc import Callable

from publisher.pages import Words
from publisher.pages.front.page_blocks import section_head
from publisher.pages.sheet import make_frame
from publisher.pages.sheet.draft import Context


def test_a_head_is_as_high_as_its_words(make_context: Callable[..., Context]) -> None:
    context = make_context()
    frame = make_frame(context.paper, False, 0.0)
    bare, low = section_head(context, frame, "Cut list", "", 200.0)
    noted, high = section_head(
        context, frame, "Cut list", "Sizes are those of the finished piece over all. " * 4, 200.0
    )
    assert [t.text for t in bare if isinstance(t, Words)] == ["Cut list"]
    assert high > low and min(t.y for t in noted if isinstance(t, Words)) > 200.0 - high
