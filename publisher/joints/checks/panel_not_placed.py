"""A panel that no chain of joins leads to."""

from publisher.basics import Check, Findings, checked
from publisher.design import PanelPlan
from publisher.joints.assembled import Assembled
from publisher.joints.checks.edge_unknown import edge_unknown


@checked(
    "joints/panel-not-placed",
    "Every panel has its place",
    "a panel that no join leads to is in no picture and no size of the whole, and the buyer cannot know where it goes",
    may_be_empty=True,
)
def panel_not_placed(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look at every place of every panel assembly whose part could be drawn."""
    looked_at = 0
    drawn = {part.id for part in subject.parts}
    for mated in subject.panels:
        plan = mated.assembly.plan
        if edge_unknown.run(subject, edge_unknown).findings:
            looked_at += len(plan.places)
            continue  # the cause is said there; what hangs on it would only repeat it
        for place in plan.places:
            if place.part not in drawn:
                continue  # geometry has said why
            looked_at += 1
            if place.name in mated.assembly.unplaced:
                yield check.found(
                    f"nothing says where {place.name} stands: no chain of joins or rests leads from {plan.stands_on} to it",
                    subject=f"{plan.name}.{place.name}",
                    hint=_plate(plan, place.name)
                    + "join one of its straight edges to a panel that stands, say at which place of a "
                    "face it lies or stands, or what it rests on: sloping edges that meet at the top of it, or level edges at one height",
                    place=place.place,
                )
    return looked_at


def _plate(plan: PanelPlan, name: str) -> str:
    """Say how a plate is laid on the table for the panel to stand on that is said to stand there itself."""
    carries = any((seat.panel, seat.host) == (plan.stands_on.panel, name) for seat in plan.seats)
    return f"say lies_on_table: {name} in place of stands_on: {plan.stands_on}; or " if carries else ""
