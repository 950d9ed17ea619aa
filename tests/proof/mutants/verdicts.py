"""What differs between pages as they should be and those of a mutant that proof let through: whether a buyer can act otherwise by it.

Four rules let a difference go; all look at what is placed, thing by thing. ``moved``: every structure element holds the same things
in the same order, and each figure as a whole, each line of words and each ornament stands no more than ``FARTHEST`` mm elsewhere.
``looks``: the same things at the same places, of which some are up to twice or half as wide, or somewhat paler or darker; dashes, sizes
of words, areas and letters are the same. ``redrawn``, on pages that need not print true: a figure has the same words, ticks, crosses and
arrows, none more than ``NEARBY`` mm elsewhere in it, and no ink of it lies farther than that from ink of the right one, nor the other way
round. ``misspelt``: of a word of four letters or more one letter is another, which makes no other word of the packs; figures are the same.
"""

import re
from collections.abc import Iterable, Iterator
from math import hypot
from typing import Any

import shapely

from publisher.pages import Pack
from publisher.proof.reading import read_file, text_lines

FARTHEST = 6.0  # mm by which an element may stand elsewhere, and nobody takes it for another
STILL = 0.05  # mm within which things of one element keep their places to each other
WIDER, PALER = 2.0, 0.25  # times, and of black: differences of a line that say nothing else
NEARBY = 2.5  # mm by which what is in a figure may be drawn elsewhere, and it shows the same
SAME_INK = 0.25  # share by which a figure may have more or less ink
LEAST_WORD = 4  # letters: a shorter word with another letter is soon another word
RUN_INTO = 0.2  # mm² that lines of words may share
Point = tuple[float, float]


def slight(packs: Iterable[Pack], clean: Iterable[Pack]) -> str:
    """Return the rules by which the packs differ from the clean ones; '' where by more than they let go, or by nothing."""
    own, right = tuple(packs), tuple(clean)
    known = {word for pack in right for page in pack.pages for thing in page.drawn for word in _words_of(thing)}
    rough = {page.page for pack in right for page in pack.promises.pages if not page.true_size}
    said: set[str] = set()
    for pack, other in zip(own, right, strict=True):
        if len(pack.pages) != len(other.pages):
            return ""
        for page, wanted in zip(pack.pages, other.pages, strict=True):
            found = _slight_page(page, wanted, known, page.number in rough)
            if found is None:
                return ""
            said |= found
    return ", ".join(sorted(said))


def _slight_page(page: Any, other: Any, known: set[str], rough: bool) -> set[str] | None:
    """Return by which rules a page differs; None where by more than is let go."""
    figures = (list(_figures(page)), list(_figures(other)))
    rest = (_beside(page, figures[0]), _beside(other, figures[1]))
    if len(figures[0]) != len(figures[1]) or len(rest[0]) != len(rest[1]):
        return None
    said: set[str] = set()
    for one, two in (*zip(*figures, strict=True), *(([a], [b]) for a, b in zip(*rest, strict=True))):
        verdict = _same_group(one, two, known)
        if verdict is None and rough and len(two) > 1 and _redrawn(one, two):
            verdict = {"redrawn"}
        if verdict is None:
            return None
        said |= verdict
    return said


def _figures(page: Any) -> Iterator[list[Any]]:
    yield from ([page.drawn[place] for place in places] for places in _figure_places(page.structure))


def _figure_places(elements: Iterable[Any]) -> Iterator[tuple[int, ...]]:
    for one in elements:
        if one.role == "Figure":
            yield one.things
        yield from _figure_places(one.kids)


def _beside(page: Any, figures: list[list[Any]]) -> list[Any]:
    """Return what a page draws that is in no figure."""
    inside = {id(thing) for figure in figures for thing in figure}
    return [thing for thing in page.drawn if id(thing) not in inside]


def _same_group(mine: list[Any], other: list[Any], known: set[str]) -> set[str] | None:
    """Return by which rules things that keep their places to each other differ."""
    if len(mine) != len(other):
        return None
    said: set[str] = set()
    shifts: list[Point] = []
    for one, two in zip(mine, other, strict=True):
        if type(one).__name__ != type(two).__name__:
            return None
        if type(one).__name__ == "Words" and one.text != two.text:
            if not misspelt(one.text, two.text, known):
                return None
            said.add("misspelt")
        if not _alike(one, two):
            return None
        shifts += _shifts(one, two)
        if _looks(one) != _looks(two):
            said.add("looks")
    dx, dy = shifts[0] if shifts else (0.0, 0.0)
    if any(hypot(x - dx, y - dy) > STILL for x, y in shifts) or hypot(dx, dy) > FARTHEST:
        return None
    return said | ({"moved"} if hypot(dx, dy) > STILL else set())


def misspelt(text: str, right: str, known: set[str]) -> bool:
    """Say whether words differ by letters of long words alone, one in each, and none of these is another word that is known."""
    mine, wanted = re.findall(r"[^\W\d_]+|.", text), re.findall(r"[^\W\d_]+|.", right)
    return len(mine) == len(wanted) and all(
        one == two
        or (
            len(two) >= LEAST_WORD and len(one) == len(two) and _letters_off(one, two) == 1 and one.lower() not in known
        )
        for one, two in zip(mine, wanted, strict=True)
    )


def _letters_off(one: str, two: str) -> int:
    return sum(a != b for a, b in zip(one, two, strict=True))


def _words_of(thing: Any) -> Iterator[str]:
    if type(thing).__name__ == "Words":
        yield from (word.lower() for word in re.findall(r"[^\W\d_]+", thing.text))


def _redrawn(mine: list[Any], other: list[Any]) -> bool:
    """Say whether a figure shows the same, drawn a little otherwise."""
    words = [sorted((t.text, t.x, t.y) for t in things if type(t).__name__ == "Words") for things in (mine, other)]
    if [text for text, _, _ in words[0]] != [text for text, _, _ in words[1]]:
        return False
    if any(hypot(a[1] - b[1], a[2] - b[2]) > NEARBY for a, b in zip(*words, strict=True)):
        return False
    if _signs(mine) != _signs(other) or _kinds_of_lines(mine) != _kinds_of_lines(other):
        return False
    ink = [_ink(mine), _ink(other)]
    if ink[0].is_empty or ink[1].is_empty:
        return bool(ink[0].is_empty and ink[1].is_empty)
    if abs(ink[0].length - ink[1].length) > SAME_INK * ink[1].length:
        return False
    return bool(shapely.hausdorff_distance(*ink, densify=0.05) <= NEARBY)


def _signs(things: list[Any]) -> tuple[int, int]:
    """Count arrow heads, and thick strokes, of which ticks and crosses are."""
    strokes = [t for t in things if type(t).__name__ == "Stroke"]
    thick = max((t.style.width for t in strokes), default=0.0)
    heads = sum(len(path.points) in (3, 4) for t in things if type(t).__name__ == "Fill" for path in t.paths)
    return heads, sum(len(t.paths) for t in strokes if t.style.width == thick)


def _kinds_of_lines(things: list[Any]) -> set[tuple[Any, ...]]:
    return {(t.style.width, t.style.dash, t.style.grey) for t in things if type(t).__name__ == "Stroke"}


def _ink(things: list[Any]) -> Any:
    lines = [
        path.points
        for t in things
        if type(t).__name__ in ("Stroke", "Fill")
        for path in t.paths
        if len(path.points) > 1
    ]
    return shapely.MultiLineString([list(line) for line in lines])


def _alike(one: Any, two: Any) -> bool:
    """Say whether two things are the same but for their places, and for looks that say nothing."""
    kind = type(one).__name__
    if kind == "Words":
        mine, other = (one.font, round(one.size, 3), one.turn), (two.font, round(two.size, 3), two.turn)
        return mine == other and _near(one.grey, two.grey)
    if kind == "Stroke":
        own, right = one.style, two.style
        dashes = len(own.dash) == len(right.dash) and all(
            abs(a - b) < STILL for a, b in zip(own.dash, right.dash, strict=True)
        )
        widths = max(own.width, right.width) <= WIDER * min(own.width, right.width) + 1e-9
        return dashes and widths and _near(own.grey, right.grey) and len(one.paths) == len(two.paths)
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
