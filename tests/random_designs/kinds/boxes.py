"""Boxes of two sides and two to four cross walls, by tabs and slots or butted, open above, with a deck or with a lid.

x runs along the front, y backwards, z up. A deck is as wide as the box and everything ends under it; a lid lies on top.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import floor

from manifold3d import CrossSection, Manifold

from tests.random_designs.design import Base, Design, Piece, Rest, Spec, Touch, frame, mm, need
from tests.random_designs.dice import Dice
from tests.random_designs.kinds.openings import Opening, cut, drawn, rim_of, surface
from tests.random_designs.kinds.slots import fit, least_tab, options
from tests.random_designs.solids import block, box_of, united

FOAM = 30e-6  # g/mm³: bare foam of 30 kg/m³
FIGURE = 30.0  # g


@dataclass(frozen=True, slots=True)
class Box:
    """Sizes over all, in mm; ``end`` and ``inner``: from the end of a side to the outsides of its cross walls (inner 0: none)."""

    base: Base
    joint: str
    length: float
    depth: float
    height: float
    end: float
    inner: float
    top: str
    over: float
    play: float
    opening: Opening | None
    pattern: Spec | None
    lid_narrow: float = 0.0  # by how much the lid is too narrow to reach both sides
    east_deeper: float = 0.0
    west_lower: float = 0.0


def draw(dice: Dice) -> Box:
    """Return a box with room in it."""
    base = dice.base("Random box")
    t = base.t
    joint = dice.one_of(("tab_and_slot", "butt"))
    # a cross wall keeps two thicknesses to the end where it has slots
    end = dice.above("slot to edge", 2 * t, 2 * t + 15.0) if joint == "tab_and_slot" else 0.0
    length = dice.page_wide(2 * end + 4 * t + 40.0, 480.0, 0.0, base.paper)
    depth = dice.size(2 * t + 25.0, 180.0)
    height = dice.size(max(30.0, 2 * least_tab(t)) + t, 160.0)
    room = (length - 2 * end - 2 * t) / 2
    inner = 0.0
    if room > 6 * t + 40.0 and dice.chance(0.4):
        inner = round(end + t + dice.above("wall to wall", 2 * t + 10.0, room - 2 * t - 10.0), 3)
    top = dice.one_of(("open", "deck", "lid"))
    over = dice.above("lid over the box", 0.0, 6.0) if top == "lid" else 0.0
    ends = (inner or end) + 3 * t
    opening = drawn(dice, length, height - t, rim_of(t), ends=ends)
    plan = Box(
        base,
        joint,
        length,
        depth,
        height,
        end,
        inner,
        top,
        over,
        dice.play(base) if joint == "tab_and_slot" else 0.0,
        opening,
        surface(dice, [length * height]),
    )
    return replace(plan, over=min(over, _steady(plan)))


def _steady(plan: Box) -> float:
    """Return how far (mm) the lid may reach over the box before a figure at its edge tips all: moments about the foot of a side."""
    grams = FOAM * sum(solid.volume() for _, solid in _piece(replace(plan, over=0.0)).boards)
    return floor(grams * min(plan.length, plan.depth) / (2 * FIGURE) * 10.0) / 10.0


def design(plan: Box) -> Design:
    """Return spec and solids."""
    side: Spec = {"shape": "wall_panel", "with": {"width": mm(plan.length), "height": mm(plan.height)}}
    if plan.opening:
        side["openings"] = {"light": plan.opening.written()}
    if plan.pattern:
        side["surface"] = plan.pattern
    parts: Spec = {"side": side}
    panels = {"front": "side", "back": "side"}
    for name in _ribs(plan):
        depth = plan.depth + (plan.east_deeper if name == "east" else 0.0)
        height = plan.height - (plan.west_lower if name == "west" else 0.0)
        key = {(plan.depth, plan.height): "rib"}.get((depth, height), f"{name}_rib")
        parts[key] = {"shape": "wall_panel", "with": {"width": mm(depth), "height": mm(height)}}
        panels[name] = key
    if plan.top == "deck":
        parts["deck"] = {"shape": "wall_panel", "with": {"width": mm(plan.length), "height": mm(plan.depth)}}
        panels["deck"] = "deck"
    elif plan.top == "lid":
        size = (plan.length + 2 * plan.over, plan.depth + 2 * plan.over - plan.lid_narrow)
        parts["lid"] = {"shape": "rectangle", "with": {"width": mm(size[0]), "height": mm(size[1])}}
        panels["lid"] = "lid"
    assembly = {"box": {"panels": panels, "stands_on": "front.bottom", "joins": _joins(plan)}}
    piece = _piece(plan)
    low, high = box_of(united([solid for _, solid in piece.boards]))
    truth = float(high[2] - low[2])
    needs = (need("box.height", plan.base, truth),)
    facts = tuple((f"box.{n}", float(v)) for n, v in zip(("width", "depth", "height"), high - low, strict=True))
    spec = frame(plan.base, parts, assembly, needs, max(plan.length + 2 * plan.over, plan.height))
    return Design("box", 0, plan, spec, (), (piece,), needs, facts, plan.joint, plan.base)


def _ribs(plan: Box) -> dict[str, float]:
    """Return the cross walls and where they begin along the front."""
    t = plan.base.t
    ribs = {"west": plan.end, "east": plan.length - plan.end - t}
    return {**ribs, "west_inner": plan.inner, "east_inner": plan.length - plan.inner - t} if plan.inner else ribs


def _joins(plan: Box) -> list[Spec]:
    joins: list[Spec] = []
    for name in _ribs(plan):
        inset = plan.inner if name.endswith("inner") else plan.end
        pairs = [("front.left", f"{name}.right"), ("back.right", f"{name}.left")]
        if name.startswith("east"):
            pairs = [("front.right", f"{name}.left"), ("back.left", f"{name}.right")]
        for edge, rib in pairs:
            join: Spec = {"edges": [edge, rib], "joint": plan.joint}
            if plan.joint == "butt":
                join["runs_through"] = edge.split(".")[0]
            else:
                join |= {"tabs_on": name, **options(plan.base, plan.play, plan.height - plan.base.t)}
            joins.append({**join, "inset": mm(inset)} if inset else join)
    if plan.top == "deck":
        for edge, side in (("bottom", "front"), ("top", "back")):
            joins.append({"edges": [f"deck.{edge}", f"{side}.top"], "joint": "butt", "runs_through": "deck"})
        for name in _ribs(plan):
            edge = "deck.left" if name.startswith("west") else "deck.right"
            join = {"edges": [edge, f"{name}.top"], "joint": "butt", "runs_through": "deck"}
            inset = plan.inner if name.endswith("inner") else plan.end
            joins.append({**join, "inset": mm(inset)} if inset else join)
    elif plan.top == "lid":
        joins.append({"place": "lid", "rests_on": ["front.top", "back.top"]})
    return joins


def _piece(plan: Box) -> Piece:
    t = plan.base.t
    high = plan.height - (t if plan.top == "deck" else 0.0)
    boards = {
        "front": _side(plan, high).transform([[1, 0, 0, 0], [0, 0, 1, 0], [0, 1, 0, 0]]),
        "back": _side(plan, high).transform([[-1, 0, 0, plan.length], [0, 0, -1, plan.depth], [0, 1, 0, 0]]),
    }
    touches = []
    for name, x in _ribs(plan).items():
        deep = plan.depth + (plan.east_deeper if name == "east" else 0.0)
        lower = plan.west_lower if name == "west" else 0.0
        boards[name] = block((x, t, 0.0), (x + t, deep - t, high - lower))
        touches += [Touch("front", name, (0.0, -1.0, 0.0), t * high), Touch("back", name, (0.0, 1.0, 0.0), t * high)]
        if plan.top == "deck":
            touches.append(Touch("deck", name, (0.0, 0.0, 1.0), t * (deep - 2 * t)))
    rests: tuple[Rest, ...] = ()
    if plan.top == "deck":
        boards["deck"] = block((0.0, 0.0, high), (plan.length, plan.depth, high + t))
        touches += [Touch("deck", name, (0.0, 0.0, 1.0), t * plan.length) for name in ("front", "back")]
    elif plan.top == "lid":
        deep = plan.depth + 2 * plan.over - plan.lid_narrow
        y = (plan.depth - deep) / 2
        boards["lid"] = block((-plan.over, y, high), (plan.length + plan.over, y + deep, high + t))
        touches += [Touch("lid", name, (0.0, 0.0, 1.0), t * plan.length) for name in ("front", "back")]
        rests = (Rest("lid", ("front", "back")),)
    fits = (fit("tab of a cross wall", plan.base, plan.play),) if plan.joint == "tab_and_slot" else ()
    return Piece("box", tuple(boards.items()), tuple(touches), fits, rests)


def _side(plan: Box, high: float) -> Manifold:
    """Return a side (along, up, into the board)."""
    return Manifold.extrude(CrossSection.square((plan.length, high)) - cut(plan.opening), plan.base.t)


def faults(plan: Box, dice: Dice) -> dict[str, Box]:
    """Return the box with one change that its solids refuse."""
    by = dice.size(0.5, 6.0)
    made = {
        "one cross wall longer": replace(plan, east_deeper=by),
        "one cross wall lower": replace(plan, west_lower=by + 1.0),
        "a need not met": replace(plan, base=replace(plan.base, margin=-dice.size(0.1, 2.0))),
    }
    if plan.top == "lid":
        made["lid smaller than its opening"] = replace(
            plan, lid_narrow=round(2 * plan.over + 2 * plan.base.t + dice.size(0.5, 10.0), 3)
        )
    if plan.joint == "tab_and_slot":
        made["slot too narrow"] = replace(plan, play=round(max(plan.base.spread - dice.size(0.04, 0.1, 0.01), 0.0), 3))
    return made


def smaller(plan: Box) -> Iterator[Box]:
    """Return boxes with fewer things on them and rounder sizes."""
    if plan.pattern:
        yield replace(plan, pattern=None)
    if plan.opening:
        yield replace(plan, opening=None)
    if plan.inner:
        yield replace(plan, inner=0.0)
    if plan.top != "open" and not plan.lid_narrow:
        yield replace(plan, top="open", over=0.0)
    if plan.over and not plan.lid_narrow:
        yield replace(plan, over=0.0)
    if plan.joint != "butt":
        yield replace(plan, joint="butt", end=0.0)
    for name in ("length", "depth", "height"):
        for step in (20.0, 10.0, 1.0):
            value = max(step, round(getattr(plan, name) / step) * step)
            if value != getattr(plan, name):
                yield replace(plan, **{name: value})
                break
