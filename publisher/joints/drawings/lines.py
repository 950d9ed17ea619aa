"""Lines of a drawing in the making: joined, freed of doubles and specks, moved to the lower left corner."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from itertools import pairwise

import numpy as np
import shapely

from publisher.basics import Point
from publisher.joints.model import Drawing, DrawingLabel, DrawnLine
from publisher.joints.outlines import Array

WEIGHTS = (
    *(
        "ghost",
        "hatch",
        "detail",
        "guide",
        "there",
        "there_contour",
        "outline",
        "contour",
        "added",
        "added_contour",
        "ring",
        "behind",
        "leader",
        "cue",
        "head",
    ),
)
"""In the order in which they are drawn."""

AS_THEY_ARE = ("detail", "hatch", "guide", "ring", "behind", "leader", "head")
"""Weights of lines that are not cut where others meet them."""

SNAP = 0.01
"""mm: grid on which ends of lines meet."""

FINEST_CHORD = 3000.0
"""Share of the size of a drawing by which a chord may leave its curve: it is printed at most as wide as a page, where nobody sees it."""

ON_CONTOUR = 0.12
"""mm: a line this near to the border of all that is shown is its contour: of layers that border is drawn in a hair too large."""

SPECK = 0.2
"""mm: visible bits shorter than this come from rounding where two edges cross."""


@dataclass(slots=True)
class Sketch:
    """Lines by weight (shapely lines in drawing coordinates) and labels; ``shapes``: what all that is shown covers, whose border is drawn
    heavier than what lies within."""

    lines: dict[str, list[shapely.Geometry]] = field(default_factory=dict)
    labels: list[tuple[str, float, float]] = field(default_factory=list)
    shapes: list[shapely.Geometry] = field(default_factory=list)

    def add(self, weight: str, geometry: shapely.Geometry) -> None:
        """Add the lines of a geometry."""
        if not geometry.is_empty:
            self.lines.setdefault(weight, []).append(geometry)

    def add_path(self, weight: str, points: Iterable[Point] | Array) -> None:
        """Add one polyline."""
        array = np.asarray(list(points), dtype=np.float64)
        if len(array) >= 2:
            self.add(weight, shapely.LineString(array))

    def label(self, text: str, x: float, y: float) -> None:
        """Add words centred at a point."""
        self.labels.append((text, x, y))


def finish(sketch: Sketch, name: str, alt: str) -> Drawing:
    """Return the sketch as a drawing whose lower left corner is (0, 0); points to a thousandth of a millimetre."""
    drawn = with_contour(sketch)
    merged = {
        weight: tidy(drawn[weight]) if weight in AS_THEY_ARE else merge(drawn[weight])
        for weight in WEIGHTS
        if drawn.get(weight)
    }
    everything = [part for parts in merged.values() for part in parts]
    spots = [(x, y) for _, x, y in sketch.labels]
    boxes = [shapely.total_bounds(np.array(everything))] if everything else []
    boxes += [np.array([x, y, x, y]) for x, y in spots]
    if not boxes:
        return Drawing(name, alt, (), (), 0.0, 0.0)
    box = np.array(boxes)
    left, bottom = float(box[:, 0].min()), float(box[:, 1].min())
    width, height = float(box[:, 2].max()) - left, float(box[:, 3].max()) - bottom
    lines: list[DrawnLine] = []
    sagitta = max(width, height) / FINEST_CHORD
    for weight, parts in merged.items():
        points, of = shapely.get_coordinates(shapely.simplify(np.array(parts), sagitta), return_index=True)
        rounded = (np.round(points - (left, bottom), 3) + 0.0).tolist()
        bounds = np.searchsorted(of, np.arange(len(parts) + 1)).tolist()
        for first, last in pairwise(bounds):
            lines.append(DrawnLine(weight, tuple((x, y) for x, y in rounded[first:last])))
    labels = tuple(DrawingLabel(t, (round(x - left, 3), round(y - bottom, 3))) for t, x, y in sketch.labels)
    return Drawing(name, alt, tuple(lines), labels, round(width, 3), round(height, 3))


def with_contour(sketch: Sketch) -> dict[str, list[shapely.Geometry]]:
    """Return the lines by weight, with those outlines as ``contour`` that lie on the border of all that is shown."""
    lines = dict(sketch.lines)
    if not sketch.shapes or not lines.get("outline"):
        return lines
    rim = shapely.buffer(shapely.boundary(shapely.union_all(np.array(sketch.shapes))), ON_CONTOUR, quad_segs=1)
    shapely.prepare(rim)
    runs = shapely.get_parts(np.array(lines["outline"]))
    points, of = shapely.get_coordinates(runs, return_index=True)
    goes_on = of[1:] == of[:-1]
    segments = shapely.linestrings(np.stack([points[:-1][goes_on], points[1:][goes_on]], axis=1))
    outer = shapely.covers(rim, segments)
    lines["outline"], lines["contour"] = list(segments[~outer]), list(segments[outer])
    return lines


def merge(geometries: list[shapely.Geometry]) -> list[shapely.Geometry]:
    """Return polylines: doubles once, pieces that meet end to end joined, straight runs without points between, no specks."""
    segments = shapely.get_parts(shapely.set_precision(np.array(geometries), SNAP, mode="pointwise"))
    whole = shapely.line_merge(shapely.union_all(segments[shapely.length(segments) > 0]))
    parts = shapely.simplify(shapely.get_parts(whole), SNAP / 2)
    return [part for part in parts[shapely.length(parts) >= SPECK] if shapely.get_num_points(part) >= 2]


def tidy(geometries: list[shapely.Geometry]) -> list[shapely.Geometry]:
    """Return polylines as they are, without specks: the rows of a pattern are not cut where others meet them."""
    parts = shapely.simplify(shapely.get_parts(np.array(geometries)), SNAP)
    return list(parts[shapely.length(parts) >= SPECK])
