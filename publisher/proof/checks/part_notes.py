"""What a template says is done to its piece: nothing that the piece does not have."""

import re
from collections.abc import Callable
from dataclasses import replace

from publisher.basics import Check, Findings, PrintPromise, Promises
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import IN_MM, Case, figures_in, pieces_on
from publisher.proof.reading import normal

BEHIND = "inside face"  # beside glue lines that belong on the face underneath
SHOWN_ON = ("templates", "tiles")
Has = Callable[[re.Match[str], PrintPromise, Promises], bool]
COVERINGS = {"glue paper": "paper", "paper": "paper", "lay tape": "tape", "band": "tape"}


def _covered(said: re.Match[str], piece: PrintPromise, _: Promises) -> bool:
    """Say whether a piece is covered before it is bent, with this and on this face."""
    return piece.bend is not None and (piece.bend.covering, piece.bend.covered) == (COVERINGS[said[1].lower()], said[2])


def _slit(said: re.Match[str], piece: PrintPromise, promises: Promises) -> bool:
    """Say whether this face of a piece is slit so deep, and its lines lie on the other face where they are to be carried round."""
    if piece.bend is None or piece.bend.slit != said[1]:
        return False
    deep = all(one.is_of((piece.bend.depth,), IN_MM[one.unit]) for one in figures_in(said[2]) if one.unit in IN_MM)
    faces = {side.face for side in promises.sides if side.part == piece.part}
    return deep and (not faces or any((face in ("", said[1])) is not bool(said[3]) for face in faces))


NOTES: tuple[tuple[re.Pattern[str], str, Has], ...] = (
    (
        re.compile(r"Glue lines: carry their ends round|Klebelinien: ihre Enden um the Kanten"),
        "glue lines on the face underneath",
        lambda _, piece, __: BEHIND in piece.names,
    ),
    (
        re.compile(r"Rabbet: cut the foam away behind|Falz: dahinter its foam wegschneiden"),
        "a rabbet",
        lambda _, piece, __: bool(piece.strips),
    ),
    (
        re.compile(r"Bevel: the face underneath ends|bevel: the Unterseite endet"),
        "a bevel",
        lambda _, piece, __: any(word.kind == "bevel" for word in piece.words),
    ),
    (
        re.compile(r"Copy .top. to the foam|.top. on its foam übertragen"),
        "an upper end that is named",
        lambda _, piece, promises: any(side.part == piece.part and side.top for side in promises.sides),
    ),
    (
        re.compile(r"(Glue paper|Lay tape) over the whole (inside|outside) face before"),
        "a face that is covered so before it is bent",
        _covered,
    ),
    (
        re.compile(r"Vor dem Biegen (paper|Band) over the ganze (inside|outside) face"),
        "a face that is covered so before it is bent",
        _covered,
    ),
    (
        re.compile(r"Slit the (inside|outside) face, ([^;]*?) deep(; carry)?"),
        "slits of that face and depth, with such lines",
        _slit,
    ),
    (
        re.compile(r"Die (inside|outside) face schlitzen, ([^;]*?) tief(; the Enden)?"),
        "slits of that face and depth, with such lines",
        _slit,
    ),
)
"""What is said, taken down in English, of which property, and whether a piece has it as it is said."""


@judged(
    "proof/part-note",
    "Templates ask for nothing that a piece does not have",
    "who is told to carry glue lines round, to cut a rabbet or to bevel where the piece has none, or to cover or slit the wrong face, "
    "spoils it: a page of templates says so of what at least one of its pieces has",
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
        shows = tuple(one for one in case.promises.sides if any(at.page == page.page for at in case.carried(one.key)))
        promises = replace(
            case.promises, sides=shows or case.promises.sides
        )  # of prints here, not of their mirror images
        for words, what, has in NOTES:
            if any(not any(has(found, piece, promises) for piece in pieces) for found in words.finditer(said)):
                yield about(
                    check,
                    page_name(page.page),
                    f" asks for {what}, which none of its pieces has",
                    "say it of the pieces that have it",
                )
    return looked
