"""Lines at true size on pages, as promises: what a buyer measures, cuts, scores, folds, draws, glues and tapes together by.

Millimetres on the page; page numbers run from 1, the origin of a page is its lower left corner, y upward.
"""

from typing import Literal

from publisher.basics.pose import Box, Point, Pose
from publisher.basics.records import record


@record
class LengthPromise:
    """A straight line that a buyer may measure: from ``start`` to ``end`` (mm on the page), ``length`` apart.

    ``purpose``: ``calibration`` (a side of the box), ``ruler`` (its base line), ``tick`` (a graduation, from the base line
    outwards; ``label`` is the printed number or empty), ``card``, ``gauge``, ``dimension``. ``label`` is the printed text
    that names the length, such as ``50 mm``; proof looks for it near the line.
    """

    page: int
    start: Point
    end: Point
    length: float
    purpose: Literal["calibration", "ruler", "tick", "card", "gauge", "dimension"]
    label: str = ""


@record
class OutlinePromise:
    """One drawn copy of a part's template on one page.

    ``rings`` are closed rings in the part's own coordinates (mm), the first the outside, the others openings;
    ``pose`` carries them to the page. ``window`` is the rectangle of the page in which they are drawn when the part is
    tiled (what lies outside is on other pages); None when the whole part stands on this page.
    ``row`` and ``column`` (from 1, from the top left) name the tile; 0 when the part is not tiled.
    ``width`` (mm) is that of the stroke.
    """

    page: int
    part: str
    letter: str
    copy: int
    pose: Pose
    rings: tuple[tuple[Point, ...], ...]
    window: Box | None = None
    row: int = 0
    column: int = 0
    width: float = 0.5


@record
class MarkPromise:
    """Lines drawn on one copy of a part that are not cut through: to score, fold, draw or glue along.

    ``lines`` are polylines in mm on the page, as drawn: interrupted where words stand, closed ones with their first point
    repeated. ``width`` and ``dash`` (mm, empty when continuous) say by which stroke a reader knows the ``kind``.
    ``window`` is the rectangle of the page in which they show when the part is tiled.
    """

    page: int
    part: str
    copy: int
    kind: str
    lines: tuple[tuple[Point, ...], ...]
    width: float
    dash: tuple[float, ...] = ()
    window: Box | None = None


@record
class SeamPromise:
    """A match mark printed on two neighbouring tiles of a part: the same ``label`` stands beside it on both pages.

    The mark is a circle of ``radius`` mm with a cross through it; its centre is the same point of the part.
    ``at`` are its centres on the two pages, in mm.
    """

    part: str
    copy: int
    label: str
    pages: tuple[int, int]
    at: tuple[Point, Point]
    radius: float


@record
class CompassPromise:
    """A strip that draws a round part instead of a template: a cross at ``pin`` and, at each radius (mm, the outer one first), a
    circle of ``hole`` mm about a point of ``pencils`` (mm on the page); ``ring``: the corners of the strip."""

    page: int
    part: str
    letter: str
    pin: Point
    pencils: tuple[Point, ...]
    radii: tuple[float, ...]
    hole: float
    ring: tuple[Point, ...]
