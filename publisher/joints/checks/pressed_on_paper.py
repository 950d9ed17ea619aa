"""Patterns that are to be pressed into paper."""

from publisher.basics import Check, Findings, checked
from publisher.joints.assembled import Assembled


@checked(
    "joints/pressed-on-paper",
    "A pattern is pressed into bare foam",
    "paper springs back or tears under the pencil; a papered face is drawn on or painted, or its paper is peeled off, and peeled "
    "board is thinner and measured again",
    may_be_empty=True,
)
def pressed_on_paper(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look at the outside face of every part whose pattern is said to be pressed: board with paper on both faces, or bent
    board whose outside is covered."""
    looked_at = 0
    boards = {board.id: board for board in subject.design.boards}
    bent = {part.id: part.bending for part in subject.parts}
    for plan in subject.design.parts:
        if plan.surface is None or plan.surface.how != "pressed":
            continue
        looked_at += 1
        board, bending = boards[plan.board], bent.get(plan.id)
        covered = bending is not None and bending.keeps == "outside" and bending.covered != "none"
        if not covered and board.faces != "paper_both":
            continue
        on = (
            f"{bending.covered}, which covers its outside"
            if covered and bending
            else f"the paper of the board {board.id}"
        )
        yield check.found(
            f"the pattern of part {plan.letter} ({plan.name}) is to be pressed into {on}",
            subject=plan.id,
            hint="say how: drawn"
            if covered
            else "say how: drawn, or peel the board: measure it again and write peeled: and its thickness then",
            place=plan.surface.place,
        )
    return looked_at
