"""Panels with a foot and a head that stand upside down."""

from publisher.basics import Check, Findings, Severity, checked
from publisher.joints.assembled import Assembled
from publisher.joints.panels import Panel

HEADED = ("buttress", "gable_wall", "ruin", "arch_side", "stair_stringer")
"""Shapes of which nobody wants the top at the bottom."""

DOWN = -0.9
"""How much a panel's own up rises, from -1 for one that stands upside down: to 26° from it."""

LOOK = (
    "look at the edges that it is joined at, and at what it is joined to: one of them is turned, or two are exchanged"
)


@checked(
    "joints/stands-on-its-head",
    "What has a foot and a head stands on its foot",
    "an edge that runs up the other face in place of down puts a buttress, a gable or a wall with a door upside down, and the lengths "
    "agree all the same",
    Severity.WARNING,
    may_be_empty=True,
)
def stands_on_its_head(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look which way up every panel stands that has a way up."""
    looked_at = 0
    for mated in subject.panels:
        plan = mated.assembly.plan
        turned = {seat.panel: seat for seat in plan.seats if seat.edge}
        for panel in mated.assembly.panels:
            if not _has_a_head(panel):
                continue
            looked_at += 1
            if panel.frame.axes[2, 1] < DOWN:
                seat = turned.get(panel.name)
                yield check.found(
                    f"{panel.name} of {plan.name} stands on its head",
                    subject=plan.name,
                    hint=f"turn it by 180 deg: turn: {(seat.turn + 180.0) % 360.0:g} deg" if seat else LOOK,
                    place=seat.place if seat else panel.place,
                )
    return looked_at


def _has_a_head(panel: Panel) -> bool:
    """Tell whether a panel has a way up by its shape, or by a door at its foot."""
    return panel.part.shape in HEADED or any(opening.kind == "door" for opening in panel.part.openings)
