"""Which way round a layer lies that is the same when it is turned: a letter on it, to be laid over the same letter on the one below."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import pairwise

import numpy as np
import shapely

from publisher.basics import LineKind, Point, Pose, Purpose, polyline, record
from publisher.geometry import Mark, Part
from publisher.joints.outlines import sound, whole_polygon
from publisher.joints.stacks.layer_seats import SEATS_ALIKE, told_by_marks
from publisher.joints.stacks.layers import LaidStack
from publisher.joints.stacks.plan_geometry import LayerKey, PlanGeometry

LAYER_TURN = "this way round on the layer below"
TURNS = (180.0, 90.0, 270.0, 120.0, 240.0, 60.0, 300.0)
"""Degrees by which a layer may lie upon itself; a disc has its centre marked."""

CARRIED_ELSEWHERE = 0.5
"""mm by which what lies on a layer would lie elsewhere: less is within the hand that lays it."""

FROM_EDGE = 5.0
"""mm from a layer's edge to its letter."""

TURN_LETTER_ROOM = 3.0
"""mm round the letter that stay on both layers, and off what lies on the upper one where there is another place."""


@record
class LayerTurn:
    """Two layers on each other, by their parts, and where the letter stands on each, in its own coordinates (mm)."""

    lower: str
    upper: str
    on_lower: Point
    on_upper: Point


def layer_turns(stack: LaidStack, parts: dict[str, Part]) -> tuple[LayerTurn, ...]:
    """Return the pairs of which nothing else says how the upper one is turned, although what it carries would lie elsewhere.

    None for a part that lies on itself, or in different ways: letters too many are worse than none.
    """
    plan = PlanGeometry(stack.layers, parts)
    keys: dict[str, set[LayerKey]] = defaultdict(set)
    found: dict[str, LayerTurn] = {}
    for number, (lower, upper) in enumerate(pairwise(stack.layers)):
        keys[lower.part].add(plan.key(number, number + 1))
        keys[upper.part].add(plan.key(number, number + 1))
        if (
            lower.part == upper.part
            or number + 2 == len(stack.layers)
            or told_by_marks(parts[lower.part], parts[upper.part])
        ):
            continue
        body, carried = whole_polygon(parts[upper.part]), plan.contact(number + 1).touch
        turns = [turn for turn in TURNS if _lies_elsewhere(body, carried, turn)]
        on_upper = _place(body, carried, _on_upper(plan, number), turns) if turns else None
        if on_upper is not None:
            spot = _back(shapely.Point(upper.pose.apply(on_upper)), lower.pose)
            found[lower.part] = LayerTurn(lower.part, upper.part, (spot.x, spot.y), on_upper)
    once = [turn for turn in found.values() if len(keys[turn.lower]) <= 2 and len(keys[turn.upper]) <= 2]
    return tuple(once)


def turn_marks(turns: Sequence[LayerTurn], letters: Iterator[str]) -> Iterator[tuple[str, Mark]]:
    """Yield, by part, both letters of each pair, the next of ``letters`` for each."""
    for turn, text in zip(turns, letters, strict=False):
        for part, at in ((turn.lower, turn.on_lower), (turn.upper, turn.on_upper)):
            yield part, Mark(LineKind.REFERENCE, Purpose.MATCH, polyline((at,)), name=LAYER_TURN, text=text)


def _lies_elsewhere(body: shapely.Polygon, carried: shapely.Geometry, turn: float) -> bool:
    """Say whether a layer turned about its middle by so many degrees lies upon itself, and what it carries elsewhere."""
    turned, its = (shapely.affinity.rotate(shape, turn, origin=body.centroid) for shape in (body, carried))
    if shapely.hausdorff_distance(turned.boundary, body.boundary) > SEATS_ALIKE:
        return False
    return not carried.is_empty and bool(shapely.hausdorff_distance(its, carried) > CARRIED_ELSEWHERE)


def _on_upper(plan: PlanGeometry, number: int) -> shapely.Geometry:
    """Return where a layer and the next one lie on each other, in the coordinates of the upper one."""
    both = shapely.intersection(plan.placed[number], plan.placed[number + 1])
    return _back(both, plan.layers[number + 1].pose)


def _back(geometry: shapely.Geometry, pose: Pose) -> shapely.Geometry:
    """Return what a pose would carry to a geometry."""
    a, b, c, d, e, f = pose.matrix()
    undone = np.linalg.inv(np.array([[a, b], [c, d]]))
    return sound(shapely.transform(geometry, lambda xy: (xy - (e, f)) @ undone))


def _place(
    body: shapely.Polygon, carried: shapely.Geometry, held: shapely.Geometry, turns: Sequence[float]
) -> Point | None:
    """Return the place of the letter on the upper layer: inside the middle of one of its sides, the longest that has board under it and
    is another one after each turn; off what lies on it, where there is such a side."""
    ring = shapely.get_coordinates(shapely.Polygon(body.exterior).simplify(SEATS_ALIKE).exterior)
    room = shapely.buffer(held, -TURN_LETTER_ROOM)
    best: tuple[bool, float, Point] | None = None
    for a, b in pairwise(ring):
        long = float(np.hypot(*(b - a)))
        across = np.array((a[1] - b[1], b[0] - a[0])) / max(long, SEATS_ALIKE)
        spots = [(a + b) / 2.0 + side * FROM_EDGE * across for side in (1.0, -1.0)]
        for spot in (shapely.Point(at) for at in spots if shapely.contains_xy(body, *at)):
            same = [shapely.affinity.rotate(spot, turn, origin=body.centroid) for turn in turns]
            if not room.contains(spot) or any(spot.distance(other) < 2.0 * FROM_EDGE for other in same):
                continue
            rank = (not carried.buffer(TURN_LETTER_ROOM).contains(spot), long)
            if best is None or rank > best[:2]:
                best = (*rank, (spot.x, spot.y))
    return best[2] if best else None
