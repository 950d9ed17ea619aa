"""Whether a stack stands: balance empty and with figures."""

from math import inf, pi

import numpy as np
import shapely

from publisher.basics import Point, record
from publisher.design import Board, Figure
from publisher.geometry import Part, polygon
from publisher.joints.footing import areal_mass, ballast, hull_sides, mass_of, push_to_slide, push_to_tip
from publisher.joints.outlines import Array
from publisher.joints.stacks.knees import Knee
from publisher.joints.stacks.layers import LaidStack
from publisher.joints.stacks.plan_geometry import PlanGeometry
from publisher.joints.stacks.treads import Tread

FIGURES = 2
"""How many stand on the two worst treads. A stated assumption."""

DIRECTIONS = 720
"""Directions in which a round plinth is tried; between two of them the moment differs by less than 1e-5 of itself."""


@record
class Balance:
    """Margins in mm by which the whole does not tip (negative: it tips), empty and with figures; the least radius (mm) of a
    round plinth under the treads' rows, centred on their axis, with which it does not tip with figures; grams of the whole."""

    empty: float
    with_figures: float
    plinth_radius: float
    axis: Point
    mass: float
    worst: int = (
        0  # index of the layer under which the margin is the least: 0 on the table, else that of a loose section
    )
    tip: float = inf  # N at half the height that tip what is not glued, empty
    slide: float = inf  # N that push it aside
    ballast: float = 0.0  # g on the middle of its foot with which it does not tip with figures


def balance_of(
    stack: LaidStack,
    plan: PlanGeometry,
    treads: tuple[Tread, ...],
    parts: dict[str, Part],
    boards: dict[str, Board],
    figure: Figure,
    knees: tuple[Knee, ...] = (),
) -> Balance:
    """Return how the stack stands on every interface that is not glued: under the lowest layer, and under loose sections.

    A knee brace weighs with the step that it stands under.
    """
    centroids = shapely.get_coordinates(shapely.centroid(plan.placed))
    per_area = {p: areal_mass(boards[parts[p].board], parts[p].thickness) for p in plan.areas}
    masses = np.array([plan.areas[layer.part] * per_area[layer.part] for layer in stack.layers])
    masses, centroids = _with_knees(masses, centroids, stack, knees, parts, boards)
    top = stack.layers[-1].bottom + stack.layers[-1].thickness
    load = FIGURES * figure.mass
    pushes: list[float] = []
    held: list[float] = []
    margins: list[tuple[float, float, int]] = []  # empty, with figures, the layer above the interface
    for at in sorted({0, *stack.loose}):
        ground = plan.placed[at]
        if at > 0:
            ground = shapely.intersection(plan.placed[at - 1], ground)
        normals, limits = hull_sides(ground)
        mass = masses[at:].sum()
        moment = normals @ (masses[at:, None] * centroids[at:]).sum(axis=0)
        empty = float((limits - moment / mass).min())
        worst = two_worst(normals, [t for t in treads if t.layer >= at])
        whole = mass + load if worst.any() else mass
        loaded = limits - (moment + figure.mass * worst) / whole
        margins.append((empty, float(loaded.min()), at))
        held.append(ballast(ground, float(whole), loaded))
        pushes.append(push_to_tip(float(mass), empty, top - stack.layers[at].bottom))
    empty, with_figures = min(m[0] for m in margins), min(m[1] for m in margins)
    least = min(margins, key=lambda m: m[0 if empty < 0 else 1])[2]
    slide = push_to_slide(min(float(masses[at:].sum()) for at in {0, *stack.loose}))
    plinth = _plinth(stack, treads, masses, centroids, per_area, figure)
    return Balance(empty, with_figures, *plinth, float(masses.sum()), least, min(pushes), slide, max(held))


def _with_knees(
    masses: Array,
    centroids: Array,
    stack: LaidStack,
    knees: tuple[Knee, ...],
    parts: dict[str, Part],
    boards: dict[str, Board],
) -> tuple[Array, Array]:
    """Return grams and centroid of each layer together with the brace that stands under it."""
    brace = parts.get(stack.brace.part) if stack.brace is not None else None
    if brace is None:
        return masses, centroids
    own, out = mass_of(brace, boards), float(polygon(brace.outline).centroid.x)
    moments, masses = masses[:, None] * centroids, masses.copy()
    for knee in knees:
        if not knee.blocked:
            masses[knee.layer] += own
            moments[knee.layer] += own * np.array(knee.at_reach(out))
    return masses, moments / masses[:, None]


def two_worst(normals: Array, treads: list[Tread]) -> Array:
    """Return, per direction, the sum of how far out (mm) the outermost points of the two outermost treads lie."""
    reach = np.zeros((len(normals), 2))
    rows = [(normals @ shapely.get_coordinates(t.area).T).max(axis=1) for t in treads if not t.area.is_empty]
    if rows:
        ordered = np.sort(np.array(rows), axis=0)[-2:]
        reach[:, : len(ordered)] = ordered.T
        if len(ordered) == 1:
            reach[:, 1] = reach[:, 0]  # one tread carries both
    return np.asarray(reach.sum(axis=1))


def _plinth(
    stack: LaidStack,
    treads: tuple[Tread, ...],
    masses: Array,
    centroids: Array,
    per_area: dict[str, float],
    figure: Figure,
) -> tuple[float, Point]:
    """Return the least plinth radius and the axis: what lies above the lowest tread row's underside stands on a disc of the
    row's own board, whose own weight helps. Moments about the disc's rim: sum of m·x = (M + π·ρ²·areal mass)·ρ."""
    main = stack.main
    first = main.first if main else 0
    layer = stack.layers[first]
    axis = (layer.pose.x, layer.pose.y)
    angles = np.linspace(0.0, 2 * pi, DIRECTIONS, endpoint=False)
    normals = np.column_stack([np.cos(angles), np.sin(angles)])
    offset = normals @ np.array(axis)
    above = masses[first:].sum()
    moment = normals @ (masses[first:, None] * centroids[first:]).sum(axis=0) - above * offset
    standing = [t for t in treads if t.layer >= first]
    load = figure.mass * (two_worst(normals, standing) - FIGURES * offset) if standing else np.zeros(DIRECTIONS)
    worst = float((moment + load).max())
    whole = above + (FIGURES * figure.mass if standing else 0.0)
    low, high = 0.0, max(worst, 0.0) / whole
    for _ in range(60):  # bisection: the moment of the plinth grows with its radius
        middle = (low + high) / 2
        if (whole + pi * middle * middle * per_area[layer.part]) * middle < worst:
            low = middle
        else:
            high = middle
    return high, axis


def spread_of(stack: LaidStack, parts: dict[str, Part], boards: dict[str, Board]) -> float:
    """Return ± mm of the stack's height: the boards of one sheet are all thick or all thin, so the spreads add up."""
    return sum(boards[parts[layer.part].board].spread for layer in stack.layers)
