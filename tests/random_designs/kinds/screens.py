"""Screens: one to three walls in a line that stand on nothing but their bottoms, perhaps with a coping that reaches over one side.

x runs along the walls, y from their outsides over the board, z up.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from tests.random_designs.design import Base, Design, Piece, Spec, Touch, deg, frame, mm, need
from tests.random_designs.dice import Dice
from tests.random_designs.judge import UPRIGHT
from tests.random_designs.solids import block, box_of, centroid, united

NO_FIGURE = 12.0  # mm: what is narrower carries none
NARROW = 1.2  # of the board, and 6 mm: what is wider can be cut


@dataclass(frozen=True, slots=True)
class Screen:
    """Sizes in mm. ``coping``: from the outside of the first wall; 0: none. ``on_top``: it lies on the wall, which ends under it;
    else it is glued to the wall's inside."""

    base: Base
    widths: tuple[float, ...]
    height: float
    coping: float
    on_top: bool
    joint: str


def draw(dice: Dice) -> Screen:
    """Return walls that the weight of their coping does not pull over."""
    base = dice.base("Random screen")
    widths = tuple(dice.size(60.0, 180.0) for _ in range(dice.count(1, 3)))
    plan = Screen(base, widths, dice.size(40.0, 120.0), 0.0, len(widths) == 1 and dice.chance(0.5), "butt")
    under = 0.0 if plan.on_top else base.t
    wide = [round(max(6.0, NARROW * base.t) + i / 2, 1) for i in range(12)]
    deep = [under + size for size in wide if size <= NO_FIGURE]
    fit = [size for size in deep if _weight(replace(plan, coping=size)) < base.t - UPRIGHT]
    if fit and (len(widths) == 1 or dice.chance(0.7)):
        return replace(plan, coping=dice.one_of(fit))
    return replace(plan, widths=widths if len(widths) > 1 else (widths[0], 80.0))


def _weight(plan: Screen) -> float:
    """Return where the centre of mass lies, from the outside of the walls."""
    return float(centroid(united([solid for _, solid in _piece(plan).boards]))[1])


def design(plan: Screen) -> Design:
    """Return spec and solids."""
    names = [f"wall_{i}" for i in range(len(plan.widths))]
    parts: Spec = {
        name: {"shape": "wall_panel", "with": {"width": mm(wide), "height": mm(plan.height)}}
        for name, wide in zip(names, plan.widths, strict=True)
    }
    joins: list[Spec] = [
        {"edges": [f"{a}.right", f"{b}.left"], "joint": "mitre", "corner": deg(180.0)} for a, b in pairwise(names)
    ]
    if plan.coping:
        parts["coping"] = {"shape": "rectangle", "with": {"width": mm(plan.widths[0]), "height": mm(plan.coping)}}
        through = "coping" if plan.on_top else "wall_0"
        joins.append({"edges": ["coping.bottom", "wall_0.top"], "joint": "butt", "runs_through": through})
    piece = _piece(plan)
    low, high = box_of(united([solid for _, solid in piece.boards]))
    needs = (need("screen.height", plan.base, plan.height),)
    facts = tuple((f"screen.{n}", float(v)) for n, v in zip(("width", "depth", "height"), high - low, strict=True))
    assembly: Spec = {"panels": {name: name for name in parts}, "stands_on": "wall_0.bottom"}
    spec = frame(plan.base, parts, {"screen": assembly | ({"joins": joins} if joins else {})}, needs, max(plan.widths))
    return Design("screen", 0, plan, spec, (), (piece,), needs, facts, plan.joint, plan.base)


def _piece(plan: Screen) -> Piece:
    t, h, x = plan.base.t, plan.height, 0.0
    boards, touches = {}, []
    for i, wide in enumerate(plan.widths):
        boards[f"wall_{i}"] = block((x, 0.0, 0.0), (x + wide, t, h - (t if plan.on_top and plan.coping else 0.0)))
        x += wide
        if i:
            touches.append(Touch(f"wall_{i - 1}", f"wall_{i}", (-1.0, 0.0, 0.0), t * h))
    if plan.coping:
        boards["coping"] = block((0.0, 0.0 if plan.on_top else t, h - t), (plan.widths[0], plan.coping, h))
        way = (0.0, 0.0, -1.0) if plan.on_top else (0.0, -1.0, 0.0)
        touches.append(Touch("wall_0", "coping", way, t * plan.widths[0]))
    return Piece("screen", tuple(boards.items()), tuple(touches))


def faults(plan: Screen, dice: Dice) -> dict[str, Screen]:
    """Return walls with a canopy that pulls them over, or with a need not met."""
    deep = plan.height
    while _weight(replace(plan, coping=deep)) < plan.base.t + UPRIGHT:
        deep *= 1.3
    return {
        "a canopy that pulls it over": replace(plan, coping=round(deep + dice.size(1.0, 20.0), 1)),
        "a need not met": replace(plan, base=replace(plan.base, margin=-dice.size(0.1, 2.0))),
    }


def smaller(plan: Screen) -> Iterator[Screen]:
    """Return screens of fewer walls, without a coping, and of rounder sizes."""
    if len(plan.widths) > 1:
        yield replace(plan, widths=plan.widths[:-1])
    if 0.0 < plan.coping < plan.height:
        yield replace(plan, coping=0.0)
    for step in (20.0, 10.0, 1.0):
        rounder = replace(plan, height=max(40.0, round(plan.height / step) * step))
        if rounder != plan:
            yield rounder
            break
