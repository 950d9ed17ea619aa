"""Edges of bent parts that are joined as if the part were flat."""

from publisher.basics import Check, Findings, checked
from publisher.design import EdgeRef, Join
from publisher.geometry import Part
from publisher.joints.assembled import Assembled
from publisher.joints.panels import bent_end

END_ON = 1e-6  # degrees


@checked(
    "joints/bent-edge-joined",
    "Joins hold bent parts by their square ends",
    "the ends of a bent part turn away from where they lie on its template: what is joined there would be drawn and measured at a "
    "place where it never stands",
    may_be_empty=True,
)
def bent_edge_joined(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look at every join for a part that is bent: its edges are joined where they lie before it is bent."""
    looked_at = 0
    for mated in subject.panels:
        plan = mated.assembly.plan
        part_at = {p.name: p.part for p in mated.assembly.panels}
        bent = {p.name for p in mated.assembly.panels if p.part.bending is not None and p.part.bending.bends}
        for join in plan.joins:
            looked_at += 1
            for ref in (join.a, join.b):
                if ref.panel in bent and not _end_on(join, ref, part_at[ref.panel]):
                    yield check.found(
                        f"{ref} is an edge of a bent part, which joins hold by its upright ends alone: end on end, or butted",
                        subject=plan.name,
                        hint=f"join {ref.panel} at its ends by a mitre with corner: 180 deg, or by a butt in which the other runs "
                        "through; or let it bend along curved edges (bends_along), or stand on a face (stands_on, edge: bottom)",
                        place=join.place,
                    )
    return looked_at


def _end_on(join: Join, ref: EdgeRef, part: Part) -> bool:
    """Tell whether a join takes an end of a bent part square as it is cut: end on end, or butted on the board of the other."""
    square = join.joint == "mitre" and abs(join.corner - 180.0) < END_ON
    return (square or (join.joint == "butt" and join.through != ref.panel)) and bent_end(part, ref.edge) is not None
