"""Steps that break under a figure at their outer edge."""

from publisher.basics import Check, Findings, checked
from publisher.basics.wording import counted, figures_apart
from publisher.joints.assembled import Assembled
from publisher.joints.bending import BENDING_STRENGTH, strength_of
from publisher.joints.checks.tips_over import weight
from publisher.joints.stacks import StackReport, weakest
from publisher.joints.wholes import PiledThings


@checked(
    "joints/step-too-weak",
    "Steps bear a figure at their outer edge",
    "the top step sticks out one board thick where all others are glued to the next: it breaks first (common practice); "
    f"board whose strength nobody states bears {BENDING_STRENGTH:g} MPa (an assumption)",
    may_be_empty=True,
)
def step_too_weak(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Compare the greatest root stress of every stack with the bending strength of its board; layers that bend as decks are judged so."""
    boards = {board.id: board for board in subject.design.boards}
    parts = {part.id: part for part in subject.parts}
    looked_at = 0
    judged: list[StackReport | PiledThings] = [*subject.wholes, *subject.piles]
    for report in judged:
        root = weakest(report.own_roots)
        looked_at += len(report.own_roots)
        if root is None:
            continue
        layer = report.stack.layers[root.layer]
        lies = f"{layer.section}, " if isinstance(report, PiledThings) else ""
        board = boards[parts[layer.part].board]
        strength, figure = strength_of(board), weight(subject.design.figure)
        if root.stress <= strength:
            continue
        assumed = f", {BENDING_STRENGTH:g} MPa assumed" if board.bending_strength is None else ""
        bends, bears = figures_apart(root.stress, strength, 3)
        yield check.found(
            f"step {report.stack.treads.index(root.layer) + 1} of {report.stack.name} ({lies}layer {layer.number}) is the weak one: "
            f"with a figure of {figure} at its outer edge its root bends at {bends} MPa, and the board bears "
            f"{bears} MPa (arm {root.arm:.1f} mm, root {root.width:.1f} mm wide, "
            f"{counted(root.plies, 'board')} thick{assumed})",
            subject=report.stack.name,
            hint="double it (one more layer of the same part, without a turn, over it), prop it with a knee brace (brace: in the "
            "assembly, under: weak), or make its root wider or the step shorter",
            place=report.place,
            value=root.stress,
            limit=strength,
        )
    return looked_at
