"""Letters of joins: the same at both edges that meet, one for each distinct joint, none where nothing can be mistaken.

Parts of which there are several are interchangeable, and so are the places at which one of them may stand: all edges (and lines
inside them) that meet each other, directly or by way of others, are one joint. A joint whose parts meet in no other one needs no
letter: whichever of its edges meet, they fit. Where all parts of two joints lie upon themselves so that the edges of the one come to lie
on those of the other, the two are one: left and right of such parts differ by nothing but a letter.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from itertools import combinations

from publisher.design.parts import letter
from publisher.design.records import Design, EdgeRef, EdgeTreatment, EndSwap, Join, PanelPlan

_Side = tuple[str, str, str, float]  # part, edge, how it is met there, at how many mm


def lettered(plans: Sequence[PanelPlan], swaps: Sequence[EndSwap] = ()) -> tuple[PanelPlan, ...]:
    """Return the assemblies with the letter of each join: a … z, aa …, in the order in which the joints are written. ``swaps``: how
    parts lie upon themselves."""
    sides = {id(join): _sides(plan, join) for plan in plans for join in plan.joins}
    joints = _alike(_joints(sides.values()), swaps)
    joint_of = {side: number for number, joint in enumerate(joints) for side in joint}
    joints_of: dict[str, set[int]] = defaultdict(set)
    for side, number in joint_of.items():
        joints_of[side[0]].add(number)
    mistakable = {number for numbers in joints_of.values() if len(numbers) > 1 for number in numbers}
    letters: dict[int, str] = {}
    for a, _ in sides.values():
        if joint_of[a] in mistakable:
            letters.setdefault(joint_of[a], letter(len(letters), small=True))
    return tuple(
        replace(plan, joins=tuple(replace(j, match=letters.get(joint_of[sides[id(j)][0]], "")) for j in plan.joins))
        for plan in plans
    )


def relettered(design: Design, swaps: Sequence[EndSwap]) -> tuple[Design, dict[str, str]]:
    """Return a design whose joints that ``swaps`` make one have one letter, and what has become of each letter that was there ("":
    none); the design itself where nothing changes."""
    panels = lettered(design.panels, swaps)
    old = [join.match for plan in design.panels for join in plan.joins]
    new = [join.match for plan in panels for join in plan.joins]
    letters = {was: now for was, now in zip(old, new, strict=True) if was}
    if old == new:
        return design, letters
    parts = tuple(replace(plan, treatments=tuple(_told(t, letters) for t in plan.treatments)) for plan in design.parts)
    return replace(design, panels=panels, parts=parts), letters


def _told(treatment: EdgeTreatment, letters: Mapping[str, str]) -> EdgeTreatment:
    def told(matches: tuple[str, ...]) -> tuple[str, ...]:
        return tuple(dict.fromkeys(now for match in matches if (now := letters[match])))

    return replace(
        treatment,
        matches=told(treatment.matches),
        lines=tuple(replace(line, matches=told(line.matches)) for line in treatment.lines),
        laps=tuple(replace(lap, matches=told(lap.matches)) for lap in treatment.laps),
    )


def _joints(pairs: Iterable[tuple[_Side, _Side]]) -> list[frozenset[_Side]]:
    """Return all that meets, directly or by way of others."""
    first: dict[_Side, _Side] = {}

    def joint_of(side: _Side) -> _Side:
        while first.setdefault(side, side) != side:
            side = first[side]
        return side

    for a, b in pairs:
        first[joint_of(b)] = joint_of(a)
    found: dict[_Side, set[_Side]] = defaultdict(set)
    for side in list(first):
        found[joint_of(side)].add(side)
    return [frozenset(sides) for sides in found.values()]


def _alike(joints: list[frozenset[_Side]], swaps: Sequence[EndSwap]) -> list[frozenset[_Side]]:
    """Return the joints with those made one whose parts are the same and lie upon themselves so that the sides of the one come to
    lie on those of the other, part by part."""
    ways: dict[str, list[EndSwap]] = defaultdict(list)
    for swap in swaps:
        ways[swap.part].append(swap)

    def alike(one: frozenset[_Side], other: frozenset[_Side]) -> bool:
        parts = {side[0] for side in one}
        return parts == {side[0] for side in other} and all(
            _of(one, part) == _of(other, part)
            or any(_carried(_of(one, part), swap) == _of(other, part) for swap in ways[part])
            for part in parts
        )

    left = list(joints)
    while pair := next((pair for pair in combinations(left, 2) if alike(*pair)), None):
        left = [joint for joint in left if joint not in pair] + [pair[0] | pair[1]]
    return left


def _of(joint: frozenset[_Side], part: str) -> set[_Side]:
    return {side for side in joint if side[0] == part}


def _carried(sides: set[_Side], swap: EndSwap) -> set[_Side]:
    """Return where sides of a part come to lie."""
    edges, laps = dict(swap.edges), {(a, round(at, 6)): (b, round(to, 6)) for (a, at), (b, to) in swap.laps}
    found = set()
    for part, edge, how, at in sides:
        to = laps.get((edge, at), ("", 0.0)) if how == "lap" else (edges.get(edge, ""), at)
        found.add((part, to[0], how, to[1]))
    return found


def _sides(plan: PanelPlan, join: Join) -> tuple[_Side, _Side]:
    """Return both sides of a join by part and edge, with the line at which the other one stands, to a millionth of a mm."""
    part_at = {place.name: place.part for place in plan.places}

    def side(ref: EdgeRef, how: str, at: float) -> _Side:
        return part_at[ref.panel], ref.edge, how, round(at, 6)

    if join.at is not None:
        return side(join.a, "lap", join.at[0]), side(join.b, "lap", join.at[1])
    return side(join.a, "line", join.inset), side(join.b, "line", 0.0)
