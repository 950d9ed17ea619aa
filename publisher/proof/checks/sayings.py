"""What each kind of page must say: sentences of the tool's own that a buyer acts on, required whoever makes the page."""

import json
import re
from collections.abc import Callable, Iterator
from functools import cache
from importlib.resources import files
from typing import Any

from publisher.basics import Check, Findings, PagePromise, Promises, record
from publisher.proof.checks.frame import MOST_SAID, about, judged, page_name
from publisher.proof.measuring import HYPHEN, SCALE, USES, Case, holds
from publisher.proof.reading import TextLine, normal, unbroken

EVERY_KIND = "*"
FIGURE, LIMITS = "#", "{limits}"
_NUMBER = r"\d[\d.,/-]*"
_LENGTH = rf"{_NUMBER}(?:(?:×|to|and){_NUMBER})?(?:mm|in)?(?:\({_NUMBER}(?:(?:×|to|and){_NUMBER})?(?:mm|in)\))?"
_LIMITS = (  # in either order of units
    r"(?:([\d.]+)(?:and|to)([\d.]+)mm(?:\([\d.]+(?:and|to)[\d.]+in\))?|[\d.]+(?:and|to)[\d.]+in\(([\d.]+)(?:and|to)([\d.]+)mm\))"
)
INWARDS = 0.1 + 1e-6  # mm by which limits are rounded inwards
HAIR_OFF = 1e-6
NO_PAGE = 0
BEGINS = (
    "cover",
    "start",
)  # kinds of the first page of a file that is whole: it has pages of all kinds that have something to say
SILENT = ("licence", "overview", "shop", "tiles")  # kinds of pages of which no saying is asked


@record
class Saying:
    """A saying: its ``name``, in which ``purposes`` of files and on which kinds of ``pages`` it stands, under which circumstances; whether
    on ``each`` of these pages or on one of them; its ``forms`` by language, one of which is enough."""

    name: str
    purposes: tuple[str, ...]
    pages: tuple[str, ...]
    when: tuple[str, ...]
    each: bool
    forms: tuple[tuple[str, tuple[str, ...]], ...]

    def asked_of(self, promises: Promises) -> bool:
        """Tell whether a file must say it, by what holds of it."""
        return promises.purpose in self.purposes and all(holds(promises, name) for name in self.when)

    def of(self, promises: Promises) -> list[PagePromise]:
        """Return the pages of a file on which the saying is looked for, by their kind."""
        return [page for page in promises.pages if EVERY_KIND in self.pages or page.kind in self.pages]

    def said_in(self, language: str) -> tuple[str, ...]:
        """Return its forms in the language of a file; the English ones where the table has none."""
        known = dict(self.forms)
        return known.get(language.partition("-")[0].lower(), known["en"])


@record
class SayingForm:
    """A form of a saying: its ``words`` in small letters without blanks; between which ends (mm) its figures lie, where it says limits."""

    words: str
    limits: tuple[tuple[float, float], ...] = ()

    def stands_in(self, told: str) -> bool:
        """Say whether it is said, its limits those of a square."""
        if FIGURE not in self.words and LIMITS not in self.words:  # most have no figures, and need no pattern
            return self.words in told.lower()
        return any(self._are_limits(found) for found in _pattern(self.words).finditer(told))

    def _are_limits(self, found: re.Match[str]) -> bool:
        said = [float(figure) for figure in found.groups() if figure]
        return not (self.limits and said) or any(
            0.0 <= said[0] - least + HAIR_OFF <= INWARDS and 0.0 <= most - said[1] + HAIR_OFF <= INWARDS
            for least, most in self.limits
        )


@judged(
    "proof/saying",
    "What every pack must say",
    "how to print, measure, trace, cut, lay out and glue, and what not to do, stands on the page where it is done: a sentence that a page "
    "maker forgot is promised by no page; where it says what a square may measure, those are the limits that were worked out",
    may_be_empty=True,
)
def sayings_stand(case: Case, check: Check[Case]) -> Findings:
    """Look for each saying on its pages, in the language of the file."""
    told = {page.page: close(case.lines(page.page)) for page in case.promises.pages}
    whole = any(page.page == 1 and page.kind in BEGINS for page in case.promises.pages)
    looked = 0
    lacking: dict[int, list[str]] = {}
    for one in case.promises.pages if case.promises.figures else ():
        if one.kind not in known_kinds():
            what = f" is of a kind of which nobody knows what it must say: “{one.kind}”"
            yield about(check, page_name(one.page), what, "name its kind as the list of sayings does")
    for saying in sayings():
        if not case.promises.figures or not saying.asked_of(case.promises):
            continue
        pages = saying.of(case.promises)
        if not (pages or whole):
            continue
        looked += len(pages)
        forms = list(forms_of(saying, case.promises, case.take_down))
        for number in lacking_on(pages, saying.each, told, forms):
            lacking.setdefault(number, []).append(saying.said_in(case.promises.language)[0])
    for number, said in sorted(lacking.items()):
        for words in said[:MOST_SAID]:
            yield about(check, _where(number), f": it does not say “{words}”", "say it where a buyer does it")
        if len(said) > MOST_SAID:
            yield about(
                check,
                _where(number),
                f": {len(said) - MOST_SAID} more sayings are left out",
                "see the findings above",
            )
    return looked


def _where(number: int) -> str:
    """Return how a message calls what lacks a saying."""
    return "the file" if number == NO_PAGE else page_name(number)


def lacking_on(pages: list[PagePromise], each: bool, told: dict[int, str], forms: list[SayingForm]) -> list[int]:
    """Return the pages that lack a saying: each that does, or the first where none of them has it; 0 where there is no such page at all,
    as where its kind is called otherwise."""
    if not pages:
        return [] if each else [NO_PAGE]
    without = [page.page for page in pages if not any(form.stands_in(told[page.page]) for form in forms)]
    if each:
        return without
    whole = "".join(told[page.page] for page in pages)  # a paragraph may go on on the next page
    return without[:1] if len(without) == len(pages) and not any(form.stands_in(whole) for form in forms) else []


@cache
def titles_for(key: str, language: str) -> tuple[str, ...]:
    """Return under which titles stands what is to be read before a tool or material is used, by its key."""
    own = language.partition("-")[0].lower()
    named = {saying.name.partition(" of ")[0] for saying in sayings() if f"{USES}{key}" in saying.when}
    return tuple(row.get(own, row["en"]) for name, row in sayings_table()["titles"].items() if name in named)


def said_under(name: str, language: str, take_down: Callable[[str], str] | None) -> list[str]:
    """Return the forms of the saying of this name in a language, taken down as the pages are."""
    forms = next(saying for saying in sayings() if saying.name == name).said_in(language)
    return [normal(take_down(form) if take_down is not None else form) for form in forms]


@cache
def sayings() -> tuple[Saying, ...]:
    """Return the table."""
    return tuple(
        Saying(
            row["name"], tuple(row["files"]), tuple(row["pages"]), tuple(row["when"]), row["each"],
            tuple((language, tuple(row[language])) for language in row if language not in ("name", "files", "pages", "when", "each")),
        )
        for row in sayings_table()["sayings"]
    )  # fmt: skip


@cache
def sayings_table() -> dict[str, Any]:
    """Return the table as it is written."""
    table: dict[str, Any] = json.loads((files("publisher.proof.checks") / "sayings.json").read_text(encoding="utf-8"))
    return table


@cache
def known_kinds() -> frozenset[str]:
    """Return the kinds of pages that there are."""
    return frozenset((*SILENT, *(kind for saying in sayings() for kind in saying.pages)))


def forms_of(saying: Saying, promises: Promises, take_down: Callable[[str], str] | None) -> Iterator[SayingForm]:
    """Yield the forms of a saying in words without blanks, taken down as the pages are."""
    limits = limits_of(promises)
    for form in saying.said_in(promises.language):
        english = take_down(form) if take_down is not None else form
        yield SayingForm(joined(english).lower(), limits)


def limits_of(promises: Promises) -> tuple[tuple[float, float], ...]:
    """Return between which readings (mm) each kind of square of a file is true; () where nobody worked it out."""
    shares = sorted(figure.value for figure in promises.figures if figure.name.endswith(SCALE))
    sides = sorted({round(line.length, 3) for line in promises.lengths if line.purpose == "calibration"})
    return tuple((side * shares[0], side * shares[-1]) for side in sides) if len(shares) > 1 else ()


def says_limits(words: str, limits: tuple[tuple[float, float], ...]) -> bool:
    """Say whether words say between which readings a square is true."""
    return SayingForm(LIMITS, limits).stands_in(joined(words))


@cache
def _pattern(words: str) -> re.Pattern[str]:
    """Return what finds words with figures and limits in them."""
    pattern = re.escape(words).replace(re.escape(FIGURE), _LENGTH)
    return re.compile(pattern.replace(re.escape(LIMITS), _LIMITS), re.IGNORECASE)


def close(lines: tuple[TextLine, ...]) -> str:
    """Return the words of lines without blanks, those whole that a hyphen parts at the end of a line."""
    return joined(" ".join(line.text for line in lines))


def joined(words: str) -> str:
    """Return words as ``close`` does."""
    return re.sub(r"\s", "", unbroken(normal(words))).replace(HYPHEN, "-")
