"""What a builder cannot see from templates: of two square edges, which ends against the other board; how far a lid reaches over walls.

A template shows neither, as tabs and slots, glue lines and bevels do, and a picture of a board of 5 mm at a quarter of its size shows it
to a sharp eye alone.
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from typing import Literal

import numpy as np
import shapely

from publisher.design import Join
from publisher.geometry import Edge
from publisher.joints.assembled import Assembled
from publisher.joints.model import Addition, EndsAt, InLine, LevelAt, ReachesEnds, ReachesOver
from publisher.joints.panels import PANEL_TOUCH, BoardFace, Panel, PanelAssembly, corners_of_edge, face_behind, touch_of

NO_INSET = 0.02  # mm: an inset within this of 0 is none, and lengths that differ by less are one
ONE_REACH = 0.05  # mm within which a rim runs beside a wall, and two overhangs are one
HALF_HELD = 0.3  # of a wall's width under what lies on it
ONE_PLANE = 180.0  # degrees between the inside faces of boards in one plane
LID_RAYS = (0.1, 0.3, 0.5, 0.7, 0.9)  # of an edge's length: where a rim's distance is measured
ONE_WALL_WAY = 0.01  # one less the cosine between two directions that are one
UPWARDS = 0.5  # of an edge's length by which it rises that has a foot and a top
IN_LID = 0.2  # of a wall's outward direction that must lie in the plane of what rests on it

Level = Literal["foot", "top"]


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


def levels_in_steps(subject: Assembled, additions: Sequence[Addition]) -> tuple[LevelAt, ...]:
    """Return, by steps, which parts are level at which end where edges of unequal length are glued edge to edge: no template shows it."""
    ends: dict[tuple[int, tuple[str, str]], dict[Level, set[str]]] = defaultdict(lambda: defaultdict(set))
    for made in subject.panels:
        unequal = [join for join in made.assembly.plan.joins if join.flush and abs(join.inset) < NO_INSET]
        for act in _glued(additions, made.assembly.plan.name):
            for join in _closed_by(unequal, act):
                end = _level_end(made.assembly, join)
                if end is not None:
                    one, other = sorted(made.assembly.panel(ref.panel).part.id for ref in (join.a, join.b))  # type: ignore[union-attr]
                    ends[act.step, (one, other)][end] |= {join.match} - {""}
    alike: dict[tuple[int, Level], list[set[str]]] = defaultdict(list)
    found: list[LevelAt] = []
    for (step, pair), own in sorted(ends.items()):
        for end, marks in sorted(own.items()):
            if len(own) > 1:  # at one joint level here, at another one there: said where letters tell the joints apart
                found += [LevelAt(step, pair, end, tuple(sorted(marks)))] if marks else []
                continue
            groups = alike[step, end]
            met = [group for group in groups if group & {*pair}]
            alike[step, end] = [group for group in groups if group not in met] + [set(pair).union(*met)]
    found += [LevelAt(step, tuple(sorted(own)), end) for (step, end), groups in alike.items() for own in groups]
    return tuple(sorted(found, key=lambda one: (one.step, one.parts, one.end)))


def _level_end(assembly: PanelAssembly, join: Join) -> Level | None:
    """Return which end of a join is said to be level; None where its edges are as long as each other, or it does not run upwards."""
    panels = [assembly.panel(ref.panel) for ref in (join.a, join.b)]
    if join.flush is None or any(panel is None or panel.part.bending is not None for panel in panels):
        return None
    edges = [panel.part.edge(ref.edge) for panel, ref in zip(panels, (join.a, join.b), strict=True)]  # type: ignore[union-attr]
    if any(edge is None or edge.centre is not None for edge in edges):
        return None
    if abs(edges[0].nominal_length - edges[1].nominal_length) < NO_INSET:  # type: ignore[union-attr]
        return None
    at = 0 if join.a.panel == join.flush[0] else 1
    panel, edge = panels[at], edges[at]
    across = {"left": (0, min), "right": (0, max), "bottom": (1, min), "top": (1, max)}[join.flush[1]]
    both = sorted((edge.nominal_start, edge.nominal_end), key=lambda point: point[across[0]])  # type: ignore[union-attr]
    end, other = both if across[1] is min else both[::-1]
    rises = float(panel.frame.point(other, 0.0)[2] - panel.frame.point(end, 0.0)[2])  # type: ignore[union-attr]
    long = edge.nominal_length  # type: ignore[union-attr]
    return "foot" if rises > UPWARDS * long else "top" if rises < -UPWARDS * long else None


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


def past_ends_in_steps(subject: Assembled, additions: Sequence[Addition]) -> tuple[ReachesEnds, ...]:
    """Return, by steps, how far what rests on walls that run one way alone reaches over their ends, where that is as far at both."""
    found: dict[tuple[int, str, str], set[float]] = defaultdict(set)
    for made in subject.panels:
        resting = {rest.panel for rest in made.assembly.plan.rests}
        for act in _glued(additions, made.assembly.plan.name):
            for above in (made.assembly.panel(name) for name in act.added if name in resting):
                own = _carrying(made.assembly, above, {*act.before, *act.added}) if above is not None else []
                ways = [way for _, _, _, way in own]
                if above is None or not own or any(abs(float(ways[0] @ way)) < 1.0 - ONE_WALL_WAY for way in ways):
                    continue
                for wall, edge, face, _ in own:
                    found[act.step, above.part.id, wall.part.id] |= _past_ends(wall, edge, face)
    return tuple(ReachesEnds(*key, next(iter(fars))) for key, fars in sorted(found.items()) if len(fars) == 1)


Carrying = tuple[Panel, Edge, BoardFace, np.ndarray]


def _carrying(assembly: PanelAssembly, above: Panel, stands: set[str]) -> list[Carrying]:
    """Return the walls on whose edges a panel lies, with the edge, the panel's underside, and the way out of the wall in it."""
    lying = {rest.panel for rest in assembly.plan.rests}
    walls = [wall for wall in assembly.panels if wall.name in stands - lying and wall.part.bending is None]
    face = face_behind(above.part, above.frame)
    found: list[Carrying] = []
    for wall, edge in ((one, edge) for one in walls for edge in one.part.edges):
        touch = touch_of(face, wall.part, wall.frame, edge, share=HALF_HELD)
        out = (face.frame.axes.T @ wall.frame.outward)[:2]
        held = touch is not None and touch.gap <= PANEL_TOUCH and touch.bare <= touch.length / 2
        if held and np.hypot(*out) > IN_LID and corners_of_edge(wall.part, edge) is not None:
            found.append((wall, edge, face, out / np.hypot(*out)))
    return found


def _past_ends(wall: Panel, edge: Edge, face: BoardFace) -> set[float]:
    """Return how far (mm) a panel's underside reaches over both ends of a wall's edge, one number where that is as far; else two."""
    corners = corners_of_edge(wall.part, edge)
    assert corners is not None
    ends = [face.frame.back(wall.frame.carry(corners[:2]))[n][:2] for n in (0, 1)]
    way = (ends[1] - ends[0]) / max(float(np.hypot(*(ends[1] - ends[0]))), NO_INSET)
    fars = [_to_rim(face.area, end, side * way) for end, side in zip(ends, (-1.0, 1.0), strict=True)]
    if None in fars or abs(fars[0] - fars[1]) > ONE_REACH:  # type: ignore[operator]
        return {-np.inf, np.inf}
    return {round(float(np.mean(np.array(fars, dtype=float))), 2)}


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
        rays.append(_to_rim(face.area, rim[:2] + down * way, way))
    if None in rays or np.ptp(np.array(rays, dtype=float)) > ONE_REACH:
        return None
    return float(np.mean(np.array(rays, dtype=float))), way


def _to_rim(area: shapely.Geometry, at: np.ndarray, way: np.ndarray) -> float | None:
    """Return how far the farthest rim of an area lies from a point, in a direction; None where the line of both misses the area."""
    left, bottom, right, top = area.bounds
    reach = float(np.hypot(right - left, top - bottom)) + float(np.hypot(at[0] - left, at[1] - bottom))
    cut = shapely.get_coordinates(shapely.intersection(area, shapely.LineString([at - reach * way, at + reach * way])))
    return float(((cut - at) @ way).max()) if len(cut) else None
