"""How the edge of one panel meets a face of another, or its bevelled edge: measured on both as they stand. Mm, degrees."""

from math import asin, ceil, cos, degrees, floor, radians, tan

import numpy as np
import shapely

from publisher.basics import record, remembered_few
from publisher.basics.wording import say_length
from publisher.geometry import Edge, Part, polygon
from publisher.joints.panels.bent import FAR
from publisher.joints.panels.solids import face_pair
from publisher.joints.panels.space import Array, EdgeLine, PanelFrame

PANEL_TOUCH = 0.05
"""mm: what lies nearer touches. Fits are made and cut no finer."""

BARE = 2.0
"""mm of an edge that its cover may leave bare: twice the step at which it is looked at, and no more than a fillet of glue
bridges (common practice, no source)."""

PLACES_ACROSS = 7
"""Places across the thickness of the edge at which it is looked at, from one rim to the other."""

FLAT = 1.0
"""Degrees: an edge that is more askew to the face touches it along a line, not with its whole thickness."""

NOTHING = shapely.Polygon()
SHARE_DUST = 1e-6
HARDLY = 0.2  # of its thickness: one rim of an edge that a face ends at
EDGE_STEP = 1.0  # mm between the places along the edge, at most


@record
class Touch:
    """An edge under a face: its length where there is board, how much of that the face does not lie over (``bare``), the
    greatest gap where it does (0 where they touch), the angle between both, a point in the middle of the worst place, and the
    share of the edge's width that lies under the face there."""

    length: float
    bare: float
    gap: float
    angle: float
    at: tuple[float, float, float]
    held: float = 0.0

    @property
    def holds(self) -> bool:
        """True when the face touches the whole of the edge, but for what a fillet of glue bridges."""
        return self.gap <= PANEL_TOUCH and self.bare <= BARE + PANEL_TOUCH

    @property
    def bare_words(self) -> str:
        """What is bare, in words: an edge that is not covered at all, or not over its whole thickness."""
        along = f"along {say_length(self.bare)} of its {say_length(self.length)}"
        return f"bare {along}" if self.held < HARDLY else f"held by {self.held:.0%} of its thickness {along}"


@record
class Stretch:
    """What of an edge is looked at: from ``low`` to ``high`` mm along its finished line, without what stands out of it as tabs
    and ``beside`` mm on either side of them."""

    low: float
    high: float
    beside: float | None = None


@record
class BoardFace:
    """A plane face of a panel that an edge may meet: where it lies, and its area in its own x and y. It looks along its z.
    ``open``: where nothing is to meet it, as a way leads through."""

    frame: PanelFrame
    area: shapely.Geometry
    open: shapely.Geometry = NOTHING


@remembered_few
def face_behind(part: Part, frame: PanelFrame, depth: float | None = None, along: Edge | None = None) -> BoardFace:
    """Return the face that a panel turns inwards: its inside face, or the one ``depth`` mm behind the drawn face, where that is bare.

    ``along``: the edge along which another board meets it. Where that edge itself is cut open, as by a door down to the floor,
    nothing is to meet the face.
    """
    outline = part.outline
    depth = part.thickness if depth is None else depth
    pairs = [face_pair(part, ring.points) for ring in (outline.outer, *outline.holes)]
    rings = [pair.outside + depth / part.thickness * (pair.inside - pair.outside) for pair in pairs]
    area = shapely.make_valid(shapely.Polygon(rings[0], rings[1:]))
    # turned about its own x axis, so that it looks inwards
    axes = frame.axes @ np.diag([1.0, -1.0, -1.0])
    ways = NOTHING if along is None else _cut_open(part, along)
    at = PanelFrame(axes, frame.point((0.0, 0.0), depth))
    return BoardFace(at, shapely.transform(area, _mirrored), shapely.transform(ways, _mirrored))


def _cut_open(part: Part, edge: Edge) -> shapely.Geometry:
    """Return the strips of a part's template, across it from an edge, behind the places where the edge has no board."""
    ends = _ends(edge)
    if ends is None:
        return NOTHING
    start, way, size = ends
    inward = np.array([-way[1], way[0]])
    line = shapely.LineString([start + 2 * PANEL_TOUCH * inward, start + size * way + 2 * PANEL_TOUCH * inward])
    gaps = shapely.get_parts(shapely.difference(line, polygon(part.outline)))
    ends_of = [shapely.get_coordinates(gap)[[0, -1]] for gap in gaps if gap.length > PANEL_TOUCH]
    return shapely.union_all([shapely.Polygon([a, b, b + FAR * inward, a + FAR * inward]) for a, b in ends_of])


def _mirrored(points: Array) -> Array:
    return np.asarray(points * np.array([1.0, -1.0]))


def face_of_edge(part: Part, frame: PanelFrame, edge: Edge) -> BoardFace | None:
    """Return the surface of a panel's straight edge, bevelled or square, as far as there is board; it looks out of the panel."""
    ends = _ends(edge)
    if ends is None:
        return None
    start, way, size = ends
    inward = np.array([-way[1], way[0]])
    slant = radians(edge.bevel)
    across = np.array([*(np.sin(slant) * inward), -cos(slant)])  # from the drawn face to the inside face
    along = np.array([*way, 0.0])
    axes = frame.axes @ np.column_stack([across, along, np.cross(across, along)])
    wide = part.thickness / cos(slant)
    places, step = _places(size)
    board = _has_board(part, start + places[:, None] * way, 2 * PANEL_TOUCH * inward)
    strips = [shapely.box(0.0, at - step / 2, wide, at + step / 2) for at in places[board]]
    return BoardFace(PanelFrame(axes, frame.point((float(start[0]), float(start[1])), 0.0)), shapely.union_all(strips))


def corners_of_edge(part: Part, edge: Edge) -> Array | None:
    """Return the corners of a straight edge's surface in the part's coordinates (4, 3): both ends on both faces; None for an arc."""
    ends = _ends(edge)
    if ends is None:
        return None
    _, way, _ = ends
    inward = part.thickness * tan(radians(edge.bevel)) * np.array([-way[1], way[0]])
    rows = [[*point, 0.0] for point in (edge.start, edge.end)]
    rows += [[*(np.asarray(point) + inward), -part.thickness] for point in (edge.start, edge.end)]
    return np.array(rows)


def touch_of(
    face: BoardFace,
    below: Part,
    lower: PanelFrame,
    edge: Edge,
    only: Stretch | None = None,
    may_lean: bool = True,
    share: float = 1.0,
) -> Touch | None:
    """Return how the straight edge of the panel ``below`` meets a face of another panel; None without board.

    The edge is a strip as wide as its board. It is held where its whole width lies under the face, or the ``share`` of it that
    a thinner board can cover; an edge that is askew to the face touches it along a line, which is enough for what rests
    (``may_lean``). Where the strip stands inside the other board it counts as touching: that two boards stand in one place is
    another finding.
    """
    strip = _strip(below, edge, only)
    if strip is None:
        return None
    points, length = strip
    along, across = points.shape[:2]
    here = face.frame.back(lower.carry(points.reshape(-1, 3)))
    gaps = here[:, 2].reshape(along, across)
    area = shapely.buffer(face.area, PANEL_TOUCH)
    shapely.prepare(area)
    over = shapely.contains_xy(area, here[:, 0], here[:, 1]).reshape(along, across)
    slant = _slant(gaps, points)
    askew = may_lean and slant > FLAT
    covered = over.any(axis=1) if askew else over.sum(axis=1) >= floor(share * across + SHARE_DUST)
    if not face.open.is_empty and covered.any():
        free = shapely.contains_xy(face.open, here[:, 0], here[:, 1]).reshape(along, across).any(axis=1) & ~covered
        length *= float((~free).mean())
        points, gaps, over, covered = points[~free], gaps[~free], over[~free], covered[~free]
    near = np.where(over, gaps, np.inf).min(axis=1) if askew else np.where(over, gaps, -np.inf).max(axis=1)
    gap = np.where(covered, np.maximum(near, 0.0), 0.0)
    gap[gap <= PANEL_TOUCH] = 0.0
    worst = int(gap.argmax()) if gap.any() else _middle_of(~covered)
    x, y, z = (float(v) for v in lower.carry(points[worst].mean(axis=0)[None, :])[0])
    bare = length * float((~covered).mean())
    return Touch(length, bare, float(gap.max()), slant, (x, y, z), float(over[worst].mean()))


def stretch_of(edge: Edge, line: EdgeLine, beside: float | None = None) -> Stretch | None:
    """Return what of a finished edge lies along a line beside it, such as the part of it that a join takes."""
    ends = _ends(edge)
    if ends is None:
        return None
    start, way, _ = ends
    middle = float((np.asarray(line.middle) - start) @ way)
    return Stretch(middle - line.length / 2, middle + line.length / 2, beside)


def _ends(edge: Edge) -> tuple[Array, Array, float] | None:
    """Return start, direction and length of a finished straight edge; None for an arc or an edge of no length."""
    start = np.asarray(edge.start)
    way = np.asarray(edge.end) - start
    size = float(np.hypot(*way))
    return None if edge.centre is not None or size < PANEL_TOUCH else (start, way / size, size)


def _places(size: float) -> tuple[Array, float]:
    """Return places along an edge, and how far they lie apart."""
    steps = max(2, ceil(size / EDGE_STEP))
    return (np.arange(steps) + 0.5) * size / steps, size / steps


def _has_board(part: Part, points: Array, away: Array) -> np.typing.NDArray[np.bool_]:
    there = points + away
    return np.asarray(shapely.contains_xy(polygon(part.outline), there[:, 0], there[:, 1]))


@remembered_few
def _strip(part: Part, edge: Edge, only: Stretch | None) -> tuple[Array, float] | None:
    """Return points of an edge's surface in the part's coordinates (along, across, 3), where there is board, and the length."""
    ends = _ends(edge)
    if ends is None:
        return None
    start, way, size = ends
    inward = np.array([-way[1], way[0]])
    at, step = _places(size)
    places = start + at[:, None] * way
    board = _has_board(part, places, 2 * PANEL_TOUCH * inward)
    if only is not None:
        board &= (at > only.low) & (at < only.high)
        if only.beside is not None:
            for aside in (-only.beside, 0.0, only.beside):
                board &= ~_has_board(part, places, aside * way - 2 * PANEL_TOUCH * inward)
    if not board.any():
        return None
    share = np.linspace(0.0, 1.0, PLACES_ACROSS)
    back = part.thickness * tan(radians(edge.bevel)) * share[:, None] * inward
    flat = places[board][:, None, :] + back[None, :, :]
    depth = np.broadcast_to(-part.thickness * share, flat.shape[:2])
    return np.concatenate([flat, depth[:, :, None]], axis=2), float(board.sum()) * step


def _slant(gaps: Array, points: Array) -> float:
    """Return the angle (degrees) between the edge's surface and the face, from how the gap grows along and across."""
    rises = []
    for first, last in ((points[0, 0], points[-1, 0]), (points[0, 0], points[0, -1])):
        rises.append(float(np.linalg.norm(last - first)))
    over = (gaps[-1, 0] - gaps[0, 0], gaps[0, -1] - gaps[0, 0])
    sines = [rise / long for rise, long in zip(over, rises, strict=True) if long > PANEL_TOUCH]
    return degrees(asin(min(1.0, float(np.hypot(*sines)) if len(sines) > 1 else abs(sines[0]) if sines else 0.0)))


def _middle_of(flags: np.typing.NDArray[np.bool_]) -> int:
    """Return the index in the middle of those that are set; of all when none is."""
    found = np.flatnonzero(flags)
    return int(found[len(found) // 2]) if len(found) else len(flags) // 2
