"""Match marks: on every seam two or more, as far apart as the part allows, clear of its lines. Laid coordinates, mm."""

import shapely

from publisher.basics import Point, record
from publisher.pages.tiles.seams import MARK_RADIUS, OVERLAP, Cell, Cutting

CROSSING = 15.0  # from a crossing of seams to the nearest mark: its name stands between
MIDDLE_MARK_FROM = 150.0  # a seam longer than this gets a third mark


@record
class TileSeam:
    """The common edge of two tiles: ``first`` (left or upper) is glued on, ``second`` is trimmed. ``upright``: x = at."""

    first: Cell
    second: Cell
    upright: bool
    at: float
    low: float
    high: float
    marks: tuple[Point, ...]


def seams(cutting: Cutting, outline: shapely.Polygon, lines: shapely.Geometry) -> tuple[TileSeam, ...]:
    """Return the seams with their match marks, in reading order. ``lines``: marks of the part that match marks keep off."""
    found = []
    edges, quiet = outline.boundary.buffer(MARK_RADIUS + 1.0), lines.buffer(MARK_RADIUS + 0.8)
    for cell in cutting.cells:
        beside = cutting.cell(cell.row, cell.column + 1)
        below = cutting.cell(cell.row + 1, cell.column)
        if beside:
            at = cutting.across[cell.column - 1]
            low, high = _stretch(cell.window.bottom, cell.window.top, cutting.down)
            found.append(_seam(cell, beside, True, at, low, high, outline, edges, quiet))
        if below:
            at = cutting.down[cell.row - 1]
            low, high = _stretch(cell.window.left, cell.window.right, cutting.across)
            found.append(_seam(cell, below, False, at, low, high, outline, edges, quiet))
    return tuple(found)


def _stretch(low: float, high: float, others: tuple[float, ...]) -> tuple[float, float]:
    """Return where along a seam marks may lie: inside the window, off the crossings with other seams."""
    inside = [t for t in others if low < t < high]
    below = [t for t in inside if t - low <= OVERLAP]
    above = [t for t in inside if high - t <= OVERLAP]
    keep = CROSSING
    return (max(below) + keep if below else low + MARK_RADIUS + 0.3), (
        min(above) - keep if above else high - MARK_RADIUS - 0.3
    )


def _seam(
    first: Cell,
    second: Cell,
    upright: bool,
    at: float,
    low: float,
    high: float,
    outline: shapely.Polygon,
    edges: shapely.Geometry,
    quiet: shapely.Geometry,
) -> TileSeam:
    """Return a seam with its marks; ``edges``, ``quiet``: what lies too near to the part's border, and to its lines."""
    ends = ((at, low), (at, high)) if upright else ((low, at), (high, at))
    track = shapely.LineString(ends)
    axis = 1 if upright else 0
    inside = track.intersection(outline)
    spans = (
        _ends(inside.difference(edges).difference(quiet), axis),  # on the part, clear of every line
        _ends(track.difference(edges).difference(quiet), axis),  # beside the part as well
        _ends(inside.difference(edges), axis),
        _ends(track.difference(edges), axis),
        (low, high),
    )
    long_enough = min(25.0, (high - low) / 2)
    span = next((s for s in spans[:2] if s and s[1] - s[0] >= long_enough), None)
    span = span or max((s for s in spans if s), key=lambda s: min(s[1] - s[0], long_enough))
    places = [span[0], span[1]]
    if span[1] - span[0] > MIDDLE_MARK_FROM:
        places.insert(1, _nearest(track.difference(edges).difference(quiet), axis, sum(span) / 2))
    marks = tuple((at, p) if upright else (p, at) for p in places)
    return TileSeam(first, second, upright, at, low, high, marks)


def _ends(track: shapely.Geometry, axis: int) -> tuple[float, float] | None:
    if track.is_empty or track.length < 2 * MARK_RADIUS + 1.0:
        return None
    bounds = track.bounds
    return (bounds[axis], bounds[axis + 2])


def _nearest(track: shapely.Geometry, axis: int, wish: float) -> float:
    at = track.bounds[1 - axis] if not track.is_empty else 0.0
    if track.is_empty:
        return wish
    point = shapely.Point((at, wish) if axis else (wish, at))
    near = shapely.shortest_line(track, point).coords[0]
    return float(near[axis])
