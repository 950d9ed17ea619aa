"""Pages for a phone: their shape, and what each of them says."""

from publisher.pages import Words
from publisher.pages.sheet import phone_frame, room, screen_furniture
from publisher.pages.type import SCREEN_SMALL
from tests.pages.conftest import a_context, some_numbers

POINT = 25.4 / 72  # mm: a PDF's unit (ISO 32000-1, 8.3.2.3)


def test_a_screen_is_nine_to_sixteen_whatever_the_paper_and_taller_where_asked() -> None:
    for paper in ("a4", "letter", "a5"):
        frame = phone_frame(a_context(paper).paper)
        assert (frame.width, frame.height) == (90.0, 160.0)
        assert phone_frame(frame.paper, 190.0).text.height == room(frame.paper) + 30.0
        assert frame.text.beyond(frame.live) <= 0.0 and frame.live.beyond(frame.limit) <= 0.0


def test_each_screen_says_that_it_is_not_for_printing_and_which_it_is() -> None:
    context = a_context()
    frame = phone_frame(context.paper)
    body = screen_furniture(context.type, frame, "Step 7", some_numbers(3, 20))
    assert [promise.text for promise in body.texts] == ["Not for printing", "page 3 of 20"]
    words = [thing for thing in body.drawn if isinstance(thing, Words)]
    assert {"Step 7", "Not for printing", "page 3 of 20"} <= {
        " ".join(one.text for one in words if one.y == w.y) for w in words
    } | {one.text for one in words}
    assert all(one.size >= 10 * POINT for one in words) and SCREEN_SMALL.size >= 10 * POINT
    header, footer = (promise.box for promise in body.furniture)
    assert header.bottom > frame.text.top and footer.top < frame.text.bottom
