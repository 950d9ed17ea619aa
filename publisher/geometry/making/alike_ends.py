"""Parts that lie upon themselves when they are turned or turned over: which of their edges then lie on which, and letters that follow.

Common sense of symmetric figures, no source.
"""

from collections.abc import Iterator
from dataclasses import replace
from math import atan2, degrees, dist

import shapely
from shapely.affinity import affine_transform

from publisher.basics import Point, Pose, Purpose
from publisher.design import Design, EndSwap, relettered
from publisher.geometry.model import Edge, Lap, Mark, Part
from publisher.geometry.paths import polygon

LIES_WITHIN = 0.02  # mm within which an outline lies upon itself: as true as a file is
ONE_PLACE = 9.0  # mm: equal letters of an edge that are nearer than this stand at one joint


def settle_letters(design: Design, parts: tuple[Part, ...]) -> tuple[Design, tuple[Part, ...]]:
    """Return design and parts with one match letter for joints that no buyer can mistake: of parts that lie upon themselves, edges that
    exchange their places."""
    met = {place.part for plan in design.panels if any(join.match for join in plan.joins) for place in plan.places}
    swaps = tuple(swap for part in parts if part.id in met for swap in end_swaps(part))
    settled, letters = relettered(design, swaps)
    return (design, parts) if settled is design else (settled, tuple(_relettered(part, letters) for part in parts))


def end_swaps(part: Part) -> Iterator[EndSwap]:
    """Yield the ways in which a part lies upon itself, other than as it lies, by its edges that have match letters."""
    edges = [edge for edge in part.edges if edge.centre is None and edge.nominal_length > LIES_WITHIN]
    lettered = [edge for edge in edges if edge.matches]
    if not lettered:
        return
    shape = polygon(part.outline)
    found = (
        swap
        for other in edges  # every way carries the first of them somewhere
        for pose in _onto(lettered[0], other)
        if _lies_on_itself(shape, pose) and (swap := _swap(part, lettered, edges, pose)) is not None
    )
    yield from dict.fromkeys(found)


def _onto(edge: Edge, other: Edge) -> Iterator[Pose]:
    """Yield the motions that carry an edge onto another of its length: turned, and turned over."""
    if abs(edge.nominal_length - other.nominal_length) > LIES_WITHIN:
        return
    a, b = edge.nominal_start, edge.nominal_end
    c, d = other.nominal_start, other.nominal_end
    if edge.name != other.name:
        yield Pose.carrying(a, c, _way(c, d) - _way(a, b))
    # mirrored in the y axis a direction of angle w has 180 - w; an edge of the same ring then runs the other way
    yield Pose.carrying(a, d, _way(d, c) - (180.0 - _way(a, b)), mirrored=True)


def _way(start: Point, end: Point) -> float:
    return degrees(atan2(end[1] - start[1], end[0] - start[0]))


def _lies_on_itself(shape: shapely.Polygon, pose: Pose) -> bool:
    a, b, c, d, e, f = pose.matrix()
    moved = affine_transform(shape, (a, c, b, d, e, f))
    if dist((moved.centroid.x, moved.centroid.y), (shape.centroid.x, shape.centroid.y)) > LIES_WITHIN:
        return False
    if any(abs(one - other) > LIES_WITHIN for one, other in zip(moved.bounds, shape.bounds, strict=True)):
        return False
    return float(shapely.hausdorff_distance(moved.boundary, shape.boundary)) <= LIES_WITHIN


def _swap(part: Part, lettered: list[Edge], edges: list[Edge], pose: Pose) -> EndSwap | None:
    """Return where a motion carries the lettered edges of a part; None where an edge comes to lie on none that is worked alike."""
    pairs: list[tuple[str, str]] = []
    laps: list[tuple[tuple[str, float], tuple[str, float]]] = []
    for edge in lettered:
        other = next((one for one in edges if _lies_on(edge, one, pose) and _worked_alike(edge, one)), None)
        if other is None:
            return None
        pairs.append((edge.name, other.name))
        for lap in edge.laps:
            there = next((one for one in other.laps if _same_slot(lap, one, pose)), None)
            if there is None:
                return None
            laps.append(((edge.name, lap.at), (other.name, there.at)))
    return EndSwap(part.id, tuple(pairs), tuple(laps))


def _lies_on(edge: Edge, other: Edge, pose: Pose) -> bool:
    ends = sorted(pose.apply_all((edge.nominal_start, edge.nominal_end)))
    goal = sorted((other.nominal_start, other.nominal_end))
    there = dist(ends[0], goal[0]) <= LIES_WITHIN and dist(ends[1], goal[1]) <= LIES_WITHIN
    return there or (dist(ends[0], goal[1]) <= LIES_WITHIN and dist(ends[1], goal[0]) <= LIES_WITHIN)


def _worked_alike(edge: Edge, other: Edge) -> bool:
    return (edge.face, round(edge.bevel, 3), edge.rabbet) == (other.face, round(other.bevel, 3), other.rabbet)


def _same_slot(lap: Lap, other: Lap, pose: Pose) -> bool:
    return dist(pose.apply(lap.floor), other.floor) <= LIES_WITHIN and abs(lap.width - other.width) <= LIES_WITHIN


def _relettered(part: Part, letters: dict[str, str]) -> Part:
    """Return a part with other match letters; "" for none."""
    edges = tuple(
        replace(
            edge,
            matches=_told(edge.matches, letters),
            laps=tuple(replace(lap, matches=_told(lap.matches, letters)) for lap in edge.laps),
        )
        for edge in part.edges
    )
    marks: list[Mark] = []
    for mark in part.marks:
        if mark.purpose is not Purpose.MATCH or mark.text not in letters:
            marks.append(mark)
            continue
        told = replace(mark, text=letters[mark.text])
        if told.text and not any(_one_place(told, other) for other in marks):
            marks.append(told)
    return replace(part, edges=edges, marks=tuple(marks))


def _told(matches: tuple[str, ...], letters: dict[str, str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(told for match in matches if (told := letters.get(match, match))))


def _one_place(mark: Mark, other: Mark) -> bool:
    if (mark.purpose, mark.name, mark.text) != (other.purpose, other.name, other.text):
        return False
    return dist(mark.path.points[0], other.path.points[0]) < ONE_PLACE
