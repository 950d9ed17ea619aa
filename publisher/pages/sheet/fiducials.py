"""Fiducial marks: what a photograph or a scan of a page that must print true is fitted from, at its corners and at its sides.

The corner marks, with longer arms, are four of them. The others lie in the strip between the printable limit and what a page may show:
two dashes in a row, so that the gap between them says where along the side their centre is. All are told by middle lines alone: ink that
spreads, or a printer that draws thin, moves both edges of a line and no centre.
"""

from collections.abc import Iterable, Iterator

import shapely

from publisher.basics import Box, FiducialPlace, FiducialPromise, Layer, Path, Point, polyline
from publisher.pages.model import Drawn, Fill, Stroke
from publisher.pages.sheet.draft import Body
from publisher.pages.sheet.page_checks import ink_box
from publisher.pages.type import FRAME, Faces

MARK_ARM = 4.0  # mm, of a corner mark
FIDUCIAL = 8.0  # of each arm of a corner where a page must print true; over both dashes at a side, with their gap
FIDUCIAL_GAP = 1.0  # 12 dots at 300 to the inch
FIDUCIAL_CLEAR = 0.5  # of white round a mark: ink spreads by less than a tenth of that
DECIMALS = 3  # of a mark's place along its side
CORNERS: tuple[FiducialPlace, ...] = ("lower left", "lower right", "upper right", "upper left")
SIDES: tuple[tuple[FiducialPlace, int, int], ...] = (("bottom", 0, 1), ("right", 1, 2), ("top", 3, 2), ("left", 0, 3))


def corner_marks(limit: Box, arm: float = MARK_ARM) -> Stroke:
    """Return an L in each corner of the printable limit; the ink's outer edge lies on the limit, none beyond it."""
    return _drawn(polyline((across, corner, up)) for corner, across, up in _corners(limit, arm))


def fiducials(limit: Box, shown: Iterable[Drawn], faces: Faces, page: int) -> Body:
    """Draw the marks of a page that must print true and promise them; ``shown``: what else it shows.

    Those of the sides stand as near to the middle as they find clear space; one whose side is filled from end to end is left out.
    """
    found = [
        _promise(page, place, corner, ((corner, across), (corner, up)), 0.0)
        for place, (corner, across, up) in zip(CORNERS, _corners(limit, FIDUCIAL), strict=True)
    ]
    shown, corners = tuple(shown), limit.grown(-FRAME.width / 2).corners()
    for place, start, end in SIDES:
        side = (corners[start], corners[end])
        if (centre := _centre(side, shown, faces)) is not None:
            found.append(_promise(page, place, centre, _dashes(side, centre), FIDUCIAL_GAP))
    dashes = _drawn(polyline(line) for mark in found if mark.gap for line in mark.lines)
    return Body((corner_marks(limit, FIDUCIAL), dashes), fiducials=tuple(found))


def _drawn(paths: Iterable[Path]) -> Stroke:
    return Stroke(FRAME, tuple(paths), Layer.PAGE, tag="artifact")


def _corners(limit: Box, arm: float) -> Iterator[tuple[Point, Point, Point]]:
    """Yield of each corner, anticlockwise from the lower left, the centre of its mark and the ends of its level and its upright arm."""
    edge = limit.grown(-FRAME.width / 2)
    for x, y in edge.corners():
        inwards, up = (arm if x == edge.left else -arm), (arm if y == edge.bottom else -arm)
        yield (x, y), (x + inwards, y), (x, y + up)


def _promise(
    page: int, place: FiducialPlace, centre: Point, lines: tuple[tuple[Point, Point], ...], gap: float
) -> FiducialPromise:
    stretches = (tuple(point for line in lines for point in line),) if gap else lines
    clear = tuple(Box.round(points).grown(FRAME.width / 2 + FIDUCIAL_CLEAR) for points in stretches)
    return FiducialPromise(page, place, centre, FIDUCIAL, gap, FRAME.width, lines, clear)


def _dashes(side: tuple[Point, Point], centre: Point) -> tuple[tuple[Point, Point], ...]:
    """Return both dashes of a mark, from the left or from below."""
    (x, y), upright = centre, side[0][0] == side[1][0]
    near, far = FIDUCIAL_GAP / 2, FIDUCIAL / 2
    ends = ((-far, -near), (near, far))
    return tuple(((x, y + a), (x, y + b)) if upright else ((x + a, y), (x + b, y)) for a, b in ends)


def _centre(side: tuple[Point, Point], shown: Iterable[Drawn], faces: Faces) -> Point | None:
    """Return the point of a side nearest to its middle round which a mark has clear space; None where there is none."""
    (x, y), upright = side[0], side[0][0] == side[1][0]
    first, last = (side[0][1], side[1][1]) if upright else (side[0][0], side[1][0])
    corner = FIDUCIAL + FRAME.width / 2  # as far as the ink of its arm may reach
    taken = [(end - corner, end + corner) for end in (first, last)]
    around = FRAME.width / 2 + FIDUCIAL_CLEAR
    strip = Box.round(side).grown(around)
    for box in _in_strip(strip, shown, faces):
        taken.append((box.bottom, box.top) if upright else (box.left, box.right))
    along = _nearest(taken, (first + last) / 2, FIDUCIAL / 2 + around)
    return None if along is None else (x, along) if upright else (along, y)


def _nearest(taken: list[tuple[float, float]], middle: float, room: float) -> float | None:
    """Return the number nearest to the middle that lies ``room`` off all that is taken, between the lowest and the highest of it."""
    first, last = min(a for a, _ in taken), max(b for _, b in taken)
    tried = (middle, *(a - room for a, _ in taken), *(b + room for _, b in taken))
    free = (
        round(at, DECIMALS)
        for at in tried
        if first < at < last and all(at + room <= a + 1e-9 or at - room >= b - 1e-9 for a, b in taken)
    )
    return min(free, key=lambda at: (abs(at - middle), at), default=None)


def _in_strip(strip: Box, shown: Iterable[Drawn], faces: Faces) -> Iterator[Box]:
    """Yield boxes round the ink that shows in a strip: of lines and areas round what lies there, of words and pictures round all."""
    for thing in shown:
        box = ink_box(faces, thing)
        if box is None or box.overlap(strip) <= 0.0:
            continue
        if isinstance(thing, Stroke | Fill):
            yield from _ink_in(strip, thing)
        else:
            yield box


def _ink_in(strip: Box, thing: Stroke | Fill) -> Iterator[Box]:
    half = thing.style.width / 2 if isinstance(thing, Stroke) else 0.0
    room = shapely.box(*(strip if thing.clip is None else strip.common(thing.clip)).grown(half).sides)
    for path in thing.paths:
        points = (*path.points, path.points[0]) if path.closed else path.points
        shape = shapely.LineString(points) if isinstance(thing, Stroke) else shapely.Polygon(points).buffer(0.0)
        shared = shapely.intersection(shape, room)
        yield from (Box(*part.bounds).grown(half) for part in shapely.get_parts(shared) if not part.is_empty)
