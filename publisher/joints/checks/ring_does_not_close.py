"""Joins that close a ring of panels and do not meet."""

from publisher.basics import Check, Outcome, Severity
from publisher.joints.assembled import Assembled

GAP = 0.05
"""mm between the ends of edges that should coincide."""

ANGLE = 0.01
"""Degrees: over 300 mm it opens a joint by 0.05 mm."""


def run(subject: Assembled, check: Check[Assembled]) -> Outcome:
    """Measure every join where its panels stand: a ring closes when its turns sum to 360° and its edges to zero, so that
    the join that no panel was placed by meets as well."""
    looked_at, found = 0, []
    for mated in subject.panels:
        for mating in mated.matings:
            looked_at += 1
            turned = abs(mating.corner - mating.join.corner)
            if mating.gap <= GAP and turned <= ANGLE:
                continue
            join = mating.join
            if turned > ANGLE:
                what = f"stand at {mating.corner:.2f}° and not at the {join.corner:.2f}° of this join"
            else:
                what = f"are {mating.gap:.2f} mm apart"
            found.append(
                check.found(
                    f"the panels do not close: with all other joins made, {join.a} and {join.b} {what}",
                    subject=mated.assembly.plan.name,
                    hint="check the lengths and corner angles round this ring of panels: turns must add up to 360°",
                    place=join.place,
                    value=turned if turned > ANGLE else mating.gap,
                    limit=ANGLE if turned > ANGLE else GAP,
                )
            )
    return Outcome(looked_at, tuple(found))


CHECK = Check(
    "joints/ring-does-not-close",
    "Rings of panels close",
    "signed turns must sum to 360° and edge vectors to zero, or the last joint stays open (trade notes, section 4)",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
