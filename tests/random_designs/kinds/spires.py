"""Spires and pyramids of 3 to 12 facets, pointed or cut off level, that stand on the table or on towers.

The outside of a facet is the plane through its base and the axis; its inside lies t behind it, so the inside of the whole is
the same pyramid with an apothem smaller by t/sin(pitch) at each height. Two facets meet in the plane through the axis
between them. With the pitch p against the horizontal the outward normals of neighbours have
n·n' = sin²p·cos(2π/n) + cos²p, and the inside corner is 180° less the angle between them.

Some stand, with an overhang or with none, on a tower of upright walls of as many sides: they are set down until the insides of
the facets, or their bottoms, meet the tops of the walls.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from math import acos, atan2, cos, degrees, hypot, pi, sin, tan

import numpy as np

from tests.random_designs.design import Base, Design, Piece, Spec, Touch, deg, frame, mm, need
from tests.random_designs.dice import Dice
from tests.random_designs.judge import GAP
from tests.random_designs.solids import Array, box_of, hull, placed, turn_about, united


@dataclass(frozen=True, slots=True)
class Walls:
    """The tower under a spire: outside width and height of a wall, whether the spire lifts off, and how far it is turned and moved."""

    width: float
    height: float
    loose: bool
    turn: float = 0.0
    at: tuple[float, float] = (0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Spire:
    """Faces, width of a face at its base and top, height upright; ``off``: degrees by which every corner is written wrong."""

    base: Base
    sides: int
    width: float
    height: float
    top: float
    off: float = 0.0
    unsaid: bool = False  # no corner is written: the facets carry their number of sides
    taller: float = 0.0  # mm by which the second facet is higher than the others
    walls: Walls | None = None


def draw(dice: Dice) -> Spire:
    """Return a spire with room inside."""
    base = dice.base("Random spire")
    sides = dice.count(3, 12)
    k = tan(pi / sides)
    while True:
        width, height = (
            dice.size(max(20.0, 2 * (2 * base.t + 12.0) * k), min(160.0, 900.0 / sides)),
            dice.size(30.0, 220.0),
        )
        apothem = width / 2 / k
        inset = base.t / sin(atan2(height, apothem))
        # flatter facets are judged as decks that figures stand on
        if apothem > inset + 8.0 and height > 0.62 * apothem:
            break
    top = 0.0
    if dice.chance(0.4):
        least = 2 * k * (inset + 8.0)
        top = dice.above("width of the top", max(3.0, round(least + 0.05, 1)), width * 0.8)
        inward = (width - top) / 2 / k
        if inward < 3.0 or top >= width - 1.0 or top / 2 / k <= base.t / sin(atan2(height, inward)) + 2.0:
            top = 0.0
    plan = Spire(base, sides, width, height, top, unsaid=dice.chance(0.4))
    return replace(plan, walls=_walls(plan, dice)) if dice.chance(0.6) else plan


def _walls(plan: Spire, dice: Dice) -> Walls | None:
    """Return walls that the spire reaches over by more than its own thickness and less than a third, or as wide as it; None where
    they would have no room."""
    k, t = tan(pi / plan.sides), plan.base.t
    apothem, inset = plan.width / 2 / k, plan.base.t / sin(_pitch(plan))
    least = max(t + 10.0, plan.top / 2 / k + 3.0)
    most = min(inset + 12.0, apothem / 3, apothem - least)
    over = dice.above("overhang", inset + 1.0, most) if inset + 2.0 < most and dice.chance(0.75) else 0.0
    if apothem - over < least:
        return None
    width = round((apothem - over) * 2 * k, 1) if over else plan.width
    falls = (
        (over - inset) * tan(_pitch(plan)) if over else 0.0
    )  # how far its eaves lie under the walls' tops: over the table
    least = max(30.0, round(falls + 1.0, 1))
    return Walls(width, dice.size(least, max(least + 1.0, min(120.0, 6 * (apothem - over)))), dice.chance(0.5))


def _pitch(plan: Spire) -> float:
    return atan2(plan.height, (plan.width - plan.top) / 2 / tan(pi / plan.sides))


def _corner(plan: Spire) -> float:
    p = _pitch(plan)
    return 180.0 - degrees(acos(sin(p) ** 2 * cos(2 * pi / plan.sides) + cos(p) ** 2))


def design(plan: Spire) -> Design:
    """Return spec and solids."""
    n = plan.sides
    spots = [f"face_{i + 1}" for i in range(n)]
    parts: Spec = {"facet": _facet_part(plan, plan.height)}
    panels = dict.fromkeys(spots, "facet")
    if plan.taller:
        parts["odd_facet"] = _facet_part(plan, plan.height + plan.taller)
        panels[spots[1]] = "odd_facet"
    corner = {} if plan.unsaid else {"corner": deg(round(_corner(plan), 4) + plan.off)}
    joins = [
        {"edges": [f"{spots[i]}.right", f"{spots[(i + 1) % n]}.left"], "joint": "mitre", **corner} for i in range(n)
    ]
    assembly: Spec = {"spire": {"panels": panels, "stands_on": "face_1.base", "joins": joins}}
    pieces = [piece := _piece(plan, spots)]
    low, high = box_of(united([solid for _, solid in piece.boards]))
    truth = float(high[2] - low[2])
    needs = (need("spire.height", plan.base, truth),)
    facts = [("spire.height", truth)]
    if plan.walls:
        pieces.append(_tower(plan, plan.walls, piece))
        parts["wall"], assembly["walls"], assembly["tower"] = _on_walls(plan, plan.walls)
        low, high = box_of(united([solid for _, solid in pieces[1].boards]))
        facts += [(f"tower.{n}", float(v)) for n, v in zip(("width", "depth", "height"), high - low, strict=True)]
    spec = frame(plan.base, parts, assembly, needs, max(plan.width, hypot(plan.height, plan.width)))
    return Design("spire", 0, plan, spec, (), tuple(pieces), needs, tuple(facts), "mitre", plan.base)


def _facet_part(plan: Spire, height: float) -> Spec:
    sizes: Spec = {"sides": plan.sides, "width": mm(plan.width), "height": mm(height)}
    if plan.top:
        sizes["top_width"] = mm(plan.top)
    return {"shape": "spire_facet", "with": sizes}


def _corners(plan: Spire, height: float) -> tuple[Array, Array]:
    """Return the corners of the facet that looks to -y: outside and inside, base left, base right, top right, top left."""
    k = tan(pi / plan.sides)
    inwards = (plan.width - plan.top) / 2 / k
    inset = plan.base.t / sin(atan2(height, inwards))

    def level(apothem: float, z: float) -> list[tuple[float, float, float]]:
        return [(-apothem * k, -apothem, z), (apothem * k, -apothem, z)]

    low, high = plan.width / 2 / k, plan.top / 2 / k
    outer = [*level(low, 0.0), *reversed(level(high, height))]
    if high > inset:
        inner = [*level(low - inset, 0.0), *reversed(level(high - inset, height))]
    else:  # the inside ends in a point below the top
        point = height * (low - inset) / inwards
        inner = [*level(low - inset, 0.0), (0.0, 0.0, point), (0.0, 0.0, point)]
    return np.array(outer), np.array(inner)


def _piece(plan: Spire, spots: list[str]) -> Piece:
    n = plan.sides
    step = turn_about((0, 0, 0), (0, 0, 1), 360.0 / n)
    outer, inner = _corners(plan, plan.height)
    area = _area(outer[1], outer[2], inner[2], inner[1])
    matrix = np.eye(4)
    boards, touches = [], []
    for i, spot in enumerate(spots):
        high = plan.height + (plan.taller if i == 1 else 0.0)
        outside, inside = _corners(plan, high)
        boards.append((spot, placed(hull(np.vstack([outside, inside])), matrix)))
        # the mitre's normal, level, from the next facet back to this one, before this facet was turned
        way = matrix[:3, :3] @ np.array([-cos(pi / n), -sin(pi / n), 0.0])
        touches.append(Touch(spot, spots[(i + 1) % n], (float(way[0]), float(way[1]), float(way[2])), area))
        # a corner that is wrong leans the next facet about the edge where both outsides meet
        matrix = matrix @ turn_about(outer[1], outer[2] - outer[1], plan.off) @ step
    return Piece("spire", tuple(boards), tuple(touches))


def _on_walls(plan: Spire, walls: Walls) -> tuple[Spec, Spec, Spec]:
    """Return the part of a wall, the ring of walls, and the tower of both things."""
    spots = [f"side_{i + 1}" for i in range(plan.sides)]
    joins = [{"edges": [f"{a}.right", f"{b}.left"], "joint": "mitre"} for a, b in pairwise([*spots, spots[0]])]
    spire: Spec = {"assembly": "spire", "on_top_of": ["walls"], "lifts_off": walls.loose}
    if walls.turn or any(walls.at):
        spire |= {"turn": deg(walls.turn), "at": [mm(v) for v in walls.at]}
    sizes = {"sides": plan.sides, "width": mm(walls.width), "height": mm(walls.height)}
    ring: Spec = {"panels": dict.fromkeys(spots, "wall"), "stands_on": "side_1.bottom", "joins": joins}
    return {"shape": "tower_panel", "with": sizes}, ring, {"things": {"walls": {"assembly": "walls"}, "spire": spire}}


def _tower(plan: Spire, walls: Walls, spire: Piece) -> Piece:
    """Return the walls with the spire on them, where its inside or its bottom meets the outside of their tops."""
    n, t, k, p = plan.sides, plan.base.t, tan(pi / plan.sides), _pitch(plan)
    outside, inside = walls.width / 2 / k, walls.width / 2 / k - t
    foot = plan.width / 2 / k - t / sin(p)  # of the inside of a facet, from the axis
    drop = max(0.0, (foot - outside) * tan(p))
    wall = hull([(x * a * k, -a, z) for a in (outside, inside) for x in (-1.0, 1.0) for z in (0.0, walls.height)])
    # set down by a hair h more, a slope takes a wedge h / tan(p) wide off the top of a wall; a bottom takes a band
    area = 0.9 * (walls.width * GAP / tan(p) / 2 if drop else k * (outside**2 - max(inside, foot) ** 2))
    boards, touches = [], []
    for i in range(n):
        here = turn_about((0, 0, 0), (0, 0, 1), 360.0 * i / n)
        way = here[:3, :3] @ np.array([-cos(pi / n), -sin(pi / n), 0.0])
        boards.append((f"side_{i + 1}", placed(wall, here)))
        away = (float(way[0]), float(way[1]), 0.0)
        touches.append(Touch(f"side_{i + 1}", f"side_{(i + 1) % n + 1}", away, t / cos(pi / n) * walls.height))
        touches.append(Touch(f"side_{i + 1}", f"face_{i + 1}", (0.0, 0.0, -1.0), area))
    there = turn_about((0, 0, 0), (0, 0, 1), walls.turn)
    there[:3, 3] = (*walls.at, walls.height - drop)
    return Piece(
        "tower",
        (*boards, *((name, placed(solid, there)) for name, solid in spire.boards)),
        (*touches, *_turned(spire, there)),
    )


def _turned(spire: Piece, there: Array) -> Iterator[Touch]:
    for touch in spire.touches:
        way = there[:3, :3] @ np.array(touch.way)
        yield replace(touch, way=(float(way[0]), float(way[1]), float(way[2])))


def _area(*ring: Array) -> float:
    """Return the area of a plane polygon in space."""
    parts = [np.cross(b - ring[0], c - ring[0]) for b, c in pairwise(ring[1:])]
    return float(np.linalg.norm(sum(parts))) / 2


def faults(plan: Spire, dice: Dice) -> dict[str, Spire]:
    """Return the spire with wrong corners, with one facet higher, or with a need that it does not meet; on its walls turned by half
    a side, or moved aside."""
    made = {
        "corners wrong": replace(plan, off=dice.size(0.5, 5.0) * dice.one_of((-1.0, 1.0)), unsaid=False),
        "one facet higher": replace(plan, taller=dice.size(3.0, 12.0)),
        "a need not met": replace(plan, base=replace(plan.base, margin=-dice.size(0.1, 2.0))),
    }
    if plan.walls:
        aside = dice.size(plan.base.t + 3.0, plan.base.t + 8.0)
        made["moved aside on its walls"] = replace(plan, walls=replace(plan.walls, at=(aside, 0.7 * aside)))
        # without an overhang, or on short walls, all of a side is near what touches at its corners: it gapes by less than a cut shows
        if plan.walls.width < plan.width and plan.walls.width > 4.0 * plan.base.t + 10.0:
            made["turned by half a side"] = replace(plan, walls=replace(plan.walls, turn=180.0 / plan.sides))
    return made


def smaller(plan: Spire) -> Iterator[Spire]:
    """Return spires without walls, else with fewer facets, no flat top, rounder sizes."""
    if plan.unsaid:
        yield replace(plan, unsaid=False)
    if plan.walls:
        if not plan.walls.turn and not any(plan.walls.at):
            yield replace(plan, walls=None)
        return
    if plan.top:
        yield replace(plan, top=0.0)
    for sides in range(3, plan.sides):
        yield replace(plan, sides=sides)
    for step in (20.0, 10.0, 1.0):
        width, height = (max(step, round(v / step) * step) for v in (plan.width, plan.height))
        if (width, height) != (plan.width, plan.height):
            yield replace(plan, width=width, height=height)
