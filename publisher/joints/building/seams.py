"""What a builder cannot see from templates: of two square edges, which ends against the other board; how far a lid reaches over walls.

A template shows neither, as tabs and slots, glue lines and bevels do, and a picture of a board of 5 mm at a quarter of its size shows it
to a sharp eye alone.
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence

import numpy as np
import shapely

from publisher.design import Join
from publisher.geometry import Edge
from publisher.joints.assembled import Assembled
from publisher.joints.model import Addition, EndsAt, InLine, ReachesOver
from publisher.joints.panels import PANEL_TOUCH, Panel, PanelAssembly, corners_of_edge, face_behind, touch_of

NO_INSET = 0.02  # mm: an inset within this of 0 is none, and lengths that differ by less are one
ONE_REACH = 0.05  # mm within which a rim runs beside a wall, and two overhangs are one
HALF_HELD = 0.3  # of a wall's width under what lies on it
ONE_PLANE = 180.0  # degrees between the inside faces of boards in one plane
LID_RAYS = (0.1, 0.3, 0.5, 0.7, 0.9)  # of an edge's length: where a rim's distance is measured
ONE_WALL_WAY = 0.01  # one less the cosine between two directions that are one
IN_LID = 0.2  # of a wall's outward direction that must lie in the plane of what rests on it


def ends_in_steps(subject: Assembled, additions: Sequence[Addition]) -> tuple[EndsAt, ...]:
    """Return, by steps, which parts end at which others in the butt joints that are glued there; those with an inset are drawn."""
    found = []
    for made in subject.panels:
        butts = [join for join in made.assembly.plan.joins if join.joint == "butt" and abs(join.inset) < NO_INSET]
        part_at = {panel.name: panel.part.id for panel in made.assembly.panels}
        butts = [join for join in butts if {join.a.panel, join.b.panel} <= part_at.keys()]
        both_ways = _both_ways(butts, part_at)
        for act in _glued(additions, made.assembly.plan.name):
            groups: dict[tuple[str, str], list[str]] = defaultdict(list)
            for join in _closed_by(butts, act):
                through, end = _through_and_end(join, part_at)
                groups[end, through] += [join.match] if frozenset((end, through)) in both_ways and join.match else []
            found += [EndsAt(act.step, end, at, tuple(sorted(set(marks)))) for (end, at), marks in groups.items()]
    return tuple(_merged(found))


def lines_in_steps(subject: Assembled, additions: Sequence[Addition]) -> tuple[InLine, ...]:
    """Return, by steps, which parts are glued edge to edge in one plane: nothing on their templates tells that from a corner."""
    marks: dict[tuple[int, str, str], set[str]] = defaultdict(set)
    for made in subject.panels:
        part_at = {panel.name: panel.part.id for panel in made.assembly.panels}
        flat = [
            join
            for join in made.assembly.plan.joins
            if join.joint == "mitre" and abs(join.corner - ONE_PLANE) < NO_INSET
        ]
        flat = [join for join in flat if {join.a.panel, join.b.panel} <= part_at.keys()]
        for act in _glued(additions, made.assembly.plan.name):
            for join in _closed_by(flat, act):
                one, other = sorted((part_at[join.a.panel], part_at[join.b.panel]))
                marks[act.step, one, other] |= {join.match} - {""}
    return tuple(InLine(step, one, other, tuple(sorted(own))) for (step, one, other), own in sorted(marks.items()))


def _merged(found: Sequence[EndsAt]) -> Iterator[EndsAt]:
    """Yield what is said once in each step, with all its marks."""
    marks: dict[tuple[int, str, str], set[str]] = defaultdict(set)
    for one in found:
        marks[one.step, one.part, one.at] |= {*one.marks}
    yield from (EndsAt(step, part, at, tuple(sorted(own))) for (step, part, at), own in sorted(marks.items()))


def _glued(additions: Sequence[Addition], assembly: str) -> Iterator[Addition]:
    yield from (act for act in additions if act.assembly == assembly and not act.trial)


def _closed_by(joins: Sequence[Join], act: Addition) -> Iterator[Join]:
    """Yield the joins both of whose panels stand after an act, and not before it."""
    stands = {*act.before, *act.added}
    yield from (j for j in joins if {j.a.panel, j.b.panel} <= stands and {j.a.panel, j.b.panel} & {*act.added})


def _through_and_end(join: Join, part_at: dict[str, str]) -> tuple[str, str]:
    other = join.b.panel if join.through == join.a.panel else join.a.panel
    return part_at[join.through], part_at[other]


def _both_ways(joins: Sequence[Join], part_at: dict[str, str]) -> set[frozenset[str]]:
    """Return the pairs of parts of which now the one runs through, and now the other."""
    ways = {_through_and_end(join, part_at) for join in joins}
    return {frozenset(way) for way in ways if way[::-1] in ways}


def reaches_in_steps(subject: Assembled, additions: Sequence[Addition]) -> tuple[ReachesOver, ...]:
    """Return, by steps, how far what rests on edges there reaches over the outsides of the walls under it."""
    found: dict[tuple[int, str, str], list[float]] = {}
    for made in subject.panels:
        resting = {rest.panel for rest in made.assembly.plan.rests}
        for act in _glued(additions, made.assembly.plan.name):
            stands = {*act.before, *act.added}
            for name in (name for name in act.added if name in resting):
                for wall, far in _over(made.assembly, name, stands):
                    known = found.setdefault((act.step, made.assembly.panel(name).part.id, wall), [])  # type: ignore[union-attr]
                    known += [] if any(abs(far - other) < ONE_REACH for other in known) else [far]
    return tuple(
        ReachesOver(step, part, wall, far) for (step, part, wall), every in found.items() for far in sorted(every)
    )


def _over(assembly: PanelAssembly, name: str, stands: set[str]) -> Iterator[tuple[str, float]]:
    """Yield the parts on whose edges a panel lies, with how far (mm) its rim reaches over each: below zero where it ends before."""
    above = assembly.panel(name)
    if above is None or above.part.bending is not None:
        return
    lying = {rest.panel for rest in assembly.plan.rests}
    walls = [wall for wall in assembly.panels if wall.name in stands - lying and wall.part.bending is None]
    outermost: list[tuple[str, float, np.ndarray]] = []
    for wall in walls:
        pasts = [past for edge in wall.part.edges if (past := _past(above, wall, edge)) is not None]
        outermost += [(wall.part.id, *pasts[0])] if pasts else []
    for part, far, way in outermost:
        if not any(far > other + ONE_REACH and float(way @ its) > 1.0 - ONE_WALL_WAY for _, other, its in outermost):
            yield part, far


def _past(above: Panel, wall: Panel, edge: Edge) -> tuple[float, np.ndarray] | None:
    """Return how far a panel's underside reaches over the outside of a wall whose edge it lies on, and in which direction of its own;
    None where it lies elsewhere, or its rim does not run beside that wall."""
    face = face_behind(above.part, above.frame)
    touch = touch_of(face, wall.part, wall.frame, edge, share=HALF_HELD)
    corners = corners_of_edge(wall.part, edge)
    if touch is None or corners is None or touch.gap > PANEL_TOUCH or touch.bare > touch.length / 2:
        return None
    out = face.frame.axes.T @ wall.frame.outward
    if float(np.hypot(out[0], out[1])) < IN_LID:
        return None
    way = out[:2] / np.hypot(out[0], out[1])
    start, end = (face.frame.back(wall.frame.carry(corners[:2]))[n] for n in (0, 1))
    rays = []
    for share in LID_RAYS:
        rim = start + share * (end - start)
        down = float(out[2] * rim[2] / np.hypot(out[0], out[1]))  # to where the outside's plane meets the underside
        rays.append(_to_rim(face.area, rim[:2] - down * way, way))
    if None in rays or np.ptp(np.array(rays, dtype=float)) > ONE_REACH:
        return None
    return float(np.mean(np.array(rays, dtype=float))), way


def _to_rim(area: shapely.Geometry, at: np.ndarray, way: np.ndarray) -> float | None:
    """Return how far the farthest rim of an area lies from a point, in a direction; None where the line of both misses the area."""
    left, bottom, right, top = area.bounds
    reach = float(np.hypot(right - left, top - bottom)) + float(np.hypot(at[0] - left, at[1] - bottom))
    cut = shapely.get_coordinates(shapely.intersection(area, shapely.LineString([at - reach * way, at + reach * way])))
    return float(((cut - at) @ way).max()) if len(cut) else None
