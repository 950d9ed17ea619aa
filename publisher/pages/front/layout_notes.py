"""The list beside the picture of a sheet: its straight cuts in order, and the measures of copies that have no room for them."""

from collections.abc import Sequence

from publisher.basics import Box, Carried, PlacePromise, record
from publisher.pages.front.layout_words import STRAIGHT, SheetWords
from publisher.pages.model import Drawn
from publisher.pages.type import LEAST, NOTE, SMALL, SPACE, Setter, TypeStyle

NARROW_NOTES, WIDE_NOTES = 38.0, 54.0
"""mm: width of one column of the list; in a wide one a copy that lies askew mostly takes one line."""

LIST_AWAY = 4.0  # between columns, and between picture and list
NUMBER_END = 5.0  # from the left of a column to the right end of a copy's number
LETTER_START = 6.0  # and to its letter
WORDS_START = 11.0  # and to the words beside them


@record
class SheetNote:
    """A line or two of the list: a heading, or a ``number`` with a ``letter`` and ``lines``; ``key`` names what was promised."""

    lines: tuple[str, ...]
    key: str = ""
    number: str = ""
    letter: str = ""
    style: TypeStyle = NOTE

    @property
    def height(self) -> float:
        """Height in mm."""
        return SMALL.leading if not self.key else self.style.leading * len(self.lines)


Columns = tuple[tuple[SheetNote, ...], ...]


def words_start(setter: Setter, style: TypeStyle) -> float:
    """Return how far from the left of a column the words begin that stand beside a number or the name of a cut (mm)."""
    return max(WORDS_START, setter.width(setter.meant(STRAIGHT, "cut 88"), style) + 1.2)


def entries(
    setter: Setter, words: SheetWords, left_out: Sequence[PlacePromise], width: float, style: TypeStyle = NOTE
) -> tuple[SheetNote, ...]:
    """Return the list of a sheet in columns of this width (mm): its straight cuts, and the copies whose measures are not in the
    picture."""
    promise = words.promise
    found: list[SheetNote] = []
    room = width - words_start(setter, style)
    if promise.cuts:
        found.append(SheetNote(("Straight cuts",)))
    for number, cut in enumerate(promise.cuts, 1):
        lines = setter.lines(words.cut(cut), style, room)
        found.append(
            SheetNote(lines, promise.key_of("cut", number), setter.meant(STRAIGHT, f"cut {number}"), style=style)
        )
    if left_out:
        found.append(SheetNote(("Measures",)))
    for place in left_out:
        lines = tuple(" ".join(pair) for pair in words.measures(place))
        whole = "  ".join(lines)
        lines = (whole,) if setter.width(whole, style) <= room else lines
        found.append(SheetNote(lines, promise.key_of("piece", place.order), str(place.order), place.letter, style))
    return tuple(found)


def set_column(
    setter: Setter, column: Sequence[SheetNote], left: float, top: float, page: int, width: float
) -> tuple[tuple[Drawn, ...], tuple[Carried, ...]]:
    """Draw entries under each other; return where each of them stands too."""
    drawn: list[Drawn] = []
    carried: list[Carried] = []
    for entry in column:
        if not entry.key:
            drawn += setter.line(entry.lines[0], NOTE.bold(), left, top - setter.drop(NOTE) - SPACE / 4)
        else:
            y = top - setter.drop(entry.style)
            if entry.letter:
                drawn += setter.line(entry.number, entry.style, left + NUMBER_END, y, align="right")
                drawn += setter.line(entry.letter, entry.style.bold(), left + LETTER_START, y)
            else:
                drawn += setter.line(entry.number, entry.style, left, y)
            start = left + words_start(setter, entry.style)
            for number, line in enumerate(entry.lines):
                drawn += setter.line(line, entry.style, start, y - number * entry.style.leading)
            carried.append(Carried(entry.key, page, Box(left, top - entry.height, left + width, top)))
        top -= entry.height
    return tuple(drawn), tuple(carried)


def set_columns(
    setter: Setter, columns: Sequence[Sequence[SheetNote]], left: float, top: float, page: int, width: float
) -> tuple[tuple[Drawn, ...], tuple[Carried, ...]]:
    """Draw columns beside each other; return where each entry stands too."""
    set_ = [
        set_column(setter, column, left + number * (width + LIST_AWAY), top, page, width)
        for number, column in enumerate(columns)
    ]
    return tuple(one for drawn, _ in set_ for one in drawn), tuple(one for _, carried in set_ for one in carried)


def columns_in(room: float, width: float) -> int:
    """Return how many columns of this width stand beside each other in a room (mm); one at least."""
    return max(1, int((room + LIST_AWAY) // (width + LIST_AWAY)))


def on_pages(listed: Sequence[SheetNote], count: int, height: float) -> tuple[Columns, ...]:
    """Share entries out over pages of so many columns of at most this height (mm): the columns of each page, those of the last alike."""
    pages = []
    while listed:
        columns = in_columns(listed, count)
        if max(map(column_height, columns)) > height + 1e-9:
            columns = filled(listed, height)[:count]
        pages.append(columns)
        listed = listed[sum(map(len, columns)) :]
    return tuple(pages)


def in_columns(listed: Sequence[SheetNote], count: int) -> tuple[tuple[SheetNote, ...], ...]:
    """Share entries out over at most so many columns, none taller than need be."""
    height = sum(entry.height for entry in listed) / max(1, count)
    while True:
        columns = filled(listed, height)
        if len(columns) <= count:
            return columns
        height += LEAST.leading


def filled(listed: Sequence[SheetNote], height: float) -> tuple[tuple[SheetNote, ...], ...]:
    """Fill columns of this height (mm) with entries one after another; each takes one at least, and no heading ends one."""
    columns: list[list[SheetNote]] = []
    left = 0.0
    for number, entry in enumerate(listed):
        need = entry.height + (listed[number + 1].height if not entry.key and number + 1 < len(listed) else 0.0)
        if not columns or need > left + 1e-9:
            columns.append([])
            left = height
        columns[-1].append(entry)
        left -= entry.height
    return tuple(map(tuple, columns))


def column_height(column: Sequence[SheetNote]) -> float:
    """Return the height of a column in mm."""
    return sum(entry.height for entry in column)
