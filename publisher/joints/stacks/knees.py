"""Knee braces in their places: upright boards that fill the corner between the underside of a step and its core. Mm, degrees.

Seen from above a brace is a rectangle as long as its run and as wide as its board is thick. Its short side lies against the core,
which is what all layers beside the brace have in common; the rest lies under the step, where none of these layers reaches.
"""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from math import atan2, cos, degrees, radians, sin

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import Point, record
from publisher.geometry import mitred
from publisher.joints.outlines import Array, united
from publisher.joints.stacks.layers import LaidStack
from publisher.joints.stacks.plan_geometry import PlanGeometry

KNEE_STEP = 1.0
"""mm between the places along the core at which a brace is tried."""

KNEE_CLEAR = 0.03
"""mm that a brace may seem to enter what is beside it: two flattenings of one arc differ by less."""

KNEE_GAP = 2.0
"""mm between the corners of a brace and a round core, at most: a fillet of glue bridges as much (common practice, no source)."""

RUN_STEP = 0.5
"""mm: by this a run is made shorter until the brace finds a place."""


@record
class Knee:
    """A brace under the layer with this index: where the middle of its upright side stands in plan, the way it reaches out
    (degrees), the height of its top. ``fits``: 0 where it stands there; else there is no room for it, and this is the greatest
    run (mm) that finds a place, -1 when none does."""

    layer: int
    at: Point
    heading: float
    top: float
    fits: float = 0.0

    @property
    def blocked(self) -> bool:
        """True when it finds no place."""
        return self.fits != 0.0

    def at_reach(self, out: float) -> Point:
        """Return the point in plan ``out`` mm from the core, along the brace."""
        way = radians(self.heading)
        return self.at[0] + out * cos(way), self.at[1] + out * sin(way)

    def in_plan(self, run: float, thick: float) -> shapely.Polygon:
        """Return what the brace covers in plan."""
        way = np.array([cos(radians(self.heading)), sin(radians(self.heading))])
        side, at = thick / 2.0 * np.array([-way[1], way[0]]), np.asarray(self.at)
        return shapely.Polygon([at + side, at - side, at - side + run * way, at + side + run * way])


def lowest_ply(stack: LaidStack, layer: int) -> int:
    """Return the layer under which the brace of a step stands: of a doubled step, the one that is doubled."""
    over = stack.doubled
    while layer in over:
        layer -= 1
    return layer


def knees_of(stack: LaidStack, plan: PlanGeometry, braced: Sequence[int], thick: float) -> tuple[Knee, ...]:
    """Return a brace for each braced layer, ``thick`` mm thick, from the lowest up: each keeps clear of those below it.

    Where all steps are to have one, those are left out that are too low for it: it would stand in what lies under the core.
    """
    if stack.brace is None:
        return ()
    run, made = stack.brace.run, list[Knee]()
    for layer in braced:
        ply = lowest_ply(stack, layer)
        low = stack.layers[ply].bottom - stack.brace.drop + KNEE_CLEAR
        beside = [k for k in range(ply) if stack.layers[k].bottom + stack.layers[k].thickness > low]
        others = [knee.in_plan(run, thick) for knee in made if not knee.blocked and knee.top > low]
        made.append(
            _placed(Knee(layer, (0.0, 0.0), 0.0, stack.layers[ply].bottom, -1.0), plan, ply, beside, others, run, thick)
        )
    every = not stack.brace.under and not stack.brace.weak
    high = next((number for number, knee in enumerate(made) if not knee.blocked), 0) if every else 0
    return tuple(made[high:])


def _placed(
    knee: Knee,
    plan: PlanGeometry,
    ply: int,
    beside: Sequence[int],
    others: Sequence[shapely.Geometry],
    run: float,
    thick: float,
) -> Knee:
    """Return a brace, blocked until now, in the middle of the longest stretch of the core where it stands."""
    core = shapely.intersection_all([plan.placed[k] for k in beside]) if beside else shapely.Polygon()
    taken = united([*(plan.placed[k] for k in beside), *others])
    free = mitred(shapely.difference(plan.placed[ply], taken), -KNEE_CLEAR)
    free = mitred(free, 2.0 * KNEE_CLEAR)  # without slivers between two flattenings
    places = _places(core, free)
    shapely.prepare([core, free])
    for tried in (run, *np.arange(run - RUN_STEP, 0.0, -RUN_STEP)) if len(places) else ():
        good = _stands(places, float(tried), thick, core, free)
        if good.any():
            x, y, way = (float(v) for v in places[_middle_of_longest(good)])
            return replace(knee, at=(x, y), heading=way, fits=0.0 if tried == run else float(tried))
    return knee


def _places(core: shapely.Geometry, free: shapely.Geometry) -> Array:
    """Return where along the core a brace may stand, and the way out there in degrees (n, 3), in the order along its outline."""
    found: list[tuple[float, float, float]] = []
    for piece in shapely.get_parts(core):
        if not isinstance(piece, shapely.Polygon):
            continue
        for number, ring in enumerate((piece.exterior, *piece.interiors)):
            points = shapely.get_coordinates(shapely.orient_polygons(shapely.Polygon(ring)))
            points = points[::-1] if number else points  # board is outside a hole
            for (ax, ay), (bx, by) in pairwise(points):
                size = float(np.hypot(bx - ax, by - ay))
                if size < KNEE_CLEAR:
                    continue
                count = max(1, round(size / KNEE_STEP))
                way = degrees(atan2(ax - bx, by - ay))  # to the right of an outline that runs anticlockwise
                shares = (np.arange(count) + 0.5) / count
                found += [(ax + (bx - ax) * share, ay + (by - ay) * share, way) for share in shares]
    places = np.array(found).reshape(-1, 3)
    near = shapely.distance(free, shapely.points(places[:, :2])) <= KNEE_CLEAR
    return np.asarray(places[near])


def _stands(
    places: Array, run: float, thick: float, core: shapely.Geometry, free: shapely.Geometry
) -> npt.NDArray[np.bool_]:
    """Tell at which places a brace lies wholly under the step and against the core with both sides of its board."""
    out = np.radians(places[:, 2])
    way, side = np.column_stack([np.cos(out), np.sin(out)]), np.column_stack([-np.sin(out), np.cos(out)])
    left, right = places[:, :2] + thick / 2.0 * side, places[:, :2] - thick / 2.0 * side
    boards = shapely.polygons(np.stack([left, right, right + run * way, left + run * way], axis=1))
    held = [shapely.distance(core, shapely.points(corner)) <= KNEE_GAP for corner in (left, right)]
    return np.asarray(shapely.contains(free, boards) & held[0] & held[1])


def _middle_of_longest(good: npt.NDArray[np.bool_]) -> int:
    """Return the middle of the longest run of places, which goes on from the last to the first."""
    count = len(good)
    if good.all():
        return count // 2
    start = int(np.flatnonzero(~good)[0])
    best, run, first = (0, start), 0, start
    for k in range(start, start + count + 1):
        if good[k % count]:
            first, run = (k, 1) if run == 0 else (first, run + 1)
            best = max(best, (run, first), key=lambda one: one[0])
        else:
            run = 0
    return (best[1] + best[0] // 2) % count
