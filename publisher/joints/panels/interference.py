"""Board where other board stands: the solids of placed panels cut by planes inside each other (mm)."""

from collections.abc import Iterable, Iterator
from itertools import pairwise
from math import radians, sin

import numpy as np
import shapely

from publisher.basics import record, remembered
from publisher.geometry import Part, next_of, one_before, polygon, rabbet_strip
from publisher.joints.panels.place import Panel, PanelAssembly
from publisher.joints.panels.solids import FacePair, corners_of, face_pair
from publisher.joints.panels.space import Array, PanelFrame
from publisher.joints.panels.touching import PANEL_TOUCH

DEPTHS = (0.06, 0.5, 0.94)
"""Where a panel is cut, as shares of its thickness: near both faces too, so that a shallow overlap is met."""

LEVELS = 9
"""Lines on which a panel that is bevelled or leans is looked at across its thickness."""

HOLLOW = sin(radians(15.0))
"""Of a corner that reaches into a panel: where it turns by less, as an arc does, board between two lines is straight enough."""

BESIDE_A_CORNER = 1e-4
"""mm: how far on either side of such a corner it is looked at."""


@record
class Clash:
    """Two panels in one place: how thick the overlap is (mm), and a point in the middle of it in the assembly (x, y, z)."""

    a: str
    b: str
    thick: float
    at: tuple[float, float, float]


@record
class _Solid:
    """A placed panel, or a layer of one, ready to be cut: its rings on both faces, whether they differ, its box in space.

    A panel with a rabbet is two layers: the paper of its outside face, and what the rabbet leaves behind it. ``frame`` has
    its origin on the layer's outside; ``top``: how far behind the drawn face that is; ``thick``: of the layer.
    """

    name: str
    part: Part
    frame: PanelFrame
    top: float
    thick: float
    cut: shapely.Geometry
    rings: tuple[FacePair, ...]
    bevelled: bool
    hollows: tuple[Array, Array]  # corners that reach into it (n, 2), on the drawn face and on the inside face
    corners: Array  # (n, 3) in space
    low: Array
    high: Array
    square: shapely.Geometry  # the region at every depth, when no edge is bevelled

    def region(self, depth: float) -> shapely.Geometry:
        """Return what there is of the layer ``depth`` mm behind its outside, in its own coordinates."""
        if not self.bevelled:
            return self.square
        share = (self.top + depth) / self.part.thickness
        rings = [pair.outside + share * (pair.inside - pair.outside) for pair in self.rings]
        made = shapely.Polygon(rings[0], rings[1:])
        sound = made if made.is_valid else shapely.make_valid(made)
        return sound if self.cut.is_empty else shapely.difference(sound, self.cut)

    @property
    def levels(self) -> Array:
        """Levels on which it is looked at where it leans or its sides do, from its outside inward."""
        return np.linspace(0.0, -self.thick, LEVELS)

    def meets(self, frame: PanelFrame, depth: float) -> bool:
        """Tell whether its box comes near the plane ``depth`` mm behind another panel's face."""
        out = frame.outward
        low, high = self.low - frame.origin, self.high - frame.origin
        least, most = np.minimum(out * low, out * high).sum(), np.maximum(out * low, out * high).sum()
        return bool(least <= -depth + PANEL_TOUCH and most >= -depth - PANEL_TOUCH)


@remembered
def _regions(solid: _Solid) -> Array:
    """Return what there is of a solid on each of its levels."""
    return np.array([solid.region(-float(w)) for w in solid.levels])


def _hollows(rings: tuple[FacePair, ...]) -> tuple[Array, Array]:
    """Return the corners that reach into a panel, such as the tip of a notch, as they lie on both faces."""
    outside, inside = [np.empty((0, 2))], [np.empty((0, 2))]
    for place, pair in enumerate(rings):
        way = next_of(pair.outside) - pair.outside
        way = way / np.maximum(np.hypot(way[:, 0], way[:, 1]), 1e-12)[:, None]
        before = one_before(way)
        cross = before[:, 0] * way[:, 1] - before[:, 1] * way[:, 0]
        turns = cross if shapely.is_ccw(shapely.linearrings(pair.outside)) is (place > 0) else -cross
        outside.append(pair.outside[turns > HOLLOW])
        inside.append(pair.inside[turns > HOLLOW])
    return np.vstack(outside), np.vstack(inside)


def _levels_and_regions(solid: _Solid, normal: Array, level: float) -> tuple[Array, Array]:
    """Return the levels on which a plane is looked at and what there is on each: those of the solid, and one on either side of
    where the plane meets a corner that reaches into it. Between two lines far from such a corner the board would be taken to run
    straight through the hollow; along a side of it that lies in the plane, as a valley does, all of it comes at once.
    """
    outside, inside = solid.hollows
    thick, levels = solid.part.thickness, solid.levels
    # the corner at the level w (from the layer's outside): q + s·(i - q), with s = (top - w) / thick; a·u + b·v + c·w = level
    way = (inside - outside) @ normal[:2] / thick
    slope = normal[2] - way
    passed = (level - outside @ normal[:2] - solid.top * way)[np.abs(slope) > 1e-9] / slope[np.abs(slope) > 1e-9]
    passed = np.concatenate([passed - BESIDE_A_CORNER, passed + BESIDE_A_CORNER])
    passed = np.unique(passed[(passed < -1e-6) & (passed > -solid.thick + 1e-6)])
    if not len(passed):
        return levels, _regions(solid)
    between = np.array([solid.region(-float(w)) for w in passed])
    order = np.argsort(-np.concatenate([levels, passed]), kind="stable")
    return np.concatenate([levels, passed])[order], np.concatenate([_regions(solid), between])[order]


def clashes_of(assembly: PanelAssembly) -> tuple[Clash, ...]:
    """Return every pair of panels of an assembly that stand in one place, in the order of the places."""
    return clashes_among((panel.name, panel) for panel in assembly.solid)


def clashes_among(panels: Iterable[tuple[str, Panel]]) -> tuple[Clash, ...]:
    """Return every pair of panels that stand in one place, but for those that are of one thing by the name before each.

    One panel is cut by planes parallel to its faces, and the other's section by the same planes is laid over the cut. For plane
    panels the sections are exact where both are square-edged and upright to each other; else they are taken on nine lines.
    """
    solids = [(of, solid) for of, panel in panels for solid in _solids(panel)]
    found: dict[tuple[str, str], Clash] = {}
    for first, second in _near([solid for _, solid in solids]):
        (thing, one), (other_thing, other) = solids[first], solids[second]
        if thing == other_thing:
            continue
        both = [clash for clash in (_clash(one, other), _clash(other, one)) if clash is not None]
        if both:
            thin = min(
                both, key=lambda clash: clash.thick
            )  # each looks across the other: the smaller is the true thickness
            pair = (one.name, other.name)
            if pair not in found or thin.thick > found[pair].thick:
                found[pair] = Clash(one.name, other.name, thin.thick, thin.at)
    return tuple(found.values())


def _near(solids: list[_Solid]) -> list[tuple[int, int]]:
    """Return the pairs of solids, by their indices, whose boxes are in each other."""
    low = np.array([solid.low for solid in solids]).reshape(-1, 3)
    high = np.array([solid.high for solid in solids]).reshape(-1, 3)
    reaches = (low[:, None] <= high[None] - PANEL_TOUCH).all(axis=2)
    return [(int(i), int(j)) for i, j in np.argwhere(np.triu(reaches & reaches.T, 1))]


def section_of(panel: Panel, frame: PanelFrame, depth: float) -> shapely.Geometry:
    """Return the section of a panel by the plane ``depth`` mm behind another one's face, in that one's coordinates."""
    near = [solid for solid in _solids(panel) if solid.meets(frame, depth)]
    cuts = [cut for solid in near if (cut := _section(solid, frame, depth)) is not None]
    return shapely.union_all(cuts)


@remembered
def _solids(panel: Panel) -> tuple[_Solid, ...]:
    """Return a panel as layers that are the same at every depth but for their bevels."""
    rabbets = [edge for edge in panel.part.edges if edge.rabbet is not None]
    if not rabbets:
        return (_solid(panel, 0.0, panel.part.thickness, shapely.Polygon()),)
    paper = min(edge.rabbet.paper for edge in rabbets if edge.rabbet is not None)
    body = polygon(panel.part.outline)
    strips = shapely.union_all([rabbet_strip(edge, body) for edge in rabbets])
    behind = _solid(panel, paper, panel.part.thickness - paper, strips)
    return (_solid(panel, 0.0, paper, shapely.Polygon()), behind)


def _solid(panel: Panel, top: float, thick: float, cut: shapely.Geometry) -> _Solid:
    outline = panel.part.outline
    rings = tuple(face_pair(panel.part, ring.points) for ring in (outline.outer, *outline.holes))
    corners = panel.frame.carry(corners_of(panel.part))
    bevelled = any(pair.outside is not pair.inside for pair in rings)
    # arcs of a few hundred points are cut many times: a hundredth of a millimetre is a fifth of what counts as a touch
    square = shapely.simplify(polygon(outline), PANEL_TOUCH / 5)
    if not cut.is_empty:
        square = shapely.difference(square, cut)
    shapely.prepare(square)
    low, high = corners.min(axis=0), corners.max(axis=0)
    frame = PanelFrame(panel.frame.axes, panel.frame.origin - top * panel.frame.outward)
    return _Solid(
        panel.name, panel.part, frame, top, thick, cut, rings, bevelled, _hollows(rings), corners, low, high, square
    )


def _clash(cut: _Solid, other: _Solid) -> Clash | None:
    """Cut the first panel at every depth and return the thickest place in which the other stands inside it."""
    worst: Clash | None = None
    there, own = cut.frame.back(other.corners), cut.frame.back(cut.corners)
    low, high = there.min(axis=0) - PANEL_TOUCH, there.max(axis=0) + PANEL_TOUCH
    if np.any(low > own.max(axis=0)) or np.any(high < own.min(axis=0)):
        return None
    for share in DEPTHS:
        depth = share * cut.thick
        if not low[2] <= -depth <= high[2]:
            continue
        strips, region = _strips_cut(other, cut.frame, depth), cut.region(depth)
        strips = strips[shapely.intersects(region, strips)]  # of tabs in slots with play nothing is left
        if not len(strips):
            continue
        common = shapely.intersection(shapely.union_all(strips), region)
        if common.area < PANEL_TOUCH * PANEL_TOUCH:
            continue
        overlap = shapely.buffer(common, -PANEL_TOUCH / 2)
        if overlap.is_empty:
            continue
        for piece in shapely.get_parts(overlap):
            if not isinstance(piece, shapely.Polygon):
                continue
            circle = shapely.maximum_inscribed_circle(piece, 0.02)
            thick = 2.0 * float(shapely.length(circle)) + PANEL_TOUCH
            if worst is None or thick > worst.thick:
                x, y, z = (float(v) for v in cut.frame.point(shapely.get_coordinates(circle)[0], depth))
                worst = Clash(cut.name, other.name, thick, (x, y, z))
    return worst


def _section(solid: _Solid, frame: PanelFrame, depth: float) -> shapely.Geometry | None:
    """Return the section of a solid by the plane ``depth`` mm behind another panel's face, in that panel's coordinates."""
    strips = _strips_cut(solid, frame, depth)
    return shapely.union_all(strips) if len(strips) else None


def _strips_cut(solid: _Solid, frame: PanelFrame, depth: float) -> Array:
    """Return the areas of which such a section is made, side by side; none where the plane passes the solid."""
    # the plane in the solid's coordinates (u, v, w): a·u + b·v + c·w = level
    normal = solid.frame.axes.T @ frame.outward
    level = -depth - float(frame.outward @ (solid.frame.origin - frame.origin))
    a, b, c = (float(n) for n in normal)
    across = float(np.hypot(a, b))
    t = solid.thick
    if across < 1e-6:
        w = level / c
        if not -t + 1e-9 < w < -1e-9:
            return np.array([], dtype=object)
        whole = shapely.transform(solid.region(-w), lambda p: _carried(solid, frame, p, np.full(len(p), w)))
        return np.array([whole], dtype=object)
    square = not solid.bevelled and abs(c) < 1e-9
    levels, regions = (np.array([0.0, -t]), solid.square) if square else _levels_and_regions(solid, normal, level)
    way = np.array([-b, a]) / across
    feet = np.array([a, b]) * (level - c * levels)[:, None] / across**2
    lines = shapely.linestrings(np.stack([feet - 1e5 * way, feet + 1e5 * way], axis=1))
    cuts = shapely.intersection(lines, regions)
    rows = _rows(cuts, feet, way)
    ends = [end for row, pairs in enumerate(pairwise(rows)) for end in _strips(row, *pairs)]
    if not ends:
        return np.array([], dtype=object)
    row, along = np.array([row for row, _ in ends]), np.array([at for _, at in ends])
    corners = feet[row] + along[:, None] * way
    return np.asarray(shapely.polygons(_carried(solid, frame, corners, levels[row]).reshape(-1, 4, 2)))


Pairs = list[tuple[float, float]]


def _rows(cuts: Array, feet: Array, way: Array) -> list[Pairs]:
    """Return for each level where the plane's line runs inside the solid: pairs of places along it, from the line's foot."""
    pieces, of = shapely.get_parts(cuts, return_index=True)
    points, at = shapely.get_coordinates(pieces, return_index=True)
    along = (points - feet[of[at]]) @ way
    low, high = np.full(len(pieces), np.inf), np.full(len(pieces), -np.inf)
    np.minimum.at(low, at, along)
    np.maximum.at(high, at, along)
    rows: list[Pairs] = [[] for _ in feet]
    for row, a, b in zip(of.tolist(), low.tolist(), high.tolist(), strict=True):
        if b - a > 1e-6:
            rows[row].append((a, b))
    return [sorted(own) for own in rows]


def _strips(row: int, upper: Pairs, lower: Pairs) -> Iterator[tuple[int, float]]:
    """Yield the corners of quadrilaterals between a level and the next, four of each: the level, and the place along its line. Ends
    are joined where both levels have as many, else what both have in common is."""
    strips: list[tuple[tuple[float, float], tuple[float, float]]]
    if len(upper) == len(lower):
        strips = list(zip(upper, lower, strict=True))
    else:
        common = [(max(p[0], q[0]), min(p[1], q[1])) for p in upper for q in lower if min(p[1], q[1]) > max(p[0], q[0])]
        strips = [(pair, pair) for pair in common]
    for (a, b), (c, d) in strips:
        yield from ((row, a), (row, b), (row + 1, d), (row + 1, c))


def _carried(solid: _Solid, frame: PanelFrame, flat: Array, w: Array) -> Array:
    """Carry points of the solid (u, v at level w) to the cut panel's plane."""
    return np.asarray(frame.back(solid.frame.carry(np.column_stack([flat, w])))[:, :2])
