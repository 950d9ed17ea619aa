"""What shows in a box of a page: shared by the checks of furniture and page code."""

from shapely import LineString
from shapely import box as shapely_box

from publisher.basics import Box
from publisher.proof.reading import Array, PaintedPath

BOX_TOUCH = 0.1  # mm by which boxes may reach into each other
PAPER = 0.97  # grey that a scanner takes for paper


def meets(one: Box, two: Box) -> bool:
    """Say whether two boxes reach into each other."""
    return (
        min(one.right, two.right) - max(one.left, two.left) > BOX_TOUCH
        and min(one.top, two.top) - max(one.bottom, two.bottom) > BOX_TOUCH
    )


def overlap(one: Box, two: Box) -> bool:
    """Say whether two boxes have a point in common."""
    return one.left <= two.right and two.left <= one.right and one.bottom <= two.top and two.bottom <= one.top


def holds(room: Box, box: Box) -> bool:
    """Say whether a box lies in another."""
    return (
        box.left >= room.left - BOX_TOUCH
        and box.bottom >= room.bottom - BOX_TOUCH
        and box.right <= room.right + BOX_TOUCH
        and box.top <= room.top + BOX_TOUCH
    )


def common(one: Box, two: Box) -> Box | None:
    """Return what two boxes share; None when they share nothing."""
    left, bottom = max(one.left, two.left), max(one.bottom, two.bottom)
    right, top = min(one.right, two.right), min(one.top, two.top)
    return Box(left, bottom, right, top) if left < right and bottom < top else None


def lines_meet(piece: PaintedPath, room: Box) -> bool:
    """Say whether a stroke shows inside a box."""
    half, all_of_it = piece.widest / 2, piece.box()
    if not overlap(all_of_it, room.grown(half)):
        return False
    return any(line_meets(line, half, room) for line in piece.lines())


def line_meets(line: Array, half: float, room: Box) -> bool:
    """Say whether a polyline, ``half`` mm thick to each side, shows inside a box."""
    inner = room.grown(half - BOX_TOUCH)
    if len(line) < 2 or inner.width <= 0 or inner.height <= 0:
        return False
    return bool(LineString(line).intersects(shapely_box(inner.left, inner.bottom, inner.right, inner.top)))
