"""What to cut and what to buy: the cut list, what a sheet of board yields, and a picture of every laid-out sheet."""

from functools import partial

from publisher.basics import Box
from publisher.design import fixed, inches
from publisher.material import Layout, Yield
from publisher.pages.draft import Body, Context, Numbers, PageDraft
from publisher.pages.frame import Frame, columns, make_frame
from publisher.pages.layout_picture import layout_picture, picture_height
from publisher.pages.model import Drawn, Link
from publisher.pages.styles import GUTTER, HEADING, SMALL, SPACE
from publisher.pages.tables import Column, Table, make_table

TASK = "See what to buy and cut"
TALLEST = 118.0  # mm: the tallest picture of a sheet


def cut_list_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return the page of tables and, where the pictures do not fit under them, pages of pictures."""
    frame = make_frame(context.paper, False, 0.0)
    first_room = frame.text.height - _tables(context, frame, None)[1]
    pages: list[list[Picture]] = [[]]
    rows = _picture_rows(context, frame)
    left = first_room
    for row, height in rows:
        if height > left and (pages[-1] or len(pages) == 1):
            pages.append([])
            left = frame.text.height
        pages[-1] += [(row, height)]
        left -= height
    drafts = []
    for index, page in enumerate(pages, 1):
        title = "Cut list and boards" if index == 1 else "Layouts to copy"
        body = partial(_body, context, frame, tuple(page), index == 1)
        drafts.append(PageDraft("cut_list", f"cut_list:{index}", title, frame, body, TASK))
    return tuple(drafts)


Sheet = tuple[
    Yield, Layout, int, int
]  # the yield it belongs to, one of its layouts, how many are alike, number of the first
Picture = tuple[tuple[Sheet, ...], float]


def _body(context: Context, frame: Frame, pictures: tuple[Picture, ...], first: bool, numbers: Numbers) -> Body:
    y = frame.text.top
    drawn: list[Drawn] = []
    if first:
        tables, height = _tables(context, frame, numbers)
        drawn += tables
        y -= height
    for row, height in pictures:
        for (need, layout, alike, number), cell in zip(row, columns(frame.text, 2, GUTTER), strict=False):
            place = Box(cell.left, y - height + 2 * SPACE, cell.right, y)
            drawn += layout_picture(context, need, layout, (alike, number), place)
        y -= height
    return Body(tuple(drawn))


def _tables(context: Context, frame: Frame, numbers: Numbers | None) -> tuple[tuple[Drawn, ...], float]:
    """Set the cut list and the yield under the top of the page; return them and the height they take."""
    setter, text = context.type, frame.text
    y = text.top
    drawn: list[Drawn] = []
    cut = _cut_table(context, text.width, numbers)
    for title, note, table in (
        ("Cut list", "Sizes are those of the finished piece over all.", cut),
        (
            "What one sheet holds",
            "Counted from real layouts, each checked for gaps and edges; “on a grid” sets every part in a row of upright boxes.",
            _part_table(context, text.width),
        ),
        (
            "Sheets for the whole list, spares included",
            "By area: no layout can need fewer.",
            _sheet_table(context, text.width),
        ),
    ):
        drawn += setter.line(title, HEADING, text.left, y - setter.drop(HEADING))
        y -= HEADING.leading
        block = setter.paragraph(note, SMALL.quiet(), text.left, y, text.width)
        drawn += block.drawn
        y -= block.height + SPACE / 2
        if table is cut and numbers is not None:
            drawn += _links(context, table, text.left, y, numbers)
        drawn += table.place(text.left, y)
        y -= table.height() + 2 * SPACE
    return tuple(drawn), text.top - y


def _cut_table(context: Context, width: float, numbers: Numbers | None) -> Table:
    fixed_columns = (Column("", 9.0, bold=True), Column("Board", 20.0), Column("Cut", 34.0))
    sizes = (Column("Width × height", 44.0), Column("in inches", 36.0), Column("Page", 14.0))
    name = Column("Part", width - sum(c.width for c in (*fixed_columns, *sizes)))
    rows = []
    for row in context.needs.cut_list:
        count = str(row.count) + (f" + {row.spare} spare" if row.spare else "")
        if row.mirrored:
            count += f", {row.mirrored} mirrored"
        pages = numbers.pages_of_part(row.part) if numbers is not None else (1,)
        rows.append(
            (
                row.letter,
                row.name,
                row.board,
                count,
                f"{fixed(row.width, 1)} × {fixed(row.height, 1)} mm",
                f"{fixed(inches(row.width), 2)} × {fixed(inches(row.height), 2)} in",
                f"{pages[0]}-{pages[-1]}" if len(pages) > 1 else "".join(str(p) for p in pages),
            )
        )
    return make_table(context.type, (fixed_columns[0], name, *fixed_columns[1:], *sizes), tuple(rows))


def _links(context: Context, table: Table, left: float, top: float, numbers: Numbers) -> tuple[Link, ...]:
    edge = top - table.head_height
    links = []
    for row, height in zip(context.needs.cut_list, table.heights, strict=True):
        pages = numbers.pages_of_part(row.part)
        if pages:
            links.append(Link(Box(left, edge - height, left + table.width, edge), pages[0]))
        edge -= height
    return tuple(links)


def _sheet_name(need: Yield) -> str:
    """Say a sheet in the words of the shop and in the other unit."""
    width, height = need.sheet.width, need.sheet.height
    if "in" in need.sheet.label:
        return f"{need.sheet.label} ({width:.0f} × {height:.0f} mm)"
    return f"{need.sheet.label} ({fixed(inches(width), 1)} × {fixed(inches(height), 1)} in)"


def _part_table(context: Context, width: float) -> Table:
    wide = (Column("laid out, at least", 36.0, "right"), Column("on a grid", 26.0, "right"))
    part = Column("Only this part", 60.0)
    names = {p.id: f"{p.letter}  {p.name}" for p in context.parts}
    rows = tuple(
        (
            _sheet_name(need) if index == 0 else "",
            names.get(row.part, row.part),
            str(row.careful),
            str(row.grid),
        )
        for need in context.needs.yields
        for index, row in enumerate(need.rows)
    )
    first = Column("One sheet of", width - part.width - sum(c.width for c in wide))
    return make_table(context.type, (first, part, *wide), rows)


def _sheet_table(context: Context, width: float) -> Table:
    cols = (
        Column("laid out, at least", 34.0, "right"),
        Column("on a grid", 22.0, "right"),
        Column("by area", 20.0, "right"),
        Column("left over", 22.0, "right"),
        Column("to cut", 24.0, "right"),
    )
    rows = tuple(
        (
            _sheet_name(need),
            str(len(need.sheets)) if need.sheets else "does not fit",
            str(need.grid_sheets) if need.grid_sheets else "–",
            str(need.bound),
            f"{100 * need.offcut_share:.0f} %" if need.sheets else "–",
            f"{fixed(need.cut_length / 1000, 1)} m",
        )
        for need in context.needs.yields
    )
    return make_table(context.type, (Column("Sheet", width - sum(c.width for c in cols)), *cols), rows)


def _picture_rows(context: Context, frame: Frame) -> list[Picture]:
    """Put the pictures of all different sheets in rows of two; return each row with its height."""
    sheets: list[Sheet] = []
    for need in context.needs.yields:
        seen: list[tuple[object, Sheet]] = []
        for number, layout in enumerate(need.sheets, 1):
            same = tuple((item.part, item.pose) for item in layout.items)
            found = next((i for i, (what, _) in enumerate(seen) if what == same), None)
            if found is None:
                seen.append((same, (need, layout, 1, number)))
            else:
                before = seen[found][1]
                seen[found] = (same, (need, layout, before[2] + 1, before[3]))
        sheets += [sheet for _, sheet in seen]
    cell = columns(frame.text, 2, GUTTER)[0]
    rows = [tuple(sheets[i : i + 2]) for i in range(0, len(sheets), 2)]
    return [(row, max(picture_height(need, cell.width, TALLEST) for need, *_ in row) + 2 * SPACE) for row in rows]
