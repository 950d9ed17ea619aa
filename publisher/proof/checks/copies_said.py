"""How many copies of a part any page says: “2 × A” is one of the numbers that were worked out for A, wherever it stands."""

import re
from collections.abc import Iterator

from publisher.basics import Check, Findings, Promises
from publisher.proof.checks.frame import MOST_SAID, about, judged, page_name
from publisher.proof.measuring import Case

COPIES = re.compile(r"(?<![\w.,×/-])(\d+) × ([A-Z]{1,3}\d*(?:\.\d+)?)(?![\w.]|[ \u00a0]?\d)")
ADDED = re.compile(r"copies of (.+) that step \d+ adds")


@judged(
    "proof/copies-said",
    "As many copies as were worked out, wherever a page names them",
    "who reads “2 × A” takes or cuts two: the number is how many are cut, with spares or without, turned over or not, how many a step "
    "takes in hand or adds, or the one print that is taped; a picture that was promised may count more closely",
    may_be_empty=True,
)
def copies_said(case: Case, check: Check[Case]) -> Findings:
    """Look at every number before the letter of a part in visible words."""
    known: dict[str, set[int]] = {}
    for letter, count in _counts(case.promises):
        if count:
            known.setdefault(letter, set()).add(count)
    looked = 0
    for page in case.promises.pages:
        wrong = []
        for line in case.lines(page.page):
            for said, letter in COPIES.findall(line.text):
                if letter in known:
                    looked += 1
                    if int(said) not in known[letter]:
                        wrong.append(f"{said} × {letter}")
        for one in wrong[:MOST_SAID]:
            yield about(
                check,
                page_name(page.page),
                f": “{one}” is no number of copies that was worked out",
                "say as many as are cut",
            )
    return looked


def _counts(promises: Promises) -> Iterator[tuple[str, int]]:
    """Yield each letter of a part with each number of copies that a page may say of it."""
    letters = {piece.part: piece.letter for piece in promises.prints} | {row.part: row.letter for row in promises.rows}
    for letter in letters.values():
        yield letter, 1  # its template
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
