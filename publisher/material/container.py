"""Containers: the free area of a sheet or a page, and where a piece's origin may lie so that the piece stays inside.

Any container is its upright bounding rectangle less blocked polygons: its own pockets (what the rectangle has and the
outside ring has not) and its holes. For the rectangle alone the inner-fit region is a rectangle, known without any
computation; each blocked polygon takes its no-fit polygon away.
"""

from functools import lru_cache

import numpy as np
import shapely

from publisher.basics import Box, Point, record
from publisher.material.nfp import no_fit_fixed
from publisher.material.outlines import NESTING_GRID, IntPath, offset, on_grid, solid

SHEET_SLACK = 0.0003  # mm; blocked polygons are smaller by this, so that exact fits beside them survive


@record
class Container:
    """A free area on the grid: bounding rectangle (left, bottom, right, top) and blocked rings inside it."""

    left: int
    bottom: int
    right: int
    top: int
    blocked: tuple[IntPath, ...]
    area: float  # mm²


def container(rings: tuple[tuple[Point, ...], ...]) -> Container:
    """Prepare a container from its rings (mm): the outside, then blocked holes. Pieces may touch its edges."""
    outside = solid(rings[0])
    left, bottom, right, top = outside.bounds
    blocked: list[shapely.Polygon] = [solid(ring) for ring in rings[1:]]
    pockets = shapely.box(left, bottom, right, top).difference(outside)
    blocked += [p for p in shapely.get_parts(pockets) if isinstance(p, shapely.Polygon) and p.area > 1e-6]
    free = outside.difference(shapely.union_all([solid(ring) for ring in rings[1:]])) if rings[1:] else outside
    # one grid unit more, so that a piece of exactly this size goes in
    return Container(
        round(left * NESTING_GRID) - 1,
        round(bottom * NESTING_GRID) - 1,
        round(right * NESTING_GRID) + 1,
        round(top * NESTING_GRID) + 1,
        tuple(on_grid(ring) for ring in (offset(polygon, -SHEET_SLACK) for polygon in blocked) if len(ring)),
        free.area,
    )


@lru_cache(maxsize=64)
def prepared(rings: tuple[tuple[Point, ...], ...]) -> Container:
    """Return the same, remembered: few pages and sheets are packed again and again."""
    return container(rings)


def upright(box: Box) -> Container:
    """Prepare an upright rectangle (mm)."""
    return container((box.corners(),))


def inner_fit(free: Container, piece: IntPath) -> tuple[tuple[int, int, int, int] | None, tuple[IntPath, ...]]:
    """Return where the origin of ``piece`` (bare outline on the grid) may lie.

    That is a rectangle (left, bottom, right, top; None when the piece is too large for it) less the given rings.
    """
    low, high = piece.min(axis=0), piece.max(axis=0)
    room = (
        free.left - int(low[0]),
        free.bottom - int(low[1]),
        free.right - int(high[0]),
        free.top - int(high[1]),
    )
    if room[0] >= room[2] or room[1] >= room[3]:
        return None, ()
    taken: list[IntPath] = []
    for ring in free.blocked:
        taken.extend(no_fit_fixed(ring, piece))
    return room, tuple(taken)


def from_hole(ring: np.ndarray[tuple[int, ...], np.dtype[np.float64]]) -> Container:
    """Prepare a hole (n × 2, mm on the sheet) of a piece that lies on the sheet."""
    return container((tuple((float(x), float(y)) for x, y in ring),))
