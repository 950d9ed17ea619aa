"""What shows in a box of a page: shared by the checks of furniture and page code."""

from collections.abc import Callable, Iterable

from shapely import LineString, MultiPoint
from shapely import box as shapely_box

from publisher.basics import Box
from publisher.proof.reading import Array, PaintedPath

BOX_TOUCH = 0.1  # mm by which boxes may reach into each other
PAPER = 0.97  # grey that a scanner takes for paper


def meets(one: Box, two: Box) -> bool:
    """Say whether two boxes reach into each other."""
    return one.overlap(two) > BOX_TOUCH


def lines_meet(piece: PaintedPath, room: Box) -> bool:
    """Say whether a stroke shows inside a box."""
    half = piece.widest / 2
    return piece.box.overlap(room.grown(half)) >= 0.0 and any(line_meets(line, half, room) for line in piece.lines())


def line_meets(line: Array, half: float, room: Box) -> bool:
    """Say whether a polyline, ``half`` mm thick to each side, shows inside a box."""
    inner = room.grown(half - BOX_TOUCH)
    if len(line) < 2 or inner.width <= 0 or inner.height <= 0:
        return False
    (left, bottom), (right, top) = line.min(axis=0), line.max(axis=0)
    if left > inner.right or right < inner.left or bottom > inner.top or top < inner.bottom:
        return False
    return bool(LineString(line).intersects(shapely_box(*inner.sides)))


def crowded(
    pieces: Iterable[PaintedPath],
    others: tuple[tuple[int, Box], ...],
    room: Box,
    own: Callable[[PaintedPath], bool] = lambda _: False,
) -> bool:
    """Say whether anything shows in a box: of lines and areas those that are not its ``own``, pictures and letters (``others``)."""
    return any(meets(box, room) for _, box in others) or any(
        _shows(piece, room) and not own(piece) for piece in pieces if piece.visible
    )


def _shows(piece: PaintedPath, room: Box) -> bool:
    seen = room.common(piece.clip.box)
    if min(seen.width, seen.height) <= BOX_TOUCH:
        return False
    dark = piece.fill_grey is not None and piece.fill_grey < PAPER and meets(piece.box, seen)
    line = piece.grey is not None and piece.grey < PAPER and lines_meet(piece, seen)
    return line or (dark and any(_area_meets(ring, seen) for ring in piece.lines()))


def _area_meets(ring: Array, room: Box) -> bool:
    """Say whether one of the areas of a path, all within its corners, shows inside a box: both heads of a long arrow are one path."""
    inner = room.grown(-BOX_TOUCH)
    return bool(MultiPoint(ring).convex_hull.intersects(shapely_box(*inner.sides)))
