"""Layers of a spiral stair that are turned by another angle than the notch in the one below is cut for."""

from publisher.basics import Check, Findings, checked
from publisher.design import PartPlan
from publisher.joints.assembled import Assembled

STEP = "spiral_stair_layer"

OFF_ITS_NOTCH = 0.05
"""Degrees: 0.1 mm at a reach of 120 mm. What is less nobody sees."""


@checked(
    "joints/notch-elsewhere",
    "Each step of a stair lies where the notch in the step below says",
    "the layer is laid with its front edge at the notch, which is cut for the turn of the shape: a row that says another turn shows "
    "in pictures what no hand builds; a second ply, without a turn, needs no notch",
    may_be_empty=True,
)
def notch_elsewhere(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Compare the turn of every row of steps that lie on their like with the turn that the step's own notch is cut for."""
    parts = {plan.id: plan for plan in subject.design.parts}
    looked_at = 0
    for plan in subject.design.stacks:
        for at, row in enumerate(plan.rows):
            on_its_like = row.count > 1 or (at > 0 and plan.rows[at - 1].part == row.part)
            notch = _cut_for(parts.get(row.part))
            if notch is None or not on_its_like:
                continue
            looked_at += 1
            if _apart(row.turn, notch) > OFF_ITS_NOTCH and _apart(row.turn, 0.0) > OFF_ITS_NOTCH:
                yield check.found(
                    f"{row.part} of {plan.name} is turned by {row.turn:g}° against the step below, whose notch is cut for {notch:g}°: "
                    "who lays it at the notch builds another stair",
                    subject=plan.name,
                    hint="write one size for both, turn: in the row and turn: in the part's with; or let a part of its own, like: this "
                    "one, lie below it with the other turn",
                    place=row.place,
                    value=row.turn,
                    limit=notch,
                )
    return looked_at


def _cut_for(part: PartPlan | None) -> float | None:
    """Return the turn in degrees that the notch of a step is cut for; None of what has none."""
    if part is None or part.shape != STEP or part.combine:
        return None
    said = {parameter.name: parameter.value for parameter in part.parameters}
    notch, turn = said.get("notch", 0.0), said.get("turn", 0.0)
    return float(turn) if float(notch) > 0.0 else None


def _apart(one: float, other: float) -> float:
    return abs((one - other + 180.0) % 360.0 - 180.0)
