"""Where joins lie on a finished panel: at its edges and along the lines beside them, with what is drawn there."""

from collections.abc import Iterator, Sequence

import shapely

from publisher.basics import LineKind, Path, Point, Purpose, polyline, record
from publisher.design import EdgeTreatment, PartPlan
from publisher.geometry.making.flush_lines import SharedEnds
from publisher.geometry.making.laps import left_end_first
from publisher.geometry.making.tab_rows import joint_line, row_of
from publisher.geometry.model import Edge, Lap, Mark
from publisher.geometry.paths import polygon

GLUED_BEHIND = "glued behind"  # name of the mark whose words say that glue lines belong on the inside face
BEHIND = "inside face"
LAP_WORDS = 20.0  # mm beside a slot in which its letter stands


@record
class JointPlace:
    """A stretch (mm, in the edge's direction) at which mates stand: on an edge (``mate`` 0, in a rabbet its width), or
    beside it, ``mate`` mm wide on its left. The letters follow each other the way the edge runs if ``forward``.
    ``glued``: nothing is cut there, the mate's end is glued on."""

    edge: str
    start: Point
    end: Point
    mate: float
    letters: tuple[str, ...]
    forward: bool = True
    glued: bool = False


def joint_places(
    edges: Sequence[Edge], outer: Path, plan: PartPlan, ends: SharedEnds | None = None
) -> tuple[JointPlace, ...]:
    """Return the places of all joins of a part. ``edges``: finished; ``outer``: the outline before its joins; ``ends``: what
    mates meet of lines that are longer than they are."""
    nominal = polygon(outer)
    return tuple(place for edge in edges if edge.centre is None for place in _of_edge(edge, nominal, plan, ends or {}))


def _of_edge(edge: Edge, nominal: shapely.Polygon, plan: PartPlan, ends: SharedEnds) -> Iterator[JointPlace]:
    """Yield the place of the mate at an edge itself, of those that cross it, and of those that stand beside it."""
    own = [t for t in plan.treatments if t.edge == edge.name]
    yield from _on_it(edge, own, ends)
    for lap in edge.laps:
        yield JointPlace(edge.name, *_beside(edge, lap), 0.0, lap.matches, left_end_first(*_ends(edge)))
    for treatment in own:
        for one in treatment.lines:
            found = joint_line(edge, one.inset, nominal) if one.inset > 0.0 else None
            if found is not None:
                line = _met(edge, one.inset, found, ends)
                glued = all(abs(row.inset - one.inset) > 1e-6 for row in treatment.slots)
                yield JointPlace(edge.name, *line, one.mate, one.matches, one.forward, glued)


def _on_it(edge: Edge, treatments: Sequence[EdgeTreatment], ends: SharedEnds) -> Iterator[JointPlace]:
    """Yield the place of the mates whose letters stand neither at a slot that crosses the edge nor beside it."""
    lines = [one for treatment in treatments for one in treatment.lines]
    elsewhere = {letter for lap in edge.laps for letter in lap.matches}
    elsewhere.update(letter for one in lines if one.inset > 0.0 for letter in one.matches)
    letters = tuple(letter for letter in edge.matches if letter not in elsewhere)
    if letters:
        # in a rabbet nothing stays that could carry a letter
        mate = edge.rabbet.width if edge.rabbet else 0.0
        forward = all(one.forward for one in lines if one.inset <= 0.0)
        yield JointPlace(edge.name, *_met(edge, 0.0, stated_edge(edge), ends), mate, letters, forward)


def _met(edge: Edge, inset: float, line: tuple[Point, Point], ends: SharedEnds) -> tuple[Point, Point]:
    """Return what of a joint line its mate meets: all of it, unless the mate is shorter."""
    met = ends.get(row_of(edge.name, inset))
    return met.of(line) if met else line


def _ends(edge: Edge) -> tuple[Point, Point]:
    return edge.nominal_start, edge.nominal_end


def _beside(edge: Edge, lap: Lap) -> tuple[Point, Point]:
    """Return the stretch of the finished edge on both sides of a slot, in the edge's direction."""
    (ax, ay), (bx, by) = edge.start, edge.end
    length = ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5
    x, y = (bx - ax) / length, (by - ay) / length
    middle = (lap.floor[0] - ax) * x + (lap.floor[1] - ay) * y
    reach = lap.width / 2.0 + LAP_WORDS
    return (ax + x * (middle - reach), ay + y * (middle - reach)), (
        ax + x * (middle + reach),
        ay + y * (middle + reach),
    )


def stated_edge(edge: Edge) -> tuple[Point, Point]:
    """Return the finished edge, stretched so that its middle is that of the nominal one: mates share that."""
    (ax, ay), (bx, by) = edge.nominal_start, edge.nominal_end
    length = edge.nominal_length
    x, y = (bx - ax) / length, (by - ay) / length

    def dropped(p: Point) -> Point:
        away = (edge.start[0] - ax) * -y + (edge.start[1] - ay) * x
        along = (p[0] - ax) * x + (p[1] - ay) * y
        return (ax + x * along - y * away, ay + y * along + x * away)

    return dropped(edge.nominal_start), dropped(edge.nominal_end)


def glue_lines(places: Sequence[JointPlace]) -> Iterator[Mark]:
    """Yield both sides of each mate that is glued on beside an edge: its outside face and its inside face; and between them the
    words that say where they belong. Inside faces make the corner of a join: a mate beside an edge stands on no other face."""
    for place in places:
        if not place.glued:
            continue
        (ax, ay), (bx, by) = place.start, place.end
        length = ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5
        x, y = (bx - ax) / length, (by - ay) / length
        for inside in (0.0, place.mate):
            line = ((ax - y * inside, ay + x * inside), (bx - y * inside, by + x * inside))
            yield Mark(LineKind.GLUE, Purpose.LAP, polyline(line), name=f"glue beside {place.edge}")
        deep = place.mate / 2.0
        middle = ((ax + bx) / 2.0 - y * deep, (ay + by) / 2.0 + x * deep)
        yield Mark(LineKind.REFERENCE, Purpose.LAP, polyline((middle,)), name=GLUED_BEHIND, text=BEHIND)
