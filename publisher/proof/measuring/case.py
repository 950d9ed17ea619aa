"""A file on trial: what was read, what was promised, and the readings that several checks share, each taken once."""

import re
from collections.abc import Callable
from functools import wraps
from typing import Any, Concatenate, ParamSpec, TypeVar

import numpy as np

from publisher.basics import (
    Box,
    Carried,
    ClearPromise,
    CodePromise,
    FiducialPromise,
    FurniturePromise,
    LengthPromise,
    MarkPromise,
    OutlinePromise,
    PagePromise,
    Promises,
    TextPromise,
)
from publisher.proof.measuring.arrow_heads import arrow_heads
from publisher.proof.measuring.carried import lines_in
from publisher.proof.measuring.drawn_marks import MarkReading, read_marks
from publisher.proof.measuring.ink import Ink
from publisher.proof.measuring.lengths import LengthReading, read_lengths
from publisher.proof.measuring.letters import LettersSeen, letters_of
from publisher.proof.measuring.outlines import OutlineReading, StrokeSegments, read_outline
from publisher.proof.measuring.page_sight import Crop, PageSight, see_page
from publisher.proof.measuring.piece_lines import LinesShown, PieceLines, lines_shown
from publisher.proof.measuring.pixels import PixelReadings, read_pixels
from publisher.proof.measuring.stray_ink import LABELS, InsideOutlines
from publisher.proof.measuring.tiles import SeamReading, TilesReading, read_seams, read_tiles
from publisher.proof.measuring.unpromised_ink import PromisedParts, promised_parts
from publisher.proof.reading import (
    Array,
    Cover,
    FileRead,
    PageRead,
    TextLine,
    TooMuch,
    covers,
    normal,
    page_in_english,
    pictures_and_letters,
    promises_in_english,
    reader_of,
    text_lines,
    why_hidden,
)

MOST_PIXELS = 60_000_000  # of one picture
ELSEWHERE = "|"
OWN = ("side:", "act:", "tile:")  # what pages carry in words of their own
NUMERAL = re.compile(r"\d+(?:-\d+)?(?:, \d+(?:-\d+)?)*(?: … \d+)?")
NO_PROMISES = Promises("", "", (), (), (), (), (), ())
OnPage = TypeVar(
    "OnPage", PagePromise, ClearPromise, CodePromise, FiducialPromise, FurniturePromise, TextPromise, LengthPromise
)
Asked = ParamSpec("Asked")
Taken = TypeVar("Taken")


def _once(take: Callable[Concatenate["Case", Asked], Taken]) -> Callable[Concatenate["Case", Asked], Taken]:
    """Take a reading when it is first asked for, and keep it; that it asks too much is kept as well."""

    @wraps(take)
    def kept(case: "Case", /, *asked: Asked.args, **named: Asked.kwargs) -> Taken:
        key = (take.__name__, *asked)
        if key not in case.taken:
            try:
                case.taken[key] = take(case, *asked, **named)
            except TooMuch as trouble:
                case.taken[key] = trouble
        found = case.taken[key]
        if isinstance(found, TooMuch):
            raise TooMuch(str(found))
        return found  # type: ignore[no-any-return]

    return kept


class Case:
    """The subject of every check. Page numbers run from 1; of a page that the file lacks there is nothing to read."""

    def __init__(self, data: bytes, file: FileRead, promises: Promises | None) -> None:
        """Keep file and promises; readings are taken when first asked for."""
        self.data = data
        self.file = file
        self.promised = promises is not None
        self.promises = promises if promises is not None else NO_PROMISES
        self.take_down = reader_of(self.promises.language or file.language)
        if self.take_down is not None:
            self.promises = promises_in_english(self.promises, self.take_down)
        self.taken: dict[tuple[object, ...], Any] = {}

    def page(self, number: int) -> PageRead | None:
        """Return a page, None when the file has none of this number."""
        return self.file.pages[number - 1] if 1 <= number <= len(self.file.pages) else None

    def there(self, promises: tuple[OnPage, ...]) -> list[tuple[OnPage, PageRead]]:
        """Return promises with their pages, those of pages that the file lacks left out."""
        return [(promise, page) for promise in promises if (page := self.page(promise.page)) is not None]

    @_once
    def carried(self, key: str) -> tuple[Carried, ...]:
        """Return where the pages say that they show the promise with this key."""
        return tuple(where for where in self.promises.carried if where.key == key)

    @_once
    def carried_on(self, page: int) -> tuple[Carried, ...]:
        """Return what a page says that it shows of other rooms' promises."""
        return tuple(where for where in self.promises.carried if where.page == page)

    @_once
    def own_words(self, page: int) -> str:
        """Return the tool's own words of a page, in the order in which they are drawn; what the designer wrote, what is held word for
        word against a promise, and numbers alone on a line stand as ``ELSEWHERE``."""
        lines = self.lines(page)
        others = {
            id(line)
            for where in self.carried_on(page)
            if not where.key.startswith(OWN)
            for line in lines_in(lines, where.box)
        }
        text = " ".join(
            ELSEWHERE if id(line) in others or NUMERAL.fullmatch(line.text) else line.text for line in lines
        )
        for words in self.given:
            text = re.sub(rf"(?<![\w.]){re.escape(words)}(?!\w)", ELSEWHERE, text)
        return text

    @property
    @_once
    def titles(self) -> frozenset[str]:
        """Return the names and words that the designer wrote, as a reader would say them."""
        return frozenset(map(normal, self.promises.given))

    @property
    @_once
    def given(self) -> tuple[str, ...]:
        """Return the words that the designer wrote and that hold a number, as a reader would say them, the longest first."""
        named = (
            name for piece in self.promises.prints for name in (*piece.names, *(word.text for word in piece.words))
        )
        marks = (seam.label for seam in self.promises.seams)
        found = {normal(words) for words in (*self.promises.given, *named, *marks) if any(c.isdigit() for c in words)}
        words = (one for one in found if not NUMERAL.fullmatch(one))  # a bare number stands in words of ours too
        return tuple(sorted(words, key=lambda one: (-len(one), one)))

    @_once
    def covers(self, number: int) -> tuple[Cover, ...]:
        """Return what can hide things on a page, in the order in which it was painted."""
        page = self.page(number)
        return () if page is None else covers(page)

    @_once
    def ink(self, number: int) -> Ink | None:
        """Return the visible strokes of a page."""
        page = self.page(number)
        return None if page is None else Ink(page, self.covers(number))

    @_once
    def hidden(self, number: int) -> tuple[str, ...]:
        """Return for each run of text of a page why it is hidden, or ""."""
        page = self.page(number)
        return () if page is None else why_hidden(page, self.covers(number))

    @_once
    def boxes(self, number: int) -> tuple[tuple[int, Box], ...]:
        """Return the pictures and runs of letters of a page as boxes, each with its order."""
        page = self.page(number)
        return () if page is None else pictures_and_letters(page)

    @_once
    def lines(self, number: int) -> tuple[TextLine, ...]:
        """Return the visible lines of words of a page, taken down in English."""
        page = self.page(number)
        return () if page is None else text_lines(self.in_english(page), self.hidden(number))

    def in_english(self, page: PageRead) -> PageRead:
        """Return a page with its words taken down in English."""
        return page if self.take_down is None else page_in_english(page, self.take_down)

    @_once
    def areas(self, number: int) -> Array:
        """Return the bands that the visible lines of words of a page cover, as areas in the order of ``lines``."""
        return np.array([line.area() for line in self.lines(number)], dtype=object)

    @_once
    def letters(self, number: int) -> LettersSeen:
        """Return the visible letters of a page of the file."""
        return letters_of(self.file.pages[number - 1], self.hidden(number))

    @_once
    def lengths(self) -> tuple[LengthReading, ...]:
        """Return the readings of all promised lengths, by page."""
        return _by_page(self, self.promises.lengths, read_lengths)

    @_once
    def marks(self) -> tuple[MarkReading, ...]:
        """Return the readings of all promised marks, by page."""
        return _by_page(self, self.promises.marks, read_marks)

    @_once
    def outlines(self) -> tuple[OutlineReading, ...]:
        """Return the readings of all promised outlines."""
        found = ((promise, self.ink(promise.page)) for promise in self.promises.outlines)
        return tuple(read_outline(promise, ink) for promise, ink in found if ink is not None)

    @property
    def strips(self) -> int:
        """Return how many parts have no outline, since a compass strip draws them or a rule: a pack of them alone has none to look at."""
        return len(self.promises.compasses) + len(self.promises.sizes)

    @_once
    def parts(self) -> dict[int, PromisedParts]:
        """Return the promised parts of each page of the file."""
        return promised_parts(tuple(p for p in self.promises.outlines if self.page(p.page) is not None))

    @_once
    def insides(self) -> dict[int, InsideOutlines]:
        """Return for each page of the file with outlines of pieces that were promised what may stand inside them."""
        pieces = {piece.part for piece in self.promises.prints}
        on: dict[int, list[OutlinePromise]] = {}
        for outline in self.promises.outlines:
            if outline.part in pieces:
                on.setdefault(outline.page, []).append(outline)
        return {
            number: InsideOutlines(self.promises, page, outlines, self.lines(number))
            for number, outlines in on.items()
            if (page := self.page(number)) is not None
        }

    @_once
    def lines_shown(self) -> tuple[LinesShown, ...]:
        """Return how much of the lines of each piece its copies show."""
        pieces = {piece.part: piece for piece in self.promises.prints if piece.lines}
        copies: dict[tuple[str, int], list[tuple[OutlinePromise, PieceLines, StrokeSegments]]] = {}
        for outline in self.promises.outlines:
            strokes = self.strokes(outline.page)
            if outline.part in pieces and strokes is not None:
                labels = [where.box for where in self.carried_on(outline.page) if where.key.startswith(LABELS)]
                lines = PieceLines(pieces[outline.part], outline, self.lines(outline.page), labels)
                copies.setdefault((outline.part, outline.copy), []).append((outline, lines, strokes))
        return tuple(one for prints in copies.values() for one in lines_shown(prints))

    @_once
    def strokes(self, number: int) -> StrokeSegments | None:
        """Return all visible strokes of a page as segments."""
        ink = self.ink(number)
        if ink is None:
            return None
        starts, ends, owners = ink.segments
        return StrokeSegments(starts, ends, owners, ink.width[owners] if len(owners) else np.zeros(0))

    @_once
    def heads(self, number: int) -> list[Array]:
        """Return the heads of arrows on a page, the three corners of each."""
        page = self.page(number)
        return arrow_heads(page) if page is not None else []

    @_once
    def seams(self) -> tuple[SeamReading, ...]:
        """Return the readings of all promised match marks."""
        return read_seams(self.promises, self)

    @_once
    def tiles(self) -> tuple[TilesReading, ...]:
        """Return the readings of all tiled parts."""
        return read_tiles(self.promises, self, len(self.file.pages))

    @_once
    def pixels(self) -> PixelReadings:
        """Return what the second reader sees."""
        trouble = self._not_for_pixels()
        return PixelReadings(trouble=trouble) if trouble else read_pixels(self.data, self.promises, self._seen)

    def _seen(self, number: int, dots: Crop) -> PageSight | None:
        """Return what the dots of a page show of its lines and words; None where these ask too much: the checks say so."""
        page = self.page(number)
        try:
            ink, hidden = self.ink(number), self.hidden(number)
        except TooMuch:
            return None
        return None if page is None or ink is None else see_page(dots, page, ink, hidden)

    def _not_for_pixels(self) -> str:
        """Return why the second reader must not draw the file: it cannot be stopped once it has begun."""
        if self.file.two_minds:
            return "it may see other pages than the first"
        if any(i.pixels_across * i.pixels_down > MOST_PIXELS for page in self.file.pages for i in page.images):
            return "a picture has more than 60 million pixels"
        return ""


Promise = TypeVar("Promise", LengthPromise, MarkPromise)


def _by_page(
    case: Case, promises: tuple[Promise, ...], read: Callable[[tuple[Promise, ...], Ink], tuple[Taken, ...]]
) -> tuple[Taken, ...]:
    """Return the readings of all promises, those of a page together."""
    pages = ((number, case.ink(number)) for number in dict.fromkeys(promise.page for promise in promises))
    return tuple(
        reading
        for number, ink in pages
        if ink is not None
        for reading in read(tuple(p for p in promises if p.page == number), ink)
    )
