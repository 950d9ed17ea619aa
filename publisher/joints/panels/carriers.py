"""Upright boards that carry a deck: how they bend on edge, beyond or between what holds them, and the legs on which they stand. Mm, N, MPa.

A board on edge, t thick, bends in its own plane. Under a load F at the end of an arm a the moment is F·a, between supports L apart
F·x·(L − x)/L at the place x of the load; the section is the board's thickness by its height h there, t·h²/6, and of several pieces
over each other, which no web joins, the sum of theirs (beam tables, such as AISC Steel Construction Manual, table 3-23, cases 7 and
22). What it carries besides weighs as much as half of it at the place of the load. A leg between two joints buckles at
π²·E·I/ℓ², with I = w·t³/12 of its narrower side t (Euler's formula for pinned ends, which is the most that any leg bears that may
move aside; Timoshenko and Gere, Theory of Elastic Stability, chapter 2).
"""

from collections.abc import Collection, Iterator, Sequence
from itertools import pairwise
from math import pi

import numpy as np
import shapely

from publisher.basics import record
from publisher.geometry import polygon
from publisher.joints.bending import SMALL
from publisher.joints.outlines import Array, pieces
from publisher.joints.panels.decks import UNDER, region_of, section_under, standing_without
from publisher.joints.panels.interference import section_of
from publisher.joints.panels.place import Panel, PanelAssembly
from publisher.joints.panels.solids import ON_TABLE

ON_EDGE_UP = 1e-3
"""Share of its normal that a board has upwards, at most, that stands on edge."""

LEAST_FREE = 2.0
"""mm: what is free of supports on less length is held all along. An assumption."""

BESIDE_CORNER = 0.05
"""mm beside a corner at which is looked how high a board is there."""

MOST_SECTIONS = 60
"""At so many places a board is cut across, at most."""

Interval = tuple[float, float]


@record
class Beam:
    """Where an upright board bends most under a deck: in its plan, ``across`` mm along it from its left and ``up`` mm from its bottom;
    ``high`` there (mm, of the tallest piece), ``free`` mm beyond its support or between two (``spans``), with ``moment`` mm: what each
    newton bends it by, and ``section`` (mm³)."""

    across: float
    high: float
    free: float
    spans: bool
    moment: float
    section: float

    def stress(self, load: float) -> float:
        """Return its stress (MPa) under a load (N)."""
        return load * self.moment / self.section


@record
class Leg:
    """What stands on the ground by itself under a carrier: its least width and its height (mm), and its board's thickness."""

    wide: float
    high: float
    thick: float

    def buckles_at(self, stiffness: float) -> float:
        """Return the load (N) under which it bows out, of board of so many MPa."""
        thin, broad = sorted((self.wide, self.thick))
        return pi**2 * stiffness * broad * thin**3 / 12.0 / self.high**2


@record
class Carrier:
    """An upright board under a deck, and the worst of how it bends (None: it is held all along), and its legs."""

    panel: Panel
    beams: tuple[Beam, ...]
    legs: tuple[Leg, ...]


def carriers_of(assembly: PanelAssembly, deck: Panel) -> tuple[Carrier, ...]:
    """Return the upright boards on which a deck of an assembly lies."""
    profiles = [(panel, _profile(panel)) for panel in assembly.boards]
    low = min(own.low for _, own in profiles)
    ground = {panel.name for panel, own in profiles if own.low <= low + ON_TABLE}
    standing = standing_without(assembly, deck.name, ground)
    region = region_of(deck)
    found = []
    for panel, own in profiles:
        if panel.name == deck.name or panel.name not in standing or abs(float(panel.frame.outward[2])) > ON_EDGE_UP:
            continue
        touch = shapely.intersection(section_under(panel, deck), region)
        if float(touch.area) < SMALL:
            continue
        on_top = own.along(_in_space(deck, touch))
        held = [*own.feet(low)] if panel.name in ground else []
        held += [own.along(points) for points in _glued_to(assembly, panel, deck, ground)]
        held += [own.along(points) for points in _lies_on(profiles, panel, deck)]
        beams = tuple(_beams(own, panel.part.thickness, on_top, held))
        found.append(Carrier(panel, beams, tuple(_legs(own, panel, low)) if panel.name in ground else ()))
    return tuple(found)


@record
class _Profile:
    """A board seen from its face: its area over the level way along it and the height over the table, and that way in space (3,)."""

    area: shapely.Geometry
    way: Array
    low: float
    high: float

    def along(self, points: Array) -> Interval:
        """Return between which places along the board points (n, 3) lie."""
        out = points @ self.way
        return float(out.min()), float(out.max())

    def feet(self, ground: float) -> Iterator[Interval]:
        """Yield where its lower edge stands on the ground."""
        a, _, b, _ = self.area.bounds
        cut = shapely.intersection(self.area, shapely.box(a - 1.0, ground - 1.0, b + 1.0, ground + ON_TABLE))
        yield from ((p.bounds[0], p.bounds[2]) for p in shapely.get_parts(pieces(cut, 0.0)))


def _profile(panel: Panel) -> _Profile:
    out = panel.frame.outward
    way = np.array([-out[1], out[0], 0.0])
    size = float(np.hypot(*way[:2]))
    way = way / size if size > ON_EDGE_UP else np.array([1.0, 0.0, 0.0])

    def seen(points: Array) -> Array:
        at = panel.frame.carry(np.column_stack([points, np.zeros(len(points))]))
        return np.column_stack([at @ way, at[:, 2]])

    area = shapely.make_valid(shapely.transform(polygon(panel.part.outline), seen))
    heights = shapely.get_coordinates(area)[:, 1]
    return _Profile(area, way, float(heights.min()), float(heights.max()))


def _glued_to(assembly: PanelAssembly, panel: Panel, deck: Panel, ground: Collection[str]) -> Iterator[Array]:
    """Yield the points in space where upright boards that stand without it hold the sides of a board."""
    plan = assembly.plan
    pairs = [{join.a.panel, join.b.panel} for join in plan.joins] + [{seat.panel, seat.host} for seat in plan.seats]
    others = {name for pair in pairs if panel.name in pair for name in pair} - {panel.name, deck.name}
    standing = standing_without(assembly, panel.name, ground)
    for other in assembly.boards:
        if other.name in others & standing and abs(float(other.frame.outward[2])) <= ON_EDGE_UP:
            yield from _touching(panel, other)


def _lies_on(profiles: Sequence[tuple[Panel, _Profile]], panel: Panel, deck: Panel) -> Iterator[Array]:
    """Yield the points in space where a board stands on level ones, or on the edges of others."""
    low = next(own.low for one, own in profiles if one is panel)
    for other, its in profiles:
        if other.name not in (panel.name, deck.name) and abs(its.high - low) <= UNDER + other.part.thickness:
            yield from _touching(panel, other)


def _touching(panel: Panel, other: Panel) -> Iterator[Array]:
    """Yield the points in space where another board meets a board, where it does."""
    region = shapely.buffer(polygon(panel.part.outline), UNDER)
    touch = shapely.intersection(region, section_of(other, panel.frame, panel.part.thickness / 2.0))
    if not touch.is_empty:
        yield _in_space(panel, touch)


def _in_space(panel: Panel, area: shapely.Geometry) -> Array:
    """Return the corners of an area on a board's face as points in space (n, 3)."""
    corners = shapely.get_coordinates(area)
    return panel.frame.carry(np.column_stack([corners, np.zeros(len(corners))]))


def _beams(own: _Profile, thick: float, on_top: Interval, held: Sequence[Interval]) -> Iterator[Beam]:
    """Yield where a board bends most beyond and between what holds it, under what stands on its stretch ``on_top``."""
    supports = _merged(held)
    if not supports:
        return
    free = [(on_top[0], supports[0][0], False), (supports[-1][1], on_top[1], False)]
    free += [(a[1], b[0], True) for a, b in pairwise(supports)]
    for start, end, spans in free:
        low, high = (max(start, on_top[0]), min(end, on_top[1])) if spans else (start, end)
        if high - low > LEAST_FREE:
            found = [
                beam for x in _cuts(own, start, end) if (beam := _beam(own, thick, x, start, end, spans, supports))
            ]
            if found:
                yield max(found, key=lambda beam: beam.stress(1.0))


def _beam(
    own: _Profile, thick: float, x: float, start: float, end: float, spans: bool, supports: list[Interval]
) -> Beam | None:
    heights = own_heights(own.area, x)
    if not heights:
        return None
    beyond = end - x if start >= supports[-1][1] - BESIDE_CORNER else x - start  # the load stands at the free end
    moment = (x - start) * (end - x) / (end - start) if spans else beyond
    section = thick * sum(high**2 for high in heights) / 6.0
    return Beam(x - own.area.bounds[0], max(heights), end - start, spans, moment, section)


def own_heights(area: shapely.Geometry, x: float) -> tuple[float, ...]:
    """Return how high (mm) each piece of an area is at a place across it."""
    _, low, _, high = area.bounds
    line = shapely.LineString([(x, low - 1.0), (x, high + 1.0)])
    cut = shapely.get_parts(shapely.intersection(area, line))
    return tuple(float(one.length) for one in cut if one.length > BESIDE_CORNER)


def _cuts(own: _Profile, start: float, end: float) -> list[float]:
    """Return places between two: beside the corners of the board there, at both ends and in the middle."""
    corners = np.unique(np.round(shapely.get_coordinates(own.area)[:, 0], 2))
    corners = corners[:: max(1, -(-len(corners) // MOST_SECTIONS))]
    every = [
        *(corners - BESIDE_CORNER),
        *(corners + BESIDE_CORNER),
        start + BESIDE_CORNER,
        end - BESIDE_CORNER,
        (start + end) / 2.0,
    ]
    return [float(x) for x in every if start < x < end]


def _merged(held: Sequence[Interval]) -> list[Interval]:
    merged: list[Interval] = []
    for low, high in sorted(held):
        if merged and low <= merged[-1][1] + LEAST_FREE:
            merged[-1] = (merged[-1][0], max(merged[-1][1], high))
        else:
            merged.append((low, high))
    return merged


def _legs(own: _Profile, panel: Panel, ground: float) -> Iterator[Leg]:
    """Yield what stands by itself on each foot of a board, as high as it stays apart from the others; nothing of a wall on one foot."""
    feet = [*own.feet(ground)]
    if len(feet) < 2:
        return
    levels = np.unique(np.round(shapely.get_coordinates(own.area)[:, 1], 2))
    tops = [float(z) for z in levels if z > own.low + ON_TABLE]
    apart = max((z for z in tops if len(_below(own, z - BESIDE_CORNER)) >= len(feet)), default=own.low)
    for piece in _below(own, apart - BESIDE_CORNER) if apart > own.low else ():
        left, low, right, high = piece.bounds
        cuts = [float(z) for level in levels for z in (level - BESIDE_CORNER, level + BESIDE_CORNER) if low < z < high]
        across = [shapely.intersection(piece, shapely.LineString([(left - 1.0, z), (right + 1.0, z)])) for z in cuts]
        wide = min((float(one.length) for one in across if one.length > BESIDE_CORNER), default=right - left)
        yield Leg(wide, apart - low, panel.part.thickness)


def _below(own: _Profile, top: float) -> list[shapely.Geometry]:
    """Return the pieces of a board below a height that stand on the ground."""
    a, low, b, _ = own.area.bounds
    cut = shapely.get_parts(
        pieces(shapely.intersection(own.area, shapely.box(a - 1.0, low - 1.0, b + 1.0, top)), SMALL)
    )
    return [piece for piece in cut if piece.bounds[1] <= low + ON_TABLE]
