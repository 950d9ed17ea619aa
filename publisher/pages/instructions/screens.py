"""What stands on the screens of a phone copy, block by block: each knows its height before pages have numbers, and is drawn when they
have."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from functools import partial

from publisher.basics import Box, Carried, Layer, TextPromise, polyline, record
from publisher.joints import Drawing
from publisher.pages.instructions.act_cells import (
    SIGN_TALL,
    TALLEST_ACT,
    ActCells,
    CellLook,
    OwnPicture,
    act_cell,
    shown_parts,
)
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.instructions.step_acts import ActSketch
from publisher.pages.model import Drawn, Link, Stroke
from publisher.pages.sheet import (
    Body,
    Context,
    Numbers,
    described,
)
from publisher.pages.type import PICTURE_CONTOUR, PICTURE_CUE, RULE, SCREEN, SCREEN_HEAD, SCREEN_SMALL, SPACE, TypeStyle

STEP_NUMBER_WIDE = 11.0  # mm: the column of a step's number
LETTER_WIDE, COUNT_WIDE = 11.0, 13.0  # of a part's letter, and of how many of it
TICK_BOX, TICK_STEP, MOST_TICKS = 4.2, 6.4, 9  # mm, and boxes in a row
LISTED_PAGE_WIDE = 17.0  # of “page 12” in a list
ON_SCREEN_LARGER = 1.25  # times as large as on paper
ON_SCREEN = CellLook(ON_SCREEN_LARGER, SCREEN_SMALL.bold())
UNNUMBERED = 888  # a page number as wide as any, before pages have numbers


@record
class ScreenBlock:
    """A block of a screen: its height (mm) at this width, and how it is drawn under ``top``: its drawing and promises."""

    height: float
    draw: Callable[[Box, Numbers], Body]


def words(
    context: Context, text: str, width: float, style: TypeStyle = SCREEN, key: str = "", promised: bool = False
) -> ScreenBlock:
    """Return a paragraph; carried under its ``key``, or ``promised`` word for word."""
    setter = context.type

    def draw(box: Box, numbers: Numbers) -> Body:
        block = setter.paragraph(text, style, box.left, box.top, box.width)
        carried = (Carried(key, numbers.page, replace(box, bottom=box.top - block.height)),) if key else ()
        return Body(block.drawn, carried=carried, texts=(TextPromise(numbers.page, text),) if promised else ())

    return ScreenBlock(setter.height(text, style, width) + SPACE, draw)


def titled(context: Context, number: int, title: str, width: float, key: str = "") -> ScreenBlock:
    """Return a step's number and title; carried under the ``key`` where the step begins."""
    setter = context.type
    column = max(STEP_NUMBER_WIDE, setter.width(str(number), SCREEN_HEAD) + SPACE)

    def draw(box: Box, numbers: Numbers) -> Body:
        left = box.left + column
        block = setter.paragraph(title, SCREEN_HEAD.tagged("h2"), left, box.top, box.width - column)
        number_at = setter.line(str(number), SCREEN_HEAD.tagged("h2"), box.left, box.top - setter.drop(SCREEN_HEAD))
        where = Box(left, box.top - block.height, box.right, box.top)
        return Body((*number_at, *block.drawn), carried=(Carried(key, numbers.page, where),) if key else ())

    return ScreenBlock(setter.height(title, SCREEN_HEAD, width - column) + SPACE, draw)


def ticks(context: Context, done: int, of: int) -> ScreenBlock:
    """Return a row of boxes, one for each screen of a step: those before this one ticked; where they are many only this one's."""
    setter = context.type
    shown, ticked = (of, done) if of <= MOST_TICKS else (1, 0)

    def draw(box: Box, _: Numbers) -> Body:
        low = box.top - TICK_BOX
        squares, marks = [], []
        for place in range(shown):
            x = box.left + place * TICK_STEP
            squares.append(polyline(Box(x, low, x + TICK_BOX, box.top).corners(), closed=True))
            if place < ticked:
                marks.append(polyline(((x + 0.8, low + 2.2), (x + 1.8, low + 1.0), (x + 3.5, low + 3.5))))
        drawn: list[Drawn] = [Stroke(PICTURE_CONTOUR, tuple(squares), Layer.PAGE, tag="artifact")]
        if marks:
            drawn.append(Stroke(PICTURE_CUE, tuple(marks), Layer.PAGE, tag="artifact"))
        if of > 1:
            style = SCREEN_SMALL.tagged("p")
            drawn += setter.line(f"{done + 1} of {of}", style, box.left + shown * TICK_STEP + 1.0, low + 0.7)
        return Body(tuple(drawn))

    return ScreenBlock(TICK_BOX + SPACE, draw)


def cell_block(context: Context, shown: Drawing | OwnPicture, width: float, tallest: float) -> ScreenBlock:
    """Return a picture of what is put together, or the designer's own, as in the pack, as large as fits ``width`` and ``tallest`` (mm);
    its words are as large as others on a screen."""
    larger = tallest / TALLEST_ACT

    def cell(box: Box, page: int) -> ActCells:
        return act_cell(context, shown, 0, box, page, larger, ON_SCREEN)

    made = cell(Box(0.0, -tallest, width, 0.0), 0)
    height = max(made.height, SIGN_TALL if len(made.carried) > 1 else 0.0)

    def draw(box: Box, numbers: Numbers) -> Body:
        made = cell(box, numbers.page)
        return Body(made.drawn, carried=made.carried)

    return ScreenBlock(height + 2 * SPACE if made.height else 0.0, draw)


def sketch_block(context: Context, sketch: ActSketch, width: float, tallest: float) -> ScreenBlock:
    """Return the sketch of an act as large as fits ``width`` and ``tallest`` (mm), its words as large as others on a screen."""
    scale = min(ON_SCREEN_LARGER, width / FIELD_WIDE, tallest / FIELD_TALL)

    def draw(box: Box, numbers: Numbers) -> Body:
        left = (box.left + box.right - FIELD_WIDE * scale) / 2
        place = Box(left, box.top - FIELD_TALL * scale, left + FIELD_WIDE * scale, box.top)
        pen = SketchPen(context.type, (left, place.bottom), scale, SCREEN_SMALL, SCREEN_SMALL)
        sketch.draw(pen)
        return Body(described(pen.seen(), sketch.shows), carried=shown_parts(sketch, pen.parts, numbers.page, place))

    return ScreenBlock(FIELD_TALL * scale + 2 * SPACE, draw)


def part_row(context: Context, letter: str, count: int, name: str, width: float) -> ScreenBlock:
    """Return a part that is taken in hand: its letter, how many (0: the words say), its name."""
    setter = context.type
    first = max(LETTER_WIDE, setter.width(letter, SCREEN.bold()) + SPACE)
    second = max(COUNT_WIDE, setter.width(f"{count} ×", SCREEN) + SPACE) if count else 0.0
    column = first + second

    def draw(box: Box, _: Numbers) -> Body:
        base = box.top - setter.drop(SCREEN)
        drawn = [*setter.line(letter, SCREEN.bold(), box.left, base)]
        if count:
            drawn += setter.line(f"{count} ×", SCREEN, box.left + first, base)
        block = setter.paragraph(name, SCREEN, box.left + column, box.top, box.width - column)
        return Body((*drawn, *block.drawn))

    return ScreenBlock(setter.height(name, SCREEN, width - column) + 0.6, draw)


def listed_page(context: Context, label: str, title: str, to: str, width: float) -> ScreenBlock:
    """Return a row of a list of contents that leads to the draft with this key."""
    setter = context.type
    first = STEP_NUMBER_WIDE if label else 0.0
    room = width - first - LISTED_PAGE_WIDE

    def draw(box: Box, numbers: Numbers) -> Body:
        page = numbers.page_of(to) or UNNUMBERED
        base = box.top - setter.drop(SCREEN)
        block = setter.paragraph(title, SCREEN, box.left + first, box.top, room)
        drawn: list[Drawn] = [*setter.line(label, SCREEN.bold(), box.left, base)] if label else []
        drawn += block.drawn
        drawn += setter.line(f"page {page}", SCREEN_SMALL, box.right, base, align="right")
        low = box.top - block.height - 0.6
        drawn.append(Stroke(RULE, (polyline(((box.left, low), (box.right, low))),), Layer.PAGE, tag="artifact"))
        if page != UNNUMBERED:
            drawn.append(Link(Box(box.left, low, box.right - LISTED_PAGE_WIDE, box.top), page))
        return Body(tuple(drawn))

    return ScreenBlock(setter.height(title, SCREEN, room) + 1.8, draw)


def gap(height: float) -> ScreenBlock:
    """Return nothing, so high (mm)."""
    return ScreenBlock(height, lambda _, __: Body())


def together(*blocks: ScreenBlock) -> ScreenBlock:
    """Return blocks that are never parted."""
    return ScreenBlock(height_of(blocks), partial(stacked, blocks))


def height_of(blocks: Iterable[ScreenBlock]) -> float:
    """Return the height (mm) of blocks under each other."""
    return sum(block.height for block in blocks)


def stacked(blocks: Iterable[ScreenBlock], box: Box, numbers: Numbers) -> Body:
    """Draw blocks under each other from the top of a box."""
    body, y = Body(), box.top
    for block in blocks:
        body += block.draw(replace(box, top=y), numbers)
        y -= block.height
    return body
