"""Edges that are joined but not equally long."""

from publisher.basics import Check, Finding, Findings, checked
from publisher.basics.wording import lengths_apart, say_length
from publisher.design import EdgeRef
from publisher.joints.assembled import Assembled
from publisher.joints.panels import Mating, PanelAssembly

LENGTHS = (
    "write both lengths from one size (stated sizes leave out tabs and are not shortened for the board); "
    "where a low panel is meant to meet a high one, say flush: bottom in the join"
)
MOST_DIFFERENCE = 0.01
"""mm: mating edges are equally long, but for rounding."""


@checked(
    "joints/edge-lengths-differ",
    "Edges that meet are equally long",
    f"mating edges that differ by more than {MOST_DIFFERENCE:g} mm leave a gap or a step that no glue hides",
    may_be_empty=True,
)
def edge_lengths_differ(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Compare the nominal lengths of both edges of every join."""
    looked_at = 0
    for mated in subject.panels:
        for mating in mated.matings:
            looked_at += 1
            differ = abs(mating.length_a - mating.length_b)
            if differ > MOST_DIFFERENCE:
                join = mating.join
                if join.at is not None:
                    yield _heights(mating, differ, mated.assembly.plan.name, check)
                    continue
                beside = f" (at {say_length(join.inset)} from the edge)" if join.inset else ""
                one, other = lengths_apart(mating.length_a, mating.length_b)
                yield check.found(
                    f"{join.a}{beside} is {one} long and {join.b}, which meets it, {other}: they differ by {differ:.2f} mm",
                    subject=mated.assembly.plan.name,
                    hint=_other_edge(mated.assembly, mating) or LENGTHS,
                    place=join.place,
                    value=differ,
                    limit=MOST_DIFFERENCE,
                )
    return looked_at


def _other_edge(assembly: PanelAssembly, mating: Mating) -> str:
    """Return which edges of the two panels are as long as what they are to meet, where others were named; '' where none are."""
    join = mating.join
    taken = {ref for one in assembly.plan.joins if one is not join for ref in (one.a, one.b)}
    said = []
    for own, other, length in ((join.a, join.b, mating.length_b), (join.b, join.a, mating.length_a)):
        panel = assembly.panel(own.panel)
        alike = [
            str(ref)
            for edge in (panel.part.edges if panel is not None else ())
            if edge.centre is None
            and abs(edge.nominal_length - length) <= MOST_DIFFERENCE
            and (ref := EdgeRef(own.panel, edge.name)) not in taken
        ]
        if alike:
            them = f"is {alike[0]} meant, which is" if len(alike) == 1 else f"is {' or '.join(alike)} meant, which are"
            said.append(f"{them} as long as {other}?")
    return f"{' Or '.join(said)} Else {LENGTHS}" if said else ""


def _heights(mating: Mating, differ: float, assembly: str, check: Check[Assembled]) -> Finding:
    """Say that two panels that cross are not equally high there: each slot is half of its own panel's height."""
    join = mating.join
    one, other = lengths_apart(mating.length_a, mating.length_b)
    return check.found(
        f"where they cross, {join.a.panel} is {one} high and {join.b.panel} {other}: with slots half as deep as each is high, "
        f"one stands {differ / 2:.2f} mm off the ground",
        subject=assembly,
        hint="make both equally high, from one size",
        place=join.place,
        value=differ,
        limit=MOST_DIFFERENCE,
    )
