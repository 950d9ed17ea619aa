"""The phone copy of the instructions: pages of the shape of a phone, one act on each, to read beside the work. Nothing on them is at
true size, and none names a page of the pack: what is printed stays on paper."""

from collections.abc import Callable, Iterator
from functools import partial

from publisher.basics import Box, record
from publisher.design import StepPlan
from publisher.joints import JOINT, WAYS_UP, copies_taken, parts_in_hand
from publisher.pages.front import licence_of
from publisher.pages.instructions.act_cells import pictures_of
from publisher.pages.instructions.screens import (
    UNNUMBERED,
    ScreenBlock,
    cell_block,
    gap,
    height_of,
    listed_page,
    part_row,
    sketch_block,
    stacked,
    ticks,
    titled,
    together,
    words,
)
from publisher.pages.instructions.step_acts import ActSketch
from publisher.pages.instructions.step_block import named_things, said_beside, stage_tools
from publisher.pages.sheet import (
    Body,
    Caution,
    Context,
    Numbers,
    PageDraft,
    cautions_for,
    phone_frame,
    room,
)
from publisher.pages.type import SCREEN, SCREEN_HEAD, SCREEN_SMALL, SPACE, tidy

PHONE_START, PHONE_BEFORE, PHONE_STEPS, PHONE_LICENCE = "start", "before", "steps", "licence"
PHONE_CAUTIONS = "cautions"
WHAT_A_COPY_IS = (
    "Phone copy of the instructions, to read beside your work. Nothing in it is at true size: cut by the templates of the printed pack. "
    "Steps are numbered as in the pack for {paper}."
)
WITH_PAPER = "These come first, with the printed pack in hand: its pages say how."
LEAST_ON_SCREEN, TALLEST_ON_SCREEN = 38.0, 92.0  # mm: a picture under the words of a step, and one alone


@record
class Screen:
    """A screen to be: its blocks, its title, the bookmark that leads to it."""

    title: str
    blocks: tuple[ScreenBlock, ...]
    mark: tuple[str, int, str] | None = None


def phone_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return the pages of the phone copy; () for a design without steps."""
    if not context.design.steps:
        return ()
    rooms: tuple[tuple[str, list[tuple[str, Screen]]], ...] = (
        (PHONE_START, list(_start(context))),
        (PHONE_CAUTIONS, list(_cautions(context))),
        (PHONE_BEFORE, list(_before(context))),
        (PHONE_STEPS, [row for own, step in enumerate(context.design.steps, 1) for row in _step(context, step, own)]),
        (PHONE_LICENCE, list(_licence(context))),
    )
    return tuple(_draft(context, kind, key, screen) for kind, screens in rooms for key, screen in screens)


def _draft(context: Context, kind: str, key: str, screen: Screen) -> PageDraft:
    plain = phone_frame(context.paper)
    over = max(0.0, height_of(screen.blocks) - plain.text.height)
    frame = phone_frame(context.paper, plain.height + over)
    body = partial(_body, screen, frame.text)
    return PageDraft(kind, key, screen.title, frame, body, "", (screen.mark,) if screen.mark else ())


def _body(screen: Screen, box: Box, numbers: Numbers) -> Body:
    return stacked(screen.blocks, box, numbers)


def _width(context: Context) -> float:
    return phone_frame(context.paper).text.width


def _start(context: Context) -> Iterator[tuple[str, Screen]]:
    """Yield what this is, and the list of steps."""
    design, width = context.design, _width(context)
    by = f"by {design.designer}" if design.designer else ""
    about = " · ".join(filter(None, (by, f"version {design.version}", design.licence)))
    said = [words(context, tidy(design.title), width, SCREEN_HEAD.tagged("h2"))]
    said += [words(context, tidy(text), width, SCREEN_SMALL) for text in (design.variant_title, about) if text]
    said += [
        words(context, text, width, SCREEN_SMALL, promised=True) for text in (context.boards, context.trial) if text
    ]
    said.append(words(context, WHAT_A_COPY_IS.format(paper=context.paper.title), width, promised=True))
    if summary := context.say(design.summary):
        said.append(words(context, summary, width, key="summary"))
    yield "start", Screen("Phone copy", tuple(said))
    rows = [("", "Before you cut", f"{PHONE_CAUTIONS}:1")] if _cautions_of(context) else []
    first = len(context.acts) + 1
    if first > 1:
        rows.append((f"1-{first - 1}", "With the printed pack", PHONE_BEFORE))
    rows += [(str(first + n), context.say(step.title), _step_key(n + 1, 1)) for n, step in enumerate(design.steps)]
    listed = [listed_page(context, label, title, to, width) for label, title, to in rows]
    for number, blocks in enumerate(_filled(listed, room(context.paper)), 1):
        yield f"list:{number}", Screen("Steps", blocks)


def _filled(blocks: list[ScreenBlock], most: float) -> Iterator[tuple[ScreenBlock, ...]]:
    """Share blocks out over as few screens as take them."""
    here: list[ScreenBlock] = []
    for block in blocks:
        if here and height_of(here) + block.height > most:
            yield tuple(here)
            here = []
        here.append(block)
    if here:
        yield tuple(here)


def _cautions_of(context: Context) -> tuple[Caution, ...]:
    design = context.design
    return cautions_for(
        (*design.tools, *(m.name for m in design.materials), *(key for step in design.steps for key in step.uses))
    )


def _cautions(context: Context) -> Iterator[tuple[str, Screen]]:
    """Yield the cautions, several on a screen."""
    blocks = [_caution(context, one) for one in _cautions_of(context)]
    for number, some in enumerate(_filled(blocks, room(context.paper)), 1):
        yield f"{PHONE_CAUTIONS}:{number}", Screen("Before you cut", some)


def _caution_key(context: Context, caution: Caution) -> str:
    """Return the key of the screen with a caution."""
    known, count = _cautions_of(context), 0
    for number, some in enumerate(_filled([_caution(context, one) for one in known], room(context.paper)), 1):
        count += len(some)
        if known.index(caution) < count:
            return f"{PHONE_CAUTIONS}:{number}"
    raise ValueError(f"no screen with the caution {caution.id}")


def _caution(context: Context, caution: Caution) -> ScreenBlock:
    width = _width(context)
    return together(
        words(context, caution.title, width, SCREEN_HEAD.tagged("h2")),
        words(context, caution.text, width),
        gap(SPACE),
    )


def _before(context: Context) -> Iterator[tuple[str, Screen]]:
    """Yield the acts of the pack by their titles alone: they name its pages."""
    acts, width = context.acts, _width(context)
    if not acts:
        return
    rows = [titled(context, n, title, width, f"{key}:title") for n, (key, title) in enumerate(acts, 1)]
    title = f"Steps 1 to {len(acts)}" if len(acts) > 1 else "Step 1"
    yield PHONE_BEFORE, Screen(title, (words(context, WITH_PAPER, width), *rows))


def _step_key(own: int, number: int) -> str:
    return f"step:{own}:{number}"


def _step(context: Context, step: StepPlan, own: int) -> Iterator[tuple[str, Screen]]:
    """Yield the screens of a step: its words with what they take, and its first picture where it has room there; then every other
    picture on a screen of its own."""
    width = _width(context)
    number = len(context.acts) + own
    title, heading = context.say(step.title), f"Step {number}"
    beside = said_beside(context, own)
    said = [
        words(context, context.say(step.say), width, key=f"step:{own}:say"),
        *(words(context, one.text, width, key=one.key) for one in beside if one.key.startswith(JOINT)),
        gap(SPACE / 2),
        *(words(context, one.text, width, SCREEN_SMALL, one.key) for one in beside if one.key.startswith(WAYS_UP)),
        *_needed(context, step),
        *_warned(context, step),
    ]
    pictures = list(_pictures(context, step, own))
    taken = height_of(titled_and_ticked(context, number, title, 0, 2)) + height_of(said)
    here = (
        pictures[:1] if pictures and taken + SPACE + pictures[0](LEAST_ON_SCREEN).height <= room(context.paper) else []
    )
    alone = pictures[len(here) :]
    count = 1 + len(alone)
    left = room(context.paper) - taken
    first = (*titled_and_ticked(context, number, title, 0, count, f"step:{own}:title"), *said)
    shown = tuple(block for make in here for block in (gap(SPACE), make(min(TALLEST_ON_SCREEN, left - 3 * SPACE))))
    mark = (f"{number}  {tidy(title)}", 1, f"step:{own}:title")
    yield _step_key(own, 1), Screen(heading, (*first, *shown), mark)
    for place, make in enumerate(alone, 1):
        head = titled_and_ticked(context, number, title, place, count)
        most = room(context.paper) - height_of(head) - 2 * SPACE
        yield _step_key(own, place + 1), Screen(heading, (*head, gap(SPACE), make(max(LEAST_ON_SCREEN, most - SPACE))))


def titled_and_ticked(
    context: Context, number: int, title: str, done: int, of: int, key: str = ""
) -> tuple[ScreenBlock, ...]:
    """Return what stands at the top of each screen of a step."""
    return (titled(context, number, title, _width(context), key), ticks(context, done, of))


PictureAt = Callable[[float], ScreenBlock]  # a picture, at most so tall (mm)


def _pictures(context: Context, step: StepPlan, own: int) -> Iterator[PictureAt]:
    """Yield the pictures of a step as the pack shows them, in its order."""
    width = _width(context)
    for shown in pictures_of(context, step, own):
        if isinstance(shown, ActSketch):
            yield partial(sketch_block, context, shown, width)
        else:
            yield partial(cell_block, context, shown, width)


def _needed(context: Context, step: StepPlan) -> Iterator[ScreenBlock]:
    """Yield what a step takes in hand: parts by their letters, then tools and materials."""
    width = _width(context)
    parts = parts_in_hand(context, step)
    names = named_things(context, step)
    if parts or names:
        yield words(context, "You need now", width, SCREEN.bold())
    for part in parts:
        yield part_row(context, part.letter, copies_taken(context, part, step), part.name, width)
    if names:
        yield gap(SPACE / 2)
        yield words(context, ", ".join(names), width)


def _warned(context: Context, step: StepPlan) -> Iterator[ScreenBlock]:
    """Yield the cautions of a step, each with its own page."""
    keys = (*stage_tools(context, step), *step.uses)
    for caution in cautions_for(keys, always=False):
        yield _caution_line(context, caution)


def _caution_line(context: Context, caution: Caution) -> ScreenBlock:
    width, key = _width(context), _caution_key(context, caution)

    def said(page: int) -> ScreenBlock:
        return words(context, f"Caution: “{caution.title}” on page {page}.", width, SCREEN.bold())

    def draw(box: Box, numbers: Numbers) -> Body:
        return said(numbers.page_of(key) or UNNUMBERED).draw(box, numbers)

    return ScreenBlock(said(UNNUMBERED).height, draw)


def _licence(context: Context) -> Iterator[tuple[str, Screen]]:
    """Yield a licence whose text is ours."""
    licence = licence_of(context)
    if licence is None:
        return
    width = _width(context)
    title = words(context, licence.title, width, SCREEN_HEAD.tagged("h2"), promised=True)
    texts = (words(context, text, width, SCREEN_SMALL, promised=True) for text in licence.text)
    yield PHONE_LICENCE, Screen("What you may do", (title, *texts))
