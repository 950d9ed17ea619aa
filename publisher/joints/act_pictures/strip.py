"""A part that is bent as it is put: the flat strip that it is before, with its slits and arrows that show which way it curls. Mm."""

from dataclasses import dataclass

import numpy as np
import shapely

from publisher.basics import Box, Purpose
from publisher.geometry import Part, polygon
from publisher.joints.act_pictures.lines import WeightedLines, opened
from publisher.joints.act_pictures.scene import Solid
from publisher.joints.act_pictures.signs import head
from publisher.joints.drawings import Sketch, View, merge, solids_of, visible
from publisher.joints.outlines import Array
from publisher.joints.panels import PanelFrame

STRIP_WIDE = 26.0
"""mm of the paper that a strip takes at most."""

CURL = 0.2
"""Radius of an arrow that shows how an end curls, as a share of the length of the strip."""

CURLED = 185.0
"""Degrees through which it runs."""

SLITS_APART = 0.7
"""mm of the paper between two slits that are drawn: of closer ones only every so many are."""


@dataclass(slots=True)
class StripSketch:
    """A strip on paper: its lines by weight, its arrows, with its lower left corner at (0, 0), and its size."""

    lines: WeightedLines
    arrows: list[Array]
    size: tuple[float, float]

    def put(self, sketch: Sketch, box: Box) -> None:
        """Add it to a sketch at the lower left corner of a box."""
        by = np.array([box.left, box.bottom])
        for weight, lines in self.lines.items():
            for line in lines:
                sketch.add(weight, shapely.transform(line, lambda xy: xy + by))
        for arrow in self.arrows:
            sketch.add_path("cue", arrow[:-4] + by)
            head(sketch, arrow[-1] + by, arrow[-1] - arrow[-5])


def strip_sketch(solid: Solid, view: View) -> StripSketch:
    """Return a flat strip with its inside up, as it is seen from a view, with an arrow at each end."""
    part = solid.part
    left, low, right, high = (float(v) for v in shapely.bounds(polygon(part.outline)))
    frame = PanelFrame(
        np.diag([1.0, -1.0, -1.0]), np.array([0.0, 0.0, -part.thickness])
    )  # turned over about its x axis
    view = View(view.turned, max(abs(view.above), 24.0))
    axes = view.axes()
    solids = solids_of([(part, frame)], view, slots=True, surface=False)
    edges = np.vstack([e for e in solids.edges if len(e)])
    lines, _ = visible(edges, solids.faces())
    slits = [axes @ point for point in _slits(part, frame)]
    arrows = [
        _curl(x, way, (low + high) / 2, CURL * (right - left)) @ axes.T for x, way in ((left, 1.0), (right, -1.0))
    ]
    every = np.vstack([lines.reshape(-1, 2), *(arrow[:, :2] for arrow in arrows)])
    corner, far = every.min(axis=0), every.max(axis=0)
    scale = STRIP_WIDE / float(far[0] - corner[0])
    margin = 1.6  # for the heads of arrows

    def carried(points: Array) -> Array:
        return np.asarray((points[..., :2] - corner) * scale + margin)

    outline = merge([shapely.LineString(line) for line in carried(lines)])
    shown = opened({"added": outline})
    shown["detail"] = _spread([carried(np.array(slit)) for slit in zip(slits[::2], slits[1::2], strict=True)])
    size = (STRIP_WIDE + 2 * margin, float(far[1] - corner[1]) * scale + 2 * margin)
    return StripSketch(shown, [carried(arrow) for arrow in arrows], size)


def _slits(part: Part, frame: PanelFrame) -> list[Array]:
    """Return the ends of slits and folds on the inside face (3,), one after another."""
    found: list[Array] = []
    for mark in part.marks:
        if mark.purpose is Purpose.BEND and len(mark.path.points) >= 2:
            for x, y in (mark.path.points[0], mark.path.points[-1]):
                found.append(frame.point((x, y), part.thickness))
    return found


def _spread(lines: list[Array]) -> list[shapely.Geometry]:
    """Return lines without those that would stand too close to the one before."""
    kept: list[shapely.Geometry] = []
    for line in (shapely.LineString(points) for points in lines):
        if not kept or float(shapely.distance(kept[-1], line)) >= SLITS_APART:
            kept.append(line)
    return kept


def _curl(x: float, way: float, y: float, radius: float) -> Array:
    """Return an arc in space (n, 3) from the end of a strip at x upwards, in over the strip (``way`` along x)."""
    angles = np.radians(np.linspace(-60.0, CURLED - 60.0, 24))
    across, up = radius * np.cos(angles), radius * (np.sin(angles) + 1.0)
    return np.column_stack([x + way * (0.75 * radius - across), np.full(len(angles), -y), up])
