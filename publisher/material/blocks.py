"""Equal rectangles on a larger one, at right angles, in blocks: each block is cut in two, or in five round a middle one, and each
of these again.

The recursive five-block heuristic (Morabito and Morales, *A simple and effective recursive procedure for the manufacturer's
pallet loading problem*, Journal of the Operational Research Society 49, 1998; cited from memory), with two changes. Straight
cuts alone are solved outright first, for all blocks at once. Then five blocks are tried only where the bound by area leaves room for
one more, and only those are looked at whose own bounds add up to it.

Lengths are whole numbers, so nothing is ever laid by a tolerance. Sides of blocks are *positions*: sums of long and short sides.
"""

from dataclasses import dataclass
from itertools import product

import numpy as np
import numpy.typing as npt

from publisher.material.box_bound import partitions, reach, telling_ratios

Ints = npt.NDArray[np.int64]
Counts = npt.NDArray[np.int32]
BlockSides = tuple[int, int]  # the numbers of its two sides among the positions
Five = tuple[int, int, int, int]  # first and second place across, first and second up
MOST_POSITIONS = 300  # with more, only whole rows are positions
MOST_LOOKED_AT = 20_000_000  # combinations of five blocks, for one sheet
MOST_AT_ONCE = (
    6_000_000  # and for one block: with more, rectangles are so small that straight cuts lose next to nothing
)
MOST_TRIED = 400  # promising combinations of one block whose own blocks are looked into
MOST_IN_FIVES = 300  # copies; of more, so small, straight cuts lose next to nothing
MOST_LEVELS = 3  # blocks in blocks in blocks


@dataclass(frozen=True, slots=True)
class LaidBox:
    """A rectangle's lower left corner, in the units asked in; ``upright`` when its long side stands up."""

    x: int
    y: int
    upright: bool


def lay_boxes(width: int, height: int, long: int, short: int) -> tuple[LaidBox, ...]:
    """Lay as many rectangles ``long`` × ``short`` on ``width`` × ``height`` as blocks give, quarter turns allowed.

    All in the same whole units, all above 0; ``long`` ≥ ``short``. The same sizes give the same layout everywhere.
    """
    if long > max(width, height) or short > min(width, height):
        return ()
    return _Table(width, height, long, short).layout()


def _positions(width: int, height: int, long: int, short: int) -> Ints:
    """Return all sums of sides that either side of the sheet takes, 0 first; of very many only long sides, short ones and what
    short ones fill beside long ones."""
    top = max(width, height)
    sums = {n * long + m * short for n in range(top // long + 1) for m in range((top - n * long) // short + 1)}
    if len(sums) > MOST_POSITIONS:
        filled = {(side, n * long) for side in (width, height) for n in range(side // long + 1)}
        rests = {(at, (side - at) // short * short) for side, at in filled}
        sums = {0, short} | {at for _, at in filled} | {rest for _, rest in rests} | {at + rest for at, rest in rests}
    return np.array(sorted(sums), dtype=np.int64)


class _Table:
    """The best number known for every block, and the bound on it; both are the same for a block that is turned by a quarter."""

    def __init__(self, width: int, height: int, long: int, short: int) -> None:
        self.long, self.short = long, short
        self.at = _positions(width, height, long, short)
        self.across, self.up = int(self._number(width)), int(self._number(height))
        size = len(self.at)
        self.most = self._bounds(width, height)
        self.count: Counts = np.zeros((size, size), dtype=np.int32)
        # what is left beside a place, as a position: rest[i][k] for a block of side i cut at k
        self.rest = [self._number(self.at[i] - self.at[: i + 1]) for i in range(size)]
        self.fives: dict[BlockSides, Five] = {}
        self.depth: dict[BlockSides, int] = {}
        self.looked_at = 0
        self._cut_straight()

    def _number(self, length: Ints | int) -> Ints:
        """Return the number of the greatest position that is no longer than a length."""
        return np.asarray(np.searchsorted(self.at, length, side="right") - 1)

    def _bounds(self, width: int, height: int) -> Counts:
        """Return the bound by area for every block, over the ratios that tell for the sheet (see ``box_bound``)."""
        kinds = tuple(partitions(side, self.long, self.short) for side in (width, height))
        sides = [(r.numerator, r.denominator) for r in telling_ratios(kinds)] + [(self.long, self.short)]
        each = [partitions(int(p), self.long, self.short) for p in self.at]
        bound = np.full((len(self.at), len(self.at)), np.inf)
        for p, q in sides:
            lengths = np.array([reach(kind, p / q, 1.0) for kind in each])
            bound = np.minimum(bound, np.outer(lengths, lengths) * (q / p))
        return np.asarray(np.floor(bound + 1e-9).astype(np.int32))

    def _cut_straight(self) -> None:
        """Fill in what straight cuts from side to side give, for all blocks: the best of all of them."""
        count, size = self.count, len(self.at)
        rows = np.outer(self.at // self.long, self.at // self.short)
        np.maximum(rows, rows.T, out=count, casting="unsafe")
        halves: list[tuple[Ints, Ints]] = []
        for i in range(size):
            place, rest = np.arange(i + 1), self.rest[i]
            # one place for each rest that differs, and each cut from one side only
            telling = (place > 0) & (2 * self.at[: i + 1] <= self.at[i]) & (rest[rest] == place)
            halves.append((place[telling], rest[telling]))
        for i in range(1, size):
            for j in range(1, i + 1):
                best = max(int(count[i, j]), int(count[i - 1, j]), int(count[i, j - 1]))
                (left, right), (low, high) = halves[i], halves[j]
                if len(left):
                    best = max(best, int((count[left, j] + count[right, j]).max()))
                if len(low):
                    best = max(best, int((count[i, low] + count[i, high]).max()))
                count[i, j] = count[j, i] = best

    def layout(self) -> tuple[LaidBox, ...]:
        """Return the fullest layout found."""
        block = (max(self.across, self.up), min(self.across, self.up))
        levels = MOST_LEVELS if self.most[block] <= MOST_IN_FIVES else 0
        for depth in range(1, levels + 1):
            self._better(block, depth)
        return tuple(self._laid((self.across, self.up)))

    def _better(self, block: BlockSides, depth: int) -> None:
        """Try to lay more in a block, long side first, by five blocks, down to ``depth`` levels of them."""
        if depth <= 0 or self.depth.get(block, 0) >= depth:
            return
        self.depth[block] = depth
        while self.count[block] < self.most[block] and self.looked_at < MOST_LOOKED_AT:
            known, promising = self._look(block, int(self.count[block]) + 1)
            five = known or next((f for f in promising if self._grows(block, f, depth)), None)
            if five is None:
                return
            self._keep(block, five)

    def _grows(self, block: BlockSides, five: Five, depth: int) -> bool:
        """Say whether five blocks give more than is known, after a closer look into each."""
        blocks, more = self._blocks(block, five), int(self.count[block]) + 1
        for part in sorted({(max(b), min(b)) for b in blocks}, key=lambda b: (-int(self.at[b[0]] * self.at[b[1]]), b)):
            if part != block and self.count[part] < self.most[part]:
                self._better(part, depth - 1)
        return sum(int(self.count[part]) for part in blocks) >= more

    def _keep(self, block: BlockSides, five: Five) -> None:
        """Write down what five blocks give, for the block and for all that hold it."""
        number = sum(int(self.count[part]) for part in self._blocks(block, five))
        self.fives[block] = five
        for i, j in (block, block[::-1]):
            larger = self.count[i:, j:]
            np.maximum(larger, number, out=larger)

    def _blocks(self, block: BlockSides, five: Five) -> tuple[BlockSides, ...]:
        """Return the five blocks: lower left, upper left, upper right, lower right, middle."""
        (i, j), (x1, x2, y1, y2) = block, five

        def between(start: int, stop: int) -> int:
            return int(self._number(self.at[stop] - self.at[start]))

        middle = (between(x1, x2), between(y1, y2))
        return (x1, y2), (x2, between(y2, j)), (between(x2, i), between(y1, j)), (between(x1, i), y1), middle

    def _look(self, block: BlockSides, wanted: int) -> tuple[Five | None, list[Five]]:
        """Return the five blocks that give most, if that is as much as ``wanted``; else those whose bounds allow it."""
        i, j = block
        xs, ys = (np.unique(np.append(self.rest[k], (0, k))) for k in block)
        if (len(xs) * len(ys)) ** 2 / 8 > MOST_AT_ONCE:
            return None, []
        across, up = self._number(self.at[i] - self.at[xs]), self._number(self.at[j] - self.at[ys])
        apart = self.at[ys][None, :] - self.at[ys][:, None]
        heights = self._number(np.maximum(apart, 0))
        best: tuple[int, Five] | None = None
        promising: list[tuple[int, int, Five]] = []
        for k, x1 in enumerate(xs.tolist()):
            second = np.nonzero((xs >= x1) & (self.at[x1] <= self.at[i] - self.at[xs]))[0]  # its half turn is the same
            widths = self._number(self.at[xs[second]] - self.at[x1])
            left = self.most[x1, ys][None, :] + self.most[np.ix_(xs[second], up)]
            right = self.most[np.ix_(across[second], up)] + self.most[across[k], ys][None, :]
            may = left.max(axis=1) + right.max(axis=1) + self.most[widths, j] >= wanted
            second, widths, left, right = second[may], widths[may], left[may], right[may]
            if not len(second):
                continue
            bound = left[:, None, :] + right[:, :, None] + self.most[widths[:, None, None], heights[None]]
            self.looked_at += bound.size
            a, b, c = np.nonzero((bound >= wanted) & (apart >= 0)[None])
            if not len(a):
                continue
            count = self.count
            given = count[x1, ys[c]] + count[xs[second[a]], up[c]] + count[across[second[a]], up[b]]
            given += count[across[k], ys[b]] + count[widths[a], heights[b, c]]
            order = np.lexsort((-bound[a, b, c], -given))[: MOST_TRIED // 2]
            fives = [(x1, int(xs[second[a[o]]]), int(ys[b[o]]), int(ys[c[o]])) for o in order.tolist()]
            if given[order[0]] >= max(wanted, best[0] + 1 if best else 0):
                best = (int(given[order[0]]), fives[0])
            promising += [
                (int(given[o]), int(bound[a[o], b[o], c[o]]), five) for o, five in zip(order, fives, strict=True)
            ]
        if best:
            return best[1], []
        promising.sort(key=lambda one: (-one[0], -one[1]))
        return None, [five for _, _, five in promising[:MOST_TRIED]]

    def _laid(self, block: BlockSides) -> list[LaidBox]:
        """Return the boxes of a block, its lower left corner at 0, 0: in plain rows where they give as many."""
        i, j = self._shrunk(block)
        number = int(self.count[i, j])
        for upright in (False, True):
            wide, high = (self.short, self.long) if upright else (self.long, self.short)
            columns, rows = int(self.at[i]) // wide, int(self.at[j]) // high
            if columns * rows >= number:
                return [LaidBox(x * wide, y * high, upright) for y, x in product(range(rows), range(columns))]
        parts = self._parts((i, j))
        if not parts:
            return [LaidBox(box.y, box.x, not box.upright) for box in self._laid((j, i))]
        return [LaidBox(box.x + x, box.y + y, box.upright) for part, x, y in parts for box in self._laid(part)]

    def _shrunk(self, block: BlockSides) -> BlockSides:
        """Return the smallest block in the corner of a block that is known to give as many."""
        i, j = block
        number = self.count[block]
        while i and self.count[i - 1, j] == number:
            i -= 1
        while j and self.count[i, j - 1] == number:
            j -= 1
        return i, j

    def _parts(self, block: BlockSides) -> tuple[tuple[BlockSides, int, int], ...]:
        """Return the blocks of which a block is made, each with its place; () when only the turned block is written down."""
        (i, j), number = block, self.count[block]
        for k in range(1, i):
            rest = int(self.rest[i][k])
            if self.count[k, j] + self.count[rest, j] == number:
                return (((k, j), 0, 0), ((rest, j), int(self.at[k]), 0))
        for k in range(1, j):
            rest = int(self.rest[j][k])
            if self.count[i, k] + self.count[i, rest] == number:
                return (((i, k), 0, 0), ((i, rest), 0, int(self.at[k])))
        if block not in self.fives:
            return ()
        x1, x2, y1, y2 = self.fives[block]
        corners = ((0, 0), (0, y2), (x2, y1), (x1, 0), (x1, y1))
        parts = zip(self._blocks(block, self.fives[block]), corners, strict=True)
        return tuple((part, int(self.at[x]), int(self.at[y])) for part, (x, y) in parts)
