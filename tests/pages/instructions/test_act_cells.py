"""Pictures of acts on the pages of steps: numbered where there are several, at most four of what is put together on a page."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Box
from publisher.joints import Drawing, DrawingLabel, DrawnLine, lifts_off
from publisher.joints.glue_signs import glue_signs
from publisher.pages import Words
from publisher.pages.instructions.act_cells import (
    CELL_WIDE,
    FULL_PAGE,
    MOST_ACTS,
    SKETCHES_FOR_ONE,
    abreast,
    act_cell,
    act_key,
    act_rows,
    acts_of,
    most_shown,
    sketch_cell,
    weight_shown,
)
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.instructions.step_acts import ActSketch, acts_after, acts_before
from publisher.pages.instructions.step_block import step_block
from publisher.pages.instructions.steps import step_drafts
from publisher.pages.sheet import ink_box
from publisher.pages.sheet.draft import Context
from tests.pages.conftest import some_numbers

BOX = Box(10, 10, 190, 270)
LINE = DrawnLine("added_contour", ((0.0, 0.0), (68.0, 50.0)))


def acts(step: int, count: int) -> tuple[Drawing, ...]:
    label = DrawingLabel("2 × A", (10.0, 40.0))
    return tuple(Drawing(f"act:{step}:{n}", f"act {n}", (LINE,), (label,), 68.0, 50.0) for n in range(1, count + 1))


def with_acts(context: Context, step: int, count: int) -> Context:
    return replace(context, joined=replace(context.joined, drawings=(*context.joined.drawings, *acts(step, count))))


def test_pictures_stand_side_by_side_as_many_as_the_width_has_room_for() -> None:
    assert [abreast(width) for width in (60.0, 100.0, 173.0, 260.0)] == [1, 1, 2, 3]
    assert CELL_WIDE >= 60.0


def test_a_row_numbers_its_pictures_and_says_where_each_stands(demo: Callable[..., Context]) -> None:
    context = with_acts(demo("toll-house"), 2, 3)
    cells = act_rows(context, acts_of(context, 2), 1, 3, BOX, 7)
    assert [where.key for where in cells.carried] == ["step:2:act:1", "step:2:act:2", "step:2:act:3"]
    assert {where.page for where in cells.carried} == {7} and act_key(acts(2, 1)[0]) == "step:2:act:1"
    said = [thing.text for thing in cells.drawn if isinstance(thing, Words)]
    assert said.count("2 × A") == 3 and [text for text in said if text.isdigit()] == ["1", "2", "3"]
    boxes = [where.box for where in cells.carried]
    assert all(a.overlap(b) <= 0.0 for i, a in enumerate(boxes) for b in boxes[:i])


def test_a_picture_alone_has_no_number_and_stands_beside_the_words(demo: Callable[..., Context]) -> None:
    context = with_acts(demo("toll-house"), 2, 1)
    step = replace(context.design.steps[1], picture=None, acts=())
    block = step_block(context, step, 2, BOX, (3, 6))
    (where,) = [one for one in block.carried if ":act:" in one.key]
    assert where.box.left > 95.0 and where.box.top > BOX.top - 5.0


def test_a_page_shows_at_most_four_and_a_step_of_more_goes_on(demo: Callable[..., Context]) -> None:
    plain = demo("toll-house")
    steps = tuple(replace(step, acts=(), wait="") for step in plain.design.steps)
    context = with_acts(replace(plain, design=replace(plain.design, steps=steps)), 2, 9)
    pages = [draft.body(some_numbers(page)) for page, draft in enumerate(step_drafts(context), 1)]
    shown = [[one.key for one in body.carried if one.key.startswith("step:2:act")] for body in pages]
    assert [key for keys in shown for key in keys] == [f"step:2:act:{n}" for n in range(1, 10)]
    assert max(map(len, shown)) <= MOST_ACTS


def a_sketch(low: float = 10.0, high: float = 30.0) -> ActSketch:
    return ActSketch(lambda pen: pen.line((2.0, low), (60.0, high)), "A line")


def test_a_page_has_room_for_more_sketches_than_pictures_of_what_is_put_together() -> None:
    drawing = acts(1, 1)[0]
    assert weight_shown(drawing) == SKETCHES_FOR_ONE * weight_shown(a_sketch())
    assert most_shown([drawing] * 9) == MOST_ACTS
    assert most_shown([drawing] * 3 + [a_sketch()] * 9) == 3 + SKETCHES_FOR_ONE
    assert most_shown([a_sketch()] * 40) == FULL_PAGE and most_shown([drawing]) == 1


def test_sketches_stand_three_abreast_where_that_saves_a_row(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    rows = {
        n: act_rows(context, [a_sketch()] * n, 1, n, replace(BOX, right=215.0), 3).height for n in (1, 2, 3, 4, 5, 6)
    }
    assert rows[3] < 1.2 * rows[2] and rows[6] < 1.2 * rows[5] and rows[5] > 1.8 * rows[2]
    assert act_rows(context, acts(1, 3), 1, 3, BOX, 3).height > 60.0  # these keep their size


def test_a_sketch_takes_no_more_than_is_drawn_of_its_field(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    low, high = (sketch_cell(context, a_sketch(10.0, top), BOX, 3).height for top in (20.0, 40.0))
    assert 0.0 < low < 12.0 and high - low == pytest.approx(20.0 * 0.8, abs=0.5)
    cell = sketch_cell(context, a_sketch(), BOX, 3)
    box, tall = ink_box(context.type.faces, cell.drawn[0]), cell.height
    assert box is not None and box.top == pytest.approx(BOX.top) and box.bottom == pytest.approx(BOX.top - tall)


def test_a_sketch_says_where_it_shows_each_part_of_what_is_done(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    step = context.design.steps[1]
    shown = act_rows(context, acts_before(context, step), 1, 1, BOX, 3).carried
    parts = [where.key for where in shown if ":scene:" not in where.key]
    assert parts == ["step:2:does:press", "step:2:does:press:gable", "step:2:does:press:side"]
    assert {where.key.rpartition(":")[2] for where in shown} >= {"pressed_bare", "stick", "cut_through"}
    assert all(where.page == 3 and 0.0 < where.scale < 1.0 for where in shown if where.key not in parts[:1])
    assert act_rows(context, [a_sketch()], 1, 1, BOX, 3).carried == ()


def with_labels(context: Context, name: str, labels: tuple[DrawingLabel, ...]) -> Context:
    """Return a context in which a drawing has other labels, and the signs of glue that follow from these."""
    drawn = tuple(replace(one, labels=labels) if one.name == name else one for one in context.joined.drawings)
    signs = glue_signs(context.design, drawn)
    plain = tuple(one for one in context.joined.pictures if not one.key.endswith(":glue"))
    return replace(context, joined=replace(context.joined, drawings=drawn, pictures=(*plain, *signs)))


def test_what_lifts_off_takes_no_glue_where_it_rests_and_waits_without_tape(demo: Callable[..., Context]) -> None:
    """A bottle beside a roof that comes down on its walls would fix it for good."""
    context = demo("toll-house")
    own, step = next((n, s) for n, s in enumerate(context.design.steps, 1) if s.parts == ("roof",) and s.wait)
    roof = acts_of(context, own)[-1]
    assert lifts_off(roof) and not lifts_off(acts_of(context, own)[0])
    sealed = with_labels(context, roof.name, ())
    for there, signs in ((context, {"figure:Without glue"}), (sealed, {"figure:With glue"})):
        cell = act_cell(there, roof, 3, BOX, 7)
        assert {thing.tag for thing in cell.drawn if thing.tag.endswith(" glue")} == signs
    waiting = SketchPen(context.type, (0.0, 0.0))
    acts_after(context, step, own)[-1].draw(waiting)
    tight = SketchPen(context.type, (0.0, 0.0))
    free = replace(context, joined=replace(context.joined, drawings=tuple(
        replace(one, labels=()) for one in context.joined.drawings
    )))  # fmt: skip
    acts_after(free, step, own)[-1].draw(tight)
    assert len(waiting.drawn) < len(tight.drawn), "neither tape nor bottle"
