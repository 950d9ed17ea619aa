"""Where the tabs of a join stand: as stated along the joint line, moved inwards where either part has too little board. Mm."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from math import dist, inf

import shapely

from publisher.basics import SAME_POINT, Line, Path, Point, record
from publisher.design import Join, PanelPlan, PartPlan, SlotRow
from publisher.geometry.model import Edge
from publisher.geometry.paths import polygon
from publisher.geometry.registry import Shape
from publisher.geometry.rules import LEAST_WALL

LEAST_TAB = 12.0
"""mm: the length of a tab in bare board of 5 mm. Common practice, no source."""

_FLAT = 0.01  # mm: what a flattened arc takes of a wall is less


@record
class Reach:
    """Between which places the tabs of a row stand: mm from the middle of the row, in the edge's direction.

    A row is spread over the joint line; of edges that are flush at one end, over the length ``over`` of the shorter one, with
    its middle ``middle`` mm from that of the line.
    """

    low: float = -inf
    high: float = inf
    middle: float = 0.0
    over: float | None = None

    def both(self, other: "Reach") -> "Reach":
        """Return what lies within both."""
        return replace(self, low=max(self.low, other.low), high=min(self.high, other.high))

    def turned(self) -> "Reach":
        """Return the same seen from the mate, whose edge runs the other way."""
        return replace(self, low=-self.high, high=-self.low)

    def spread(self, middle: float, over: float) -> "Reach":
        """Return the same for a row that is spread over a part of its joint line."""
        return Reach(self.low - middle, self.high - middle, middle, over)

    def length(self, whole: float) -> float:
        """Return the length that the row is spread over, of a joint line of this length."""
        return whole if self.over is None else self.over

    @property
    def free(self) -> "Reach":
        """The same row with board everywhere."""
        return replace(self, low=-inf, high=inf)


EVERYWHERE = Reach()

RowKey = tuple[str, float | None]
"""A row on a part: its edge and the inset of its slots, None for tabs."""

Reaches = Mapping[RowKey, Reach]


def row_of(edge: str, inset: float | None) -> RowKey:
    """Return the key of a row; insets to a millionth, as joins are compared."""
    return (edge, None if inset is None else round(inset, 6))


def row_ends(length: float, count: int, reach: Reach) -> tuple[float, float]:
    """Return where the first tab of a row begins and the last one ends, from the row's middle; its joint line has this length.

    As stated, tabs and the gaps between them are L/(2·count) long, with half a gap at either end. Where that is out of
    reach, the end of the row moves inwards; tabs and gaps stay equal.
    """
    length = reach.length(length)
    half = length / 2.0 - length / (4.0 * count)
    return max(-half, reach.low), min(half, reach.high)


def tab_length(length: float, count: int, reach: Reach) -> float:
    """Return how long each tab of a row is (mm); not above zero where there is no room for any."""
    first, last = row_ends(length, count, reach)
    return (last - first) / (2 * count - 1)


def most_tabs(length: float, reach: Reach, least: float, below: int) -> int:
    """Return the largest number of tabs under ``below`` that are each at least ``least`` mm long; 0 when not even one is."""
    return next((n for n in range(below - 1, 0, -1) if tab_length(length, n, reach) >= least - SAME_POINT), 0)


def stretches(line: tuple[Point, Point], count: int, longer: float, reach: Reach) -> Iterator[tuple[Point, Point]]:
    """Yield both ends of each of ``count`` tabs along a joint line, each ``longer`` mm longer than a tab is (its slot)."""
    whole = dist(*line)
    x, y = (line[1][0] - line[0][0]) / whole, (line[1][1] - line[0][1]) / whole
    first, _ = row_ends(whole, count, reach)
    long = tab_length(whole, count, reach)
    for i in range(count):
        begin = whole / 2.0 + reach.middle + first + 2 * i * long
        a, b = begin - longer / 2.0, begin + long + longer / 2.0
        yield (line[0][0] + x * a, line[0][1] + y * a), (line[0][0] + x * b, line[0][1] + y * b)


def joint_line(edge: Edge, inset: float, nominal: shapely.Polygon) -> tuple[Point, Point] | None:
    """Return the line parallel to the nominal edge, ``inset`` mm inside it, as far as it lies in the nominal outline.

    It runs the way the edge runs. Where the outline cuts it into several, the longest counts; None when it lies outside.
    """
    (x, y), (nx, ny) = frame_of(edge.nominal_start, edge.nominal_end)
    px, py = edge.nominal_start[0] + nx * inset, edge.nominal_start[1] + ny * inset
    left, bottom, right, top = nominal.bounds
    far = 2.0 * (right - left + top - bottom)
    probe = shapely.LineString([(px - far * x, py - far * y), (px + far * x, py + far * y)])
    lines = [
        p for p in shapely.get_parts(probe.intersection(nominal)) if p.geom_type == "LineString" and p.length > 0.0
    ]
    if not lines:
        return None
    a, b = max(lines, key=lambda line: float(line.length)).coords[:2]
    forward = (b[0] - a[0]) * x + (b[1] - a[1]) * y > 0.0
    first, last = (a, b) if forward else (b, a)
    return (float(first[0]), float(first[1])), (float(last[0]), float(last[1]))


def frame_of(start: Point, end: Point) -> tuple[Point, Point]:
    """Return the unit vectors along an edge and into the panel."""
    size = dist(start, end)
    x, y = (end[0] - start[0]) / size, (end[1] - start[1]) / size
    return (x, y), (-y, x)


@record
class Room:
    """A row of tabs or slots: its joint line, how many they are, how thick the board of the tabs is (mm), how
    far the row reaches with walls as thick as their board, and with the least walls."""

    line: tuple[Point, Point]
    count: int
    thickness: float
    roomy: Reach
    tight: Reach

    @property
    def length(self) -> float:
        """The length of the joint line in mm."""
        return dist(*self.line)

    def spread(self, at_end: bool, over: float) -> "Room":
        """Return the row spread over the length ``over`` at the end of its joint line, or at its start."""
        middle = (self.length - over) / 2.0 * (1.0 if at_end else -1.0)
        return replace(self, roomy=self.roomy.spread(middle, over), tight=self.tight.spread(middle, over))

    @property
    def reach(self) -> Reach:
        """Return where the row stands: walls as thick as the board come before long tabs, tabs that hold before such walls."""
        return self.roomy if tab_length(self.length, self.count, self.roomy) >= self.thickness else self.tight


def rooms_of(shape: Shape, outer: Path, plan: PartPlan) -> dict[RowKey, Room]:
    """Return what room the rows of a part have on the part itself. ``outer``: its outline with the edges where joins leave them.

    A tab stands on what is left of its edge, with a wall beside it where a neighbour took something off. A slot keeps a
    wall to every edge but the one that it is open to.
    """
    nominal = polygon(shape.outer)
    walls = (max(plan.thickness, LEAST_WALL), LEAST_WALL)
    found: dict[RowKey, Room] = {}
    for treatment in plan.treatments:
        edge = next((e for e in shape.edges if e.name == treatment.edge and e.centre is None), None)
        if edge is None or edge.nominal_length < SAME_POINT:
            continue
        if treatment.tabs is not None:
            reaches = [_of_tabs(edge, outer, wall) for wall in walls]
            nominal_line = (edge.nominal_start, edge.nominal_end)
            found[row_of(edge.name, None)] = Room(nominal_line, treatment.tabs.count, plan.thickness, *reaches)
        for row in treatment.slots:
            line = joint_line(edge, row.inset, nominal) if row.inset > 0.0 else (edge.nominal_start, edge.nominal_end)
            if line is not None:
                reaches = [_of_slots(edge.name, line, row, outer, wall + _FLAT) for wall in walls]
                found[row_of(edge.name, row.inset)] = Room(line, row.count, row.mate, *reaches)
    return found


def _of_tabs(edge: Edge, outer: Path, wall: float) -> Reach:
    own = [piece for piece in outer.edges if piece.name == edge.name and isinstance(piece, Line)]
    if not own:
        return EVERYWHERE
    (x, y), _ = frame_of(edge.nominal_start, edge.nominal_end)
    begin, end = (
        (p[0] - edge.nominal_start[0]) * x + (p[1] - edge.nominal_start[1]) * y for p in (own[0].start, own[-1].end)
    )
    half = edge.nominal_length / 2.0
    low = -half + begin + wall if begin > SAME_POINT else -inf
    return Reach(low, -half + end - wall if end < edge.nominal_length - SAME_POINT else inf)


def _of_slots(name: str, line: tuple[Point, Point], row: SlotRow, outer: Path, wall: float) -> Reach:
    """Return between where slots may lie: what of their strip comes too near to the outline at either end is left out."""
    (x, y), (nx, ny) = frame_of(*line)
    near, far = -row.play / 2.0, row.mate + row.play / 2.0
    (ax, ay), (bx, by) = line
    corners = ((ax, ay, near), (bx, by, near), (bx, by, far), (ax, ay, far))
    strip = shapely.Polygon([(px + nx * away, py + ny * away) for px, py, away in corners])
    # a notch is open to its own edge, and its strip begins outside the panel
    rim = shapely.MultiLineString([[*e.points(), e.end] for e in outer.edges if row.inset > 0.0 or e.name != name])
    taken = shapely.buffer(rim, wall, quad_segs=16)
    if row.inset > 0.0:
        taken = shapely.union(taken, strip.difference(polygon(outer)))
    half = dist(*line) / 2.0
    low, high = -half, half
    for piece in shapely.get_parts(shapely.intersection(strip, taken)):
        along = [(px - ax) * x + (py - ay) * y - half for px, py in shapely.get_coordinates(piece)]
        if not along:
            continue  # nothing is taken: that has no coordinates, and is one part all the same
        if min(along) < -half + SAME_POINT:
            low = max(low, *along)
        if max(along) > half - SAME_POINT:
            high = min(high, *along)
    return Reach(low + row.play / 2.0, high - row.play / 2.0) if low < high else EVERYWHERE


def shared_reaches(
    plans: Sequence[PanelPlan], own: Mapping[str, Mapping[RowKey, Room]]
) -> dict[str, dict[RowKey, Reach]]:
    """Return where each part's rows stand with regard to the part and to all that it meets, by part: mates agree.

    A part that stands in several places has one set of tabs for all of them, so what binds one row binds all that it is
    joined to, however many joins away.
    """
    rooms = {part: dict(rows) for part, rows in own.items()}
    pairs = [pair for plan in plans for join in plan.joins for pair in _pairs(plan, join)]
    _spread(plans, rooms)
    changed = True
    while changed:
        changed = False
        for (a, slots), (b, tabs) in pairs:
            if slots not in rooms.get(a, {}) or tabs not in rooms.get(b, {}):
                continue
            one, other = rooms[a][slots], rooms[b][tabs]
            new = (
                replace(one, roomy=one.roomy.both(other.roomy.turned()), tight=one.tight.both(other.tight.turned())),
                replace(other, roomy=other.roomy.both(one.roomy.turned()), tight=other.tight.both(one.tight.turned())),
            )
            if new != (one, other):
                rooms[a][slots], rooms[b][tabs] = new
                changed = True
    return {part: {row: room.reach for row, room in rows.items()} for part, rows in rooms.items()}


def _spread(plans: Sequence[PanelPlan], rooms: dict[str, dict[RowKey, Room]]) -> None:
    """Spread the rows of edges that are flush at one end over the length of the shorter edge, from that end on."""
    for plan in plans:
        for join in plan.joins:
            for (a, slots), (b, tabs) in _pairs(plan, join) if join.flush else ():
                one, other = rooms.get(a, {}).get(slots), rooms.get(b, {}).get(tabs)
                if join.flush is None or one is None or other is None:
                    continue
                over = min(one.length, other.length)
                named_a = join.flush[0] == join.a.panel
                at_end = runs_to(join.flush[1], *(one if named_a else other).line)
                rooms[a][slots] = one.spread(at_end == named_a, over)
                rooms[b][tabs] = other.spread(at_end != named_a, over)


def runs_to(end: str, first: Point, last: Point) -> bool:
    """Tell whether a line runs towards its bottom, top, left or right end, as its template shows it."""
    along = 0 if end in ("left", "right") else 1
    return (last[along] > first[along]) == (end in ("right", "top"))


def _pairs(plan: PanelPlan, join: Join) -> Iterator[tuple[tuple[str, RowKey], tuple[str, RowKey]]]:
    if join.joint == "tab_and_slot":
        part_of = {place.name: place.part for place in plan.places}
        slots, tabs = row_of(join.a.edge, join.inset), row_of(join.b.edge, None)
        yield (part_of[join.a.panel], slots), (part_of[join.b.panel], tabs)
