"""The one function behind which the engines stand: pieces in, verified layouts out."""

import random
from collections.abc import Iterable, Mapping, Sequence

from publisher.basics import Point, Pose, record, remembered
from publisher.material.bottom_left import Bin, CopyKind, CopySpot, GridRings, Lies, copies_on, fill, orders
from publisher.material.container import Container, prepared
from publisher.material.judge import insist
from publisher.material.model import Item, Piece
from publisher.material.outlines import NESTING_GRID, distinct_turns, outline, upright_turn

NO_MORE: Mapping[int, float] = {}


@record
class Packed:
    """Sheets of items, and which of the fixed orders (its number) made them."""

    sheets: tuple[tuple[Item, ...], ...]
    engine: str
    seed: int


def pack(
    pieces: tuple[Piece, ...],
    container: tuple[tuple[Point, ...], ...],
    gap: float,
    bins: int | None = None,
    tries: int = 4,
) -> tuple[tuple[Item, ...], ...]:
    """Lay pieces into as many equal containers as it takes, or at most ``bins``; return the items of each.

    ``container``: rings in mm, the first the outside, the others blocked holes; any polygons. Pieces keep ``gap`` mm from
    each other and may touch the container's edges. Pieces that find no room are left out: compare the numbers. ``tries``: how
    many orders of the pieces are tried, each from below and from the left. The same input gives the same layout everywhere.
    Raises LayoutFault when a layout of ours does not hold (a fault of ours).
    """
    packed = best_packing(pieces, prepared(container), gap, bins, tries).sheets
    insist(pieces, container, gap, packed, complete=False, what="layout by bottom-left placement")
    return packed


def kinds_of(pieces: Sequence[Piece], gap: float, askew: Mapping[int, float] = NO_MORE) -> tuple[CopyKind, ...]:
    """Prepare pieces for the engines; mirrored copies are kinds of their own.

    ``askew``: one more turn (degrees) to try for a piece that may lie anyhow, by its number, beside the usual ones.
    """
    kinds = []
    for number, piece in enumerate(pieces):
        shape = outline(piece.rings, gap)
        for mirrored, count in ((False, piece.count - piece.mirrored), (True, piece.mirrored)):
            usual = piece.angles or usual_turns(piece.rings[0])
            more = (askew[number] * (-1.0 if mirrored else 1.0) % 360.0,) if number in askew else ()
            turns = distinct_turns(shape, tuple(dict.fromkeys((*usual, *more))))
            if count > 0:
                kinds.append(CopyKind(number, shape, mirrored, turns, count))
    return tuple(kinds)


def best_packing(
    pieces: Sequence[Piece],
    free: Container,
    gap: float,
    bins: int | None,
    tries: int,
    askew: Mapping[int, float] = NO_MORE,
) -> Packed:
    """Try ``tries`` orders, filling from below and from the left: the fixed ones, then small changes of the best so far from a
    fixed seed. Return the best: most copies laid, fewest sheets, the last sheet least filled. Stops when the number of sheets
    cannot be less by area."""
    kinds = kinds_of(pieces, gap, askew)
    if not kinds:
        return Packed((), "bottom-left", 0)
    wanted = sum(k.count for k in kinds)
    least = -(-sum(k.outline.area * k.count for k in kinds) // max(free.area, 1e-9))
    best: tuple[tuple[int, int, float], Packed] | None = None
    queues = orders(kinds, tries)
    leader = queues[0]
    chance = random.Random(1)
    empty: dict[Lies, GridRings] = {}
    for seed in range(tries):
        queue = queues[seed] if seed < len(queues) else changed(leader, chance)
        for across in (False, True):
            sheets = fill(free, queue, bins, across, empty=empty)
            laid = copies_on(sheets)
            score = (-laid, len(sheets), _last_filled(sheets, across))
            if best is None or score < best[0]:
                found = Packed(numbered(pieces, items(pieces, sheets)), "bottom-left", 2 * seed + across)
                best, leader = (score, found), queue
            if not laid or (laid == wanted and len(sheets) <= least):
                return best[1]  # where nothing fits an empty sheet, no order helps
        if wanted == 1 and seed + 1 >= len(queues):
            break
    assert best is not None
    return best[1]


def _last_filled(sheets: Sequence[Bin], across: bool) -> float:
    """Return how far the last sheet is filled, in mm."""
    return round(sheets[-1].used(across) / NESTING_GRID, 3) if sheets else 0.0


def changed(queue: list[CopyKind], chance: random.Random) -> list[CopyKind]:
    """Return an order with one to three copies swapped or moved."""
    order = list(queue)
    for _ in range(1 + int(chance.random() * 3)):
        i, j = int(chance.random() * len(order)), int(chance.random() * len(order))
        if chance.random() < 0.5:
            order[i], order[j] = order[j], order[i]
        else:
            order.insert(j, order.pop(i))
    return order


def items(pieces: Sequence[Piece], sheets: Iterable[Bin]) -> tuple[tuple[Item, ...], ...]:
    """Return the sheets' spots as items, not numbered yet."""

    def item(spot: CopySpot) -> Item:
        # rounded as the store writes it, so that a layout read back is the same
        pose = Pose(spot.x / NESTING_GRID, spot.y / NESTING_GRID, round(spot.turn, 6) % 360.0, spot.kind.mirrored)
        return Item(pieces[spot.kind.piece].id, 0, pose)

    return tuple(tuple(item(spot) for spot in sheet.spots()) for sheet in sheets)


def numbered(pieces: Sequence[Piece], sheets: Iterable[Iterable[Item]]) -> tuple[tuple[Item, ...], ...]:
    """Return the sheets with the copies of each piece numbered from 1 in their order; mirrored copies come last."""
    plain = {p.id: p.count - p.mirrored for p in pieces}
    numbers: dict[tuple[str, bool], int] = {}

    def number(item: Item) -> Item:
        key = (item.part, item.pose.mirrored)
        numbers[key] = numbers.get(key, plain[item.part] if item.pose.mirrored else 0) + 1
        return Item(item.part, numbers[key], item.pose)

    return tuple(tuple(number(item) for item in sheet) for sheet in sheets)


@remembered
def usual_turns(ring: tuple[Point, ...]) -> tuple[float, ...]:
    """Return the turns (degrees) tried where any is allowed: quarter turns, and those at which the piece's least bounding
    rectangle stands upright."""
    return tuple(sorted({q + t for q in (0.0, 90.0, 180.0, 270.0) for t in (0.0, upright_turn(ring))}))
