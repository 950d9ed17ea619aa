"""Panels that stand in one place."""

from collections.abc import Iterable, Iterator, Mapping
from math import inf
from types import MappingProxyType

from publisher.basics import Check, Finding, Findings, Place, checked
from publisher.basics.wording import say_length
from publisher.geometry import PLATE
from publisher.joints.assembled import Assembled
from publisher.joints.panels import (
    PANEL_TOUCH,
    Clash,
    Panel,
    PanelAssembly,
    clashes_among,
    clashes_of,
    corners_of,
    exchanged_edges,
    matings_of,
    meets,
)
from publisher.joints.wholes import panels_of_stack

MAKE_ROOM = "join the two, so that one makes room for the other, or change the size that makes them meet"
KEEP_CLEAR = "move the seam, make its plate narrower, or leave the plate out"


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
    carried = {thing.assembly for whole in subject.design.wholes for thing in whole.things if thing.on}
    parts = {part.id: part for part in subject.parts}
    for report in subject.wholes:
        stack = report.stack
        if any(parts[layer.part].seams for layer in stack.layers):
            made = panels_of_stack(stack, parts, report.place)
            looked_at += len(made)
            named = ((panel.name if panel.part.shape == PLATE else "", panel) for panel in made)
            yield from _found(clashes_among(named)[:1], made, stack.name, report.place, check)
            yield from _under(made, stack.name, report.place, check, stack.name in carried)
    for mated in subject.panels:
        assembly = mated.assembly
        looked_at += len(assembly.panels)
        name, place = assembly.plan.name, assembly.plan.place
        clashes = clashes_of(assembly)
        yield from _found(clashes, assembly.solid, name, place, check, _exchanged(assembly, clashes))
        yield from _under(assembly.solid, name, place, check, name in carried)
    for whole in subject.things:
        looked_at += len(whole.things)
        named = ((panel.name.partition(".")[0], panel) for panel in whole.panels)
        yield from _found(clashes_among(named), whole.panels, whole.plan.name, whole.plan.place, check)
    return looked_at


def _found(
    clashes: Iterable[Clash],
    panels: tuple[Panel, ...],
    name: str,
    place: Place,
    check: Check[Assembled],
    cures: Mapping[str, str] = MappingProxyType({}),
) -> Iterator[Finding]:
    letters = {panel.name: panel.part.letter for panel in panels}
    shapes = {panel.name: panel.part.shape for panel in panels}
    for clash in clashes:
        x, y, z = clash.at
        yield check.found(
            f"{clash.a} (part {letters[clash.a]}) and {clash.b} (part {letters[clash.b]}) stand in one place: board "
            f"overlaps by up to {clash.thick:.1f} mm, {x:.0f} mm across, {y:.0f} mm deep and {z:.0f} mm up",
            subject=name,
            hint=KEEP_CLEAR
            if {PLATE} & {shapes[clash.a], shapes[clash.b]}
            else cures.get(clash.a) or cures.get(clash.b) or MAKE_ROOM,
            place=place,
            value=clash.thick,
            limit=PANEL_TOUCH,
        )


def _exchanged(assembly: PanelAssembly, clashes: tuple[Clash, ...]) -> dict[str, str]:
    """Return for panels that stand where others do what to write where an exchange of two of their edges makes room: a floor that
    looks to the wrong side lies on the other side of the edges that it meets."""
    names = tuple(dict.fromkeys(name for clash in clashes for name in (clash.a, clash.b)))
    found: dict[str, str] = {}
    for name, said, tried in exchanged_edges(assembly, names):
        if name not in found and not clashes_of(tried) and all(meets(mating) for mating in matings_of(tried)):
            found[name] = f"exchange two edges of {name}: edges: {said}"
    return found


def _under(
    panels: tuple[Panel, ...], name: str, place: Place, check: Check[Assembled], carried: bool
) -> Iterator[Finding]:
    """Find a plate that lies lower than all else of what stands on the table; what others carry has its room between them."""
    low = {PLATE: inf, "": inf}
    for panel in panels:
        kind = PLATE if panel.part.shape == PLATE else ""
        low[kind] = min(low[kind], float(panel.frame.carry(corners_of(panel.part))[:, 2].min()))
    if not carried and low[PLATE] < low[""] - PANEL_TOUCH:  # the table stands in its place
        yield check.found(
            f"a plate behind a seam of {name} lies {say_length(low[''] - low[PLATE])} under all else, where the table is",
            subject=name,
            hint=KEEP_CLEAR,
            place=place,
            value=low[""] - low[PLATE],
            limit=PANEL_TOUCH,
        )
