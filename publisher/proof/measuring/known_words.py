"""Which words follow each other in texts that are known: in the tool's own sayings, and in what was promised of a design.

A saying has ``#`` for each figure with its unit, and ``*`` for words that are filled in: another saying, or a text of the design.
"""

import re
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from publisher.basics import Promises, record
from publisher.proof.reading import normal

FIGURE, FILLED, STOP = "#", "*", ";"
HYPHEN = "\u2010"
UNITS = r"mm|cm²|cm|sq in|in|ft|kg|g|h|N|min|%|°|m"
LATE = (
    "cm",
    "ft",
    "g",
    "h",
    "kg",
    "m",
    "min",
    "mm",
    "sq",
)  # units at the start of a line, their number at the end of another
_NUMBER = re.compile(rf"(?<![^\W\d_])\d[\d.,/-]*(?: ?(?:{UNITS})(?![\w²])|(?![^\W_]))")
_MORE_FIGURES = re.compile(r"#(?: ?[×()–-]| to| and|, )* ?(?=#)")
_TOKEN = re.compile(r"[^\W_]+|[#*]|[^\w\s*#]+")
_PARTS = re.compile(r"[.!?;:,·]\s|\s[·/]\s")
MOST_BROKEN = 40  # lines over which a narrow column breaks one word


def words_in(text: str) -> list[str]:
    """Return the words of a text in small letters, a figure with its unit and a code such as A4 as ``#``, signs between words as ``;``."""
    figures = _MORE_FIGURES.sub("", _NUMBER.sub(FIGURE, normal(text)))
    return list(map(_word, _TOKEN.findall(figures.lower())))


def _word(token: str) -> str:
    if token.isalpha() or token in (FIGURE, FILLED):
        return token
    return FIGURE if token[0].isalnum() else STOP


@record
class KnownWords:
    """What is known: all words, which comes behind which, and with which a text or a part of one begins and ends."""

    words: frozenset[str]
    pairs: frozenset[tuple[str, str]]
    begins: frozenset[str]
    ends: frozenset[str]

    def follows(self, first: str, second: str) -> bool:
        """Say whether one word may stand behind another."""
        if (first, second) in self.pairs or first == second == STOP:
            return True
        if STOP in (first, second):
            return first in self.ends or second in self.begins
        filled = (first, FILLED) in self.pairs and second in self.begins
        return filled or ((FILLED, second) in self.pairs and first in self.ends)

    def more(self, other: "KnownWords") -> "KnownWords":
        """Return what is known by either."""
        return KnownWords(
            self.words | other.words, self.pairs | other.pairs, self.begins | other.begins, self.ends | other.ends
        )


def known_by(texts: Iterable[str]) -> KnownWords:
    """Return what is known by texts."""
    pairs: set[tuple[str, str]] = set()
    words, begins, ends = {FIGURE, STOP, *LATE}, {FIGURE, *LATE}, {FIGURE, *LATE}
    for text in texts:
        said = words_in(text)
        words.update(said)
        pairs.update(pairwise(said))
        for part in filter(None, map(words_in, _PARTS.split(text))):
            begins.add(part[0])
            ends.add(part[-1])
    return KnownWords(frozenset(words), frozenset(pairs), frozenset(begins - {FILLED}), frozenset(ends - {FILLED}))


def written_by_others(promises: Promises) -> Iterator[str]:
    """Yield the texts that other rooms promised of a design: what the designer wrote, names, boards, papers, sentences, words in
    pictures."""
    yield from (promises.title, *promises.given)
    if promises.paper:
        yield promises.paper.name.replace("_", " ")  # it stands in sentences like any other name
    yield from (sentence.text for sentence in promises.sentences)
    yield from (text for drawing in promises.drawings for text, _ in drawing.labels)
    yield from (name for row in promises.rows for name in (row.name, f"{row.letter} {FILLED}", row.board))
    yield from (name for board in promises.boards for name in (board.board, board.called, board.sold_as))
    yield from (way.label for way in promises.sheets)
    yield from (seam.label for seam in promises.seams)
    yield from (place.letter for layout in promises.layouts for place in layout.places)
    for piece in promises.prints:
        yield from (piece.letter, piece.board, *piece.names, *(word.text for word in piece.words))


def whole_words(lines: Sequence[str], known: frozenset[str]) -> list[list[str]]:
    """Return the words of lines one by one; a word that is broken at the end of a line stands whole there, and the rest of it nowhere.

    A word is broken with a hyphen, or without where it is longer than its column is wide: then what lines begin with completes it.
    """
    said = [words_in(line) for line in lines]
    for place, words in enumerate(said):
        if not words or not _broken(lines[place], words, known):
            continue
        whole = ""
        for at, line in enumerate(said[place : place + MOST_BROKEN], place):
            if not line:
                break
            whole += _end(line) if at == place else line[0]
            if at > place and whole in known:
                del words[len(words) - 1 - (words[-1] == STOP) :]
                words.append(whole)
                for rest in said[place + 1 : at + 1]:
                    del rest[0]
                break
            if at > place and len(line) > 1:
                break
    return said


def _broken(line: str, words: Sequence[str], known: frozenset[str]) -> bool:
    return line.endswith(HYPHEN) or words[-1] not in known


def _end(words: Sequence[str]) -> str:
    """Return the last word of a line, before the hyphen that parts it."""
    return words[-2] if words[-1] == STOP and len(words) > 1 else words[-1]
