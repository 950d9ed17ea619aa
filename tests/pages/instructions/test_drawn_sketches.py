"""What no card is traced for: strips to one scale with their sizes, rounds with a compass strip."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Box, polyline
from publisher.geometry import Part, Region
from publisher.pages.instructions.drawn_sketches import MOST_MEASURED, _rows, drawing_round, measuring_out
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.model import Fill, Words
from publisher.pages.sheet import ink_box
from publisher.pages.sheet.draft import Context

FIELD = Box(0.0, 0.0, FIELD_WIDE, FIELD_TALL).grown(1.0)


def strip(make_part: Callable[..., Part], letter: str, long: float, wide: float) -> Part:
    region = Region(polyline(((0, 0), (long, 0), (long, wide), (0, wide)), True, "edge"))
    return make_part(letter.lower(), letter, outline=region, template=region)


def said(pen: SketchPen) -> list[str]:
    return [thing.text for thing in pen.drawn if isinstance(thing, Words)]


@pytest.mark.parametrize("count", range(1, MOST_MEASURED + 1))
def test_strips_are_drawn_to_one_scale_each_with_letter_count_and_sizes(
    make_part: Callable[..., Part], demo: Callable[..., Context], count: int
) -> None:
    lengths = (280.0, 140.0, 70.0, 200.0)[:count]
    parts = [(strip(make_part, letter, long, 8.0), 2) for letter, long in zip("ABCD", lengths, strict=False)]
    arts = _rows(parts, Box(0.0, 0.0, 60.0, 40.0), 10.0)
    drawn = [art.shape.bounds[2] - art.shape.bounds[0] for art in arts]
    assert [long / drawn[0] for long in drawn] == pytest.approx([long / lengths[0] for long in lengths])
    pen = SketchPen(demo("bridge").type, (0.0, 0.0))
    measuring_out(
        pen, parts, {part.id: (f"{long:g} mm", "8 mm") for (part, _), long in zip(parts, lengths, strict=True)}
    )
    for (part, _), long in zip(parts, lengths, strict=True):
        assert {f"2 × {part.letter}", f"{long:g} mm"} <= set(said(pen))
    assert said(pen).count("8 mm") == count
    assert max(box.beyond(FIELD) for thing in pen.drawn if (box := ink_box(demo("bridge").type.faces, thing))) <= 0.0


@pytest.mark.parametrize(
    ("long", "words"), [(10.0, "0.39 in"), (10.0, "10 mm"), (4.0, "0.16 in"), (16.0, "0.63 in"), (60.0, "2.36 in")]
)
@pytest.mark.parametrize("high", [40.0, 20.0])
def test_a_length_stands_clear_of_its_own_dimension(
    make_part: Callable[..., Part], demo: Callable[..., Context], long: float, words: str, high: float
) -> None:
    """Words that are wider than a narrow part stand beside it: on white they would hide the heads and the lines that they end at."""
    part = strip(make_part, "A", long, high)
    pen = SketchPen(demo("bridge").type, (0.0, 0.0))
    measuring_out(pen, [(part, 2)], {part.id: (words, "1.57 in")})
    faces = demo("bridge").type.faces
    (said_long,) = (ink_box(faces, thing) for thing in pen.drawn if isinstance(thing, Words) and thing.text == words)
    heads = [ink_box(faces, thing) for thing in pen.drawn if isinstance(thing, Fill) and len(thing.paths[0].edges) == 3]
    level = [head for head in heads if head.bottom - 2.0 < said_long.bottom < head.top + 2.0]
    assert len(level) >= 2
    assert all(said_long.overlap(head) < 0.0 for head in level)
    assert said_long.beyond(FIELD) <= 0.0


def test_a_round_part_is_drawn_with_its_strip(demo: Callable[..., Context]) -> None:
    stair = demo("lock-stair")
    plinth = next(part for part in stair.parts if part.id == "plinth")
    pen = SketchPen(stair.type, (0.0, 0.0))
    drawing_round(pen, [(plinth, 1), (replace(plinth, letter="Z"), 2)])
    assert {"1 × B", "2 × Z"} <= set(said(pen))
    assert max(box.beyond(FIELD) for thing in pen.drawn if (box := ink_box(stair.type.faces, thing))) <= 0.0
