"""What a template says, and how its label is set."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Layer, Path, Pose
from publisher.geometry import Part
from publisher.pages.model import Stroke, Words
from publisher.pages.sheet.draft import Context
from publisher.pages.templates.label_words import says
from publisher.pages.templates.labels import (
    BLOCK_MARGIN,
    FLAG,
    MANY,
    STYLES,
    alone,
    blocks,
    box_stands_for,
    details,
    flags,
    identities,
    letters,
    placed,
    reset,
    rests,
    small_blocks,
)
from publisher.pages.type.styles import LEAST


def test_blocks_fit_their_own_size(make_context: Callable[..., Context], stair_layer: Part) -> None:
    context = make_context(parts=(stair_layer,))
    for label in (b for group in blocks(context.type, says(context, stair_layer), STYLES) for b in group):
        size = max(context.type.width(text, label.style) for text in label.says.size)  # never broken inside
        assert label.width <= max(label.measure, size + 2 * BLOCK_MARGIN) + 0.4
        words = [thing.text for thing in placed(label, context.type, Pose()) if isinstance(thing, Words)]
        assert any(label.says.size[0].replace("\u00a0", " ") in text for text in words)
        for thing in placed(label, context.type, Pose()):
            assert thing.layer is Layer.NOTES  # type: ignore[union-attr]
            if isinstance(thing, Words):
                style = replace(label.style, size=thing.size, weight=thing.font)
                assert thing.x >= -0.01 and thing.x + context.type.width(thing.text, style) <= label.width + 0.01
                assert thing.y >= 0.3 and thing.y + context.type.cap(style) <= label.height
                assert thing.size >= LEAST.size
            elif isinstance(thing, Stroke):
                for x, y in (p for path in thing.paths for p in path.points):
                    assert 0 <= x <= label.width and 0 <= y <= label.height + 1e-9


def test_a_label_promises_its_name_line_by_line(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    part = make_part(name="The longest name in all the pack")
    context = make_context(parts=(part,))
    for label in (b for group in blocks(context.type, says(context, part)) for b in group):
        set_lines = {w.text for w in placed(label, context.type, Pose()) if isinstance(w, Words)}
        name = [line for line in label.promised if line in part.name]
        assert " ".join(name).startswith(part.name)
        assert {"cut 2", "60.0 × 40.0 mm", "THIS SIDE UP", "A"} <= set(label.promised)
        assert all(any(promise in line for line in set_lines) for promise in label.promised)


def test_larger_type_comes_first_and_tall_blocks_last(make_context: Callable[..., Context], stair_layer: Part) -> None:
    context = make_context(parts=(stair_layer,))
    groups = [g for g in blocks(context.type, says(context, stair_layer)) if g]
    assert groups[0][0].style.size > groups[1][0].style.size
    assert all(b.width >= b.height for g in groups[:-2] for b in g)
    assert all(b.width < b.height for b in groups[-1])


@pytest.mark.parametrize("boxes", [(14, 0, 1), (3, 2, 0), (1, 0, 0), (60, 0, 0)])
def test_one_tick_box_for_every_copy(
    make_context: Callable[..., Context], make_part: Callable[..., Part], boxes: tuple[int, int, int]
) -> None:
    part = make_part(count=boxes[0] + boxes[1], mirrored=boxes[1], spare=boxes[2])
    context = make_context(parts=(part,))
    for group in blocks(context.type, says(context, part)):
        for label in group:
            squares = tick_boxes(placed(label, context.type, Pose()))
            assert len(squares) == sum(boxes)
            assert len({p.points[0] for p in squares}) == len(squares)


def tick_boxes(drawn: object) -> list[Path]:
    return [p for d in drawn if isinstance(d, Stroke) and d.style.name == "tick_box" for p in d.paths]  # type: ignore[attr-defined]


def test_very_many_copies_share_boxes(make_context: Callable[..., Context], make_part: Callable[..., Part]) -> None:
    assert [box_stands_for(n) for n in (1, 60, 61, 121, 600, 601)] == [1, 1, 2, 5, 10, 20]
    part = make_part(count=1_000_000)
    context = make_context(parts=(part,))
    label = next(b for group in blocks(context.type, says(context, part)) for b in group)
    drawn = placed(label, context.type, Pose())
    assert 0 < len(tick_boxes(drawn)) <= MANY
    assert any(isinstance(d, Words) and d.text == "one box for every 20000" for d in drawn)


def test_a_turned_block_keeps_its_words_together(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    part = make_part()
    context = make_context(parts=(part,))
    ((label,), _) = small_blocks(context.type, says(context, part))
    assert label.promised == ("A",)
    flat = placed(label, context.type, Pose(10, 20))
    turned = placed(label, context.type, Pose(10, 20, 90.0))
    for a, b in zip(flat, turned, strict=True):
        if isinstance(a, Words) and isinstance(b, Words):
            assert b.turn == 90.0
            assert (b.x - 10, b.y - 20) == pytest.approx((-(a.y - 20), a.x - 10))


def test_what_a_piece_must_not_lose_is_said_in_every_setting_and_promised_as_it_is_set(
    make_context: Callable[..., Context], stair_layer: Part
) -> None:
    context = make_context(parts=(stair_layer,))
    said = says(context, stair_layer)
    settings = [b for group in identities(context.type, said) for b in group]
    assert {b.form for b in settings} == {"row", "column", "run"}
    for label in settings:
        shown = [w.text for w in placed(label, context.type, Pose()) if isinstance(w, Words)]
        for text in ("A", "cut 14 + 1 spare", "THIS SIDE UP", "Do not flip."):
            assert text in " ".join(shown)
        for text in label.promised:
            assert any(text in line for line in shown)
    sizes = [b.width * b.height for b in settings if b.form == "row"]
    assert sizes == sorted(sizes, reverse=True)


def test_the_letter_and_the_rest_can_stand_apart(make_context: Callable[..., Context], stair_layer: Part) -> None:
    context = make_context(parts=(stair_layer,))
    said = says(context, stair_layer)
    groups = list(letters(context.type, said))
    assert [g[0].height for g in groups] == sorted((g[0].height for g in groups), reverse=True)
    assert {g[0].promised for g in groups} == {("A",)}
    for label in rests(context.type, said):
        assert "A" not in [w.text for w in placed(label, context.type, Pose()) if isinstance(w, Words)]
        assert " ".join(label.promised).replace(" · ", " ") == "cut 14 + 1 spare THIS SIDE UP Do not flip."


def test_a_flag_says_all_and_that_it_is_cut_off_last(make_context: Callable[..., Context], stair_layer: Part) -> None:
    context = make_context(parts=(stair_layer,))
    said = says(context, stair_layer)
    for label in flags(context.type, said):
        shown = " ".join(w.text for w in placed(label, context.type, Pose()) if isinstance(w, Words))
        assert FLAG in shown and "THIS SIDE UP" in shown and "Stair layer" in shown
    for group in details(context.type, said):
        for label in group:
            shown = " ".join(w.text for w in placed(label, context.type, Pose()) if isinstance(w, Words))
            assert FLAG not in shown and "Do not flip." not in shown and "122.0 × 89.1 mm" in shown


def test_other_words_are_set_as_a_label_is_set(make_context: Callable[..., Context], stair_layer: Part) -> None:
    context = make_context(parts=(stair_layer,))
    said = says(context, stair_layer)
    for group in identities(context.type, said):
        for label in group:
            again = reset(label, context.type, replace(said, letter="B"))
            assert (again.form, again.measure, again.style) == (label.form, label.measure, label.style)
            assert "B" in again.promised[0]


@pytest.mark.parametrize("copies", [10, 12, 100])
def test_other_words_never_need_more_room_than_the_label_found(
    make_context: Callable[..., Context], stair_layer: Part, copies: int
) -> None:
    """``12 of 12 · THIS SIDE UP`` may need two lines where ``5 of 12`` would stand on one, wider than the room of the first."""
    context = make_context(parts=(replace(stair_layer, count=copies, spare=0),))
    longest = says(context, context.parts[0], copies)
    groups = (blocks, identities, details, alone)
    settings = [label for make in groups for group in make(context.type, longest) for label in group]
    settings += [*flags(context.type, longest), *rests(context.type, longest)]
    for number in (1, 5, 9):
        other = says(context, context.parts[0], number)
        for label in settings:
            again = reset(label, context.type, other)
            assert again.width <= label.width + 1e-9 and again.height <= label.height + 1e-9, (
                label.form,
                label.measure,
            )
