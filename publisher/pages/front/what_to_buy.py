"""What to buy and to have at hand: ways to buy the board, one or the other; card, materials and tools; and what work it is."""

from collections.abc import Iterator
from functools import partial

from publisher.basics import Box, Carried, TextPromise, TipPromise, WorkPromise
from publisher.basics.units import inches
from publisher.basics.wording import LengthUnit, paired
from publisher.pages.front.buy_words import shop_note, way_words, work_words
from publisher.pages.front.page_blocks import PageBlock, section_head
from publisher.pages.front.to_buy import at_hand, board_words, card_words, cover_words, materials_words
from publisher.pages.model import Drawn
from publisher.pages.sheet import Body, Context, Frame, Numbers
from publisher.pages.type import GUTTER, SMALL, SPACE, Block, Column, LaidTable, make_table

BUY = "What to buy"
BASE_WIDTH = 187.0  # mm; narrower papers get narrower columns, and rows of more lines
WORK_NOTE = "Sizes are those of the finished piece over all. A blade’s tip usually lasts {lasts}."
SHARES = ((0.33, 0.37, 0.3), (0.4, 0.34, 0.26), (0.46, 0.3, 0.24))
"""Of the width: how the columns of board, of what is used up, of what is at hand may share it; that which is least high is taken."""
BOARDS = {False: "bare board", True: "board with paper on it"}


def buy_block(context: Context, frame: Frame) -> PageBlock:
    """Return the block of what to buy: a row for each way, and lists of what else is needed."""
    table = _ways(context, frame.text.width)
    head = section_head(context, frame, BUY, shop_note(context.edition, context.needs.ways), 0.0)[1]
    lists = _lists(context, frame, 0.0, None)[0].height
    return PageBlock(head + table.height() + SPACE + lists + 1.5 * SPACE, partial(_draw_buy, context, frame, table))


def _draw_buy(context: Context, frame: Frame, table: LaidTable, top: float, numbers: Numbers) -> Body:
    note = shop_note(context.edition, context.needs.ways)
    head, height = section_head(context, frame, BUY, note, top)
    y = top - height
    keys = [way.key for way in context.needs.ways]
    carried = tuple(_rows(table, keys, frame.text.left, y, numbers.page))
    lists, said = _lists(context, frame, y - table.height() - SPACE, numbers)
    texts = tuple(TextPromise(numbers.page, line) for line in (*said, *filter(None, (note,))))
    return Body((*head, *table.place(frame.text.left, y), *lists.drawn), carried=carried, texts=texts)


def _rows(table: LaidTable, keys: list[str], left: float, top: float, page: int) -> Iterator[Carried]:
    """Yield where each row of a table stands that shows what was promised under the key."""
    for key, box in zip(keys, table.row_boxes(left, top), strict=True):
        yield Carried(key, page, box)


def _ways(context: Context, width: float) -> LaidTable:
    share = min(1.0, width / BASE_WIDTH)
    several = len({way.board for way in context.needs.ways}) > 1
    board = (Column("Board", 22.0 * share),) if several else ()
    cols = (
        *board,
        Column("Buy", 22.0 * share, bold=True),
        Column("Sheet", 49.0 * share),
    )
    left = Column("Largest piece left", 46.0 * share)
    spares = Column("Spares that go on as well", width - sum(c.width for c in cols) - left.width)
    rows = []
    before = ""
    for way in context.needs.ways:
        words = way_words(way, way.board == before, context.paper.first)
        rows.append((*((way.board.replace("_", " "),) if several else ()), *words))
        before = way.board
    return make_table(context.type, (*cols, spares, left), tuple(rows))


def _lists(context: Context, frame: Frame, top: float, numbers: Numbers | None) -> tuple[Block, tuple[str, ...]]:
    """Set three columns: the board, what is used up, what is at hand; return what was worked out of it too."""
    return min((_columns(context, frame, top, numbers, shares) for shares in SHARES), key=lambda set_: set_[0].height)


def _columns(
    context: Context, frame: Frame, top: float, numbers: Numbers | None, shares: tuple[float, ...]
) -> tuple[Block, tuple[str, ...]]:
    """Set the three columns with these shares of the width."""
    setter = context.type
    card = (*card_words(context, numbers), *cover_words(context))
    board = board_words(context)
    lists = (
        ("Board", board),
        ("Card, glue and paint", (*card, _sentence(materials_words(context)))),
        ("Have at hand", (_sentence(at_hand(context)),)),
    )
    drawn: list[Drawn] = []
    height = 0.0
    left = frame.text.left
    for (title, lines), wide in zip(lists, shares, strict=True):
        cell = Box(left, frame.text.bottom, left + wide * (frame.text.width - 2 * GUTTER), frame.text.top)
        left = cell.right + GUTTER
        y = top
        drawn += setter.line(title, SMALL.bold().tagged("h2"), cell.left, y - setter.drop(SMALL))
        y -= SMALL.leading
        for line in lines:
            block = setter.paragraph(line, SMALL.tagged("li"), cell.left, y, cell.width)
            drawn += block.drawn
            y -= block.height
        height = max(height, top - y)
    return Block(tuple(drawn), height), (*board, *card)


def _sentence(things: tuple[str, ...]) -> str:
    said = "; ".join(things)
    return f"{said[:1].upper()}{said[1:]}." if said else ""


def work_block(context: Context, frame: Frame) -> PageBlock | None:
    """Return the block of what there is to cut; None when that is not known."""
    if context.needs.work is None:
        return None
    share = frame.text.width / BASE_WIDTH
    cells = work_words(context.needs.work, context.paper.first)
    widths = (
        ("To cut", 34.0),
        ("To score or fold", 34.0),
        ("Holes, closed slots", 34.0),
        ("Texture to press or draw", 52.0),
    )
    cols = (*(Column(title, wide * share) for title, wide in widths), Column("Fresh blade tips", 33.0 * share))
    table = make_table(context.type, cols, (cells,))
    note = _work_note(context.needs.work, context.paper.first)
    height = context.type.height(note, SMALL, frame.text.width)
    return PageBlock(height + table.height() + 2 * SPACE, partial(_draw_work, context, frame, table))


def _work_note(work: WorkPromise, first: LengthUnit) -> str:
    """Say how far a blade goes in the boards of this design."""
    return WORK_NOTE.format(lasts=" and ".join(_lasts(tip, first) for tip in work.tips))


def _draw_work(context: Context, frame: Frame, table: LaidTable, top: float, numbers: Numbers) -> Body:
    assert context.needs.work is not None
    said = _work_note(context.needs.work, context.paper.first)
    note = context.type.paragraph(said, SMALL, frame.text.left, top, frame.text.width)
    y = top - note.height - SPACE / 2
    carried = tuple(_rows(table, [context.needs.work.key], frame.text.left, y, numbers.page))
    return Body((*note.drawn, *table.place(frame.text.left, y)), carried=carried)


def _lasts(tip: TipPromise, first: LengthUnit) -> str:
    """Say how far the tip of a blade cuts in such board."""
    feet = "{:.0f} to {:.0f} ft".format(*(inches(mm) / 12 for mm in (tip.least, tip.most)))
    return f"{paired(f'{tip.least / 1000:g} to {tip.most / 1000:g} m', feet, first)} of {BOARDS[tip.papered]}"
