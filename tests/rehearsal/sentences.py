"""What the steps say of joints in words: which board ends against which, and how far what is laid on reaches over the walls under it."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from tests.rehearsal.pages import ReadPage

PART = r"[A-Z]\d*"
PARTS = rf"({PART}(?:(?:, | and ){PART})*)"
MARKS = r"(?: at ([a-z]{1,2}(?:(?:, | and )[a-z]{1,2})*))?"
ENDS = re.compile(rf"\b{PARTS} ends? at the inside face of ({PART}|the next){MARKS}\.")
NEXT = re.compile(rf"One ({PART}) ends at the inside face of the next{MARKS}\.")
LINE = re.compile(rf"({PART}) and (?:the next )?({PART}) lie in one plane, edge to edge{MARKS}\.")
OVER = re.compile(rf"({PART}) stands out ([^.]*(?:\.\d[^.]*)*) over {PARTS}, measured along its underside\.")
LEVEL = re.compile(rf"({PART}) ends level with the outside of {PARTS}\.")
WITHIN = re.compile(rf"({PART}) ends ([^.]*(?:\.\d[^.]*)*) inside the outside of {PARTS}\.")
PAST_ENDS = re.compile(rf"({PART}) stands out ([^.]*(?:\.\d[^.]*)*) over both ends of {PARTS}\.")
WITHIN_ENDS = re.compile(rf"({PART}) ends ([^.]*(?:\.\d[^.]*)*) inside both ends of {PARTS}\.")
LEVEL_ENDS = re.compile(rf"({PART}) ends level with both ends of {PARTS}\.")
LEVELS = re.compile(rf"\b(?:All )?{PARTS} (?:stand level at the (foot)|are level at the (top)){MARKS}\.")
TURNED = re.compile(rf"Turn ({PART}) so that its [“\"]([a-z]{{1,2}})[”“\"] lies over the [“\"]\2[”“\"] of ({PART})\.")
EITHER = re.compile(rf"Either face of {PARTS} may be its outside\.")
MM = re.compile(r"(\d+(?:\.\d+)?) ?mm")


@dataclass(frozen=True, slots=True)
class Ends:
    """Pieces of a part end at the inside face of another one, or lie in one plane with it, ``in_line``: at these match letters, or
    wherever they meet."""

    part: str
    at: str
    marks: frozenset[str] = frozenset()
    in_line: bool = False


@dataclass(frozen=True, slots=True)
class Reaches:
    """A part that is laid on walls reaches so many mm over the outside of one of them, or over both its ends."""

    part: str
    wall: str
    far: float
    at_ends: bool = False


@dataclass(frozen=True, slots=True)
class Levels:
    """Pieces of these parts are level at their foot or at their top: at these match letters, or wherever they meet."""

    parts: frozenset[str]
    end: str
    marks: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Turned:
    """A layer lies with its letter ``mark`` over that of the layer below."""

    part: str
    on: str
    mark: str


@dataclass(frozen=True, slots=True)
class Sentences:
    """All that steps say so. ``either``: parts of which either face may be the outside."""

    ends: tuple[Ends, ...] = ()
    reaches: tuple[Reaches, ...] = ()
    levels: tuple[Levels, ...] = ()
    turned: tuple[Turned, ...] = ()
    either: frozenset[str] = frozenset()


NOTHING_SAID = Sentences()


def sentences_of(pages: Iterable[ReadPage]) -> Sentences:
    """Return what the pages of steps say of joints."""
    texts = [flowing(page) for page in pages if page.shows_steps]
    ends = dict.fromkeys(one for text in texts for one in _ends(text))
    reaches = dict.fromkeys(one for text in texts for one in _reaches(text))
    levels = dict.fromkeys(
        Levels(frozenset(_listed(found[1])), found[2] or found[3], frozenset(_listed(found[4])))
        for text in texts
        for found in LEVELS.finditer(text)
    )
    turned = dict.fromkeys(Turned(found[1], found[3], found[2]) for text in texts for found in TURNED.finditer(text))
    either = frozenset(part for text in texts for found in EITHER.finditer(text) for part in _listed(found[1]))
    return Sentences(tuple(ends), tuple(reaches), tuple(levels), tuple(turned), either)


def flowing(page: ReadPage) -> str:
    """Return a page's words with lines joined that stand under each other."""
    return " ".join(line.text for line in sorted(page.lines, key=lambda line: (round(line.x), -line.y)))


def _ends(text: str) -> Iterator[Ends]:
    for found in ENDS.finditer(text):
        if found[2] != "the next":
            yield from (Ends(part, found[2], frozenset(_listed(found[3]))) for part in _listed(found[1]))
    yield from (Ends(found[1], found[2], frozenset(_listed(found[3])), True) for found in LINE.finditer(text))
    yield from (Ends(found[1], found[1], frozenset(_listed(found[2]))) for found in NEXT.finditer(text))


def _reaches(text: str) -> Iterator[Reaches]:
    for pattern, sign, at_ends in (
        (OVER, 1.0, False),
        (WITHIN, -1.0, False),
        (PAST_ENDS, 1.0, True),
        (WITHIN_ENDS, -1.0, True),
    ):
        for found in pattern.finditer(text):
            if (far := MM.search(found[2])) is not None:
                yield from (Reaches(found[1], wall, sign * float(far[1]), at_ends) for wall in _listed(found[3]))
    for pattern, at_ends in ((LEVEL, False), (LEVEL_ENDS, True)):
        for found in pattern.finditer(text):
            yield from (Reaches(found[1], wall, 0.0, at_ends) for wall in _listed(found[2]))


def _listed(said: str | None) -> list[str]:
    return re.split(r", | and ", said) if said else []
