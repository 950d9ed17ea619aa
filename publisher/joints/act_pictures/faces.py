"""How the two faces of a part are told apart in a picture: its pattern where the outside shows, strokes where the inside does. Mm.

A part whose faces are alike shows neither: it may be put in either way round.
"""

import numpy as np
import shapely

from publisher.basics import Purpose, record, remembered
from publisher.geometry import Part, line_string, polygon
from publisher.joints.act_pictures.scene import Solid
from publisher.joints.drawings import Solids
from publisher.joints.facts import slots_of
from publisher.joints.outlines import Array
from publisher.joints.panels import PanelFrame, is_facet

ROWS_APART = 1.0
"""mm of the paper between two lines of a pattern, about: a denser one is drawn larger than true, in patches, so that it stays light."""

PATCH = 7.0
"""mm of the paper: radius of a patch, where the face has as much."""

PATCHES = 2
"""Patches on a face: where a thing that stands before it hides one, the other is seen."""

LEAST_LOOK = 0.2
"""Share of its own depth that a face shows: of one that is seen more from the side no pattern could be read."""

OFF_EDGES = 0.8
"""mm of the paper that a pattern keeps off edges and openings."""


@record
class FacePattern:
    """The pattern of a part's outside: its lines, the mean distance between them, the face that they may cover, and the middles (x, y)
    and radii of the largest free circles on it."""

    lines: shapely.Geometry
    apart: float
    ground: shapely.Geometry
    spots: tuple[tuple[float, float, float], ...]


@remembered
def pattern_of(part: Part) -> FacePattern | None:
    """Return the pattern that is pressed into or drawn on a part's outside; None where it has none."""
    lines = [line_string(m.path) for m in part.marks if m.purpose is Purpose.SURFACE and len(m.path.points) > 1]
    if not lines:
        return None
    pattern = shapely.multilinestrings(lines)
    slots = [shapely.Polygon(slot.points) for slot in slots_of(part)]
    ground = shapely.difference(polygon(part.outline), shapely.union_all(slots)) if slots else polygon(part.outline)
    spots, left = [], ground
    for _ in range(PATCHES):
        free = max(shapely.get_parts(left), key=shapely.area, default=shapely.Polygon())
        if free.area < 1.0:
            break
        radius = shapely.maximum_inscribed_circle(free, tolerance=1.0)
        (x, y), _ = shapely.get_coordinates(radius)
        spots.append((float(x), float(y), float(radius.length)))
        left = shapely.difference(left, shapely.Point(x, y).buffer(1.5 * radius.length, quad_segs=4))
    return FacePattern(pattern, float(ground.area / max(pattern.length, 1e-6)), ground, tuple(spots))


def pattern_lines(solids: tuple[Solid, ...], axes: Array, scale: float) -> list[Array]:
    """Return the patterns on outsides that look towards the viewer, in drawing coordinates, each (m, 2, 3), for a paper of this
    scale: whole where its lines stand far enough apart there, else larger than true in patches."""
    found: list[Array] = []
    for solid in solids:
        looks = float((axes @ solid.frame.axes)[2, 2])
        pattern = pattern_of(solid.part) if looks > LEAST_LOOK and not is_facet(solid.part) else None
        if pattern is None:
            continue
        grown = ROWS_APART / (pattern.apart * scale * looks)
        ground = shapely.buffer(pattern.ground, -OFF_EDGES / scale, quad_segs=1)
        shown = (
            [shapely.intersection(pattern.lines, ground)]
            if grown <= 1.0
            else [_patch(pattern, spot, grown, PATCH / scale, ground) for spot in pattern.spots]
        )
        edges = [_carried(lines, solid.frame, axes) for lines in shown]
        found += [own for own in edges if len(own)]
    return found


def _patch(
    pattern: FacePattern, spot: tuple[float, float, float], grown: float, radius: float, ground: shapely.Geometry
) -> shapely.Geometry:
    """Return the pattern about a spot, so many times as large."""
    x, y, room = spot
    radius = min(radius, 0.9 * room)
    own = shapely.intersection(pattern.lines, shapely.Point(x, y).buffer(radius / grown, quad_segs=8))
    middle = np.array([x, y])
    return shapely.intersection(shapely.transform(own, lambda xy: middle + grown * (xy - middle)), ground)


def _carried(lines: shapely.Geometry, frame: PanelFrame, axes: Array) -> Array:
    """Return the stretches (m, 2, 3) of lines on an outside face, in drawing coordinates."""
    parts = shapely.get_parts(lines)
    parts = parts[(shapely.get_type_id(parts) == 1) & ~shapely.is_empty(parts)]
    points, of = shapely.get_coordinates(parts, return_index=True)
    if len(points) < 2:
        return np.zeros((0, 2, 3))
    carried = frame.carry(np.column_stack([points, np.zeros(len(points))])) @ axes.T
    same = of[:-1] == of[1:]
    return np.stack([carried[:-1][same], carried[1:][same]], axis=1)


def insides(solids: tuple[Solid, ...], drawn: Solids, axes: Array, alike: frozenset[str]) -> tuple[int, ...]:
    """Return which faces of drawn solids are insides of parts, but for those of which either face may be outside (``alike``)."""
    return tuple(
        main
        for solid, main in zip(solids, drawn.main, strict=True)
        if main >= 0
        and float((axes @ solid.frame.axes)[2, 2]) < 0.0
        and not is_facet(solid.part)
        and solid.part.id not in alike
    )
