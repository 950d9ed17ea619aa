"""Windows and doors in upright walls: drawn with enough board round them, written, and cut from solids."""

from collections.abc import Sequence
from dataclasses import dataclass

from manifold3d import CrossSection

from tests.random_designs.design import Spec, mm
from tests.random_designs.dice import Dice


@dataclass(frozen=True, slots=True)
class Opening:
    """A square-headed window or door: its middle from the wall's left end, its size, its sill (0 for a door)."""

    centre: float
    width: float
    height: float
    sill: float

    def written(self) -> Spec:
        """Return it as the spec has it."""
        sizes = {"width": mm(self.width), "height": mm(self.height), "centre": mm(self.centre)}
        return {"kind": "window", **sizes, "sill": mm(self.sill)} if self.sill else {"kind": "door", **sizes}


def drawn(dice: Dice, width: float, height: float, rim: float, ends: float = 0.0) -> Opening | None:
    """Return an opening in a wall, with ``rim`` mm of board or more round it and ``ends`` mm more at both ends."""
    clear, high = width - 2 * (rim + ends), height - 2 * rim
    if clear < 12.0 or high < 12.0 or not dice.chance(0.5):
        return None
    if dice.chance(0.4):  # a door: open below, so its head is what may come near the top
        above = dice.above("board over an opening", rim, rim + high - 12.0)
        return Opening(round(width / 2, 3), dice.size(10.0, min(clear, 40.0)), round(height - above, 3), 0.0)
    beside = dice.above("board beside an opening", rim, rim + (clear - 10.0) / 2)
    wide = round(width - 2 * (beside + ends), 3)
    return Opening(round(width / 2, 3), wide, dice.size(10.0, min(high, 60.0)), rim)


def cut(opening: Opening | None) -> CrossSection:
    """Return the area of an opening (along, up)."""
    if opening is None:
        return CrossSection()
    return CrossSection.square((opening.width, opening.height)).translate(
        (opening.centre - opening.width / 2, opening.sill)
    )


def rim_of(thickness: float) -> float:
    """Return the least board round an opening in mm: 8 in boards up to 5 mm, more in thicker ones (common practice)."""
    return 8.0 * max(1.0, thickness / 5.0)


def surface(dice: Dice, areas: Sequence[float]) -> Spec | None:
    """Return a pattern that stays light on parts of these areas (mm²), or none."""
    if not dice.chance(0.25) or max(areas) > 60_000.0:
        return None
    grown = max(1.0, (max(areas) / 8_000.0) ** 0.5)
    if dice.chance(0.5):
        return {
            "pattern": "brick",
            "with": {"length": mm(round(9 * grown, 1)), "height": mm(round(3 * grown, 1)), "bond": "running"},
        }
    return {
        "pattern": "ashlar",
        "with": {"length": mm(round(16 * grown, 1)), "height": mm(round(8 * grown, 1)), "bond": "running"},
    }
