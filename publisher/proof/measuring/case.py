"""A file on trial: what was read, what was promised, and the readings that several checks share, each taken once."""

import numpy as np

from publisher.basics import Promises
from publisher.proof.measuring.drawn_marks import MarkReading, read_marks
from publisher.proof.measuring.ink import Ink
from publisher.proof.measuring.lengths import LengthReading, read_lengths
from publisher.proof.measuring.outlines import OutlineReading, read_outline
from publisher.proof.measuring.pixels import PixelReadings, read_pixels
from publisher.proof.measuring.tiles import SeamReading, TilesReading, read_seams, read_tiles
from publisher.proof.measuring.unpromised_ink import PromisedParts, promised_parts
from publisher.proof.reading import Array, FileRead, PageRead, TextLine, TooMuch, text_lines, why_hidden

MOST_PIXELS = 60_000_000  # of one picture
NOTHING = Promises("", "", (), (), (), (), (), ())


class Case:
    """The subject of every check. Page numbers run from 1."""

    def __init__(self, data: bytes, file: FileRead, promises: Promises | None) -> None:
        """Keep file and promises; readings are taken when first asked for."""
        self.data = data
        self.file = file
        self.promised = promises is not None
        self.promises = promises if promises is not None else NOTHING
        self._ink: dict[int, Ink] = {}
        self._gave_up: dict[int, str] = {}
        self._hidden: dict[int, tuple[str, ...]] = {}
        self._lines: dict[int, tuple[TextLine, ...]] = {}
        self._areas: dict[int, Array] = {}
        self._lengths: tuple[LengthReading, ...] | None = None
        self._outlines: tuple[OutlineReading, ...] | None = None
        self._parts: dict[int, PromisedParts] | None = None
        self._marks: tuple[MarkReading, ...] | None = None
        self._seams: tuple[SeamReading, ...] | None = None
        self._tiles: tuple[TilesReading, ...] | None = None
        self._pixels: PixelReadings | None = None

    def page(self, number: int) -> PageRead | None:
        """Return a page, None when the file has none of this number."""
        return self.file.pages[number - 1] if 1 <= number <= len(self.file.pages) else None

    def ink(self, number: int) -> Ink | None:
        """Return the visible strokes of a page."""
        page = self.page(number)
        if page is None:
            return None
        if number in self._gave_up:
            raise TooMuch(self._gave_up[number])
        if number not in self._ink:
            try:
                self._ink[number] = Ink(page)
            except TooMuch as trouble:
                self._gave_up[number] = str(trouble)
                raise
        return self._ink[number]

    def hidden(self, number: int) -> tuple[str, ...]:
        """Return for each run of text of a page why it is hidden, or ""."""
        page = self.page(number)
        if page is None:
            return ()
        if number not in self._hidden:
            self._hidden[number] = why_hidden(page)
        return self._hidden[number]

    def lines(self, number: int) -> tuple[TextLine, ...]:
        """Return the visible lines of words of a page."""
        page = self.page(number)
        if page is None:
            return ()
        if number not in self._lines:
            self._lines[number] = text_lines(page, self.hidden(number))
        return self._lines[number]

    def areas(self, number: int) -> Array:
        """Return the bands that the visible lines of words of a page cover, as areas in the order of ``lines``."""
        if number not in self._areas:
            self._areas[number] = np.array([line.area() for line in self.lines(number)], dtype=object)
        return self._areas[number]

    def lengths(self) -> tuple[LengthReading, ...]:
        """Return the readings of all promised lengths, by page."""
        if self._lengths is None:
            pages = dict.fromkeys(p.page for p in self.promises.lengths)
            self._lengths = tuple(
                reading
                for number in pages
                if (ink := self.ink(number)) is not None
                for reading in read_lengths(tuple(p for p in self.promises.lengths if p.page == number), ink)
            )
        return self._lengths

    def outlines(self) -> tuple[OutlineReading, ...]:
        """Return the readings of all promised outlines."""
        if self._outlines is None:
            self._outlines = tuple(
                read_outline(promise, ink)
                for promise in self.promises.outlines
                if (ink := self.ink(promise.page)) is not None
            )
        return self._outlines

    def parts(self) -> dict[int, PromisedParts]:
        """Return the promised parts of each page of the file."""
        if self._parts is None:
            there = tuple(p for p in self.promises.outlines if self.page(p.page) is not None)
            self._parts = promised_parts(there)
        return self._parts

    def marks(self) -> tuple[MarkReading, ...]:
        """Return the readings of all promised marks, by page."""
        if self._marks is None:
            pages = dict.fromkeys(p.page for p in self.promises.marks)
            self._marks = tuple(
                reading
                for number in pages
                if (ink := self.ink(number)) is not None
                for reading in read_marks(tuple(p for p in self.promises.marks if p.page == number), ink)
            )
        return self._marks

    def seams(self) -> tuple[SeamReading, ...]:
        """Return the readings of all promised match marks."""
        if self._seams is None:
            self._seams = read_seams(self.promises, self)
        return self._seams

    def tiles(self) -> tuple[TilesReading, ...]:
        """Return the readings of all tiled parts."""
        if self._tiles is None:
            self._tiles = read_tiles(self.promises, self, len(self.file.pages))
        return self._tiles

    def _not_for_pixels(self) -> str:
        """Return why the second reader must not draw the file: it cannot be stopped once it has begun."""
        if self.file.two_minds:
            return "it may see other pages than the first"
        if any(i.pixels_across * i.pixels_down > MOST_PIXELS for page in self.file.pages for i in page.images):
            return "a picture has more than 60 million pixels"
        return ""

    def pixels(self) -> PixelReadings:
        """Return what the second reader sees."""
        if self._pixels is None:
            trouble = self._not_for_pixels()
            self._pixels = PixelReadings(trouble=trouble) if trouble else read_pixels(self.data, self.promises)
        return self._pixels
