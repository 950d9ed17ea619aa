"""What the improver is asked: one copy more of a part alone; a list on one sheet less. Its answers are judged like any other."""

from collections.abc import Sequence
from dataclasses import replace

from publisher.material.bottom_left import CopyKind
from publisher.material.model import Item, Piece
from publisher.material.packing import Packed, kinds_of, numbered
from publisher.material.problem import Problem, net_area
from publisher.material.strip_search import ENGINE, Strip, one_sheet

FULLEST = 0.93  # no layout of curved parts fills more of a sheet: beyond that the improver is not asked
FEW_ROUNDS = 2  # seeds; with no more than these only one copy more is asked for
MOST_ASKED = 150  # copies on a sheet; for more the improver is too slow

Seeds = tuple[tuple[int, bool], ...]  # each with the way the strip runs: up the sheet, or across it


def _on_one_sheet(
    problem: Problem, pieces: Sequence[Piece], kinds: tuple[CopyKind, ...], seeds: Seeds, seconds: int
) -> tuple[tuple[Item, ...], int]:
    """Return all copies of the kinds on one sheet and the seed that did it; () and 0 when no seed does."""
    box = problem.free()
    filled = sum(k.outline.area * k.count for k in kinds) / (box.width * box.height)
    if filled > FULLEST or sum(k.count for k in kinds) > MOST_ASKED:
        return (), 0
    for seed, upright in seeds:
        strip = Strip(kinds, (box.width, box.height), problem.board.knife_gap, seed, seconds, upright)
        items = one_sheet(strip, pieces, (box.left, box.bottom))
        # the gap is kept to the tolerance by the improver's own reckoning in single precision: looked at again here
        if items and not replace(problem, pieces=tuple(pieces), alone=True).flaws((items,)):
            return items, seed
    return (), 0


def more_on_one_sheet(
    problem: Problem, kind: CopyKind, piece: Piece, best: Packed, seeds: Seeds, seconds: int
) -> Packed:
    """Ask for one copy more of a part alone; with more than a few seeds, for one more until the answer is no. Returns the best
    layout known."""
    turns = kind.turns if piece.angles else ()
    count = sum(map(len, best.sheets)) + 1
    while seeds and count <= piece.count:
        asked = replace(kind, count=count, turns=turns)
        items, seed = _on_one_sheet(problem, (piece,), (asked,), seeds, seconds)
        if not items:
            break
        best = Packed((items,), ENGINE, seed)
        count += 1
        if len(seeds) <= FEW_ROUNDS:
            break
    return best


def fewer_sheets(problem: Problem, best: Packed, seeds: Seeds, seconds: int) -> Packed:
    """Try to do with a sheet less: the copies of the last sheet are brought onto the others, one sheet after another.

    Returns the best layout known.
    """
    pieces = problem.pieces
    box = problem.free()
    area = sum(net_area(p) * p.count for p in pieces)
    while seeds and len(best.sheets) > 1 and area <= FULLEST * (len(best.sheets) - 1) * box.width * box.height:
        tried = _without_last(problem, best, seeds, seconds)
        if tried is None:
            break
        best = tried
    return best


def _without_last(problem: Problem, best: Packed, seeds: Seeds, seconds: int) -> Packed | None:
    """Return a layout with the sheet that is least filled brought onto the others; None when that was not found."""
    areas = {p.id: net_area(p) for p in problem.pieces}
    sheets = sorted(best.sheets, key=lambda sheet: -sum(areas[i.part] for i in sheet))
    *kept, last = sheets
    left = sorted(last, key=lambda item: (-areas[item.part], item.part, item.pose.mirrored))
    used = 0
    for number, sheet in enumerate(kept):
        room = FULLEST * problem.free().width * problem.free().height - sum(areas[i.part] for i in sheet)
        more: list[Item] = []
        for item in left:
            if areas[item.part] <= room:
                more.append(item)
                room -= areas[item.part]
        while more:
            wanted = _amounts(problem.pieces, (*sheet, *more))
            items, seed = _on_one_sheet(problem, wanted, _kinds(problem, wanted), seeds, seconds)
            if items:
                kept[number], used = items, seed
                for item in more:
                    left.remove(item)
                break
            more.pop()  # the smallest stays behind
            if len(kept) > 1 and len(more) > 1:
                more = more[: (len(more) + 1) // 2]
            elif len(kept) == 1:
                return None
        if not left:
            return Packed(numbered(problem.pieces, kept), ENGINE, used)
    return None


def _amounts(pieces: tuple[Piece, ...], items: Sequence[Item]) -> tuple[Piece, ...]:
    """Return the pieces with the numbers of copies that the items are."""
    found = []
    for piece in pieces:
        mirrored = sum(i.part == piece.id and i.pose.mirrored for i in items)
        count = sum(i.part == piece.id for i in items)
        if count:
            found.append(replace(piece, count=count, mirrored=mirrored))
    return tuple(found)


def _kinds(problem: Problem, pieces: tuple[Piece, ...]) -> tuple[CopyKind, ...]:
    """Prepare pieces for the improver: it may turn freely what may lie anyhow."""
    kinds = kinds_of(pieces, problem.board.knife_gap)
    return tuple(k if pieces[k.piece].angles else replace(k, turns=()) for k in kinds)
