"""Pictures of the tool's own with fewer lines, where a page would hold more than an old printer digests."""

from dataclasses import replace

from publisher.basics import Path
from publisher.pages.model import Drawn, Fill, Stroke
from publisher.pages.type import PICTURE_DETAIL, PICTURE_GHOST, PICTURE_HATCH

MOST_ON_A4 = 3800  # path operators, of the 4000 that a finished page of this size may hold; a larger one holds more
A4 = 210.0 * 297.0  # mm²
YIELDING = (
    PICTURE_DETAIL,
    PICTURE_GHOST,
    PICTURE_HATCH,
)  # texture first, then what lies behind; last what tells insides


def thinned(drawn: tuple[Drawn, ...], area: float) -> tuple[Drawn, ...]:
    """Return what is drawn on a page of ``area`` mm² without the shortest fine lines of its pictures, as few as must go.

    Outlines of pictures and all that is drawn at true size stay.
    """
    over = sum(map(operators, drawn)) - MOST_ON_A4 * max(1.0, area / A4)
    for style in YIELDING:
        if over <= 0:
            break
        fine = [
            (_size(path), number, place)
            for number, thing in enumerate(drawn)
            if isinstance(thing, Stroke) and thing.style == style
            for place, path in enumerate(thing.paths)
        ]
        gone: set[tuple[int, int]] = set()
        for _, number, place in sorted(fine):
            if over <= 0:
                break
            thing = drawn[number]
            assert isinstance(thing, Stroke)
            over -= len(thing.paths[place].points) + thing.paths[place].closed
            gone.add((number, place))
        drawn = tuple(_without(thing, number, gone) for number, thing in enumerate(drawn))
    return tuple(thing for thing in drawn if not isinstance(thing, Stroke) or thing.paths)


def operators(thing: Drawn) -> int:
    """Return about how many path operators a thing takes: one for each point, one to close, one to paint."""
    if not isinstance(thing, Stroke | Fill):
        return 0
    return 1 + sum(len(path.points) + path.closed for path in thing.paths)


def _size(path: Path) -> float:
    """Return the longer side of a line's rectangle in mm: a small curl is finer than a straight line as long."""
    xs, ys = zip(*path.points, strict=True)
    return float(max(max(xs) - min(xs), max(ys) - min(ys)))


def _without(thing: Drawn, number: int, gone: set[tuple[int, int]]) -> Drawn:
    if not isinstance(thing, Stroke):
        return thing
    return replace(thing, paths=tuple(p for place, p in enumerate(thing.paths) if (number, place) not in gone))
