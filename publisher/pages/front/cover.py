"""The cover: what this is, what the finished piece looks like, what to have at hand, which pages to print for which task."""

from publisher.basics import Box, Carried, Layer, TextPromise, polyline
from publisher.pages.front.cover_picture import finished_piece
from publisher.pages.front.handling import handling_lines
from publisher.pages.front.to_buy import board_lines, material_lines, range_lines, tool_lines
from publisher.pages.model import Drawn, Fill, Link
from publisher.pages.sheet import Body, Context, Frame, Numbers, PageDraft, columns, make_frame
from publisher.pages.type import (
    BODY,
    DISPLAY,
    GUTTER,
    HEADING,
    SMALL,
    SPACE,
    Block,
    Column,
    TypeStyle,
    make_table,
    tidy,
)

TASK = "Read first"
BULLET = 3.2  # from the side of a list to its words


def cover_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return the cover page."""
    frame = make_frame(context.paper, False, 0.0)
    return (PageDraft("cover", "cover", "Start here", frame, lambda numbers: _body(context, frame, numbers), TASK),)


def _body(context: Context, frame: Frame, numbers: Numbers) -> Body:
    text = frame.text
    head, summary = _head(context, text)
    left, right = columns(text, 2, GUTTER * 1.5)
    foot = max(_needs(context, left, 0.0).height, _plan(context, right, 0.0, numbers)[0].height)
    top = text.bottom + foot
    plan, links = _plan(context, right, top, numbers)
    drawn = [*head.drawn, *_needs(context, left, top).drawn, *plan.drawn, *links]
    box = Box(text.left, top + 3 * SPACE, text.right, text.top - head.height - 2 * SPACE)
    piece = finished_piece(context, box, numbers.page)
    figures = (line for board in context.design.boards for line in range_lines(context, board))
    trial = (context.trial,) if context.trial else ()
    texts = tuple(TextPromise(numbers.page, line) for line in (*trial, *figures, *handling_lines(context)))
    return piece + Body(tuple(drawn), texts=texts, carried=(Carried("summary", numbers.page, summary),))


def _head(context: Context, text: Box) -> tuple[Block, Box]:
    """Set title, maker and summary; return them, and the box of the summary."""
    design, setter = context.design, context.type
    y = text.top - SPACE
    drawn: list[Drawn] = []
    pieces: list[tuple[str, TypeStyle]] = [(design.title, DISPLAY)]
    if design.variant_title:
        pieces.append((design.variant_title, HEADING))
    by = f"by {design.designer}" if design.designer else ""
    said_of_it = " · ".join(text for text in (by, f"version {design.version}", design.licence) if text)
    pieces.append((said_of_it, SMALL.quiet()))
    if context.trial:
        pieces.append((context.trial, BODY.bold()))
    for said, style in pieces:
        block = setter.paragraph(tidy(said), style, text.left, y, text.width)
        drawn += block.drawn
        y -= block.height + 0.5
    y -= SPACE
    width = min(text.width, 150.0)
    block = setter.paragraph(context.say(design.summary), BODY, text.left, y, width)
    summary = Box(text.left, y - block.height, text.left + width, y)
    drawn += block.drawn
    y = summary.bottom - SPACE / 2
    for line in handling_lines(context):
        block = setter.paragraph(line, SMALL, text.left, y, width)
        drawn += block.drawn
        y -= block.height
    return Block(tuple(drawn), text.top - y), summary


def _needs(context: Context, box: Box, top: float) -> Block:
    """Set what the buyer needs, under ``top``."""
    setter = context.type
    head, y = _section(context, "What you need", box, top)
    drawn: list[Drawn] = [*head]
    for title, lines in (
        ("Board", board_lines(context)),
        ("Tools", tool_lines(context)),
        ("Materials", material_lines(context)),
    ):
        if not lines:
            continue
        drawn += setter.line(title, SMALL.bold().tagged("h2"), box.left, y - setter.drop(SMALL))
        y -= SMALL.leading
        for line in lines:
            block = setter.paragraph(line, SMALL.tagged("li"), box.left + BULLET, y, box.width - BULLET)
            drawn += (_bullet(box.left + 1.0, y - SMALL.leading / 2), *block.drawn)
            y -= block.height
        y -= SPACE / 2
    return Block(tuple(drawn), top - y)


def _plan(context: Context, box: Box, top: float, numbers: Numbers) -> tuple[Block, tuple[Link, ...]]:
    """Set the print plan under ``top``, with links to its pages."""
    setter = context.type
    head, y = _section(context, "Print plan", box, top)
    rows = tuple((task, _range(first, last)) for task, first, last in numbers.print_plan())
    wide = setter.width("pages 00-00", SMALL.bold()) + 4.0
    table = make_table(setter, (Column("To do this", box.width - wide), Column("print pages", wide)), rows)
    edge = y - table.head_height
    links = []
    for (_, first, _), height in zip(numbers.print_plan(), table.heights, strict=True):
        links.append(Link(Box(box.left, edge - height, box.right, edge), first))
        edge -= height
    note = setter.paragraph(
        f"All pages are numbered 1 to {numbers.total}, as print dialogues count. Print at 100 %, single-sided.",
        SMALL.quiet(), box.left, edge - SPACE, box.width,
    )  # fmt: skip
    return Block((*head, *table.place(box.left, y), *note.drawn), top - edge + SPACE + note.height), tuple(links)


def _section(context: Context, title: str, box: Box, top: float) -> tuple[tuple[Drawn, ...], float]:
    """Set a heading; return it and the top of what follows."""
    setter = context.type
    drawn = setter.line(title, HEADING, box.left, top - setter.drop(HEADING))
    return drawn, top - HEADING.leading - SPACE / 2


def _bullet(x: float, y: float) -> Fill:
    square = ((x - 0.5, y - 0.5), (x + 0.5, y - 0.5), (x + 0.5, y + 0.5), (x - 0.5, y + 0.5))
    return Fill(0.0, (polyline(square, True),), Layer.PAGE, tag="artifact")


def _range(first: int, last: int) -> str:
    return str(first) if first == last else f"{first}-{last}"
