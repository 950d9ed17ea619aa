"""Every line and every letter that the walk finds is dark in the pixels of a second reader, and nothing else of a page is."""

from publisher.basics import Check, Findings
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import BESIDE_INK, PAGE_DPI, SEEN_STRETCH, STRAY_DOT, Case, PageSight, Unseen

HINT = "look for something that covers, cuts or fades what is drawn, and take it out"


@judged(
    "proof/ink-unseen",
    "Every line and letter seen in pixels",
    f"whatever hides a line or a letter, a buyer cannot read it: in pixels of {PAGE_DPI:g} dpi there is a dark one in every "
    f"{SEEN_STRETCH:g} mm of each line, and in each letter",
)
def ink_unseen(case: Case, check: Check[Case]) -> Findings:
    """Name for each page the first line and the first words of which something cannot be seen."""
    looked = 0
    for sight in _sights(case):
        looked += sight.stretches + sight.letters
        for unseen, what in ((sight.line, "a line"), (sight.words, "a letter of “{}”")):
            if unseen is not None:
                yield about(check, page_name(sight.page), _said(unseen, what.format(unseen.text[:60])), HINT)
    return looked


def _said(unseen: Unseen, what: str) -> str:
    x, y = unseen.at
    more = f", and {unseen.more} more like it" if unseen.more else ""
    return f": {what} at {x:.1f}, {y:.1f} mm is drawn, and is not dark in pixels{more}"


@judged(
    "proof/ink-stray",
    "Nothing dark in pixels that was not drawn",
    "what one reader draws and another does not know of may be printed over a line to cut or a word: a pixel darker than "
    f"{STRAY_DOT} of 255 touches a line, an area, a picture or a word, or lies {BESIDE_INK} beside one that does",
)
def ink_stray(case: Case, check: Check[Case]) -> Findings:
    """Name for each page the dark pixels that no ink explains."""
    sights = _sights(case)
    for sight in sights:
        if sight.stray is not None:
            x, y = sight.stray.at
            many = sight.stray.dots
            what = f": {many} pixel{' is' if many == 1 else 's are'} dark where nothing was drawn, one at {x:.1f}, {y:.1f} mm"
            hint = "look for what draws there in a way of its own, such as a pattern or a note, and take it out"
            yield about(check, page_name(sight.page), what, hint, float(many), 0.0)
    return len(sights)


def _sights(case: Case) -> tuple[PageSight, ...]:
    """Return what the pixels show of each page; raises TooMuch where a page was too much to follow."""
    for promise in case.promises.pages:
        case.ink(promise.page)
        case.hidden(promise.page)
    return case.pixels().sights
