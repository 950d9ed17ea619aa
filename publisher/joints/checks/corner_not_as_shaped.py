"""Corners that are written otherwise than the shapes of both panels make them."""

from publisher.basics import Check, Findings, checked
from publisher.basics.wording import trimmed
from publisher.design import Join, PanelPlan
from publisher.joints.assembled import Assembled
from publisher.joints.checks.ring_does_not_close import shaped_corner
from publisher.joints.panels import ANGLE


@checked(
    "joints/corner-not-as-shaped",
    "Panels whose shapes know how they meet are joined so",
    f"a facet that is told its number of sides is bevelled for them; a corner written otherwise by more than "
    f"{ANGLE:g}° bevels it anew, and the piece leans where nothing closes round it",
    may_be_empty=True,
)
def corner_not_as_shaped(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Hold each mitre between shapes that know their bevels against those; in a ring, whether it closes says which is right."""
    looked_at = 0
    for mated in subject.panels:
        plan = mated.assembly.plan
        for join in plan.joins:
            corner = shaped_corner(mated, join) if join.joint in ("mitre", "fold") and not join.unsaid else None
            if corner is None:
                continue
            looked_at += 1
            if abs(corner - join.corner) <= ANGLE or _is_in_a_ring(plan, join):
                continue
            said = f"{trimmed(join.corner, 4)}°"
            yield check.found(
                f"{join.a} and {join.b} are joined at {said}; their shapes are made to meet at {trimmed(corner, 4)}°",
                subject=plan.name,
                hint=f"leave corner out, and it follows from the shapes, or write {trimmed(corner, 4)} deg",
                place=join.place,
                value=join.corner,
                limit=corner,
            )
    return looked_at


def _is_in_a_ring(plan: PanelPlan, join: Join) -> bool:
    """Tell whether both panels hang together without this join too."""
    pairs = [(other.a.panel, other.b.panel) for other in plan.joins if other is not join]
    pairs += [(rest.panel, edge.panel) for rest in plan.rests for edge in rest.on]
    reached, more = {join.a.panel}, True
    while more:
        new = {panel for pair in pairs if reached.intersection(pair) for panel in pair} - reached
        reached, more = reached | new, bool(new)
    return join.b.panel in reached
