"""Rings of 3 to 12 upright walls, mitred at every corner: regular towers, and rings with opposite walls alike.

Seen from above the walls run anticlockwise with their outsides on the right. Each is a block over a trapezium in plan: at a
corner where the path turns by τ both walls are bevelled by τ/2, so the inside is shorter by t·tan(τ/2) at that end.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import accumulate
from math import cos, pi, radians, sin, tan

from manifold3d import Manifold

from tests.random_designs.design import Base, Design, Piece, Spec, Touch, deg, frame, mm, need
from tests.random_designs.dice import Dice
from tests.random_designs.kinds.openings import Opening, drawn, rim_of, surface
from tests.random_designs.solids import Point, box_of, hull, plate, united


@dataclass(frozen=True, slots=True)
class Ring:
    """The outside lengths of the walls, the turn after each (degrees), heights; one opening in every wall, or in none."""

    base: Base
    shape: str
    lengths: tuple[float, ...]
    turns: tuple[float, ...]
    heights: tuple[float, ...]
    opening: Opening | None
    pattern: Spec | None
    off: tuple[float, ...] = ()  # what the spec says of a corner less what it should say, degrees
    said: str = "each"  # each corner is written, "equal" says that of all, or "none" where shapes or lengths say it


def draw(dice: Dice) -> Ring:
    """Return a closed ring whose inside leaves room for the walls."""
    base = dice.base("Random ring")
    if dice.chance(0.6):
        sides = dice.count(3, 12)
        # the inside is 20 mm wide or more: W = 2·a·tan(π/n)
        least = max(2 * (base.t + 10.0) * tan(pi / sides), 2 * base.t * tan(pi / sides) + 8.0, 12.0)
        width = dice.page_wide(
            max(least, 15.0), min(300.0, 1200.0 / sides), 0.8 if base.use == "trace" else 0.0, base.paper
        )
        shape = dice.one_of(("tower_panel", "wall_panel"))
        lengths, turns = (width,) * sides, (360.0 / sides,) * sides
        follows = shape == "tower_panel" or sides == 3
        said = dice.one_of(("each", "none" if follows else "equal", "equal"))
    else:
        said = "each"
        half = dice.count(2, 5)
        marks = sorted(dice.random.sample(range(30, 151, 5), half - 1)) if half > 2 else [90]
        turns_half = [float(b - a) for a, b in zip([0, *marks], [*marks, 180], strict=True)]
        if min(turns_half) < 15.0 or max(turns_half) > 120.0:
            turns_half = [180.0 / half] * half
        least = 2 * base.t * max(tan(radians(a / 2)) for a in turns_half) + 2 * base.t + 12.0
        lengths_half = [dice.size(max(least, 30.0), 200.0) for _ in range(half)]
        shape, lengths, turns = "wall_panel", (*lengths_half, *lengths_half), (*turns_half, *turns_half)
    height = dice.above("height of a wall", 30.0, 250.0)
    rim = rim_of(base.t)
    inner = base.t * max(tan(radians(a / 2)) for a in turns)
    opening = drawn(dice, min(lengths), height, rim, ends=round(inner, 1)) if len(set(lengths)) == 1 else None
    pattern = surface(dice, [max(lengths) * height])
    return Ring(base, shape, lengths, turns, (height,) * len(lengths), opening, pattern, (), said)


def design(plan: Ring) -> Design:
    """Return spec and solids."""
    n = len(plan.lengths)
    off = plan.off or (0.0,) * n
    corners = [180.0 - turn + wrong for turn, wrong in zip(plan.turns, off, strict=True)]
    keys = [(plan.lengths[i], plan.heights[i], corners[i - 1], corners[i]) for i in range(n)]
    names = {key: f"wall_{k}" for k, key in enumerate(dict.fromkeys(keys), 1)}
    parts: Spec = {}
    for (length, height, _, _), name in names.items():
        tower = {"sides": n, "width": mm(length), "height": mm(height)}
        part: Spec = {
            "shape": plan.shape,
            "with": tower if plan.shape == "tower_panel" else {"width": mm(length), "height": mm(height)},
        }
        if plan.opening:
            part["openings"] = {"light": plan.opening.written()}
        if plan.pattern:
            part["surface"] = plan.pattern
        parts[name] = part
    spots = [f"side_{i + 1}" for i in range(n)]
    joins: list[Spec] = [
        {"edges": [f"{spots[i]}.right", f"{spots[(i + 1) % n]}.left"], "joint": "mitre"} for i in range(n)
    ]
    if plan.said == "each":
        joins = [{**join, "corner": deg(corner)} for join, corner in zip(joins, corners, strict=True)]
    tower: Spec = {"panels": {s: names[k] for s, k in zip(spots, keys, strict=True)}, "stands_on": "side_1.bottom"}
    assembly = {"tower": {**tower, **({"corners": "equal"} if plan.said == "equal" else {}), "joins": joins}}
    piece = _piece(plan, corners, spots)
    low, high = box_of(united([solid for _, solid in piece.boards]))
    truth = float(high[2] - low[2])
    needs = (need("tower.height", plan.base, truth),)
    facts = tuple((f"tower.{n}", float(v)) for n, v in zip(("width", "depth", "height"), high - low, strict=True))
    spec = frame(plan.base, parts, assembly, needs, max(*plan.lengths, *plan.heights))
    return Design("ring", 0, plan, spec, (), (piece,), needs, facts, "mitre", plan.base)


def _piece(plan: Ring, corners: list[float], spots: list[str]) -> Piece:
    n, t = len(plan.lengths), plan.base.t
    headings = [0.0, *accumulate(180.0 - c for c in corners[:-1])]
    start: Point = (0.0, 0.0)
    boards: list[tuple[str, Manifold]] = []
    touches: list[Touch] = []
    for i, length in enumerate(plan.lengths):
        c, s = cos(radians(headings[i])), sin(radians(headings[i]))
        bevels = [t * tan(radians((180.0 - corner) / 2)) for corner in (corners[i - 1], corners[i])]
        plan_of = [(0.0, 0.0), (length, 0.0), (length - bevels[1], t), (bevels[0], t)]
        at = [(start[0] + c * x - s * y, start[1] + s * x + c * y) for x, y in plan_of]
        height = plan.heights[i]
        solid = hull([(x, y, z) for x, y in at for z in (0.0, height)])
        if plan.opening:
            o = plan.opening
            left, right = o.centre - o.width / 2, o.centre + o.width / 2
            hole = [(left, -1.0), (right, -1.0), (right, t + 1.0), (left, t + 1.0)]
            ring = [(start[0] + c * x - s * y, start[1] + s * x + c * y) for x, y in hole]
            low = o.sill if o.sill else -1.0
            solid = solid - plate(ring, o.sill + o.height - low, low)
        boards.append((spots[i], solid))
        j = (i + 1) % n
        bisector = radians(headings[i] + (180.0 - corners[i]) / 2)
        way = (-cos(bisector), -sin(bisector), 0.0)
        area = t / cos(radians((180.0 - corners[i]) / 2)) * max(height, plan.heights[j])
        touches.append(Touch(spots[i], spots[j], way, area))
        start = (start[0] + length * c, start[1] + length * s)
    return Piece("tower", tuple(boards), tuple(touches))


def faults(plan: Ring, dice: Dice) -> dict[str, Ring]:
    """Return the ring with one wall longer, one wall higher, one corner wrong, or a need that it does not meet."""
    n = len(plan.lengths)
    k, by = dice.count(1, n - 1), dice.size(0.5, 6.0)

    def put(values: tuple[float, ...], value: float) -> tuple[float, ...]:
        return (*values[:k], round(value, 6), *values[k + 1 :])

    wrong = dice.size(0.5, 5.0) * dice.one_of((-1.0, 1.0))
    wall = replace(plan, shape="wall_panel", said="each")  # of unsaid corners three follow from any lengths
    return {
        "one wall longer": replace(wall, lengths=put(plan.lengths, plan.lengths[k] + by)),
        "one wall higher": replace(wall, heights=put(plan.heights, plan.heights[k] + by + 2.0)),
        "one corner wrong": replace(wall, off=put((0.0,) * n, wrong)),
        "a need not met": replace(plan, base=replace(plan.base, margin=-dice.size(0.1, 2.0))),
    }


def smaller(plan: Ring) -> Iterator[Ring]:
    """Return rings with fewer things on them and rounder sizes."""
    if plan.pattern:
        yield replace(plan, pattern=None)
    if plan.opening:
        yield replace(plan, opening=None)
    if plan.said != "each":
        yield replace(plan, said="each")
    if plan.shape != "wall_panel" and plan.said != "none":
        yield replace(plan, shape="wall_panel")
    if not plan.off and len(set(plan.lengths)) == 1 and len(set(plan.turns)) == 1 and len(set(plan.heights)) == 1:
        n = len(plan.lengths)
        for fewer in range(3, n):
            yield replace(
                plan, lengths=plan.lengths[:fewer], turns=(360.0 / fewer,) * fewer, heights=plan.heights[:fewer]
            )
        for step in (10.0, 1.0):
            size, high = (max(step, round(v / step) * step) for v in (plan.lengths[0], plan.heights[0]))
            if (size, high) != (plan.lengths[0], plan.heights[0]):
                yield replace(plan, lengths=(size,) * n, heights=(high,) * n)
