"""The instructions: numbered steps with pictures beside the words; a step is never broken over two pages. Below the last of them
stands a licence whose text is ours, where the cautions leave it no room."""

from collections.abc import Iterator, Mapping
from functools import partial
from math import ceil

from publisher.basics import Box, TextPromise, record, remembered_few
from publisher.design import OwnLicence, StepPlan
from publisher.pages.front import licence_of, licence_stands_here, licensing
from publisher.pages.instructions.act_cells import FULL_PAGE, most_shown, pictures_of, weight_shown
from publisher.pages.instructions.pack_acts import Act, pack_acts
from publisher.pages.instructions.step_block import (
    NOWHERE,
    StepBlock,
    acts_abreast,
    acts_block,
    coarse_picture,
    step_block,
)
from publisher.pages.sheet import (
    A4,
    MOST_ON_A4,
    Body,
    Context,
    Frame,
    Numbers,
    PageDraft,
    make_frame,
    operators,
    share_out,
)
from publisher.pages.type import SPACE, tidy

TASK = "Build, step by step"
LICENCE_ALONE = "What you may do"
AROUND_STEPS = 200  # path operators of a page's frame and rules
BETWEEN = SPACE  # between two steps, over the rule of the next
LARGER = (1.5, 1.25, 1.1)
"""How large pictures are, of what they must be, where their page has room: the most that it holds."""


@record
class Numbered:
    """A step of the design, the ``own``-th, or acts of the pack that stand before them, with the number of the first on the pages."""

    number: int
    own: int
    step: StepPlan | tuple[Act, ...]
    some: tuple[int, int] | None = None  # of its pictures, where they go over several pages
    goes_on: bool = False  # its words stand on a page before

    @property
    def last(self) -> int:
        """The last number."""
        return self.number + (len(self.step) - 1 if isinstance(self.step, tuple) else 0)

    def marks(self, context: Context) -> tuple[tuple[str, int, str], ...]:
        """Return the bookmarks of its titles."""
        if self.goes_on:
            return ()
        own = f"step:{self.own}:title"
        titles = (
            [(act.title, f"{act.key}:title") for act in self.step]
            if isinstance(self.step, tuple)
            else [(context.say(self.step.title), own)]
        )
        return tuple((f"{n}  {tidy(title)}", 1, key) for n, (title, key) in enumerate(titles, self.number))


def step_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return the instruction pages."""
    frame = make_frame(context.read_on, False, 0.0)
    rows = _rows(context, frame, None)
    licence = None if licence_stands_here(context) else licence_of(context)
    pages = _filled(context, frame, rows, licence)
    drafts = []
    for index, page in enumerate(pages, 1):
        title = _title(page) if page else LICENCE_ALONE
        marks = tuple(mark for row in page for mark in row.marks(context))
        last = licence if index == len(pages) else None
        body = partial(_body, context, frame, page, last, _larger(context, frame, page, last))
        steps = ((row.own, row.step) for row in page if isinstance(row.step, StepPlan) and not row.goes_on)
        coarse = (f for own, step in steps for f in coarse_picture(context, step, own, frame.text.width))
        drafts.append(PageDraft("steps", f"steps:{index}", title, frame, body, TASK, marks, findings=tuple(coarse)))
    return tuple(drafts)


def _rows(context: Context, frame: Frame, numbers: Numbers | None) -> tuple[Numbered, ...]:
    """Return the acts of the pack, together where they stand in columns, and the steps of the design, numbered on; a design without
    steps has no instructions."""
    acts = pack_acts(context, numbers) if context.design.steps else ()
    first = tuple(Numbered(start + 1, 0, acts[start:end]) for start, end in acts_abreast(len(acts), frame.text.width))
    own = (
        row
        for n, step in enumerate(context.design.steps, 1)
        for row in _pages_of(context, frame, len(acts) + n, n, step)
    )
    return (*first, *own)


@remembered_few
def _pages_of(context: Context, frame: Frame, number: int, own: int, step: StepPlan) -> tuple[Numbered, ...]:
    """Return a step as it is shared by pages: the pages are filled once, and each of them asks again when it is drawn."""
    return tuple(_shared(context, frame, number, own, step))


def _shared(context: Context, frame: Frame, number: int, own: int, step: StepPlan) -> Iterator[Numbered]:
    """Yield a step as it is shared by pages: with more pictures than a page has room for, or may show, it goes on at the next."""
    pictures = pictures_of(context, step, own)
    count = len(pictures)
    start, goes_on = 0, False
    while start < count or not goes_on:
        end = start + most_shown(pictures[start:])
        if start == 0 and end == count and _fits(context, frame, Numbered(number, own, step)):
            yield Numbered(number, own, step)
            return
        least = start + 1 if goes_on else start  # words may take a page alone, a picture never less than it needs
        while end > least and not _fits(context, frame, Numbered(number, own, step, (start, end), goes_on)):
            end -= 1
        yield Numbered(number, own, step, (start, end), goes_on)
        start, goes_on = end, True


def _fits(context: Context, frame: Frame, row: Numbered) -> bool:
    height, lines = _takes(context, frame, row)
    return height <= frame.text.height and lines <= _most_lines(frame)


@remembered_few
def _takes(context: Context, frame: Frame, row: Numbered, larger: float = 1.0) -> tuple[float, int]:
    """Return how tall a row stands (mm), and how many path operators it draws; both are the same wherever the row stands."""
    block = _block(context, frame, row, frame.text.top, (1, 1), larger=larger)
    return block.height, sum(map(operators, block.drawn))


def _most_lines(frame: Frame) -> float:
    """Return how many path operators the steps of a page may draw: of a page with more, pictures would lose lines that are promised."""
    return MOST_ON_A4 * max(1.0, frame.width * frame.height / A4) - AROUND_STEPS


def _title(page: tuple[Numbered, ...]) -> str:
    first, last = page[0].number, page[-1].last
    return f"Step {first}" if first == last else f"Steps {first} to {last}"


def _filled(
    context: Context, frame: Frame, rows: tuple[Numbered, ...], licence: OwnLicence | None
) -> tuple[tuple[Numbered, ...], ...]:
    """Share the steps, and a licence after them, out over as few pages as can be, evenly; none is broken."""
    taken = [_takes(context, frame, row) for row in rows]
    heights = [height + BETWEEN for height, _ in taken]
    if licence is not None:
        heights.append(_licence_height(context, frame, licence))
    room = frame.text.height + BETWEEN
    dense = [min(FULL_PAGE, ceil(FULL_PAGE * lines / _most_lines(frame))) for _, lines in taken]
    counts = [max(_shown(context, row), share) for row, share in zip(rows, dense, strict=True)]
    counts += [0] * (len(heights) - len(rows))
    return tuple(rows[start:end] for start, end in share_out(heights, room, room, counts, FULL_PAGE))


def _larger(context: Context, frame: Frame, page: tuple[Numbered, ...], licence: OwnLicence | None) -> float:
    """Return how large the pictures of a page may be, of what they must be."""
    room = frame.text.height + BETWEEN - (_licence_height(context, frame, licence) if licence is not None else 0.0)
    return next((larger for larger in LARGER if _holds(context, frame, page, larger, room)), 1.0)


def _holds(context: Context, frame: Frame, page: tuple[Numbered, ...], larger: float, room: float) -> bool:
    """Say whether a page of ``room`` mm holds its steps with pictures so large. None is laid out once it is known that it does not."""
    tall, drawn = 0.0, 0
    for row in page:
        height, lines = _takes(context, frame, row, larger)
        tall, drawn = tall + height + BETWEEN, drawn + lines
        if tall > room or drawn > _most_lines(frame):
            return False
    return True


def _licence_height(context: Context, frame: Frame, licence: OwnLicence) -> float:
    return licensing(context.type, licence, 0.0, 0.0, frame.text.width).height + BETWEEN


def _shown(context: Context, row: Numbered) -> int:
    """Return how much of a page's share of pictures a row takes."""
    if isinstance(row.step, tuple):
        return sum(weight_shown(act.sketch) for act in row.step if act.sketch is not None)
    every = pictures_of(context, row.step, row.own)
    return sum(map(weight_shown, every if row.some is None else every[slice(*row.some)]))


def _block(
    context: Context,
    frame: Frame,
    row: Numbered,
    top: float,
    pages: tuple[int, int],
    templates: Mapping[str, int] = NOWHERE,
    larger: float = 1.0,
) -> StepBlock:
    text = frame.text
    box = Box(text.left, text.bottom, text.right, top)
    if isinstance(row.step, tuple):
        return acts_block(context, row.step, row.number, box, pages, larger)
    return step_block(
        context, row.step, row.own, box, pages, row.number, templates, row.some, goes_on=row.goes_on, larger=larger
    )


def _body(
    context: Context,
    frame: Frame,
    rows: tuple[Numbered, ...],
    licence: OwnLicence | None,
    larger: float,
    numbers: Numbers,
) -> Body:
    caution_page = numbers.page_of("cautions:1") or numbers.page
    templates = {part.id: pages[0] for part in context.parts if (pages := numbers.pages_of_part(part.id))}
    body = Body()
    y = frame.text.top
    # acts name pages, which are numbered now
    known = {(row.number, row.some): row for row in _rows(context, frame, numbers)}
    for row in (known[row.number, row.some] for row in rows):
        block = _block(context, frame, row, y, (numbers.page, caution_page), templates, larger)
        body += Body(block.drawn, carried=block.carried, texts=block.texts)
        y -= block.height + BETWEEN
    if licence is not None:
        drawn = licensing(context.type, licence, frame.text.left, y, frame.text.width).drawn
        body += Body(drawn, texts=tuple(TextPromise(numbers.page, text) for text in (licence.title, *licence.text)))
    return body
