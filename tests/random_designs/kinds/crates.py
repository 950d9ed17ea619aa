"""Egg-crates: upright ribs that run across, open above, and ribs let into them from above, open below.

x runs along the first ribs, y along those that are let in. Each slot is half the height deep, so that both feet stand on the table.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from manifold3d import CrossSection, Manifold

from tests.random_designs.design import Base, Design, Piece, Spec, Touch, frame, mm, need
from tests.random_designs.dice import Dice
from tests.random_designs.kinds.slots import fit
from tests.random_designs.solids import box_of, united


@dataclass(frozen=True, slots=True)
class Crate:
    """Lengths of the ribs; where those of the other way cross them (middle of the board from the left or front end); mm."""

    base: Base
    length: float
    depth: float
    height: float
    across: tuple[float, ...]  # along the first ribs
    along: tuple[float, ...]  # along those that are let in
    play: float
    slot_off: float = 0.0  # by how much the last slot of the last rib lies wrong


def draw(dice: Dice) -> Crate:
    """Return a crate of two to four ribs each way."""
    base = dice.base("Random crate")
    t = base.t

    def places(length: float) -> tuple[float, ...]:
        count = dice.count(2, 4)
        end = dice.above("slot to end", 2.5 * t, 2.5 * t + 10.0)
        between = (length - 2 * end) / (count - 1)
        return tuple(round(end + k * between, 3) for k in range(count))

    length, depth = dice.page_wide(12 * t + 40.0, 400.0, 0.0, base.paper), dice.size(12 * t + 40.0, 250.0)
    height = dice.size(max(24.0, 4 * t), 100.0)
    return Crate(base, length, depth, height, places(length), places(depth), dice.play(base))


def design(plan: Crate) -> Design:
    """Return spec and solids."""
    parts: Spec = {
        "long_rib": {"shape": "wall_panel", "with": {"width": mm(plan.length), "height": mm(plan.height)}},
        "cross_rib": {"shape": "wall_panel", "with": {"width": mm(plan.depth), "height": mm(plan.height)}},
    }
    firsts, seconds = (
        [f"rib_{i + 1}" for i in range(len(plan.along))],
        [f"cross_{j + 1}" for j in range(len(plan.across))],
    )
    panels = {**dict.fromkeys(firsts, "long_rib"), **dict.fromkeys(seconds, "cross_rib")}
    if plan.slot_off:
        parts["odd_rib"] = parts["cross_rib"]
        panels[seconds[-1]] = "odd_rib"
    joins = [
        {
            "edges": [f"{first}.top", f"{second}.bottom"],
            "joint": "cross_lap",
            "at": [mm(x), mm(_slot(plan, j, i))],
            "play": mm(plan.play),
            "loosest": mm(plan.play + 2 * plan.base.spread + 0.1),
        }
        for j, (second, x) in enumerate(zip(seconds, plan.across, strict=True))
        for i, first in enumerate(firsts)
    ]
    piece = _piece(plan, firsts, seconds)
    low, high = box_of(united([solid for _, solid in piece.boards]))
    needs = (need("crate.height", plan.base, float(high[2] - low[2])),)
    facts = tuple((f"crate.{n}", float(v)) for n, v in zip(("width", "depth", "height"), high - low, strict=True))
    assembly = {"crate": {"panels": panels, "stands_on": "rib_1.bottom", "joins": joins}}
    spec = frame(plan.base, parts, assembly, needs, max(plan.length, plan.depth))
    return Design("crate", 0, plan, spec, (), (piece,), needs, facts, "cross_lap", plan.base)


def _slot(plan: Crate, j: int, i: int) -> float:
    last = (j, i) == (len(plan.across) - 1, len(plan.along) - 1)
    return plan.along[i] + (plan.slot_off if last else 0.0)


def _piece(plan: Crate, firsts: list[str], seconds: list[str]) -> Piece:
    t, half = plan.base.t, plan.height / 2
    width = t + plan.play

    def rib(length: float, slots: list[float], low: float) -> Manifold:
        """Return a rib (along, up, into the board) with slots from ``low`` over half its height."""
        section = CrossSection.square((length, plan.height))
        for at in slots:
            section = section - CrossSection.square((width, half)).translate((at - width / 2, low))
        return Manifold.extrude(section, t)

    boards, touches = [], []
    for first, y in zip(firsts, plan.along, strict=True):
        solid = rib(plan.length, list(plan.across), half)
        boards.append((first, solid.transform([[1, 0, 0, 0], [0, 0, 1, y - t / 2], [0, 1, 0, 0]])))
    for j, (second, x) in enumerate(zip(seconds, plan.across, strict=True)):
        solid = rib(plan.depth, [_slot(plan, j, i) for i in range(len(firsts))], 0.0)
        boards.append((second, solid.transform([[0, 0, 1, x - t / 2], [1, 0, 0, 0], [0, 1, 0, 0]])))
        touches += [Touch(first, second, (0.0, 0.0, -1.0), t * t) for first in firsts]
    return Piece("crate", tuple(boards), tuple(touches), (fit("rib in a slot", plan.base, plan.play),))


def faults(plan: Crate, dice: Dice) -> dict[str, Crate]:
    """Return the crate with one slot in the wrong place, slots too narrow, or a need that it does not meet."""
    return {
        "one slot in the wrong place": replace(plan, slot_off=round(plan.play + dice.size(0.5, 6.0), 3)),
        "slot too narrow": replace(plan, play=round(max(plan.base.spread - dice.size(0.04, 0.1, 0.01), 0.0), 3)),
        "a need not met": replace(plan, base=replace(plan.base, margin=-dice.size(0.1, 2.0))),
    }


def smaller(plan: Crate) -> Iterator[Crate]:
    """Return crates with fewer ribs and rounder sizes."""
    if len(plan.across) > 1 and not plan.slot_off:
        yield replace(plan, across=plan.across[:-1])
    if len(plan.along) > 1 and not plan.slot_off:
        yield replace(plan, along=plan.along[:-1])
    for step in (10.0, 1.0):
        across, along = (tuple(round(v / step) * step for v in places) for places in (plan.across, plan.along))
        if (across, along) != (plan.across, plan.along):
            yield replace(plan, across=across, along=along)
    for name in ("length", "depth", "height"):
        for step in (20.0, 10.0, 1.0):
            value = max(step, round(getattr(plan, name) / step) * step)
            if value != getattr(plan, name):
                yield replace(plan, **{name: value})
                break
