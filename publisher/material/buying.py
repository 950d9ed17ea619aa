"""What a list takes: ways to buy its board, from verified layouts, and what there is to cut. Millimetres."""

from collections.abc import Collection, Iterable
from math import ceil

from publisher.basics import LineKind, Purpose, SheetsPromise, TipPromise, WorkPromise
from publisher.design import Board
from publisher.geometry import Part, path_length
from publisher.material.model import Yield

CUT_BY_A_TIP = {True: (1000.0, 2000.0), False: (2000.0, 4000.0)}
"""mm that a blade's tip cuts, at least and at most, in board with paper on it and in bare board. Common practice, no source."""

WORK = "work"


def ways_to_buy(yields: Iterable[Yield], parts: Iterable[Part]) -> tuple[SheetsPromise, ...]:
    """Return every sheet size on which a whole list goes, each a way of its own to buy that board."""
    letters = {part.id: part.letter for part in parts}
    return tuple(
        SheetsPromise(
            f"buy:{one.board}:{one.sheet.label}",
            one.board,
            one.sheet.label,
            one.sheet.width,
            one.sheet.height,
            len(one.sheets),
            tuple((letters[s.part], s.copies, s.capped) for s in one.spares if s.copies),
            _largest_offcut(one),
        )
        for one in yields
        if one.sheets and not one.left_out
    )


def _largest_offcut(one: Yield) -> tuple[float, float] | None:
    """Return the sides of the largest offcut of all sheets, the one along a sheet's longer side first."""
    left = max((box for box in one.offcuts if box), key=lambda box: box.width * box.height, default=None)
    if left is None:
        return None
    return (left.height, left.width) if one.sheet.height > one.sheet.width else (left.width, left.height)


PRESSED = (Purpose.SURFACE, Purpose.JOINT_TICK)
"""Marks of the stone or wood that is shown, on a face or at an edge."""


def work_of(boards: Iterable[Board], parts: Collection[Part]) -> WorkPromise:
    """Return what there is to cut, to score and to draw on all copies of all parts, spares included."""
    papered = {board.id: board.faces != "bare" for board in boards}
    cut, score, texture, holes, strokes = 0.0, 0.0, 0.0, 0, 0
    least, most = 0.0, 0.0
    for part in parts:
        copies = part.count + part.spare
        own = path_length(part.outline) * copies
        shortest, longest = CUT_BY_A_TIP[papered.get(part.board, False)]
        cut, least, most = cut + own, least + own / longest, most + own / shortest
        score += score_length(part) * copies
        drawn = [m.path.length for m in part.marks if m.purpose in PRESSED and m.kind is LineKind.DRAW]
        texture, strokes = texture + sum(drawn) * copies, strokes + len(drawn) * copies
        holes += len(part.outline.holes) * copies
    tips = tuple(TipPromise(one, *CUT_BY_A_TIP[one]) for one in sorted({papered.get(p.board, False) for p in parts}))
    return WorkPromise(WORK, cut, score, holes, texture, strokes, (ceil(least), ceil(most)), tips)


def score_length(part: Part) -> float:
    """Return the length (mm) of a part's marks to score or fold."""
    return sum(mark.path.length for mark in part.marks if mark.kind in (LineKind.SCORE, LineKind.FOLD))
