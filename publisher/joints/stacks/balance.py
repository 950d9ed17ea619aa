"""Whether a stack stands: balance empty and with figures (trade notes, section 2)."""

from math import inf, pi

import numpy as np
import shapely

from publisher.basics import Point, record
from publisher.design import Board
from publisher.geometry import Part
from publisher.joints.outlines import Array
from publisher.joints.stacks.layers import LaidStack
from publisher.joints.stacks.plan_geometry import PlanGeometry
from publisher.joints.stacks.treads import Tread

FIGURE_MASS = 30.0
"""Grams of a metal figure; two of them stand on the two worst treads. A stated assumption of the trade notes."""

FOAM_MASS = 30.0e-6
"""Grams per mm³ of bare board: 150 g/m² at 5 mm. A stated assumption of the trade notes."""

PAPER_MASS = 75.0e-6
"""Grams per mm² of one paper face: 300 g/m² for 5 mm board with both papers. A stated assumption of the trade notes."""

PAPERS = {"bare": 0, "paper_one": 1, "paper_both": 2}

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


def areal_mass(board: Board, thickness: float) -> float:
    """Return grams per mm² of a board: as the designer has weighed it, else by the stated assumptions."""
    if board.areal_mass is not None:
        return board.areal_mass * 1e-6
    return FOAM_MASS * thickness + PAPER_MASS * PAPERS.get(board.faces, 0)


def balance_of(
    stack: LaidStack,
    plan: PlanGeometry,
    treads: tuple[Tread, ...],
    parts: dict[str, Part],
    boards: dict[str, Board],
) -> Balance:
    """Return how the stack stands on every interface that is not glued: under the lowest layer, and under loose sections."""
    centroids = shapely.get_coordinates(shapely.centroid(plan.placed))
    per_area = {p: areal_mass(boards[parts[p].board], parts[p].thickness) for p in plan.areas}
    masses = np.array([plan.areas[layer.part] * per_area[layer.part] for layer in stack.layers])
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
        whole = mass + 2 * FIGURE_MASS if worst.any() else mass
        margins.append((empty, float((limits - (moment + FIGURE_MASS * worst) / whole).min()), at))
    empty, loaded = min(m[0] for m in margins), min(m[1] for m in margins)
    least = min(margins, key=lambda m: m[0 if empty < 0 else 1])[2]
    return Balance(empty, loaded, *_plinth(stack, treads, masses, centroids, per_area), float(masses.sum()), least)


def hull_sides(ground: shapely.Geometry) -> tuple[Array, Array]:
    """Return the outward unit normals and offsets (mm) of the sides of the convex hull of what touches the ground."""
    ring = shapely.get_coordinates(shapely.orient_polygons(shapely.convex_hull(ground)))
    if len(ring) < 4:
        return np.array([[1.0, 0.0]]), np.array([-inf])  # touches in a line or not at all: it tips
    side = np.diff(ring, axis=0)
    length = np.hypot(side[:, 0], side[:, 1])
    side, ring = side[length > 1e-9] / length[length > 1e-9, None], ring[:-1][length > 1e-9]
    normals = np.column_stack([side[:, 1], -side[:, 0]])
    return normals, (normals * ring).sum(axis=1)


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
    stack: LaidStack, treads: tuple[Tread, ...], masses: Array, centroids: Array, per_area: dict[str, float]
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
    load = FIGURE_MASS * (two_worst(normals, standing) - 2 * offset) if standing else np.zeros(DIRECTIONS)
    worst = float((moment + load).max())
    whole = above + (2 * FIGURE_MASS if standing else 0.0)
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
