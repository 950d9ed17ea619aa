"""Where a part that is too large for the sheets may be split: one straight cut, off its openings, both halves on a sheet.

A proposal in words only: the designer writes it as ``split``, and geometry cuts the pieces and the plate that laps the seam.
"""

from bisect import bisect_left
from dataclasses import replace

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import record
from publisher.geometry import Part, next_of
from publisher.material.fitting import best_turn
from publisher.material.model import Piece
from publisher.material.outlines import FloatPath, simplified, solid

LAP = 30.0  # mm; how far a plate behind the joint reaches on either side of it (common practice, no source)
SPLIT_STEP = 1.0  # mm between places looked at; a place is said in whole ones from the end


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
    outline = np.asarray(piece.rings[0], dtype=np.float64)
    size = np.ptp(outline, axis=0)
    for axis in (0, 1) if size[0] >= size[1] else (1, 0):
        low, high = float(outline[:, axis].min()), float(outline[:, axis].max())
        places: FloatPath = low + SPLIT_STEP * np.arange(1.0, int((high - low) / SPLIT_STEP))
        good = _sound(part, outline, axis, places)
        if not good.any():
            continue
        least, most = _fitting(piece, axis, places, room, frames)
        good &= (np.arange(len(places)) >= least) & (np.arange(len(places)) <= most)
        if good.any():
            off = np.abs(places - (low + high) / 2)
            at = int(np.where(good, np.round(off, 6), np.inf).argmin())
            bad = np.nonzero(~good)[0]
            first = int(bad[bad < at].max(initial=-1)) + 1
            last = int(bad[bad > at].min(initial=len(places))) - 1
            line = np.sort(_crossed(outline, axis, float(places[at])))
            said, lowest, highest = (round(float(places[k]) - low, 6) for k in (at, first, last))
            return Split(axis == 0, said, lowest, highest, float(line[-1] - line[0]))
    return None


def _sound(part: Part, outline: FloatPath, axis: int, places: FloatPath) -> npt.NDArray[np.bool_]:
    """Say for each place of a cut whether it leaves two sides of one piece each, off the openings."""
    ends = np.sort(np.column_stack((outline[:, axis], next_of(outline[:, axis]))), axis=1)
    # a line that crosses the outline twice cuts it in two; with every two crossings more it leaves one piece more
    crossings = np.searchsorted(np.sort(ends[:, 0]), places, "right") - np.searchsorted(
        np.sort(ends[:, 1]), places, "right"
    )
    good = crossings == 2
    for hole in part.outline.holes:
        along = np.asarray(hole.points)[:, axis]
        good &= (places <= along.min() - LAP) | (places >= along.max() + LAP)
    return np.asarray(good)


def _fitting(
    piece: Piece, axis: int, places: FloatPath, room: tuple[float, float], frames: tuple[float, ...]
) -> tuple[int, int]:
    """Return the first and the last place at which both sides of a cut fit: what fits does so wherever less of it is left."""
    shape, short = simplified(solid(piece.rings[0]))
    outline = shapely.get_coordinates(shape.exterior)[:-1]
    inside = (room[0] - 2 * short, room[1] - 2 * short)

    def fits(number: int, upper: bool) -> bool:
        place = float(places[number])
        side = outline[:, axis] > place if upper else outline[:, axis] < place
        ends = np.full((2, 2), place)
        crossed = _crossed(outline, axis, place)
        ends[:, 1 - axis] = crossed.min(initial=np.inf), crossed.max(initial=-np.inf)
        hull = shapely.convex_hull(shapely.multipoints(np.concatenate((outline[side], ends))))
        ring = tuple((float(x), float(y)) for x, y in shapely.get_coordinates(hull)[:-1])
        return best_turn(replace(piece, rings=(ring,)), *inside, frames)[1] <= 0.0

    numbers = range(len(places))
    least = bisect_left(numbers, True, key=lambda number: fits(number, upper=True))
    most = bisect_left(numbers, True, key=lambda number: not fits(number, upper=False)) - 1
    return least, most


def _crossed(outline: FloatPath, axis: int, place: float) -> FloatPath:
    """Return where an outline crosses a cut, along the cut."""
    after = next_of(outline)
    start, end = outline[:, axis], after[:, axis]
    hit = (np.minimum(start, end) <= place) & (np.maximum(start, end) > place)
    share = (place - start[hit]) / (end[hit] - start[hit])
    return np.asarray(outline[hit, 1 - axis] + share * (after[hit, 1 - axis] - outline[hit, 1 - axis]))
