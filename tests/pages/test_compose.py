"""A whole pack of a small design: order, numbers, plan, bookmarks, promises, findings."""

import sys
from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import pytest

from publisher.basics import Severity
from publisher.brief import Inputs, SpecFile
from publisher.design import Blank, Design, StepPlan, TextPlan
from publisher.joints.model import Labour
from publisher.pages import Pack, Picture, Words, compose
from publisher.pages.front import cover_drafts, print_check_drafts
from publisher.pages.makers import PAGES, PageMaker
from publisher.pages.sheet import PageFault, make_frame
from publisher.pages.sheet.draft import Body, Context, PageDraft
from publisher.pages.type import BODY
from publisher.pages.type.fonts import face

Make = Callable[..., Context]


def packed(context: Context) -> Pack:
    return compose(
        context.design, context.parts, context.joined, context.needs, context.paper, Inputs(context.design.slug)
    )


@pytest.fixture
def stepped(make_design: Callable[..., Design]) -> Callable[..., Design]:
    def make(**changes: object) -> Design:
        place = make_design().parts[0].place
        steps = tuple(
            StepPlan(TextPlan((title,), place), "cut", TextPlan((say,), place), ("wall",), (), None, place)
            for title, say in (("Trace", "Trace the wall twice."), ("Cut", "Cut openings first."))
        )
        return make_design(steps=steps, **changes)

    return make


def test_pages_are_numbered_throughout_and_in_order(make_context: Make, stepped: Callable[..., Design]) -> None:
    pack = packed(make_context(design=stepped()))
    assert [p.number for p in pack.pages] == list(range(1, len(pack.pages) + 1))
    assert [p.label for p in pack.pages] == [str(p.number) for p in pack.pages]
    rank = [kind for maker in PAGES for kind, _ in maker.kinds]
    kinds = [p.kind for p in pack.pages]
    assert kinds[:2] == ["cover", "print_check"]
    assert pack.pages[1].title.startswith("Page 2:")
    assert "templates" in kinds
    assert [rank.index(k) for k in kinds] == sorted(rank.index(k) for k in kinds)
    assert [f for f in pack.findings if f.severity is Severity.ERROR] == []


def test_the_print_plan_covers_every_page_once(make_context: Make, stepped: Callable[..., Design]) -> None:
    pack = packed(make_context(design=stepped()))
    assert pack.print_plan[0][1] == 1
    assert pack.print_plan[-1][2] == len(pack.pages)
    for (_, _, last), (_, first, _) in pairwise(pack.print_plan):
        assert first == last + 1
    assert all(task[0].isupper() for task, _, _ in pack.print_plan)


def test_bookmarks_lead_to_the_first_page_of_each_kind(make_context: Make, stepped: Callable[..., Design]) -> None:
    pack = packed(make_context(design=stepped()))
    tops = [(b.title, b.page) for b in pack.bookmarks if b.depth == 0]
    firsts = {p.kind: p.number for p in reversed(pack.pages)}
    assert tops == [(title, firsts[kind]) for maker in PAGES for kind, title in maker.kinds if kind in firsts]
    assert [b.page for b in pack.bookmarks] == sorted(b.page for b in pack.bookmarks)


def test_every_page_is_promised_and_templates_carry_square_code_and_outline(make_context: Make) -> None:
    pack = packed(make_context("letter"))
    promises = pack.promises
    assert [(p.page, p.width, p.height, p.kind) for p in promises.pages] == [
        (p.number, p.width, p.height, p.kind) for p in pack.pages
    ]
    assert all(p.corners for p in promises.pages)
    for page in pack.pages:
        codes = [c for c in promises.codes if c.page == page.number]
        sides = [p for p in promises.lengths if p.page == page.number and p.purpose == "calibration"]
        if page.kind in {"templates", "tiles", "print_check"}:
            assert [c.text for c in codes] == [f"TOLL-HOUSE/{page.number}/{len(pack.pages)}/{pack.id.upper()}/S"]
            assert len(sides) == 4
    assert {o.part for o in promises.outlines} == {"wall"}
    assert promises.title == pack.title == "Toll house · foam 0.197 in (5.00 mm)"


def test_the_same_design_gives_the_same_pack(make_context: Make, stepped: Callable[..., Design]) -> None:
    one, two = (packed(make_context(design=stepped())) for _ in range(2))
    assert one == two


@pytest.mark.keeps("pages/font-unreadable")
def test_a_variant_is_named_in_the_title(make_context: Make, make_design: Callable[..., Design]) -> None:
    pack = packed(make_context(design=make_design(variant="wide", variant_title="for 40 mm bases")))
    assert pack.title == "Toll house, for 40 mm bases · foam 5.00 mm (0.197 in)"
    assert pack.promises.title == pack.title


def test_an_unknown_name_in_a_text_is_found_once(make_context: Make, make_design: Callable[..., Design]) -> None:
    place = make_design().parts[0].place
    pack = packed(make_context(design=make_design(summary=TextPlan(("It is ", Blank("no_such_size", place)), place))))
    assert sum("no_such_size" in f.message for f in pack.findings) == 1


@pytest.mark.breaks("pages/font-unreadable")
def test_a_font_that_cannot_be_read_is_found_and_the_pack_set_without_it(
    make_context: Make, make_design: Callable[..., Design]
) -> None:
    place = make_design().parts[0].place
    bad = SpecFile("mine.ttf", "font", b"no font", place=place)
    context = make_context()
    pack = packed(replace(context, design=make_design(fonts=("mine.ttf",), files=(bad,))))
    (found,) = [f for f in pack.findings if f.check == "pages/font-unreadable"]
    assert found.place == place
    assert [f.name for f in pack.fonts] == ["regular", "bold"]


def test_a_font_of_the_design_is_carried(make_context: Make, make_design: Callable[..., Design]) -> None:
    own = SpecFile("mine.ttf", "font", face("bold").data)
    pack = packed(make_context(design=make_design(fonts=("mine.ttf",), files=(own,))))
    assert [f.name for f in pack.fonts] == ["regular", "bold", "design 1"]


def test_letters_that_no_font_has_stop_the_pack(make_context: Make, make_design: Callable[..., Design]) -> None:
    pack = packed(make_context(design=make_design(title="水門")))
    assert {f.check for f in pack.findings if f.severity is Severity.ERROR} == {"pages/letter-missing"}


def test_only_pictures_that_a_page_shows_are_carried(make_context: Make, make_design: Callable[..., Design]) -> None:
    unused = SpecFile("photo.jpg", "picture", b"...", 10, 10)
    pack = packed(make_context(design=make_design(files=(unused,))))
    assert pack.images == ()
    assert not any(isinstance(t, Picture) for p in pack.pages for t in p.drawn)


@pytest.mark.parametrize("paper", ["a3", "tabloid", "legal", "arch_d", "common"])
def test_other_papers(make_context: Make, stepped: Callable[..., Design], paper: str) -> None:
    pack = packed(make_context(paper, stepped()))
    assert [f for f in pack.findings if f.severity is Severity.ERROR] == []


def test_a_page_that_is_too_full_for_its_rulers_is_a_fault_of_ours(
    make_context: Make, monkeypatch: pytest.MonkeyPatch
) -> None:
    def crowded(context: Context) -> tuple[PageDraft, ...]:
        (draft,) = print_check_drafts(context)
        foot = draft.frame.live.bottom + 4.0  # the ruler stands 6.5 mm over it
        words = context.type.line("Measure again after gluing to card", BODY, 60.0, foot)
        return (replace(draft, body=lambda numbers: draft.body(numbers) + Body(words)),)

    maker = PageMaker(crowded, (("print_check", "Print check"),))
    pages = tuple(maker if one.drafts is print_check_drafts else one for one in PAGES)
    monkeypatch.setattr(sys.modules[PageMaker.__module__], "PAGES", pages)
    with pytest.raises(PageFault, match=r"page 2 .*Measure again after gluing to card.* lies? on"):
        packed(make_context("letter"))


def test_what_the_cover_forgets_stays_promised(make_context: Make, monkeypatch: pytest.MonkeyPatch) -> None:
    """No page can say that it had no room: whoever promised the hours says when they may be missing."""

    def forgets(context: Context) -> tuple[PageDraft, ...]:
        draft = cover_drafts(context)[0]
        return (replace(draft, body=lambda numbers: replace(draft.body(numbers), carried=())),)

    context = make_context()
    context = replace(context, joined=replace(context.joined, effort=Labour(1, 2, 0, 0, 0, 0, 0, 0)))
    pages = (PageMaker(forgets, (("cover", "Cover"),)), *PAGES[1:])
    monkeypatch.setattr(sys.modules[PageMaker.__module__], "PAGES", pages)
    promised = {one.key: one for one in packed(context).promises.sentences}
    assert promised["cover:hours"].room == 0.0 and "cover:difficulty" in promised


def test_the_ink_of_a_page_is_the_same_wherever_it_and_the_pages_it_names_stand(
    make_context: Make, stepped: Callable[..., Design], monkeypatch: pytest.MonkeyPatch
) -> None:
    context = make_context(design=stepped())
    before = packed(context)
    task = before.print_plan[0][0]
    frame = make_frame(context.paper, False, 0.0)
    first = PageDraft("note", "note:1", "Note", frame, lambda _: Body(), task)
    maker = PageMaker(lambda _: (first,), (("note", "Note"),))
    monkeypatch.setattr(sys.modules[PageMaker.__module__], "PAGES", (maker, *PAGES))
    after = packed(context)
    assert [page.number for page in after.pages] == [page.number for page in before.pages] + [len(before.pages) + 1]
    assert [page.ink for page in after.pages[1:]] == [page.ink for page in before.pages]
    names = [page.kind for page, other in zip(before.pages, after.pages[1:], strict=True) if page.text != other.text]
    assert names == ["cover", "steps"]  # the print plan and the acts of the pack do say other numbers now


def test_title_and_cover_say_for_which_boards_a_pack_is_drawn(
    make_context: Make, stepped: Callable[..., Design]
) -> None:
    design = stepped()
    (board,) = (b for b in design.boards if b.id == design.parts[0].board)
    others = tuple(b for b in design.boards if b is not board)
    thin = replace(board, thickness=4.7625, sold_as="3/16 in")
    titles = {}
    for name, chosen in (("5 mm", board), ("3/16 in", thin)):
        pack = packed(make_context(design=replace(design, boards=(chosen, *others))))
        said = pack.title.removeprefix(f"{design.title} · ")
        assert said in {t.text for t in pack.promises.texts if t.page == 1}
        assert any(w.text.startswith("by ") and said in w.text for w in pack.pages[0].drawn if isinstance(w, Words))
        assert pack.title == pack.promises.title
        titles[name] = pack.title
    assert titles["3/16 in"].endswith("4.76 mm (0.187 in), sold as 3/16 in")
    assert titles["5 mm"] != titles["3/16 in"]
