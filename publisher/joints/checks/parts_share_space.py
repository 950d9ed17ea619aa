"""Panels that stand in one place."""

from collections.abc import Iterable, Iterator

from publisher.basics import Check, Finding, Findings, Place, checked
from publisher.joints.assembled import Assembled
from publisher.joints.panels import PANEL_TOUCH, Clash, Panel, clashes_among, clashes_of


@checked(
    "joints/parts-share-space",
    "No two panels stand in one place",
    f"edges may agree and the boards still collide by more than {PANEL_TOUCH:g} mm; a part that is in the way is found with glue on "
    "the fingers",
    may_be_empty=True,
)
def parts_share_space(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Cut every pair of placed panels by planes and lay the sections over each other: of each assembly, and of things that
    stand on or beside each other."""
    looked_at = 0
    for mated in subject.panels:
        assembly = mated.assembly
        looked_at += len(assembly.panels)
        yield from _found(clashes_of(assembly), assembly.panels, assembly.plan.name, assembly.plan.place, check)
    for whole in subject.things:
        looked_at += len(whole.things)
        named = ((panel.name.partition(".")[0], panel) for panel in whole.panels)
        yield from _found(clashes_among(named), whole.panels, whole.plan.name, whole.plan.place, check)
    return looked_at


def _found(
    clashes: Iterable[Clash], panels: Iterable[Panel], name: str, place: Place, check: Check[Assembled]
) -> Iterator[Finding]:
    letters = {panel.name: panel.part.letter for panel in panels}
    for clash in clashes:
        x, y, z = clash.at
        yield check.found(
            f"{clash.a} (part {letters[clash.a]}) and {clash.b} (part {letters[clash.b]}) stand in one place: board "
            f"overlaps by up to {clash.thick:.1f} mm, {x:.0f} mm across, {y:.0f} mm deep and {z:.0f} mm up",
            subject=name,
            hint="join the two, so that one makes room for the other, or change the size that makes them meet",
            place=place,
            value=clash.thick,
            limit=PANEL_TOUCH,
        )
