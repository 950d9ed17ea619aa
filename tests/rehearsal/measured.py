"""Parts without a template, which are measured out on the board by the sizes that a page says."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

import shapely

from tests.rehearsal.pages import Line, ReadPage
from tests.rehearsal.parts import ReadPart

NAMED = re.compile(r"^([A-Z]\d*) .*, cut (\d+)(?: ?\+ ?(\d+) spare)?$")
SIZE = re.compile(r"(\d+(?:\.\d+)?) × (\d+(?:\.\d+)?) mm")
BOARD = re.compile(r"\), (.+?) (?:[\d./ ]+ in \()?(\d+(?:\.\d+)?) mm")
UNDER, ASIDE = 9.0, 1.0  # mm from a name down to its size, and across


def measured_parts(pages: Iterable[ReadPage]) -> Iterator[ReadPart]:
    """Yield the rectangles that pages other than those of templates say to measure out."""
    for page in pages:
        for line in page.lines if not page.shows_templates else ():
            named = NAMED.match(line.text)
            size = _under(page, line) if named else None
            if named and size is not None:
                yield replace(size, letter=named[1], count=int(named[2]), spare=int(named[3] or 0))


def _under(page: ReadPage, name: Line) -> ReadPart | None:
    """Return a part of the size that stands under its name, on one line or broken over two; None where none does."""
    below = [line for line in page.lines if 0.0 < name.y - line.y < UNDER and abs(line.x - name.x) < ASIDE]
    text = " ".join(line.text for line in sorted(below, key=lambda line: -line.y))
    size, board = SIZE.search(text), BOARD.search(text)
    if size is None or board is None:
        return None
    area = shapely.box(0.0, 0.0, float(size[1]), float(size[2]))
    return ReadPart("", area, (page.number,), board=board[1], thickness=float(board[2]), cut_so=True, words=(text,))
