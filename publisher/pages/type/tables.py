"""Tables with aligned figures: columns of fixed width, rows that grow with their words, thin rules between."""

from dataclasses import replace
from typing import Literal

from publisher.basics import Box, Layer, Path, polyline, record
from publisher.pages.model import Drawn, Stroke, Words
from publisher.pages.type.styles import RULE, SMALL, STRONG_RULE, TypeStyle
from publisher.pages.type.text import Align, Setter

PAD = 1.2  # above and below the words of a row
CELL_GAP = 3.0  # between the words of neighbouring columns


@record
class Column:
    """A column: heading, width in mm (with the gap to the next, if there is one), alignment.

    ``point`` sets figures under each other at their decimal point, units following, so that a column reads as numbers.
    """

    title: str
    width: float
    align: Literal["left", "right", "point"] = "left"
    bold: bool = False


@record
class LaidTable:
    """A table laid out but not placed: ``place`` puts any stretch of its rows on a page, with the headings again."""

    setter: Setter
    columns: tuple[Column, ...]
    rows: tuple[tuple[tuple[str, ...], ...], ...]  # per row and cell: lines
    heights: tuple[float, ...]
    head: tuple[tuple[str, ...], ...]
    head_height: float
    style: TypeStyle

    @property
    def width(self) -> float:
        """Width in mm."""
        return sum(c.width for c in self.columns)

    def height(self, first: int = 0, last: int | None = None) -> float:
        """Return the height in mm of the headings and the rows from ``first`` up to, not including, ``last``."""
        return self.head_height + sum(self.heights[first:last])

    def rows_in(self, height: float, first: int = 0) -> int:
        """Return how many rows from ``first`` on fit under the headings in this height; at least one while rows are left."""
        left, count = height - self.head_height, 0
        for row in self.heights[first:]:
            left -= row
            if left < -1e-9 and count:
                break
            count += 1
        return count

    def row_boxes(self, x: float, top: float, first: int = 0, last: int | None = None) -> tuple[Box, ...]:
        """Return where the rows from ``first`` up to, not including, ``last`` stand, placed so."""
        found, edge = [], top - self.head_height
        for height in self.heights[first:last]:
            found.append(Box(x, edge - height, x + self.width, edge))
            edge -= height
        return tuple(found)

    def place(
        self, x: float, top: float, first: int = 0, last: int | None = None, *, layer: Layer = Layer.PAGE
    ) -> tuple[Drawn, ...]:
        """Draw the headings and the rows from ``first`` up to, not including, ``last``."""
        drawn: list[Drawn] = []
        heavy: list[Path] = [_level(x, top, self.width)]
        light: list[Path] = []
        y = top
        if self.head_height:
            drawn += self._row(self.head, x, y, self.style.bold().tagged("th"), row=-1, layer=layer)
            y -= self.head_height
            heavy.append(_level(x, y, self.width))
        shown = tuple(zip(self.rows, self.heights, strict=True))[first:last]
        points = tuple(self._point(i, [row for row, _ in shown]) for i in range(len(self.columns)))
        for number, (row, height) in enumerate(shown):
            drawn += self._row(row, x, y, self.style.tagged("td"), row=number, layer=layer, points=points)
            y -= height
            light.append(_level(x, y, self.width))
        drawn.append(Stroke(STRONG_RULE, tuple(heavy), layer, tag="artifact"))
        if light:
            drawn.append(Stroke(RULE, tuple(light), layer, tag="artifact"))
        return tuple(drawn)

    def _row(
        self,
        cells: tuple[tuple[str, ...], ...],
        x: float,
        top: float,
        style: TypeStyle,
        *,
        row: int,
        layer: Layer,
        points: tuple[float, ...] = (),
    ) -> list[Drawn]:
        drawn: list[Drawn] = []
        for number, (column, lines) in enumerate(zip(self.columns, cells, strict=True)):
            y = top - PAD - self.setter.drop(style)
            cell = style.bold() if column.bold else style
            words: list[Words] = []
            for line in lines:
                align: Align = "left"
                at = x
                if column.align == "point" and points:
                    at = x + points[number] - self.setter.width(_lead(line), cell)
                elif column.align != "left":
                    at, align = x + _room(self.columns, number), "right"
                words += self.setter.line(line, cell, at, y, align=align, layer=layer, goes_on=bool(words))
                y -= style.leading
            drawn += (replace(one, cell=(row, number)) for one in words)
            x += column.width
        return drawn

    def _point(self, number: int, rows: list[tuple[tuple[str, ...], ...]]) -> float:
        """Return where the decimal points of a column stand, from its left side: its widest figure ends at its right side."""
        column = self.columns[number]
        if column.align != "point":
            return 0.0
        style = self.style.bold() if column.bold else self.style
        lines = [line for row in rows for line in row[number]]
        tail = max((self.setter.width(line[len(_lead(line)) :], style) for line in lines), default=0.0)
        return _room(self.columns, number) - tail


def make_table(
    setter: Setter,
    columns: tuple[Column, ...],
    rows: tuple[tuple[str, ...], ...],
    *,
    style: TypeStyle = SMALL,
    headed: bool = True,
) -> LaidTable:
    """Lay out a table: break each cell's words to its column and find the heights of the rows.

    A column that is narrower than a word of it takes from those that have room to spare; the table stays as wide.
    """
    if setter.tongue is not None:
        columns = tuple(replace(column, title=setter.say(column.title)) for column in columns)
        rows = tuple(tuple(setter.say(cell) for cell in row) for row in rows)
    columns = _whole_words(setter, columns, rows, style, headed)
    rooms = tuple(_room(columns, number) for number in range(len(columns)))
    head = (
        tuple(setter.lines(c.title, style.bold(), room) for c, room in zip(columns, rooms, strict=True))
        if headed
        else ()
    )
    broken = tuple(
        tuple(
            setter.lines(cell, style.bold() if c.bold else style, room)
            for c, cell, room in zip(columns, row, rooms, strict=True)
        )
        for row in rows
    )
    heights = tuple(_height(row, style) for row in broken)
    return LaidTable(setter, columns, broken, heights, head, _height(head, style) if headed else 0.0, style)


def _whole_words(
    setter: Setter, columns: tuple[Column, ...], rows: tuple[tuple[str, ...], ...], style: TypeStyle, headed: bool
) -> tuple[Column, ...]:
    """Return the columns with widths at which no word is broken, as far as they have room for that together."""
    spare = []
    for number, column in enumerate(columns):
        words = [(word, style.bold()) for word in column.title.split() if headed]
        words += ((word, style.bold() if column.bold else style) for row in rows for word in row[number].split())
        spare.append(_room(columns, number) - max((setter.wide(*word) for word in words), default=0.0))
    lack, room = -sum(s for s in spare if s < 0.0), sum(s for s in spare if s > 0.0)
    if not lack or not room:
        return columns
    moved = min(lack, room)
    return tuple(
        replace(column, width=column.width - s * moved / (room if s > 0.0 else lack))
        for column, s in zip(columns, spare, strict=True)
    )


def _room(columns: tuple[Column, ...], number: int) -> float:
    """Return the width that a column has for words."""
    return columns[number].width - (CELL_GAP if number < len(columns) - 1 else 0.0)


def _height(cells: tuple[tuple[str, ...], ...], style: TypeStyle) -> float:
    return max([1, *(len(lines) for lines in cells)]) * style.leading + 2 * PAD


def _lead(text: str) -> str:
    """Return what of a figure stands before its decimal point: ``92.0 mm`` -> ``92``, ``14`` -> ``14``."""
    end = 0
    while end < len(text) and (text[end].isdigit() or text[end] in "+−-≤≥<> "):
        end += 1
    return text[:end].rstrip()


def _level(x: float, y: float, width: float) -> Path:
    return polyline(((x, y), (x + width, y)))
