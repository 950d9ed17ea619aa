"""Stalls: a back and two sides butted against it, open in front, under a lid that lies on some of the three.

x runs along the back, y from its outside to the open front, z up.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from tests.random_designs.design import Base, Design, Piece, Rest, Spec, Touch, frame, mm, need
from tests.random_designs.dice import Dice
from tests.random_designs.solids import block, box_of, centroid, inside_by, united

FIGURE = 30.0  # g, at the edge of the lid
BARE = 30e-6  # g of a mm³ of board: both as the tool assumes them
RESTS = (("back", "left", "right"), ("right", "back", "left"), ("left", "right"), ("back", "left"), ("right", "back"))


@dataclass(frozen=True, slots=True)
class Stall:
    """Sizes over all, in mm; ``over``: by how much the lid reaches over the outsides, all round."""

    base: Base
    width: float
    depth: float
    height: float
    over: float
    on: tuple[str, ...]
    narrower: float = 0.0  # by how much the lid is too narrow, and too short, to lie on all it should
    shorter: float = 0.0


def draw(dice: Dice) -> Stall:
    """Return a stall under a lid that no figure at its edge tips."""
    base = dice.base("Random stall")
    width, depth = dice.size(90.0, 220.0), dice.size(80.0, 160.0)
    plan = Stall(base, width, depth, dice.size(40.0, 110.0), 0.0, dice.one_of(RESTS))
    whole = united([solid for _, solid in _piece(plan).boards])
    least = inside_by(whole.slice(0.01), centroid(whole))
    most = 0.8 * whole.volume() * BARE * least / FIGURE
    return replace(plan, over=dice.above("lid over the stall", 0.0, min(6.0, most), min(0.5, most)))


def design(plan: Stall) -> Design:
    """Return spec and solids."""
    lid = _lid(plan)
    parts: Spec = {
        name: {"shape": shape, "with": {"width": mm(wide), "height": mm(high)}}
        for name, shape, wide, high in (
            ("back", "wall_panel", plan.width, plan.height),
            ("left", "wall_panel", plan.depth, plan.height),
            ("right", "wall_panel", plan.depth, plan.height),
            ("lid", "rectangle", lid[0], lid[1]),
        )
    }
    joins: list[Spec] = [
        {"edges": ["right.right", "back.left"], "joint": "butt", "runs_through": "back"},
        {"edges": ["back.right", "left.left"], "joint": "butt", "runs_through": "back"},
        {"place": "lid", "rests_on": [f"{name}.top" for name in plan.on]},
    ]
    piece = _piece(plan)
    low, high = box_of(united([solid for _, solid in piece.boards]))
    truth = float(high[2] - low[2])
    needs = (need("stall.height", plan.base, truth),)
    facts = tuple((f"stall.{n}", float(v)) for n, v in zip(("width", "depth", "height"), high - low, strict=True))
    assembly = {"stall": {"panels": {name: name for name in parts}, "stands_on": "back.bottom", "joins": joins}}
    spec = frame(plan.base, parts, assembly, needs, max(lid))
    return Design("stall", 0, plan, spec, (), (piece,), needs, facts, "butt", plan.base)


def _lid(plan: Stall) -> tuple[float, float]:
    """Return width and depth of the lid; along a side it has its width across."""
    size = plan.width + 2 * plan.over - plan.narrower, plan.depth + 2 * plan.over - plan.shorter
    return size if plan.on[0] == "back" else size[::-1]


def _piece(plan: Stall) -> Piece:
    t, w, d, h = plan.base.t, plan.width, plan.depth, plan.height
    x, y = plan.over - plan.narrower / 2, plan.over - plan.shorter / 2
    boards = {
        "back": block((0.0, 0.0, 0.0), (w, t, h)),
        "right": block((0.0, t, 0.0), (t, d, h)),
        "left": block((w - t, t, 0.0), (w, d, h)),
        "lid": block((-x, -y, h), (w + x, d + y, h + t)),
    }
    touches = [Touch("back", side, (0.0, -1.0, 0.0), t * h) for side in ("left", "right")]
    touches += [Touch("lid", name, (0.0, 0.0, 1.0), t * (w if name == "back" else d - t)) for name in plan.on]
    return Piece("stall", tuple(boards.items()), tuple(touches), (), (Rest("lid", ("back", "left", "right")),))


def faults(plan: Stall, dice: Dice) -> dict[str, Stall]:
    """Return the stall under a lid that does not lie on the whole of a wall, however it is turned, or with a need not met."""
    wide, deep = plan.width + 2 * plan.over, plan.depth + 2 * plan.over
    narrower = 2 * plan.over + dice.size(0.5, 10.0)
    shorter = 2 * plan.over + plan.base.t + dice.size(3.0, 10.0)
    if deep >= plan.width - 1.0:  # turned it would lie on both sides, were it not too small for their length as well
        narrower = max(narrower, wide - (plan.depth - plan.base.t - 5.0))
    if wide >= plan.depth - plan.base.t - 5.0:
        shorter = max(shorter, deep - (plan.width - 1.0))
    return {
        "a lid too narrow": replace(plan, narrower=round(narrower, 3)),
        "a lid too short": replace(plan, shorter=round(shorter, 3)),
        "a need not met": replace(plan, base=replace(plan.base, margin=-dice.size(0.1, 2.0))),
    }


def smaller(plan: Stall) -> Iterator[Stall]:
    """Return stalls with rounder sizes."""
    if plan.over and not (plan.narrower or plan.shorter):
        yield replace(plan, over=0.0)
    for name in ("width", "depth", "height"):
        for step in (20.0, 10.0, 1.0):
            value = max(40.0, round(getattr(plan, name) / step) * step)
            if value != getattr(plan, name):
                yield replace(plan, **{name: value})
                break
