"""What a pattern module gives: its registration, and families of lines in mm over the part's box."""

from collections.abc import Callable, Iterable

import numpy as np
import shapely
from numpy.typing import NDArray

from publisher.basics import Box, Finding, Point, Purpose, record
from publisher.geometry.model import ShapeInfo
from publisher.geometry.registry import Values

Array = NDArray[np.float64]
Lines = NDArray[np.object_]  # line strings of the geometry library

JOINT_CLEAR = (
    1.1  # mm that joints keep from every cut: on a template, which is smaller by a pencil, white still prints between
)
PENCIL_APART = 1.0  # mm: lines nearer to each other run together under a pencil of 0.3 to 0.5 mm (common practice)


@record
class Ground:
    """What a pattern is drawn on: the finished piece, the corner where rows begin, the point where a walk round it begins.

    ``origin`` is the left end of the nominal bottom edge (the eave of a roof), before joins take anything off: rows on
    neighbouring walls begin at one height and meet round the corner.
    """

    body: shapely.Geometry
    rim: shapely.LinearRing  # the outside of its largest piece
    origin: Point
    start: Point
    allowance: float  # mm that the template lies inside the piece
    seed: int

    @property
    def box(self) -> Box:
        """The piece's upright box in mm."""
        left, bottom, right, top = (float(v) for v in self.body.bounds)
        return Box(left, bottom, right, top)


@record
class LineFamily:
    """Lines that do not cross each other, so that they can be clipped at once.

    A line whose ``guards`` line does not lie on the piece is left out: it would cut off a sliver at an end or an opening.
    """

    lines: Lines
    guards: Lines | None = None
    purpose: Purpose = Purpose.SURFACE
    clear: float = JOINT_CLEAR


@record
class Pattern:
    """A registered surface pattern. ``lines`` covers the ground's box; ``units`` foresees how many bricks, stones or ticks
    there will be; ``feature`` is the least distance in mm between two lines that these sizes ask for."""

    info: ShapeInfo
    lines: Callable[[Values, Ground], tuple[LineFamily, ...]]
    check: Callable[[Values], Iterable[Finding]]
    units: Callable[[Values, Ground], float]
    feature: Callable[[Values], float]


def segments(ax: Array | float, ay: Array | float, bx: Array | float, by: Array | float) -> Lines:
    """Return straight lines from (ax, ay) to (bx, by), all in mm; the arrays are broadcast and flattened."""
    corners = [np.ravel(v) for v in np.broadcast_arrays(ax, ay, bx, by)]
    lines: Lines = shapely.linestrings(np.stack(corners, axis=1).reshape(-1, 2, 2))
    return lines


def per_area(unit: Callable[[Values], float]) -> Callable[[Values, Ground], float]:
    """Return a forecast of units from the area of one unit in mm²."""
    return lambda values, ground: float(ground.body.area) / unit(values)
