"""All that a page holds against all that it promised, one thing after the other in the order in which they are painted."""

from collections.abc import Iterable

import numpy as np

from publisher.basics import WEIGHTS, Box, DrawnPromise, Point, record, weight_of
from publisher.proof.reading import Array, PageRead, PaintedPath, PlacedImage, TextRun, normal

DRAWN_TOLERANCE = 0.02  # mm: places are written to 0.0001 pt, and curves flattened to 0.005 mm on either side
JOINED = 0.01  # mm between runs of letters that are one line of words set from two fonts
SAME_SHADE = 0.005
BACK_AT_START = 0.001  # mm: a knot nearer to the first is the first again
ROUNDED = (0.9, 1.1)  # times that: a knot just as near may lie on the other side of it in the file, which rounds places
_WEIGHTS = np.array([weight_of(place) for place in range(WEIGHTS)])

PaintedThing = PaintedPath | TextRun | PlacedImage


@record
class OtherThing:
    """The first thing of a page that is not the one that was promised: either may be missing, at the end."""

    page: int
    promised: DrawnPromise | None
    found: DrawnPromise | None


def first_other(page: PageRead, promises: Iterable[DrawnPromise]) -> OtherThing | None:
    """Return where a page begins to draw something else than promised; None when it draws it all, and nothing more."""
    found, wanted = things_of(page), list(promises)
    rounded: list[list[DrawnPromise]] = []
    for place in range(max(len(found), len(wanted))):
        mine = wanted[place] if place < len(wanted) else None
        seen = found[place] if place < len(found) else None
        if mine is None or seen is None:
            return OtherThing(page.number, mine, seen)
        if not _same(mine, seen):
            rounded = rounded or [things_of(page, share * BACK_AT_START) for share in ROUNDED]
            if not any(_same(mine, other[place]) for other in rounded):
                return OtherThing(page.number, mine, seen)
    return None


def things_of(page: PageRead, back: float = BACK_AT_START) -> list[DrawnPromise]:
    """Return what a page draws, in order, said as promises are; letters set one after the other are one line of words. ``back``: mm
    within which a line ends where it began."""
    things: list[PaintedThing] = sorted((*page.pieces, *page.texts, *page.images), key=lambda thing: thing.order)
    paths = iter(_paths(page.number, [thing for thing in things if isinstance(thing, PaintedPath)], back))
    said: list[DrawnPromise] = []
    run: TextRun | None = None
    for thing in things:
        if isinstance(thing, TextRun):
            begun = said[-1] if said and run is not None and _goes_on(run, thing) else None
            run = thing
            if begun is not None:
                said[-1] = _words(page.number, begun.first, begun.text + thing.text, thing.grey)
            elif thing.text.strip():
                said.append(_words(page.number, (thing.x, thing.y), thing.text, thing.grey))
            else:
                run = None
            continue
        run = None
        said.append(_picture(page.number, thing) if isinstance(thing, PlacedImage) else next(paths))
    return said


def _goes_on(before: TextRun, run: TextRun) -> bool:
    return (
        before.font != run.font
        and before.size == run.size
        and abs(before.end_x - run.x) < JOINED
        and abs(before.end_y - run.y) < JOINED
    )


def _words(page: int, at: Point, text: str, grey: float) -> DrawnPromise:
    return DrawnPromise(page, "words", at, grey=grey, text=text)


def _picture(page: int, image: PlacedImage) -> DrawnPromise:
    box = Box.round(image.corners)
    return DrawnPromise(page, "picture", (box.left, box.bottom), box)


def _paths(page: int, paths: list[PaintedPath], near: float) -> list[DrawnPromise]:
    """Return what painted paths are, one by one; their points are looked at all at once, as most paths have few."""
    if not paths:
        return []
    points = np.concatenate([path.points for path in paths])
    owner = np.repeat(np.arange(len(paths)), [len(path.points) for path in paths])
    begins = np.searchsorted(owner, np.arange(len(paths)))
    starts = np.concatenate([path.starts[:-1] + begin for path, begin in zip(paths, begins, strict=True)])
    lasts = np.concatenate([path.starts[1:] - 1 + begin for path, begin in zip(paths, begins, strict=True)])
    of = owner[starts]
    counts = np.bincount(of)
    closed = _sums(of, (np.abs(points[starts] - points[lasts]) < JOINED / 100.0).all(axis=1))
    first, last = (np.stack([_sums(of, points[at, k]) / counts for k in (0, 1)], axis=1) for at in (starts, lasts))
    knots = np.flatnonzero(_knots_once(paths, points, starts, lasts, near))
    number = np.arange(len(knots)) - np.searchsorted(knots, begins)[owner[knots]]
    weights = _WEIGHTS[number % WEIGHTS]
    weighed = np.stack([_sums(owner[knots], weights * points[knots, k]) for k in (0, 1)], axis=1)
    each = (counts, closed.astype(int), np.bincount(owner[knots]), first, last, weighed)
    return [
        _path(page, path, count, shut, known, *map(tuple, places))
        for path, count, shut, known, *places in zip(paths, *(row.tolist() for row in each), strict=True)
    ]


def _path(
    page: int, path: PaintedPath, count: int, closed: int, points: int, first: Point, last: Point, weighed: Point
) -> DrawnPromise:
    stroked = path.grey is not None
    return DrawnPromise(
        page,
        "lines" if stroked else "area",
        first,
        path.box,
        last,
        count,
        closed,
        path.width if stroked else 0.0,
        path.dash if stroked else (),
        (path.grey if stroked else path.fill_grey) or 0.0,
        clip=path.clip.box,
        points=points,
        weighed=weighed,
    )


def _sums(of: Array, values: Array) -> Array:
    """Return the sum of the values of each path."""
    return np.bincount(of, weights=values)


def _knots_once(paths: list[PaintedPath], points: Array, starts: Array, lasts: Array, near: float) -> Array:
    """Return which points are knots of their path; the first of a line is one once, where it ends there again."""
    keep: Array = np.concatenate([np.ones(len(p.points), dtype=bool) if p.knots is None else p.knots for p in paths])
    back = np.hypot(*(points - points[np.repeat(starts, lasts + 1 - starts)]).T) < near
    back[starts] = False
    last = lasts
    while (again := back[last]).any():  # an arc may end where it began, and a line of no length lead there once more
        keep[last[again]] = False
        last = last - again
    return keep


def _same(mine: DrawnPromise, seen: DrawnPromise) -> bool:
    if (mine.kind, mine.count, mine.closed) != (seen.kind, seen.count, seen.closed):
        return False
    if mine.text != seen.text and normal(mine.text).replace(" ", "") != normal(seen.text).replace(" ", ""):
        return False
    if abs(mine.grey - seen.grey) > SAME_SHADE or len(mine.dash) != len(seen.dash):
        return False
    pairs = [*zip(mine.first, seen.first, strict=True), *zip(mine.dash, seen.dash, strict=True)]
    if mine.kind in ("lines", "area"):
        pairs += [*zip(mine.last, seen.last, strict=True), (mine.width, seen.width)]
        if mine.points != seen.points:
            return False
        pairs += zip(mine.weighed, seen.weighed, strict=True)
    if mine.box is not None and seen.box is not None:
        pairs += zip(mine.box.sides, seen.box.sides, strict=True)
    if mine.clip is not None and seen.clip is not None:
        pairs += zip(mine.clip.sides, seen.clip.sides, strict=True)
    return all(abs(a - b) <= DRAWN_TOLERANCE for a, b in pairs)
