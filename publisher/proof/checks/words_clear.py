"""No line, dark area or other word runs through the letters of a word: what stands on white paper of its own is clear of the rest."""

from collections import Counter
from collections.abc import Iterator

import numpy as np
import shapely

from publisher.basics import Check, Findings
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import PALEST_LINE, Case, LettersSeen
from publisher.proof.reading import COVERS_FROM

LINE_THROUGH = 0.3  # mm of lines in the letters of one run: less touches the corner of a letter's box
AREA_OVER = 0.05  # mm² of a dark area, or of other words, in them


@judged(
    "proof/words-clear",
    "Nothing runs through a word",
    "a line through a letter makes another letter of it, or strikes the word out; what white paper hides behind a word is not there: "
    f"at most {LINE_THROUGH:g} mm of line, and {AREA_OVER:g} mm² of a dark area or of other words, lie in the boxes round letters",
    may_be_empty=True,
)
def words_clear(case: Case, check: Check[Case]) -> Findings:
    """Look at the letters of every visible run of words; the first fault of each page is named."""
    looked = 0
    for page in case.file.pages:
        letters = case.letters(page.number)
        looked += len(letters.areas)
        if not len(letters.areas):
            continue
        met = [
            (run, f"{share:.1f} mm of lines run through") for run, share in _lines_through(case, page.number, letters)
        ]
        met += [(run, "a dark area lies over") for run in _areas_over(case, page.number, letters)]
        met += [(run, "other words lie over") for run in _words_over(letters)]
        if met:
            run, how = met[0]
            text = letters.runs[run].text.strip()[:60]
            more = len({run for run, _ in met}) - 1
            what = f": {how} the letters of “{text}”{f', and {more} more words are met so' if more else ''}"
            yield about(check, page_name(page.number), what, "set the words beside it, or on white paper of their own")
    return looked


def _lines_through(case: Case, number: int, letters: LettersSeen) -> list[tuple[int, float]]:
    """Return the runs through whose letters more of visible lines runs than is let go, and how much (mm)."""
    ink = case.ink(number)
    if ink is None or not len(ink.piece):
        return []
    lines = shapely.linestrings(ink.points, indices=np.repeat(np.arange(len(ink.piece)), np.diff(ink.starts)))
    which, letter = letters.tree.query(lines, predicate="intersects")
    shares = shapely.length(shapely.intersection(lines[which], letters.areas[letter]))
    met: Counter[int] = Counter()
    for run, share in zip(letters.owner[letter].tolist(), shares.tolist(), strict=True):
        met[run] += share
    return [(run, share) for run, share in sorted(met.items()) if share > LINE_THROUGH]


def _areas_over(case: Case, number: int, letters: LettersSeen) -> Iterator[int]:
    """Yield the runs with letters of which a dark area, as dark as they are, hides something."""
    for _, grey, box, area in case.covers(number):
        if grey is None or grey > PALEST_LINE:
            continue
        near = letters.tree.query(shapely.box(*box.sides))
        near = near[[abs(letters.runs[run].grey - grey) <= COVERS_FROM for run in letters.owner[near].tolist()]]
        if len(near):
            over = shapely.area(shapely.intersection(area(box), letters.areas[near])) > AREA_OVER
            yield from sorted(set(letters.owner[near[over]].tolist()))


def _words_over(letters: LettersSeen) -> list[int]:
    """Return the runs whose letters lie on those of another one."""
    one, other = letters.tree.query(letters.areas, predicate="intersects")
    apart = letters.owner[one] < letters.owner[other]
    one, other = one[apart], other[apart]
    over = shapely.area(shapely.intersection(letters.areas[one], letters.areas[other])) > AREA_OVER
    return sorted(set(letters.owner[other[over]].tolist()))
