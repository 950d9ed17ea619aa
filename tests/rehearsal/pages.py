"""What a page shows: its words, tags, cut lines and match marks, and the scale that its printed square has in the picture."""

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import shapely

from tests.rehearsal.askew import askew_words
from tests.rehearsal.cut_lines import CutLine, cut_lines, inked_areas
from tests.rehearsal.letters import Tag, tags
from tests.rehearsal.notes import Note, Said, notes_of
from tests.rehearsal.outlines import WORD_DEEP, WORD_HIGH, Outline, outlines
from tests.rehearsal.raster import DOTS, Grey, PagePicture, Pieces, pieces_of
from tests.rehearsal.signs import Sign, glue_signs
from tests.rehearsal.thin_lines import Thin, thin_lines
from tests.rehearsal.turns import Curved, curved_arrows
from tests.rehearsal.words import Read, read_words

COVER = 1
LEAST_HEAD = 3.0  # mm of the em: a long heading is set smaller
ONE_ROW = 0.5  # mm: words of one heading, with a wide blank between them
HEAD = 25.0  # mm from the upper edge within which the heading stands
TRUE = ("Templates", "Tiles")  # what the headings of pages with parts begin with
STEPS = ("Steps ", "Step ")
TOLD = ("Before you cut", "Buy and cut", *STEPS)  # and of pages whose words say how it is built
TITLED = re.compile(r"(?:: |· )([A-Z]\d*)(?= |$)")
BETWEEN = re.compile(r"\d(?: mm)? \w+ \d")  # "49.75 to 50.25", in any language
TILED = re.compile(r"^[A-Z]\d* .*tile \d+ of \d+")  # the heading of a page with a single tile
SQUARE_LINE = 0.25  # mm: its side is measured in the middle of its lines
SQUARE_LEAST = 24.0
NO_RULER = 0.001  # off true size by less than any ruler shows on 30 mm
MARK_ACROSS, MARK_OFF = 5.25, 0.15  # mm of a match mark over its lines
MARK_INK = (5.0, 8.0)  # mm²: a circle and its cross
MARK_NAME = re.compile(r"^[A-Z][\w.]*(?: \d+)?[- ]\d+·[a-z]$")  # a hyphen on a line is lost to the reader
ARM = (1.8, 0.6, 0.5)  # mm: stretch of an arm that is measured, and half of the room beside it
NAME_FAR = 13.0  # mm from a mark to the middle of its name


@dataclass(frozen=True, slots=True)
class Line:
    """Words in mm from the lower left of the page, y upward; ``x``, ``y``: the beginning of the base line. ``turned``: they run up the
    page, and are given so that their middle is where it is."""

    text: str
    x: float
    y: float
    length: float
    em: float
    bold: bool
    turned: bool = False

    @property
    def middle(self) -> tuple[float, float]:
        """Return the middle of the words."""
        return self.x + self.length / 2, self.y + 0.3 * self.em


@dataclass(frozen=True, slots=True)
class MatchMark:
    """A circle with a cross: its middle, and the name beside it ("" where none was read)."""

    x: float
    y: float
    name: str


@dataclass(frozen=True, slots=True, eq=False)
class ReadPage:
    """A page as read. ``square``: the box of its calibration square; ``scale``: how long a printed millimetre is, None where no square
    was read."""

    number: int
    lines: tuple[Line, ...]
    tags: tuple[Tag, ...] = ()
    cuts: tuple[CutLine, ...] = ()
    marks: tuple[MatchMark, ...] = ()
    square: shapely.Polygon | None = None
    scale: float | None = None
    notes: tuple[Note, ...] = ()
    thin: tuple[Thin, ...] = ()
    signs: tuple[Sign, ...] = ()
    outlines: tuple[Outline, ...] = ()
    curved: tuple[Curved, ...] = ()

    @property
    def title(self) -> str:
        """Return the page's heading."""
        heads = [line for line in self.lines if line.bold and line.em > LEAST_HEAD]
        top = max((line.y for line in heads), default=0.0)
        return " ".join(line.text for line in sorted(heads, key=lambda line: line.x) if top - line.y < ONE_ROW)

    @property
    def shows_templates(self) -> bool:
        """Say whether the page is one that must print true for its parts."""
        return self.title.startswith(TRUE) or bool(TILED.match(self.title))

    @property
    def shows_steps(self) -> bool:
        """Say whether the page shows how it is built."""
        return self.title.startswith(STEPS)


def read_page(picture: PagePicture) -> ReadPage:
    """Read a page; its lines only where it is one of templates or tiles."""
    head = ReadPage(picture.number, _lines(pieces_of(picture.head(HEAD)), picture.height))
    if not (head.shows_templates or head.title.startswith(TOLD) or picture.number == COVER):
        return head
    ink = picture.ink()
    seen = pieces_of(ink)
    lines = _lines(seen, len(ink))
    drawn = outlines(ink, _word_boxes(lines)) if head.shows_steps else ()
    curved = tuple(curved_arrows(seen)) if head.shows_steps else ()
    page = ReadPage(picture.number, lines, signs=tuple(glue_signs(seen)), outlines=drawn, curved=curved)
    if not page.shows_templates:
        return page
    square, scale = _square(ink, seen, lines)
    cuts = tuple(
        line for line in cut_lines(ink) if square is None or not square.covers(line.ink.representative_point())
    )
    marks = tuple(_marks(ink, seen, lines))
    tagged = tags(seen)
    if any(not mark.name for mark in marks) or not _letters(page.title) <= {tag.letter for tag in tagged}:
        upright = pieces_of(np.ascontiguousarray(np.rot90(ink, -1)))
        lines = (*lines, *_upright(upright, len(ink)))  # of a strip that stands upright all words do
        tagged = (*tagged, *(turned_tag(tag, len(upright.labels) / DOTS) for tag in tags(upright)))
        marks = tuple(_marks(ink, seen, lines))
    thin = tuple(thin_lines(seen))
    said = [Said(line.text, *line.middle, line.em, line.bold) for line in lines]
    askew = [one for one in askew_words(ink, thin) if not any(_stands_in(one, line) for line in lines)]
    notes = tuple(notes_of((*said, *askew), seen))
    return ReadPage(picture.number, lines, tagged, cuts, marks, square, scale, notes, thin)


def _stands_in(said: Said, line: Line) -> bool:
    """Say whether words have been read already, as upright ones: turned a little they seem askew, in bits."""
    x, y = line.middle
    return not line.turned and abs(said.x - x) < line.length / 2 and abs(said.y - y) < line.em / 2


def _letters(title: str) -> set[str]:
    """Return the letters of the parts that a page's heading names."""
    return set(TITLED.findall(title))


def _lines(seen: Pieces, height: int) -> tuple[Line, ...]:
    tall = height / DOTS
    return tuple(Line(r.text, r.x, tall - r.y, r.length, r.em, r.bold) for r in read_words(seen))


def _word_boxes(lines: tuple[Line, ...]) -> list[tuple[float, float, float, float]]:
    """Return the boxes that words take (mm)."""
    return [
        (line.x, line.y - WORD_DEEP * line.em, line.x + line.length, line.y + WORD_HIGH * line.em) for line in lines
    ]


def _upright(turned: Pieces, height: int) -> tuple[Line, ...]:
    """Return words that run up a page so high, by its picture turned clockwise."""
    return tuple(_turned(read, height / DOTS) for read in read_words(turned))


def _turned(read: Read, tall: float) -> Line:
    # turned clockwise, what stood at (x from the left, y from the top) stands at (tall - y, x)
    along, across = read.x + read.length / 2, read.y - 0.3 * read.em
    return Line(read.text, across - read.length / 2, along - 0.3 * read.em, read.length, read.em, read.bold, True)


def turned_tag(tag: Tag, wide: float) -> Tag:
    """Return a tag that was read on a page turned clockwise, which is so wide (mm), where it stands on the page."""
    return Tag(tag.letter, wide - tag.top, tag.left, wide - tag.bottom, tag.right, turned=True)


def _square(ink: Grey, seen: Pieces, lines: tuple[Line, ...]) -> tuple[shapely.Polygon | None, float | None]:
    """Return the calibration square and the scale that its sides have against the number in it: of several squares with such a number, as
    a square template is one, the smallest."""
    found: list[tuple[float, shapely.Polygon, float]] = []
    for area in inked_areas(ink, seen, SQUARE_LEAST, square=True):
        left, bottom, right, top = area.bounds
        wide, tall = right - left - SQUARE_LINE, top - bottom - SQUARE_LINE
        box = shapely.box(left, bottom, right, top)
        if abs(wide - tall) > 0.01 * wide or shapely.Polygon(area.exterior).area < 0.98 * box.area:
            continue
        for said in _lengths(line.text for line in lines if box.contains(shapely.Point(line.middle))):
            if abs(wide / said - 1.0) < 0.05:
                scale = (wide + tall) / 2.0 / said
                found.append((wide, box, 1.0 if abs(scale - 1.0) < NO_RULER else scale))
    return min(found, key=lambda one: one[0])[1:] if found else (None, None)


def _lengths(texts: Iterator[str]) -> Iterator[float]:
    """Yield the lengths that stand alone: what lies between two numbers is a limit, and no side of anything."""
    for text in texts:
        if BETWEEN.search(text):
            continue
        for number in re.findall(r"(\d+(?:\.\d+)?) mm", text):
            yield float(number)


def _marks(ink: Grey, seen: Pieces, lines: tuple[Line, ...]) -> Iterator[MatchMark]:
    """Yield the match marks of a page, each with the name nearest to it that names one."""
    labels, boxes = seen.labels, seen.boxes
    names = [line for line in lines if MARK_NAME.match(line.text)]
    across = boxes[:, 2:4] / DOTS
    fits = (np.abs(across - MARK_ACROSS) < MARK_OFF).all(axis=1)
    for number in np.flatnonzero(fits):
        x, y, width, height, area = (int(value) for value in boxes[number])
        if not MARK_INK[0] < area / DOTS**2 < MARK_INK[1] or labels[y + height // 2, x + width // 2] != number:
            continue
        at = _crossing(ink, x + width / 2, y + height / 2)
        near = min(names, key=lambda line: np.hypot(line.middle[0] - at[0], line.middle[1] - at[1]), default=None)
        far = near is None or np.hypot(near.middle[0] - at[0], near.middle[1] - at[1]) > NAME_FAR
        yield MatchMark(*at, "" if near is None or far else _plain(near.text))


def _crossing(ink: Grey, x: float, y: float) -> tuple[float, float]:
    """Return where the arms of a cross meet that stands about (x, y) in dots: each arm is measured beside the other, within the circle."""
    far, near, half = (round(mm * DOTS) for mm in ARM)
    column, row = round(x), round(y)

    def middle(strips: tuple[Grey, Grey], along: int) -> float:
        sums = sum(np.where(strip > 40, strip, 0).sum(axis=along, dtype=np.float64) for strip in strips)
        return float((sums @ (np.arange(len(sums)) + 0.5)) / sums.sum()) - half

    beside = slice(column - half, column + half)
    across = middle((ink[row - far : row - near, beside], ink[row + near : row + far, beside]), 0)
    level = slice(row - half, row + half)
    down = middle((ink[level, column - far : column - near], ink[level, column + near : column + far]), 1)
    return (column + across) / DOTS, (len(ink) - row - down) / DOTS


def _plain(name: str) -> str:
    """Return a name without what a line that ties it to its mark puts on top of a letter, and with the hyphens that lines hide."""
    return "".join(c for c in unicodedata.normalize("NFD", name) if not unicodedata.combining(c)).replace(" ", "-")
