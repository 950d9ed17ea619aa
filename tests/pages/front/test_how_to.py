"""The sketches of how to use a template and cut a bevel stay in their place, and say what the numbers are."""

import pytest

from publisher.basics import Box, Path
from publisher.pages.front.how_to import SKETCH_AWAY, bevelling, copying, tracing
from publisher.pages.model import Stroke, Words
from publisher.pages.sheet.page_checks import ink_box, words_box
from publisher.pages.type.styles import CUT, DRAW, REFERENCE
from publisher.pages.type.text import Block, Setter


def strokes(block: Block, style: object) -> list[Path]:
    return [p for t in block.drawn if isinstance(t, Stroke) and t.style == style for p in t.paths]


@pytest.mark.parametrize("width", [182.0, 150.0])
def test_sections_stay_in_the_height_that_they_return(setter: Setter, width: float) -> None:
    for block in (tracing(setter, 0.4, "mm", True, 20.0, 250.0, width), bevelling(setter, False, 20.0, 250.0, width)):
        boxes = [b for t in block.drawn if (b := ink_box(setter.faces, t)) is not None]
        whole = Box(20.0, 250.0 - block.height, 20.0 + width, 250.0).grown(0.3)
        for box in boxes:
            assert whole.left <= box.left and box.right <= whole.right
            assert whole.bottom <= box.bottom and box.top <= whole.top
        placed = [words_box(setter.faces, t).grown(-0.2) for t in block.drawn if isinstance(t, Words)]
        for i, a in enumerate(placed):
            for b in placed[:i]:
                assert a.right <= b.left or b.right <= a.left or a.top <= b.bottom or b.top <= a.bottom


def test_the_pencil_runs_outside_the_card_and_inside_the_slot(setter: Setter) -> None:
    block = tracing(setter, 0.4, "mm", True, 20.0, 250.0, 182.0)
    card, slot = (p.points for p in strokes(block, CUT))
    pencil, in_slot = (p.points for p in strokes(block, DRAW))
    assert pencil[0][0] == pytest.approx(card[0][0] - SKETCH_AWAY)
    assert pencil[2][1] == pytest.approx(card[2][1] + SKETCH_AWAY)
    assert in_slot[0] == pytest.approx((slot[0][0] + SKETCH_AWAY, slot[0][1] + SKETCH_AWAY))
    assert "0.4 mm (0.016 in)" in " ".join(t.text for t in block.drawn if isinstance(t, Words)).replace("\u00a0", " ")


def test_the_blade_leaves_the_outside_face_at_the_outline_and_the_inside_face_at_the_dotted_line(
    setter: Setter,
) -> None:
    block = bevelling(setter, False, 20.0, 250.0, 182.0)
    ((low, high),) = [p.points for p in strokes(block, CUT)]
    (dotted,) = strokes(block, REFERENCE)
    outside, inside = (p.points for p in strokes(block, DRAW))
    assert outside[0][1] > inside[0][1]  # outside face up, and longer
    assert outside[1][0] > inside[1][0] == pytest.approx(dotted.points[0][0])
    slope = (high[1] - low[1]) / (high[0] - low[0])
    for x, y in (outside[1], inside[1]):  # both ends of the bevel lie on the blade's line
        assert low[1] + slope * (x - low[0]) == pytest.approx(y)


def test_what_to_copy_is_said(setter: Setter) -> None:
    block = copying(setter, 20.0, 250.0, 182.0)
    assert "top" in " ".join(t.text for t in block.drawn if isinstance(t, Words))
    assert block.height > 0


def test_lines_that_no_pencil_reaches_are_pricked_through_where_there_are_any(setter: Setter) -> None:
    said = [
        " ".join(
            t.text
            for t in tracing(setter, 0.4, "mm", True, 20.0, 250.0, 182.0, lined=lined).drawn
            if isinstance(t, Words)
        )
        for lined in (False, True)
    ]
    assert ["Prick the ends" in words for words in said] == [False, True]
