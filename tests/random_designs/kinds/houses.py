"""Gabled houses: two gables, two long walls between them, two roof slopes that rest on the gables and meet at the ridge.

x runs along the front gable, y backwards, z up. The underside of a slope is the plane through the gable's slope.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import cos, radians, sin, tan
from typing import Any

from manifold3d import CrossSection, Manifold

from tests.random_designs.design import Base, Design, Piece, Rest, Spec, Touch, deg, frame, mm, need
from tests.random_designs.dice import Dice
from tests.random_designs.kinds.openings import Opening, cut, drawn, rim_of, surface
from tests.random_designs.kinds.slots import fit, least_tab, options
from tests.random_designs.solids import box_of, hull, standing, united


@dataclass(frozen=True, slots=True)
class House:
    """Sizes in mm and degrees as the spec states them. ``past``: how far the gables run past the long walls."""

    base: Base
    joint: str
    span: float
    length: float
    past: float
    eaves: float
    pitch: float
    overhang: float
    verge: float
    play: float
    opening: Opening | None
    pattern: Spec | None
    roof_short: float = 0.0
    span_short: float = 0.0
    ridge_off: float = 0.0
    wall_up: float = 0.0
    backless: bool = False


def draw(dice: Dice) -> House:
    """Return a house whose roof leaves its walls room and whose slopes lie on both gables."""
    base = dice.base("Random house")
    t, joint = base.t, dice.one_of(("tab_and_slot", "tab_and_slot", "butt"))
    span = dice.page_wide(max(40.0, 6 * t), 220.0, 0.0, base.paper)
    length = dice.size(max(45.0, 6 * t), 300.0)
    past = dice.above("slot to edge", 2 * t, 2 * t + 10.0) if joint == "tab_and_slot" else 0.0
    pitch = float(dice.count(31, 60))  # on flatter roofs figures are put, and a light house tips under one at its eaves
    one_tab = (least_tab(t) + _under_slope(t, pitch)) * 4.0 / 3.0 if joint == "tab_and_slot" else 0.0
    least = max(30.0, 2 * least_tab(t), 3 * t + 10.0, past * tan(radians(pitch)) + 10.0, one_tab)
    eaves = dice.size(round(least + 0.05, 1), 160.0)
    # a slope's middle must stand over the gable's slope that carries it
    overhang = dice.size(0.0, min(15.0, span / 6))
    verge = dice.size(0.0, 15.0)
    opening = drawn(dice, length, eaves, rim_of(t), ends=4 * t)
    pattern = surface(dice, [length * eaves, span * eaves * 1.5])
    return House(
        base,
        joint,
        span,
        length,
        past,
        eaves,
        pitch,
        overhang,
        verge,
        dice.play(base) if joint == "tab_and_slot" else 0.0,
        opening,
        pattern,
    )


def _under_slope(t: float, pitch: float) -> float:
    """Return how far (mm) under the eaves a slot ends, at the least: a board lies between it and the gable's slope."""
    return t / cos(radians(pitch)) + 0.5 * tan(radians(pitch))


def _room_for_tabs(plan: House) -> float:
    """Return how long (mm) an edge is whose tabs are as long as those of two on a long wall: tabs and gap between the lower
    eighth, as on any edge, and where slots end under the slope."""
    return min(plan.eaves, 4.0 / 3.0 * (7.0 / 8.0 * plan.eaves - _under_slope(plan.base.t, plan.pitch)))


def design(plan: House) -> Design:
    """Return spec and solids."""
    walls = ("front", "back", "left", "right")
    width = plan.span + 2 * plan.past
    sizes = {"span": mm(plan.span), "past": mm(plan.past), "eaves": mm(plan.eaves), "pitch": deg(plan.pitch)}
    gable: Spec = {"shape": "gable_wall", "with": sizes}
    side: Spec = {"shape": "wall_panel", "with": {"width": mm(plan.length), "height": mm(plan.eaves + plan.wall_up)}}
    if plan.opening:
        side["openings"] = {"light": plan.opening.written()}
    if plan.pattern:
        gable["surface"] = side["surface"] = plan.pattern
    slope = {"span": mm(width - plan.span_short), "length": mm(plan.length - plan.roof_short), "pitch": deg(plan.pitch)}
    slope |= {"overhang": mm(plan.overhang), "verge": mm(plan.verge)}
    parts = {"gable": gable, "side": side, "roof": {"shape": "roof_panel", "with": slope}}
    panels = {
        "front": "gable",
        "back": "gable",
        "left": "side",
        "right": "side",
        "left_roof": "roof",
        "right_roof": "roof",
    }
    corner: Spec = {"joint": "butt"}
    if plan.joint == "tab_and_slot":
        corner |= {
            "joint": "tab_and_slot",
            "inset": mm(plan.past),
            **options(plan.base, plan.play, _room_for_tabs(plan)),
        }
    ends = [
        ("front.right", "right.left"),
        ("right.right", "back.left"),
        ("back.right", "left.left"),
        ("left.right", "front.left"),
    ]
    joins: list[Spec] = []
    for a, b in ends:
        through, own = sorted((a.split(".")[0], b.split(".")[0]), key=lambda name: name not in ("front", "back"))
        if plan.backless and through == "back":
            continue
        named = {"runs_through": through} if plan.joint == "butt" else {"tabs_on": own}
        joins.append({"edges": [a, b], **corner, **named})
    ridge = 180.0 - 2 * plan.pitch + plan.ridge_off
    joins.append({"edges": ["left_roof.ridge", "right_roof.ridge"], "joint": "mitre", "corner": deg(ridge)})
    if plan.backless:
        del panels["back"]
    joins.append(
        {
            "place": "left_roof",
            "rests_on": [e for e in ("front.left_slope", "back.right_slope") if e.split(".")[0] in panels],
        }
    )
    joins.append(
        {
            "place": "right_roof",
            "rests_on": [e for e in ("front.right_slope", "back.left_slope") if e.split(".")[0] in panels],
        }
    )
    piece = _piece(plan, tuple(w for w in walls if w in panels))
    low, high = box_of(united([solid for _, solid in piece.boards]))
    truth = float(high[2] - low[2])
    needs = (need("house.height", plan.base, truth),)
    facts = tuple((f"house.{n}", float(v)) for n, v in zip(("width", "depth", "height"), high - low, strict=True))
    assembly = {"house": {"panels": panels, "stands_on": "front.bottom", "joins": joins}}
    spec = frame(plan.base, parts, assembly, needs, max(width, plan.length + 2 * plan.verge, truth))
    return Design("house", 0, plan, spec, (), (piece,), needs, facts, plan.joint, plan.base)


def _piece(plan: House, walls: tuple[str, ...]) -> Piece:
    t, width, p = plan.base.t, plan.span + 2 * plan.past, radians(plan.pitch)
    end, ridge = plan.eaves - plan.past * tan(p), plan.eaves + plan.span / 2 * tan(p)
    gable = [(0.0, 0.0), (width, 0.0), (width, end), (width / 2, ridge), (0.0, end)]
    side_high = plan.eaves + plan.wall_up
    wall = Manifold.extrude(_with_light(plan, side_high), t)
    boards = {
        "front": standing(gable, t, (0.0, 0.0), 0.0),
        "back": standing(gable, t, (width, plan.length), 180.0),
        # (along, up, into the board) of a wall between the gables, as their tabs leave it
        "right": wall.transform([[0, 0, -1, width - plan.past], [1, 0, 0, 0], [0, 1, 0, 0]]),
        "left": wall.transform([[0, 0, 1, plan.past], [-1, 0, 0, plan.length], [0, 1, 0, 0]]),
    }
    boards = {name: solid for name, solid in boards.items() if name in walls}
    touches = [
        Touch(end_wall, side, (0.0, way, 0.0), t * side_high)
        for end_wall, way in (("front", -1.0), ("back", 1.0))
        for side in ("left", "right")
        if end_wall in walls
    ]
    roof_length = plan.length + 2 * plan.verge - plan.roof_short
    near = (plan.length - roof_length) / 2
    rest_area = t * width / 2 / cos(p)
    rests = []
    for name, mirror in (("left_roof", False), ("right_roof", True)):
        # the ridge joint is cut for the corner as written, and the right slope leans by what it leaves
        bevel, lean = p - radians(plan.ridge_off) / 2, p - (radians(plan.ridge_off) if mirror else 0.0)
        boards[name] = _slope(plan, ridge, width, bevel, lean, mirror, near, roof_length)
        way = (sin(p), 0.0, -cos(p)) if not mirror else (-sin(p), 0.0, -cos(p))
        touches += [Touch(g, name, way, rest_area) for g in ("front", "back") if g in walls]
        rests.append(Rest(name, tuple(g for g in ("front", "back") if g in walls)))
    touches.append(Touch("left_roof", "right_roof", (-1.0, 0.0, 0.0), t / cos(p) * roof_length))
    fits = (fit("tab of a long wall", plan.base, plan.play),) if plan.joint == "tab_and_slot" else ()
    return Piece("house", tuple(boards.items()), tuple(touches), fits, tuple(rests))


def _with_light(plan: House, high: float) -> CrossSection:
    body = CrossSection.square((plan.length - 2 * plan.base.t, high)).translate((plan.base.t, 0.0))
    return body - cut(plan.opening)


def _slope(
    plan: House, ridge: float, width: float, bevel: float, lean: float, mirror: bool, near: float, long: float
) -> Manifold:
    """Return a slope: its underside runs down from the ridge line, its eave is cut square, its ridge by the bevel."""
    t = plan.base.t
    run = (width - plan.span_short) / 2 / cos(radians(plan.pitch)) + plan.overhang
    down, out = (-cos(lean), -sin(lean)), (-sin(lean), cos(lean))
    section = [(0.0, 0.0), (run, 0.0), (run, t), (-t * tan(bevel), t)]  # (down the slope, outwards)
    flat = [(d * down[0] + o * out[0], d * down[1] + o * out[1]) for d, o in section]
    sign = -1.0 if mirror else 1.0
    return hull([(width / 2 + sign * x, y, ridge + z) for x, z in flat for y in (near, near + long)])


def faults(plan: House, dice: Dice) -> dict[str, House]:
    """Return the house with one change that its solids refuse."""
    t = plan.base.t
    made = {
        "roof too short": replace(plan, roof_short=round(2 * plan.verge + dice.size(t + 5.0, 2 * t + 20.0), 3)),
        "ridge angle wrong": replace(plan, ridge_off=dice.size(1.0, 20.0) * dice.one_of((-1.0, 1.0))),
        "roof too narrow": replace(plan, span_short=round(2 * plan.overhang + dice.size(6.0, 20.0), 3)),
        "long walls too high": replace(plan, wall_up=dice.size(1.0, 10.0)),
        "back gable left out": replace(plan, backless=True),
        "a need not met": replace(plan, base=replace(plan.base, margin=-dice.size(0.1, 2.0))),
    }
    if plan.joint == "tab_and_slot":
        made["slot too narrow"] = replace(plan, play=round(max(plan.base.spread - dice.size(0.04, 0.1, 0.01), 0.0), 3))
    return made


def _with(plan: House, name: str, value: Any) -> House:
    return replace(plan, **{name: value})


def smaller(plan: House) -> Iterator[House]:
    """Return houses with fewer things on them and rounder sizes."""
    if plan.pattern:
        yield replace(plan, pattern=None)
    if plan.opening:
        yield replace(plan, opening=None)
    if plan.joint != "butt":
        yield replace(plan, joint="butt", past=0.0)
    for name in ("overhang", "verge"):
        if getattr(plan, name) and not (plan.roof_short or plan.span_short):
            yield _with(plan, name, 0.0)
    for name in ("span", "length", "eaves", "pitch", "past"):
        for step in (20.0, 10.0, 1.0):
            value = max(step, round(getattr(plan, name) / step) * step)
            if value != getattr(plan, name) and not (
                name == "past" and (plan.joint == "butt" or value < 2 * plan.base.t)
            ):
                yield _with(plan, name, value)
                break
