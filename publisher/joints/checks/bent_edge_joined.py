"""Edges of bent parts that are joined as if the part were flat."""

from publisher.basics import Check, Findings, checked
from publisher.joints.assembled import Assembled


@checked(
    "joints/bent-edge-joined",
    "Joins are of flat parts",
    "the ends of a bent part turn away from where they lie on its template: what is joined there would be drawn and measured at a "
    "place where it never stands",
    may_be_empty=True,
)
def bent_edge_joined(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look at every join for a part that is bent: its edges are joined where they lie before it is bent."""
    looked_at = 0
    for mated in subject.panels:
        plan = mated.assembly.plan
        bent = {p.name for p in mated.assembly.panels if p.part.bending is not None and p.part.bending.bends}
        for join in plan.joins:
            looked_at += 1
            for ref in (join.a, join.b):
                if ref.panel in bent:
                    yield check.found(
                        f"{ref} is an edge of a bent part, and a join knows only flat ones",
                        subject=plan.name,
                        hint=f"let {ref.panel} bend along curved edges (bends_along), or stand on a face (stands_on, edge: bottom)",
                        place=join.place,
                    )
    return looked_at
