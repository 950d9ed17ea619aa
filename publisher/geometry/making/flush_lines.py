"""What of a joint line edges share that are flush at one end: the length of the shorter one, from that end on. Mm."""

from collections.abc import Mapping, Sequence
from math import dist

from publisher.basics import SAME_POINT, Point, record
from publisher.design import EdgeRef, Join, PanelPlan
from publisher.geometry.making.tab_rows import RowKey, joint_line, row_of, runs_to
from publisher.geometry.paths import polygon
from publisher.geometry.registry import Shape


@record
class SharedEnd:
    """The ``length`` mm at the end of a line, or at its start (``at_end`` False), over which a shorter edge meets it."""

    length: float
    at_end: bool

    def of(self, line: tuple[Point, Point]) -> tuple[Point, Point]:
        """Return that stretch of a line."""
        (ax, ay), (bx, by) = line
        share = min(1.0, self.length / max(dist(*line), SAME_POINT))
        if self.at_end:
            return (bx + (ax - bx) * share, by + (ay - by) * share), line[1]
        return line[0], (ax + (bx - ax) * share, ay + (by - ay) * share)


SharedEnds = Mapping[RowKey, SharedEnd]
"""By edge and inset of the joint line; a line that is not here is met over its whole length."""


def shared_ends(plans: Sequence[PanelPlan], shapes: Mapping[str, Shape]) -> dict[str, dict[RowKey, SharedEnd]]:
    """Return, by part, the lines that mates meet over a part of their length: of several such mates, the longest stretch."""
    found: dict[str, dict[RowKey, SharedEnd]] = {}
    whole: set[tuple[str, RowKey]] = set()
    for plan in plans:
        part_of = {place.name: place.part for place in plan.places}
        for join in plan.joins:
            sides = [(part_of[ref.panel], row_of(ref.edge, at)) for ref, at in _sides(join)]
            met = _met_ends(join, [_line(shapes.get(part_of[ref.panel]), ref, at) for ref, at in _sides(join)])
            whole.update(() if met else sides)
            for (part, row), end in zip(sides, met, strict=False):
                before = found.setdefault(part, {}).get(row)
                if before is not None and before.at_end != end.at_end:
                    whole.add((part, row))  # flush at one end here and at the other there: all of it is met
                found[part][row] = end if before is None or before.at_end != end.at_end else max(before, end, key=_long)
    return {part: {row: end for row, end in rows.items() if (part, row) not in whole} for part, rows in found.items()}


def _long(end: SharedEnd) -> float:
    return end.length


def _sides(join: Join) -> tuple[tuple[EdgeRef, float], tuple[EdgeRef, float]]:
    """Return both edges of a join, each with how far beside it the mate stands."""
    return (join.a, join.inset), (join.b, 0.0)


def _met_ends(join: Join, lines: Sequence[tuple[Point, Point] | None]) -> tuple[SharedEnd, ...]:
    """Return what is met of both lines of a join that is flush at one end; () for one that is not, or whose lines are unknown."""
    one, other = lines
    if join.flush is None or one is None or other is None:
        return ()
    length, named_a = min(dist(*one), dist(*other)), join.flush[0] == join.a.panel
    at_end = runs_to(join.flush[1], *(one if named_a else other)) == named_a
    return SharedEnd(length, at_end), SharedEnd(length, not at_end)


def _line(shape: Shape | None, ref: EdgeRef, inset: float) -> tuple[Point, Point] | None:
    edge = next((e for e in shape.edges if e.name == ref.edge and e.centre is None), None) if shape else None
    if shape is None or edge is None or edge.nominal_length < SAME_POINT:
        return None
    return joint_line(edge, inset, polygon(shape.outer)) if inset > 0.0 else (edge.nominal_start, edge.nominal_end)
