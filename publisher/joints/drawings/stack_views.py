"""A stack as a whole, exploded, seen square to it, and one layer in plan on the layer below."""

from collections.abc import Sequence
from math import hypot

import numpy as np
import shapely

from publisher.basics import Place, Point, Pose, Purpose
from publisher.geometry import Part, mitred
from publisher.joints.drawings.letter_spots import EXPLODED_ROOM, letter_spot, room_on_paper
from publisher.joints.drawings.lines import Sketch
from publisher.joints.drawings.panel_solids import solids_of
from publisher.joints.drawings.panel_views import draw_solids
from publisher.joints.drawings.stack_lines import Slab, draw_slabs
from publisher.joints.drawings.view import ABOVE, STACK_VIEW, View
from publisher.joints.model import StackLayer
from publisher.joints.outlines import Array, coarse, is_notch, move, points_of, whole_polygon
from publisher.joints.panels import PanelFrame, corners_of
from publisher.joints.stacks import Knee, LaidStack, tick_ends
from publisher.joints.wholes import panels_of_stack

NOWHERE = Place("")  # a picture is made of nothing that a designer wrote

VIEW_TURN = 5.0
PICTURE_SAGITTA = 0.04
"""Drawn arcs: at most 5 degrees and 0.04 mm from chord to chord."""

STACK_ARROW = 14.0
"""mm: length of the arrow that points at a line-up notch."""


def whole_view(stack: LaidStack, parts: dict[str, Part], knees: Sequence[Knee] = ()) -> Sketch:
    """Draw the layers on each other, with the braces under them."""
    sketch = Sketch()
    if knees:
        _solids(stack, parts, knees, 0.0, sketch)
        return sketch
    draw_slabs(_slabs(stack, parts, 0.0), STACK_VIEW, sketch)
    return sketch


def flat_view(stack: LaidStack, parts: dict[str, Part], view: View) -> Sketch:
    """Draw the stack seen square to it: from the front every layer as the oblong that it is there, from above what no layer hides.

    Braces are left out: layers hide most of them, and the rest adds nothing to the outside sizes.
    """
    sketch = Sketch()
    if view == ABOVE:
        draw_slabs(_slabs(stack, parts, 0.0), view, sketch)
        return sketch
    for panel in panels_of_stack(stack, parts, NOWHERE):
        corners = panel.frame.carry(corners_of(panel.part)) @ view.axes().T
        (left, low), (right, high) = corners[:, :2].min(axis=0), corners[:, :2].max(axis=0)
        box = shapely.box(left, low, right, high)
        sketch.add("outline", shapely.boundary(box))
        sketch.shapes.append(box)
    return sketch


def exploded_view(stack: LaidStack, parts: dict[str, Part], knees: Sequence[Knee] = ()) -> Sketch:
    """Draw the layers apart, with the letter of the part beside the lowest and the highest layer of every row, and of a brace."""
    width = max(_width(stack, parts), 1.0)
    count = len(stack.layers)
    gap = min(max(1.4 * width / max(count - 1, 1), 0.8 * stack.layers[0].thickness), 0.4 * width)
    sketch = Sketch()
    shown = (
        _solids(stack, parts, knees, gap, sketch)
        if knees
        else draw_slabs(_slabs(stack, parts, gap), STACK_VIEW, sketch)
    )
    areas = [area for area in shown if not area.is_empty]
    right = max(float(area.bounds[2]) for area in areas) + max(EXPLODED_ROOM, 1.5 * room_on_paper(areas))
    for row in stack.rows:
        for index in sorted({row.first, row.first + row.count - 1}):
            if not shown[index].is_empty:
                box = shown[index].bounds
                sketch.label(parts[row.part].letter, right, (box[1] + box[3]) / 2)
    return sketch


def _solids(
    stack: LaidStack, parts: dict[str, Part], knees: Sequence[Knee], gap: float, sketch: Sketch
) -> list[shapely.Geometry]:
    """Draw layers and braces as solids, each layer ``gap`` mm farther from the one below than it lies and each brace with its
    step, and the letter of the first brace that shows; return what is drawn of each layer's upper face."""
    high = {layer.number: index for index, layer in enumerate(stack.layers)}
    panels = []
    for panel in panels_of_stack(stack, parts, NOWHERE, knees):
        up = gap * high[int(panel.name.rpartition("_")[2])]
        panels.append((panel.part, PanelFrame(panel.frame.axes, panel.frame.origin + np.array([0.0, 0.0, up]))))
    solids = solids_of(panels, STACK_VIEW, slots=False, surface=False)
    draw_solids(solids, sketch)
    layers, braces = solids.main[: len(stack.layers)], solids.main[len(stack.layers) :]
    spot = next((spot for main in braces if gap and (spot := letter_spot(solids, main)) is not None), None)
    if spot is not None:
        sketch.label(panels[-1][0].letter, *spot)
    return [solids.areas[main] if main >= 0 else shapely.Polygon() for main in layers]


def plan_view(stack: LaidStack, parts: dict[str, Part], number: int) -> Sketch | None:
    """Draw the layer with this number in plan, the one below as ghost lines where it shows, and where to line up.

    None when the stack has no such layer.
    """
    at = next((i for i, layer in enumerate(stack.layers) if layer.number == number), None)
    if at is None:
        return None
    sketch = Sketch()
    layer = stack.layers[at]
    upper = _plan_polygon(parts[layer.part], layer.pose)
    sketch.shapes.append(upper)
    sketch.add("outline", shapely.boundary(upper))
    _plan_marks(parts[layer.part], layer.pose, sketch)
    letters = [(parts[layer.part].letter, upper)]
    if at > 0:
        below = stack.layers[at - 1]
        lower = _plan_polygon(parts[below.part], below.pose)
        hidden = mitred(move(whole_polygon(parts[layer.part]), layer.pose), 0.1)
        sketch.add("ghost", shapely.difference(shapely.boundary(lower), hidden))
        _line_up(parts[below.part], below.pose, upper, sketch)
        letters.append((parts[below.part].letter, shapely.difference(lower, hidden)))
    for letter, area in letters:
        if area.area > 50.0:
            x, y = shapely.get_coordinates(shapely.maximum_inscribed_circle(area, 0.5))[0]
            sketch.label(letter, float(x), float(y))
    return sketch


def _slabs(stack: LaidStack, parts: dict[str, Part], gap: float) -> list[Slab]:
    """Return the layers to draw, each ``gap`` mm farther from the one below than it lies."""
    flat = {part_id: _flat(parts[part_id]) for part_id in {layer.part: None for layer in stack.layers}}
    return [_slab(layer, *flat[layer.part], layer.bottom + i * gap) for i, layer in enumerate(stack.layers)]


def _flat(part: Part) -> tuple[list[tuple[Array, Array]], Array]:
    """Return a part's rings with their corners, and the ends of its joint ticks, in its own coordinates."""
    rings = [coarse(path, most_turn=VIEW_TURN, sagitta=PICTURE_SAGITTA) for path in part.outline.paths]
    return [(points_of(p), np.array(c)) for p, c in rings], tick_ends(part, whole_polygon(part))


def _slab(layer: StackLayer, rings: list[tuple[Array, Array]], ticks: Array, bottom: float) -> Slab:
    a, b, c, d, e, f = layer.pose.matrix()
    matrix, shift = np.array([[a, b], [c, d]]), np.array([e, f])
    way = -1 if layer.pose.mirrored else 1  # a mirrored ring runs the other way round
    return Slab(
        tuple((points @ matrix + shift)[::way] for points, _ in rings),
        tuple(corner[::way] for _, corner in rings),
        bottom,
        bottom + layer.thickness,
        ticks @ matrix + shift,
    )


def _width(stack: LaidStack, parts: dict[str, Part]) -> float:
    ends = np.vstack([points_of(la.pose.apply_all(parts[la.part].outline.outer.points)) for la in stack.layers])
    return float((ends.max(axis=0) - ends.min(axis=0)).max())


def _plan_polygon(part: Part, pose: Pose) -> shapely.Polygon:
    rings = [
        pose.apply_all(coarse(path, most_turn=VIEW_TURN, sagitta=PICTURE_SAGITTA)[0]) for path in part.outline.paths
    ]
    return shapely.Polygon(rings[0], rings[1:])


def _plan_marks(part: Part, pose: Pose, sketch: Sketch) -> None:
    for mark in part.marks:
        if mark.purpose in (Purpose.JOINT_TICK, Purpose.CLIMB):
            sketch.add_path("detail", pose.apply_all(mark.path.points))


def _line_up(part: Part, pose: Pose, upper: shapely.Polygon, sketch: Sketch) -> None:
    """Point an arrow from outside at every line-up notch of the layer below."""
    centre = shapely.get_coordinates(shapely.centroid(upper))[0]
    for stretch in part.outline.outer.stretches():
        if is_notch(stretch.name):
            points = points_of(pose.apply_all(stretch.points))
            away = np.hypot(*(points - centre).T)
            _arrow(tuple(points[int(away.argmin())]), tuple(points[[0, -1]].mean(axis=0)), sketch)


def _arrow(tip: Point, mouth: Point, sketch: Sketch) -> None:
    """Draw an arrow from outside through the mouth of a notch to just before its tip."""
    x, y = mouth[0] - tip[0], mouth[1] - tip[1]
    size = hypot(x, y)
    if size < 1e-6:
        return
    x, y = x / size, y / size
    end = (mouth[0] + 1.0 * x, mouth[1] + 1.0 * y)
    sketch.add_path("cue", [(end[0] + STACK_ARROW * x, end[1] + STACK_ARROW * y), end])
    for side in (1.0, -1.0):
        sketch.add_path("cue", [(end[0] + 4.0 * x - side * 1.6 * y, end[1] + 4.0 * y + side * 1.6 * x), end])
