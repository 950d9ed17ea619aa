"""The search over tilted lattices: which patterns are nearly small enough for the sheet, and how to bend them to fit."""

from collections.abc import Iterator

import numpy as np

from publisher.basics import record
from publisher.material.lattice import Borders, Floats, Rows
from publisher.material.outlines import FloatPath, turned
from publisher.material.rows import RowBook
from publisher.material.tilted import (
    Bend,
    Extent,
    LatticePattern,
    Spots,
    bent,
    ends,
    excess,
    most_of,
    one,
    room_of,
    tilts,
)

BEND_NEAR = 5.0  # mm; patterns that go on a sheet larger by this on each side are tried
SPREAD = 1.15  # lattices that take up to this times the room of the densest are looked at
MOST_EACH = 8  # lattices of each turn
BATCH = 48  # changes tried at once
CALM = 0.7  # steps become smaller by this when nothing helps
SMALLEST = 0.01  # of the first steps: then a pattern is given up
FIRST_STEPS = (4.0, 8.0, 3.0, 0.3, 8.0, 3.0)  # degrees of turn; mm of dy, wider; share; mm of shift; degrees of tilt


@record
class Start:
    """A pattern that is ``over`` mm too large for the sheet in this lattice."""

    over: float
    bend: Bend
    pattern: LatticePattern


def most_tilted(book: RowBook, room: Extent, turns: tuple[float, ...], base: int, step: float, starts: int) -> Spots:
    """Return a sheet of more than ``base`` copies in one lattice, or () when none is found.

    ``turns``: allowed turns of the part (degrees); () for any. ``step``: degrees between the turns of lattices looked at.
    ``starts``: how many patterns are bent for each copy more.
    """
    bare, size = book.shape.bare, (room[2] - room[0], room[3] - room[1])
    found: Spots = ()
    while True:
        better: Spots = ()
        for start in _starts(book, room, turns, base, step)[:starts]:
            bend = _bend(book, start, size, turns)
            if bend is not None:
                better = _spots(book, bend, start.pattern, bare, room)
                break
        if not better:
            return found
        found, base = better, len(better)


def _starts(book: RowBook, room: Extent, turns: tuple[float, ...], base: int, step: float) -> list[Start]:
    """Return the patterns of more than ``base`` copies that nearly fit, the least too large first."""
    paired = book.m is not None
    angles = np.arange(0.0, 180.0 if paired else 360.0, step).tolist()
    pages = [book.lattices(float(angle), paired) for angle in angles]
    least = min(float(room_of(rows).min()) for rows in pages)
    large = (room[0] - BEND_NEAR, room[1] - BEND_NEAR, room[2] + BEND_NEAR, room[3] + BEND_NEAR)
    size = (room[2] - room[0], room[3] - room[1])
    found: list[Start] = []
    for rows in pages:
        each = room_of(rows)
        for i in np.argsort(each, kind="stable")[:MOST_EACH].tolist():
            if each[i] > SPREAD * least:
                break
            single = one(rows, i)
            allowed = {round((t - rows.turn) % 180.0, 6) for t in turns} if turns else set(tilts(single))
            for tilt in sorted(allowed):
                pattern = most_of(single, tilt, book.shape.bare, large, base)
                if pattern is not None:
                    over = float(excess(single, np.array((tilt,)), pattern, book.shape.bare, size)[0, 0])
                    found.append(Start(over, _numbers(rows.turn, single, tilt), pattern))
    found.sort(key=lambda s: (s.over, s.bend.turn, s.bend.tilt))
    return found


def _numbers(turn: float, single: Rows, tilt: float) -> Bend:
    """Return a lattice of ``lattice`` as free numbers: its pitch is the least, its second copy at its neighbour."""
    return Bend(turn, float(single.dy[0]), 0.0, 0.0, float(single.shift[0]), tilt, bool(single.zigzag[0]))


def _changes() -> Floats:
    """Return BATCH even steps in [-1, 1]⁴, the first of them 0: the additive recurrence of M. Roberts (2018), R4."""
    root = 1.0
    for _ in range(50):
        root = (1.0 + root) ** (1.0 / 5.0)
    share = (np.arange(BATCH)[:, None] * root ** -np.arange(1.0, 5.0)) % 1.0
    return np.asarray(2.0 * ((share + 0.5) % 1.0) - 1.0)


def _bend(book: RowBook, start: Start, size: tuple[float, float], turns: tuple[float, ...]) -> Bend | None:
    """Change a lattice by ever smaller steps until the pattern goes on the sheet; None when it does not."""
    best, over = start.bend, start.over
    scale, changes, round_ = 1.0, _changes(), 0
    while over > 0.0 and scale > SMALLEST:
        tried = min(
            _tried(book, best, start.pattern, size, turns, scale, np.roll(changes, round_ % 4, axis=1)), key=_over
        )
        round_ += 1
        if tried[0] < over - 1e-9:
            over, best = tried
        else:
            scale *= CALM
    return best if over <= 0.0 else None


def _over(tried: tuple[float, Bend]) -> float:
    return tried[0]


def _tried(
    book: RowBook,
    bend: Bend,
    pattern: LatticePattern,
    size: tuple[float, float],
    turns: tuple[float, ...],
    scale: float,
    changes: Floats,
) -> Iterator[tuple[float, Bend]]:
    """Yield the best of a batch of changes at each of three turns."""
    steps = np.array(FIRST_STEPS) * scale
    for way in (-1.0, 0.0, 1.0):
        turn = round(bend.turn + way * steps[0], 9)
        borders = borders_at(book, turn)
        numbers = np.array((bend.dy, bend.wider, bend.share, bend.shift)) + changes * steps[1:5]
        rows = bent(borders, turn, bend.zigzag, numbers)
        # the part keeps its turn on the sheet where only some are allowed
        fixed = bend.tilt - way * steps[0]
        angles = np.array((fixed,)) if turns else bend.tilt + steps[5] * np.linspace(-1.0, 1.0, 5)
        if not turns:
            angles = np.concatenate((angles, (fixed,)))
        over = excess(rows, angles, pattern, book.shape.bare, size)
        i, k = divmod(int(over.argmin()), len(angles))
        dy, wider, share, shift = (float(v) for v in numbers[i])
        kept = (max(wider, 0.0), min(max(share, 0.0), 1.0))
        yield float(over[i, k]), Bend(turn, dy, *kept, shift, float(angles[k]), bend.zigzag)


def borders_at(book: RowBook, turn: float) -> Borders:
    """Return the envelopes of the no-fit polygons at a turn."""
    n = tuple(turned(ring, turn) for ring in book.n)
    return Borders(n, tuple(turned(ring, turn) for ring in book.m) if book.m is not None else None)


def _spots(book: RowBook, bend: Bend, pattern: LatticePattern, bare: FloatPath, room: Extent) -> Spots:
    """Return the pattern's copies in the lower left corner of the sheet."""
    numbers = np.array(((bend.dy, bend.wider, bend.share, bend.shift),))
    rows = bent(borders_at(book, bend.turn), bend.turn, bend.zigzag, numbers)
    x, y = pattern.places(rows)
    at = turned(np.column_stack((x[0], y[0])), bend.tilt)
    low, high = ends(bare, bend.turn + bend.tilt)
    at = at - (at + np.where(pattern.second[:, None], -high, low)).min(axis=0) + np.array(room[:2])
    angle = bend.turn + bend.tilt
    return tuple(
        (float(px), float(py), round(angle + (180.0 if q else 0.0), 6))
        for (px, py), q in zip(at, pattern.second.tolist(), strict=True)
    )
