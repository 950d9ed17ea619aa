"""Bent parts as they stand: strips of flat facets, each as thick as the board, and the curves that they bend along. Mm, degrees."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from math import ceil, cos, degrees, radians, sin

import numpy as np
import shapely

from publisher.basics import Arc, Path, Point, Purpose, polyline, record
from publisher.geometry import BendStretch, Edge, Mark, Part, Region, polygon
from publisher.joints.panels.space import Array, PanelFrame

FACET_TURN = 7.5
"""Degrees from one facet to the next, at most: 0.2 mm of sagitta at a radius of 90 mm, and none at the ends of a facet."""

FACET = ("facet_start", "facet_end")
"""Edges at which facets of one board meet."""

FAR = 1e5  # mm: beyond all parts
AT_END = 1e-6  # mm: an edge this near to where the bends end is an end
LEAST_FACET = 0.5  # mm²: slivers at the ends of a strip


@record
class Curve:
    """The middle of a curved edge: where it is, the way on along it (to its end), and the way into its board, in the plane of its
    part; ``points``: the whole of it, finely flattened."""

    middle: Point
    along: Array
    points: Array

    @property
    def inward(self) -> Array:
        """Unit vector into the board: left of the way along."""
        return np.array([-self.along[1], self.along[0]])


def curve_of(part: Part, name: str) -> Curve | None:
    """Return a curved edge of a part's outside, or None where the part has none of that name."""
    arcs = [edge for edge in part.outline.outer.edges if edge.name == name and isinstance(edge, Arc)]
    if not arcs:
        return None
    points = np.asarray(Path(tuple(arcs), closed=False).points, dtype=np.float64)
    half = sum(arc.length for arc in arcs) / 2.0
    line = shapely.LineString(points)
    at = line.interpolate(0.5, normalized=True)
    for arc in arcs:
        if half < arc.length - 1e-6:
            way = np.asarray(arc.direction((float(at.x), float(at.y))))
            return Curve((float(at.x), float(at.y)), way / np.linalg.norm(way), points)
        if half < arc.length + 1e-6:  # an apex: between both ways
            following = arcs[arcs.index(arc) + 1]
            ways = np.asarray(arc.direction(arc.end)) + np.asarray(following.direction(following.start))
            return Curve(arc.end, ways / np.linalg.norm(ways), points)
        half -= arc.length
    return None


def is_facet(part: Part) -> bool:
    """Tell whether a part is one facet of a bent one."""
    return any(edge.name in FACET for edge in part.edges)


@record
class FacetArc:
    """The stretch of a curved board that a facet stands for: the radius of its outside (mm), its turn (degrees), and how long
    it was on the flat strip, as a share of the facet."""

    radius: float
    turn: float
    share: float

    def behind(self, thickness: float) -> float:
        """Return how far (mm) behind the facet's outside the centre of mass lies. A bend moves board along it, not across, so
        that its middle weighs as an arc does: r·sin(h)/h from the centre of a circle for half a turn of h."""
        half = radians(self.turn) / 2.0
        return self.radius * cos(half) - (self.radius - thickness / 2.0) * sin(half) / half


def arc_of_facet(part: Part) -> FacetArc | None:
    """Return the stretch of a curved board that a part stands for; None for one that is no facet."""
    if not is_facet(part):
        return None
    turn, chord, flat = 2.0 * part.edges[0].bevel, part.edges[1].start[0], part.edges[1].nominal_start[0]
    return FacetArc(chord / (2.0 * sin(radians(turn) / 2.0)), turn, flat / chord)


def facets_of(part: Part, frame: PanelFrame, *, patterned: bool = False) -> tuple[tuple[Part, PanelFrame], ...]:
    """Return a bent part in place as flat facets; the part itself where it is not bent.

    ``patterned``: with what each has of the pattern on its face, for pictures.

    ``frame`` is that of the flat part, which keeps its place in the middle of its length: from there both ends curl to its
    inside. Facets touch the true outside along their upright edges.
    """
    if part.bending is None or not part.bending.bends:
        return ((part, frame),)
    body = polygon(part.outline)
    made: list[tuple[Part, PanelFrame]] = []
    cuts = list(_facets(part.bending.bends, part.bending.keeps, part.thickness))
    for number, (start, end, at, heading, chord, turn) in enumerate(cuts):
        h = radians(heading)
        axes = np.array([[cos(h), 0.0, -sin(h)], [0.0, 1.0, 0.0], [sin(h), 0.0, cos(h)]])
        place = PanelFrame(frame.axes @ axes, frame.carry(np.array([[at[0], 0.0, at[1]]]))[0])
        first, last = number == 0, number == len(cuts) - 1
        cut = _cut(part, body, (start, end), chord, turn, (first, last))
        marks = _pattern(part, start, end, chord) if patterned else ()
        made += [(replace(facet, marks=marks), place) for facet in cut]
    return tuple(made)


def bent_end(part: Part, edge: str) -> PanelFrame | None:
    """Return how an upright end of a bent part lies against its flat frame: as the flat part would lie if it went on straight from
    there. None for an edge that is no end of a bent part."""
    line = part.edge(edge)
    if part.bending is None or not part.bending.bends or line is None or line.centre is not None:
        return None
    bends, (ax, bx) = part.bending.bends, (line.nominal_start[0], line.nominal_end[0])
    at_end = abs(ax - bends[-1].end) < AT_END and abs(bx - bends[-1].end) < AT_END
    if not at_end and not (abs(ax - bends[0].start) < AT_END and abs(bx - bends[0].start) < AT_END):
        return None
    *_, last = facets = list(_facets(bends, part.bending.keeps, part.thickness))
    _, _, (x, z), chordal, chord, turn = last if at_end else facets[0]
    h = radians(chordal - turn / 2.0 if at_end else chordal + turn / 2.0)
    tip = np.array([x, 0.0, z])
    if at_end:
        tip = tip + chord * np.array([cos(radians(chordal)), 0.0, sin(radians(chordal))])
    axes = np.array([[cos(h), 0.0, -sin(h)], [0.0, 1.0, 0.0], [sin(h), 0.0, cos(h)]])
    return PanelFrame(axes, tip - axes @ np.array([ax, 0.0, 0.0]))


def frame_at(part: Part, frame: PanelFrame, edge: str) -> PanelFrame:
    """Return the frame of a panel as its edge lies in it: of a bent one that goes on straight from the end where the edge is."""
    end = bent_end(part, edge)
    return frame if end is None else PanelFrame(frame.axes @ end.axes, frame.carry(end.origin[None, :])[0])


def frame_from(part: Part, at_edge: PanelFrame, edge: str) -> PanelFrame:
    """Return the frame of a panel from that of its edge: the other way round of ``frame_at``."""
    end = bent_end(part, edge)
    if end is None:
        return at_edge
    axes = at_edge.axes @ end.axes.T
    return PanelFrame(axes, at_edge.origin - axes @ end.origin)


def _facets(
    bends: Sequence[BendStretch], keeps: str, thickness: float
) -> Iterator[tuple[float, float, Point, float, float, float]]:
    """Yield for each facet, from the strip's start on: from and to where on the flat strip, where its outside begins (along and out),
    its heading and its own turn in degrees (the hollow side is to the right of the way), its length outside."""
    kept = {"outside": thickness / 2.0, "inside": -thickness / 2.0, "middle": 0.0}[keeps]
    first, last = bends[0].start, bends[-1].end
    middle = (first + last) / 2.0
    steps: list[tuple[float, float, float, float, float]] = []  # start, end, turn, length outside, fold before
    for bend in bends:
        cuts = [bend.start, *([middle] if bend.start + 1e-6 < middle < bend.end - 1e-6 else []), bend.end]
        for a, b in pairwise(cuts):
            turn = degrees((b - a) / (bend.radius + kept))
            count = max(1, ceil(turn / FACET_TURN - 1e-9))
            chord = 2.0 * (bend.radius + thickness / 2.0) * sin(radians(turn / count) / 2.0)
            for k in range(count):
                fold = bend.fold if k == 0 and a == bend.start else 0.0
                steps.append((a + (b - a) * k / count, a + (b - a) * (k + 1) / count, turn / count, chord, fold))
    half = next(i for i, step in enumerate(steps) if step[0] > middle - 1e-6)
    yield from _back(steps[:half], steps[half][4], middle)
    yield from _on(steps[half:], middle)


def _on(
    steps: Sequence[tuple[float, float, float, float, float]], middle: float
) -> Iterator[tuple[float, float, Point, float, float, float]]:
    """Yield the facets from the middle to the end."""
    x, z, heading = middle, 0.0, 0.0
    for number, (start, end, turn, chord, fold) in enumerate(steps):
        heading -= fold / 2.0 if number == 0 else fold
        chordal = heading - turn / 2.0
        yield start, end, (x, z), chordal, chord, turn
        x, z, heading = x + chord * cos(radians(chordal)), z + chord * sin(radians(chordal)), heading - turn


def _back(
    steps: Sequence[tuple[float, float, float, float, float]], fold: float, middle: float
) -> Iterator[tuple[float, float, Point, float, float, float]]:
    """Yield the facets from the start to the middle, found from the middle backwards."""
    x, z, heading = middle, 0.0, fold / 2.0
    made = []
    for start, end, turn, chord, own in reversed(steps):
        chordal = heading + turn / 2.0
        x, z = x - chord * cos(radians(chordal)), z - chord * sin(radians(chordal))
        made.append((start, end, (x, z), chordal, chord, turn))
        heading += turn + own
    yield from reversed(made)


def _cut(
    part: Part, body: shapely.Geometry, flat: tuple[float, float], chord: float, turn: float, ends: tuple[bool, bool]
) -> Iterator[Part]:
    """Yield a facet as a part of its own, its x from 0 to ``chord``, bevelled by half its turn where it meets the next,
    and at the ends of the strip, which stand square to the curve."""
    start, end = flat
    _, low, _, high = body.bounds
    strip = shapely.intersection(body, shapely.box(start, low - 1.0, end, high + 1.0))
    scale = chord / (end - start)
    moved = shapely.transform(strip, lambda xy: np.column_stack([(xy[:, 0] - start) * scale, xy[:, 1]]))
    left, right = (FACET[0] if not ends[0] else "start"), (FACET[1] if not ends[1] else "end")
    edges = (
        _edge(left, (0.0, high), (0.0, low), turn / 2.0, 0.0),
        _edge(right, (chord, low), (chord, high), turn / 2.0, end - start),
    )
    for piece in shapely.get_parts(shapely.orient_polygons(moved)):
        if not isinstance(piece, shapely.Polygon) or piece.area < LEAST_FACET:
            continue
        rings = [
            polyline(tuple(map(tuple, ring.coords[:-1])), True, "facet") for ring in (piece.exterior, *piece.interiors)
        ]
        outline = Region(rings[0], tuple(rings[1:]))
        yield replace(part, outline=outline, template=outline, openings=(), marks=(), edges=edges, bending=None)


def _pattern(part: Part, start: float, end: float, chord: float) -> tuple[Mark, ...]:
    """Return what a facet has of the lines of a pattern, in its own coordinates."""
    own = [mark for mark in part.marks if mark.purpose is Purpose.SURFACE and len(mark.path.points) > 1]
    lines = [shapely.LineString([*mark.path.points, *mark.path.points[: mark.path.closed]]) for mark in own]
    cut = shapely.intersection(lines, shapely.box(start, -FAR, end, FAR)) if own else ()
    made = []
    for mark, pieces in zip(own, cut, strict=True):
        for piece in shapely.get_parts(pieces):
            if isinstance(piece, shapely.LineString) and piece.length > AT_END:
                points = [((x - start) * chord / (end - start), y) for x, y in piece.coords]
                made.append(replace(mark, path=polyline(tuple(points))))
    return tuple(made)


def _edge(name: str, start: Point, end: Point, bevel: float, flat: float) -> Edge:
    """Return an upright edge of a facet; nominally it lies where it was on the flat strip, ``flat`` mm on."""
    return Edge(name, start, end, (flat, start[1]), (flat, end[1]), bevel=bevel)
