"""Lines of a drawing put end to end into closed loops: small gaps mended, doubles dropped, open ends and crossings found."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from math import dist

import shapely

from publisher.basics import Line, Path, PathEdge, Point, closed_path, record
from publisher.geometry.drawings.svg_shapes import DrawnShape
from publisher.geometry.rules.drawings import CROSSED_OUTLINE, DRAWN_TWICE, GAP_MENDED, OPEN_OUTLINE, Trouble

CHAIN_GAP = 0.1  # mm: a smaller gap is rounding, and is mended
CHAIN_ROUNDING = 1e-3  # mm: a gap that no drawing program can avoid; closed without a word


@record
class Loop:
    """A path (mm) put together from a drawing's lines, and the shapes that it came from."""

    path: Path
    drawn: tuple[DrawnShape, ...]

    @property
    def points(self) -> tuple[Point, ...]:
        """Its points (mm), arcs flattened to the finest sagitta of its shapes."""
        return self.path.flattened(min(one.sagitta for one in self.drawn))

    @property
    def name(self) -> str:
        """The names of its shapes."""
        return ", ".join(dict.fromkeys(one.called for one in self.drawn))


def at(point: Point) -> str:
    """Say a place as the designer measures it."""
    return f"x {point[0]:.2f}, y {point[1]:.2f} mm"


def loops_of(drawn: Iterable[DrawnShape]) -> tuple[list[Loop], list[Loop], list[Trouble]]:
    """Return closed loops, chains that stay open, and what was mended or dropped."""
    troubles: list[Trouble] = []
    once = _once([Loop(path, (one,)) for one in drawn for path in one.paths], troubles)
    loops = [loop for loop in once if loop.path.closed]
    opens: list[Loop] = []
    for chain in _joined([loop for loop in once if not loop.path.closed], troubles):
        start, end = _ends(chain.path)
        if dist(start, end) < CHAIN_GAP and not _short(chain):
            _say_gap(chain, chain, end, dist(start, end), troubles)
            loops.append(Loop(closed_path(_met(chain.path.edges, start)), chain.drawn))
        else:
            opens.append(chain)
    return loops, opens, troubles


def open_trouble(chain: Loop) -> Trouble:
    """Return the finding for an outline that does not close."""
    start, end = _ends(chain.path)
    apart = dist(start, end)
    return Trouble(
        OPEN_OUTLINE,
        f"the outline “{chain.name}” is open: {apart:.2f} mm lie between its ends at {at(start)} and {at(end)}",
        "close the path in the drawing program; ends that are less than 0.1 mm apart are joined by the tool",
        chain.drawn[0].element.line,
        apart,
        CHAIN_GAP,
    )


def crossings(loops: Sequence[Loop]) -> list[Trouble]:
    """Return the findings for loops that cross themselves."""
    troubles = []
    for loop in loops:
        points = loop.points
        ring = shapely.Polygon(points) if len(points) > 2 else None
        if ring is None or not ring.is_valid:
            reason = "" if ring is None else shapely.is_valid_reason(ring)
            place = _place(reason) if "[" in reason else points[0]
            troubles.append(
                Trouble(
                    CROSSED_OUTLINE,
                    f"the outline “{loop.name}” crosses itself or runs back over itself at {at(place)}"
                    if "elf-intersection" in reason
                    else f"the outline “{loop.name}” encloses nothing at {at(place)}",
                    "draw it as one line round the part; unite shapes that overlap in the drawing program",
                    loop.drawn[0].element.line,
                )
            )
    return troubles


def _place(reason: str) -> Point:
    x, y = reason.partition("[")[2].rstrip("]").split()[:2]
    return float(x), float(y)


def _once(chains: list[Loop], troubles: list[Trouble]) -> list[Loop]:
    """Drop chains that lie on another one from end to end."""
    seen: dict[object, Loop] = {}
    kept = []
    for loop in chains:
        edges = loop.path.edges
        ends = frozenset((round(x, 2) + 0.0, round(y, 2) + 0.0) for e in edges for x, y in (e.start, e.end))
        key = (ends, round(loop.path.length, 1))
        first = seen.setdefault(key, loop)
        if first is loop:
            kept.append(loop)
            continue
        troubles.append(
            Trouble(
                DRAWN_TWICE,
                f"“{loop.name}” lies on “{first.name}” at {at(edges[0].start)}: it was left out",
                "delete one of the two in the drawing program",
                loop.drawn[0].element.line,
            )
        )
    return kept


def _joined(chains: list[Loop], troubles: list[Trouble]) -> list[Loop]:
    """Join open chains at their ends, nearest ends first."""
    if len(chains) < 2:
        return chains
    partner = _partners(chains)
    used: set[int] = set()
    result = []
    every = range(2 * len(chains))
    for head in (*(end for end in every if end not in partner), *every):
        if head // 2 not in used:
            result.append(_walked(head, chains, partner, used, troubles))
    return result


def _partners(chains: list[Loop]) -> dict[int, int]:
    """Return which ends of chains meet, the nearest first, each end once: ends 2k and 2k + 1 are those of chain k."""
    ends = [point for chain in chains for point in _ends(chain.path)]
    tree = shapely.STRtree(shapely.points(ends))
    pairs = tree.query(shapely.points(ends), predicate="dwithin", distance=CHAIN_GAP).T.tolist()
    near = sorted((dist(ends[a], ends[b]), a, b) for a, b in pairs if a < b)
    partner: dict[int, int] = {}
    for apart, a, b in near:
        whole = a // 2 == b // 2  # both ends of one chain: it closes by itself
        if a not in partner and b not in partner and apart < CHAIN_GAP and not (whole and _short(chains[a // 2])):
            partner[a], partner[b] = b, a
    return partner


def _walked(head: int, chains: list[Loop], partner: dict[int, int], used: set[int], troubles: list[Trouble]) -> Loop:
    """Follow joined ends from a free end, or round a loop."""
    first = head
    edges: tuple[PathEdge, ...] = ()
    drawn: list[DrawnShape] = []
    while True:
        used.add(head // 2)
        chain = chains[head // 2]
        own = chain.path.edges if head % 2 == 0 else chain.path.reversed().edges
        if edges:
            apart = dist(edges[-1].end, own[0].start)
            _say_gap(Loop(Path(edges, closed=False), tuple(drawn)), chain, own[0].start, apart, troubles)
            edges = _met(edges, own[0].start)
        edges += own
        drawn += chain.drawn
        tail = partner.get(head ^ 1)
        if tail is None or tail == first or tail // 2 in used:
            return Loop(Path(edges, closed=False), tuple(dict.fromkeys(drawn)))
        head = tail


def _short(chain: Loop) -> bool:
    return chain.path.length <= 2.0 * CHAIN_GAP


def _ends(path: Path) -> tuple[Point, Point]:
    return path.edges[0].start, path.edges[-1].end


def _say_gap(one: Loop, other: Loop, place: Point, apart: float, troubles: list[Trouble]) -> None:
    if apart <= CHAIN_ROUNDING:
        return
    names = (
        f"“{one.drawn[-1].called}”"
        if one.drawn[-1] is other.drawn[0]
        else f"“{one.drawn[-1].called}” and “{other.name}”"
    )
    troubles.append(
        Trouble(
            GAP_MENDED,
            f"a gap of {apart:.3f} mm in {names} at {at(place)} was closed",
            "join the ends in the drawing program to be sure of the line",
            other.drawn[0].element.line,
            apart,
            CHAIN_GAP,
        )
    )


def _met(edges: tuple[PathEdge, ...], point: Point) -> tuple[PathEdge, ...]:
    """End a chain at a point at most a gap away: a straight end is drawn there, after an arc a short line leads there."""
    last = edges[-1]
    if last.end == point:
        return edges
    if isinstance(last, Line) and last.length > 10.0 * CHAIN_GAP:
        return (*edges[:-1], replace(last, end=point))
    return (*edges, Line(last.name, last.end, point))
