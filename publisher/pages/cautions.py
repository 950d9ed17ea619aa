"""The caution page: what the listed tools and materials call for, in two columns."""

from functools import partial

from publisher.basics import Layer
from publisher.pages.draft import Body, Context, Numbers, PageDraft
from publisher.pages.frame import Frame, columns, make_frame
from publisher.pages.model import Drawn, Path, Stroke
from publisher.pages.styles import BODY, GUTTER, HEADING, SMALL, SPACE, STRONG_RULE
from publisher.pages.text import Block
from publisher.pages.words import Caution, cautions_for

TASK = "Read before you cut and glue"
INTRO = "Read this page before the first cut. It names what the tools and materials of this pack call for."


def caution_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return as many pages as the cautions fill: one, as a rule."""
    frame = make_frame(context.paper, False, 0.0)
    design = context.design
    keys = (*design.tools, *(m.name for m in design.materials), *(k for s in design.steps for k in s.uses))
    pages = _pages(context, frame, cautions_for(keys))
    return tuple(
        PageDraft("cautions", f"cautions:{number}", "Cautions", frame, partial(_body, drawn), TASK)
        for number, drawn in enumerate(pages, 1)
    )


def _body(drawn: tuple[Drawn, ...], _numbers: Numbers) -> Body:
    return Body(drawn)


def _pages(context: Context, frame: Frame, cautions: tuple[Caution, ...]) -> list[tuple[Drawn, ...]]:
    setter, text = context.type, frame.text
    intro = setter.paragraph(INTRO, BODY, text.left, text.top - SPACE, text.width)
    top = text.top - SPACE - intro.height - 2 * SPACE
    cells = columns(text, 2, GUTTER * 1.5)
    pages: list[list[Drawn]] = [list(intro.drawn)]
    heights = [_block(context, c, 0.0, 0.0, cells[0].width).height + 2 * SPACE for c in cautions]
    # the columns of a page that is not full are made alike: half the height each
    room = min(top - text.bottom, max(sum(heights) / 2 + max(heights, default=0.0) / 2, 0.0))
    column, y = 0, top
    for caution, height in zip(cautions, heights, strict=True):
        if top - (y - height) > room + 1e-6 and y < top:
            column, y = column + 1, top
            if column == len(cells):
                pages.append([])
                column, y, top, room = 0, text.top - SPACE, text.top - SPACE, text.height
        pages[-1] += _block(context, caution, cells[column].left, y, cells[column].width).drawn
        y -= height
    return [tuple(page) for page in pages]


def _block(context: Context, caution: Caution, x: float, top: float, width: float) -> Block:
    setter = context.type
    title = setter.line(caution.title, HEADING.tagged("h2"), x, top - setter.drop(HEADING) - 1.0)
    words = setter.paragraph(caution.text, SMALL, x, top - HEADING.leading - 1.0, width)
    rule = Stroke(STRONG_RULE, (Path(((x, top), (x + width, top))),), Layer.PAGE, tag="artifact")
    return Block((rule, *title, *words.drawn), HEADING.leading + 1.0 + words.height)
