"""Whether a stack stands: balance empty and with figures."""

from math import inf, pi

import numpy as np
import shapely

from publisher.basics import Point, record
from publisher.design import Board, Figure
from publisher.geometry import Part, polygon
from publisher.joints.facts import short_side
from publisher.joints.footing import (
    FIGURES,
    HALF_A_BASE,
    areal_mass,
    ballast,
    hull_sides,
    loaded,
    mass_of,
    push_to_slide,
    push_to_tip,
    worst_reaches,
)
from publisher.joints.outlines import Array
from publisher.joints.stacks.knees import Knee
from publisher.joints.stacks.layers import LaidStack
from publisher.joints.stacks.plan_geometry import PlanGeometry
from publisher.joints.stacks.treads import Tread

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
    figures: int = FIGURES  # of the worst case: one alone, or all


def balance_of(
    stack: LaidStack,
    plan: PlanGeometry,
    treads: tuple[Tread, ...],
    standing: tuple[Tread, ...],
    parts: dict[str, Part],
    boards: dict[str, Board],
    figure: Figure,
    knees: tuple[Knee, ...] = (),
) -> Balance:
    """Return how the stack stands on every interface that is not glued: under the lowest layer, and under loose sections.

    Figures stand wherever a layer is bare and wide enough (``standing``); ``treads`` alone are those over a plinth, and of them too only
    wide ones count. A knee brace weighs with the step that it stands under.
    """
    centroids = shapely.get_coordinates(shapely.centroid(plan.placed))
    per_area = {p: areal_mass(boards[parts[p].board], parts[p].thickness) for p in plan.areas}
    masses = np.array([plan.areas[layer.part] * per_area[layer.part] for layer in stack.layers])
    masses, centroids = _with_knees(masses, centroids, stack, knees, parts, boards)
    top = stack.layers[-1].bottom + stack.layers[-1].thickness
    treads = tuple(tread for tread in treads if bears_figures(parts[stack.layers[tread.layer].part], figure))
    pushes: list[float] = []
    held: list[float] = []
    margins: list[tuple[float, float, int, int]] = []  # empty, with figures, the layer above the interface, how many
    for at in sorted({0, *stack.loose}):
        ground = plan.placed[at]
        if at > 0:
            ground = shapely.intersection(plan.placed[at - 1], ground)
        normals, limits = hull_sides(ground)
        mass = masses[at:].sum()
        moment = normals @ (masses[at:, None] * centroids[at:]).sum(axis=0)
        empty = float((limits - moment / mass).min())
        reaches = reaches_of(normals, [t for t in standing if t.layer >= at])
        least, moments, figures = empty, limits * mass - moment, 0
        if len(reaches):
            worst = loaded(limits, moment, float(mass), reaches, figure.mass)
            least, moments, figures = float(worst.margins.min()), worst.moments, worst.figures
        margins.append((empty, least, at, figures))
        held.append(ballast(ground, moments))
        pushes.append(push_to_tip(float(mass), empty, top - stack.layers[at].bottom))
    empty, with_figures = min(m[0] for m in margins), min(m[1] for m in margins)
    *_, at, figures = min(margins, key=lambda m: m[0 if empty < 0 else 1])
    slide = push_to_slide(min(float(masses[at:].sum()) for at in {0, *stack.loose}))
    plinth = _plinth(stack, treads, masses, centroids, per_area, figure)
    return Balance(empty, with_figures, *plinth, float(masses.sum()), at, min(pushes), slide, max(held), figures)


def bears_figures(part: Part, figure: Figure) -> bool:
    """Tell whether a layer is wide enough for a figure."""
    return short_side(part) >= HALF_A_BASE * figure.base


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


def reaches_of(normals: Array, treads: list[Tread]) -> Array:
    """Return how far out (mm) each tread reaches, per direction (treads, directions)."""
    rows = [(normals @ shapely.get_coordinates(t.area).T).max(axis=1) for t in treads if not t.area.is_empty]
    return np.array(rows).reshape(-1, len(normals))


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
    reaches = reaches_of(normals, [t for t in treads if t.layer >= first]) - offset
    loads = worst_reaches(reaches) if len(reaches) else [(0, np.zeros(DIRECTIONS))]
    disc = pi * per_area[layer.part]
    return max(_radius(float((moment + figure.mass * r).max()), above + n * figure.mass, disc) for n, r in loads), axis


def _radius(worst: float, whole: float, disc: float) -> float:
    """Return the radius at which the moment (g·mm) of a weight is that of what stands on the rim: a disc helps by ``disc`` g/mm² · ρ²."""
    low, high = 0.0, max(worst, 0.0) / whole
    for _ in range(60):  # bisection: the moment of the plinth grows with its radius
        middle = (low + high) / 2
        if (whole + disc * middle * middle) * middle < worst:
            low = middle
        else:
            high = middle
    return high


def spread_of(stack: LaidStack, parts: dict[str, Part], boards: dict[str, Board]) -> float:
    """Return ± mm of the stack's height: the boards of one sheet are all thick or all thin, so the spreads add up."""
    return sum(boards[parts[layer.part].board].spread for layer in stack.layers)
