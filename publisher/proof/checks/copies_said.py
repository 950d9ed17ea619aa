"""How many copies of a part any page says: “2 × A” is one of the numbers that were worked out for A, wherever it stands."""

import re
from collections.abc import Iterator

from publisher.basics import Box, Check, Findings, Promises
from publisher.proof.checks.frame import MOST_SAID, about, judged, page_name
from publisher.proof.measuring import Case, lines_in

COPIES = re.compile(r"(?<![\w.,×/-])(\d+) × ([A-Z]{1,3}\d*(?:\.\d+)?)(?![\w.]|[ \u00a0]?\d)")
OF_TEMPLATES = ("act:card:does:", "act:tape:does:")
ADDED = re.compile(r"copies of (.+) that step \d+ adds(?: to each)?")


@judged(
    "proof/copies-said",
    "As many copies as were worked out, wherever a page names them",
    "who reads “2 × A” takes or cuts two: the number is how many are cut, with spares or without, turned over or not, how many a step "
    "takes in hand or adds, to all or to each of several alike; of templates, where they are made of prints, it is one of each; a picture "
    "that was promised may count more closely",
    may_be_empty=True,
)
def copies_said(case: Case, check: Check[Case]) -> Findings:
    """Look at every number before the letter of a part in visible words."""
    known: dict[str, set[int]] = {}
    for letter, count in _counts(case.promises):
        known.setdefault(letter, set()).update({count} - {0})
    looked = 0
    for page in case.promises.pages:
        wrong = []
        single = {id(line) for box in _of_templates(case, page.page) for line in lines_in(case.lines(page.page), box)}
        for line in case.lines(page.page):
            for said, letter in COPIES.findall(line.text):
                if letter in known:
                    looked += 1
                    allowed = known[letter] if id(line) not in single else {1}
                    if int(said) not in allowed:
                        wrong.append(f"{said} × {letter}")
        for one in wrong[:MOST_SAID]:
            yield about(
                check,
                page_name(page.page),
                f": “{one}” is no number of copies that was worked out",
                "say as many as are cut",
            )
    return looked


def _of_templates(case: Case, page: int) -> Iterator[Box]:
    """Yield where a page shows the templates that are made of prints: one of each part, however many pieces are cut by it."""
    yield from (where.box for where in case.carried_on(page) if where.key.startswith(OF_TEMPLATES))


def _counts(promises: Promises) -> Iterator[tuple[str, int]]:
    """Yield each letter of a part with each number of copies that a page may say of it."""
    letters = {piece.part: piece.letter for piece in promises.prints} | {row.part: row.letter for row in promises.rows}
    yield from ((letter, 0) for letter in letters.values())  # known, whatever is said of it
    for row in promises.rows:
        each = (row.count, row.spare, row.mirrored, row.count + row.spare, row.count - row.mirrored)
        yield from ((row.letter, count) for count in each)
    yield from ((one.letter, one.count) for one in promises.done)
    yield from (
        part for one in promises.needed for part in one.parts
    )  # of a layer that is cut in pieces, each by its own letter
    labels = (text for drawing in promises.drawings for text, _ in drawing.labels)
    written = (
        *promises.given,
        *(name for piece in promises.prints for name in piece.names),
    )  # a part may be named “12 × C”
    yield from ((letter, int(said)) for text in (*labels, *written) for said, letter in COPIES.findall(text))
    for figure in promises.figures:
        if found := ADDED.fullmatch(figure.name):
            yield from ((letter, round(figure.value)) for part, letter in letters.items() if part == found[1])
