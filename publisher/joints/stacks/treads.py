"""What can stand on a stack: treads, headroom, where cover begins."""

from collections.abc import Sequence
from math import inf

import shapely

from publisher.basics import record
from publisher.geometry import mitred
from publisher.joints.footing import LEAST_TREAD
from publisher.joints.outlines import pieces, united
from publisher.joints.stacks.circles import farthest, largest_circle
from publisher.joints.stacks.layers import LaidStack
from publisher.joints.stacks.plan_geometry import LayerKey, PlanGeometry

TREAD_MARGIN = 2.0
"""A base does not tip while its centre lies this far (mm) inside the tread. An assumption."""


@record
class Tread:
    """One tread: its layer (index), its area in the assembly's frame, the free height over it (mm, inf = open),
    the widest base that stands fully on it and the widest that does not tip (mm; exact for the tread where it is the
    least, a lower bound for others), the lowest layer over it (index or None)."""

    layer: int
    area: shapely.Geometry
    headroom: float
    base_stands: float
    base_holds: float
    covered_by: int | None


def treads_of(
    stack: LaidStack, plan: PlanGeometry, figure_height: float, layers: Sequence[int] | None = None
) -> tuple[Tread, ...]:
    """Return the treads of a stack from the table up, or what is bare of these ``layers``, for figures ``figure_height`` mm high (inf:
    every higher layer counts).

    A layer that the next one covers completely is no tread, unless none is left.
    """
    found: list[Tread] = []
    sizes: dict[LayerKey, tuple[float, float]] = {}
    least = inf
    last = len(stack.layers) - 1
    asked = stack.treads if layers is None else layers
    standing = [k for k in asked if k == last or plan.contact(k).bare.area >= LEAST_TREAD]
    for k in standing:
        layer = stack.layers[k]
        top = layer.bottom + layer.thickness
        over = plan.covering(k)
        headroom = stack.layers[over[0]].bottom - top if over else inf
        low = [j for j in over if stack.layers[j].bottom - top < figure_height]
        area = plan.bare(k)
        if low:
            lids = united(shapely.intersection(plan.placed[low], area))
            area = pieces(shapely.difference(area, lids))
        around = [k + 1, *low] if k < last else low
        key: LayerKey = (plan.key(k, k), tuple(plan.key(k, j) for j in around))
        if key not in sizes:
            sizes[key] = (2 * largest_circle(area), _base_holds(area, plan, around, least))
            least = min(least, sizes[key][1])
        found.append(Tread(k, area, headroom, *sizes[key], over[0] if over else None))
    return tuple(found)


def _base_holds(area: shapely.Geometry, plan: PlanGeometry, around: list[int], least: float) -> float:
    """Return the widest base (mm) whose centre is MARGIN inside the tread and which touches no higher layer beside it.

    The rest of the base may hang over a lower layer; with nothing beside the tread any base holds (inf).
    ``least`` is what another tread holds: a tread that holds more need not be searched to the end.
    """
    centres = mitred(area, -TREAD_MARGIN)
    if centres.is_empty:
        return 0.0
    if not around:
        return inf
    return 2 * farthest(centres, shapely.union_all(plan.placed[around]), enough=least / 2)
