"""Which parts look outwards with their outside: before which no other board of their assembly stands. Mm."""

from collections.abc import Iterable

import numpy as np
import shapely

from publisher.geometry import Part, polygon
from publisher.joints.model import Placed
from publisher.joints.outlines import Array

STANDS_BEFORE = 1.0
"""mm before a face from which on a board stands before it; nearer it lies on it."""

OPEN_SHARE = 0.8
"""Share of a face before which nothing stands, of a wall that looks outwards: eaves and a porch may hide some of it."""


def look_outwards(parts: Iterable[Part], placed: Iterable[tuple[str, tuple[Placed, ...]]]) -> frozenset[str]:
    """Return the parts that look outwards in every place of theirs; none that is placed nowhere."""
    known = {part.id: part for part in parts}
    inner: set[str] = set()
    seen: set[str] = set()
    for _, panels in placed:
        boards = [(panel.part, *_frame(panel)) for panel in panels if panel.part in known]
        for name, axes, origin in boards:
            seen.add(name)
            if name not in inner and not _is_free(known, name, axes, origin, boards):
                inner.add(name)
    return frozenset(seen - inner)


def _is_free(
    known: dict[str, Part], name: str, axes: Array, origin: Array, boards: list[tuple[str, Array, Array]]
) -> bool:
    """Say whether nothing stands before the outside of a board, looking square away from it."""
    face = polygon(known[name].outline)
    hidden = []
    for other, turned, at in boards:
        if at is origin:
            continue
        points = np.array(known[other].outline.outer.points)
        thick = known[other].thickness
        both = np.vstack([np.column_stack([points, np.full(len(points), z)]) for z in (0.0, -thick)])
        own = (both @ turned.T + at - origin) @ axes
        before = own[own[:, 2] > STANDS_BEFORE]
        if len(before) > 2:
            hidden.append(shapely.convex_hull(shapely.multipoints(before[:, :2])))
    covered = shapely.intersection(face, shapely.union_all(hidden)).area if hidden else 0.0
    return bool(covered < (1.0 - OPEN_SHARE) * face.area)


def _frame(panel: Placed) -> tuple[Array, Array]:
    matrix = np.array(panel.matrix).reshape(3, 4)
    return matrix[:, :3], matrix[:, 3]
