"""How each copy of a layout is found on the board with a rule: measures from the sheet's lower left corner.

A copy that stands upright needs two, to its left and to its lower side; one that lies askew two points, each with its own two measures.
Millimetres.
"""

import numpy as np
import shapely

from publisher.basics import MeasurePromise, Pose
from publisher.material.model import Item, Piece
from publisher.material.outlines import turned

READ_TO = 1  # decimals of a measure: a tenth of a millimetre is as much as anyone reads on a rule


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
    hull = shapely.get_coordinates(shapely.convex_hull(shapely.multipoints(ring)))
    first = hull[np.hypot(*(hull - hull.mean(axis=0)).T).argmax()]
    second = hull[np.hypot(*(hull - first).T).argmax()]
    ends = np.array((first, second))
    return tuple(
        _measured((float(x), float(y)), (float(a), float(b)), pose)
        for (x, y), (a, b) in zip(turned(ends, pose.turn, pose.mirrored).tolist(), ends.tolist(), strict=True)
    )


def _measured(at: tuple[float, float], own: tuple[float, float], pose: Pose) -> MeasurePromise:
    return MeasurePromise((round(at[0] + pose.x, READ_TO), round(at[1] + pose.y, READ_TO)), own)
