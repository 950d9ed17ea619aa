"""What the sheets give at other sizes: counts alone, from layouts that hold, with what is known of sizes nearby."""

from collections.abc import Collection, Iterator
from dataclasses import replace

from publisher.basics import Finding, record, run_checks
from publisher.design import Design, SheetSize
from publisher.geometry import Part
from publisher.material.checks import CHECKS, BoardList
from publisher.material.engines import EFFORTS, Desk, solve, solve_like
from publisher.material.packing import Packed
from publisher.material.problem import MOST_ON_SHEETS, Problem

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
    cut = tuple(p for p in parts if p.count + p.spare > 0)
    letters = {part.id: part.letter for part in parts}
    desk = Desk(EFFORTS["quick"])
    found: list[SheetCount] = []
    findings: list[Finding] = []
    for board in design.boards:
        used = tuple(p for p in cut if p.board == board.id)
        if not used:
            continue
        todo = BoardList(board, board.sheets, used)
        findings += () if only else run_checks(CHECKS, todo)
        if todo.copies > MOST_ON_SHEETS:
            continue
        for sheet in todo.usable():
            for part, problem in _problems(todo, sheet):
                key = (board.id, sheet.label, part)
                if only is None or key in only:
                    own = tuple(one for one in known if one.key == key)
                    packed = _counted(problem, own, desk, near) if problem.pieces else Packed((), "rows", 0)
                    found.append(
                        SheetCount(board.id, sheet, part, letters.get(part, ""), _number(problem, packed), packed)
                    )
    return tuple(found), tuple(findings)


def _problems(todo: BoardList, sheet: SheetSize) -> Iterator[tuple[str, Problem]]:
    """Yield the problem of each part alone, without a piece where it does not fit; and that of the list of those that do."""
    fitting = todo.fitting(sheet)
    for part in todo.parts:
        one = todo.alone(part, sheet)
        yield part.id, one if part in fitting else replace(one, pieces=())
    yield "", todo.listed(fitting, sheet)


def _number(problem: Problem, packed: Packed) -> int:
    return sum(map(len, packed.sheets)) if problem.alone else len(packed.sheets)


def _counted(problem: Problem, known: tuple[SheetCount, ...], desk: Desk, near: bool) -> Packed:
    """Return the best layout of the known ones that hold and of a search, which is left out where it is not needed."""
    holding = [one.packed for one in known if one.number and not problem.flaws(one.packed.sheets)]

    def rank(packed: Packed) -> int:
        return -_number(problem, packed) if problem.alone else _number(problem, packed)

    better = min((one.packed for one in known if one.number), key=rank, default=None)
    enough = rank(better) if better is not None and len(known) > 1 else None
    best = min(holding, key=rank, default=None)
    if best is not None:
        least = not problem.alone and _number(problem, best) <= problem.least_sheets()
        if least or rank(best) == enough:
            return best
    if better is not None and enough is not None:
        tried = solve_like(problem, better, desk)
        best = tried if best is None or rank(tried) < rank(best) else best
        if near or rank(best) == enough:
            return best
    tried = solve(problem, desk)
    return best if best is not None and rank(best) <= rank(tried) else tried
