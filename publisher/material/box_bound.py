"""How many equal rectangles a larger one can take at right angles, at the most: two published bounds, on every equivalent problem.

Whatever stands in a row across the sheet is a *partition*: n long sides and m short sides that fit its length. Two problems in
which the same partitions fit have the same answer (Dowsland, *The three-dimensional pallet chart*, Journal of the Operational
Research Society 35, 1984), and one in which more of them fit has at least that answer. So sides p : q may take the place of the
true ones when the sheet is made just long enough for every true partition: the area of that sheet is a bound, and so is that of
Barnes (*Packing the maximum number of m × n tiles in a large p × q rectangle*, Discrete Mathematics 26, 1979), which
counts the squares that strips of one width must leave. The least of all is taken. (Both papers cited from memory; the bounds
are held against full searches in the tests.)

Lengths are whole numbers: a bound that holds leaves nothing to rounding.
"""

from fractions import Fraction
from functools import lru_cache
from itertools import pairwise
from math import sqrt

Partition = tuple[int, int]  # so many long sides and so many short sides, one after another
SMALL_SIDES = 40  # sides p : q of at most so many units are tried for the bound of Barnes besides the telling ones


def partitions(room: int, long: int, short: int) -> tuple[Partition, ...]:
    """Return the partitions of a length to which no further side can be added, fewest long sides first."""
    found: list[Partition] = []
    for m in range(room // short, -1, -1):
        n = (room - m * short) // long
        if not found or n > found[-1][0]:
            found.append((n, m))
    return tuple(found)


def telling_ratios(kinds: tuple[tuple[Partition, ...], ...]) -> tuple[Fraction, ...]:
    """Return the ratios long : short at which another partition becomes the longest of its length, the least first: between two of
    them a bound by area has no corner."""
    found: set[Fraction] = set()
    for kind in kinds:
        hull: list[Partition] = []
        for point in kind:
            # keep to the upper right side of all partitions: the others are never the longest
            while len(hull) > 1 and _turns_left(hull[-2], hull[-1], point):
                hull.pop()
            hull.append(point)
        found |= {Fraction(a[1] - b[1], b[0] - a[0]) for a, b in pairwise(hull)}
    return tuple(sorted(found))


def _turns_left(a: Partition, b: Partition, c: Partition) -> bool:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) >= 0


def reach(kind: tuple[Partition, ...], long: float, short: float) -> float:
    """Return the length that all the partitions need when the sides are ``long`` and ``short``."""
    return max(n * long + m * short for n, m in kind)


@lru_cache(maxsize=1024)
def most_boxes(width: int, height: int, long: int, short: int) -> int:
    """Return a number of rectangles ``long`` × ``short`` that ``width`` × ``height`` cannot take more of, quarter turns allowed.

    All in the same whole units, all above 0.
    """
    across, up = partitions(width, long, short), partitions(height, long, short)
    ratios = telling_ratios((across, up))
    least = min(
        width * height // (long * short),
        *(_by_area(across, up, ratio) for ratio in ratios),
        _between(across, up, ratios),
    )
    sides = {(ratio.numerator, ratio.denominator) for ratio in ratios} | {(long, short)}
    sides |= {(p, q) for p in range(1, SMALL_SIDES) for q in range(1, SMALL_SIDES)}
    for p, q in sides:
        wide, high = int(reach(across, p, q)), int(reach(up, p, q))
        # Barnes betters the area by a few at most: a problem whose area is far above says nothing
        if wide * high // (p * q) <= least + 3:
            least = min(least, _barnes(wide, high, p, q))
    return least


def _by_area(across: tuple[Partition, ...], up: tuple[Partition, ...], ratio: Fraction) -> int:
    """Return the bound by area when the long side is ``ratio`` times the short one."""
    p, q = ratio.numerator, ratio.denominator
    return int(reach(across, p, q)) * int(reach(up, p, q)) // (p * q)


def _between(across: tuple[Partition, ...], up: tuple[Partition, ...], ratios: tuple[Fraction, ...]) -> int:
    """Return the least bound by area where it is least between two ratios at which it has corners.

    There both lengths follow one partition each, n·r + m and k·r + j, and (n r + m)(k r + j) / r is least at r = √(m j / (n k)).
    """
    least = float("inf")
    ends = (0.0, *map(float, ratios), 2.0 * float(ratios[-1]) + 2.0 if ratios else 1.0)
    for start, stop in pairwise(ends):
        middle = (start + stop) / 2
        (n, m), (k, j) = (max(kind, key=lambda p: p[0] * middle + p[1]) for kind in (across, up))
        if n * k and m * j and start < (r := sqrt(m * j / (n * k))) < stop:
            least = min(least, (n * r + m) * (k * r + j) / r)
    # a hair above a whole number may be that number: a bound must never be too small
    return int(min(least, 1e18) + 1e-9)


def _barnes(width: int, height: int, long: int, short: int) -> int:
    """Return the bound of Barnes: strips one unit wide and k long leave at least so many unit squares, for both sides k; and
    what is left is, with the rectangles, the whole area."""

    def left(side: int) -> int:
        r, s = width % side, height % side
        return min(r * s, (side - r) * (side - s))

    least, each = max(left(long), left(short)), long * short
    return (width * height - least) // each
