"""What a tile page says beside its seams: the size after taping, where the tile lies, what to do with the page."""

from publisher.basics import Box, Layer, Path, Point, TextPromise, polyline
from publisher.basics.wording import LengthUnit, say_length
from publisher.pages.model import Drawn, Stroke
from publisher.pages.sheet import Body, Numbers
from publisher.pages.templates import said_off_part
from publisher.pages.tiles.seams import Cell
from publisher.pages.tiles.tile_map import map_drawn
from publisher.pages.tiles.tile_plan import Tiling
from publisher.pages.type import DIMENSION, LEAST, NOTE, SMALL, Setter, TypeStyle

SIZE_AWAY = 4.5  # mm from the part to the lines that show its whole size
SIZE_HALF = 1.5  # mm on both sides of such a line that its ticks and words take
MAP_SHARE = 0.42  # of the width of a band
WAYS = (
    (1.0, NOTE, True), (0.7, NOTE, True), (0.7, LEAST, True), (0.5, LEAST, True), (0.5, LEAST, False),
    (0.0, LEAST, False),
)  # fmt: skip
"""How the words of a tile are fitted to its page, first to last: how much of its place the map takes (none: what to do matters more),
their size, all of them or few."""


def size_lines(setter: Setter, plan: Tiling, cell: Cell, first: LengthUnit) -> tuple[Drawn, ...]:
    """Return the tile's stretch of the line that shows the part's whole width, and of that for its height, where there is paper.

    The line stands ``SIZE_AWAY`` mm outside the part, below it and at its left; its ends have ticks; a text names the whole size, in the
    ``first`` unit first.
    """
    drawn: list[Drawn] = []
    left, bottom, right, top = plan.laid.bounds
    x, y = plan.shift(cell)
    window = cell.window
    below, beside = _sized(plan, cell)
    if below:
        a, b = max(left, window.left), min(right, window.right)
        drawn += _size_line(
            setter,
            (a + x, b + x),
            bottom - SIZE_AWAY + y,
            (left + x, right + x),
            say_length(right - left, first=first),
            True,
        )
    if beside:
        a, b = max(bottom, window.bottom), min(top, window.top)
        drawn += _size_line(
            setter,
            (a + y, b + y),
            left - SIZE_AWAY + x,
            (bottom + y, top + y),
            say_length(top - bottom, first=first),
            False,
        )
    return tuple(drawn)


def size_bands(plan: Tiling, cell: Cell) -> tuple[Box, ...]:
    """Return, on the tile's page, the bands from one side of its window to the other in which ``size_lines`` stand."""
    left, bottom, *_ = plan.laid.bounds
    below, beside = _sized(plan, cell)
    window = cell.window
    bands = (
        *((Box(window.left, bottom - SIZE_AWAY, window.right, bottom - SIZE_AWAY),) if below else ()),
        *((Box(left - SIZE_AWAY, window.bottom, left - SIZE_AWAY, window.top),) if beside else ()),
    )
    return tuple(band.moved(*plan.shift(cell)).grown(SIZE_HALF) for band in bands)


def _sized(plan: Tiling, cell: Cell) -> tuple[bool, bool]:
    """Say whether a tile shows a stretch of the line for the part's width, and of that for its height."""
    left, bottom, *_ = plan.laid.bounds
    reach = SIZE_AWAY + SIZE_HALF
    below = cell.row == plan.cutting.rows and plan.cutting.columns > 1 and bottom - cell.window.bottom >= reach
    return below, cell.column == 1 and plan.cutting.rows > 1 and left - cell.window.left >= reach


def _size_line(setter: Setter, stretch: Point, at: float, ends: Point, length: str, level: bool) -> list[Drawn]:
    text = f"{length}, whole template"
    style = LEAST
    half = setter.width(text, style) / 2 + 1.0
    middle = sum(stretch) / 2
    runs = [(stretch[0], middle - half), (middle + half, stretch[1])]
    paths = [_along(a, b, at, level) for a, b in runs if b > a]
    for end in ends:
        if stretch[0] - 1e-6 <= end <= stretch[1] + 1e-6:
            paths.append(
                polyline(
                    ((end, at - SIZE_HALF), (end, at + SIZE_HALF))
                    if level
                    else ((at - SIZE_HALF, end), (at + SIZE_HALF, end))
                )
            )
    cap = setter.cap(style)
    place = (middle, at - cap / 2) if level else (at + cap / 2, middle)
    words = setter.line(text, style, *place, align="centre", turn=0.0 if level else 90.0, layer=Layer.DIMENSIONS)
    return [Stroke(DIMENSION, tuple(paths), Layer.DIMENSIONS, None, "figure"), *words]


def _along(a: float, b: float, at: float, level: bool) -> Path:
    return polyline(((a, at), (b, at)) if level else ((at, a), (at, b)))


def info_drawn(
    setter: Setter, plan: Tiling, cell: Cell, caption: str, numbers: Numbers, first: LengthUnit, sides: str = ""
) -> tuple[Body, Box]:
    """Return the map and the words of a tile page: which tile this is, what to do with it, what to measure after taping; and the
    box of the last. ``sides``: what that says of the part's sides, where it has no room for that."""
    info = plan.place(cell).info
    if info is None:
        raise ValueError("a tile on a page that others share has no area for a map")
    for way in WAYS:
        body, last = _info(setter, plan, cell, caption, numbers, first, sides, way, info)
        if last.bottom >= info.bottom:
            break
    return body, last


def _info(
    setter: Setter,
    plan: Tiling,
    cell: Cell,
    caption: str,
    numbers: Numbers,
    first: LengthUnit,
    sides: str,
    way: tuple[float, TypeStyle, bool],
    info: Box,
) -> tuple[Body, Box]:
    """Return ``info_drawn`` in one of its ways, whether or not it stays in its place."""
    share, note, full = way
    band = info.width > info.height
    pages = {c: numbers.page_of(plan.key(c)) or 0 for c in plan.cutting.cells}
    drawn: tuple[Drawn, ...] = ()
    x, top = info.left, info.top - 1.0
    if share:
        right = info.left + info.width * MAP_SHARE * share if band else info.right
        place = Box(info.left, info.bottom if band else info.top - info.width * share, right, info.top - 2.0)
        drawn, used = map_drawn(setter, plan, pages, place, cell)
        x, top = (used.right + 6.0, top) if band else (x, used.bottom - 4.0)
    width = min(info.right - x, 84.0)
    words: list[Drawn] = []
    promised = [caption[0].upper() + caption[1:]]
    last = info
    said = _said(plan, cell, caption, pages, first, full)
    measures = said_off_part(plan.sample.part, first) if full and cell is plan.cutting.cells[0] else ()
    said += [(text, False) for text in measures]
    said += [(sides, True)] if sides else []
    for index, (text, bold) in enumerate(said):
        style = (note if index else _heading(note)).bold() if bold else note
        block = setter.paragraph(text, style, x, top, width, layer=Layer.NOTES)
        words += block.drawn
        promised += setter.lines(text, style, width) if text in measures else ()
        last = Box(x, top - block.height, x + width, top)
        top -= block.height + 0.8
    body = Body((*drawn, *words), texts=tuple(TextPromise(numbers.page, text) for text in promised))
    return body, last


def _heading(note: TypeStyle) -> TypeStyle:
    return SMALL if note is NOTE else note


def _said(
    plan: Tiling, cell: Cell, caption: str, pages: dict[Cell, int], first: LengthUnit, full: bool
) -> list[tuple[str, bool]]:
    """Return the words of a tile, and whether they are bold; unless ``full`` without why."""
    on = [(s.first, s.upright) for s in plan.seams if s.second is cell]
    said = [(caption[0].upper() + caption[1:], True)]
    if on:
        sides = " and ".join("left" if upright else "top" for _, upright in on)
        under = " and ".join(f"{pages[c]}" for c, _ in on)
        said.append(
            (
                f"Trim along the trim line at the {sides}. Lay this tile over the glue area of page {under} so "
                "that match marks of the same name cover each other, and glue or tape it.",
                False,
            )
        )
    else:
        said.append(("Leave the glue area on: the next tile lies over it.", False))
    said.append(
        (
            f"Taped together the template measures {plan.sizes(first)}."
            + (" Measure it before you cut: printers differ from page to page." if full else ""),
            False,
        )
    )
    return said
