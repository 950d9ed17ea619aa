"""What a page may leave out: what is shown in another way, and what has no room beside the summary. Whoever promised it says so; no page
may say that it had no room."""

from collections.abc import Iterator

import numpy as np

from publisher.basics import DrawingPromise, SentencePromise
from publisher.proof.measuring import Case

SUMMARY = "summary"
OF_PACK = "act:"  # acts that the pack itself says: a design may need none
WHITE_ROUND = 11.0  # mm over and under what stands there: so much more is free than it would take


def may_be_missing(case: Case, promise: SentencePromise | DrawingPromise) -> bool:
    """Say whether a promise that no page carries needs none: the pack has no such act, all that may stand in its place is carried, or
    the page of the summary has less height free than it takes, and nothing that takes as much stands there."""
    if case.carried(promise.key):
        return False
    if promise.key.startswith(OF_PACK) and not case.carried(f"{act_of(promise.key)}:title"):
        return True
    if promise.instead and all(case.carried(key) for key in promise.instead):
        return True
    pages = {where.page for where in case.carried(SUMMARY)}
    free = max((free_height(case, page) + _views_high(case, page, promise) for page in pages), default=0.0)
    if promise.room <= 0.0 or free >= promise.room + WHITE_ROUND:
        return False
    rooms = {one.key: one.room for one in case.promises.sentences} | {
        one.key: one.room for one in case.promises.drawings
    }
    larger = (key for key, room in rooms.items() if room >= promise.room)
    return not any(where.page in pages for key in larger for where in case.carried(key))


def _views_high(case: Case, page: int, promise: SentencePromise | DrawingPromise) -> float:
    """Return how high (mm) other pictures stand on a page that a picture goes before: it has its room beside them, or over them."""
    if not isinstance(promise, DrawingPromise):
        return 0.0
    views = {one.key for one in case.promises.drawings if one.instead and 0.0 < one.room < promise.room}
    boxes = [where.box for key in views for where in case.carried(key) if where.page == page]
    return max((box.top for box in boxes), default=0.0) - min((box.bottom for box in boxes), default=0.0)


def act_of(key: str) -> str:
    """Return the key of an act by that of what it shows."""
    return ":".join(key.split(":")[:2])


def free_height(case: Case, number: int) -> float:
    """Return the greatest height (mm) of a page between its limits in which nothing stands, from side to side."""
    limit = next(page.limit for page in case.promises.pages if page.page == number)
    spans = sorted((*_spans(case, number), (limit.top, limit.top)))
    free, low = 0.0, limit.bottom
    for bottom, top in spans:
        free, low = max(free, bottom - low), max(low, top)
    return free


def _spans(case: Case, number: int) -> Iterator[tuple[float, float]]:
    """Yield from where to where (mm up) each thing of a page reaches."""
    for words in case.lines(number):
        _, bottom, _, top = words.area().bounds
        yield bottom, top
    if (ink := case.ink(number)) is not None:
        for line in np.split(ink.points[:, 1], ink.starts[1:-1]):
            if len(line):
                yield float(line.min()), float(line.max())
    page = case.page(number)
    for image in page.images if page is not None else ():
        heights = np.array([y for _, y in image.corners])
        yield float(heights.min()), float(heights.max())
