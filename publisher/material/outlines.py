"""Outlines as the packing engines see them: integer polygons, a hair smaller than true, grown by half the knife gap.

Unit of the grid: 0.1 µm (``NESTING_GRID`` to the millimetre). Coordinates of a sheet of 10 m stay below 2^30, where Clipper
computes in plain 64-bit integers.
"""

from dataclasses import dataclass, field
from functools import lru_cache
from math import atan2, cos, degrees, radians, sin

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import Box, Point
from publisher.geometry import next_of, one_before

IntPath = npt.NDArray[np.int64]
FloatPath = npt.NDArray[np.float64]

NESTING_GRID = 10_000  # grid units in a millimetre
OUTLINE_CHORD = (
    0.025  # mm; simplified by this and grown again by at most this: an outline errs outwards by at most 0.05 mm
)
OUTLINE_HAIR = 0.0003  # mm; grown outlines are smaller by this, so that exact fits keep a region to lie in
TIP = 0.006  # mm; a sharp tip may not recede by more than this when an outline is made smaller
MOST_OUTLINE_POINTS = 500  # an outline of more points is taken more coarsely
MITRE_LIMIT = 1.5  # keeps right angles square (1.414); sharper corners are cut just outside the round


def turned(points: FloatPath, turn: float, mirrored: bool = False) -> FloatPath:
    """Return points (n × 2, any unit) mirrored in the y axis if asked, then turned by ``turn`` degrees about the origin.

    Quarter turns are exact. The order of the points is kept, so a mirrored ring runs the other way round.
    """
    quarter = {0.0: (1.0, 0.0), 90.0: (0.0, 1.0), 180.0: (-1.0, 0.0), 270.0: (0.0, -1.0)}
    c, s = quarter.get(turn % 360.0, (round(cos(radians(turn)), 15), round(sin(radians(turn)), 15)))
    x = -points[:, 0] if mirrored else points[:, 0]
    y = points[:, 1]
    return np.column_stack((x * c - y * s, x * s + y * c))


def on_grid(points: FloatPath) -> IntPath:
    """Return a ring (n × 2, mm) on the grid, anticlockwise, without repeated points."""
    path = np.rint(points * NESTING_GRID).astype(np.int64)
    keep = np.any(path != one_before(path), axis=1)
    path = path[keep]
    return path if twice_area(path) >= 0 else path[::-1].copy()


def twice_area(path: IntPath) -> float:
    """Return twice the signed area of a ring; positive when it runs anticlockwise."""
    x, y = path[:, 0].astype(float), path[:, 1].astype(float)
    return float(np.dot(x, next_of(y)) - np.dot(y, next_of(x)))


def solid(ring: tuple[Point, ...]) -> shapely.Polygon:
    """Return a ring (mm) as a valid filled polygon; one that crosses or touches itself is replaced by its hull.

    Raises ValueError when a coordinate is not a number or the ring encloses nothing.
    """
    points = np.asarray(ring, dtype=np.float64)
    if not np.isfinite(points).all():
        raise ValueError("an outline with a coordinate that is not a number cannot be laid out")
    # with a coordinate a hair below zero (-5e-324) the simplifier of GEOS 3.14 never ends
    polygon = shapely.Polygon(np.where(np.abs(points) < 1e-9, 0.0, points))
    whole = polygon if polygon.is_valid else polygon.convex_hull
    if not isinstance(whole, shapely.Polygon) or whole.area <= 0:
        raise ValueError("an outline that encloses nothing cannot be laid out")
    return whole


def simplified(polygon: shapely.Polygon) -> tuple[shapely.Polygon, float]:
    """Return a polygon with few points, and by how much (mm) it must grow to cover the given one.

    That is at most ``OUTLINE_CHORD``; more only for an outline of so many points that no knife follows them.
    """
    simple, chord = polygon.simplify(OUTLINE_CHORD), OUTLINE_CHORD
    while len(simple.exterior.coords) > MOST_OUTLINE_POINTS and chord < 1.0:
        chord *= 2
        simple = polygon.simplify(chord)
    if simple.is_empty or not simple.is_valid:
        return polygon, 0.0
    short = float(shapely.distance(simple, shapely.points(shapely.get_coordinates(polygon))).max())
    return simple, 0.0 if short < 1e-9 else short


def offset(polygon: shapely.Polygon, by: float) -> FloatPath:
    """Return the outside ring (n × 2, mm) of a polygon grown by ``by`` mm with mitred corners; empty if it vanishes."""
    grown = polygon.buffer(by, join_style="mitre", mitre_limit=MITRE_LIMIT) if by else polygon
    if isinstance(grown, shapely.MultiPolygon):
        grown = max(grown.geoms, key=lambda g: g.area)
    if grown.is_empty:
        return np.empty((0, 2))
    ring = shapely.get_coordinates(grown.exterior)[:-1]
    return np.asarray(ring, dtype=np.float64)


def _within(ring: FloatPath, box: Box) -> FloatPath:
    """Return the part of a ring inside an upright rectangle."""
    inside = shapely.Polygon(ring).intersection(shapely.box(*box.sides))
    return offset(inside, 0.0) if isinstance(inside, shapely.Polygon) and not inside.is_empty else ring


@dataclass(slots=True, eq=False)
class Outline:
    """One piece as the engines see it.

    ``bare`` is compared with the container, ``grown`` (by half the gap, less a hair) with other pieces; both in mm.
    ``holes`` are the rings (mm) of holes into which others may go, already smaller by the whole gap.
    """

    bare: FloatPath
    grown: FloatPath
    holes: tuple[FloatPath, ...]
    area: float
    paths: dict[tuple[float, bool, bool], IntPath] = field(default_factory=dict)

    def path(self, turn: float, mirrored: bool, grown: bool) -> IntPath:
        """Return the turned outline on the grid: ``grown`` or bare."""
        key = (turn, mirrored, grown)
        if key not in self.paths:
            self.paths[key] = on_grid(turned(self.grown if grown else self.bare, turn, mirrored))
        return self.paths[key]


@lru_cache(maxsize=256)
def outline(rings: tuple[tuple[Point, ...], ...], gap: float) -> Outline:
    """Prepare a piece's rings (mm; the first the outside, the others holes) for a knife gap of ``gap`` mm.

    The same rings and gap give the same object as long as it is remembered, so that its turned paths are made once.
    """
    whole = solid(rings[0])
    simple, short = simplified(whole)
    # a curved piece must not come out larger overall than it is: it may have to fit exactly
    box = Box(*whole.bounds)
    holes = []
    for ring in rings[1:]:
        inside = offset(solid(ring).simplify(OUTLINE_CHORD), -gap - OUTLINE_CHORD)
        if len(inside):
            holes.append(inside)
    by = short + gap / 2 - OUTLINE_HAIR
    if by < 0:
        by = max(by, -TIP * _sharpest(simple))
    return Outline(
        bare=_within(offset(simple, short), box),
        grown=_within(offset(simple, by), box.grown(gap / 2 - OUTLINE_HAIR) if by > 0 else box),
        holes=tuple(holes),
        area=whole.area,
    )


def _sharpest(polygon: shapely.Polygon) -> float:
    """Return the sine of half the sharpest outside corner (1 for none): a tip recedes by the offset divided by it."""
    ring = shapely.get_coordinates(polygon.normalize().exterior)[:-1]
    arriving, leaving = ring - one_before(ring), next_of(ring) - ring
    cross = arriving[:, 0] * leaving[:, 1] - arriving[:, 1] * leaving[:, 0]
    dot = (arriving * leaving).sum(axis=1)
    # outside corners of a clockwise ring (as normalize makes them) turn to the right
    inside = np.pi - np.abs(np.arctan2(cross, dot))
    return float(np.sin(inside[cross < 0] / 2).min(initial=1.0))


@lru_cache(maxsize=256)
def upright_turn(ring: tuple[Point, ...]) -> float:
    """Return the turn (degrees, below 90) at which the least rectangle about a ring stands upright; 0 for a ring without area."""
    box = shapely.Polygon(ring).minimum_rotated_rectangle
    if not isinstance(box, shapely.Polygon):
        return 0.0
    (x0, y0), (x1, y1) = box.exterior.coords[:2]
    return round(-degrees(atan2(y1 - y0, x1 - x0)) % 90.0, 9) % 90.0


@lru_cache(maxsize=512)
def distinct_turns(shape: Outline, angles: tuple[float, ...]) -> tuple[float, ...]:
    """Return the angles (degrees) without those that show the same outline again: one for a disc, two for a rectangle."""
    kept: list[tuple[float, shapely.Polygon]] = []
    differ: dict[float, bool] = {}  # by the angle between two turns: what it does to one it does to any
    for angle in dict.fromkeys(a % 360.0 for a in angles):
        points = turned(shape.bare, angle)
        centred = shapely.Polygon(points - (points.max(axis=0) + points.min(axis=0)) / 2)
        for other, seen in kept:
            between = round(abs(angle - other), 9)
            if between not in differ:
                # a band of 0.05 mm along the outline is the polygonising error, not a difference of shape
                differ[between] = centred.symmetric_difference(seen).area > 0.05 * centred.length
            if not differ[between]:
                break
        else:
            kept.append((angle, centred))
    return tuple(angle for angle, _ in kept)
