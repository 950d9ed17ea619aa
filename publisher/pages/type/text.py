"""Lines and paragraphs from font metrics: where words break, and where they stand. Tables are in ``tables``."""

import re
import unicodedata
from dataclasses import dataclass, field
from math import cos, radians, sin
from typing import Literal

from publisher.basics import Layer, record
from publisher.pages.model import Drawn, Words
from publisher.pages.type.fonts import Faces
from publisher.pages.type.styles import TypeStyle
from publisher.pages.type.tongue import Tongue

Align = Literal["left", "centre", "right"]

_PLAIN = str.maketrans({"\u00a0": " ", "\u202f": " ", "\u2009": " ", "\u2011": "-", "\u00ad": ""})
# a number stays with its unit and its fraction, a letter with the word it names, brackets of inches with their number
_BOUND = re.compile(
    r"(?<=\d) (?=(?:mm|cm|cm²|m|in|sq|g|h|kg|N|deg|min|%|°|×|x)\b|[%°×]|\d+/\d)|(?<=\d sq) (?=in\b)"
    r"|(?<=[×x=<>≤≥±]) (?=\d)|(?<=\bpart) (?=[A-Z]\b)|(?<=\bpage) (?=\d)|(?<=\bpages) (?=\d)"
)
_WORD = re.compile(r"[^ ]+")
HANGING, TAIL = (
    frozenset("gjpqyJ"),
    0.24,
)  # letters that hang under the baseline, by this share of the em in both weights
HYPHEN = "\u2010"  # at the end of a line, where a word goes on: unlike the hyphen of a word that has one


@record
class Block:
    """Things placed under each other: what is drawn, and the height in mm from the top of the block to its bottom."""

    drawn: tuple[Drawn, ...]
    height: float


def _parted(text: str) -> list[str]:
    """Return the paragraphs of a text, which blank lines part."""
    return re.split(r"\n\s*\n", text.strip())


def tidy(text: str) -> str:
    """Return the text in composed letters (NFC), with white space of any kind as single blanks and no control letters."""
    text = unicodedata.normalize("NFC", text)
    if not text.isprintable():  # as nearly all text is, which then has no control letters
        text = "".join(c if unicodedata.category(c) != "Cc" else " " for c in text)
    return re.sub("  +", " ", text).strip()


@dataclass(frozen=True, eq=False)
class Setter:
    """Sets type with the fonts of one pack. All sizes in mm. Words of ours are given in English, and set in the language of the pack."""

    faces: Faces
    tongue: Tongue | None = None  # says words of ours in the language of the pack; None for English
    # the makers of pages measure a paragraph before they place it, often more than once
    _broken: dict[tuple[str, TypeStyle, float], tuple[str, ...]] = field(default_factory=dict, repr=False)

    def say(self, text: str) -> str:
        """Return words of ours in the language of the pack; those that are said already stay."""
        return text if self.tongue is None else self.tongue.say(text)

    def meant(self, meaning: str, text: str) -> str:
        """Return words of ours that have several meanings in English, in the one that is meant: ``straight cut``: ``cut 4``."""
        return text if self.tongue is None else self.tongue.meant(meaning, text)

    def width(self, text: str, style: TypeStyle) -> float:
        """Return the width of one line of text."""
        return self.wide(text if self.tongue is None else self.tongue.say(text), style)

    def wide(self, text: str, style: TypeStyle) -> float:
        """Return the width of words that are said already."""
        text = text.translate(_PLAIN)
        if not self.faces.named:
            return self.faces.weight(style.weight).width(text) * style.size
        return sum(face.width(run) for face, run in self.faces.runs(text, style.weight)) * style.size

    def line(
        self,
        text: str,
        style: TypeStyle,
        x: float,
        y: float,
        *,
        align: Align = "left",
        turn: float = 0.0,
        layer: Layer = Layer.PAGE,
        goes_on: bool = False,
    ) -> tuple[Words, ...]:
        """Place one line with its baseline at ``y`` and its start, middle or end at ``x``; turned about that point.

        More than one font in the line makes more than one ``Words``. ``goes_on``: in the paragraph of the line before.
        """
        text = self.say(text).translate(_PLAIN)
        runs = self.faces.runs(text, style.weight)
        widths = [face.width(run) * style.size for face, run in runs]
        at = {"left": 0.0, "centre": -0.5, "right": -1.0}[align] * sum(widths)
        c, s = (cos(radians(turn)), sin(radians(turn))) if turn else (1.0, 0.0)
        placed: list[Words] = []
        for (face, run), width in zip(runs, widths, strict=True):
            placed.append(
                Words(run, face.name, style.size, x + at * c, y + at * s, layer, turn, style.grey, style.tag, goes_on)
            )
            at, goes_on = at + width, True
        return tuple(placed)

    def lines(self, text: str, style: TypeStyle, width: float) -> tuple[str, ...]:
        """Break a paragraph into lines no wider than ``width``, ragged right.

        The fewest lines are used, and among those breaks the ones that leave the lines most alike; the last line is not a
        single short word if that can be helped. A word wider than the line is broken after a hyphen or, failing that, anywhere.
        """
        key = (text, style, width)
        if key not in self._broken:
            self._broken[key] = self._lines(self.say(text), style, width)
            if self.tongue is not None:
                self.tongue.known(*self._broken[key])
        return self._broken[key]

    def _lines(self, text: str, style: TypeStyle, width: float) -> tuple[str, ...]:
        text = _BOUND.sub("\u00a0", tidy(text))
        words = self._words(text if self.tongue is None else self.tongue.bound(text), style, width)
        if not words:
            return ()
        wide = [self.wide(w, style) for w in words]
        blank = self.wide(" ", style)
        return _even_breaks(words, wide, blank, width)

    def paragraph(
        self,
        text: str,
        style: TypeStyle,
        x: float,
        top: float,
        width: float,
        *,
        align: Align = "left",
        layer: Layer = Layer.PAGE,
    ) -> Block:
        """Place a paragraph (blank lines in the text part paragraphs) under ``top``. ``x`` is the left side of the column."""
        at = {"left": x, "centre": x + width / 2, "right": x + width}[align]
        drawn: list[Words] = []
        y = top
        for number, piece in enumerate(_parted(self.say(text))):
            if number:
                y -= style.leading / 2
            for row, text_line in enumerate(self.lines(piece, style, width)):
                base = y - self.drop(style)
                drawn.extend(self.line(text_line, style, at, base, align=align, layer=layer, goes_on=row > 0))
                y -= style.leading
        return Block(tuple(drawn), top - y)

    def height(self, text: str, style: TypeStyle, width: float) -> float:
        """Return the height that a paragraph of this width needs."""
        y = 0.0
        for number, piece in enumerate(_parted(self.say(text))):
            y -= style.leading / 2 if number else 0.0
            for _ in self.lines(piece, style, width):
                y -= style.leading
        return 0.0 - y

    def drop(self, style: TypeStyle) -> float:
        """Return how far under the top of its line a baseline lies: capitals stand in the middle of the leading."""
        cap = self.faces.weight(style.weight).cap_height * style.size
        return (style.leading + cap) / 2

    def cap(self, style: TypeStyle) -> float:
        """Return the height of capitals in mm."""
        return self.faces.weight(style.weight).cap_height * style.size

    def tail(self, text: str, style: TypeStyle) -> float:
        """Return how far letters of a text hang under its baseline (mm): 0 where none does."""
        return TAIL * style.size if HANGING & set(self.say(text)) else 0.0

    def fitting(self, text: str, styles: tuple[TypeStyle, ...], width: float) -> TypeStyle | None:
        """Return the first of the styles (largest first) in which the text fits on one line; None when it fits in none."""
        return next((s for s in styles if self.width(text, s) <= width), None)

    def _words(self, text: str, style: TypeStyle, width: float) -> list[str]:
        """Split at blanks; break what is wider than the column."""
        words: list[str] = []
        for word in _WORD.findall(text):
            while self.wide(word, style) > width and len(word) > 1:
                room = 1
                while room < len(word) - 1 and self.wide(word[: room + 1], style) <= width:
                    room += 1
                bound = word.rfind("\u00a0", 1, room + 1)  # what is kept together comes apart there before a word does
                hyphen = word.rfind("-", 1, room) + 1
                parted = 0 if bound > 0 or hyphen > 1 else self._syllables(word, style, width)
                cut = bound + 1 if bound > 0 else hyphen if hyphen > 1 else parted or room
                words.append(word[:cut].rstrip("\u00a0") + (HYPHEN if parted else ""))
                word = word[cut:]  # noqa: PLW2901
            words.append(word)
        return words

    def _syllables(self, word: str, style: TypeStyle, width: float) -> int:
        """Return how many letters of a word go on a line with a hyphen behind them; 0 where none do, or none are known to."""
        places = self.tongue.hyphens(word) if self.tongue is not None else ()
        return max((place for place in places if self.wide(word[:place] + HYPHEN, style) <= width), default=0)


def _even_breaks(words: list[str], wide: list[float], blank: float, width: float) -> tuple[str, ...]:
    """Choose breaks with the fewest lines, then the least sum of squared gaps (last line free, unless a short lone word)."""
    count = len(words)
    best: list[tuple[int, float, int]] = [(0, 0.0, count)] * (count + 1)  # from word i: lines, cost, next break
    for i in range(count - 1, -1, -1):
        here = (count + 1, 0.0, i + 1)
        used = -blank
        for j in range(i + 1, count + 1):
            used += blank + wide[j - 1]
            if used > width + 1e-9 and j > i + 1:
                break
            gap = max(0.0, width - used) / width
            cost = gap * gap if j < count else (2.0 if i > 0 and used < 0.16 * width and j == i + 1 else 0.0)
            lines, rest, _ = best[j]
            if (one := (lines + 1, cost + rest, j)) < here:
                here = one
        best[i] = here
    broken: list[str] = []
    i = 0
    while i < count:
        j = best[i][2]
        broken.append(" ".join(words[i:j]))
        i = j
    return tuple(broken)
