"""Where the name of a match mark stands: beside it on the tile's own side of the seam, where it crosses nothing; failing that looked
for all round the mark, level or upright, and tied to it by a short line. Page coordinates, mm."""

from collections.abc import Iterable, Iterator

import numpy as np
import numpy.typing as npt
import shapely
from shapely.ops import substring

from publisher.basics import Box, Layer, Point, polyline, record
from publisher.pages.model import Drawn, Stroke
from publisher.pages.tiles.seams import MARK_RADIUS
from publisher.pages.type import LEADER, LEAST, Setter, as_polygon

NAME_AWAY = (0.0, 2.0, 4.0, 6.0)  # mm farther from a mark at which its name is looked for first
NAME_FARTHEST = 11.0  # mm from a mark's middle to its name, so that nobody takes it for another's
STEP = 0.5  # mm of the grid on which all places round a mark are tried
UPRIGHT_COSTS = 3.0  # mm by which a level name may stand farther off than an upright one
TIED_FROM = 4.0  # mm between a mark and its name: farther off a line ties them
CLEAR = 0.3  # mm round a name

Boxes = npt.NDArray[np.float64]  # rows of left, bottom, right, top in mm


@record
class NameRoom:
    """What the names of a tile's marks keep clear of: ``lines`` that they cross only where there is no other room, ``cuts`` and words
    that they never do; the ``window``; and all ``marks`` of the tile."""

    lines: shapely.Geometry
    cuts: shapely.Geometry
    window: Box
    marks: tuple[Point, ...]


@record
class Marked:
    """A match mark of a tile: its middle, its name, whether its seam is upright, and whether the tile is ``first`` at that seam
    (the left or upper one)."""

    at: Point
    name: str
    upright: bool
    first: bool


def placed_name(setter: Setter, mark: Marked, room: NameRoom, taken: Iterable[Box]) -> tuple[tuple[Drawn, ...], Box]:
    """Return a mark's name set near it, with the line that ties it where it stands farther off, and the box of its words.

    ``taken``: boxes of marks and words that stand already.
    """
    areas = [as_polygon(box) for box in taken]
    words, own = shapely.union_all(areas), shapely.Point(mark.at)
    others = shapely.union_all([area for area in areas if not area.covers(own)])
    usual = _usual(setter, mark)
    places = (usual, *_around(setter, mark))
    busy = [(lines, words) for lines in (room.lines, room.cuts)]
    free = (box for each in busy for some in places for box in _free(some, mark, room, each))
    box = next((box for box in free if not others.intersects(_tie(mark.at, box))), Box(*usual[0].tolist()))
    turned = box.height > box.width
    start = (box.right - 0.6, box.bottom + 0.2) if turned else (box.left + 0.2, box.bottom + 0.6)
    drawn = setter.line(mark.name, LEAST, *start, turn=90.0 if turned else 0.0, layer=Layer.NOTES)
    tie = _tie(mark.at, box)
    if tie.is_empty:
        return drawn, box
    line = polyline(tuple((float(x), float(y)) for x, y in tie.coords))
    return (*drawn, Stroke(LEADER, (line,), Layer.NOTES, None, "figure")), box


def _usual(setter: Setter, mark: Marked) -> Boxes:
    """Return places close beside a mark on the tile's own side of the seam, the best first."""
    wide, cap = setter.width(mark.name, LEAST), setter.cap(LEAST)
    x, y = mark.at
    out = MARK_RADIUS + 0.8
    left, right = (x - out - wide, y - cap / 2), (x + out, y - cap / 2)
    steps = [way * step * cap for step in range(6) for way in (1, -1)]
    if mark.upright:
        base, away = (left, -1) if mark.first else (right, 1)
        places = [(base[0] + away * further, base[1] + dy) for further in NAME_AWAY for dy in steps]
    else:  # beside the middle of the mark, above or below the seam
        beside = y + 1.0 if mark.first else y - 1.0 - cap
        base, away = ((x - wide / 2, y + out), 1) if mark.first else ((x - wide / 2, y - out - cap), -1)
        places = [base, (left[0], beside), (right[0], beside)]
        places += [(base[0] + dx, base[1] + away * further) for further in NAME_AWAY for dx in steps]
    return np.array([(px - 0.2, py - 0.6, px + wide + 0.2, py + cap + 0.3) for px, py in places])


def _around(setter: Setter, mark: Marked) -> Iterator[Boxes]:
    """Yield all places round a mark, the nearest first: those on the tile's own side of the seam, then those on the other."""
    size = np.array((setter.width(mark.name, LEAST) + 0.4, setter.cap(LEAST) + 0.9))
    found, costs = [], []
    for upright in (False, True):
        own = size[::-1] if upright else size
        low, high = mark.at - own - NAME_FARTHEST, np.add(mark.at, NAME_FARTHEST)
        xs, ys = (np.arange(a, b, STEP) for a, b in zip(low, high, strict=True))
        corners = np.stack(np.meshgrid(xs, ys), axis=-1).reshape(-1, 2)
        boxes = np.hstack([corners, corners + own])
        away = _away(boxes, mark.at)
        near = away >= MARK_RADIUS + CLEAR
        found.append(boxes[near])
        costs.append(away[near] + UPRIGHT_COSTS * upright)
    every = np.vstack(found)[np.argsort(np.concatenate(costs), kind="stable")]
    axis = 0 if mark.upright else 1
    ours = every[:, axis + 2] <= mark.at[axis] if mark.upright == mark.first else every[:, axis] >= mark.at[axis]
    yield every[ours]
    yield every[~ours]


def _free(boxes: Boxes, mark: Marked, room: NameRoom, busy: Iterable[shapely.Geometry]) -> Iterator[Box]:
    """Yield the boxes inside the window, near enough, that meet nothing busy and are nearer to their own mark than to any other."""
    window = room.window
    left, bottom, right, top = boxes.T
    fits = (left >= window.left) & (bottom >= window.bottom) & (right <= window.right) & (top <= window.top)
    away = _away(boxes, mark.at)
    fits &= away <= NAME_FARTHEST
    for other in room.marks:
        if other != mark.at:
            fits &= away < _away(boxes, other)
    grown = shapely.box(*(boxes[fits] + (-CLEAR, -CLEAR, CLEAR, CLEAR)).T)
    met = np.zeros(len(grown), dtype=np.bool_)
    for lines in busy:
        shapely.prepare(lines)
        met |= shapely.intersects(lines, grown)
    for box in boxes[fits][~met].tolist():
        yield Box(*box)


def _away(boxes: Boxes, point: Point) -> npt.NDArray[np.float64]:
    """Return how far boxes lie from a point."""
    off = np.maximum(boxes[:, :2] - point, point - boxes[:, 2:]).clip(min=0.0)
    return np.asarray(np.hypot(off[:, 0], off[:, 1]))


def _tie(mark: Point, box: Box) -> shapely.LineString:
    """Return the line from a mark's circle to its name; an empty one where they stand close together."""
    near = (min(max(mark[0], box.left), box.right), min(max(mark[1], box.bottom), box.top))
    line = shapely.LineString((mark, near))
    if line.length - MARK_RADIUS < TIED_FROM:
        return shapely.LineString()
    return substring(line, MARK_RADIUS + CLEAR, line.length - CLEAR)
