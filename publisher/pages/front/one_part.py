"""The second page of a free test page: what it is and what may be done with it, and one small part of the design to cut."""

from collections.abc import Iterator
from dataclasses import replace
from functools import partial

import shapely

from publisher.basics import Box, Pose, TextPromise, record
from publisher.basics.wording import size_in_both
from publisher.design import own_licence
from publisher.geometry import Part, polygon
from publisher.pages.front.pages_to_print import ranges
from publisher.pages.model import Drawn
from publisher.pages.sheet import PAGE_SQUARE, Body, Context, Frame, Numbers, PageDraft, make_frame
from publisher.pages.templates import (
    PART_AWAY,
    PART_GAP,
    Lying,
    Planner,
    Sample,
    Shown,
    free_area,
    page_frame,
    templates_body,
    with_words,
)
from publisher.pages.type import BODY, DISPLAY, HEADING, LEAST, NOTE, SMALL, SPACE, Block, TypeStyle, tidy

ONE_PART = "one_part"
"""The kind of this page."""

TRY_TITLE = "Free test page: one part to cut"
NUMBER_COLUMN = 6.0  # mm from the number of a sentence to its words
ALONE_TITLE = "Free test page: what to try"
WHAT_IT_IS = "These pages try your printer, your knife and your board before you buy the pack, or cut any of it."
SIZES = ((DISPLAY, BODY, SMALL), (HEADING, SMALL, NOTE), (SMALL.bold(), NOTE, LEAST))
"""Of title, of what to do, and of all else; the smaller ones on small papers."""

MOST_CHECKS = (1, 2, 3)
"""Pages of a print check as they may be, before they have numbers."""

MADE = {
    "trace": "Glue it to card, cut the card, trace it on a scrap of the same board, lift the card and cut on the pencil line.",
    "paste": "Glue the print on a scrap of the same board, and cut on the line through paper and board.",
}
HANDY = (25.0, 12.0, 0.0)  # mm across its narrow side: a part that shows how the board cuts; then any that there is
FREE = (
    "Free test page: you may print it as often as you like, hand it on unchanged, and put it where others can take it. "
    "The pack has terms of its own: {licence}."
)


def one_part_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return the page; two on a paper where no part has room under the words; only words where no part goes on a page whole."""
    single = replace(
        context, needs=replace(context.needs, layouts=())
    )  # no corners to lay it by: it is cut from a scrap
    frame = page_frame(context.paper, False, PAGE_SQUARE, "lower_right")
    for part in _candidates(context):
        said = _TestWords(context, frame, part, SIZES[0])
        if shown := _under(single, said, part, said.set(MOST_CHECKS).height):
            return (_draft(single, said, shown),)
    alone = next((found for part in _candidates(context) if (found := _alone(single, part))), None)
    plain = make_frame(context.paper, False, 0.0, code=True)
    least = max(box.top for box in plain.blocked)
    lone = alone.lying[0].sample.part if alone else None
    ways = [_TestWords(context, plain, lone, size, below=False) for size in SIZES]
    said = next((one for one in ways if plain.text.top - one.set(MOST_CHECKS).height >= least), ways[-1])
    words = replace(_draft(single, said, None), title=ALONE_TITLE, key=f"{ONE_PART}:1", parts=())
    if alone is None or lone is None:
        return (words,)
    body = templates_body(single, alone)
    return (words, PageDraft(ONE_PART, f"{ONE_PART}:2", TRY_TITLE, alone.frame, body, "", parts=(lone.id,)))


def _draft(context: Context, said: "_TestWords", shown: Shown | None) -> PageDraft:
    body = partial(_body, context, said, shown)
    return PageDraft(ONE_PART, ONE_PART, TRY_TITLE, said.frame, body, "", parts=(said.part.id,) if said.part else ())


def _candidates(context: Context) -> Iterator[Part]:
    """Yield whole parts as single copies: those that are handy first, of these the smallest."""
    whole = [part for part in context.parts if not part.whole and part.printed == "whole"]
    sized = [(sorted(_sides(part)), part) for part in whole]
    seen: set[str] = set()
    for least in HANDY:
        for (narrow, _), part in sorted(sized, key=lambda one: (one[0][0] * one[0][1], one[1].letter)):
            if narrow >= least and part.id not in seen:
                seen.add(part.id)
                yield replace(part, count=1, spare=0, mirrored=0)


def _sides(part: Part) -> tuple[float, float]:
    left, bottom, right, top = polygon(part.outline).bounds
    return right - left, top - bottom


def _under(context: Context, said: "_TestWords", part: Part, height: float) -> Shown | None:
    """Return the part where it lies under words of this height, with its own words; None where they have no room."""
    frame = said.frame
    words = Box(frame.live.left, frame.text.top - height - SPACE, frame.live.right, frame.live.top)
    under = replace(frame, blocked=(*frame.blocked, words))
    labels = Planner(context).labels
    sample = _sample(context, part)
    if not labels.enough(sample):
        return None
    area = free_area(under)
    for turn in (0.0, 90.0):
        bare = Pose(turn=turn)
        left, bottom, right, top = polygon(part.template, bare).bounds
        x, y = frame.text.left - left, words.bottom - PART_GAP - PART_AWAY - top
        if not area.covers(shapely.box(x + left, y + bottom, x + right, y + top)):
            continue
        page = with_words(context, labels, Shown(under, (Lying(sample, Pose(round(x, 3), round(y, 3), turn)),)))
        lying = page.lying[0]
        if lying.beside is not None or labels.inside(sample, turn).all or not labels.said(sample).face:
            return page
    return None


def _alone(context: Context, part: Part) -> Shown | None:
    """Return a page with this part alone; None where none holds it."""
    planner = Planner(context)
    if not planner.fits(part):
        return None
    pages, left = planner.plan((_sample(context, part),))
    return pages[0] if len(pages) == 1 and not left else None


def _sample(context: Context, part: Part) -> Sample:
    return Sample(part, 0 if context.design.use == "trace" else 1, False)


def _body(context: Context, said: "_TestWords", shown: Shown | None, numbers: Numbers) -> Body:
    first, last = numbers.range_of("print_check") or (1, 1)
    pages = tuple(range(first, last + 1))
    texts = tuple(TextPromise(numbers.page, text) for text in said.texts(pages))
    body = Body(said.set(pages).drawn, texts=texts)
    return body + templates_body(context, shown)(numbers) if shown else body


@record
class _TestWords:
    """The words of the page: what this is, what to do, and what may be done with it; the part that lies under them, or on the next page;
    the sizes of title and words."""

    context: Context
    frame: Frame
    part: Part | None
    size: tuple[TypeStyle, TypeStyle, TypeStyle]
    below: bool = True

    def set(self, pages: tuple[int, ...]) -> Block:
        """Set all of them; ``pages`` are those of the print check."""
        setter, text = self.context.type, self.frame.text
        large, plain, small = self.size
        drawn: list[Drawn] = []
        y = text.top - SPACE
        head = ((self.context.design.title, large.tagged("h2")), (self._about(), small), (WHAT_IT_IS, plain))
        for said, style in head:
            block = setter.paragraph(tidy(said), style, text.left, y, text.width)
            drawn += block.drawn
            y -= block.height + SPACE / 2
        for number, said in enumerate(self._steps(pages), 1):
            drawn += setter.line(str(number), plain.bold().tagged("lbl"), text.left, y - setter.drop(plain))
            block = setter.paragraph(said, plain.tagged("li"), text.left + NUMBER_COLUMN, y, text.width - NUMBER_COLUMN)
            drawn += block.drawn
            y -= block.height + SPACE / 2
        if licence := _licence(self.context):
            block = setter.paragraph(licence, small, text.left, y - SPACE / 2, text.width)
            drawn += block.drawn
            y -= block.height + SPACE
        return Block(tuple(drawn), text.top - y)

    def texts(self, pages: tuple[int, ...]) -> tuple[str, ...]:
        """Return what a buyer acts on."""
        boards = tidy(self.context.boards)
        return (*self._steps(pages), *filter(None, (_licence(self.context), boards)))

    def _steps(self, pages: tuple[int, ...]) -> tuple[str, ...]:
        """Say what to do, in order."""
        part, context = self.part, self.context
        check = f"page {ranges(pages)}" if len(pages) == 1 else f"pages {ranges(pages)}"
        found = (
            f"Print these pages at 100 %, and measure the square of {check}. Stop until it is true.",
            f"Try a strip of your board in the gauge, make the coupon of {check}, and read there what it tells.",
        )
        if part is None:
            return found
        millimetres, imperial = size_in_both(*_sides(part))
        one, other = (millimetres, imperial) if context.paper.first == "mm" else (imperial, millimetres)
        return (
            *found,
            f"Make part {part.letter}, which lies {'below' if self.below else 'on the next page'}. {MADE[context.design.use]}",
            f"It should measure {one} ({other}). Square true, coupon right, part of its size: your printer and your board "
            "will do for the pack.",
        )

    def _about(self) -> str:
        design = self.context.design
        by = f"by {design.designer}" if design.designer else ""
        return " · ".join(filter(None, (by, f"version {design.version}", self.context.boards)))


def _licence(context: Context) -> str:
    """Say what may be done with these pages where the licence is one of ours; of another one only its name."""
    licence = context.design.licence
    if own_licence(licence, context.design.designer) is not None:
        return FREE.format(licence=licence)
    return f"Licence: {licence}." if licence else ""
