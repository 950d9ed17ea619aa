"""The tool's own words: each is one of those that pages may say, behind a word that it may stand behind."""

import json
import re
from collections.abc import Iterator
from functools import cache
from importlib.resources import files
from itertools import pairwise

from publisher.basics import Check, Findings
from publisher.proof.checks.frame import MOST_SAID, about, judged, page_name
from publisher.proof.measuring import Case, KnownWords, known_by, whole_words, written_by_others
from publisher.proof.reading import normal

_COMPOUND = re.compile(r"(?<=[#*])-(?=[^\W\d_])")  # with words that are filled in: it is taken down in two
LEAST_INSIDE_NAME = 4  # letters of a name that are left in its midst: fewer stand in many words, as misprints do
OTHERWISE = "en"  # what a pack in a language without a list is in


@judged(
    "proof/own-words",
    "The tool’s own words, spelt and put together as they should be",
    "a buyer acts on them: “lies under” for “lies over”, a wrong letter that makes another word, a word left out in the middle of a "
    "sentence; each word and what stands behind it is one of those that pages of this language may say, or of a text of the design",
    may_be_empty=True,
)
def own_words(case: Case, check: Check[Case]) -> Findings:
    """Look at every visible line of words."""
    if not case.promises.figures:
        return 0
    written = tuple(written_by_others(case.promises))
    known = known_in(case).more(known_by(written))
    names = " ".join(normal(" ".join(written)).lower().split())  # of a name that is broken or cut off, a part is left
    looked = 0
    for page in case.promises.pages:
        lines = [line.text for line in case.lines(page.page)]
        looked += len(lines)
        wrong = [one for one in dict.fromkeys(not_known(lines, known)) if not part_of(one[0], names)]
        for said, line in wrong[:MOST_SAID]:
            what = f": “{said}” in “{line[:80]}” is nothing that pages of this tool say, nor a text of the design"
            yield about(check, page_name(page.page), what, "spell it as the list of the tool’s own words has it")
        if len(wrong) > MOST_SAID:
            yield about(check, page_name(page.page), f": {len(wrong) - MOST_SAID} more words are wrong", "see above")
    return looked


def part_of(said: str, names: str) -> bool:
    """Say whether words are left of a name that was broken or cut off: a few letters only where a word of it begins or ends so."""
    short = len(said) < LEAST_INSIDE_NAME
    return said in names if not short else bool(re.search(rf"(?<!\w){re.escape(said)}|{re.escape(said)}(?!\w)", names))


def not_known(lines: list[str], known: KnownWords) -> Iterator[tuple[str, str]]:
    """Yield each word that is not known, or else two that do not belong together, with the line in which they stand."""
    for line, words in zip(lines, whole_words(lines, known.words), strict=True):
        yield from ((word, line) for word in words if word not in known.words)
        for first, second in pairwise(words):
            if {first, second} <= known.words and not known.follows(first, second):
                yield f"{first} {second}", line


def known_in(case: Case) -> KnownWords:
    """Return what the tool may say in the language of a file, taken down as its pages are."""
    language = case.promises.language.partition("-")[0].lower()
    if case.take_down is None:
        return _listed(language)
    return known_by(case.take_down(_COMPOUND.sub(" ", text)) for text in own_texts(language))


@cache
def _listed(language: str) -> KnownWords:
    return known_by(own_texts(language))


@cache
def own_texts(language: str) -> tuple[str, ...]:
    """Return the list of a language: ``#`` in the place of each figure, ``*`` of words that are filled in."""
    table = json.loads((files("publisher.proof.checks") / "own_words.json").read_text(encoding="utf-8"))
    return tuple(table.get(language, table[OTHERWISE]))
