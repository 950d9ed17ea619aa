"""Knee braces as parts: each braced stack brings one, which is lettered, drawn, cut and counted like any other."""

from collections.abc import Sequence

from publisher.design.assembly.assemblies import Assemblies
from publisher.design.language import Scope, pick_hint
from publisher.design.parts import KnownParts, letter
from publisher.design.records import Board, BracePlan, Parameter, PartPlan, StackPlan
from publisher.design.rules import plans as rules

BRACE_SHAPE, BRACE_NAME = "knee_brace", "Knee brace"


def brace_parts(
    built: Assemblies, parts: Sequence[PartPlan], boards: Sequence[Board], known: KnownParts, scope: Scope
) -> tuple[PartPlan, ...]:
    """Return the part of each braced stack, called ASSEMBLY_brace, with the next free letter, and make it known to steps.

    It is cut from the board of the steps unless the brace says another, and traced with the same pencil. ``count`` is one for
    each time that the stack is built; joints know under how many steps a brace stands.
    """
    made: list[PartPlan] = []
    for name, stacks in built.stacks_of:
        brace = next((stack.brace for stack in stacks if stack.brace is not None), None)
        step = _step(stacks, parts)
        if brace is None or step is None:
            continue
        board = next((board for board in boards if board.id == (brace.board or step.board)), None)
        if board is None:
            _refuse_board(brace, name, boards, scope)
            continue
        if known.taken(brace.part) or brace.part in built.names:
            _refuse_name(brace, name, scope)
            continue
        known.boards[brace.part] = board
        made.append(_part(brace, step, board, _free_letter((*parts, *made)), built.copies(name)))
    return tuple(made)


def _part(brace: BracePlan, step: PartPlan, board: Board, its_letter: str, copies: int) -> PartPlan:
    sides = (("run", brace.run), ("drop", brace.drop))
    return PartPlan(
        id=brace.part,
        letter=its_letter,
        name=BRACE_NAME,
        board=board.id,
        thickness=board.thickness,
        shape=BRACE_SHAPE,
        parameters=tuple(Parameter(key, value, "", brace.place) for key, value in sides),
        openings=(),
        surface=None,
        drawing=None,
        treatments=(),
        count=copies,
        spare=0,
        mirrored=0,
        turning="any" if board.grain == "none" else "half",
        trace_allowance=step.trace_allowance,
        place=brace.place,
    )


def _step(stacks: Sequence[StackPlan], parts: Sequence[PartPlan]) -> PartPlan | None:
    """Return the part that most steps are of: of the turned or shifted rows, or of all where none is."""
    rows = [row for stack in stacks for row in stack.rows]
    moved = [row for row in rows if row.count > 1 and (row.turn % 360.0 or row.shift != (0.0, 0.0))]
    most = max(moved or rows, key=lambda row: row.count, default=None)
    return next((part for part in parts if most is not None and part.id == most.part), None)


def _free_letter(parts: Sequence[PartPlan]) -> str:
    taken = {part.letter for part in parts}
    return next(name for index in range(len(taken) + 1) if (name := letter(index)) not in taken)


def _refuse_board(brace: BracePlan, assembly: str, boards: Sequence[Board], scope: Scope) -> None:
    if not brace.board:
        return  # the step's own finding says so
    scope.findings.append(
        rules.UNKNOWN_BOARD.found(
            f"there is no board “{brace.board}” for the braces",
            subject=f"assembly {assembly}",
            hint=pick_hint(brace.board, [board.id for board in boards], "boards"),
            place=brace.place,
        )
    )


def _refuse_name(brace: BracePlan, assembly: str, scope: Scope) -> None:
    scope.findings.append(
        rules.NAME_TAKEN.found(
            f"“{brace.part}” is the name of the braces of {assembly}, and of something else",
            subject=f"assembly {assembly}",
            hint="give the other part or assembly another name",
            place=brace.place,
        )
    )
