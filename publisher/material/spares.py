"""Spare copies that go on the sheets of a list without another sheet: a second try that costs nothing."""

import hashlib
from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

import numpy as np

from publisher.basics import Pose
from publisher.material.bottom_left import Bin, CopyKind, CopySpot, FilledSheet, fill
from publisher.material.container import from_hole, upright
from publisher.material.judge import flaws_of_turns
from publisher.material.model import Layout, Piece, Spare
from publisher.material.outlines import NESTING_GRID, turned
from publisher.material.packing import items, kinds_of, numbered
from publisher.material.problem import Problem

MOST_SPARES = 12  # spare copies of a part that are looked for: nobody spoils more of one
EXACT_FIT = 0.005  # mm: half of what layouts may lack of their gaps
MOST_LAID = 300  # copies on the sheets; for more no spares are looked for


def spare_key(problem: Problem, laid: Sequence[Layout], part: str) -> str:
    """Return the name of a part's spares on the sheets of a list: another layout, another name."""
    digest = hashlib.sha256(f"spare|{part}|{MOST_SPARES}|{problem.key()}\n".encode())
    for layout in laid:
        for i in layout.items:
            digest.update(f"{i.part}|{_pose(i.pose)}\n".encode())
        digest.update(b"sheet\n")
    return digest.hexdigest()


def _pose(pose: Pose) -> str:
    return f"{round(pose.x * NESTING_GRID)}|{round(pose.y * NESTING_GRID)}|{round(pose.turn * 1e6)}|{pose.mirrored}"


def find_spares(problem: Problem, laid: Sequence[Layout], part: str) -> Spare | None:
    """Lay up to ``MOST_SPARES`` more copies of a part on the sheets as they are, by bottom-left placement.

    Between two pieces that leave just its own width the engine finds no place for a copy: a hair less of a gap is one. None when there
    are too many copies to look, or when what was found does not hold.
    """
    if sum(len(layout.items) for layout in laid) > MOST_LAID:
        return None
    pieces = _as_laid(problem, tuple(laid))
    if pieces is None:
        return None
    gap = problem.board.knife_gap
    found = [_laid_beside(problem, laid, part, pieces, less) for less in (gap, max(0.0, gap - EXACT_FIT))]
    return max((one for one in found if one is not None), key=lambda one: one.copies, default=None)


def _laid_beside(
    problem: Problem, laid: Sequence[Layout], part: str, pieces: tuple[Piece, ...], gap: float
) -> Spare | None:
    kinds = {(pieces[k.piece].id, k.mirrored): k for k in kinds_of(pieces, gap)}
    # a part whose copies are all mirrored is wanted mirrored
    wanted = kinds.get((part, False)) or kinds[part, True]
    full = fill(
        upright(problem.free()),
        [wanted] * MOST_SPARES,
        len(laid),
        False,
        [_bin(problem, s, kinds) for s in laid],
        empty={},
    )
    sheets = items(pieces, full)
    # rooms in holes come after the sheet itself, so what is new is told by its place
    known = [{(i.part, i.pose.x, i.pose.y, i.pose.turn) for i in layout.items} for layout in laid]
    extra = tuple(
        tuple(i for i in sheet if (i.part, i.pose.x, i.pose.y, i.pose.turn) not in old)
        for sheet, old in zip(sheets, known, strict=True)
    )
    found = Spare(part, spare_key(problem, laid, part), extra, sum(map(len, extra)) >= MOST_SPARES)
    return None if spare_flaw(problem, laid, found) else found


@lru_cache(maxsize=2)
def _as_laid(problem: Problem, laid: tuple[Layout, ...]) -> tuple[Piece, ...] | None:
    """Return the pieces with their angles in the frame in which all the sheets lie, if it is one; each part's spares ask for it."""
    return next((p for p in problem.framed() if not any(flaws_of_turns(p, sheet.items) for sheet in laid)), None)


def spare_flaw(problem: Problem, laid: Sequence[Layout], spare: Spare) -> str:
    """Return what is wrong with a list's sheets when its spares lie on them too; '' when they hold."""
    if len(spare.sheets) != len(laid) or any(i.part != spare.part for sheet in spare.sheets for i in sheet):
        return "they belong to other sheets or to another part"
    mirrored = sum(i.pose.mirrored for sheet in spare.sheets for i in sheet)
    pieces = tuple(
        replace(p, count=p.count + spare.copies, mirrored=p.mirrored + mirrored) if p.id == spare.part else p
        for p in problem.pieces
    )
    more = replace(problem, pieces=pieces)
    both = numbered(pieces, [(*layout.items, *sheet) for layout, sheet in zip(laid, spare.sheets, strict=True)])
    wrong = more.flaws(both, [len(layout.items) for layout in laid])
    return wrong[0].message if wrong else ""


def _bin(problem: Problem, layout: Layout, kinds: dict[tuple[str, bool], CopyKind]) -> Bin:
    """Return a sheet as the bottom-left engine knows it: what lies in holes lies there as on the sheet."""
    free = upright(problem.free())
    spots = [
        CopySpot(
            kinds[i.part, i.pose.mirrored], i.pose.turn, round(i.pose.x * NESTING_GRID), round(i.pose.y * NESTING_GRID)
        )
        for i in layout.items
    ]
    rooms = [FilledSheet(free, spots)]
    for spot in spots:
        for hole in spot.kind.outline.holes:
            moved = turned(hole, spot.turn, spot.kind.mirrored) + np.array((spot.x, spot.y)) / NESTING_GRID
            inside = [s for s in spots if s is not spot and _within(s, moved)]
            if not inside:
                rooms.append(FilledSheet(from_hole(moved)))
    return Bin(rooms)


def _within(spot: CopySpot, ring: np.ndarray[tuple[int, ...], np.dtype[np.float64]]) -> bool:
    """Say whether a copy may lie in a hole: its middle is between the hole's sides."""
    at = turned(spot.kind.outline.bare, spot.turn, spot.kind.mirrored) + np.array((spot.x, spot.y)) / NESTING_GRID
    middle = (at.min(axis=0) + at.max(axis=0)) / 2
    return bool((middle > ring.min(axis=0)).all() and (middle < ring.max(axis=0)).all())
