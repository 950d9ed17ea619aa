"""What the pages draw, as promises: each thing in the order in which it is painted, and where links lead, so that the file can be held
against the pages."""

from collections.abc import Iterable
from math import dist

import numpy as np

from publisher.basics import WEIGHTS, Box, DrawnPromise, LinkPromise, Path, Point, weight_of
from publisher.pages.model import Drawn, Fill, Link, Picture, Stroke, Words

BACK_AT_START = 0.001  # mm: a knot nearer to the first is the first again
_WEIGHTS = np.array([weight_of(place) for place in range(WEIGHTS)])


def drawn_promises(page: int, drawn: Iterable[Drawn]) -> tuple[DrawnPromise, ...]:
    """Return a promise for each thing of a page (from 1) that leaves ink: links and empty words leave none."""
    promised = (_promise(page, thing) for thing in drawn)
    return tuple(promise for promise in promised if promise is not None)


def link_promises(page: int, drawn: Iterable[Drawn]) -> tuple[LinkPromise, ...]:
    """Return a promise for each link of a page (from 1)."""
    return tuple(LinkPromise(page, thing.box, thing.page) for thing in drawn if isinstance(thing, Link))


def _promise(page: int, thing: Drawn) -> DrawnPromise | None:
    if isinstance(thing, Words):
        at = (thing.x, thing.y)
        return DrawnPromise(page, "words", at, grey=thing.grey, text=thing.text) if thing.text.strip() else None
    if isinstance(thing, Picture):
        return DrawnPromise(page, "picture", (thing.box.left, thing.box.bottom), thing.box)
    if not isinstance(thing, Stroke | Fill) or not thing.paths:
        return None
    starts, ends = [path.points[0] for path in thing.paths], [_end(path) for path in thing.paths]
    closed = sum(a == b for a, b in zip(starts, ends, strict=True))
    box = Box.round(point for path in thing.paths for point in path.points)
    first, last, count = _mean(starts), _mean(ends), len(thing.paths)
    knots = [knot for path in thing.paths for knot in _knots(path)]
    weighed = _weighed(knots)
    if isinstance(thing, Fill):
        return DrawnPromise(
            page, "area", first, box, last, count, closed,
            grey=thing.grey, clip=thing.clip, points=len(knots), weighed=weighed,
        )  # fmt: skip
    style = thing.style
    return DrawnPromise(
        page, "lines", first, box, last, count, closed, style.width, style.dash, style.grey,
        clip=thing.clip, points=len(knots), weighed=weighed,
    )  # fmt: skip


def _knots(path: Path) -> list[Point]:
    """Return the points by which one knows a path; its first once, where it ends there again."""
    first = path.points[0]
    straight = path.corners is not None
    knots = list(path.points) if straight else [first, *(knot for edge in path.edges for knot in edge.knots())]
    while len(knots) > 1 and dist(knots[-1], first) < BACK_AT_START:
        knots.pop()
    return knots


def _weighed(knots: list[Point]) -> Point:
    x, y = np.resize(_WEIGHTS, len(knots)) @ np.array(knots)
    return float(x), float(y)


def _end(path: Path) -> Point:
    return path.points[0 if path.closed else -1]


def _mean(points: list[Point]) -> Point:
    return sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points)
