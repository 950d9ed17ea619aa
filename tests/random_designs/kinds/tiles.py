"""Floor tiles, laid side by side at their pitch."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import cos, pi, sin, sqrt

from tests.random_designs.design import Base, Design, Piece, Spec, Touch, frame, mm, need
from tests.random_designs.dice import Dice
from tests.random_designs.solids import Point, plate


@dataclass(frozen=True, slots=True)
class Tiles:
    """A tile of three on the table: pitch and joint between neighbours, in mm."""

    base: Base
    shape: str
    pitch: float
    gap: float
    count: int
    pattern: Spec | None


def draw(dice: Dice) -> Tiles:
    """Return a tile with a pattern that its size can carry."""
    base = dice.base("Random tiles")
    shape = dice.one_of(("hex_tile", "square_tile"))
    pitch = dice.page_wide(30.0, 280.0, 0.0, base.paper)
    pattern = None
    if dice.chance(0.5):
        grown = max(1.0, pitch / 60.0)
        pattern = dice.one_of(
            (
                {"pattern": "cobbles", "with": {"size": mm(round(8 * grown, 1))}},
                {"pattern": "flagstones", "with": {"size": mm(round(14 * grown, 1))}},
                {"pattern": "planks", "with": {"width": mm(round(7 * grown, 1)), "length": mm(round(40 * grown, 1))}},
                {"pattern": "square_grid", "with": {"size": mm(round(12 * grown, 1))}},
            )
        )
    return Tiles(base, shape, pitch, dice.one_of((0.0, 0.0, dice.size(0.1, 1.0))), dice.count(1, 12), pattern)


def _outline(plan: Tiles) -> list[Point]:
    size = plan.pitch - plan.gap
    if plan.shape == "square_tile":
        return [(0.0, 0.0), (size, 0.0), (size, size), (0.0, size)]
    # sized across its flats, a corner pointing down: sides left and right are upright
    return [(size / sqrt(3) * sin(k * pi / 3), -size / sqrt(3) * cos(k * pi / 3)) for k in range(6)]


def design(plan: Tiles) -> Design:
    """Return spec and solids: a row of tiles, each a pitch from the next."""
    sizes = {"across_flats" if plan.shape == "hex_tile" else "side": mm(plan.pitch)}
    if plan.gap:
        sizes["gap"] = mm(plan.gap)
    part: Spec = {"shape": plan.shape, "count": plan.count, "with": sizes}
    if plan.pattern:
        part["surface"] = plan.pattern
    size, t = plan.pitch - plan.gap, plan.base.t
    edge = size if plan.shape == "square_tile" else size / sqrt(3)
    high = size if plan.shape == "square_tile" else 2 * edge
    one = plate(_outline(plan), t)
    tiles = [(f"tile_{i + 1}", one.translate([i * plan.pitch, 0.0, 0.0])) for i in range(3)]
    touching = [Touch(f"tile_{i}", f"tile_{i + 1}", (-1.0, 0.0, 0.0), t * edge) for i in (1, 2)]
    # with a joint between them each tile lies for itself
    pieces = (
        (Piece("floor", tuple(tiles), tuple(touching)),)
        if not plan.gap
        else tuple(Piece(n, ((n, s),), ()) for n, s in tiles)
    )
    needs = (need("tile.width", plan.base, size),)
    facts = (
        ("tile.width", size),
        ("tile.height", high),
        ("tile.area", one.volume() / t),
        ("tile.count", float(plan.count)),
    )
    return Design(
        "tile", 0, plan, frame(plan.base, {"tile": part}, {}, needs, high), (), pieces, needs, facts, "none", plan.base
    )


def faults(plan: Tiles, dice: Dice) -> dict[str, Tiles]:
    """Return tiles with a need that they do not meet."""
    return {"a need not met": replace(plan, base=replace(plan.base, margin=-dice.size(0.1, 2.0)))}


def smaller(plan: Tiles) -> Iterator[Tiles]:
    """Return fewer tiles with less on them."""
    if plan.pattern:
        yield replace(plan, pattern=None)
    if plan.gap:
        yield replace(plan, gap=0.0)
    if plan.count > 1:
        yield replace(plan, count=1)
    for step in (20.0, 10.0, 1.0):
        if round(plan.pitch / step) * step not in (0.0, plan.pitch):
            yield replace(plan, pitch=round(plan.pitch / step) * step)
