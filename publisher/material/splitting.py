"""Where a part that is too large for the sheets may be split: one straight cut, off its openings, both halves on a sheet.

A proposal in words only: the designer writes it as ``split``, and geometry cuts the pieces and the plate that laps the seam.
"""

from dataclasses import replace

import numpy as np
import shapely

from publisher.basics import record
from publisher.geometry import Part
from publisher.material.fitting import best_turn
from publisher.material.model import Piece
from publisher.material.outlines import FloatPath, solid

LAP = 30.0  # mm; how far a plate behind the joint reaches on either side of it (common practice, no source)
SPLIT_STEP = 1.0  # mm between places looked at


@record
class Split:
    """A cut ``at`` mm from the part's left (``upright``) or lower end, as drawn; anywhere from ``least`` to ``most`` will do.

    ``length``: how long the cut is (mm); a plate of twice ``LAP`` by this laps it.
    """

    upright: bool
    at: float
    least: float
    most: float
    length: float


def propose_split(part: Part, piece: Piece, room: tuple[float, float], frames: tuple[float, ...]) -> Split | None:
    """Return the straight cut nearest the middle whose two sides fit a width × height (mm), off all openings by ``LAP``.

    None when one cut does not do.
    """
    whole = solid(piece.rings[0])
    holes = [np.asarray(ring.points) for ring in part.outline.holes]
    size = np.ptp(np.asarray(piece.rings[0]), axis=0)
    for axis in (0, 1) if size[0] >= size[1] else (1, 0):
        good = _good(piece, whole, holes, axis, room, frames)
        if good:
            low, high = whole.bounds[axis], whole.bounds[axis + 2]
            at = min(good, key=lambda place: (abs(place - (low + high) / 2), place))
            least = most = at
            while round(least - SPLIT_STEP, 6) in good:
                least = round(least - SPLIT_STEP, 6)
            while round(most + SPLIT_STEP, 6) in good:
                most = round(most + SPLIT_STEP, 6)
            cut = whole.intersection(_line(whole, axis, at))
            return Split(axis == 0, at - low, least - low, most - low, float(cut.length))
    return None


def _good(
    piece: Piece,
    whole: shapely.Polygon,
    holes: list[FloatPath],
    axis: int,
    room: tuple[float, float],
    frames: tuple[float, ...],
) -> list[float]:
    """Return the places of a cut across one axis that stay off the openings and leave two sides that fit."""
    low, high = whole.bounds[axis], whole.bounds[axis + 2]
    found = []
    for step in range(1, int((high - low) / SPLIT_STEP)):
        at = round(low + step * SPLIT_STEP, 6)
        if any(ring[:, axis].min() - LAP < at < ring[:, axis].max() + LAP for ring in holes):
            continue
        # a side longer than the sheet's diagonal needs no closer look
        if max(at - low, high - at) > np.hypot(*room):
            continue
        if all(_fits(piece, half, room, frames) for half in _halves(whole, axis, at)):
            found.append(at)
    return found


def _halves(whole: shapely.Polygon, axis: int, at: float) -> tuple[shapely.Geometry, shapely.Geometry]:
    """Return what lies on either side of a cut."""
    left, bottom, right, top = whole.bounds
    if axis == 0:
        return whole.intersection(shapely.box(left, bottom, at, top)), whole.intersection(
            shapely.box(at, bottom, right, top)
        )
    return whole.intersection(shapely.box(left, bottom, right, at)), whole.intersection(
        shapely.box(left, at, right, top)
    )


def _fits(piece: Piece, half: shapely.Geometry, room: tuple[float, float], frames: tuple[float, ...]) -> bool:
    """Say whether one side of a cut is in one piece and fits."""
    if not isinstance(half, shapely.Polygon) or half.is_empty:
        return False
    ring = tuple((float(x), float(y)) for x, y in shapely.get_coordinates(half.exterior)[:-1])
    return best_turn(replace(piece, rings=(ring,)), *room, frames)[1] <= 0.0


def _line(whole: shapely.Polygon, axis: int, at: float) -> shapely.LineString:
    """Return the cut."""
    left, bottom, right, top = whole.bounds
    return shapely.LineString([(at, bottom), (at, top)] if axis == 0 else [(left, at), (right, at)])
