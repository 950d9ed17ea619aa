"""Corners that the spec leaves unsaid, worked out from shapes before their joins are cut: what follows, and what stays free."""

from collections import defaultdict, deque
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from math import atan2, degrees, dist

from publisher.basics import Finding, record
from publisher.design import EdgeRef, EdgeTreatment, Join, PanelPlan, PartPlan
from publisher.geometry.making.closed_rings import MOST_FREE, plane_ring, tip_of_three, tip_over_plane
from publisher.geometry.making.cut_to_slopes import slope_bevels
from publisher.geometry.making.placed_edges import PlacedEdges, apart, edges_at, heading, parallel, way
from publisher.geometry.model import Edge
from publisher.geometry.registry import Shape, deg
from publisher.geometry.rules import CORNER_FREE, CORNERS_DIFFER

NEAR = 0.05  # mm: tips and widths that differ by less are one
SAME_ANGLE = 1e-4  # degrees


@record
class _Ring:
    """Panels that joins lead round: join i lies between panel i and the next one; each panel with the edge by which the ring
    comes to it and the one by which it goes on. ``upright``: those are parallel, else they meet in a tip."""

    joins: tuple[int, ...]
    sides: tuple[tuple[Edge, Edge], ...]
    widths: tuple[float, ...]
    upright: bool


def with_corners(
    plans: Sequence[PartPlan], panels: Sequence[PanelPlan], shapes: Mapping[str, Shape]
) -> tuple[tuple[PartPlan, ...], tuple[Finding, ...]]:
    """Return the plans of parts with the bevels of all corners and slopes that follow, and findings for those that do not.

    A corner that the spec leaves unsaid follows from the bevels of shapes that know them; from the edges on which both
    panels rest; from the lengths round a ring with up to three unsaid corners; from facets round a tip whose feet lie in
    one plane. What a ring leaves free is taken as 90°, and told.
    """
    bevels: dict[tuple[str, str], list[tuple[float, str]]] = defaultdict(list)
    found: list[Finding] = []
    for panel in panels:
        part_of = {place.name: place.part for place in panel.places}
        given, told = _given(panel, shapes)
        found += told
        for ref, bevel in given:
            bevels[part_of[ref.panel], ref.edge].append((bevel, ref.panel))
    made = []
    for plan in plans:
        own = {edge: given for (part, edge), given in bevels.items() if part == plan.id}
        found += [finding for edge, given in own.items() for finding in _differ(plan, edge, given)]
        made.append(replace(plan, treatments=tuple(_bevelled(t, own) for t in plan.treatments)) if own else plan)
    return tuple(made), tuple(found)


def _given(panel: PanelPlan, shapes: Mapping[str, Shape]) -> tuple[list[tuple[EdgeRef, float]], tuple[Finding, ...]]:
    """Return the bevels of edges that follow in one assembly, from its corners and its slopes, and what is to be told of them."""
    given: list[tuple[EdgeRef, float]] = []
    found: list[Finding] = []
    if any(join.unsaid for join in panel.joins):
        assembly = _Assembly(panel, edges_at(panel, shapes))
        corners = assembly.corners()
        for number, corner in corners.items():
            given += [(ref, (180.0 - corner) / 2.0) for ref in (panel.joins[number].a, panel.joins[number].b)]
        found += assembly.free(corners)
    if any(rest.cut_to_slope for rest in panel.rests):
        slopes, told = slope_bevels(panel, edges_at(panel, shapes))
        given += slopes.items()
        found += told
    return given, tuple(found)


def _bevelled(treatment: EdgeTreatment, own: Mapping[str, Sequence[tuple[float, str]]]) -> EdgeTreatment:
    given = own.get(treatment.edge)
    return replace(treatment, bevel=given[0][0]) if given and (treatment.as_shaped or treatment.to_slope) else treatment


def _differ(plan: PartPlan, edge: str, given: Sequence[tuple[float, str]]) -> Iterator[Finding]:
    """Find places of one part at which the corners that follow ask for different bevels."""
    first, place = given[0]
    other = next(((bevel, there) for bevel, there in given if abs(bevel - first) > SAME_ANGLE), None)
    if other is not None:
        yield CORNERS_DIFFER.found(
            f"the edge {edge} of part “{plan.id}” is bevelled by {deg(first)} at {place} and by {deg(other[0])} at {other[1]}, as what is "
            "round them asks",
            subject=f"part {plan.id}",
            hint="make the two places two parts (the second one may be like: the first), or write the corners and make them alike",
            place=next((t.place for t in plan.treatments if t.edge == edge), plan.place),
            value=other[0],
            limit=first,
        )


class _Assembly:
    """The joins of one panel assembly over the edges of its untreated shapes."""

    def __init__(self, plan: PanelPlan, edges: PlacedEdges) -> None:
        self.plan = plan
        self.edges = edges
        self.joins = {
            number: join
            for number, join in enumerate(plan.joins)
            if join.at is None and join.a in self.edges and join.b in self.edges
        }
        self.rings: dict[int, _Ring] = {}

    def corners(self) -> dict[int, float]:
        """Return the corners of unsaid joins that follow, by the number of the join."""
        found: dict[int, float] = {}
        unsaid = [number for number, join in self.joins.items() if join.unsaid]
        for number in unsaid:
            corner = self.of_its_panels(self.joins[number])
            if corner is not None:
                found[number] = corner
        left = [number for number in unsaid if number not in found]
        rings = {number: list(self.ways(number)) for number in left}
        solved = True
        while solved:  # what follows in one ring may leave fewer unsaid in another
            solved = False
            for number in left:
                for ring in rings[number] if number not in found else ():
                    if more := self.solve(ring, found):
                        found.update(more)
                        solved = True
                        break
        self.rings = {number: rings[number][0] for number in left if rings[number]}
        return found

    def of_its_panels(self, join: Join) -> float | None:
        """Return the corner that follows from the two panels of a join alone; None where none does."""
        corner = self.of_shapes(join)
        return self.of_rests(join) if corner is None else corner

    def of_shapes(self, join: Join) -> float | None:
        """Return the corner that the bevels of both shapes make, or twice that of the one that knows it."""
        a, b = self.edges[join.a].bevel, self.edges[join.b].bevel
        if not (a or b):
            return None
        return 180.0 - (a or b) - (b or a)

    def of_rests(self, join: Join) -> float | None:
        """Return the corner between two panels that rest on edges of one and the same panel, as the ridge of a roof does."""
        lying = {rest.panel: rest.on for rest in self.plan.rests}
        for one in lying.get(join.a.panel, ()):
            for other in lying.get(join.b.panel, ()):
                a, b = self.edges.get(one), self.edges.get(other)
                if one.panel == other.panel and one != other and a is not None and b is not None:
                    turn = abs((heading(a) - heading(b) + 180.0) % 360.0 - 180.0)
                    return 180.0 - turn if SAME_ANGLE < turn < 180.0 - SAME_ANGLE else None
        return None

    def ways(self, number: int) -> Iterator[_Ring]:
        """Yield the shortest ring through a join over panels with parallel edges, and the shortest one round a tip."""
        for upright in (True, False):
            ring = self.ring(number, upright)
            if ring is not None and len(ring.joins) > 2:
                yield ring

    def ring(self, number: int, upright: bool) -> _Ring | None:
        """Return the shortest ring through a join, breadth first; None where there is none."""
        start, goal = self.joins[number].b, self.joins[number].a
        before: dict[EdgeRef, tuple[EdgeRef, EdgeRef, int] | None] = {start: None}
        waiting = deque([start])
        while waiting:
            came = waiting.popleft()
            for other, join in self.joins.items():
                for out, there in ((join.a, join.b), (join.b, join.a)):
                    if other == number or out.panel != came.panel or out == came or there in before:
                        continue
                    if parallel(self.edges[came], self.edges[out]) != upright:
                        continue
                    before[there] = (came, out, other)
                    if there.panel != goal.panel:
                        waiting.append(there)
                    elif there != goal and parallel(self.edges[there], self.edges[goal]) == upright:
                        return self.traced(number, there, before, upright)
        return None

    def traced(
        self, number: int, last: EdgeRef, before: Mapping[EdgeRef, tuple[EdgeRef, EdgeRef, int] | None], upright: bool
    ) -> _Ring | None:
        """Return the ring that leads from a join to the last edge before it, with the widths of its panels."""
        sides, joins = [(last, self.joins[number].a)], [number]
        step = before[last]
        while step is not None:
            came, out, join = step
            sides.append((came, out))
            joins.append(join)
            step = before[came]
        sides.reverse()
        joins.reverse()
        if len({ref.panel for pair in sides for ref in pair}) < len(sides):
            return None
        edges = tuple((self.edges[one], self.edges[other]) for one, other in sides)
        if not upright:
            return _Ring(tuple(joins), edges, (), False)
        widths = [apart(*pair) for pair in edges]
        for i, join in enumerate(joins):
            for k in (i, (i + 1) % len(joins)):
                if self.joins[join].a in sides[k]:
                    widths[k] -= self.joins[join].inset
        return _Ring(tuple(joins), edges, tuple(widths), True) if min(widths) > NEAR else None

    def solve(self, ring: _Ring, found: Mapping[int, float]) -> dict[int, float]:
        """Return the unsaid corners of a ring that follow from its lengths."""
        known = [found.get(n, None if self.joins[n].unsaid else self.joins[n].corner) for n in ring.joins]
        if ring.upright:
            made = plane_ring(ring.widths, known)
            return {ring.joins[i]: corner for i, corner in made.items()} if made else {}
        corners = _round_a_tip(ring, any(corner is not None for corner in known))
        return {n: c for n, c, k in zip(ring.joins, corners, known, strict=True) if k is None} if corners else {}

    def free(self, found: Mapping[int, float]) -> Iterator[Finding]:
        """Yield a finding for each ring whose lengths leave corners free. Panels in a row have the corner of every joint: 90°."""
        told: set[int] = set()
        for number, join in self.joins.items():
            ring = self.rings.get(number)
            if ring is None or number in found or number in told:
                continue
            unsaid = [n for n in ring.joins if self.joins[n].unsaid and n not in found]
            told.update(unsaid)
            if len(unsaid) > MOST_FREE:
                yield self.told(join, len(ring.joins), len(unsaid))

    def told(self, join: Join, count: int, unsaid: int) -> Finding:
        """Say how many corners of a ring nothing fixes, and what would."""
        free = unsaid - MOST_FREE
        hint = f"write {free} of these corners, and the others follow"
        if unsaid == count:
            hint += f"; or say corners: equal, which makes each of them {deg(180.0 - 360.0 / count)}"
        return CORNER_FREE.found(
            f"{unsaid} corners of the ring of {count} panels round {join.a} – {join.b} are unsaid, and its lengths leave {free} of "
            "them free: each is taken as 90°",
            subject=f"assembly {self.plan.name}",
            hint=hint,
            place=join.place,
            value=float(free),
            limit=0.0,
        )


def _round_a_tip(ring: _Ring, some_known: bool) -> tuple[float, ...] | None:
    """Return the corners of panels that meet in a tip: three of them by themselves, more where none is known and their feet lie in
    one plane; None where they do not follow, or the edges that meet do not run from one tip."""
    fans = [_fan(*pair) for pair in ring.sides]
    tapers = [taper for taper, _, _ in fans]
    if any(dist(fans[i][2], fans[(i + 1) % len(fans)][1]) > NEAR for i in range(len(fans))):
        return None
    if len(tapers) == MOST_FREE:
        return tip_of_three(tapers)
    return None if some_known else tip_over_plane([out[1] for _, _, out in fans], tapers)


def _fan(one: Edge, other: Edge) -> tuple[float, tuple[float, float], tuple[float, float]]:
    """Return the angle of a panel at the tip in which two of its edges meet (degrees), and how far from the tip each of them
    begins and ends (the nearer end first)."""
    (ux, uy), (vx, vy) = way(one), way(other)
    (ax, ay), (bx, by) = one.nominal_start, other.nominal_start
    t = ((bx - ax) * vy - (by - ay) * vx) / (ux * vy - uy * vx)
    tip = (ax + ux * t, ay + uy * t)
    reaches, outs = [], []
    for edge in (one, other):
        near, far = sorted((edge.nominal_start, edge.nominal_end), key=lambda p: dist(p, tip))
        reaches.append((dist(near, tip), dist(far, tip)))
        outs.append((far[0] - tip[0], far[1] - tip[1]))
    (px, py), (qx, qy) = outs
    return degrees(atan2(abs(px * qy - py * qx), px * qx + py * qy)), reaches[0], reaches[1]
