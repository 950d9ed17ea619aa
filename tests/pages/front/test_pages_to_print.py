"""Page numbers as a print dialogue takes them, and small pictures of the pages."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Box, CompassPromise, OutlinePromise, Pose
from publisher.pages import Stroke, Words
from publisher.pages.front.pages_to_print import MOST_PREVIEWS, key_plan, ranges
from publisher.pages.model import Link
from publisher.pages.sheet.draft import Context, TruePage

WALL = (((0.0, 0.0), (100.0, 0.0), (100.0, 80.0), (0.0, 80.0)),)


@pytest.mark.parametrize(
    ("pages", "said"), [((2, 4, 5, 6, 8), "2, 4-6, 8"), ((2,), "2"), ((2, 3), "2-3"), ((1, 3, 5), "1, 3, 5"), ((), "")]
)
def test_ranges_name_each_page_once(pages: tuple[int, ...], said: str) -> None:
    assert ranges(pages) == said


def a_page(number: int, window: Box | None = None) -> TruePage:
    outline = OutlinePromise(number, "wall", "A", 1, Pose(50.0, 100.0), WALL, window)
    return TruePage(number, 210.0, 297.0, ("A",), (outline,), ())


def test_a_page_is_drawn_to_scale_over_its_number_and_links_to_it(make_context: Callable[..., Context]) -> None:
    block = key_plan(make_context(), (a_page(4), a_page(5, Box(60.0, 90.0, 120.0, 200.0))), Box(10.0, 0.0, 190.0, 60.0))
    assert {"4: A", "5: A"} <= {w.text for w in block.drawn if isinstance(w, Words)}
    assert [(where.key, where.page) for where in block.carried(1)] == [("key_plan:4", 1), ("key_plan:5", 1)]
    said = [w for w in block.drawn if isinstance(w, Words) and w.text in ("4: A", "5: A")]
    for words, where in zip(said, block.carried(1), strict=True):
        assert where.box.left <= words.x <= where.box.right and where.box.bottom < words.y < where.box.top
    assert [link.page for link in block.drawn if isinstance(link, Link)] == [4, 5]
    strokes = [s for s in block.drawn if isinstance(s, Stroke) and s.paths]
    frame, wall = strokes[0].paths[0].box, next(s for s in strokes if s.clip).paths[0].box
    scale = frame.height / 297.0
    assert wall.width == pytest.approx(100.0 * scale)
    assert wall.left - frame.left == pytest.approx(50.0 * scale)
    tile = [s for s in block.drawn if isinstance(s, Stroke) and s.clip][1]
    assert tile.clip is not None and tile.clip.width == pytest.approx(60.0 * scale)


def test_too_many_pages_or_too_little_room_leave_the_list_alone(make_context: Callable[..., Context]) -> None:
    context = make_context()
    many = tuple(a_page(n) for n in range(2, MOST_PREVIEWS + 3))
    assert key_plan(context, many, Box(0.0, 0.0, 180.0, 200.0)).drawn == ()
    assert key_plan(context, many[:3], Box(0.0, 0.0, 180.0, 12.0)).drawn == ()


def test_a_compass_strip_shows_its_pin_and_its_pencil(make_context: Callable[..., Context]) -> None:
    strip = CompassPromise(4, "plinth", "B", (40.0, 200.0), ((132.0, 200.0),), (92.0,), 1.25, ())
    page = replace(a_page(4), letters=("B",), outlines=(), compasses=(strip,))
    block = key_plan(make_context(), (page,), Box(10.0, 0.0, 190.0, 60.0))
    frame, _, drawn = (s for s in block.drawn if isinstance(s, Stroke))
    scale = frame.paths[0].box.height / 297.0
    line, *crosses = (path.box for path in drawn.paths)
    assert line.width == pytest.approx(92.0 * scale) and len(crosses) == 4
    assert line.left - frame.paths[0].box.left == pytest.approx(40.0 * scale)
