"""What the pages draw, as promises: each thing in the order in which it is painted, and where links lead, so that the file can be held
against the pages."""

from collections.abc import Iterable

from publisher.basics import Box, DrawnPromise, LinkPromise, Path, Point
from publisher.pages.model import Drawn, Fill, Link, Picture, Stroke, Words


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
    starts, ends = [path.edges[0].start for path in thing.paths], [_end(path) for path in thing.paths]
    closed = sum(a == b for a, b in zip(starts, ends, strict=True))
    box = Box.round(point for path in thing.paths for point in path.points)
    first, last, count = _mean(starts), _mean(ends), len(thing.paths)
    if isinstance(thing, Fill):
        return DrawnPromise(page, "area", first, box, last, count, closed, grey=thing.grey, clip=thing.clip)
    style = thing.style
    return DrawnPromise(
        page, "lines", first, box, last, count, closed, style.width, style.dash, style.grey, clip=thing.clip
    )


def _end(path: Path) -> Point:
    return path.edges[0].start if path.closed else path.edges[-1].end


def _mean(points: list[Point]) -> Point:
    return sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points)
