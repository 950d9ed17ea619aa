"""The instructions: numbered steps with pictures beside the words; a step is never broken over two pages. Below the last of them
stands a licence whose text is ours, where the cautions leave it no room."""

from functools import partial

from publisher.basics import Box, TextPromise, record
from publisher.design import OwnLicence, StepPlan
from publisher.pages.front import licence_of, licence_stands_here, licensing
from publisher.pages.instructions.step_block import StepBlock, coarse_picture, step_block
from publisher.pages.sheet import Body, Context, Frame, Numbers, PageDraft, make_frame, share_out
from publisher.pages.type import SPACE, tidy

TASK = "Build, step by step"
LICENCE_ALONE = "What you may do"
BETWEEN = 2 * SPACE  # between two steps


@record
class Numbered:
    """A step with its number."""

    number: int
    step: StepPlan


def step_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return the instruction pages."""
    frame = make_frame(context.paper, False, 0.0)
    rows = tuple(Numbered(number, step) for number, step in enumerate(context.design.steps, 1))
    licence = None if licence_stands_here(context) else licence_of(context)
    pages = _filled(context, frame, rows, licence)
    drafts = []
    for index, page in enumerate(pages, 1):
        title = _title(page) if page else LICENCE_ALONE
        marks = tuple(
            (f"{row.number}  {tidy(context.say(row.step.title))}", 1, f"step:{row.number}:title") for row in page
        )
        body = partial(_body, context, frame, page, licence if index == len(pages) else None)
        coarse = (f for row in page for f in coarse_picture(context, row.step, row.number, frame.text.width))
        drafts.append(PageDraft("steps", f"steps:{index}", title, frame, body, TASK, marks, findings=tuple(coarse)))
    return tuple(drafts)


def _title(page: tuple[Numbered, ...]) -> str:
    first, last = page[0].number, page[-1].number
    return f"Step {first}" if first == last else f"Steps {first} to {last}"


def _filled(
    context: Context, frame: Frame, rows: tuple[Numbered, ...], licence: OwnLicence | None
) -> tuple[tuple[Numbered, ...], ...]:
    """Share the steps, and a licence after them, out over as few pages as can be, evenly; none is broken."""
    heights = [_block(context, frame, row, frame.text.top, (1, 1)).height + BETWEEN for row in rows]
    if licence is not None:
        heights.append(licensing(context.type, licence, 0.0, 0.0, frame.text.width).height + BETWEEN)
    room = frame.text.height + BETWEEN
    return tuple(rows[start:end] for start, end in share_out(heights, room, room))


def _block(context: Context, frame: Frame, row: Numbered, top: float, pages: tuple[int, int]) -> StepBlock:
    text = frame.text
    box = Box(text.left, text.bottom, text.right, top)
    return step_block(context, row.step, row.number, box, pages)


def _body(
    context: Context, frame: Frame, rows: tuple[Numbered, ...], licence: OwnLicence | None, numbers: Numbers
) -> Body:
    caution_page = numbers.page_of("cautions:1") or numbers.page
    body = Body()
    y = frame.text.top
    for row in rows:
        block = _block(context, frame, row, y, (numbers.page, caution_page))
        body += Body(block.drawn, carried=block.carried)
        y -= block.height + BETWEEN
    if licence is not None:
        drawn = licensing(context.type, licence, frame.text.left, y, frame.text.width).drawn
        body += Body(drawn, texts=tuple(TextPromise(numbers.page, text) for text in (licence.title, *licence.text)))
    return body
