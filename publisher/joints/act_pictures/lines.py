"""The lines of an act on the paper: what of both groups is seen, its outer edges apart, the signs of both faces, guide lines. Mm."""

from collections.abc import Sequence
from math import hypot

import numpy as np
import shapely

from publisher.basics import record
from publisher.joints.act_pictures.faces import pattern_lines
from publisher.joints.act_pictures.sight import Sight
from publisher.joints.drawings import SPECK, FrontFaces, Solids, merge, visible
from publisher.joints.outlines import Array

WeightedLines = dict[str, list[shapely.Geometry]]

ON_OUTER_EDGE = 0.06
"""mm of the paper: a line this near to the border of all that is shown of a group is its outer edge."""

CLOSES = {"added_contour": 0.75, "added": 0.55, "there_contour": 0.45, "there": 0.4}
"""mm of the paper: a finer line whose middle runs all along nearer than this to a line of this kind would close up with it: half of
both widths and 0.25 mm of white, which 1 bit at 300 dots to the inch still shows."""

SMOOTH = 0.04
"""mm of the paper: how far a drawn chord leaves its curve, at most."""

HATCH_EVERY = 1.6
"""mm of the paper between two rows of strokes: with strokes of 0.18 mm more than nine tenths stay white."""

LEAST_HATCHED = 25.0
"""mm² of the paper: a smaller face has no strokes."""

GUIDES = 4
"""Guide lines at most."""

GUIDES_APART, GUIDES_FAR = 2.0, 8.0
"""mm of the paper between the two outermost guide lines, and from these to more of them."""

LEAST_GUIDE = 3.0
"""mm of the paper: a shorter way needs no guide line."""


@record
class Fitted:
    """How a sight is carried to the paper: ``scale`` times a point, plus ``by`` (2,)."""

    scale: float
    by: Array

    def at(self, points: Array) -> Array:
        """Carry points (n, 2 or 3); depths are scaled with them."""
        carried = np.asarray(points, dtype=np.float64) * self.scale
        carried[..., :2] += self.by
        return carried

    def carry(self, geometry: shapely.Geometry) -> shapely.Geometry:
        """Carry a plane geometry."""
        return shapely.transform(geometry, self.at)

    def back(self, geometry: shapely.Geometry) -> shapely.Geometry:
        """Carry a plane geometry of the paper to the sight."""
        return shapely.transform(geometry, lambda xy: (xy - self.by) / self.scale)


@record
class Shapes:
    """All that is covered by what stands, and by what is added where it is held, in drawing coordinates or on the paper."""

    there: shapely.Geometry
    new: shapely.Geometry

    @property
    def both(self) -> shapely.Geometry:
        """Both together."""
        return shapely.union(self.there, self.new)

    def carried(self, fitted: Fitted) -> "Shapes":
        """Return them on the paper."""
        return Shapes(fitted.carry(self.there), fitted.carry(self.new))


def shapes_of(sight: Sight) -> Shapes:
    """Return what both groups of a sight cover."""
    there = shapely.union_all(np.array(sight.there.areas)) if sight.there.areas else shapely.Polygon()
    return Shapes(there, moved(shapely.union_all(np.array(sight.new.areas)), sight.shift))


def moved(geometry: shapely.Geometry, by: Array) -> shapely.Geometry:
    """Return a plane geometry moved by the first two of a vector."""
    return shapely.transform(geometry, lambda xy: xy + by[:2])


def seen_lines(sight: Sight, fitted: Fitted, shapes: Shapes, *, near: shapely.Geometry | None = None) -> WeightedLines:
    """Return the visible lines on the paper by weight; ``shapes`` are those on the paper. ``near``: only what lies in this area of the
    paper, without guide lines and signs of faces."""
    areas, planes, edges = _shifted(sight.new, sight.shift)
    faces = FrontFaces(np.array([*sight.there.areas, *areas]), np.array([*sight.there.planes, *planes]).reshape(-1, 3))
    groups = [("there", sight.there.edges), ("added", edges)]
    groups.append(("detail", [*sight.there_marks, *(lines + sight.shift for lines in sight.new_marks)]))
    if near is None:
        groups.append(("guide", _guides(sight, fitted)))
        groups.append(("hatch", _strokes(sight.there_inside, sight.there.areas, sight.there.planes, fitted)))
        groups.append(("hatch", _strokes(sight.new_inside, areas, planes, fitted)))
        axes = sight.view.axes()
        groups.append(("pattern", pattern_lines(sight.scene.before, axes, fitted.scale)))
        patterns = pattern_lines(sight.scene.added, axes, fitted.scale)
        groups.append(("pattern", [lines + sight.shift for lines in patterns]))
    stacks = [(name, np.vstack([e for e in own if len(e)])) for name, own in groups if any(len(e) for e in own)]
    if not stacks:
        return {}
    every = np.vstack([stack for _, stack in stacks])
    group = np.repeat([name for name, _ in stacks], [len(stack) for _, stack in stacks])
    wanted = np.hypot(*(every[:, 1] - every[:, 0])[:, :2].T) > 1e-6
    if near is not None:
        back = fitted.back(near)
        shapely.prepare(back)
        wanted &= shapely.intersects(back, shapely.linestrings(every[:, :, :2]))
        front = shapely.intersects(back, faces.areas)
        faces = FrontFaces(faces.areas[front], faces.planes[front])
    lines, owner = visible(every[wanted], faces)
    kept = group[wanted][owner]
    on_paper = shapely.linestrings(fitted.at(lines)) if len(lines) else np.array([], dtype=object)
    shown: WeightedLines = {}
    for name, shape in (("there", shapes.there), ("added", shapes.new)):
        own = on_paper[kept == name]
        rim = shapely.buffer(shapely.boundary(shape), ON_OUTER_EDGE, quad_segs=1)
        shapely.prepare(rim)
        outer = shapely.covers(rim, own)
        shown[f"{name}_contour"] = _smooth(own[outer])
        shown[name] = _smooth(own[~outer])
    shown = opened(shown)
    for weight in ("guide", "hatch", "pattern"):
        own = on_paper[kept == weight]
        shown[weight] = list(own[shapely.length(own) > 4 * SPECK])
    shown["pattern"] = merge(shown["pattern"])
    shown["detail"] = _smooth(on_paper[kept == "detail"])
    return shown


def _smooth(lines: Array) -> list[shapely.Geometry]:
    """Return lines joined, without points that nobody sees; a loop so small that it shrinks to a dot goes with them."""
    if not len(lines):
        return []
    smooth = shapely.simplify(np.array(merge(list(lines))), SMOOTH)
    return list(smooth[shapely.length(smooth) >= SPECK])


def opened(shown: WeightedLines) -> WeightedLines:
    """Return the lines without those that would close up with heavier or longer ones beside them."""
    kept: WeightedLines = {}
    covers: list[shapely.Geometry] = []
    for weight, clear in CLOSES.items():
        own = np.array(sorted(shown.get(weight, []), key=shapely.length, reverse=True), dtype=object)
        for cover in covers:
            own = own[~shapely.covers(cover, own)]
        kept[weight] = free = list(own)
        if free:
            wide = shapely.buffer(shapely.union_all(np.array(free)), clear, quad_segs=2, cap_style="flat")
            shapely.prepare(wide)
            covers.append(wide)
    return kept


def _shifted(solids: Solids, by: Array) -> tuple[list[shapely.Geometry], list[Array], list[Array]]:
    """Return areas, planes and edges of solids moved by a vector in drawing coordinates."""
    if not solids.areas:
        return [], [], []
    planes = [np.array([p, q, r + by[2] - p * by[0] - q * by[1]]) for p, q, r in solids.planes]
    areas = list(shapely.transform(np.array(solids.areas), lambda xy: xy + by[:2]))
    return areas, planes, [edges + by for edges in solids.edges]


def _strokes(
    insides: Sequence[int], areas: Sequence[shapely.Geometry], planes: Sequence[Array], fitted: Fitted
) -> list[Array]:
    """Return the lines (m, 2, 3), to be broken into short strokes, on those of the faces that are insides, where they are large."""
    found: list[Array] = []
    every = HATCH_EVERY / fitted.scale
    for main in insides:
        p, q, r = planes[main]
        area = areas[main]
        if shapely.area(area) * fitted.scale**2 < LEAST_HATCHED:
            continue
        left, bottom, right, top = shapely.bounds(area)
        sums = np.arange(np.ceil((left + bottom) / every), np.floor((right + top) / every) + 1) * every
        rising = shapely.linestrings([((s - top, top), (s - bottom, bottom)) for s in sums])
        parts = shapely.get_parts(shapely.intersection(rising, shapely.buffer(area, -0.35 / fitted.scale)))
        parts = parts[(shapely.get_type_id(parts) == 1) & ~shapely.is_empty(parts)]
        if len(parts):
            first, last = (shapely.get_coordinates(shapely.get_point(parts, at)) for at in (0, -1))
            ends = np.stack([first, last], axis=1)
            found.append(np.dstack([ends, ends[:, :, 0] * p + ends[:, :, 1] * q + r]))
    return found


def _guides(sight: Sight, fitted: Fitted) -> list[Array]:
    """Return lines (1, 2, 3) from corners of what is held off to where they go: the outermost ones on both sides of the way."""
    goal = sight.goal
    flat = hypot(*sight.way[:2])
    if not len(goal) or sight.held * fitted.scale * flat < LEAST_GUIDE:
        return []
    side = goal[:, :2] @ np.array([-sight.way[1], sight.way[0]]) / flat * fitted.scale
    near = goal[:, 2]
    chosen: list[int] = []
    for end in (side.min(), side.max()):  # of the corners at an end the one nearest to the viewer
        at_end = np.flatnonzero(np.abs(side - end) < 0.8)
        best = int(at_end[near[at_end].argmax()])
        if all(abs(side[best] - side[i]) > GUIDES_APART for i in chosen):
            chosen.append(best)
    if len(chosen) == 2:  # and between them, where it is far
        low, high = float(side[chosen].min()), float(side[chosen].max())
        for share in (1 / 3, 2 / 3):
            best = int((np.abs(side - (low + share * (high - low))) - 0.01 * near).argmin())
            if all(abs(side[best] - side[i]) > GUIDES_FAR for i in chosen) and len(chosen) < GUIDES:
                chosen.append(best)
    before = np.array([0.0, 0.0, 0.3])  # a hair towards the viewer: a corner on a face is seen
    return [np.array([[goal[i] + sight.shift + before, goal[i] + before]]) for i in chosen]
