"""Links that follow from what pages show: page numbers in words, templates and the steps that use their parts."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Box, Layer, Place
from publisher.design import StepPlan, TextPlan
from publisher.pages.instructions import step_drafts
from publisher.pages.instructions.page_links import pages_of_use, use_links, worded_links
from publisher.pages.model import Link, Words
from publisher.pages.sheet.draft import Context, PageDraft
from publisher.pages.sheet.frame import make_frame
from publisher.pages.sheet.page_checks import words_box
from publisher.pages.templates.spots import sides_carried
from publisher.pages.type import Faces, face

FACES = Faces(face("regular"), face("bold"))
HERE = Place("spec.yaml", 3, 5)


def said(text: str, turn: float = 0.0) -> Words:
    return Words(text, FACES.regular.name, 4.0, 20.0, 100.0, Layer.PAGE, turn)


@pytest.mark.parametrize(
    ("text", "pages"),
    [
        ("Read “Glue” on page 4.", [4]),
        ("Pages 6-8 show the templates.", [6]),
        ("print pages 2, 5-7 and 9 again", [2, 5, 9]),
        ("tile 2 (page 7)", [7]),
        ("this is page 3", []),  # where it stands itself
        ("page 40 of a book", []),
        ("4 pages", []),
        ("homepage 4", []),
        ("page 0", []),
    ],
)
def test_numbers_of_other_pages_in_words_are_links(text: str, pages: list[int]) -> None:
    assert [link.page for link in worded_links(FACES, (said(text),), 3, 12)] == pages


def test_a_link_covers_its_number_and_no_other_words() -> None:
    first, second = worded_links(FACES, (said("see pages 2 and 5 first"),), 3, 12)
    begin, end = (words_box(FACES, said(text)).right for text in ("see ", "see pages 2 and 5"))
    assert first.box.left == pytest.approx(begin)
    assert second.box.right == pytest.approx(end)
    assert first.box.right <= second.box.left
    assert list(worded_links(FACES, (said("page 4", turn=90.0),), 3, 12)) == []


def step(stage: str, *parts: str) -> StepPlan:
    return StepPlan(TextPlan((stage.title(),), HERE), stage, TextPlan(("Do it.",), HERE), parts, (), None, HERE)


def drafts(context: Context, *pages: tuple[int, ...]) -> tuple[PageDraft, ...]:
    """Drafts of pages that carry these steps."""
    frame = make_frame(context.paper, False, 0.0)
    return tuple(
        PageDraft("steps", f"steps:{n}", "Steps", frame, lambda _: pytest.fail("not drawn"), "Build", marks)
        for n, own in enumerate(pages, 1)
        if (marks := tuple((f"{i}", 1, f"step:{i}:title") for i in own)) is not None
    )


def test_a_template_leads_to_the_first_step_that_takes_the_piece(
    make_context: Callable[..., Context], make_design: Callable[..., object]
) -> None:
    context = make_context(design=make_design(steps=(step("cut", "wall"), step("glue", "wall"), step("paint", "wall"))))
    assert pages_of_use(context, drafts(context, (), (1,), (2, 3))) == {"wall": 3}
    only_cut = make_context(design=make_design(steps=(step("cut", "wall"),)))
    assert pages_of_use(only_cut, drafts(only_cut, (), (1,))) == {"wall": 2}
    assert pages_of_use(only_cut, drafts(only_cut, (), ())) == {}


def test_the_words_of_its_sides_are_the_link(make_context: Callable[..., Context]) -> None:
    context = make_context()
    side = context.joined.sides[0]
    box = Box(10.0, 20.0, 50.0, 60.0)
    where = sides_carried(5, box, side.part, 1, side.mirrored)
    assert list(use_links(context, (where,), {side.part: 9})) == [Link(box, 9)]
    assert list(use_links(context, (where,), {})) == []
    bare = replace(context, joined=replace(context.joined, sides=()))
    assert list(use_links(bare, (where,), {side.part: 9})) == []


def test_a_part_of_a_step_leads_to_its_template(
    make_context: Callable[..., Context], make_design: Callable[..., object], numbers: Callable[..., object]
) -> None:
    context = make_context(design=make_design(steps=(step("glue", "wall"),)))
    (draft,) = step_drafts(context)
    seen = replace(numbers(4), parts=(("wall", 3), ("wall", 2)))  # type: ignore[type-var]
    links = [thing for thing in draft.body(seen).drawn if isinstance(thing, Link)]
    assert [link.page for link in links] == [3]
    assert draft.body(replace(seen, parts=())).drawn  # a part on no page leads nowhere
    assert not any(isinstance(thing, Link) for thing in draft.body(replace(seen, parts=())).drawn)
