"""Where the letter of a panel stands in a picture of panels: on its face where there is room for it, else beside it with a line to it."""

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt
import shapely

from publisher.joints.drawings.panel_solids import Solids
from publisher.joints.outlines import Array

EXPLODED_ROOM = 6.0
"""mm of visible face around a letter: with less it would stand on lines."""

FACET_ROOM = 3.0
"""The same on a facet of a bent part, over whose borders the board goes on without a line."""

ROOM_ON_PAPER = 1.7
"""mm of the paper around the middle of a letter: half of it, and what keeps lines apart from it."""

PICTURE_WIDE, PICTURE_HIGH = 66.0, 47.0
"""mm of the paper that such a picture has, about."""

LONGEST_LEADER = 0.2
"""Share of the size of the whole that a letter stands off its panel at most."""

MOST_FACES = 1000
"""Faces among which what is hidden is measured to the last edge; of more, the thickness of the boards is left out."""


def room_on_paper(areas: Sequence[shapely.Geometry]) -> float:
    """Return how much room (mm of the piece) a letter takes where these areas are drawn as large as a page has room for them."""
    left, bottom, right, top = shapely.total_bounds(np.asarray(areas))
    scale = min(PICTURE_WIDE / max(right - left, 1e-6), PICTURE_HIGH / max(top - bottom, 1e-6), 1.0)
    return float(ROOM_ON_PAPER / scale)


def letter_spot(solids: Solids, main: int, room: float = EXPLODED_ROOM) -> tuple[float, float] | None:
    """Return where the letter of a panel stands: on its face, or just beside one that is too small; None where neither is free."""
    return on_face(solids, main, room) or _spot_at_an_end(solids, main)


def spot_beside(solids: Solids, main: int, room: float, taken: list[tuple[float, float]]) -> Array | None:
    """Return where a letter stands clear of all faces and of other letters, and the point of its own face to which a line from it leads,
    as two points (2, 2): the nearest that there is; None where it would stand too far off."""
    if main < 0:
        return None
    points, seen = seen_of(solids, main, np.arange(len(solids.areas)))
    if not seen.any():
        return None
    areas = np.asarray(solids.areas)
    left, bottom, right, top = shapely.total_bounds(areas)
    size = max(right - left, top - bottom)
    own = points[seen]
    low, high = own.min(axis=0) - LONGEST_LEADER * size, own.max(axis=0) + LONGEST_LEADER * size
    grid = np.array(np.meshgrid(np.linspace(low[0], high[0], 50), np.linspace(low[1], high[1], 50))).reshape(2, -1).T
    clear = shapely.distance(shapely.union_all(areas), shapely.points(grid)) >= room
    for other in taken:
        clear &= np.hypot(*(grid - other).T) >= 2.5 * room
    grid = grid[clear]
    if not len(grid):
        return None
    away = np.hypot(*(grid[:, None] - own[None]).transpose(2, 0, 1))
    at, on = np.unravel_index(int(away.argmin()), away.shape)
    return np.array([grid[at], own[on]]) if away[at, on] <= LONGEST_LEADER * size + room else None


def shown(solids: Solids, main: int) -> float:
    """Return the share of a panel's face that nothing hides, 0 to 1; of a very large whole, that no other panel's face hides."""
    every = np.arange(len(solids.areas))
    hiding = every if len(every) <= MOST_FACES else np.array([other for other in solids.main if other >= 0])
    points, seen = seen_of(solids, main, hiding)
    return float(seen.mean()) if len(points) else 1.0


def seen_of(solids: Solids, main: int, hiding: npt.NDArray[np.int64]) -> tuple[Array, npt.NDArray[np.bool_]]:
    """Return points on a face (n, 2) and whether each is seen past the faces that may hide it."""
    area, plane = solids.areas[main], solids.planes[main]
    left, bottom, right, top = area.bounds
    across, up = np.meshgrid(np.linspace(left, right, 25)[1:-1], np.linspace(bottom, top, 25)[1:-1])
    points: Array = np.column_stack([across.ravel(), up.ravel()])
    points = points[shapely.contains_xy(area, points[:, 0], points[:, 1])]
    seen = np.ones(len(points), dtype=bool)
    depth = points @ plane[:2] + plane[2]
    bounds = shapely.bounds(np.asarray(solids.areas)[hiding])
    near = (bounds[:, 0] < right) & (bounds[:, 2] > left) & (bounds[:, 1] < top) & (bounds[:, 3] > bottom)
    for index in hiding[near]:
        other, other_plane = solids.areas[index], solids.planes[index]
        if index != main:
            behind = np.flatnonzero(seen & (points @ other_plane[:2] + other_plane[2] > depth + 0.1))
            if len(behind):
                seen[behind[shapely.contains_xy(other, points[behind])]] = False
    return points, seen


def on_face(solids: Solids, main: int, least: float) -> tuple[float, float] | None:
    """Return the point of a face that is seen and lies farthest from its border and from what hides it; None where that is not
    ``least`` mm."""
    if main < 0:
        return None
    area = solids.areas[main]
    points, seen = seen_of(solids, main, np.arange(len(solids.areas)))
    if not seen.any():
        return None
    room = shapely.distance(shapely.points(points[seen]), shapely.boundary(area))
    if not seen.all():
        hidden = shapely.multipoints(points[~seen])
        room = np.minimum(room, shapely.distance(shapely.points(points[seen]), hidden))
    best = int(room.argmax())
    if room[best] < least:
        return None
    x, y = points[seen][best]
    return float(x), float(y)


def _spot_at_an_end(solids: Solids, main: int) -> tuple[float, float] | None:
    """Return a point just outside a face that is too small for a letter, at one of its ends or sides, clear of all faces; or None."""
    if main < 0:
        return None
    box = shapely.get_coordinates(shapely.oriented_envelope(solids.areas[main]))
    if len(box) < 4:
        return None
    middle, sides = box[:4].mean(axis=0), [(box[i] + box[i + 1]) / 2.0 for i in range(4)]
    sides.sort(key=lambda side: -float(np.hypot(*(side - middle))))
    for side in sides:
        way = (side - middle) / max(float(np.hypot(*(side - middle))), 1e-9)
        at = side + (EXPLODED_ROOM + 1.0) * way
        if float(shapely.distance(solids.areas, shapely.Point(at)).min()) >= EXPLODED_ROOM:
            return float(at[0]), float(at[1])
    return None
