"""The picture of an act on the paper: what stands thin, what is added thick and held off along its way in, signs, a small joint larger.

Drawn in mm of the paper, for a box of ``ACT_WIDE`` by ``ACT_HIGH``: widths of lines, letters and the hatch are chosen for that.
"""

from dataclasses import replace
from math import hypot

import numpy as np
import shapely

from publisher.basics import Box
from publisher.joints.act_pictures.details import CIRCLE, JointSpot, clipped, detail_scale, detailed, joints_of
from publisher.joints.act_pictures.lines import Fitted, Shapes, moved, seen_lines, shapes_of
from publisher.joints.act_pictures.paper_grid import grid_over
from publisher.joints.act_pictures.scene import ActLabel, ActScene, Solid
from publisher.joints.act_pictures.sight import Sight, seen_of_face
from publisher.joints.act_pictures.signs import (
    Sheet,
    Turning,
    put_arrow,
    put_label,
    put_sweep,
    put_times,
    put_turn,
    put_up,
)
from publisher.joints.act_pictures.signs_behind import put_label_behind, put_up_behind
from publisher.joints.act_pictures.strip import strip_sketch
from publisher.joints.drawings import Sketch, solids_of
from publisher.joints.outlines import Array

ACT_WIDE, ACT_HIGH = 70.0, 52.0
"""mm of the paper: the room that the picture of an act has."""

MARGIN = 3.5
"""mm of the paper kept free round the parts, for letters and the arrow."""

LEAST_UP = 0.25
"""Share of its height that a part shows: on one that is seen more along its height no arrow could say which end is up."""

INSET_CLEAR = 1.5
"""mm of the paper between an inset and all that is shown."""

SMALLER = (1.0, 0.92, 0.84, 0.76, 0.68)
"""How much smaller the whole may become so that a detail circle finds room beside it."""


def act_picture(scene: ActScene, sight: Sight, *, turned: Turning = "") -> Sketch:
    """Draw an act as large as it fits into its box. ``turned``: how it lies otherwise than at the act before."""
    shapes = shapes_of(sight)
    ghost = _ghost(scene, sight)
    whole = shapely.union(shapes.both, ghost) if not ghost.is_empty else shapes.both
    fitted = _fit(whole)
    joint = None if scene.strip else detailed(sight, joints_of(scene.added, scene.before), fitted.scale)
    strip = strip_sketch(scene.strip, sight.view) if scene.strip is not None else None
    place: Box | None = None
    if joint is not None or strip is not None:
        wide, high = (2 * CIRCLE, 2 * CIRCLE) if strip is None else strip.size
        fitted, place = _with_room(whole, fitted, wide, high, round_corners=strip is None)
    on_paper = shapes.carried(fitted)
    sheet = Sheet(Sketch(), grid_over(_canvas(on_paper.both, place)), [])
    shown = seen_lines(sight, fitted, on_paper)
    hatch, guides, pattern = shown.pop("hatch", []), shown.pop("guide", []), shown.pop("pattern", [])
    for weight, lines in shown.items():
        for line in lines:
            sheet.sketch.add(weight, line)
    if not ghost.is_empty:
        hidden = shapely.difference(shapely.boundary(fitted.carry(ghost)), shapely.buffer(on_paper.both, 0.4))
        sheet.sketch.add("ghost", hidden)
    sheet.ground.mark(np.array([line for lines in shown.values() for line in lines]))
    if strip is not None and place is not None:
        strip.put(sheet.sketch, place)
        sheet.take(place)
    elif joint is not None and place is not None:
        _add_detail(sight, joint, fitted, place, sheet)
    if scene.sweep is not None:
        by = sight.shift if scene.sweep.held else np.zeros(3)
        path = fitted.at(scene.sweep.path @ sight.view.axes().T + by)[:, :2]
        put_sweep(sheet, path, scene.sweep.text, wrong=scene.sweep.wrong)
    if scene.moves:
        goal = fitted.at(sight.goal)[:, :2] if len(sight.goal) else shapely.get_coordinates(on_paper.new.centroid)
        put_arrow(sheet, sight.way[:2], sight.held * hypot(*sight.way[:2]) * fitted.scale, goal, on_paper.new)
    if turned:
        put_turn(sheet, turned, shapely.union(on_paper.both, fitted.carry(ghost)))
    if scene.times > 1:
        put_times(sheet, scene.times)
    sheet.ground.mark(np.array(guides))
    _add_tops(scene, sight, fitted, on_paper.both, sheet)
    _add_labels(scene, sight, fitted, on_paper, sheet)
    clear = shapely.union_all(np.array(sheet.clear)) if sheet.clear else shapely.Polygon()
    for weight, lines in (("hatch", hatch), ("detail", pattern), ("guide", guides)):
        for line in shapely.get_parts(shapely.difference(np.array(lines), clear)) if lines else ():
            sheet.sketch.add(weight, line)
    return sheet.sketch


def _ghost(scene: ActScene, sight: Sight) -> shapely.Geometry:
    """Return what is covered where what is added was before it was folded, in drawing coordinates."""
    if not scene.ghost:
        return shapely.Polygon()
    solids = solids_of([(s.part, s.frame) for s in scene.ghost], sight.view, slots=False, surface=False)
    return shapely.union_all(np.array(solids.areas))


def _fit(area: shapely.Geometry) -> Fitted:
    left, bottom, right, top = shapely.bounds(area)
    wide, high = ACT_WIDE - 2 * MARGIN, ACT_HIGH - 2 * MARGIN
    scale = min(wide / max(right - left, 1e-6), high / max(top - bottom, 1e-6), 1.0)
    return Fitted(float(scale), np.array([-left * scale, -bottom * scale]))


def _canvas(area: shapely.Geometry, inset: Box | None) -> Box:
    """Return the box of the paper on which the picture stands in the middle."""
    left, bottom, right, top = shapely.bounds(area)
    if inset is not None:
        left, right = min(left, inset.left), max(right, inset.right)
        bottom, top = min(bottom, inset.bottom), max(top, inset.top)
    x, y = (left + right) / 2, (bottom + top) / 2
    return Box(x - ACT_WIDE / 2, y - ACT_HIGH / 2, x + ACT_WIDE / 2, y + ACT_HIGH / 2)


def _with_room(
    whole: shapely.Geometry, fitted: Fitted, width: float, height: float, *, round_corners: bool
) -> tuple[Fitted, Box]:
    """Return how to fit all that is shown with an inset beside it in a box: where it is free, else the whole made smaller; and the box
    of the inset. ``round_corners``: it is a circle."""
    wide, high = ACT_WIDE - 2.0, ACT_HIGH - 2.0
    rough = shapely.simplify(whole, 0.5)
    for share in SMALLER:
        tried = Fitted(fitted.scale * share, fitted.by * share)
        area = tried.carry(rough)
        left, bottom, right, top = shapely.bounds(area)
        xs = np.arange(min(left, right - wide) + width / 2, max(right, left + wide) - width / 2 + 0.01, 2.5)
        ys = np.arange(min(bottom, top - high) + height / 2, max(top, bottom + high) - height / 2 + 0.01, 2.5)
        grid = np.array(np.meshgrid(xs, ys)).reshape(2, -1).T
        over = np.maximum(right, grid[:, 0] + width / 2) - np.minimum(left, grid[:, 0] - width / 2) > wide
        over |= np.maximum(top, grid[:, 1] + height / 2) - np.minimum(bottom, grid[:, 1] - height / 2) > high
        grid = grid[~over]
        if not len(grid):
            continue
        if round_corners:
            away = shapely.distance(area, shapely.points(grid)) - width / 2
        else:
            half = np.array([width / 2, height / 2])
            away = shapely.distance(area, shapely.box(*(grid - half).T, *(grid + half).T))
        free = away >= INSET_CLEAR
        if free.any():
            x, y = grid[np.flatnonzero(free)[int(away[free].argmin())]]
            return tried, Box(x - width / 2, y - height / 2, x + width / 2, y + height / 2)
    share = min(1.0, (wide - width - 2.0) / (ACT_WIDE - 2 * MARGIN))
    tried = Fitted(fitted.scale * share, fitted.by * share)
    _, _, right, top = (float(v) for v in shapely.bounds(tried.carry(rough)))
    return tried, Box(right + 2.0, top - height, right + 2.0 + width, top)


def _add_detail(sight: Sight, joint: JointSpot, fitted: Fitted, box: Box, sheet: Sheet) -> None:
    """Draw a joint larger in a circle, what is added just off its place; ring it in the whole, with a line from ring to circle."""
    place = ((box.left + box.right) / 2, (box.bottom + box.top) / 2)
    scale = detail_scale(joint, fitted.scale)
    flat = max(hypot(*sight.way[:2]), 0.3)
    near = replace(sight, held=min(sight.held, 0.75 * CIRCLE / scale / flat))
    middle = sight.view.axes() @ joint.middle
    larger = Fitted(scale, np.asarray(place) - (middle[:2] + 0.5 * near.shift[:2]) * scale)
    circle = shapely.Point(place).buffer(CIRCLE, quad_segs=16)
    for weight, lines in seen_lines(near, larger, _around(near, larger, circle), near=circle).items():
        for line in clipped(lines, circle):
            sheet.sketch.add(weight, line)
    ring = fitted.at(middle[None, :2])[0]
    radius = max(2.0, 0.6 * CIRCLE / scale * fitted.scale)
    small = shapely.Point(ring).buffer(radius, quad_segs=12)
    way = np.asarray(place) - ring
    unit = way / max(hypot(*way), 1e-9)
    link = shapely.LineString([ring + radius * unit, np.asarray(place) - CIRCLE * unit])
    rings = [shapely.boundary(circle), shapely.boundary(small), link]
    for one in rings:
        sheet.sketch.add("ring", one)
    sheet.ground.mark(np.array(rings))
    sheet.ground.mark_area(circle)
    sheet.clear += [shapely.buffer(circle, 0.5), *(shapely.buffer(one, 0.4, quad_segs=2) for one in rings[1:])]


def _around(sight: Sight, fitted: Fitted, circle: shapely.Geometry) -> Shapes:
    """Return what both groups cover near a circle of the paper, on the paper."""
    back = shapely.buffer(fitted.back(circle), 20.0, quad_segs=2)

    def of(areas: list[shapely.Geometry], by: Array) -> shapely.Geometry:
        every = np.array([moved(area, by) for area in areas], dtype=object)
        return shapely.union_all(every[shapely.intersects(back, every)]) if len(every) else shapely.Polygon()

    return Shapes(of(sight.there.areas, np.zeros(3)), of(sight.new.areas, sight.shift)).carried(fitted)


def _add_tops(scene: ActScene, sight: Sight, fitted: Fitted, all_parts: shapely.Geometry, sheet: Sheet) -> None:
    """Add the arrows that say which end of a part is up, to the first of each part in words too. They are copied to the outside: where
    that looks away, the arrow stands beside the part."""
    said: set[str] = set()
    behind: list[tuple[str, Array, shapely.Geometry]] = []
    axes = sight.view.axes()
    for group, solids, by, inside in (
        (scene.added, sight.new, sight.shift, sight.new_inside),
        (scene.before, sight.there, np.zeros(3), sight.there_inside),
    ):
        for solid, main in zip(group, solids.main, strict=True):
            way = (axes @ solid.frame.axes)[:2, 1]
            if solid.name not in scene.tops or main < 0 or hypot(*way) < LEAST_UP:
                continue
            face = seen_of_face(sight, solids, main, by)
            if face.is_empty:
                continue
            area = fitted.carry(moved(face, by))
            if main in inside:
                behind.append((solid.part.id, way, area))
            elif put_up(sheet, way, area, word=solid.part.id not in said):
                said.add(solid.part.id)
    for part, way, area in behind:
        if put_up_behind(sheet, way, area, all_parts, word=part not in said):
            said.add(part)


def _add_labels(scene: ActScene, sight: Sight, fitted: Fitted, shapes: Shapes, sheet: Sheet) -> None:
    """Add how many of which part are added and what else is named, and match letters, each where no line runs."""
    for label in scene.labels:
        solids, group, by = (
            (sight.new, scene.added, sight.shift) if label.new else (sight.there, scene.before, np.zeros(3))
        )
        named = _counted(label, group) if not scene.pile else {label.name}
        mains = [main for solid, main in zip(group, solids.main, strict=True) if solid.name in named and main >= 0]
        faces = [seen for main in mains if not (seen := seen_of_face(sight, solids, main, by)).is_empty] or [
            solids.areas[main] for main in mains
        ]
        if faces:
            area = fitted.carry(moved(max(faces, key=shapely.area), by))
            seen = _not_behind(area, label, scene, sight, fitted, shapes)
            put_label(sheet, label.text, seen, shapes.both)
    if scene.note and len(sight.goal):
        near = sight.goal[int(sight.goal[:, 2].argmax())]
        middle = shapely.Point(fitted.at((near + 0.5 * sight.shift)[None, :2])[0])
        put_label(sheet, scene.note, shapely.buffer(middle, 1.0), shapely.Polygon())
    axes = sight.view.axes()
    for letter in scene.letters:
        for point, looks, by in (
            (letter.there, letter.there_looks, np.zeros(3)),
            (letter.new, letter.new_looks, sight.shift),
        ):
            at = shapely.Point(fitted.at((axes @ point + by)[None, :2])[0])
            if float((axes @ looks)[2]) < 0.0:
                put_label_behind(sheet, letter.text, at, shapes.both)
            else:
                put_label(sheet, letter.text, shapely.buffer(at, 1.5), shapely.Polygon())


def _counted(label: ActLabel, group: tuple[Solid, ...]) -> set[str]:
    """Return the names of the solids at any of which a label may stand: all of a part, where it counts them all; else its own alone."""
    part = next((solid.part.id for solid in group if solid.name == label.name), "")
    alike = {solid.name for solid in group if solid.part.id == part}
    return alike if label.text.partition(" ")[0] == str(len(alike)) else {label.name}


def _not_behind(
    area: shapely.Geometry, label: ActLabel, scene: ActScene, sight: Sight, fitted: Fitted, shapes: Shapes
) -> shapely.Geometry:
    """Return what of a face is not behind what is held before it: for what stands, behind all that is added; in a pile, behind the
    layers upon it. The whole face where nothing of it is left."""
    before: list[shapely.Geometry] = []
    if not label.new:
        before = [shapes.new]
    elif scene.pile:
        at = next(i for i, solid in enumerate(scene.added) if solid.name == label.name)
        higher = [main for main in sight.new.main[at + 1 :] if main >= 0]
        before = [fitted.carry(moved(sight.new.areas[main], sight.shift)) for main in higher]
    left = shapely.difference(area, shapely.union_all(np.array(before))) if before else area
    pieces = [piece for piece in shapely.get_parts(left) if piece.geom_type == "Polygon"]
    return max(pieces, key=shapely.area) if pieces and left.area > 4.0 else area
