"""Where a page has room to spare, its parts stand apart: the least gaps grow, and the white lies evenly between them."""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import Point, Pose
from publisher.geometry import polygon
from publisher.pages.templates.page_words import Lying, Shown
from publisher.pages.templates.template_forms import PADDING, PART_AWAY, PART_GAP
from publisher.pages.templates.template_frames import free_area

WIDE_ENOUGH = 45.0  # mm between two parts, or to the edge: wider gaps are no better
SPREAD_STEPS = (16.0, 8.0, 4.0, 2.0, 1.0)  # mm by which parts are tried to move
WAYS_TO_GO = ((1, 0), (-1, 0), (0, 1), (0, -1), (1, 1), (-1, 1), (-1, -1), (1, -1))  # out of a corner aslant
SPREAD_ROUNDS = 4  # of tries with each step
MOST_SPREAD = 16  # parts of a page: of more, none has room to move
MOST_FILLED = 0.7  # of a page: of a fuller one neither
BETTER = 0.05  # mm by which a gap must grow

SpreadGaps = npt.NDArray[np.float64]


def spread(page: Shown) -> Shown:
    """Return the page, its words not placed yet, with its parts moved apart as far as it has room; each keeps its turn."""
    free = free_area(page.frame)
    shapes = [_shape(lying) for lying in page.lying]
    shapes += [shapely.Polygon(pose.apply_all(chunk.ring)) for chunk, pose in page.chunks]
    if not 1 < len(shapes) <= MOST_SPREAD or sum(shape.area for shape in shapes) > MOST_FILLED * free.area:
        return page
    moves = _apart(shapes, free)
    count = len(page.lying)
    lying = tuple(_moved(one, move) for one, move in zip(page.lying, moves[:count], strict=True))
    chunks = tuple(
        (chunk, replace(pose, x=round(pose.x + x, 3), y=round(pose.y + y, 3)))
        for (chunk, pose), (x, y) in zip(page.chunks, moves[count:], strict=True)
    )
    return replace(page, lying=lying, chunks=chunks)


def _shape(lying: Lying) -> shapely.Polygon:
    """Return what a copy takes of its page, with its flag."""
    part = polygon(lying.sample.part.template.outer, lying.pose)
    if lying.flag is None:
        return part
    flag = lying.flag.polygon.buffer(PADDING + PART_AWAY - PART_GAP, join_style="mitre")
    return shapely.union_all([part, flag, shapely.shortest_line(part, flag).buffer(0.1)])


def _moved(lying: Lying, move: Point) -> Lying:
    pose = replace(lying.pose, x=lying.pose.x + move[0], y=lying.pose.y + move[1])
    return replace(lying, pose=pose, flag=lying.flag and lying.flag.moved(Pose(*move)))


def _apart(shapes: Sequence[shapely.Polygon], free: shapely.Polygon) -> list[Point]:
    """Return by how much (mm) each shape moves so that its gaps grow: the least one first, then all of them together."""
    now = [*shapes]
    moves: list[Point] = [(0.0, 0.0)] * len(now)
    ground = free.buffer(0.01, join_style="mitre")
    shapely.prepare(ground)
    for step in SPREAD_STEPS:
        for _ in range(SPREAD_ROUNDS):
            moved = False
            for i, shape in enumerate(now):
                others = np.array([*now[:i], *now[i + 1 :], free.exterior])
                shapely.prepare(others)
                best, gaps = None, _gaps(np.array([shape]), others)[0]
                ways = [(step * right, step * up) for right, up in WAYS_TO_GO]
                there = np.array([shapely.transform(shape, lambda p, by=way: p + by) for way in ways])
                on = np.flatnonzero(shapely.covers(ground, there))
                for at, found in zip(on.tolist(), _gaps(there[on], others), strict=True):
                    if _wider(found, gaps):
                        x, y = ways[at]
                        best, gaps = (there[at], (moves[i][0] + x, moves[i][1] + y)), found
                if best:
                    now[i], moves[i] = best
                    moved = True
            if not moved:
                break
    return moves


def _gaps(shapes: npt.NDArray[np.object_], others: npt.NDArray[np.object_]) -> SpreadGaps:
    """Return the gaps (mm) between each of the shapes (rows) and the others, which are prepared; none wider than is wide enough."""
    return np.asarray(np.minimum(shapely.distance(others, shapes[:, None]), WIDE_ENOUGH))


def _wider(new: SpreadGaps, old: SpreadGaps) -> bool:
    """Say whether the least gap that changes grows; the last gap is that to the edge, all others stay as wide as parts need."""
    if (new[:-1] < np.minimum(old[:-1], PART_GAP)).any() or not new[:-1].all():
        return False
    least, before = np.sort(new), np.sort(old)
    changed = np.flatnonzero(np.abs(least - before) > BETTER)
    return bool(len(changed)) and bool(least[changed[0]] > before[changed[0]])
