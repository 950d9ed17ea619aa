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
        said.append(_picture(page.number, thing) if isinstance(thing, PlacedImage) else _path(page.number, thing, back))
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


def _path(page: int, path: PaintedPath, near: float) -> DrawnPromise:
    starts, ends = path.points[path.starts[:-1]], path.points[path.starts[1:] - 1]
    closed = int((np.abs(starts - ends) < JOINED / 100.0).all(axis=1).sum())
    first, last = starts.mean(axis=0), ends.mean(axis=0)
    stroked = path.grey is not None
    count, weighed = _weighed(path, near)
    return DrawnPromise(
        page,
        "lines" if stroked else "area",
        (float(first[0]), float(first[1])),
        path.box(),
        (float(last[0]), float(last[1])),
        len(starts),
        closed,
        path.width if stroked else 0.0,
        path.dash if stroked else (),
        (path.grey if stroked else path.fill_grey) or 0.0,
        clip=path.clip.box,
        points=count,
        weighed=weighed,
    )


def _weighed(path: PaintedPath, near: float) -> tuple[int, Point]:
    """Return how many knots a path has, and their sum, each times its weight; the first of a line once, where it ends there again."""
    starts = path.starts[:-1]
    first = path.points[np.repeat(starts, np.diff(path.starts))]
    back = np.hypot(*(path.points - first).T) < near
    back[starts] = False
    keep: Array = np.ones(len(path.points), dtype=bool) if path.knots is None else path.knots.copy()
    last = path.starts[1:] - 1
    while (again := back[last]).any():  # an arc may end where it began, and a line of no length lead there once more
        keep[last[again]] = False
        last = last - again
    knots = path.points[keep]
    x, y = np.resize(_WEIGHTS, len(knots)) @ knots
    return len(knots), (float(x), float(y))


def _same(mine: DrawnPromise, seen: DrawnPromise) -> bool:
    if (mine.kind, mine.count, mine.closed) != (seen.kind, seen.count, seen.closed):
        return False
    if normal(mine.text).replace(" ", "") != normal(seen.text).replace(" ", ""):
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
