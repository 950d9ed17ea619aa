"""What a template says, and how its label is set."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Layer, Pose
from publisher.design import Design, EdgeRef, PanelPlace, PanelPlan
from publisher.geometry import Part
from publisher.pages.draft import Context
from publisher.pages.labels import MANY, STYLES, blocks, box_stands_for, is_handed, placed, says, small_blocks
from publisher.pages.model import Path, Stroke, Words
from publisher.pages.styles import LEAST


def set_words(context: Context, part: Part, **of: object) -> str:
    return " ".join(text for text in _texts(says(context, part, **of)))  # type: ignore[arg-type]


def _texts(said: object) -> tuple[str, ...]:
    return (said.letter, said.name, said.board, said.count, *said.size, *said.notes)  # type: ignore[attr-defined]


def test_a_stair_layer_says_all_that_a_cutter_asks(make_context: Callable[..., Context], stair_layer: Part) -> None:
    context = make_context(parts=(stair_layer,))
    said = says(context, stair_layer)
    assert said.count == "cut\u00a014 and 1 spare"
    assert said.boxes == (14, 0, 1)
    assert said.board == "foam 5.0 mm (0.20 in)"
    assert said.size == ("finished 122.0\u00a0×\u00a089.1\u00a0mm", "(4.80 × 3.51 in)")
    # the width is that of two arcs, each 0.4 mm smaller; the height ends at a notch, so it loses a little more
    assert said.notes == (
        "THIS SIDE UP: the arrow climbs",
        "Do not flip.",
        "As drawn 121.2 × 88.2 mm: the pencil adds 0.4 mm all round.",
    )
    assert said.promised == ("A", "cut 14", "122.0 × 89.1 mm")


def test_overall_size_is_that_of_the_finished_piece(
    make_context: Callable[..., Context], draw: Callable[..., Part]
) -> None:
    disc = draw("disc", radius=50)
    assert disc.template.outer.points[0] != disc.outline.outer.points[0]
    said = says(make_context(parts=(disc,)), disc)
    assert said.size[0] == "finished 100.0\u00a0×\u00a0100.0\u00a0mm"
    assert said.notes[-1].startswith("As drawn 99.2 × 99.2 mm")
    assert said.promised[-1] == "100.0 × 100.0 mm"


def panel_design(make_design: Callable[..., Design], part: Part) -> Design:
    place = make_design().parts[0].place
    plan = PanelPlan("box", (PanelPlace("front", part.id, place),), EdgeRef("front", "bottom"), (), (), place)
    return make_design(panels=(plan,))


def test_a_panel_says_which_face_is_drawn(
    make_context: Callable[..., Context], make_design: Callable[..., Design], make_part: Callable[..., Part]
) -> None:
    part = make_part()
    context = make_context(design=panel_design(make_design, part), parts=(part,))
    assert says(context, part).notes == ("THIS SIDE UP: the outside face",)
    assert says(context, part, 2, True).notes[0] == "THIS SIDE UP: the inside face"
    assert says(make_context(parts=(part,)), part).notes == ("THIS SIDE UP",)


def test_mirrored_copies_are_told_and_ticked_apart(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    part = make_part(count=5, mirrored=2, spare=1)
    said = says(make_context(parts=(part,)), part)
    assert said.boxes == (3, 2, 1)
    assert "3 as drawn, 2 mirrored: turn the template over for those." in said.notes
    assert "Do not flip." not in said.notes


def test_a_copy_to_paste_says_which_it_is(make_context: Callable[..., Context], make_part: Callable[..., Part]) -> None:
    part = make_part(count=3, spare=1)
    context = make_context(parts=(part,))
    assert says(context, part, 2).count == "cut\u00a03 and 1 spare: this is 2 of 4"
    assert says(context, part, 4).count == "cut\u00a03 and 1 spare: this is 4 of 4, a spare"
    assert says(context, part, 2, True).notes[-1] == "Mirror image: drawn turned over."


def test_handedness_is_that_of_the_outline(
    stair_layer: Part, make_part: Callable[..., Part], draw: Callable[..., Part]
) -> None:
    assert is_handed(stair_layer)
    assert not is_handed(make_part())
    assert not is_handed(draw("disc", radius=40))
    assert not is_handed(draw("regular_polygon", sides=5, radius=30))
    assert not is_handed(draw("spiral_stair_layer", core_radius=30, reach=92, step_angle=40, turn=20, notch=0))


def test_blocks_fit_their_own_size(make_context: Callable[..., Context], stair_layer: Part) -> None:
    context = make_context(parts=(stair_layer,))
    for label in (b for group in blocks(context.type, says(context, stair_layer), STYLES) for b in group):
        assert label.width <= label.measure + 0.4
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
        assert " ".join(label.name) == part.name
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
    label = small_blocks(context.type, says(context, part))[0]
    assert label.says.promised == ("A",)
    flat = placed(label, context.type, Pose(10, 20))
    turned = placed(label, context.type, Pose(10, 20, 90.0))
    for a, b in zip(flat, turned, strict=True):
        if isinstance(a, Words) and isinstance(b, Words):
            assert b.turn == 90.0
            assert (b.x - 10, b.y - 20) == pytest.approx((-(a.y - 20), a.x - 10))
