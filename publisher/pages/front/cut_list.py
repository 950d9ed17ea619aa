"""What to buy and to cut: sheets and all else that is needed, the cut list, the work, and a picture of every laid-out sheet."""

from functools import partial

from publisher.basics.wording import size_in_both
from publisher.pages.front.layouts import PictureForm, forms_for, layout_blocks, least_heights
from publisher.pages.front.measured_parts import measured_blocks
from publisher.pages.front.page_blocks import PageBlock, section_head
from publisher.pages.front.pages_to_print import ranges
from publisher.pages.front.what_to_buy import buy_block, work_block
from publisher.pages.model import Link
from publisher.pages.sheet import Body, Context, Frame, Numbers, PageDraft, make_frame, share_out
from publisher.pages.type import SPACE, Column, LaidTable, make_table

TASK = "See what to buy and cut"
PAGES_LETTERS = 9  # that the narrow column of pages holds in a line
CHUNK = 0.4  # of a page's height: a longer table is broken, so that its rows may run on over the pages


def cut_list_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return the pages of tables and, after them, of layout pictures."""
    frame = make_frame(context.read_on, False, 0.0)
    pieces, shared = _set_out(context, frame)
    drafts = []
    for index, (start, end) in enumerate(shared, 1):
        title = "Buy and cut" if index == 1 else "Buy and cut, continued"
        body = partial(_body, frame, pieces[start:end])
        parts = tuple(part for piece in pieces[start:end] for part in piece.parts)
        drafts.append(PageDraft("cut_list", f"cut_list:{index}", title, frame, body, TASK, parts=parts))
    return tuple(drafts)


def _set_out(context: Context, frame: Frame) -> tuple[tuple[PageBlock, ...], tuple[tuple[int, int], ...]]:
    """Return all blocks and how pages share them: pictures are as large as can be where that takes no page more."""
    tables, height = _tables(context, frame), frame.text.height

    def tried(form: PictureForm) -> tuple[tuple[PageBlock, ...], tuple[tuple[int, int], ...]]:
        pieces = (*tables, *layout_blocks(context, frame, form))
        return pieces, share_out([piece.height for piece in pieces], height, height)

    def may_do(form: PictureForm) -> bool:
        """Tell whether pictures of a form would take no page more if they had no lists: most that would, need not be set."""
        heights = [*(table.height for table in tables), *least_heights(context, frame, form)]
        return len(share_out(heights, height, height)) <= len(last[1])

    *larger, smallest = forms_for(frame)
    last = tried(smallest)
    found = (tried(form) for form in larger if may_do(form))
    return next((one for one in found if len(one[1]) <= len(last[1])), last)


def _body(frame: Frame, pieces: tuple[PageBlock, ...], numbers: Numbers) -> Body:
    y = frame.text.top
    body = Body()
    for piece in pieces:
        body += piece.draw(y, numbers)
        y -= piece.height
    return body


def _tables(context: Context, frame: Frame) -> list[PageBlock]:
    """Return what to buy, the cut list, broken where it is long, the parts that are measured out, and the work."""
    table = _cut_table(context, frame.text.width, None)
    pieces = [buy_block(context, frame)]
    first = 0
    while first < len(table.rows):
        last = min(len(table.rows), first + table.rows_in(frame.text.height * CHUNK, first))
        title = "Cut list, continued" if first else "Cut list"
        head = section_head(context, frame, title, "", 0.0)[1]
        height = head + table.height(first, last) + 1.5 * SPACE
        pieces.append(PageBlock(height, partial(_draw_table, context, frame, title, (first, last))))
        first = last
    pieces += measured_blocks(context, frame)
    return [*pieces, *(block for block in (work_block(context, frame),) if block is not None)]


def _draw_table(
    context: Context,
    frame: Frame,
    title: str,
    rows: tuple[int, int],
    top: float,
    numbers: Numbers,
) -> Body:
    head, height = section_head(context, frame, title, "", top)
    table = _cut_table(context, frame.text.width, numbers)
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
                row.board.replace("_", " "),
                count,
                *(both if metric_first else reversed(both)),
                said if len(said := ranges(pages)) <= PAGES_LETTERS else f"{pages[0]} … {pages[-1]}",
            )
        )
    return make_table(context.type, (fixed_columns[0], name, *fixed_columns[1:], *sizes), tuple(rows))


def _links(
    context: Context, table: LaidTable, rows: tuple[int, int], left: float, top: float, numbers: Numbers
) -> tuple[Link, ...]:
    first, last = rows
    listed = zip(context.needs.cut_list[first:last], table.row_boxes(left, top, first, last), strict=True)
    return tuple(Link(box, pages[0]) for row, box in listed if (pages := numbers.pages_of_part(row.part)))
