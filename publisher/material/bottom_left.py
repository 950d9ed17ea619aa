"""Bottom-left placement over no-fit polygons, on as many sheets as it takes, in a few fixed orders.

Each piece goes to the first sheet that has room for it, at the spot where its far edge comes to lie lowest (then
furthest left), over all its allowed turns. Spots are the corners of the inner-fit region less the no-fit polygons of
what already lies there. Holes of laid pieces are rooms of their own.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from math import inf

import numpy as np
import pyclipper

from publisher.basics import record
from publisher.geometry import one_before
from publisher.material.container import Container, from_hole, inner_fit
from publisher.material.nfp import no_fit
from publisher.material.outlines import NESTING_GRID, IntPath, Outline, turned


@dataclass(frozen=True, slots=True, eq=False)
class CopyKind:
    """Copies that are alike: which piece, its outline, whether mirrored, the turns to try (degrees)."""

    piece: int
    outline: Outline
    mirrored: bool
    turns: tuple[float, ...]
    count: int


@record
class CopySpot:
    """A copy of a kind on a sheet: its turn, and its origin on the grid."""

    kind: CopyKind
    turn: float
    x: int
    y: int


GridRings = list[list[list[int]]]
Lies = tuple[int, bool, float]  # a piece's number, whether mirrored, its turn


@dataclass(slots=True)
class FilledSheet:
    """A container and what lies in it. ``regions``: for a kind and turn, the free region and how much of ``spots`` it knows.
    ``empty``: the same before anything lies there, shared by sheets of one container that are filled with the same pieces.
    ``least``: for a kind and turn, filled from the left or from below, how near the best spot was when it was looked for last: a
    region only shrinks, so none is nearer now."""

    free: Container
    spots: list[CopySpot] = field(default_factory=list)
    regions: dict[Lies, tuple[GridRings, int]] = field(default_factory=dict)
    least: dict[tuple[int, bool, float, bool], tuple[float, float]] = field(default_factory=dict)
    empty: dict[Lies, GridRings] = field(default_factory=dict)

    def region(self, kind: CopyKind, turn: float) -> GridRings:
        """Return the rings (grid units) that bound where the kind's origin may lie at this turn."""
        key = (kind.piece, kind.mirrored, turn)
        if key not in self.regions:
            if key not in self.empty:
                self.empty[key] = self._unfilled(kind, turn)
            self.regions[key] = (self.empty[key], 0)
        rings, known = self.regions[key]
        if rings and known < len(self.spots):
            taken = tuple(
                ring + np.array((spot.x, spot.y))
                for spot in self.spots[known:]
                for ring in no_fit(
                    (spot.kind.outline, spot.turn, spot.kind.mirrored), (kind.outline, turn, kind.mirrored)
                )
            )
            rings = _less(rings, taken)
        self.regions[key] = (rings, len(self.spots))
        return rings

    def _unfilled(self, kind: CopyKind, turn: float) -> GridRings:
        room, taken = inner_fit(self.free, kind.outline.path(turn, kind.mirrored, grown=False))
        if room is None:
            return []
        left, bottom, right, top = room
        return _less([[[left, bottom], [right, bottom], [right, top], [left, top]]], taken)


def _less(rings: GridRings, taken: Sequence[IntPath]) -> GridRings:
    """Return the region bounded by ``rings`` less the union of the ``taken`` rings."""
    if not taken or not rings:
        return rings
    engine = pyclipper.Pyclipper()
    engine.AddPaths(rings, pyclipper.PT_SUBJECT, True)
    engine.AddPaths([ring.tolist() for ring in taken], pyclipper.PT_CLIP, True)
    left: GridRings = engine.Execute(pyclipper.CT_DIFFERENCE, pyclipper.PFT_EVENODD, pyclipper.PFT_NONZERO)
    return left


def _best(room: FilledSheet, kind: CopyKind, across: bool) -> CopySpot | None:
    """Return the best spot for one more copy in this room, or None. ``across``: fill from the left, not from below."""
    best: tuple[float, float, float] = (inf, inf, inf)
    spot: CopySpot | None = None
    up, side = (0, 1) if across else (1, 0)
    known = {turn: room.least.get((kind.piece, kind.mirrored, turn, across), (-inf, -inf)) for turn in kind.turns}
    for turn in sorted(kind.turns, key=lambda turn: (known[turn], turn)):
        if (*known[turn], turn) >= best:
            break
        key = (kind.piece, kind.mirrored, turn, across)
        rings = room.region(kind, turn)
        if not rings:
            room.least[key] = (inf, inf)
            continue
        corners = np.array([point for ring in rings for point in ring], dtype=np.int64)
        reach = kind.outline.path(turn, kind.mirrored, grown=False).max(axis=0)
        far = corners[:, up] + reach[up]
        lowest = int(far.min())
        row = corners[far == lowest]
        x, y = row[row[:, side].argmin()].tolist()
        score = (lowest, int(row[:, side].min() + reach[side]), turn)
        room.least[key] = score[:2]
        if score < best:
            best, spot = score, CopySpot(kind, turn, x, y)
    return spot


@dataclass(slots=True)
class Bin:
    """One sheet: its rooms, the sheet itself first, then the holes of the pieces that lie on it."""

    rooms: list[FilledSheet]

    def add(self, kind: CopyKind, across: bool) -> bool:
        """Lay one more copy; say whether there was room. Holes are tried first."""
        for room in (*self.rooms[1:], self.rooms[0]):
            spot = _best(room, kind, across)
            if spot is not None:
                self.put(room, spot)
                return True
        return False

    def put(self, room: FilledSheet, spot: CopySpot) -> None:
        """Lay a copy at a known spot and open its holes as rooms."""
        room.spots.append(spot)
        for hole in spot.kind.outline.holes:
            moved = turned(hole, spot.turn, spot.kind.mirrored) + np.array((spot.x, spot.y)) / NESTING_GRID
            self.rooms.append(FilledSheet(from_hole(moved)))

    def spots(self) -> Iterator[CopySpot]:
        """Yield all copies on this sheet."""
        for room in self.rooms:
            yield from room.spots

    def used(self, across: bool) -> int:
        """Return how far (grid units) the sheet is filled."""
        up = 0 if across else 1
        return max(
            (
                (s.x, s.y)[up] + int(s.kind.outline.path(s.turn, s.kind.mirrored, grown=False)[:, up].max())
                for s in self.rooms[0].spots
            ),
            default=0,
        )


def copies_on(sheets: Iterable[Bin]) -> int:
    """Return how many copies lie on sheets."""
    return sum(len(room.spots) for sheet in sheets for room in sheet.rooms)


def fill(
    free: Container,
    queue: Sequence[CopyKind],
    bins: int | None,
    across: bool,
    start: Sequence[Bin] = (),
    *,
    empty: dict[Lies, GridRings],
) -> list[Bin]:
    """Lay the queued kinds, one copy each time a kind stands in the queue, on at most ``bins`` sheets (None: no limit).

    ``empty``: what is known of an empty sheet for these kinds, kept for the next time that they are laid.
    """
    sheets = list(start)
    full: set[tuple[int, int, bool]] = set()
    left = [_area_left(free, sheet) for sheet in sheets]
    for kind in queue:
        placed = False
        for number, sheet in enumerate(sheets):
            mark = (number, kind.piece, kind.mirrored)
            if mark in full:
                continue
            rooms = len(sheet.rooms)
            if rooms == 1 and kind.outline.area > left[number]:
                full.add(mark)
                continue
            if sheet.add(kind, across):
                placed = True
                left[number] -= kind.outline.area
                if len(sheet.rooms) > rooms:  # a hole opened: others may find room now
                    full = {m for m in full if m[0] != number}
                break
            # a sheet only gets fuller: what found no room once needs no second try
            full.add(mark)
        if placed or (bins is not None and len(sheets) >= bins):
            continue
        fresh = Bin([FilledSheet(free, empty=empty)])
        if fresh.add(kind, across):
            sheets.append(fresh)
            left.append(_area_left(free, fresh))
    return sheets


def _area_left(free: Container, sheet: Bin) -> float:
    """Return the area (mm²) that is left of a sheet without holes, and a little more for the rounding of exact fits."""
    return 1.001 * free.area - sum(spot.kind.outline.area for spot in sheet.rooms[0].spots)


def orders(kinds: Sequence[CopyKind], number: int) -> list[list[CopyKind]]:
    """Return up to ``number`` queues, always the same for the same kinds: by area, by longest side, by shortest side,
    by perimeter, and turn by turn."""

    def box(kind: CopyKind) -> tuple[float, float]:
        size = kind.outline.bare.max(axis=0) - kind.outline.bare.min(axis=0)
        return float(size.max()), float(size.min())

    def around(kind: CopyKind) -> float:
        return float(np.hypot(*(kind.outline.bare - one_before(kind.outline.bare)).T).sum())

    measures = (
        lambda k: (-k.outline.area, k.piece, k.mirrored),
        lambda k: (-box(k)[0], k.piece, k.mirrored),
        lambda k: (-box(k)[1], k.piece, k.mirrored),
        lambda k: (-around(k), k.piece, k.mirrored),
    )
    queues: list[list[CopyKind]] = []
    for measure in measures:
        queue = [kind for kind in sorted(kinds, key=measure) for _ in range(kind.count)]
        if queue not in queues:
            queues.append(queue)
    by_turns = sorted(kinds, key=measures[0])
    rounds = [kind for step in range(max(k.count for k in kinds)) for kind in by_turns if kind.count > step]
    if rounds not in queues:
        queues.append(rounds)
    return queues[:number]
