"""What the sheets give at other sizes: counts alone, from layouts that hold, with what is known of sizes nearby."""

from collections.abc import Collection, Iterator
from dataclasses import replace
from functools import partial

from publisher.basics import Finding, record, run_checks
from publisher.design import Design, SheetSize
from publisher.geometry import Part
from publisher.material.checks import CHECKS, BoardList, board_lists
from publisher.material.engines import EFFORTS, Desk, solve, solve_like
from publisher.material.packing import Packed
from publisher.material.problem import Problem

CountKey = tuple[str, str, str]  # board, sheet's label, part ("" for the whole list)


@record
class SheetCount:
    """One number with the layout that proves it: copies of ``part`` alone on one sheet, or, where ``part`` is "", the sheets that
    the whole list takes. ``number`` is 0 for what fits no sheet of this size. ``letter`` is that of the part."""

    board: str
    sheet: SheetSize
    part: str
    letter: str
    number: int
    packed: Packed

    @property
    def key(self) -> CountKey:
        """What it counts, whatever the sizes are."""
        return (self.board, self.sheet.label, self.part)


def count_layouts(
    design: Design,
    parts: tuple[Part, ...],
    known: tuple[SheetCount, ...] = (),
    only: Collection[CountKey] | None = None,
    near: bool = False,
) -> tuple[tuple[SheetCount, ...], tuple[Finding, ...]]:
    """Return what each sheet gives, by the quick search, and what is wrong with board and parts. Nothing is stored or drawn.

    ``known``: counts at a smaller and a greater value of a size. What lies between is taken to be no better than the better of the
    two: a layout that gives as much here, a known one that holds or one made as that was, is the answer, and nothing else is
    searched. A layout that holds here is never bettered by a worse one. ``only``: what to count; nothing is checked then.
    ``near``: nothing else is searched in any case, where both are known.
    """
    desk = Desk(EFFORTS["quick"])
    found: list[SheetCount] = []
    findings: list[Finding] = []
    for todo in board_lists(design, parts):
        findings += () if only else run_checks(CHECKS, todo)
        for empty, problem in _problems(todo):
            if only is None or empty.key in only:
                own = tuple(one for one in known if one.key == empty.key)
                packed = _counted(problem, own, desk, near) if problem.pieces else empty.packed
                found.append(replace(empty, number=_number(problem, packed), packed=packed))
    return tuple(found), tuple(findings)


def _problems(todo: BoardList) -> Iterator[tuple[SheetCount, Problem]]:
    """Yield, for each sheet, the problem of each part alone, without a piece where it does not fit, and that of the list of those that
    do; with each the count of a layout of nothing."""
    nothing = Packed((), "rows", 0)
    for sheet in todo.laid_on():
        fitting = todo.fitting(sheet)
        for part in todo.parts:
            one = todo.alone(part, sheet)
            empty = SheetCount(todo.board.id, sheet, part.id, part.letter, 0, nothing)
            yield empty, one if part in fitting else replace(one, pieces=())
        yield SheetCount(todo.board.id, sheet, "", "", 0, nothing), todo.listed(fitting, sheet)


def _number(problem: Problem, packed: Packed) -> int:
    return sum(map(len, packed.sheets)) if problem.alone else len(packed.sheets)


def _counted(problem: Problem, known: tuple[SheetCount, ...], desk: Desk, near: bool) -> Packed:
    """Return the best layout of the known ones that hold and of a search, which is left out where it is not needed."""
    rank = partial(_rank, problem)  # of equal ones the first is the best, and those that are known stand first
    nearby = [one.packed for one in known if one.number]
    holding = [packed for packed in nearby if not problem.flaws(packed.sheets)]
    enough = min(map(rank, nearby)) if nearby and len(known) > 1 else None
    if holding:
        best = min(holding, key=rank)
        if rank(best) == enough or _fewest(problem, best):
            return best
    if enough is not None:
        holding.append(solve_like(problem, min(nearby, key=rank), desk))
        best = min(holding, key=rank)
        if near or rank(best) == enough:
            return best
    return min((*holding, solve(problem, desk)), key=rank)


def _rank(problem: Problem, packed: Packed) -> int:
    """Return a number that is the less, the better a layout is."""
    return -_number(problem, packed) if problem.alone else _number(problem, packed)


def _fewest(problem: Problem, packed: Packed) -> bool:
    """Say whether a list lies on so few sheets that by area it cannot be fewer."""
    return not problem.alone and len(packed.sheets) <= problem.least_sheets()
