"""How each copy of a layout is found on the board with a rule: measures from the sheet's lower left corner.

A copy that stands upright needs two, to its left and to its lower side; one that lies askew two points, each with its own two measures.
They are rounded as far as a layout bears: laid by the rounded ones, nothing lies over anything else, and no straight cut runs into
a piece. Millimetres.
"""

from collections.abc import Callable, Sequence
from math import atan2, degrees, radians

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import CutPromise, CutReading, MeasurePromise, Point, Pose, record, remembered
from publisher.basics.units import INCH_MM
from publisher.design import SheetSize
from publisher.geometry import next_of, one_before
from publisher.material.judge import LAYOUT_TOLERANCE, Laid, polygons
from publisher.material.model import Item, Piece
from publisher.material.outlines import turned
from publisher.material.read_cuts import read_cuts, with_readings

READ_TO = 1  # decimals of a measure: a tenth of a millimetre is as much as anyone reads on a rule
LEAST_CORNER = 25.0  # degrees: an outline that turns less at a point has no corner there that is seen
FAR_CORNERS = 0.4  # of the length of a piece: corners so far from each other show how it lies
STEPS_MM = (0.5, 0.1)  # of rules in millimetres, the one that is easiest to read first
PARTS_OF_INCH = (32, 64, 100)  # of rules in inches, likewise


def measures_of(piece: Piece, item: Item, upright: bool) -> tuple[MeasurePromise, ...]:
    """Return the points by which a copy is marked out: the lower left corner of its upright box as it lies, or two corners of its
    outline far from each other."""
    pose = item.pose
    ring = np.asarray(piece.rings[0], dtype=np.float64)
    laid = turned(ring, pose.turn, pose.mirrored)
    if upright:
        corner = laid.min(axis=0)
        ((across, up),) = turned(corner[None], -pose.turn).tolist()
        own = (-across if pose.mirrored else across, up)
        return (_measured((float(corner[0]), float(corner[1])), own, pose),)
    first, second = _far_points(piece.rings[0])
    ends = np.array((first, second))
    return tuple(
        _measured((float(x), float(y)), (float(a), float(b)), pose)
        for (x, y), (a, b) in zip(turned(ends, pose.turn, pose.mirrored).tolist(), ends.tolist(), strict=True)
    )


@remembered
def _far_points(points: tuple[Point, ...]) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
    """Return two points of a ring far from each other: two of its corners, which are found on a template without measuring, or, where
    all of them lie near to each other, any two points of its hull."""
    ring = np.asarray(points, dtype=np.float64)
    hull = shapely.get_coordinates(shapely.convex_hull(shapely.multipoints(ring)))
    before, after = ring - one_before(ring), next_of(ring) - ring
    turns = np.arctan2(before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0], (before * after).sum(axis=1))
    corners = ring[np.abs(turns) >= radians(LEAST_CORNER)]
    ends = _farthest(hull)
    if len(corners) > 1:
        own = _farthest(corners)
        if np.hypot(*(own[1] - own[0])) >= FAR_CORNERS * np.hypot(*(ends[1] - ends[0])):
            return own
    return ends


def _farthest(points: npt.NDArray[np.float64]) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
    """Return the point farthest from the middle of all, and the one farthest from it."""
    first = points[np.hypot(*(points - points.mean(axis=0)).T).argmax()]
    return first, points[np.hypot(*(points - first).T).argmax()]


def _measured(at: tuple[float, float], own: tuple[float, float], pose: Pose) -> MeasurePromise:
    return MeasurePromise((round(at[0] + pose.x, READ_TO), round(at[1] + pose.y, READ_TO)), own)


def laid_by(measures: Sequence[MeasurePromise], pose: Pose, step: float) -> Pose:
    """Return the pose of a copy that is laid by its measures, each read to ``step`` mm; how it is turned, if it stands upright, and
    whether it is mirrored is seen in the picture."""
    at = [_read(measure.at, step) for measure in measures]
    own = [measure.own for measure in measures]
    turn = pose.turn
    if len(measures) == 2:
        (ax, ay), (bx, by) = (Pose(mirrored=pose.mirrored).apply(point) for point in own)
        turn = degrees(atan2(at[1][1] - at[0][1], at[1][0] - at[0][0]) - atan2(by - ay, bx - ax))
    return Pose.carrying(own[0], at[0], turn, pose.mirrored)


def _read(at: Point, step: float) -> Point:
    return (round(at[0] / step) * step, round(at[1] / step) * step)


@record
class Readable:
    """How finely a layout is read: to ``step_mm``, or on a rule that parts an inch into ``parts_of_inch``; its ``cuts`` as they are then
    printed."""

    step_mm: float
    parts_of_inch: int
    cuts: tuple[CutPromise, ...]


def readable(
    pieces: Sequence[Piece],
    items: Sequence[Item],
    measures: Sequence[tuple[MeasurePromise, ...]],
    sheet: SheetSize,
    cuts: Sequence[CutPromise],
) -> Readable:
    """Return the coarsest steps to which measures and cuts can be read so that the layout still holds, or the finest where none does."""
    over = LAYOUT_TOLERANCE
    room = shapely.box(-over, -over, sheet.width + over, sheet.height + over)
    boxes = shapely.bounds(polygons(pieces, items)) if items else np.empty((0, 4))

    def read(step: float) -> tuple[tuple[CutReading, ...], bool]:
        laid = tuple(
            Item(item.part, item.copy, laid_by(own, item.pose, step)) for item, own in zip(items, measures, strict=True)
        )
        shapes = polygons(pieces, laid)
        readings, clear = read_cuts(cuts, boxes, shapely.bounds(shapes).reshape(-1, 4), step)
        return readings, clear and bool(shapely.covers(room, shapes).all()) and _apart(shapes)

    metric, first = _coarsest(STEPS_MM, read)
    imperial, second = _coarsest([INCH_MM / parts for parts in PARTS_OF_INCH], read)
    return Readable(STEPS_MM[first], PARTS_OF_INCH[second], with_readings(cuts, metric, imperial))


def _coarsest(
    steps: Sequence[float], read: Callable[[float], tuple[tuple[CutReading, ...], bool]]
) -> tuple[tuple[CutReading, ...], int]:
    """Return the cuts as they are read to the first of the steps by which all holds, or to the last, and the step's number."""
    for number, step in enumerate(steps[:-1]):
        readings, holds = read(step)
        if holds:
            return readings, number
    return read(steps[-1])[0], len(steps) - 1


def _apart(shapes: Laid) -> bool:
    """Say whether no shape lies over another."""
    one, two = shapely.STRtree(shapes).query(shapes, predicate="intersects")
    first, second = one[one < two], two[one < two]
    shared = shapely.area(shapely.intersection(shapes[first], shapes[second]))
    return bool((shared <= LAYOUT_TOLERANCE * shapely.length(shapes[first])).all())
