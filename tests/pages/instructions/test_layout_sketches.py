"""The sketch of marking out: every piece once, lettered where there is room, the coupon before them, a sign for boards left out."""

from collections import Counter
from collections.abc import Callable

import pytest
import shapely

from publisher.geometry import Part
from publisher.material import different_sheets
from publisher.pages.instructions import layout_sketches
from publisher.pages.instructions.layout_sketches import MOST_BOARDS, marking_out
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.model import Words
from publisher.pages.sheet.draft import Context
from publisher.pages.type import Setter


@pytest.mark.parametrize("coupon", ["slot", "step", ""])
def test_pieces_are_outlined_and_lettered_once_and_boards_left_out_have_a_sign(
    demo: Callable[..., Context], coupon: str
) -> None:
    context = demo("toll-house")
    layouts = [alike.layout for need in context.needs.yields for alike in different_sheets(need)][:1]
    parts = {part.id: part for part in context.parts}
    said: dict[int, list[str]] = {}
    lines: dict[int, int] = {}
    for times in (1, MOST_BOARDS + 1):
        pen = SketchPen(context.type, (0.0, 0.0))
        marking_out(pen, layouts * times, parts, [(part, part.count) for part in context.parts], coupon, ("2", "3"))
        said[times] = [thing.text for thing in pen.drawn if isinstance(thing, Words)]
        lines[times] = len(pen.lines)
    letters = sorted(parts[item.part].letter for item in layouts[0].items)
    shown = Counter(text for text in said[1] if text in letters)  # a piece too small for its letter has none
    assert shown and shown <= Counter(letters)
    assert lines[1] > len(letters)  # each piece has its outline
    assert "…" not in said[1] and "…" in said[MOST_BOARDS + 1]
    assert lines[MOST_BOARDS + 1] > lines[1]


def test_a_piece_under_a_tool_has_no_letter(setter: Setter, make_part: Callable[..., Part]) -> None:
    """The knife that cuts the coupon reaches over the corner of the board: its lines ran through a letter there."""
    part, shape = make_part(letter="K"), shapely.box(20.0, 20.0, 30.0, 30.0)
    for tool, letters in ((shapely.box(60.0, 20.0, 62.0, 30.0), ["K"]), (shapely.box(24.0, 24.0, 40.0, 26.0), [])):
        pen = SketchPen(setter, (0.0, 0.0))
        pen.taken.append(tool)
        layout_sketches._piece(pen, part, shape)
        assert [thing.text for thing in pen.drawn if isinstance(thing, Words)] == letters
