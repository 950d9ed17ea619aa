"""Lean-tos: a low front wall, a high back wall, two sides between them, one roof that slopes from the back to the front.

x runs along the front, y backwards, z up. Closed ones have sides up to the roof, with the tops of front and back cut to the slope;
open ones have low sides, and their roof lies on the two level edges, cut to the slope or square.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import atan, cos, sin

from manifold3d import Manifold

from tests.random_designs.design import Base, Design, Piece, Rest, Spec, Touch, frame, mm, need
from tests.random_designs.dice import Dice
from tests.random_designs.judge import GAP
from tests.random_designs.kinds.openings import Opening, drawn, rim_of
from tests.random_designs.kinds.slots import fit, options
from tests.random_designs.solids import block, box_of, hull, united


@dataclass(frozen=True, slots=True)
class LeanTo:
    """Sizes in mm: ``width`` over the sides, ``run`` from the front's outside to the back's, ``low`` and ``rise`` of the slope
    there. ``past``: how far front and back run past the sides."""

    base: Base
    joint: str
    closed: bool
    cut: bool
    width: float
    run: float
    low: float
    rise: float
    past: float
    over: float
    verge: float
    play: float
    opening: Opening | None
    back_up: float = 0.0
    front_up: float = 0.0
    roof_short: float = 0.0
    roof_narrow: float = 0.0

    @property
    def whole(self) -> float:
        """Return the width of front and back."""
        return self.width + 2 * self.past

    @property
    def steep(self) -> float:
        """Return how much the slope rises by its run: over square tops it lies on the front's outer and the back's inner rim."""
        return self.rise / (self.run if self.cut else self.run - self.base.t)

    @property
    def long(self) -> float:
        """Return the length of the roof, down its slope."""
        return round(self.run / cos(atan(self.steep)) + self.over - self.roof_short, 3)


def draw(dice: Dice) -> LeanTo:
    """Return a lean-to with room in it."""
    base = dice.base("Random lean-to")
    t, joint = base.t, dice.one_of(("butt", "tab_and_slot"))
    past = dice.above("slot to edge", 2 * t, 2 * t + 10.0) if joint == "tab_and_slot" else 0.0
    width = dice.page_wide(max(45.0, 6 * t), 200.0, 0.0, base.paper)
    run = dice.size(max(40.0, 6 * t), 120.0)
    low = dice.size(max(32.0, 6.2 * t), 90.0)
    rise = dice.size(0.62 * run, 0.95 * run)  # figures are put on flatter slopes, and steeper sides end in sharp points
    closed = dice.chance(0.6)
    over, verge = dice.size(0.0, min(15.0, run / 5)), dice.size(0.0, 12.0)
    opening = drawn(dice, width + 2 * past, low, rim_of(t), ends=past + 3 * t)
    play = dice.play(base) if joint == "tab_and_slot" else 0.0
    return LeanTo(
        base, joint, closed, closed or dice.chance(0.5), width, run, low, rise, past, over, verge, play, opening
    )


def design(plan: LeanTo) -> Design:
    """Return spec and solids."""
    high = plan.low + plan.rise
    front: Spec = {"shape": "wall_panel", "with": {"width": mm(plan.whole), "height": mm(plan.low + plan.front_up)}}
    if plan.opening:
        front["openings"] = {"light": plan.opening.written()}
    slope: Spec = {"shape": "ramp_side", "with": {"run": mm(plan.run), "rise": mm(plan.rise), "toe": mm(plan.low)}}
    low_side: Spec = {"shape": "wall_panel", "with": {"width": mm(plan.run), "height": mm(_side_high(plan))}}
    roof = {"width": mm(plan.whole + 2 * plan.verge - plan.roof_narrow), "height": mm(plan.long)}
    parts: Spec = {
        "front": front,
        "back": {"shape": "wall_panel", "with": {"width": mm(plan.whole), "height": mm(high + plan.back_up)}},
        "near": slope if plan.closed else low_side,
        "far": {**slope, "combine": [{"mirror": "left_right"}]},
        "roof": {"shape": "rectangle", "with": roof},
    }
    panels = {"front": "front", "back": "back", "near": "near", "far": "far" if plan.closed else "near", "roof": "roof"}
    if not plan.closed:
        del parts["far"]
    assembly = {"shed": {"panels": panels, "stands_on": "front.bottom", "joins": _joins(plan)}}
    piece = _piece(plan)
    box = box_of(united([solid for _, solid in piece.boards]))
    truth = float(box[1][2] - box[0][2])
    needs = (need("shed.height", plan.base, truth),)
    facts = tuple((f"shed.{n}", float(v)) for n, v in zip(("width", "depth", "height"), box[1] - box[0], strict=True))
    spec = frame(plan.base, parts, assembly, needs, max(plan.whole + 2 * plan.verge, plan.long, high))
    return Design("lean-to", 0, plan, spec, (), (piece,), needs, facts, plan.joint, plan.base)


def _side_high(plan: LeanTo) -> float:
    return round(plan.low * 0.8, 3)


def _joins(plan: LeanTo) -> list[Spec]:
    far = ("far.right", "far.left") if plan.closed else ("far.left", "far.right")
    pairs = [("front.right", "near.left"), ("back.left", "near.right"), ("back.right", far[0]), ("front.left", far[1])]
    joins: list[Spec] = []
    for through, side in pairs:
        join: Spec = {"edges": [through, side], "joint": plan.joint}
        if plan.joint == "butt":
            join["runs_through"] = through.split(".")[0]
        else:
            edge = min(plan.low, _side_high(plan))
            join |= {"tabs_on": side.split(".")[0], "inset": mm(plan.past), **options(plan.base, plan.play, edge)}
        joins.append(join if plan.closed else {**join, "flush": "bottom"})
    level = ["front.top", "back.top"]
    rest: Spec = {"place": "roof", "rests_on": [*(["near.slope", "far.slope"] if plan.closed else []), *level]}
    joins.append({**rest, "cut_to_slope": level} if plan.cut else rest)
    return joins


def _piece(plan: LeanTo) -> Piece:
    t, steep, run, whole = plan.base.t, plan.steep, plan.run, plan.whole
    angle = atan(steep)
    low, high = plan.low + plan.front_up, plan.low + plan.rise + plan.back_up
    tops = ((low, low + t * steep), (high - t * steep, high)) if plan.cut else ((low, low), (high, high))
    front = _along([(0, 0), (t, 0), (t, tops[0][1]), (0, tops[0][0])], -plan.past, whole)
    if plan.opening:
        o = plan.opening
        left = o.centre - plan.past - o.width / 2
        front = front - block((left, -1.0, o.sill or -1.0), (left + o.width, t + 1.0, o.sill + o.height))
    boards = {
        "front": front,
        "back": _along([(run - t, 0), (run, 0), (run, tops[1][1]), (run - t, tops[1][0])], -plan.past, whole),
    }
    side = [(t, 0.0), (run - t, 0.0), (run - t, _side_high(plan)), (t, _side_high(plan))]
    if plan.closed:
        side[2:] = [(run - t, plan.low + (run - t) * steep), (t, plan.low + t * steep)]
    for name, x in (("far", 0.0), ("near", plan.width - t)):
        boards[name] = _along(side, x, t)
    roof_wide = whole + 2 * plan.verge - plan.roof_narrow
    at = (run, plan.low + run * steep)
    down, out = (-cos(angle), -sin(angle)), (-sin(angle), cos(angle))
    section = [(0.0, 0.0), (plan.long, 0.0), (plan.long, t), (0.0, t)]
    flat = [(at[0] + d * down[0] + o * out[0], at[1] + d * down[1] + o * out[1]) for d, o in section]
    boards["roof"] = _along(flat, (plan.width - roof_wide) / 2, roof_wide)
    way = (0.0, sin(angle), -cos(angle))
    line = 0.3 * GAP * (steep + 1 / steep) * whole  # of what a rim enters when it is moved, the greater part
    level = t / cos(angle) * whole if plan.cut else line
    touches = [Touch(name, "roof", way, level) for name in ("front", "back")]
    for name in ("near", "far"):
        ends = (plan.low + t * steep, plan.low + (run - t) * steep) if plan.closed else (_side_high(plan),) * 2
        touches += [
            Touch("front", name, (0.0, -1.0, 0.0), t * ends[0]),
            Touch("back", name, (0.0, 1.0, 0.0), t * ends[1]),
        ]
        if plan.closed:
            touches.append(Touch(name, "roof", way, t * (run - 2 * t) / cos(angle)))
    fits = (fit("tab of a side", plan.base, plan.play),) if plan.joint == "tab_and_slot" else ()
    return Piece("shed", tuple(boards.items()), tuple(touches), fits, (Rest("roof", ("front", "back")),))


def _along(section: list[tuple[float, float]], x: float, wide: float) -> Manifold:
    """Return a board whose section (y, z) runs along x; convex."""
    return hull([(at, y, z) for y, z in section for at in (x, x + wide)])


def faults(plan: LeanTo, dice: Dice) -> dict[str, LeanTo]:
    """Return the lean-to with one change that its solids refuse."""
    t, by = plan.base.t, dice.size(1.0, 6.0)
    closed = replace(plan, closed=True, cut=True)
    made = {
        "back too high": replace(closed, back_up=by),
        "back too low": replace(closed, back_up=-by),
        "front too high": replace(closed, front_up=by),
        # a roof that is laid in the middle of what it rests on ends before both walls
        "roof too short": replace(closed, roof_short=round(plan.over + 2 * t / cos(atan(plan.steep)) + by, 3)),
        "roof too narrow": replace(closed, roof_narrow=round(2 * plan.verge + 2 * plan.past + 3 * t + by, 3)),
        "a need not met": replace(plan, base=replace(plan.base, margin=-dice.size(0.1, 2.0))),
    }
    if t * plan.steep > 1.0:
        made["not cut to the slope"] = replace(closed, cut=False, over=plan.over + 1.0)
    if plan.joint == "tab_and_slot":
        made["slot too narrow"] = replace(plan, play=round(max(plan.base.spread - dice.size(0.04, 0.1, 0.01), 0.0), 3))
    return made


def smaller(plan: LeanTo) -> Iterator[LeanTo]:
    """Return lean-tos with fewer things on them and rounder sizes."""
    if plan.opening:
        yield replace(plan, opening=None)
    if plan.joint != "butt":
        yield replace(plan, joint="butt", past=0.0)
    for name in ("over", "verge"):
        if getattr(plan, name) and not (plan.roof_short or plan.roof_narrow):
            yield replace(plan, **{name: 0.0})
    for name in ("width", "run", "low", "rise"):
        for step in (20.0, 10.0, 1.0):
            value = max(step, round(getattr(plan, name) / step) * step)
            if value != getattr(plan, name):
                yield replace(plan, **{name: value})
                break
