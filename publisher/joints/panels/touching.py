"""How the edge of one panel meets the inside face of another that lies on it: measured on both as they stand. Mm, degrees."""

from math import asin, ceil, degrees, radians, tan

import numpy as np
import shapely

from publisher.basics import record
from publisher.geometry import Edge, Part, polygon
from publisher.joints.panels.solids import face_pair
from publisher.joints.panels.space import Array, PanelFrame

PANEL_TOUCH = 0.05
"""mm: what lies nearer touches. Fits are made and cut no finer."""

BARE = 2.0
"""mm of an edge that its cover may leave bare: twice the step at which it is looked at, and no more than a fillet of glue
bridges (common practice, no source)."""

PLACES_ACROSS = 6
"""Places across the thickness of the edge at which it is looked at."""

FLAT = 1.0
"""Degrees: an edge that is more askew to the face touches it along a line, not with its whole thickness."""

EDGE_STEP = 1.0  # mm between the places along the edge, at most


@record
class Touch:
    """An edge under a face: its length where there is board, how much of that the face does not lie over (``bare``), the
    greatest gap where it does (0 where they touch), the angle between both, a point in the middle of the worst place."""

    length: float
    bare: float
    gap: float
    angle: float
    at: tuple[float, float, float]

    @property
    def holds(self) -> bool:
        """Tell whether the face lies on the whole edge, but for what a fillet of glue bridges."""
        return self.gap <= PANEL_TOUCH and self.bare <= BARE + PANEL_TOUCH


def touch_of(above: Part, frame: PanelFrame, below: Part, lower: PanelFrame, edge: Edge) -> Touch | None:
    """Return how the straight edge of the panel ``below`` meets the inside face of the panel ``above``; None without board.

    The edge is a strip as wide as its board. It is held where at least half of its width lies under the face; an edge that
    is askew to the face touches it along a line. Where the strip stands inside the other board it counts as touching: that
    two boards stand in one place is another finding.
    """
    strip = _strip(below, edge)
    if strip is None:
        return None
    points, length = strip
    along, across = points.shape[:2]
    here = frame.back(lower.carry(points.reshape(-1, 3)))
    gaps = (-above.thickness - here[:, 2]).reshape(along, across)
    outline = above.outline
    rings = [face_pair(above, ring.points).inside for ring in (outline.outer, *outline.holes)]
    face = shapely.buffer(shapely.make_valid(shapely.Polygon(rings[0], rings[1:])), PANEL_TOUCH)
    shapely.prepare(face)
    over = shapely.contains_xy(face, here[:, 0], here[:, 1]).reshape(along, across)
    slant = _slant(gaps, points)
    askew = slant > FLAT
    covered = over.any(axis=1) if askew else over.sum(axis=1) * 2 >= across
    near = np.where(over, gaps, np.inf).min(axis=1) if askew else np.where(over, gaps, -np.inf).max(axis=1)
    gap = np.where(covered, np.maximum(near, 0.0), 0.0)
    gap[gap <= PANEL_TOUCH] = 0.0
    worst = int(gap.argmax()) if gap.any() else _middle_of(~covered)
    x, y, z = (float(v) for v in lower.carry(points[worst].mean(axis=0)[None, :])[0])
    return Touch(length, length * float((~covered).mean()), float(gap.max()), slant, (x, y, z))


def _strip(part: Part, edge: Edge) -> tuple[Array, float] | None:
    """Return points of an edge's surface in the part's coordinates (along, across, 3), where there is board, and the length."""
    start, end = np.asarray(edge.start), np.asarray(edge.end)
    way = end - start
    size = float(np.hypot(*way))
    if edge.centre is not None or size < PANEL_TOUCH:
        return None
    way = way / size
    inward = np.array([-way[1], way[0]])
    steps = max(2, ceil(size / EDGE_STEP))
    places = start + ((np.arange(steps) + 0.5) * size / steps)[:, None] * way
    within = places + 2 * PANEL_TOUCH * inward
    whole = polygon(part.outline)
    board = shapely.contains_xy(whole, within[:, 0], within[:, 1])
    if not board.any():
        return None
    share = (np.arange(PLACES_ACROSS) + 0.5) / PLACES_ACROSS
    back = part.thickness * tan(radians(edge.bevel)) * share[:, None] * inward
    flat = places[board][:, None, :] + back[None, :, :]
    depth = np.broadcast_to(-part.thickness * share, flat.shape[:2])
    return np.concatenate([flat, depth[:, :, None]], axis=2), float(board.mean()) * size


def _slant(gaps: Array, points: Array) -> float:
    """Return the angle (degrees) between the edge's surface and the face, from how the gap grows along and across."""
    rises = []
    for first, last in ((points[0, 0], points[-1, 0]), (points[0, 0], points[0, -1])):
        rises.append(float(np.linalg.norm(last - first)))
    over = (gaps[-1, 0] - gaps[0, 0], gaps[0, -1] - gaps[0, 0])
    sines = [rise / long for rise, long in zip(over, rises, strict=True) if long > PANEL_TOUCH]
    return degrees(asin(min(1.0, float(np.hypot(*sines)) if len(sines) > 1 else abs(sines[0]) if sines else 0.0)))


def _middle_of(flags: np.typing.NDArray[np.bool_]) -> int:
    """Return the index in the middle of those that are set; of all when none is."""
    found = np.flatnonzero(flags)
    return int(found[len(found) // 2]) if len(found) else len(flags) // 2
