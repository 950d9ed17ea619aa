"""What to cut and what to buy: the cut list, what a sheet of board yields, and a picture of every laid-out sheet."""

from collections.abc import Callable
from functools import partial

from publisher.basics import Box, record
from publisher.basics.wording import size_in_both
from publisher.material import different_sheets
from publisher.pages.front.layout_picture import SheetPicture, layout_picture, sheet_picture
from publisher.pages.front.yield_tables import cut_note, part_table, sheet_table
from publisher.pages.model import Drawn, Link
from publisher.pages.sheet import Body, Context, Frame, Numbers, PageDraft, columns, make_frame, share_out
from publisher.pages.type import GUTTER, HEADING, SMALL, SPACE, Column, LaidTable, make_table

TASK = "See what to buy and cut"
TALLEST_LAYOUT = 118.0  # mm: the tallest picture of a sheet
LAYOUTS = (
    "Layouts to copy",
    "Draw the dashed lines first: the number at the end of each is its distance in mm from the sheet’s edge, and the "
    "pieces that touch it stand on it. Measure all from the same corner. A dotted box is the largest offcut worth keeping.",
)
CHUNK = 0.4  # of a page's height: a longer table is broken, so that its rows may run on over the pages


@record
class PageBlock:
    """Something on the page: its height with the space below it, and how it is drawn under a top."""

    height: float
    draw: Callable[[float, Numbers], Body]


def cut_list_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return the pages of tables and, after them, of layout pictures."""
    frame = make_frame(context.paper, False, 0.0)
    pieces = (*_tables(context, frame), *_pictures(context, frame))
    height = frame.text.height
    shared = share_out([piece.height for piece in pieces], height, height)
    drafts = []
    for index, (start, end) in enumerate(shared, 1):
        title = "Cut list and boards" if index == 1 else "Boards: layouts to copy"
        body = partial(_body, frame, pieces[start:end])
        drafts.append(PageDraft("cut_list", f"cut_list:{index}", title, frame, body, TASK))
    return tuple(drafts)


def _body(frame: Frame, pieces: tuple[PageBlock, ...], numbers: Numbers) -> Body:
    y = frame.text.top
    body = Body()
    for piece in pieces:
        body += piece.draw(y, numbers)
        y -= piece.height
    return body


def _tables(context: Context, frame: Frame) -> list[PageBlock]:
    """Return the cut list and the yield as pieces: each table with its heading, broken where it is long."""
    width = frame.text.width
    pieces: list[PageBlock] = []
    makers: tuple[tuple[str, str, Callable[[Numbers | None], LaidTable]], ...] = (
        ("Cut list", cut_note(context), partial(_cut_table, context, width)),
        (
            "What one sheet holds",
            "Counted from real layouts, each checked for gaps and edges; “on a grid” sets every part in rows of upright boxes. "
            "“Free spares” go beside the whole list on the sheets below, one kind of part at a time. Where only the area bounds a count, a "
            "better layout may be found.",
            partial(part_table, context, width),
        ),
        (
            "Sheets for the whole list, spares included",
            "“By area” is the bound that no layout can beat; “shared cuts” are straight ones that serve several pieces.",
            partial(sheet_table, context, width),
        ),
    )
    for title, note, make in makers:
        table = make(None)
        first = 0
        while first < len(table.rows):
            last = min(len(table.rows), first + table.rows_in(frame.text.height * CHUNK, first))
            said = title if not first else f"{title}, continued"
            head = _head(context, frame, said, "" if first else note, 0.0)[1]
            height = head + table.height(first, last) + 2 * SPACE
            draw = partial(_draw_table, context, frame, (said, "" if first else note), make, (first, last))
            pieces.append(PageBlock(height, draw))
            first = last
    return pieces


def _head(context: Context, frame: Frame, title: str, note: str, top: float) -> tuple[tuple[Drawn, ...], float]:
    setter, text = context.type, frame.text
    drawn: list[Drawn] = [*setter.line(title, HEADING, text.left, top - setter.drop(HEADING))]
    height = HEADING.leading
    if note:
        block = setter.paragraph(note, SMALL.quiet(), text.left, top - height, text.width)
        drawn += block.drawn
        height += block.height
    return tuple(drawn), height + SPACE / 2


def _draw_table(
    context: Context,
    frame: Frame,
    words: tuple[str, str],
    make: Callable[[Numbers | None], LaidTable],
    rows: tuple[int, int],
    top: float,
    numbers: Numbers,
) -> Body:
    head, height = _head(context, frame, *words, top)
    table = make(numbers)
    links: tuple[Link, ...] = ()
    if words[0].startswith("Cut list"):
        links = _links(context, table, rows, frame.text.left, top - height, numbers)
    return Body((*head, *links, *table.place(frame.text.left, top - height, *rows)))


def _cut_table(context: Context, width: float, numbers: Numbers | None) -> LaidTable:
    share = min(1.0, width / 187.0)  # narrower papers get narrower columns, and rows of more lines
    fixed_columns = (Column("", 9.0, bold=True), Column("Board", 20.0 * share), Column("Cut", 34.0 * share))
    metric_first = context.paper.first == "mm"
    units = (Column("Width × height", 44.0 * share), Column("in inches" if metric_first else "in mm", 36.0 * share))
    sizes = (*units, Column("Page", 14.0))
    name = Column("Part", width - sum(c.width for c in (*fixed_columns, *sizes)))
    rows = []
    for row in context.needs.cut_list:
        count = str(row.count) + (f" + {row.spare} spare" if row.spare else "")
        if row.mirrored:
            count += f", {row.mirrored} mirrored"
        pages = numbers.pages_of_part(row.part) if numbers is not None else (1,)
        both = size_in_both(row.width, row.height)
        rows.append(
            (
                row.letter,
                row.name,
                row.board,
                count,
                *(both if metric_first else reversed(both)),
                f"{pages[0]}-{pages[-1]}" if len(pages) > 1 else "".join(str(p) for p in pages),
            )
        )
    return make_table(context.type, (fixed_columns[0], name, *fixed_columns[1:], *sizes), tuple(rows))


def _links(
    context: Context, table: LaidTable, rows: tuple[int, int], left: float, top: float, numbers: Numbers
) -> tuple[Link, ...]:
    edge = top - table.head_height
    links = []
    listed = tuple(zip(context.needs.cut_list, table.heights, strict=True))[rows[0] : rows[1]]
    for row, height in listed:
        pages = numbers.pages_of_part(row.part)
        if pages:
            links.append(Link(Box(left, edge - height, left + table.width, edge), pages[0]))
        edge -= height
    return tuple(links)


def _pictures(context: Context, frame: Frame) -> list[PageBlock]:
    """Return the pictures of all different sheets, two beside each other."""
    cell = columns(frame.text, 2, GUTTER)[0]
    tallest = min(TALLEST_LAYOUT, frame.text.height)
    sheets = [
        sheet_picture(context, need, alike, cell.width, tallest)
        for need in context.needs.yields
        for alike in different_sheets(need)
    ]
    pieces: list[PageBlock] = []
    note = _head(context, frame, *LAYOUTS, 0.0)[1] + SPACE
    for row in (tuple(sheets[i : i + 2]) for i in range(0, len(sheets), 2)):
        height = max(sheet.height for sheet in row)
        # the note stays with the first pictures
        above = 0.0 if pieces else note
        pieces.append(
            PageBlock(above + height + 2 * SPACE, partial(_draw_pictures, context, frame, row, (above, height)))
        )
    return pieces


def _draw_pictures(
    context: Context,
    frame: Frame,
    row: tuple[SheetPicture, ...],
    heights: tuple[float, float],
    top: float,
    numbers: Numbers,
) -> Body:
    above, height = heights
    body = Body(_head(context, frame, *LAYOUTS, top)[0]) if above else Body()
    top -= above
    for sheet, cell in zip(row, columns(frame.text, 2, GUTTER), strict=False):
        drawn, where = layout_picture(context, sheet, Box(cell.left, top - height, cell.right, top), numbers.page)
        body += Body(drawn, carried=(where,))
    return body
