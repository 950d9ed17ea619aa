"""What was looked at on each page, counted: whoever reads that a page was proved may see by what."""

from collections.abc import Iterable, Iterator
from math import isfinite

from publisher.proof.measuring.case import Case
from publisher.proof.reading import PageLooked, PageRead, ThingsLooked


def looked_at(case: Case) -> tuple[PageLooked, ...]:
    """Return for each page of the file what was read there, what was measured, and the largest difference from a promise."""
    return tuple(PageLooked(page.number, tuple(_on(case, page))) for page in case.file.pages)


def _on(case: Case, page: PageRead) -> Iterator[ThingsLooked]:
    number, promises = page.number, case.promises
    yield ThingsLooked("lines and areas read", "operators", len(page.pieces))
    yield ThingsLooked("words read", "operators", len(page.texts))
    yield ThingsLooked("pictures read", "operators", len(page.images))
    if not case.promised:
        return
    lengths = [r for r in case.lengths() if r.promise.page == number]
    yield _measured("lengths", "operators", (abs(r.found - r.promise.length) for r in lengths if r.found is not None))
    yield _measured("outlines", "operators", (r.farthest for r in case.outlines() if r.promise.page == number))
    marks = sum(r.tried for r in case.marks() if r.promise.page == number)
    yield ThingsLooked("points of marks", "operators", marks)
    yield _measured("match marks", "operators", (r.away for r in case.seams() if r.page == number))
    yield ThingsLooked("words promised", "operators", sum(text.page == number for text in promises.texts))
    yield ThingsLooked(
        "rows, layouts, sides, sentences, drawings", "operators", sum(w.page == number for w in promises.carried)
    )
    yield ThingsLooked("things as they were placed", "operators", sum(one.page == number for one in promises.drawn))
    dots = case.pixels()
    off = (
        abs(found - wanted)
        for square in dots.squares
        if square.page == number
        for found, wanted in ((square.across, square.box.width), (square.down, square.box.height))
        if found is not None
    )
    yield _measured("sides of squares", "dots", off)
    yield ThingsLooked("outlines", "dots", sum(ring.promise.page == number for ring in dots.rings))
    sights = [sight for sight in dots.sights if sight.page == number]
    yield ThingsLooked("stretches of lines", "dots", sum(sight.stretches for sight in sights))
    yield ThingsLooked("letters", "dots", sum(sight.letters for sight in sights))
    yield ThingsLooked("margins", "dots", sum(margin.page == number for margin in dots.margins))


def _measured(what: str, reader: str, off: Iterable[float]) -> ThingsLooked:
    """Return how many were measured, and the largest difference; one that was not found has none."""
    found = list(off)
    largest = max((value for value in found if isfinite(value)), default=None)
    return ThingsLooked(what, "dots" if reader == "dots" else "operators", len(found), largest)
