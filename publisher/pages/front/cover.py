"""The cover: what this is, what the finished piece looks like, what it takes, what to do first, which pages to print.

On a paper too small for all of it the second half stands on a page of its own after the print check, which begins on page 2.
"""

from dataclasses import replace

from publisher.basics import Box, Carried, TextPromise
from publisher.basics.wording import agreed, numbered
from publisher.design import own_licence
from publisher.joints import LEAST_PICTURE, handling_sentences
from publisher.pages.front.check_pieces import outer_square_words
from publisher.pages.front.coupon import fit_of
from publisher.pages.front.finished import finished
from publisher.pages.front.pages_to_print import key_plan, print_list, sheets_of
from publisher.pages.front.print_check import has_two_squares
from publisher.pages.front.shop_photos import coarse_for_a_shop
from publisher.pages.front.to_buy import sheet_words, taken_words
from publisher.pages.model import Drawn, Link
from publisher.pages.sheet import Body, Context, Frame, Numbers, PageDraft, columns, make_frame
from publisher.pages.templates import planner_of
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
MORE_TASK = "See what it takes"
LABEL = 20.0  # mm: the column of names in the table of what it takes
NUMBER = 5.0  # from the number of a sentence to its words
USUAL_TASKS = 7  # rows of a print plan without tiles
COPY_SHOP = "For a copy shop: this file may be printed for the holder of this order, at 100 %, single-sided."

FIRST = (
    "Print {pages} alone, at 100 %, on one side of the paper.",
    "Measure {square}, or lay a bank card in it. The print check says what the reading means.",
    "Go on only when the square is true. Then {rest}read page {before}.",
    "{make} the fit coupon, and stop until it fits. Then cut the pieces.",
)
BETWEEN = 5 * SPACE  # over and under the picture
KEPT_FOR_PICTURE = 0.25  # of the height of the page, that the small pictures of pages leave to the picture of the piece


def cover_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return the cover page."""
    frame = make_frame(context.read_on, False, 0.0)
    return (PageDraft("cover", "cover", "Start here", frame, lambda numbers: _body(context, frame, numbers), TASK),)


def about_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return the page of what the cover has no room for; () where it has."""
    frame = make_frame(context.read_on, False, 0.0)
    if _holds_all(context, frame):
        return ()
    title = "What it takes, and what to print"
    return (PageDraft("about", "about", title, frame, lambda numbers: _about(context, frame, numbers), MORE_TASK),)


def _holds_all(context: Context, frame: Frame) -> bool:
    """Say whether the cover has room for all words beside the picture of the piece."""
    tiled = sum(1 for part in context.templates if not planner_of(context).fits(part))
    tasks = tuple((f"Tiles of part {'M' * 4}", 99, 99) for _ in range(USUAL_TASKS + tiled))
    most = Numbers(1, 99, (), (("print_check", 2, 9),), (), tasks, tuple(range(2, 2 * tiled + 10, 2)))
    low = _lower(context, frame.text, frame.text.top, most)[1]
    return _head(context, frame.text)[0].height + LEAST_PICTURE + BETWEEN + low <= frame.text.height


def _body(context: Context, frame: Frame, numbers: Numbers) -> Body:
    text = frame.text
    head, where = _head(context, text)
    said = (*filter(None, (context.boards, context.trial)), *(one.text for one in handling_sentences(context.joined)))
    body = Body(head.drawn, texts=tuple(TextPromise(numbers.page, line) for line in said))
    body += Body(carried=tuple(Carried(key, numbers.page, box) for key, box in where.items()))
    if _holds_all(context, frame):
        height = _lower(context, text, text.top, numbers)[1]
        room = text.height - head.height - height - BETWEEN - max(LEAST_PICTURE, KEPT_FOR_PICTURE * text.height)
        key = _key_height(context, text, room, numbers)
        low = text.bottom + key + height
        body += _key(context, text, text.bottom + key, key, numbers) + _lower(context, text, low, numbers)[0]
    else:
        low = text.bottom + _first_minutes(context, text, 0.0, numbers).height
        body += Body(_first_minutes(context, text, low, numbers).drawn)
    picture = Box(text.left, low + 3 * SPACE, text.right, text.top - head.height - 2 * SPACE)
    return body + finished(context, picture, numbers.page) + Body(findings=coarse_for_a_shop(context))


def _about(context: Context, frame: Frame, numbers: Numbers) -> Body:
    text = frame.text
    body, height = _lower(context, text, text.top, numbers, alone=True)
    return body + _key(context, text, text.top - height, text.height - height, numbers)


def _key_height(context: Context, text: Box, room: float, numbers: Numbers) -> float:
    """Return how much of the room (mm) the small pictures of pages take."""
    return key_plan(context, numbers.previews(), Box(text.left, 0.0, text.right, max(room, 0.0))).height


def _key(context: Context, text: Box, top: float, room: float, numbers: Numbers) -> Body:
    plan = key_plan(context, numbers.previews(), Box(text.left, top - max(room, 0.0), text.right, top + 1e-6))
    return Body(plan.drawn, carried=plan.carried(numbers.page))


def _head(context: Context, text: Box) -> tuple[Block, dict[str, Box]]:
    """Set title, maker, summary and what the piece bears; return them, and by their keys where promised words stand."""
    design, setter = context.design, context.type
    y = text.top - SPACE
    drawn: list[Drawn] = []
    pieces: list[tuple[str, TypeStyle]] = [(design.title, DISPLAY)]
    if design.variant_title:
        pieces.append((design.variant_title, HEADING))
    by = f"by {design.designer}" if design.designer else ""
    said_of_it = " · ".join(text for text in (by, f"version {design.version}", design.licence, context.boards) if text)
    pieces.append((said_of_it, SMALL.quiet()))
    if context.trial:
        pieces.append((context.trial, BODY.bold()))
    for said, style in pieces:
        block = setter.paragraph(tidy(said), style, text.left, y, text.width)
        drawn += block.drawn
        y -= block.height + 0.5
    y -= SPACE
    block = setter.paragraph(context.say(design.summary), BODY, text.left, y, text.width)
    where = {"summary": Box(text.left, y - block.height, text.right, y)}
    drawn += block.drawn
    y -= block.height + SPACE / 2
    for line in handling_sentences(context.joined):
        block = setter.paragraph(line.text, SMALL, text.left, y, text.width)
        where[line.key] = Box(text.left, y - block.height, text.right, y)
        drawn += block.drawn
        y -= block.height
    return Block(tuple(drawn), text.top - y), where


def _lower(context: Context, text: Box, top: float, numbers: Numbers, alone: bool = False) -> tuple[Body, float]:
    """Draw what the piece takes over what to do first at the left, the print plan over the print list at the right; return their
    height (mm) too. ``alone``: on a page of its own; what to do first stands on the cover."""
    left, right = columns(text, 2, GUTTER * 1.5)
    takes, high = _takes(context, left, top, numbers)
    first = Block((), 0.0) if alone else _first_minutes(context, left, top - high - SPACE, numbers)
    plan, links = _plan(context, right, top, numbers)
    y = top - plan.height - SPACE
    pages = print_list(context, numbers.true_pages(), numbers.range_of("print_check"), (right.left, y, right.width))
    low = top - high - first.height - 2 * SPACE
    shop = Block((), 0.0)
    if granted := _granted(context):
        shop = context.type.paragraph(COPY_SHOP, SMALL, left.left, low, left.width)
    body = takes + Body((*first.drawn, *shop.drawn, *plan.drawn, *links, *pages.drawn))
    listed = Carried("print_list", numbers.page, Box(right.left, y - pages.height, right.right, y))
    body += Body(texts=(TextPromise(numbers.page, COPY_SHOP),) if granted else (), carried=(listed,))
    return body, max(top - low + shop.height, top - y + pages.height) + SPACE


def _granted(context: Context) -> bool:
    """Say whether the licence lets a shop print the pack: each of our own texts does; of another one we say nothing."""
    return own_licence(context.design.licence, context.design.designer) is not None


def _takes(context: Context, box: Box, top: float, numbers: Numbers) -> tuple[Body, float]:
    """Set the table of what the piece takes: counted work, hours, paper, card, board."""
    head, y = _section(context, "What it takes", box, top)
    promised = {sentence.key: sentence for sentence in context.joined.sentences}
    rows: list[tuple[str, str]] = []
    keys = {"cover:difficulty": "Difficulty", "cover:hours": "Work"}
    rows += ((name, promised[key].text) for key, name in keys.items() if key in promised)
    rows.append(("Paper", _paper(context, numbers)))
    boards = [(board, (*sheet_words(context, board), *taken_words(context, board))) for board in context.design.boards]
    rows += (
        (f"Board {board.id.replace('_', ' ')}" if len(boards) > 1 else "Board", "; ".join(words))
        for board, words in boards
    )
    table = make_table(
        context.type, (Column("", LABEL, bold=True), Column("", box.width - LABEL)), tuple(rows), headed=False
    )
    texts = tuple(TextPromise(numbers.page, line) for _, words in boards for line in words)
    body = Body((*head, *table.place(box.left, y)), texts=texts)
    for key, row in zip((key for key in keys if key in promised), table.row_boxes(box.left, y), strict=False):
        body += Body(carried=(Carried(key, numbers.page, replace(row, left=box.left + LABEL)),))
    return body, top - y + table.height()


def _paper(context: Context, numbers: Numbers) -> str:
    """Say how many sheets are printed, and how many of them are glued to card."""
    sheets = sheets_of(len(numbers.true_pages()), context.paper.title)
    glued = sum(1 for page in numbers.previews() if page.letters)
    if context.design.use != "trace" or not glued:
        return sheets
    if fit_of(context):
        return f"{sheets}; {glued} of them, and the fit coupon, are glued to thin card"
    return f"{sheets}; {glued} of them {agreed(glued, 'is', 'are')} glued to thin card"


def _first_minutes(context: Context, box: Box, top: float, numbers: Numbers) -> Block:
    """Say what to do before anything else, and where to stop."""
    setter = context.type
    first, last = numbers.range_of("print_check") or (2, 2)
    pages = f"{numbered(last - first + 1, 'page')} {_range(first, last)}"
    before = numbers.page_of("cautions:1") or numbers.total  # as wide as any, until pages are numbered
    make = "Make the templates, then" if context.design.use == "trace" and context.templates else "Make"
    true = numbers.true_pages()  # none until pages are numbered
    rest = "" if true and first <= min(true) and max(true) <= last else "print the rest of the print list, and "
    head, y = _section(context, "Do this first", box, top)
    square = "its square"
    if has_two_squares(context):
        square = "its outer or its inner square" if outer_square_words(context) else "its inner square"
    drawn: list[Drawn] = [*head]
    for number, said in enumerate(FIRST, 1):
        drawn += setter.line(str(number), SMALL.bold().tagged("lbl"), box.left, y - setter.drop(SMALL))
        block = setter.paragraph(
            said.format(pages=pages, before=before, make=make, square=square, rest=rest),
            SMALL.tagged("li"),
            box.left + NUMBER,
            y,
            box.width - NUMBER,
        )
        drawn += block.drawn
        y -= block.height + 0.5
    return Block(tuple(drawn), top - y)


def _plan(context: Context, box: Box, top: float, numbers: Numbers) -> tuple[Block, tuple[Link, ...]]:
    """Set the print plan under ``top``, with links to its pages."""
    setter = context.type
    head, y = _section(context, "Print plan", box, top)
    rows = tuple((task, _range(first, last)) for task, first, last in numbers.print_plan())
    wide = setter.width("000-000", SMALL.bold()) + 4.0
    table = make_table(setter, (Column("To do this", box.width - wide), Column("see page", wide)), rows)
    tasks = zip(numbers.print_plan(), table.row_boxes(box.left, y), strict=True)
    links = tuple(Link(row, first) for (_, first, _), row in tasks)
    return Block((*head, *table.place(box.left, y)), top - y + table.height() + SPACE), links


def _section(context: Context, title: str, box: Box, top: float) -> tuple[tuple[Drawn, ...], float]:
    """Set a heading; return it and the top of what follows."""
    setter = context.type
    drawn = setter.line(title, HEADING, box.left, top - setter.drop(HEADING))
    return drawn, top - HEADING.leading - SPACE / 2


def _range(first: int, last: int) -> str:
    return str(first) if first == last else f"{first}-{last}"
