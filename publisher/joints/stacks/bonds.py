"""Which pitch or offset would break joint: joints of neighbouring courses apart by a quarter or a half of the unit.

Between neighbours: s = frac((way along the wall + offset) / pitch), stagger = min(s, 1 − s).
"""

from math import ceil, floor

from publisher.basics import record
from publisher.joints.stacks.courses import Stagger

QUARTER_BOND, HALF_BOND = 0.25, 0.5

BOND_NEAR = 1e-6
"""Of a unit: fractions of sums of floats."""

MOST_LONGER = 4.0
"""A unit longer or shorter than the present one by more than this factor is another wall."""


@record
class Bond:
    """A way to break joint: the number of joints that close the ring (None where the wall is not turned), the unit (mm),
    and the stagger that it gives."""

    joints: int | None
    unit: float
    share: float


def stagger_of(way: float, unit: float) -> float:
    """Return the least distance between joints of neighbouring courses, as a share of the unit."""
    s = (way / unit) % 1.0
    return min(s, 1.0 - s)


def nearest_bond(stagger: Stagger, least: float) -> Bond | None:
    """Return the pitch nearest to the present one that staggers by at least ``least`` of a unit (0.25, 0.5), or None.

    Where layers are turned about an axis a whole number of units closes the ring: the wall is 360/turn ways long.
    """
    if stagger.moved is None or stagger.moved < 1e-6:
        return None
    if abs(stagger.turn % 360.0) > BOND_NEAR:
        return _of_ring(stagger, least)
    return _of_wall(stagger, least)


def _of_ring(stagger: Stagger, least: float) -> Bond | None:
    way, turn = stagger.moved or 0.0, _small(stagger.turn)
    wall = way * 360.0 / turn
    now = max(1, round(wall / stagger.unit))
    for apart in range(1, ceil(now * (MOST_LONGER - 1))):
        for joints in (now - apart, now + apart):
            if joints < max(2.0, now / MOST_LONGER):
                continue
            share = stagger_of(joints * turn / 360.0, 1.0)
            if share >= least - BOND_NEAR:
                return Bond(joints, wall / joints, share)
    return None


def _of_wall(stagger: Stagger, least: float) -> Bond | None:
    """The way is so many units and a share of ``least`` to 1 − ``least``: the unit in that range nearest to the present one."""
    way, unit = stagger.moved or 0.0, stagger.unit
    found = []
    for whole in range(floor(way / unit / MOST_LONGER), ceil(way / unit * MOST_LONGER) + 1):
        longest, shortest = way / (whole + least), way / (whole + 1 - least)
        found.append(min(max(unit, shortest), longest))
    fits = [u for u in found if unit / MOST_LONGER <= u <= unit * MOST_LONGER]
    best = min(fits, key=lambda u: abs(u - unit), default=None)
    return None if best is None else Bond(None, best, stagger_of(way, best))


def nearest_offset(stagger: Stagger, least: float) -> tuple[float, float] | None:
    """Return (how far in mm the joints of every other course must be moved, the stagger that it gives), or None.

    Moved by x of a unit, a course lies s + x from the one below and s − x from the one above; with d = min(s, 1 − s) both
    are at least ``least`` from x = least + d to 1 − least − d.
    """
    d = stagger.share
    x = least + d
    if x > 1.0 - least - d + BOND_NEAR:
        return None
    return x * stagger.unit, min(stagger_of(d + x, 1.0), stagger_of(d - x, 1.0))


def half_offset(stagger: Stagger) -> tuple[float, float]:
    """Return half a unit (mm) and the stagger that moving every other course by it gives: the most that an offset can."""
    return stagger.unit / 2.0, HALF_BOND - stagger.share


def _small(turn: float) -> float:
    """Return a turn's size without full turns, 0 to 180."""
    t = abs(turn) % 360.0
    return min(t, 360.0 - t)
