"""What stands: weights of board, the hull of what touches the ground, pushes that tip or slide, ballast that holds. Mm, g, N."""

from math import inf

import numpy as np
import shapely

from publisher.basics import record
from publisher.design import Board
from publisher.geometry import Part, polygon
from publisher.joints.outlines import Array

FOAM_MASS = 30.0e-6
"""Grams per mm³ of bare board: 150 g/m² at 5 mm. A stated assumption."""

PAPER_MASS = 75.0e-6
"""Grams per mm² of one paper face: 300 g/m² for 5 mm board with both papers. A stated assumption."""

CARD_MASS = 700.0e-6
"""Grams per mm³ of card and paper: 350 g/m² at 0.5 mm. An assumption."""

PAPERS = {"bare": 0, "paper_one": 1, "paper_both": 2}

GRAVITY = 9.80665e-3
"""Newtons that a gram weighs: standard gravity, 9.80665 m/s² (3rd General Conference on Weights and Measures, 1901)."""

FIGURES = 2
"""How many stand on the worst treads of a pile of layers; on what has walls stands the heaviest alone. Stated assumptions."""

HALF_A_BASE = 0.5
"""Of a base: no figure stands on a board that is narrower than this. An assumption."""

LEAST_TREAD = 1.0
"""mm²: what is less bare is no place to stand."""

FRICTION = 0.4
"""Of board or paint on a table. An assumption."""


def areal_mass(board: Board, thickness: float) -> float:
    """Return grams per mm² of a board: as the designer has weighed it, else by the stated assumptions."""
    if board.areal_mass is not None:
        return board.areal_mass * 1e-6
    if board.material != "foam":
        return CARD_MASS * thickness
    return FOAM_MASS * thickness + PAPER_MASS * PAPERS.get(board.faces, 0)


def mass_of(part: Part, boards: dict[str, Board]) -> float:
    """Return grams of one piece: its area, openings out, by the areal mass of its board."""
    return float(polygon(part.outline).area) * areal_mass(boards[part.board], part.thickness)


def hull_sides(ground: shapely.Geometry) -> tuple[Array, Array]:
    """Return the outward unit normals and offsets (mm) of the sides of the convex hull of what touches the ground."""
    ring = shapely.get_coordinates(shapely.orient_polygons(shapely.convex_hull(ground)))
    if len(ring) < 4:
        return np.array([[1.0, 0.0]]), np.array([-inf])  # touches in a line or not at all: it tips
    side = np.diff(ring, axis=0)
    length = np.hypot(side[:, 0], side[:, 1])
    if (length > 1e-9).sum() < 3:
        return np.array([[1.0, 0.0]]), np.array([-inf])
    side, ring = side[length > 1e-9] / length[length > 1e-9, None], ring[:-1][length > 1e-9]
    normals = np.column_stack([side[:, 1], -side[:, 0]])
    return normals, (normals * ring).sum(axis=1)


def narrowest(ground: shapely.Geometry) -> float:
    """Return the least width (mm) of the hull of what touches the ground: 0 for a line or a point."""
    normals, limits = hull_sides(ground)
    if not np.isfinite(limits).all():
        return 0.0
    return float((limits - (normals @ shapely.get_coordinates(ground).T).min(axis=1)).min())


def push_to_tip(mass: float, margin: float, height: float) -> float:
    """Return the push (N) at half the height (mm) that tips grams whose weight falls ``margin`` mm inside what they stand on:
    moments about the edge, F·h/2 = W·d; 0 for what falls by itself."""
    return max(2.0 * mass * GRAVITY * margin / height, 0.0) if height > 0.0 else inf


def push_to_slide(mass: float) -> float:
    """Return the push (N) that slides grams over a table."""
    return FRICTION * mass * GRAVITY


@record
class Loaded:
    """How far inside each side of what it stands on the weight of something falls with figures on it (mm, negative: outside), the
    moments (g·mm) by which it is held there, and how many figures do the worst: one alone, or all."""

    margins: Array
    moments: Array
    figures: int


def loaded(limits: Array, moment: Array, mass: float, reaches: Array, figure: float, most: int = FIGURES) -> Loaded:
    """Return how something of ``mass`` g stands with one figure of ``figure`` g on its worst tread, or with ``most`` on its worst
    treads, at the edge each: whichever is worse on a side. All stand on the only tread where there is one.

    ``limits``: how far out the sides of what it stands on lie (mm); ``moment``: mass times how far out its weight lies (g·mm);
    ``reaches`` (treads, sides): how far out each tread reaches. What is light may stand with a second figure nearer to its middle.
    """
    cases = [(count, mass + count * figure, reach) for count, reach in worst_reaches(reaches, most)]
    margins = np.array([limits - (moment + figure * reach) / whole for _, whole, reach in cases])
    moments = np.array([limits * whole - (moment + figure * reach) for _, whole, reach in cases])
    case = int(margins.min(axis=1).argmin())
    return Loaded(margins.min(axis=0), moments.min(axis=0), cases[case][0])


def worst_reaches(reaches: Array, most: int = FIGURES) -> list[tuple[int, Array]]:
    """Return numbers of figures, each with how far out they stand at the worst, by side, added up; of reaches of at least one tread."""
    outermost = np.sort(reaches, axis=0)[-most:]
    every = outermost.sum(axis=0) + (most - len(outermost)) * outermost[0]
    return [(1, outermost[-1]), (most, every)] if most > 1 else [(1, outermost[-1])]


def ballast(ground: shapely.Geometry, moments: Array) -> float:
    """Return the grams that, laid on the middle of what touches the ground, hold something that stands with these moments (g·mm)
    inside each side of its hull (negative: it tips there); inf when none would."""
    normals, limits = hull_sides(ground)
    middle = shapely.get_coordinates(shapely.centroid(shapely.convex_hull(ground)))[0]
    reach = limits - normals @ middle
    if np.any(reach[moments < 0.0] <= 0.0):
        return inf
    return float(np.max(np.where(moments < 0.0, -moments / np.where(reach > 0.0, reach, 1.0), 0.0)))
