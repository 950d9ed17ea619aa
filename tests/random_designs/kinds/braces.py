"""Spiral stairs on a plinth with knee braces under some of their steps.

A brace stands in the middle of what a step leaves free of the one below, against the round core: its place is closed, and the
solids say whether it touches both and nothing else.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import cos, degrees, hypot, radians, sin

from manifold3d import CrossSection, Manifold

from tests.random_designs.design import Base, Design, Piece, Spec, Touch, deg, frame, mm, need
from tests.random_designs.dice import Dice
from tests.random_designs.kinds.layers import Layer, outline
from tests.random_designs.kinds.stacks import FIGURE, STRENGTH
from tests.random_designs.solids import standing

ROUND = 160  # corners of a full circle: the core that a brace touches is off by less than 0.01 mm


@dataclass(frozen=True, slots=True)
class Braced:
    """Sizes in mm: ``turn`` in degrees of each of ``layers`` steps that span two turns, on one disc; ``under``: braced steps from 1."""

    base: Base
    turn: float
    core: float
    reach: float
    layers: int
    run: float
    drop: float
    under: tuple[int, ...]

    def bottom(self, step: int) -> float:
        """Return the height of a step's underside: the plinth and the steps before it lie below."""
        return step * self.base.t


def draw(dice: Dice) -> Braced:
    """Return a stair with braces where there is room for them."""
    base = dice.base("Random braced stair")
    t = base.t
    least = 15.0 * max(1.0, t / 5.0)  # a brace less than this is all point
    while True:
        steps = dice.count(8, 20)
        turn, core = round(360.0 / steps, 4), dice.size(max(20.0, 2 * t), 50.0)
        reach = dice.size(core + least + 5.0, core + 90.0)
        inner = degrees(t / 2 / core)  # half of the angle that the brace takes up at the core
        root = core * radians(2 * turn)
        if inner < 0.45 * turn and STRENGTH * root * t**2 / (6 * FIGURE * (reach - core)) >= 1.25:
            break
    longest = (reach**2 - t**2 / 4) ** 0.5 - core
    run = longest - dice.above("brace to rim", 0.3, max(0.3, longest - least))
    layers = dice.count(6, 14)
    # below a step lie the plinth and, a turn less two steps farther down, the stair again
    under, drop = _where(dice, layers, steps, t, least)
    return Braced(base, turn * dice.one_of((1.0, -1.0)), core, reach, layers, round(run, 3), drop, under)


def _where(dice: Dice, layers: int, steps: int, t: float, least: float) -> tuple[tuple[int, ...], float]:
    room = [min((k - 1) * t, (steps - 2) * t) for k in range(1, layers + 1)]
    drop = dice.size(least, max(least, min(room[-1] - 0.1, 3 * least)))
    high = [k for k in range(1, layers + 1) if room[k - 1] >= drop + 0.05]
    if not high:  # a stair with more layers: what its turns leave is room enough for the least brace
        return _where(dice, layers + 3, steps, t, least)
    few = sorted({dice.one_of(high) for _ in range(dice.count(1, 4))})
    return tuple(few), drop


def design(plan: Braced) -> Design:
    """Return spec and solids."""
    step = _step(plan)
    parts: Spec = {
        "plinth": {"shape": "disc", "with": {"radius": mm(plan.reach)}},
        "step": {
            "shape": "spiral_stair_layer",
            "with": {
                "core_radius": mm(plan.core),
                "reach": mm(plan.reach),
                "step_angle": deg(step["step_angle"]),
                "turn": deg(plan.turn),
            },
        },
    }
    layers = max(plan.layers, plan.under[-1])
    brace = {"run": mm(plan.run), "drop": mm(plan.drop), "under": list(plan.under)}
    rows = [{"part": "plinth"}, {"part": "step", "count": layers, "turn": deg(plan.turn)}]
    height = (layers + 1) * plan.base.t
    needs = (need("pile.height", plan.base, height),)
    facts = (
        ("pile.height", height),
        ("pile.braces", float(len(plan.under))),
        ("pile.brace_length", hypot(plan.run, plan.drop)),
        ("pile_brace.count", float(len(plan.under))),
    )
    spec = frame(plan.base, parts, {"pile": {"stack": rows, "brace": brace}}, needs, 2 * plan.reach)
    return Design("braces", 0, plan, spec, (), (_piece(plan, layers),), needs, facts, "layers (braced)", plan.base)


def _step(plan: Braced) -> Layer:
    sizes = {"core_radius": plan.core, "reach": plan.reach, "step_angle": 2 * abs(plan.turn), "turn": plan.turn}
    return Layer("spiral_stair_layer", (*sizes.items(), ("notch", 0.0)))


def _piece(plan: Braced, layers: int) -> Piece:
    t, flat = plan.base.t, CrossSection([outline(_step(plan), ROUND)])
    plinth = Manifold.extrude(CrossSection([outline(Layer("disc", (("radius", plan.reach),)), 36)]), t)
    boards = [("plinth", plinth)]
    touches = []
    for k in range(1, layers + 1):
        boards.append((f"step {k}", Manifold.extrude(flat.rotate(k * plan.turn), t).translate([0.0, 0.0, k * t])))
        touches.append(Touch(boards[-2][0], boards[-1][0], (0.0, 0.0, -1.0), 0.2 * flat.area()))
    for k in plan.under:
        heading = (k + 1.5) * plan.turn
        c, s = cos(radians(heading)), sin(radians(heading))
        boards.append((f"brace {k}", _brace(plan, (c, s), heading, plan.bottom(k) - plan.drop)))
        touches.append(Touch(f"step {k}", f"brace {k}", (0.0, 0.0, 1.0), plan.run * t))
        # on a round core it touches along a line: of what it enters when it is moved, the greater part
        touches.append(Touch(f"step {k - 1}", f"brace {k}", (-c, -s, 0.0), 0.5 * min(t, plan.drop)))
    return Piece("pile", tuple(boards), tuple(touches))


def _brace(plan: Braced, way: tuple[float, float], heading: float, low: float) -> Manifold:
    """Return a brace whose upright side touches the core: a triangle with both points cut off."""
    t, blunt = plan.base.t, 2.0 * max(1.0, plan.base.t / 5.0)
    ring = [(0.0, 0.0), (blunt, 0.0), (plan.run, plan.drop - blunt), (plan.run, plan.drop), (0.0, plan.drop)]
    start = (plan.core * way[0] + t / 2 * way[1], plan.core * way[1] - t / 2 * way[0])
    return standing(ring, t, start, heading).translate([0.0, 0.0, low])


def faults(plan: Braced, dice: Dice) -> dict[str, Braced]:
    """Return the stair with one change that its solids refuse."""
    t, by = plan.base.t, dice.size(0.5, 6.0)
    low = plan.under[0]
    made = {
        "a brace runs past its step": replace(plan, run=round(plan.reach - plan.core + by, 3)),
        "a brace stands in the plinth": replace(
            plan, drop=round(plan.bottom(low) - t + min(by, 0.9 * t), 3), under=(low,)
        ),
        "a need not met": replace(plan, base=replace(plan.base, margin=-dice.size(0.1, 2.0))),
    }
    turns = round(360.0 / abs(plan.turn))
    high = turns + 1  # the lowest step under whose brace a step lies, a turn below
    if plan.layers >= high:
        made["a brace stands in a step below"] = replace(
            plan, drop=round((turns - 2) * t + min(by, 0.9 * t), 3), under=(high,)
        )
    return made


def smaller(plan: Braced) -> Iterator[Braced]:
    """Return stairs with fewer steps and braces, and rounder sizes."""
    if len(plan.under) > 1:
        yield replace(plan, under=plan.under[-1:])
    if plan.layers > plan.under[-1]:
        yield replace(plan, layers=plan.under[-1])
    for name in ("core", "reach", "run", "drop"):
        for step in (10.0, 1.0):
            value = max(step, round(getattr(plan, name) / step) * step)
            if value != getattr(plan, name):
                yield replace(plan, **{name: value})
                break
