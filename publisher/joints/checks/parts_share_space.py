"""Panels that stand in one place."""

from publisher.basics import Check, Outcome, Severity
from publisher.joints.assembled import Assembled
from publisher.joints.panels import PANEL_TOUCH, clashes_of


def run(subject: Assembled, check: Check[Assembled]) -> Outcome:
    """Cut every pair of placed panels by planes and lay the sections over each other."""
    looked_at, found = 0, []
    for mated in subject.panels:
        assembly = mated.assembly
        letters = {panel.name: panel.part.letter for panel in assembly.panels}
        looked_at += len(assembly.panels)
        for clash in clashes_of(assembly):
            x, y, z = clash.at
            found.append(
                check.found(
                    f"{clash.a} (part {letters[clash.a]}) and {clash.b} (part {letters[clash.b]}) stand in one place: board "
                    f"overlaps by up to {clash.thick:.1f} mm, {x:.0f} mm across, {y:.0f} mm deep and {z:.0f} mm up",
                    subject=assembly.plan.name,
                    hint="join the two, so that one makes room for the other, or change the size that makes them meet",
                    place=assembly.plan.place,
                    value=clash.thick,
                    limit=PANEL_TOUCH,
                )
            )
    return Outcome(looked_at, tuple(found))


CHECK = Check(
    "joints/parts-share-space",
    "No two panels stand in one place",
    "edges may agree and the boards still collide; a part that is in the way is found with glue on the fingers",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
