"""Straight cuts of a laid-out sheet: those that several pieces share, and the order in which a sheet is taken apart.

A knife follows a rule from side to side, so a sheet is cut into strips first and the strips into pieces (common practice, no source).
Millimetres; the origin is the sheet's lower left corner.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

import numpy as np
import numpy.typing as npt

from publisher.basics import Box, CutPromise, record
from publisher.geometry import next_of
from publisher.material.model import Item, Piece
from publisher.material.outlines import turned

LEAST_SIDE = 10.0  # mm; a shorter straight side is no guide for a rule
ONE_LINE = 0.1  # mm; sides that lie so near to each other are cut along one line
APART = 5.0  # mm; the knife runs on from one side to the next over so much board, in which no piece lies
TOUCH = 0.01  # mm; layouts keep their gaps to this
LEAST_STRIP = 60.0  # mm; a wider strip that is left is cut off first, and kept
DEEPEST = 40  # strips within strips
ONE_STROKE = 2  # pieces with sides on one line, from which on the knife runs along it
OFF_STRIP = 2.0  # mm from the pieces to the cut that frees a strip that is left, at most

Sides = npt.NDArray[np.float64]


def straight_sides(pieces: Sequence[Piece], items: Sequence[Item]) -> Sides:
    """Return the sides of pieces that lie along the sheet's, as rows: 1 for one that runs across or 0 for an upright one, its distance
    from the sheet's lower or left edge, from where to where it runs, the number of its item."""
    rings = {piece.id: piece.rings for piece in pieces}
    known: dict[tuple[str, float, bool], Sides] = {}
    found = [np.empty((0, 5))]
    for number, item in enumerate(items):
        key = (item.part, item.pose.turn, item.pose.mirrored)
        if key not in known:
            known[key] = np.concatenate([_sides(turned(np.asarray(r), *key[1:])) for r in rings[item.part]])
        own = known[key].copy()
        level = own[:, 0] > 0
        own[:, 1] += np.where(level, item.pose.y, item.pose.x)
        own[:, 2:4] += np.where(level, item.pose.x, item.pose.y)[:, None]
        own[:, 4] = number
        found.append(own)
    return np.concatenate(found)


def _sides(ring: npt.NDArray[np.float64]) -> Sides:
    after = next_of(ring)
    low, high = np.minimum(ring, after), np.maximum(ring, after)
    run = high - low
    rows = []
    for level, along, away in ((1.0, 0, 1), (0.0, 1, 0)):
        straight = (run[:, along] >= LEAST_SIDE) & (run[:, away] < ONE_LINE / 2)
        middle = (low[straight, away] + high[straight, away]) / 2
        number = int(straight.sum())
        rows.append(
            np.column_stack(
                (np.full(number, level), middle, low[straight, along], high[straight, along], np.zeros(number))
            )
        )
    return np.concatenate(rows)


def shared_cuts(sides: Sides) -> int:
    """Return how many straight cuts serve two pieces or more, the knife running on from one to the next."""
    return sum(len(set(run)) > 1 for run in _runs(sides))


def _runs(sides: Sides) -> Iterator[list[int]]:
    """Yield the numbers of the items whose sides one stroke of the knife cuts."""
    rows = sides[np.lexsort((sides[:, 1], sides[:, 0]))]
    line = np.cumsum((np.diff(rows[:, 1], prepend=-1e9) > ONE_LINE) | (np.diff(rows[:, 0], prepend=0.0) != 0.0))
    order = np.lexsort((rows[:, 2], line))
    run: list[int] = []
    last, end = -1, 0.0
    for number, (_, _, start, stop, item) in zip(line[order].tolist(), rows[order].tolist(), strict=True):
        if run and (number != last or start > end + APART):
            yield run
            run = []
        end = max(end, stop) if run else stop
        run.append(int(item))
        last = number
    if run:
        yield run


@record
class _Cutting:
    """A sheet that is taken apart: the box of every item, the straight sides, and what of the board no cut goes through."""

    boxes: tuple[Box, ...]
    sides: Sides
    keep: Box | None = None

    def strips(self, items: Sequence[int], level: bool) -> list[list[int]]:
        """Return items in strips with a straight line between them, from the corner outwards."""
        low = [self.boxes[i].bottom if level else self.boxes[i].left for i in items]
        high = [self.boxes[i].top if level else self.boxes[i].right for i in items]
        strips: list[list[int]] = []
        end = -np.inf
        for start, stop, item in sorted(zip(low, high, items, strict=True)):
            if not strips or start >= end - TOUCH:
                strips.append([])
            strips[-1].append(item)
            end = max(end, stop)
        return strips

    def spares(self, level: bool, low: float, high: float, room: Box) -> bool:
        """Say whether a cut between two strips leaves whole what is kept."""
        if self.keep is None or self.keep.overlap(room) <= TOUCH:
            return True
        start, end = (self.keep.bottom, self.keep.top) if level else (self.keep.left, self.keep.right)
        return high <= start + TOUCH or low >= end - TOUCH

    def between(self, level: bool, strip: Sequence[int], after: Sequence[int]) -> tuple[float, float]:
        """Return where one strip ends and the next begins."""
        low = max(self.boxes[i].top if level else self.boxes[i].right for i in strip)
        return low, min(self.boxes[i].bottom if level else self.boxes[i].left for i in after)

    def off(self, level: bool, at: float, room: Box) -> float:
        """Return up to where the board beyond all pieces, from ``at`` on, is waste: what is kept begins there, or the cut may lie there."""
        beyond = room.top if level else room.right
        if self.keep is not None and self.keep.overlap(room) > TOUCH:
            start = self.keep.bottom if level else self.keep.left
            beyond = start if start >= at - TOUCH else beyond
        return float(min(beyond, at + 2 * OFF_STRIP))

    def parts(self, level: bool, strips: Sequence[Sequence[int]], room: Box) -> bool:
        """Say whether all cuts between strips leave whole what is kept."""
        return all(self.spares(level, *self.between(level, *two), room) for two in pairwise(strips))

    def cut(self, level: bool, low: float, high: float, room: Box) -> CutPromise:
        """Return the cut between two strips: on a line on which sides of two pieces lie, which it cuts with one stroke; else in the
        middle of the board between them, so that a hand that strays spoils no piece."""
        start, end = (room.left, room.right) if level else (room.bottom, room.top)
        own = self.sides[(self.sides[:, 0] == level) & (self.sides[:, 2] >= start) & (self.sides[:, 3] <= end)]
        lying = [len(set(own[np.abs(own[:, 1] - at) <= ONE_LINE, 4].tolist())) for at in (low, high)]
        at, number = (high, lying[1]) if lying[1] > lying[0] else (low, lying[0])
        if number < ONE_STROKE:
            at, number = ((low + high) / 2, number if high - low <= TOUCH else 0)
        return CutPromise(level, round(at, 4), start, end, number)


def order_of_cuts(
    sheet: Box, boxes: Sequence[Box], sides: Sides, keep: Box | None = None
) -> tuple[tuple[CutPromise, ...], tuple[int, ...]]:
    """Return the straight cuts in the order in which they are made, each from side to side of what is left, and the numbers of the items
    in the order in which they come free.

    ``sides``: of the items, as ``straight_sides`` gives them. What no straight line parts is left together, to be cut out along its
    outlines. ``keep``: no cut goes through it.
    """
    cutting = _Cutting(tuple(boxes), sides, keep)
    cuts: list[CutPromise] = []
    room = sheet
    if boxes:
        top, right = max(box.top for box in boxes), max(box.right for box in boxes)
        strips = [
            (wide * long, level, at)
            for level, at, wide, long in (
                (True, top, sheet.top - top, sheet.width),
                (False, right, sheet.right - right, sheet.height),
            )
            if wide >= LEAST_STRIP and cutting.spares(level, at, at, room)
        ]
        if strips:
            _, level, at = max(strips)
            cuts.append(cutting.cut(level, at, cutting.off(level, at, room), room))
            room, _ = _parted(room, cuts[-1])
    order = tuple(_taken_apart(cutting, tuple(range(len(boxes))), room, cuts, 0))
    return tuple(cuts), order


def _taken_apart(
    cutting: _Cutting, items: Sequence[int], room: Box, cuts: list[CutPromise], deep: int
) -> Iterator[int]:
    """Cut what is left into strips, then each of them; yield the items as they come free."""
    ways = [(level, cutting.strips(items, level)) for level in (True, False)]
    level, strips = max(ways, key=lambda way: len(way[1]) if cutting.parts(way[0], way[1], room) else 0)
    if len(strips) < 2 or deep > DEEPEST or not cutting.parts(level, strips, room):
        yield from sorted(items, key=lambda i: (cutting.boxes[i].bottom, cutting.boxes[i].left))
        return
    rooms: list[Box] = []
    for strip, after in pairwise(strips):
        cuts.append(cutting.cut(level, *cutting.between(level, strip, after), room))
        own, room = _parted(room, cuts[-1])
        rooms.append(own)
    for strip, own in zip(strips, (*rooms, room), strict=True):
        yield from _taken_apart(cutting, strip, own, cuts, deep + 1)


def _parted(room: Box, cut: CutPromise) -> tuple[Box, Box]:
    """Return what lies before a cut through a room, and what lies beyond it."""
    if cut.level:
        return replace(room, top=cut.at), replace(room, bottom=cut.at)
    return replace(room, right=cut.at), replace(room, left=cut.at)
