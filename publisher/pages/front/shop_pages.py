"""The pictures that a shop shows, as pages: the piece with its sizes, upright, 4 to 3 and square; every page of the pack at a glance."""

from collections.abc import Callable
from functools import partial

from publisher.basics import Box, Layer, TextPromise, polyline
from publisher.pages.front.finished import finished
from publisher.pages.front.shop_photos import beside_photo, photo_name, photo_shapes, shown_photo
from publisher.pages.model import Drawn, Picture, ShownPage, Stroke
from publisher.pages.sheet import SHOP_LONG, SHOP_SHORT, Body, Context, Frame, Numbers, PageDraft, shop_frame
from publisher.pages.type import BODY, DISPLAY, HEADING, RULE, SMALL, SPACE, Block, TypeStyle, tidy

SHOP_PICTURES = (
    ("cover", SHOP_SHORT, SHOP_LONG),
    ("contents", SHOP_LONG, SHOP_SHORT),
    ("wide", SHOP_LONG, SHOP_SHORT),
    ("square", SHOP_LONG, SHOP_LONG),
)
"""Name, width and height (mm) of each that every pack has; those of photographs come after them."""

SHOP_KIND = "shop"
CONTENTS = "Every page of the pack for {paper}"
LONGEST_TITLE = 2  # lines of a title in large type; a longer one is set smaller
THUMB_GAP = 4.0  # mm between the small pictures of pages
LARGEST_THUMB = 0.5  # of a page: more dots than the picture of a page has would be asked of it
HALVINGS = 20  # of the scale, until it is known well


def shop_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return a page for each picture."""
    found: list[PageDraft] = []
    drawn: dict[str, Callable[[Context, Frame, Numbers], Body]] = {"contents": _contents}
    for number, (name, _, _) in enumerate(photo_shapes(context), 1):
        drawn[name] = partial(_photo, number)
    for name, width, height in (*SHOP_PICTURES, *photo_shapes(context)):
        frame = shop_frame(context.paper, width, height)
        body = partial(drawn.get(name, _piece), context, frame)
        found.append(PageDraft(SHOP_KIND, f"{SHOP_KIND}:{name}", name.title(), frame, body, ""))
    return tuple(found)


def shop_picture_names(count: int) -> tuple[str, ...]:
    """Return the names of as many pictures as a file has pages, in their order."""
    names = tuple(name for name, _, _ in SHOP_PICTURES)
    return (*names, *(photo_name(number) for number in range(1, count - len(names) + 1)))


def _piece(context: Context, frame: Frame, numbers: Numbers) -> Body:
    """Draw title, the piece with its sizes, and what it is drawn for; with photographs the first one, and the piece beside it."""
    body, room = _framed(context, frame, numbers)
    if not context.design.photos:
        return body + finished(context, room, numbers.page)
    photo, rest = beside_photo(context, room)
    return body + shown_photo(context, 1, photo, numbers.page) + finished(context, rest, numbers.page)


def _photo(number: int, context: Context, frame: Frame, numbers: Numbers) -> Body:
    """Show one photograph under the title, and what the pack is drawn for."""
    body, room = _framed(context, frame, numbers)
    return body + shown_photo(context, number, room, numbers.page)


def _framed(context: Context, frame: Frame, numbers: Numbers) -> tuple[Body, Box]:
    """Draw title, and what the pack is drawn for; return the room between them too."""
    text = frame.text
    head = _head(context, text)
    foot, said = _foot(context, text)
    body = Body((*head.drawn, *foot.drawn), texts=tuple(TextPromise(numbers.page, words) for words in said))
    low = text.bottom + foot.height
    return body, Box(text.left, low + 2 * SPACE, text.right, text.top - head.height - 2 * SPACE)


def _head(context: Context, text: Box) -> Block:
    """Set title, variant and maker, the title as large as it goes on few lines."""
    design, setter = context.design, context.type
    title = tidy(design.title)
    large = DISPLAY if len(setter.lines(title, DISPLAY, text.width)) <= LONGEST_TITLE else HEADING
    lines: list[tuple[str, TypeStyle]] = [(title, large.tagged("h1"))]
    if design.variant_title:
        lines.append((tidy(design.variant_title), HEADING))
    if design.designer:
        lines.append((tidy(f"by {design.designer}"), BODY))
    drawn: list[Drawn] = []
    y = text.top
    for said, style in lines:
        block = setter.paragraph(said, style, text.left, y, text.width)
        drawn += block.drawn
        y -= block.height + SPACE / 2
    return Block(tuple(drawn), text.top - y)


def _foot(context: Context, text: Box) -> tuple[Block, tuple[str, ...]]:
    """Set at the bottom what the pack is drawn for, and its licence; return the first as promised."""
    setter, boards = context.type, tidy(context.boards)
    licence = f"licence: {context.design.licence}" if context.design.licence else ""
    said = " · ".join(filter(None, (f"drawn for {boards}" if boards else "", context.paper.title, licence)))
    high = setter.height(said, SMALL, text.width)
    block = setter.paragraph(said, SMALL, text.left, text.bottom + high, text.width)
    return Block(block.drawn, high), (boards,) if boards else ()


def _contents(context: Context, frame: Frame, _: Numbers) -> Body:
    """Show each page of the pack small, in rows, in the order of the pack."""
    text, setter = frame.text, context.type
    said = CONTENTS.format(paper=context.paper.title)
    title = tidy(
        f"{context.design.title}, {context.design.variant_title}"
        if context.design.variant_title
        else context.design.title
    )
    first = setter.paragraph(title, HEADING.tagged("h1"), text.left, text.top, text.width)
    second = setter.paragraph(said, BODY, text.left, text.top - first.height, text.width)
    room = Box(text.left, text.bottom, text.right, text.top - first.height - second.height - SPACE)
    drawn: list[Drawn] = [*first.drawn, *second.drawn]
    frames = []
    for number, (name, box) in enumerate(_places(context, room), 1):
        drawn.append(Picture(name, box, f"Page {number} of the pack", Layer.PAGE))
        frames.append(polyline(box.corners(), closed=True))
    if frames:
        drawn.append(Stroke(RULE, tuple(frames), Layer.PAGE, tag="artifact"))
    return Body(tuple(drawn))


def _places(context: Context, room: Box) -> list[tuple[str, Box]]:
    """Return for each page its small picture's name and place: all at one scale, in rows, as large as go into the room."""
    low, high = 0.0, LARGEST_THUMB
    for _ in range(HALVINGS):
        middle = (low + high) / 2.0
        fits = _rows(context.shown, room, middle) is not None
        low, high = (middle, high) if fits else (low, middle)
    return [(page.image.name, box) for page, box in _rows(context.shown, room, low) or ()]


def _rows(pages: tuple[ShownPage, ...], room: Box, scale: float) -> list[tuple[ShownPage, Box]] | None:
    """Return where pages lie at this scale, in rows from the upper left; None where they need more room."""
    found: list[tuple[ShownPage, Box]] = []
    x, top, tall = room.left, room.top, 0.0
    for page in pages:
        wide, high = page.width * scale, page.height * scale
        if x > room.left and x + wide > room.right:
            x, top, tall = room.left, top - tall - THUMB_GAP, 0.0
        if x + wide > room.right or top - high < room.bottom:
            return None
        found.append((page, Box(x, top - high, x + wide, top)))
        x, tall = x + wide + THUMB_GAP, max(tall, high)
    return found
