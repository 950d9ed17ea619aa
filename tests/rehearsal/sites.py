"""Where a board meets others, as its template shows: plain edges, and strips between two glue lines, with the letter beside each.

The template is seen from its drawn face. Along a site the board's body lies on the left.
"""

from collections.abc import Iterator, Sequence, Set
from dataclasses import dataclass, replace
from itertools import combinations, pairwise
from math import inf, radians, tan

import numpy as np
import numpy.typing as npt
import shapely
from shapely.geometry.polygon import orient

from tests.rehearsal.notes import Note
from tests.rehearsal.thin_lines import Thin

Vector = npt.NDArray[np.float64]

SHORTEST = 8.0  # mm of an edge that meets another
NOTCHED = 0.3  # mm within which two bits of an edge, with tabs or slots between them, are in one line
MOSTLY = 0.4  # share of an edge that is board: the sides of two tabs are no edge
AGAIN = 8.0  # mm: an edge as near is not told its bevel twice while another one beside the words has none
MOST_BEVELS = 10  # notes of a board
BESIDE = 34.0  # mm from an edge to the letter or the bevel that it bears
STRIP_WIDE = 0.45  # mm by which a strip may be wider or narrower than the board that is glued there
STRIP_FAR = 6.0  # mm from a strip to its letter
ACROSS = 4.0  # mm that the glue lines of a strip across a whole board end before its edges
PARALLEL = 0.01
DOTS_OFF = 0.25  # mm by which dots may be off the line where a bevel ends
DOTTED = 0.25  # dots to a millimetre of an edge; there is one to each, less those under other lines


@dataclass(frozen=True, slots=True, eq=False)
class Site:
    """A stretch at which another board meets this one: ``middle``, ``along`` (unit), ``length`` (mm); ``letters``: "" where it bears none;
    ``bevel``: degrees, None where it has none; ``strip``: the other stands on the inside face, its outside over this line;
    ``dotted``: a dotted line shows where its bevel ends on the other face."""

    middle: Vector
    along: Vector
    length: float
    letters: frozenset[str] = frozenset()
    bevel: float | None = None
    strip: bool = False
    dotted: bool = False

    @property
    def inward(self) -> Vector:
        """Return the unit vector into the board."""
        return np.array((-self.along[1], self.along[0]))


def sites_of(
    area: shapely.Polygon, notes: Sequence[Note], thin: Sequence[Thin], boards: Sequence[float]
) -> tuple[Site, ...]:
    """Return a board's edges and strips with what stands beside them; a letter belongs to the strip that it stands in, else to the nearest
    edge."""
    strips = list(_strips(area, thin, boards))
    edges = list(_edges(area))
    letters: dict[int, set[str]] = {}
    for note in notes:
        if note.kind == "match" and (number := _site_of(note, edges, strips)) is not None:
            letters.setdefault(number, set()).add(note.text)
    dots = np.array([point for one in thin if one.kind == "dots" for point in one.points]).reshape(-1, 2)
    told = [note for note in notes if note.kind == "bevel"][:MOST_BEVELS]
    marked = {
        (n, note.text)
        for n, edge in enumerate(edges)
        for note in told
        if not note.text.endswith("out") and _ends_at_dots(edge, float(note.text), dots, boards)
    }
    bevels = _bevels(edges, told, marked)
    return tuple(
        replace(
            site,
            letters=frozenset(letters.get(n, ())),
            bevel=bevels.get(n),
            dotted=n in bevels and any(n == edge and float(text) == bevels[n] for edge, text in marked),
        )
        for n, site in enumerate((*edges, *strips))
    )


def _ends_at_dots(edge: Site, degrees: float, dots: Vector, boards: Sequence[float]) -> bool:
    """Say whether a dotted line runs beside an edge where a bevel of so many degrees comes out of a board."""
    away = dots - edge.middle
    inside, aside = away @ edge.inward, np.abs(away @ edge.along)
    for board in boards:
        own = (np.abs(inside - board * tan(radians(degrees))) < DOTS_OFF) & (aside < edge.length / 2)
        if own.sum() > DOTTED * edge.length and np.ptp(away[own] @ edge.along) > edge.length / 2:
            return True
    return False


def astray(
    area: shapely.Polygon, notes: Sequence[Note], thin: Sequence[Thin], boards: Sequence[float]
) -> tuple[str, ...]:
    """Return the match letters that stand in no strip of a board and beside none of its edges."""
    strips, edges = list(_strips(area, thin, boards)), list(_edges(area))
    return tuple(note.text for note in notes if note.kind == "match" and _site_of(note, edges, strips) is None)


def _site_of(note: Note, edges: Sequence[Site], strips: Sequence[Site]) -> int | None:
    """Return the number of the edge, or behind them of the strip, that bears a letter; None where none is near."""
    at = np.array((note.x, note.y))
    on = [n for n, strip in enumerate(strips) if _in_strip(strip, at)]
    return on[0] + len(edges) if on else min(_beside(edges, at), default=(0.0, None))[1]


def _edges(area: shapely.Polygon) -> Iterator[Site]:
    """Yield the straight edges; bits of one, with slots or notches between them, are one."""
    ring = shapely.get_coordinates(orient(shapely.Polygon(area.exterior).simplify(0.05), 1.0).exterior)
    bits: list[tuple[Vector, Vector]] = []
    there: list[float] = []  # mm of each that is board
    for a, b in pairwise(ring):
        if np.hypot(*(b - a)) < SHORTEST / 2:
            continue
        way = (b - a) / np.hypot(*(b - a))
        across = np.array((-way[1], way[0]))
        known = next(
            (
                n
                for n, (p, q) in enumerate(bits)
                if abs(float((q - p) / np.hypot(*(q - p)) @ across)) < PARALLEL
                and float((q - p) @ way) > 0.0
                and abs(float((p - a) @ across)) < NOTCHED
            ),
            None,
        )
        if known is None:
            bits.append((a, b))
            there.append(float((b - a) @ way))
        else:
            p, q = bits[known]
            ends = sorted((a, b, p, q), key=lambda point: float(point @ way))
            bits[known] = (ends[0], ends[-1])
            there[known] += float((b - a) @ way)
    for (a, b), board in zip(bits, there, strict=True):
        length = float(np.hypot(*(b - a)))
        if length >= SHORTEST and board > MOSTLY * length:
            yield Site((a + b) / 2, (b - a) / length, length)


def _beside(edges: Sequence[Site], at: Vector) -> Iterator[tuple[float, int]]:
    """Yield how far a point is inside of each edge that it is near to, with the number of that edge."""
    for n, edge in enumerate(edges):
        away = at - edge.middle
        inside, aside = float(away @ edge.inward), abs(float(away @ edge.along))
        if 0.0 < inside < BESIDE and aside <= edge.length / 2:
            yield inside, n


def _bevels(edges: Sequence[Site], notes: Sequence[Note], marked: Set[tuple[int, str]]) -> dict[int, float]:
    """Return the degrees of each edge: an edge has one bevel, so that of all ways to deal out the notes the one is taken by which they
    are nearest in sum; where lines show which edges are meant, these alone."""
    best: tuple[float, dict[int, str]] = (inf, {})
    near = [
        sorted(
            (far, n)
            for far, n in _beside(edges, np.array((note.x, note.y)))
            if (n, note.text) in marked or not any(text == note.text for _, text in marked)
        )
        for note in notes
    ]
    known = [(note.text, own) for note, own in zip(notes, near, strict=True) if own]

    def deal(number: int, far: float, dealt: dict[int, str]) -> None:
        nonlocal best
        if far >= best[0]:
            return
        if number == len(known):
            best = far, dealt
            return
        text, own = known[number]
        for away, edge in own:
            if dealt.get(edge, text) == text:
                deal(number + 1, far + away + AGAIN * (edge in dealt), {**dealt, edge: text})
        deal(number + 1, far + BESIDE, dealt)

    deal(0, 0.0, {})
    degrees = {edge: float(text.split()[0]) for edge, text in best[1].items()}
    return {edge: -by if best[1][edge].endswith("out") else by for edge, by in degrees.items()}


def _strips(area: shapely.Polygon, thin: Sequence[Thin], boards: Sequence[float]) -> Iterator[Site]:
    """Yield the strips between two glue lines that are a board's thickness apart; the outer line is the one nearer to a rim."""
    lines = [one.points for one in thin if one.kind == "glue"]
    used: set[int] = set()
    gaps = sorted(
        (abs(gap - board), i, j)
        for (i, one), (j, other) in combinations(enumerate(lines), 2)
        if (gap := _gap(one, other)) < inf
        for board in boards
        if abs(gap - board) < STRIP_WIDE
    )
    for _, i, j in gaps:
        if i not in used and j not in used:
            used |= {i, j}
            yield _strip(area, lines[i], lines[j])


def _gap(one: Vector, other: Vector) -> float:
    """Return how far two lines are apart that run beside each other; inf where they do not."""
    a, b = one
    way = (b - a) / np.hypot(*(b - a))
    across = np.array((-way[1], way[0]))
    its = other[1] - other[0]
    if abs(float(its @ across)) > PARALLEL * np.hypot(*its):
        return inf
    low, high = sorted(float((p - a) @ way) for p in other)
    overlap = min(high, float((b - a) @ way)) - max(low, 0.0)
    return abs(float((other.mean(axis=0) - a) @ across)) if overlap > 0.6 * np.hypot(*(b - a)) else inf


def _strip(area: shapely.Polygon, one: Vector, other: Vector) -> Site:
    way = (one[1] - one[0]) / np.hypot(*(one[1] - one[0]))
    across = np.array((-way[1], way[0]))
    level = [float(line.mean(axis=0) @ across) for line in (one, other)]
    rims = shapely.get_coordinates(area.exterior) @ across
    if min(level) - rims.min() > rims.max() - max(level):
        across, level, rims = -across, [-value for value in level], -rims
    outer = one if level[0] < level[1] else other
    along = np.array((across[1], -across[0]))
    ends = sorted(float(p @ along) for p in outer)
    base = float(outer.mean(axis=0) @ across)
    chord = _chord(area, along, across, base + abs(level[0] - level[1]) / 2, ends)
    return Site(base * across + sum(chord) / 2 * along, along, chord[1] - chord[0], strip=True)


def _chord(area: shapely.Polygon, along: Vector, across: Vector, base: float, ends: list[float]) -> tuple[float, float]:
    """Return from where to where a strip runs: to the board's rim where its glue lines end near it, for they keep clear of the cut line."""
    whole = shapely.Polygon(area.exterior)
    line = shapely.LineString([base * across + s * along for s in (ends[0] - 2 * ACROSS, ends[1] + 2 * ACROSS)])
    cut = shapely.get_coordinates(line.intersection(whole)) @ along
    low, high = float(cut.min()), float(cut.max())
    return (low if ends[0] - low < ACROSS else ends[0]), (high if high - ends[1] < ACROSS else ends[1])


def _in_strip(strip: Site, at: Vector) -> bool:
    away = at - strip.middle
    return (
        -STRIP_FAR / 2 < float(away @ strip.inward) < 2 * STRIP_FAR
        and abs(float(away @ strip.along)) < strip.length / 2
    )


def less_bevels(area: shapely.Polygon, sites: Sequence[Site], depth: float) -> shapely.Polygon:
    """Return a board's area so deep (mm) under its drawn face: bevels take a strip along their edges."""
    strips = []
    for site in sites:
        if site.bevel is not None and site.bevel > 0.0:
            half, wide = (site.length / 2 + ACROSS) * site.along, depth * tan(radians(site.bevel)) * site.inward
            corners = (site.middle - half - site.inward, site.middle + half - site.inward)
            strips.append(shapely.Polygon((*corners, site.middle + half + wide, site.middle - half + wide)))
    left = shapely.get_parts(shapely.difference(area, shapely.union_all(strips)))
    return max(left, key=lambda part: float(part.area), default=area)
