"""One step: a photograph beside the words keeps its shape."""

from collections.abc import Callable
from dataclasses import replace
from io import BytesIO

import pytest
from PIL import Image

from publisher.basics import Box
from publisher.brief import SpecFile
from publisher.design import PicturePlan
from publisher.pages import Picture, Words
from publisher.pages.instructions.step_block import TALLEST_STEP, _part_cell, acts_abreast, step_block
from publisher.pages.instructions.steps import step_drafts
from publisher.pages.sheet import ink_box
from publisher.pages.sheet.draft import Context

BOX = Box(10, 10, 190, 270)


def test_a_photograph_is_placed_at_the_right_in_its_own_shape(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    out = BytesIO()
    Image.new("L", (300, 600)).save(out, "PNG")
    file = SpecFile("wall.png", "picture", out.getvalue(), 300, 600)
    step = replace(
        context.design.steps[0],
        acts=(),
        picture=PicturePlan("photo", "wall.png", 0, None, context.design.steps[0].place),
    )
    changed = replace(context, design=replace(context.design, files=(file,)))
    block = step_block(changed, step, 1, BOX, (3, 6))
    (picture,) = [d for d in block.drawn if isinstance(d, Picture)]
    assert picture.box.height == pytest.approx(TALLEST_STEP)
    assert picture.box.width / picture.box.height == pytest.approx(0.5)
    assert picture.box.left > 100
    assert block.height > TALLEST_STEP


FINE, COARSE = pytest.mark.keeps("pages/photo-too-coarse"), pytest.mark.breaks("pages/photo-too-coarse")


@pytest.mark.parametrize(
    ("width", "height", "coarse"),
    [
        *(pytest.param(*pixels, False, marks=FINE) for pixels in ((430, 278), (90, 278), (600, 60))),
        *(pytest.param(*pixels, True, marks=COARSE) for pixels in ((150, 100), (60, 270))),
    ],
)
def test_a_coarse_photograph_is_placed_as_large_as_it_bears_and_said(
    width: int, height: int, coarse: bool, demo: Callable[..., Context]
) -> None:
    context = demo("toll-house")
    step = context.design.steps[0]
    plan = PicturePlan("photo", "wall.png", 0, None, step.place)
    file = SpecFile("wall.png", "picture", b"", width, height)
    changed = replace(context, design=replace(context.design, files=(file,), steps=(replace(step, picture=plan),)))
    block = step_block(changed, changed.design.steps[0], 1, BOX, (3, 6))
    (picture,) = [d for d in block.drawn if isinstance(d, Picture)]
    assert width / picture.box.width * 25.4 >= 150 - 1e-6
    found = [f for draft in step_drafts(changed) for f in draft.findings]
    assert [f.check for f in found] == ["pages/photo-too-coarse"] * coarse
    for finding in found:
        assert finding.place == step.place
        assert f"{width} × {height} pixels" in finding.message
        assert "278 pixels" in finding.hint
        assert picture.box.width == pytest.approx(width / 150 * 25.4)


def test_cutting_brings_the_caution_of_the_packs_own_knife(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    step = next(s for s in context.design.steps if s.stage == "cut" and not s.uses)
    assert [c.id for c in step_block(context, step, 1, BOX, (3, 6)).cautions] == ["knife"]
    bare = replace(context, design=replace(context.design, tools=()))
    assert step_block(bare, step, 1, BOX, (3, 6)).cautions == ()


def test_a_step_that_names_its_tools_brings_the_cautions_of_those_alone(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    step = next(s for s in context.design.steps if s.stage == "cut")

    def cautions(stage: str, *uses: str) -> list[str]:
        changed = replace(step, stage=stage, uses=uses)
        return [c.id for c in step_block(context, changed, 1, BOX, (3, 6)).cautions]

    assert cautions("cut") == ["knife"]
    assert cautions("cut", "pencil") == []  # tracing
    assert cautions("cut", "white_glue") == ["knife"]  # a material is no tool
    assert cautions("dry_fit") == []
    assert cautions("dry_fit", "pins", "craft_knife") == ["knife", "pins"]


def test_copies_are_counted_where_every_one_is_taken_in_hand(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    step = next(s for s in context.design.steps if s.parts == ("step",))

    def said(stage: str) -> set[str]:
        block = step_block(context, replace(step, stage=stage), 1, BOX, (3, 6))
        return {w.text for w in block.drawn if isinstance(w, Words)}

    assert "20 ×" in said("cut") and "20 ×" in said("texture")  # 19 and a spare
    assert not [text for text in said("glue") if "×" in text]  # it adds none of them
    assert not [text for text in said("finish") if "×" in text]


def test_a_long_name_pushes_the_next_row_down(demo: Callable[..., Context]) -> None:
    """Two parts stand beside each other; the third begins under the last line of the first one's name."""
    context = demo("toll-house")
    step = next(s for s in context.design.steps if len(s.parts) > 2)

    def said(name: str) -> tuple[Words, ...]:
        parts = tuple(replace(p, name=name if p.id == step.parts[0] else "Wall") for p in context.parts)
        block = step_block(replace(context, parts=parts), replace(step, picture=None, acts=()), 1, BOX, (3, 6))
        return tuple(w for w in block.drawn if isinstance(w, Words))

    third = next(p.letter for p in context.parts if p.id == step.parts[2])
    long = "A part with a name so long that it says very much and takes five lines of its cell"
    low = min(w.y for w in said(long) if w.text in long and len(w.text) > 3)
    (letter,) = (w.y for w in said(long) if w.text == third)
    assert letter + 2.0 < low
    (before,) = (w.y for w in said("Wall") if w.text == third)
    assert letter < before


def test_acts_of_the_pack_stand_three_abreast_where_that_saves_a_row() -> None:
    assert acts_abreast(4, 190.0) == ((0, 2), (2, 4))
    assert acts_abreast(5, 190.0) == ((0, 3), (3, 5)) and acts_abreast(5, 160.0) == ((0, 2), (2, 4), (4, 5))
    assert (
        acts_abreast(3, 190.0) == ((0, 3),)
        and acts_abreast(2, 100.0) == ((0, 1), (1, 2))
        and acts_abreast(0, 190.0) == ()
    )


@pytest.mark.parametrize(("letter", "count", "wide"), [("A", 9, 26.0), ("AB12", 113, 26.0)])
def test_a_count_never_stands_beyond_its_cell(
    demo: Callable[..., Context], letter: str, count: int, wide: float
) -> None:
    context = demo("toll-house")
    cell = Box(0.0, 0.0, wide, 12.0)
    drawn, _ = _part_cell(context, replace(context.parts[0], letter=letter), cell, count)
    said = [thing for thing in drawn if isinstance(thing, Words)]
    assert any(f"{count} ×" in thing.text for thing in said)
    assert all(ink_box(context.type.faces, thing).right <= cell.right + 0.1 for thing in said)  # type: ignore[union-attr]
