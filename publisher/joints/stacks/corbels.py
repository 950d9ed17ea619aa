"""Layers that nothing carries all the way down to the table: each reaches out over the one below it, as the courses of a corbel do.

Such a layer hangs on all that is glued between it and a lower layer. Along the rim of every lower layer whatever crosses it bends
as one: s = 6·F·a / Σ w·T², with F the load at the outer edge of the tread, a the way from there to the lower layer, and along
the rim w mm of boards that are T mm thick together, glued to each other (elementary bending: the section modulus of strips side
by side is the sum of w·T²/6). The load of a figure spreads over no more than its base and a.
"""

from collections.abc import Iterator

import shapely

from publisher.basics import record
from publisher.joints.outlines import HAIRLINE, pieces, without_hairs
from publisher.joints.stacks.circles import farthest
from publisher.joints.stacks.layers import LaidStack
from publisher.joints.stacks.plan_geometry import PlanGeometry

BESIDE_BRACE = 0.05
"""mm outside what carries a layer at which its root is measured: two flattenings of one arc differ by less."""

FREE = 1.0
"""mm: a layer that sticks out less than this stands."""

LEAST_BRACED = 0.1
"""Of the root's width: a narrower strip of fewer boards is held by what is beside it."""

DEEP = 12
"""Boards above and below that are looked at: a root as thick as that bears anything."""


@record
class Hanging:
    """Where a layer hangs: out over the layer ``over`` (index) by ``arm`` mm, on boards ``thick`` mm together that are as strong as a
    root ``width`` mm wide: the thinnest of them, but for a narrow strip."""

    over: int
    arm: float
    width: float
    thick: float

    def stress(self, load: float) -> float:
        """Return the stress (MPa) under a load (N) at the outer edge."""
        return 6.0 * load * self.arm / (self.width * self.thick**2)


def hangings_of(
    stack: LaidStack, plan: PlanGeometry, k: int, base: float, nearest: int = 1, lowest: int = 0
) -> Iterator[Hanging]:
    """Yield where layer ``k`` hangs beyond the layers under it, as far down as all is glued; ``base``: that of a figure (mm);
    ``nearest``: how many layers lower the first of them is; ``lowest``: the last of them (index)."""
    tread, body = plan.bare(k), shapely.Polygon()
    top = k
    while top + 1 < min(len(stack.layers), k + DEEP) and top + 1 not in stack.loose:
        top += 1
    for over in range(k - 1, lowest - 1, -1):
        if over + 2 <= k and over + 2 in stack.loose:
            return  # what lies loose presses on what is below it, and bends nothing there
        carrier, body = plan.placed[over], shapely.union(body, plan.placed[over + 1])
        beyond = pieces(shapely.difference(tread, shapely.convex_hull(carrier)))
        if over > k - nearest or beyond.is_empty:
            continue
        out = without_hairs(shapely.difference(body, carrier))
        for piece in shapely.get_parts(out):
            stands = pieces(shapely.intersection(beyond, piece))
            arm = 0.0 if stands.is_empty else farthest(stands, carrier)
            if arm >= FREE:
                rim = shapely.intersection(shapely.boundary(shapely.buffer(carrier, BESIDE_BRACE)), piece)
                yield _hanging(stack, plan, (over, top), arm, rim, base)


def _hanging(
    stack: LaidStack, plan: PlanGeometry, levels: tuple[int, int], arm: float, rim: shapely.Geometry, base: float
) -> Hanging:
    """Return what crosses a rim over the layer of the first of two levels, up to the second, as one root."""
    over, top = levels
    strips = [(rim, 0.0, 0.0)]  # of the rim: boards glued to each other so far, and squares of those that are closed
    for j in range(over + 1, top + 1):
        layer, thick = plan.placed[j], stack.layers[j].thickness
        cut = []
        for line, pile, squares in strips:
            glued = pile if j not in stack.loose else 0.0
            cut.append((shapely.intersection(line, layer), glued + thick, squares + pile**2 - glued**2))
            cut.append((shapely.difference(line, layer), 0.0, squares + pile**2))
        strips = [one for one in cut if shapely.length(one[0]) > 0.0]
    held = [(float(shapely.length(line)), squares + pile**2) for line, pile, squares in strips if squares + pile > 0.0]
    across = sum(length for length, _ in held)
    if across <= 0.0:
        return Hanging(over, arm, HAIRLINE, stack.layers[over + 1].thickness)
    spread = min(1.0, (base + arm) / across)
    least = min(square for length, square in held if length >= LEAST_BRACED * across)
    return Hanging(over, arm, spread * sum(length * square for length, square in held) / least, least**0.5)
