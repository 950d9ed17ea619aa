"""Pictures without lines that would close up with others: at 300 dots to the inch and one bit less than 0.25 mm of white is lost.

Two lines that run so near do not print as two lines, but as one that is too thick, or in blots. A picture then says as much with the
heavier of them alone. Nothing that is drawn at true size, and no rule or arrow, gives way. Mm of the paper.
"""

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from itertools import count

import numpy as np
import shapely

from publisher.basics import SAME_POINT, Path, polyline
from publisher.pages.model import Drawn, Stroke
from publisher.pages.sheet.smooth_lines import (
    LinesOfPage,
    MmOfLines,
    NumbersOfLines,
    SmoothLines,
    StrokesOfPage,
    smooth_lines,
    strokes_of,
)
from publisher.pages.type import (
    HATCH,
    PICTURE_ADDED,
    PICTURE_ADDED_CONTOUR,
    PICTURE_CONTOUR,
    PICTURE_DETAIL,
    PICTURE_GHOST,
    PICTURE_GUIDE,
    PICTURE_HATCH,
    PICTURE_OUTLINE,
    PICTURE_THERE,
    PICTURE_THERE_CONTOUR,
)

LEAST_WHITE = 0.26
"""mm of white between two lines: three dots of 300 to the inch, and a hair."""

NEARER = 0.011
"""mm by which it is more than three dots."""

LEAST_RUN = 0.9
"""mm: along less than this no two lines look like one; corners come near to each other so."""

MEET = 0.08
"""mm, just less than a dot of 300 to the inch: lines that come nearer than this meet."""

WEDGE, OPENED = 3.0, 0.95
"""mm, and share of the least distance: from the point of a wedge of two lines to where they are apart."""

REST = 1.0
"""mm: what is left of a line, shorter than this and no outer edge, goes as well where it no longer leads anywhere; and, of one that has
lost more than half, what is no farther than this from the line beside it."""

YIELDING = (
    PICTURE_ADDED_CONTOUR,
    PICTURE_CONTOUR,
    PICTURE_THERE_CONTOUR,
    PICTURE_ADDED,
    PICTURE_OUTLINE,
    PICTURE_THERE,
    PICTURE_DETAIL,
    PICTURE_GHOST,
    PICTURE_GUIDE,
    PICTURE_HATCH,
    HATCH,
)
"""Lines of pictures that give way: the later to the earlier, of two of a kind the shorter to the longer."""

OUTER = 3
"""So many of them are outer edges."""

_RANK = {style: rank for rank, style in enumerate(YIELDING, start=1)}


def cleared(drawn: tuple[Drawn, ...]) -> tuple[Drawn, ...]:
    """Return what is drawn on a page without those stretches of lines of its pictures that would close up with others beside them."""
    strokes = [thing for thing in drawn if isinstance(thing, Stroke)]
    if not any(thing.style in _RANK for thing in strokes):
        return drawn
    changed = _changed(strokes_of(strokes))
    if not changed:
        return drawn
    number = count()
    return tuple(_with_paths(thing, changed, next(number)) if isinstance(thing, Stroke) else thing for thing in drawn)


@lru_cache(maxsize=2)  # a page is asked for again without the numbers of other pages: its lines are mostly the same
def _changed(page: StrokesOfPage) -> dict[tuple[int, int], tuple[Path, ...]]:
    """Return what is left of those lines, by stroke and place in it, of which something goes."""
    lines = smooth_lines(page, lambda style: _RANK.get(style, 0))
    lines = lines.taken(np.lexsort((-shapely.length(lines.shapes), lines.rank)))
    left = _without_near(lines)
    if not left:
        return {}
    _prune(left, lines)
    keys = list(zip(lines.stroke.tolist(), lines.path.tolist(), strict=True))
    kept: dict[tuple[int, int], list[shapely.Geometry]] = {keys[at]: [] for at in left}
    for at, key in enumerate(keys):
        if key in kept:
            kept[key] += left.get(at, [lines.shapes[at]])
    return {key: tuple(_paths(parts)) for key, parts in kept.items()}


def _without_near(lines: SmoothLines) -> dict[int, list[shapely.Geometry]]:
    """Return what is left of each line that gives way somewhere."""
    shapes, half, rank = lines.shapes, lines.half, lines.rank
    straight = shapely.get_num_points(shapes) == 2
    first, second = _neighbours(shapes, half, np.flatnonzero(rank > 0))
    away = shapely.distance(shapes[first], shapes[second])
    near = half[first] + half[second] + LEAST_WHITE
    keep = (away < near) & ~(
        (away < SAME_POINT) & straight[first] & straight[second]
    )  # straight lines that meet stay two
    order = np.lexsort((near[keep], first[keep], second[keep]))
    first, second, near = first[keep][order], second[keep][order], near[keep][order]
    left: dict[int, list[shapely.Geometry]] = {}
    whole = _running_beside(shapes, half, first, second, near)
    changes = [0] * len(shapes)  # how often of each line something went
    asked: dict[int, tuple[int, int]] = {}  # of each pair, how both lines were then: it says the same until one changes
    for pair in (*whole, *whole):  # again, for what met another line may have lost the piece that met it
        a, b, room = int(first[pair]), int(second[pair]), float(near[pair])
        if asked.get(pair) == (changes[a], changes[b]):
            continue
        as_drawn = changes[a] == changes[b] == 0
        if as_drawn and not whole[pair]:
            continue
        there = shapely.union_all(left.get(a, [shapes[a]]))
        if there.is_empty:
            continue
        own = shapely.union_all(left.get(b, [shapes[b]]))
        gone = whole[pair] if as_drawn else _closing(own, there, float(half[a] + half[b]), room)
        asked[pair] = changes[a], changes[b]
        if gone:
            rest = shapely.difference(own, shapely.buffer(shapely.union_all(gone), 1e-6, cap_style="flat"))
            poor = 2 * shapely.length(rest) < shapely.length(shapes[b])
            about = shapely.buffer(there, REST, quad_segs=2) if poor else shapely.Polygon()
            left[b] = [part for part in shapely.get_parts(rest) if part.length > MEET and not about.covers(part)]
            changes[b] += 1
    return left


def _neighbours(
    shapes: LinesOfPage, half: MmOfLines, yielding: NumbersOfLines
) -> tuple[NumbersOfLines, NumbersOfLines]:
    """Return which lines come before which of those that give way, as far as their rectangles tell that they may be near."""
    room = half + LEAST_WHITE / 2
    sides = shapely.bounds(shapes).T + room * np.array([[-1.0], [-1.0], [1.0], [1.0]])
    boxes = shapely.box(*sides)
    second, first = shapely.STRtree(boxes).query(boxes[yielding])
    second = yielding[second]
    before = (first < second) & (shapely.length(shapes[second]) >= LEAST_RUN)
    return first[before], second[before]


def _running_beside(
    shapes: LinesOfPage, half: MmOfLines, first: NumbersOfLines, second: NumbersOfLines, near: MmOfLines
) -> dict[int, list[shapely.Geometry]]:
    """Return, of each pair that runs so near that it may close up, what of the second line would go as both are drawn, which is mostly
    nothing: one call of the library for all of them instead of six for each."""
    _, one, zone_of = np.unique(np.column_stack((first, near)), axis=0, return_index=True, return_inverse=True)
    zones = shapely.buffer(shapes[first[one]], near[one], quad_segs=2, cap_style="flat")
    beside = shapely.intersection(shapes[second], zones[zone_of.ravel()])
    long = np.flatnonzero(shapely.length(beside) >= LEAST_RUN)
    parts, at = shapely.get_parts(shapely.line_merge(beside[long]), return_index=True)
    keep = shapely.length(parts) >= LEAST_RUN
    parts, at = parts[keep], long[at[keep]]
    others = shapes[first[at]]
    meet = shapely.distance(parts, others) < MEET
    ends = shapely.distance(shapely.get_point(parts[:, None], [0, -1]), others[:, None])
    opens = (ends.min(axis=1) <= half[first[at]] + half[second[at]]) & (ends.max(axis=1) >= OPENED * near[at])
    sharp = (shapely.length(parts) <= WEDGE) & opens
    gone: dict[int, list[shapely.Geometry]] = {pair: [] for pair in long.tolist()}
    for pair, part, other, met, wedge in zip(at.tolist(), parts, others, meet.tolist(), sharp.tolist(), strict=True):
        if met and part.length > WEDGE:
            gone[pair] += _closing(
                part, other, float(half[first[pair]] + half[second[pair]]), float(near[pair]) - NEARER
            )
        elif not met and not wedge:
            gone[pair].append(part)
    return gone


def _closing(own: shapely.Geometry, there: shapely.Geometry, touch: float, room: float) -> list[shapely.Geometry]:
    """Return the stretches of a line that run nearer than ``room`` to another and do not meet it. One that meets it may be two that do not
    quite part: they are asked for once more, a hair nearer."""
    gone: list[shapely.Geometry] = []
    zone = shapely.buffer(there, room, quad_segs=2, cap_style="flat")
    for part in shapely.get_parts(shapely.line_merge(shapely.intersection(own, zone))):
        if part.length < LEAST_RUN:
            continue
        if not _meet(part, there, touch, room):
            gone.append(part)
        elif part.length > WEDGE and room > touch + LEAST_WHITE - NEARER:
            gone += _closing(part, there, touch, room - NEARER)
    return gone


def _meet(stretch: shapely.Geometry, other: shapely.Geometry, touch: float, near: float) -> bool:
    """Say whether a stretch that runs nearer than ``near`` to another line meets it, or is the wedge at a sharp corner: their ink, which
    touches where they are ``touch`` apart, opens from one end to the other."""
    if shapely.distance(stretch, other) < MEET:
        return True
    ends = shapely.distance(shapely.get_point(stretch, [0, -1]), other)
    return bool(stretch.length <= WEDGE and ends.min() <= touch and ends.max() >= OPENED * near)


def _prune(left: dict[int, list[shapely.Geometry]], lines: SmoothLines) -> None:
    """Take away short rests that led to a line which is gone."""
    shapes, rank = lines.shapes, lines.rank.tolist()
    every = [(at, part) for at in range(len(rank)) for part in left.get(at, [shapes[at]])]
    parts = np.array([part for _, part in every], dtype=object)
    tree = shapely.STRtree(parts)
    long = shapely.length(parts).tolist()
    short = [number for number, (at, _) in enumerate(every) if rank[at] > OUTER and long[number] < REST]
    if not short:
        return
    gone = [False] * len(every)
    whole = shapely.length(shapes).tolist()
    tips = shapely.get_point(np.repeat(parts[short], 2), np.tile([0, -1], len(short)))  # both ends of each
    held: list[list[int]] = [[] for _ in tips]
    for tip, other in tree.query(tips, predicate="dwithin", distance=MEET).T.tolist():
        if other != short[tip // 2]:
            held[tip].append(other)
    led = [False for _ in tips]
    for tip, other in shapely.STRtree(shapes).query(tips, predicate="dwithin", distance=MEET).T.tolist():
        led[tip] = led[tip] or other != every[short[tip // 2]][0]
    for _ in range(3):  # a stub on a stub
        for tip, others in enumerate(held):
            number = short[tip // 2]
            cut = led[tip] or long[number] < whole[every[number][0]] - MEET
            gone[number] |= cut and all(map(gone.__getitem__, others))
    for number in (number for number in short if gone[number]):
        at, part = every[number]
        left[at] = [other for other in left.get(at, [shapes[at]]) if other is not part]


def _paths(parts: list[shapely.Geometry]) -> Iterator[Path]:
    """Yield what is left of a line."""
    for line in shapely.get_parts(shapely.line_merge(shapely.union_all(parts))) if parts else ():
        points = tuple((round(x, 4), round(y, 4)) for x, y in shapely.get_coordinates(line).tolist())
        whole = points[0] == points[-1] and len(points) > 3
        yield polyline(points[:-1] if whole else points, whole)


def _with_paths(thing: Stroke, changed: dict[tuple[int, int], tuple[Path, ...]], number: int) -> Stroke:
    """Return a stroke with what is left of its paths."""
    keys = [(number, place) for place in range(len(thing.paths))]
    if not any(key in changed for key in keys):
        return thing
    left = (changed.get(key, (path,)) for key, path in zip(keys, thing.paths, strict=True))
    return replace(thing, paths=tuple(path for paths in left for path in paths))
