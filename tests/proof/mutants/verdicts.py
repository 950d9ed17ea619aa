"""What differs between pages as they should be and those of a mutant that proof let through: whether a buyer can act otherwise by it.

Two rules let a difference go, and both look at what is placed, thing by thing. ``moved``: every structure element holds the same things
in the same order, and each figure as a whole, each line of words and each ornament stands no more than ``FARTHEST`` mm elsewhere.
``looks``: the same things at the same places, of which some are up to twice or half as wide, or somewhat paler or darker; dashes, sizes
of words, areas and letters are the same.
"""

from collections.abc import Iterable, Iterator
from math import hypot
from typing import Any

import shapely

from publisher.pages import Pack
from publisher.proof.reading import read_file, text_lines

FARTHEST = 6.0  # mm by which an element may stand elsewhere, and nobody takes it for another
STILL = 0.05  # mm within which things of one element keep their places to each other
WIDER, PALER = 2.0, 0.25  # times, and of black: differences of a line that say nothing else
RUN_INTO = 0.2  # mm² that lines of words may share
Point = tuple[float, float]


def slight(packs: Iterable[Pack], clean: Iterable[Pack]) -> str:
    """Return ``moved`` or ``looks`` where the packs differ by no more than that, else ''."""
    said = {_slight_page(page, other) for page, other in _pages(packs, clean)}
    for verdict in ("", "moved", "looks"):
        if verdict in said:
            return verdict
    return "same"


def _pages(packs: Iterable[Pack], clean: Iterable[Pack]) -> Iterator[tuple[Any, Any]]:
    for pack, other in zip(packs, clean, strict=True):
        yield from zip(pack.pages, other.pages, strict=True)


def _slight_page(page: Any, other: Any) -> str:
    """Return how a page differs: '' where by more than is let go."""
    if len(page.drawn) != len(other.drawn) or _shape(page.structure) != _shape(other.structure):
        return ""
    groups = list(_groups(page.structure))
    grouped = {place for group in groups for place in group}
    groups += [[place] for place in range(len(page.drawn)) if place not in grouped]
    said = "same"
    for group in groups:
        pairs = [(page.drawn[place], other.drawn[place]) for place in group]
        if not all(type(one).__name__ == type(two).__name__ and _alike(one, two) for one, two in pairs):
            return ""
        shifts = [shift for one, two in pairs for shift in _shifts(one, two)]
        if not shifts:
            continue
        dx, dy = shifts[0]
        if any(hypot(x - dx, y - dy) > STILL for x, y in shifts):
            return ""
        if hypot(dx, dy) > STILL:
            ornament = getattr(other.drawn[group[0]], "tag", "") == "artifact"
            if hypot(dx, dy) > FARTHEST or not (group[0] in grouped or ornament):
                return ""
            said = "moved"
        elif said == "same" and any(_looks(one) != _looks(two) for one, two in pairs):
            said = "looks"
    return said


def _shape(elements: Iterable[Any]) -> str:
    """Return a structure as text, what figures show in words left out."""
    return repr([(one.role, one.things, _shape(one.kids)) for one in elements])


def _groups(elements: Iterable[Any]) -> Iterator[list[int]]:
    """Yield the things that keep their places to each other: those of a figure; each line of words by itself."""
    for one in elements:
        if one.role == "Figure":
            yield list(one.things)
        else:
            yield from ([place] for place in one.things)
        yield from _groups(one.kids)


def _alike(one: Any, two: Any) -> bool:
    """Say whether two things are the same but for their places, and for looks that say nothing."""
    kind = type(one).__name__
    if kind == "Words":
        return (one.text, one.font, round(one.size, 3), one.turn) == (
            two.text,
            two.font,
            round(two.size, 3),
            two.turn,
        ) and _near(one.grey, two.grey)
    if kind == "Stroke":
        mine, other = one.style, two.style
        dashes = len(mine.dash) == len(other.dash) and all(
            abs(a - b) < STILL for a, b in zip(mine.dash, other.dash, strict=True)
        )
        widths = max(mine.width, other.width) <= WIDER * min(mine.width, other.width) + 1e-9
        return dashes and widths and _near(mine.grey, other.grey) and len(one.paths) == len(two.paths)
    if kind == "Fill":
        return _near(one.grey, two.grey) and len(one.paths) == len(two.paths)
    if kind == "Link":
        return bool(one.page == two.page)
    return bool(one.image == two.image)


def _near(grey: float, other: float) -> bool:
    return abs(grey - other) <= PALER


def _looks(thing: Any) -> tuple[float, ...]:
    style = getattr(thing, "style", None)
    return (style.width, style.grey) if style is not None else (getattr(thing, "grey", 0.0),)


def _shifts(one: Any, two: Any) -> Iterator[Point]:
    """Yield by how much each point of a thing stands elsewhere; one that no shift explains where it has other points."""
    mine, other = _points(one), _points(two)
    if len(mine) != len(other):
        yield from ((0.0, 0.0), (2 * FARTHEST, 0.0))
        return
    for (ax, ay), (bx, by) in zip(mine, other, strict=True):
        yield ax - bx, ay - by


def _points(thing: Any) -> list[Point]:
    kind = type(thing).__name__
    if kind == "Words":
        return [(thing.x, thing.y)]
    if kind in ("Stroke", "Fill"):
        clips = list(thing.clip.corners()) if thing.clip is not None else []
        return [point for path in thing.paths for point in path.points] + clips
    return list(thing.box.corners())


def words_meet(data: bytes) -> int:
    """Return how many pairs of lines of words of a file run into each other."""
    found = 0
    for page in read_file(data, "").pages:
        areas = [line.area() for line in text_lines(page, ("",) * len(page.texts))]
        tree = shapely.STRtree(areas)
        for place, area in enumerate(areas):
            near = (int(one) for one in tree.query(area) if one > place)
            found += sum(area.intersection(areas[one]).area > RUN_INTO for one in near)
    return found
