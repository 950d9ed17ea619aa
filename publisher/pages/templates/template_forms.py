"""Shapes for the packer: a template bare or with its label beside it, and plain facts about shapes and areas. Millimetres."""

from collections.abc import Iterable
from math import atan2, degrees, hypot

import numpy as np
import shapely

from publisher.basics import Box, Point, Pose, record, remembered_few
from publisher.geometry import Part, polygon
from publisher.pages.templates.labels import Label
from publisher.pages.type import as_polygon

PART_GAP = 3.0  # least paper between two parts
PADDING = 1.2  # mm between the words of a flag and its edge
LEAST_ROOM = 20.0  # mm across of an opening in which other parts may lie
PART_AWAY = 4.0  # least paper between a part and words or furniture that are not its own


@record
class Form:
    """How a sample goes to the packer: its piece at a first turn, and a flag that lies beside the part in that piece."""

    turn: float
    ring: tuple[Point, ...]
    label: Label | None = None
    label_at: Point = (0.0, 0.0)
    holes: tuple[tuple[Point, ...], ...] = ()

    @property
    def shape(self) -> shapely.Polygon:
        """The area that it fills."""
        return shapely.Polygon(self.ring, self.holes)


@record
class Chunk:
    """What shares pages with templates: the ring that it fills, mm from an origin of its own, how much of that in mm² counts, and
    the turns (degrees) at which it may lie."""

    key: str
    ring: tuple[Point, ...]
    area: float
    turns: tuple[float, ...] = (0.0,)


def sides(rectangle: shapely.Geometry) -> tuple[float, float]:
    """Return the two sides of a rectangle that may stand aslant."""
    a, b, c = shapely.get_coordinates(rectangle)[:3]
    return (float(hypot(*(b - a))), float(hypot(*(c - b))))


def reach(shape: shapely.Polygon) -> float:
    """Return the greatest distance between two points of a shape."""
    corners = shapely.get_coordinates(shape.convex_hull.simplify(0.1))
    apart = corners[:, None] - corners[None]
    return float(np.hypot(apart[..., 0], apart[..., 1]).max())


def fits_turned(shape: shapely.Polygon, turns: Iterable[float], wide: float, tall: float) -> bool:
    """Say whether a shape's upright rectangle is no larger than this at one of the turns (degrees)."""
    hull = shapely.get_coordinates(shape.convex_hull)
    angles = np.radians(list(turns))
    across = np.outer(hull[:, 0], np.cos(angles)) - np.outer(hull[:, 1], np.sin(angles))
    up = np.outer(hull[:, 0], np.sin(angles)) + np.outer(hull[:, 1], np.cos(angles))
    return bool(((np.ptp(across, axis=0) <= wide + 1e-6) & (np.ptp(up, axis=0) <= tall + 1e-6)).any())


def holds(free: shapely.Polygon, wide: float, tall: float) -> bool:
    """Say whether an upright rectangle fits into one of the four corners of an area."""
    left, bottom, right, top = free.bounds
    return any(
        free.covers(shapely.box(x, y, x + wide, y + tall)) for x in (left, right - wide) for y in (bottom, top - tall)
    )


def centring(laid: list[shapely.Polygon], free: shapely.Polygon) -> Point:
    """Return the shift (mm) that brings a group of laid pieces nearest to the middle of the free area's rectangle, within it."""
    if not laid:
        return (0.0, 0.0)
    group = shapely.union_all(laid)
    left, bottom, right, top = group.bounds
    a, b, c, d = free.bounds
    x, y = round((a + c - left - right) / 2, 2), round((b + d - bottom - top) / 2, 2)
    ground = _with_rim(free)
    parts = (1.0, 0.8, 0.6, 0.4, 0.2, 0.0)
    for share_x, share_y in sorted(((i, j) for i in parts for j in parts), key=lambda s: -(s[0] + s[1])):
        moved = (x * share_x, y * share_y)
        if ground.covers(shapely.transform(group, lambda p, m=moved: p + m)):
            return moved
    return (0.0, 0.0)


@remembered_few
def _with_rim(free: shapely.Polygon) -> shapely.Geometry:
    """Return a free area with a hair round it: what lies on its border lies in it."""
    ground = free.buffer(0.01, join_style="mitre")
    shapely.prepare(ground)
    return ground


def cover(shape: shapely.Polygon) -> tuple[Point, ...]:
    """Return a ring with few points that covers a shape and is nowhere more than 0.25 mm outside it: quick to pack."""
    rough = shapely.Polygon(shape.exterior).simplify(0.1)
    short = float(shapely.distance(rough, shapely.points(shapely.get_coordinates(shape.exterior))).max())
    if short > 1e-9:
        rough = rough.buffer(short + 1e-3, join_style="mitre", mitre_limit=1.5)
    return tuple((float(x), float(y)) for x, y in rough.exterior.coords[:-1])


def roomy(hole: shapely.Polygon) -> bool:
    """Say whether a part could lie in an opening, by its box."""
    left, bottom, right, top = hole.bounds
    return bool(min(right - left, top - bottom) >= LEAST_ROOM)


def uncovered(hole: shapely.Polygon) -> tuple[Point, ...]:
    """Return a ring with few points that a hole covers and that is nowhere more than 0.25 mm inside it; () where none is left."""
    rough = hole.simplify(0.1).buffer(-0.1, join_style="mitre", mitre_limit=1.5)
    short = (
        float(shapely.distance(hole, shapely.points(shapely.get_coordinates(rough))).max())
        if not rough.is_empty
        else 0.0
    )
    rough = rough.buffer(-short, join_style="mitre", mitre_limit=1.5) if short > 1e-9 else rough
    if not isinstance(rough, shapely.Polygon) or rough.is_empty:
        return ()
    return tuple((float(x), float(y)) for x, y in rough.exterior.coords[:-1])


def beside(part: Part, turn: float, mirrored: bool, labels: tuple[Label, ...]) -> Form:
    """Return the part with its flag close beside it, as one piece: the pair with the least rectangle of all that were tried."""
    shape = polygon(part.template.outer, Pose(turn=turn, mirrored=mirrored))
    left, bottom, right, top = shape.bounds
    best: tuple[float, Label, Box] | None = None
    for label in labels:
        for box in places_round(shape, label.width, label.height, PART_GAP + PADDING):
            size = (max(right, box.right) - min(left, box.left)) * (max(top, box.top) - min(bottom, box.bottom))
            if best is None or size < best[0] - 1e-6:
                best = (size, label, box)
    if best is None:
        raise ValueError("a flag needs at least one block")
    _, label, box = best
    own = as_polygon(box)
    bridge = shapely.shortest_line(own, shape).buffer(1.0, quad_segs=2)
    joined = shapely.union_all([shape, own.buffer(PADDING + PART_AWAY - PART_GAP, join_style="mitre"), bridge])
    return Form(turn, cover(joined), label, (box.left, box.bottom))


def places_round(shape: shapely.Polygon, wide: float, tall: float, gap: float) -> tuple[Box, ...]:
    """Return where a block of words stands ``gap`` mm beside a shape, in line with one of its sides: under it on the left, on its
    right at the top, under it on the right, on its right at the bottom, over it and on its left."""
    left, bottom, right, top = shape.bounds
    found = []
    for x, y, dx, dy in (
        (left, bottom, 0, -1),
        (right, top - tall, 1, 0),
        (right - wide, bottom, 0, -1),
        (right, bottom, 1, 0),
        (left, top, 0, 1),
        (left, top - tall, -1, 0),
    ):
        if dx:
            reached = shapely.clip_by_rect(shape, left - 1.0, y - gap, right + 1.0, y + tall + gap).bounds
            at = (reached[2] + gap if dx > 0 else reached[0] - gap - wide, y)
        else:
            reached = shapely.clip_by_rect(shape, x - gap, bottom - 1.0, x + wide + gap, top + 1.0).bounds
            at = (x, reached[3] + gap if dy > 0 else reached[1] - gap - tall)
        if not np.isnan(reached).any():  # a band beside a small shape may hold nothing of it
            found.append(Box(*at, at[0] + wide, at[1] + tall))
    return tuple(found)


def least_rectangle(part: Part) -> tuple[float, ...]:
    """Return the turns (degrees) that lay the part's least surrounding rectangle along the page's sides."""
    corners = shapely.get_coordinates(shapely.oriented_envelope(polygon(part.template)))
    dx, dy = corners[1] - corners[0]
    turn = -degrees(atan2(dy, dx))
    return tuple(round((turn + quarter) % 360.0, 6) for quarter in (0.0, 90.0, 180.0, 270.0))
