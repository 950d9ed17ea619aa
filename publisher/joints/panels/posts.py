"""Posts in openings of other panels: their end, the opening that takes it, and how both meet. Mm, degrees."""

from math import dist

import numpy as np
import shapely

from publisher.basics import Arc, Path, record
from publisher.design import FaceSeat
from publisher.geometry import Part, Region, polygon
from publisher.joints.panels.seats import opening_of
from publisher.joints.panels.space import Array, PanelFrame

SQUARE = 1e-3
"""Share of its box that a square opening may lack: none but rounding."""


@record
class PostFound:
    """A post's end in an opening as it is found.

    ``round``: the opening's form; None where it is neither round nor square. ``across`` and ``along``: how wide the opening is (mm)
    across the post's board and along its edge, of a round one its diameter; ``wide``: the length of the edge, ``askew``: degrees
    by which it is turned against the sides of a square opening. ``off``: how far (mm) its end is from the level of the other
    face, or its middle from the opening's. ``at``: in the assembly.
    """

    seat: FaceSeat
    round: bool | None
    across: float
    along: float
    wide: float
    askew: float
    off: float
    at: tuple[float, float, float]


def measured_post(seat: FaceSeat, part: Part, own: PanelFrame, host: Part, frame: PanelFrame) -> PostFound | None:
    """Return how a placed post stands in the opening that it is said to; None where its edge or the opening is not there."""
    ring, edge = opening_of(host, seat.opening), part.edge(seat.edge)
    if ring is None or edge is None or edge.centre is not None:
        return None
    corners = np.array(
        [[*edge.start, 0.0], [*edge.end, 0.0], [*edge.end, -part.thickness], [*edge.start, -part.thickness]]
    )
    end = frame.back(own.carry(corners))
    level = -host.thickness if seat.face == "outside" else 0.0
    way = end[1, :2] - end[0, :2]
    way = way / max(float(np.hypot(*way)), 1e-9)
    area = polygon(Region(ring))
    middle = shapely.get_coordinates(shapely.centroid(area))[0]
    off = max(float(np.abs(end[:, 2] - level).max()), float(np.hypot(*(end[:, :2].mean(axis=0) - middle))))
    x, y, z = (float(v) for v in own.carry(corners).mean(axis=0))
    circle = _diameter(ring)
    sides = (circle, circle) if circle else _sides(area, way)
    askew = 0.0 if circle else _askew(area, way)
    form = True if circle else False if _is_square(area) else None
    return PostFound(seat, form, sides[0], sides[1], dist(edge.start, edge.end), askew, off, (x, y, z))


def _diameter(ring: Path) -> float:
    """Return the diameter of a ring that is a circle; 0 for any other."""
    arcs = [edge for edge in ring.edges if isinstance(edge, Arc)]
    alike = {(round(arc.radius, 6), round(arc.centre[0], 6), round(arc.centre[1], 6)) for arc in arcs}
    return 2.0 * arcs[0].radius if len(arcs) == len(ring.edges) and len(alike) == 1 else 0.0


def _is_square(area: shapely.Polygon) -> bool:
    return bool(shapely.area(shapely.oriented_envelope(area)) - area.area < SQUARE * area.area)


def _sides(area: shapely.Polygon, way: Array) -> tuple[float, float]:
    """Return how wide an opening is across a direction and along it."""
    points = shapely.get_coordinates(area)
    along, across = points @ way, points @ np.array([-way[1], way[0]])
    return round(float(np.ptp(across)), 9), round(float(np.ptp(along)), 9)


def _askew(area: shapely.Polygon, way: Array) -> float:
    """Return by how many degrees a direction is off the sides of the rectangle about an opening."""
    box = shapely.get_coordinates(shapely.oriented_envelope(area))
    side = box[1] - box[0]
    angle = float(np.degrees(np.arctan2(side[1], side[0]) - np.arctan2(way[1], way[0]))) % 90.0
    return min(angle, 90.0 - angle)
