"""What a template says is done to its piece: nothing that the piece does not have."""

import re
from collections.abc import Callable

from publisher.basics import Check, Findings, PrintPromise, Promises
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import Case, pieces_on
from publisher.proof.reading import normal

BEHIND = "inside face"  # beside glue lines that belong on the face underneath
SHOWN_ON = ("templates", "tiles")
Has = Callable[[PrintPromise, Promises], bool]

NOTES: tuple[tuple[re.Pattern[str], str, Has], ...] = (
    (
        re.compile(r"Glue lines: carry their ends round"),
        "glue lines on the face underneath",
        lambda piece, _: BEHIND in piece.names,
    ),
    (re.compile(r"Rabbet: cut the foam away behind"), "a rabbet", lambda piece, _: bool(piece.strips)),
    (
        re.compile(r"Bevel: the face underneath ends"),
        "a bevel",
        lambda piece, _: any(word.kind == "bevel" for word in piece.words),
    ),
    (
        re.compile(r"Copy .top. to the foam"),
        "an upper end that is named",
        lambda piece, promises: any(side.part == piece.part and side.top for side in promises.sides),
    ),
)
"""What is said, of which property, and whether a piece has it."""


@judged(
    "proof/part-note",
    "Templates ask for nothing that a piece does not have",
    "who is told to carry glue lines round, to cut a rabbet or to bevel where the piece has none spoils it: a page of templates says so of "
    "what at least one of its pieces has",
    may_be_empty=True,
)
def notes_of_parts(case: Case, check: Check[Case]) -> Findings:
    """Look for each note on the pages that show parts at true size."""
    looked = 0
    shown = pieces_on(case.promises)
    for page in case.promises.pages:
        here = {part for number, part in shown if number == page.page}
        if page.kind not in SHOWN_ON or not here:
            continue
        looked += 1
        pieces = [piece for piece in case.promises.prints if piece.part in here]
        said = normal(" ".join(line.text for line in case.lines(page.page)))
        for words, what, has in NOTES:
            if words.search(said) and not any(has(piece, case.promises) for piece in pieces):
                yield about(
                    check,
                    page_name(page.page),
                    f" asks for {what}, which none of its pieces has",
                    "say it of the pieces that have it",
                )
    return looked
