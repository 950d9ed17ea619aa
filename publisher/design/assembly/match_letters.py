"""Letters of joins: the same at both edges that meet, one for each distinct joint, none where nothing can be mistaken.

Parts of which there are several are interchangeable, and so are the places at which one of them may stand: all edges (and lines
inside them) that meet each other, directly or by way of others, are one joint. A joint whose parts meet in no other one needs no
letter: whichever of its edges meet, they fit.
"""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace

from publisher.design.parts import letter
from publisher.design.records import EdgeRef, Join, PanelPlan

_Side = tuple[str, str, str, float]  # part, edge, how it is met there, at how many mm


def lettered(plans: Sequence[PanelPlan]) -> tuple[PanelPlan, ...]:
    """Return the assemblies with the letter of each join: a … z, aa …, in the order in which the joints are written."""
    sides = {id(join): _sides(plan, join) for plan in plans for join in plan.joins}
    first: dict[_Side, _Side] = {}

    def joint_of(side: _Side) -> _Side:
        while first.setdefault(side, side) != side:
            side = first[side]
        return side

    for a, b in sides.values():
        first[joint_of(b)] = joint_of(a)
    joints_of: dict[str, set[_Side]] = defaultdict(set)
    for side in list(first):
        joints_of[side[0]].add(joint_of(side))
    mistakable = {joint for joints in joints_of.values() if len(joints) > 1 for joint in joints}
    letters: dict[_Side, str] = {}
    for a, _ in sides.values():
        if joint_of(a) in mistakable:
            letters.setdefault(joint_of(a), letter(len(letters), small=True))
    return tuple(
        replace(plan, joins=tuple(replace(j, match=letters.get(joint_of(sides[id(j)][0]), "")) for j in plan.joins))
        for plan in plans
    )


def _sides(plan: PanelPlan, join: Join) -> tuple[_Side, _Side]:
    """Return both sides of a join by part and edge, with the line at which the other one stands, to a millionth of a mm."""
    part_at = {place.name: place.part for place in plan.places}

    def side(ref: EdgeRef, how: str, at: float) -> _Side:
        return part_at[ref.panel], ref.edge, how, round(at, 6)

    if join.at is not None:
        return side(join.a, "lap", join.at[0]), side(join.b, "lap", join.at[1])
    return side(join.a, "line", join.inset), side(join.b, "line", 0.0)
