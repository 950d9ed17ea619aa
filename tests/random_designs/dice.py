"""Random values, often close to a limit on its good side. The same key gives the same values on every machine."""

from collections.abc import Sequence
from math import ceil
from random import Random
from typing import TypeVar

from tests.random_designs.design import BOARDS, PAPERS, Base

Item = TypeVar("Item")

NEAR = 0.5  # mm or degrees: a size this close to its limit counts as near
FIT = 0.05  # mm: the same for the play in a slot, which is never more than some tenths


class Dice:
    """Draws sizes rounded to a tenth, as designers write them, and keeps how far each lies from its limit."""

    def __init__(self, key: str, paper: str = "") -> None:
        self.random = Random(key)
        self.near: dict[str, float] = {}
        self._paper = paper
        self._tight = self.random.random() < 0.6

    def size(self, low: float, high: float, step: float = 0.1) -> float:
        """Return a size between both, a multiple of ``step``."""
        return round(round(self.random.uniform(low, max(low, high)) / step) * step, 3)

    def count(self, low: int, high: int) -> int:
        """Return a whole number between both, both included."""
        return self.random.randint(low, high)

    def one_of(self, items: Sequence[Item]) -> Item:
        """Return one of them."""
        return items[self.random.randrange(len(items))]

    def chance(self, share: float) -> bool:
        """Return true in this share of cases."""
        return self.random.random() < share

    def above(self, limit: str, least: float, most: float, near: float = NEAR) -> float:
        """Return a size of at least ``least``: in tight designs often within ``near`` of it. Its distance is kept."""
        close = self._tight and self.chance(0.6)
        value = least + round(self.random.uniform(0.0, near), 2) if close else self.size(least, max(least, most))
        return self.kept(limit, round(max(value, least), 3), least)

    def kept(self, limit: str, value: float, least: float) -> float:
        """Keep how far a value lies from its limit, and return it."""
        self.near[limit] = min(abs(value - least), self.near.get(limit, float("inf")))
        return value

    def page_wide(self, low: float, high: float, allowance: float, paper: str) -> float:
        """Return a size that, in some tight designs, lies just inside or outside the printable width of the paper."""
        width, height = PAPERS[paper]
        edges = [v for v in (width - 12.7 + allowance, height - 25.4 + allowance) if low + NEAR < v < high - NEAR]
        if not (edges and self._tight and self.chance(0.3)):
            return self.size(low, high)
        edge = self.one_of(edges)
        return self.kept("page width", round(edge + self.random.uniform(-NEAR, NEAR), 2), edge)

    def base(self, title: str, boards: Sequence[str] = tuple(BOARDS)) -> Base:
        """Return board, use, paper and the margin of a need."""
        board = self.one_of(boards)
        spread = self.one_of((0.1, 0.2, 0.2, 0.3)) if BOARDS[board] > 3.0 else 0.1
        use = self.one_of(("trace", "trace", "paste"))
        paper = self._paper or self.one_of(
            ("a4", "a4", "a4", "letter", "letter", "letter", "common", "a3", "tabloid", "a2", "roll")
        )
        margin = self.above("need to spare", 0.0, 10.0)
        return Base(title, board, spread, use, paper, margin)

    def play(self, base: Base) -> float:
        """Return the play of a slot: at least the spread of the board, plus what half a per cent of print scale takes."""
        least = ceil(100.0 * (base.spread + 0.006 * (base.t + base.spread)) - 1e-6) / 100.0
        return self.above("slot play", least, least + 0.25, FIT)


def is_near(limit: str, distance: float) -> bool:
    """Return whether a size counts as near to this limit."""
    return distance <= (FIT if limit == "slot play" else NEAR)
