"""Where a stack is narrow under what stands on it."""

import numpy as np
import shapely

from publisher.basics import Point, record
from publisher.design import Board, Figure
from publisher.geometry import Part
from publisher.joints.footing import GRAVITY, areal_mass
from publisher.joints.necks import Neck, neck_of
from publisher.joints.stacks.facts import StackReport


@record
class StackNeck:
    """The glue between two layers, the upper one by its index, as the neck of all that stands on it; ``tread``: the layer (index) at
    whose edge a figure bends it most."""

    layer: int
    tread: int
    neck: Neck


def necks_of(
    report: StackReport, parts: dict[str, Part], boards: dict[str, Board], figure: Figure
) -> tuple[StackNeck, ...]:
    """Return how all that glues a layer to the one below bends under a figure at the worst edge of a tread over it, from the top.

    A section that lies loose tips where a glued one bends: what is under it is no neck.
    """
    stack, plan = report.stack, report.plan
    per_area = {p: areal_mass(boards[parts[p].board], parts[p].thickness) * GRAVITY for p in plan.areas}
    weights = np.array([plan.areas[layer.part] * per_area[layer.part] for layer in stack.layers])
    moments = weights[:, None] * shapely.get_coordinates(shapely.centroid(plan.placed))
    treads = {t.layer: shapely.get_coordinates(t.area).tolist() for t in report.standing}
    found: list[StackNeck] = []
    of: dict[Point, int] = {}  # the outermost places of all treads so far, as only one of those can be the worst
    for k in range(len(stack.layers) - 1, 0, -1):
        if k in treads:
            of = _outermost(of | dict.fromkeys(((x, y) for x, y in treads[k]), k))
        if k in stack.loose or not of:
            continue
        weight = float(weights[k:].sum())
        places, middle = np.array(list(of)), moments[k:].sum(axis=0) / weight
        neck = neck_of(plan.touch(k - 1), places, figure.mass * GRAVITY, weight, middle)
        if neck is not None:
            found.append(StackNeck(k, list(of.values())[neck.place], neck))
    return tuple(found)


def _outermost(places: dict[Point, int]) -> dict[Point, int]:
    hull = shapely.get_coordinates(shapely.convex_hull(shapely.multipoints(list(places)))).tolist()
    return {(x, y): places[x, y] for x, y in hull}
