"""How a flat board bends that lies on supports: between them, and where it reaches beyond them. Mm, N, MPa.

Elementary bending. A load F in the middle of a clear length L, on a strip w wide and h thick: stress 3FL/(2wh²), sag
FL³/(4Ewh³); at the end of an overhang a: 6Fa/(wh²) and 4Fa³/(Ewh³); the board's own weight q on each mm²: 3qL²/(4h²) and
5qL⁴/(32Eh³), of an overhang 3qa²/h² and 3qa⁴/(2Eh³) (beam tables, such as AISC Steel Construction Manual, table 3-23,
cases 1, 7, 19 and 22).
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import cos, inf, radians, sin
from typing import Literal

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import Point, record
from publisher.design import Board
from publisher.joints.outlines import Array, pieces

Flags = npt.NDArray[np.bool_]

BENDING_STRENGTH = 0.345
"""MPa, when the board does not say: a maker's least value for extruded polystyrene, 50 psi. A stated assumption."""

PLACES_LOOKED_AT = 150
"""About so many places of each stretch between supports are looked at."""

EVERY = 15
"""Degrees between the ways in which a board may span, besides square to each of its supports."""

MOST_RAYS = 2_000_000
"""Crossings that are computed at once: of a stretch with many corners fewer places are looked at."""

SHORTER = 1e-6
"""Of two ways that bend it alike it takes the shorter one: what this adds for each mm tells them apart and changes nothing."""

SMALL = 1.0
"""mm²: no load stands on less."""

SPIKES = 1e-6
"""mm: what nothing carries has no spikes of no width along its rim, which round-off leaves where arcs cross."""

SAME_BEND = 1e-3
"""Share by which a narrow place must bend more than the root to be told instead of it."""

PLACES_ROUNDED = 1e-3
"""mm: to this the places that are looked at are rounded."""

CUT_ACROSS = 40
"""At so many places a piece that is held at one side is cut across, at most."""

ON_RIM = 0.01
"""mm: an edge that lies nearer to a support is held by it."""


@record
class Bending:
    """A place of a board and how it bends there: over a clear ``length`` between supports (``span``), out from the one that it is
    ``near``, or out ``beyond`` all of them; the board is ``across`` mm wide there; ``at`` in its own coordinates (all mm). ``neck``: it
    breaks where it is narrower farther out than its support, and the length begins there. ``borne`` N: what stands there besides, as so
    much at that place.
    """

    way: Literal["span", "near", "beyond"]
    length: float
    across: float
    at: Point
    neck: bool = False
    borne: float = 0.0

    @property
    def overhang(self) -> bool:
        """Whether only one end is held."""
        return self.way != "span"

    def width(self, base: float) -> float:
        """Return the width of the strip that carries a load ``base`` mm wide: it spreads by a quarter of the way to each side of
        each support, as far as there is board. An assumption."""
        return min(self.across, base + self.length / (1.0 if self.overhang else 2.0))

    def stress(self, load: float, base: float, own: float, thick: float) -> float:
        """Return the stress (MPa) under a load (N) ``base`` mm wide and the board's own weight (N/mm²)."""
        return self.by_load(base, thick) * (load + self.borne) + self.by_weight(own, thick)

    def carries(self, strength: float, base: float, own: float, thick: float) -> float:
        """Return the load (N) on a base under which the stress is the board's strength (MPa); 0 when it breaks without."""
        return max(0.0, (strength - self.by_weight(own, thick)) / self.by_load(base, thick) - self.borne)

    def by_load(self, base: float, thick: float) -> float:
        """Return the stress (MPa) of each newton on a base."""
        return (6.0 if self.overhang else 1.5) * self.length / (self.width(base) * thick**2)

    def by_weight(self, own: float, thick: float) -> float:
        """Return the stress (MPa) of the board's own weight (N/mm²)."""
        return (3.0 if self.overhang else 0.75) * own * self.length**2 / thick**2

    def sag(self, load: float, base: float, own: float, thick: float, stiffness: float) -> float:
        """Return how far (mm) it gives under a load and its own weight, by its modulus of elasticity (MPa)."""
        by_load = (4.0 if self.overhang else 0.25) * (load + self.borne) * self.length**3 / self.width(base)
        by_weight = (1.5 if self.overhang else 5.0 / 32.0) * own * self.length**4
        return (by_load + by_weight) / (stiffness * thick**3)


def strength_of(board: Board) -> float:
    """Return a board's bending strength in MPa: the designer's, of foam else the stated assumption; inf for card and paper that
    nobody has measured: they are not judged."""
    if board.bending_strength is not None:
        return board.bending_strength
    return BENDING_STRENGTH if board.material == "foam" else inf


@record
class OnDeck:
    """What stands on a board: over which of it, in its own coordinates, and how much it weighs there (N)."""

    area: shapely.Geometry
    weight: float


def bendings_of(
    region: shapely.Geometry,
    supports: shapely.Geometry,
    base: float,
    standing: Sequence[OnDeck] = (),
    *,
    by_sag: bool = False,
) -> tuple[Bending, ...]:
    """Return how a board bends under a load ``base`` mm wide at all its places that no support is under; () without a support.

    Between supports it spans, or reaches out from one of them, the way that strains it least (``by_sag``: the stiffest way);
    where no way ends on supports, as between posts, it spans the longer way across all of them. What lies outside the hull
    of the supports overhangs: its farthest point counts. What is ``standing`` on it bends it where it stands.
    """
    held = shapely.intersection(supports, region)
    if held.is_empty:
        return ()
    hull = shapely.convex_hull(held)
    bare = shapely.set_precision(shapely.difference(region, held), SPIKES)
    free = shapely.get_parts(pieces(bare, SMALL))
    found = [one for cell in free for one in _between(cell, held, hull, base, 3 if by_sag else 1)]
    over = shapely.get_parts(pieces(shapely.difference(shapely.union_all(free), hull), SMALL))
    found = _with_standing(found, standing) if standing else found
    found += [one for piece in over for one in _beyond(piece, region, hull, base, standing)]
    return tuple(
        {(one.way, round(one.length, 2), round(one.across, 2), round(one.borne, 4)): one for one in found}.values()
    )


def _with_standing(found: list[Bending], standing: Sequence[OnDeck]) -> list[Bending]:
    """Return bendings with what stands at their places. A weight W over c mm of a clear length L bends it by W·(L/4 − c/8), as one of
    W·(1 − c/(2·L)) in its middle does; at the end of an arm alike, as its middle is c/2 nearer."""
    if not found:
        return found
    at = np.array([one.at for one in found])
    lengths = np.array([one.length for one in found])
    borne = np.zeros(len(found))
    for one in standing:
        wide = np.minimum(_shorter(one.area), lengths)
        there = shapely.dwithin(one.area, shapely.points(at), ON_RIM)
        borne += np.where(there, one.weight * (1.0 - wide / (2.0 * np.maximum(lengths, ON_RIM))), 0.0)
    return [replace(one, borne=float(weight)) for one, weight in zip(found, borne, strict=True)]


def _between(
    cell: shapely.Geometry, held: shapely.Geometry, hull: shapely.Geometry, base: float, power: int
) -> list[Bending]:
    inside = pieces(shapely.intersection(cell, hull), SMALL)
    if inside.is_empty:
        return []
    starts, ways, fixed = _rim(cell, held)
    angles = _angles(ways, fixed)
    points = _places(inside, max(20, min(PLACES_LOOKED_AT, MOST_RAYS // (len(angles) * len(starts)))))
    ahead, behind = _rays(points, angles, starts, ways, fixed)
    lengths = ahead.far + behind.far
    across = np.roll(lengths, len(angles) // 2, axis=1)  # square to each way: angles come in two halves, 90° apart
    spans = np.where(ahead.held & behind.held, lengths, inf)
    arms = np.minimum(np.where(ahead.held, ahead.far, inf), np.where(behind.held, behind.far, inf))
    span_does, arm_does = (1.5, 6.0) if power == 1 else (0.25, 4.0)
    bent = [_by_load(spans, across, base, power, span_does, 2.0), _by_load(arms, across, base, power, arm_does, 1.0)]
    shorter = _shorter(hull)
    every = np.arange(len(points))
    best = [(by + SHORTER * own).argmin(axis=1) for by, own in zip(bent, (spans, arms), strict=True)]
    least = [by[every, at] for by, at in zip(bent, best, strict=True)]
    found = []
    for i in every:
        at = (float(points[i, 0]), float(points[i, 1]))
        span, arm = best[0][i], best[1][i]
        if np.isfinite(least[0][i]):
            spanned = Bending("span", float(spans[i, span]), float(across[i, span]), at)
        else:
            spanned = Bending("span", _longest(hull, held, at), max(shorter, ON_RIM), at)
        near = least[1][i] < span_does * spanned.length**power / spanned.width(base)
        found.append(Bending("near", float(arms[i, arm]), float(across[i, arm]), at) if near else spanned)
    return found


def _by_load(lengths: Array, across: Array, base: float, power: int, does: float, spread: float) -> Array:
    """Return what each newton on a base does on every way: its stress times the thickness squared (``power`` 1), or its sag
    times stiffness and thickness to the third (3); inf where there is no such way."""
    with np.errstate(invalid="ignore"):
        done = does * lengths**power / np.minimum(across, base + lengths / spread)
    return np.where(np.isfinite(lengths), done, inf)


def _beyond(
    piece: shapely.Geometry, region: shapely.Geometry, hull: shapely.Geometry, base: float, standing: Sequence[OnDeck]
) -> Iterator[Bending]:
    corners = shapely.points(shapely.get_coordinates(piece))
    away = shapely.distance(corners, hull)
    far = corners[int(away.argmax())]
    arm = float(away.max())
    if arm <= ON_RIM:
        return
    foot = shapely.get_coordinates(shapely.shortest_line(hull, far))[0]
    end = shapely.get_coordinates(far)[0]
    way = (end - foot) / arm
    start = foot + ON_RIM * way
    side = np.array([-way[1], way[0]]) * 2.0 * float(shapely.length(shapely.boundary(region)))
    cuts = shapely.get_parts(shapely.intersection(shapely.LineString([start - side, start + side]), region))
    root = min(cuts, key=lambda cut: float(shapely.distance(cut, shapely.Point(start))), default=None)
    out = [*_out(piece, hull, standing)]
    across = float(root.length) if root is not None else 0.0
    at_root = Bending("beyond", arm, across, (float(end[0]), float(end[1])), borne=sum(w * d / arm for w, d in out))
    yield at_root
    neck = neck_out(piece, foot, end, base)
    if neck is not None and out:
        beside = arm - neck.length  # from the support to the neck
        neck = replace(neck, borne=sum(w * max(0.0, d - beside) / neck.length for w, d in out))
    if neck is not None and neck.by_load(base, 1.0) > at_root.by_load(base, 1.0) * (1.0 + SAME_BEND):
        yield neck


def _out(piece: shapely.Geometry, hull: shapely.Geometry, standing: Sequence[OnDeck]) -> Iterator[tuple[float, float]]:
    """Yield what each thing on a piece that overhangs weighs there (N), and how far (mm) its middle there is beyond all supports."""
    for one in standing:
        there = shapely.intersection(one.area, piece)
        if there.area > SMALL:
            share = float(there.area / one.area.area)
            yield one.weight * share, float(shapely.distance(shapely.centroid(there), hull))


def neck_out(piece: shapely.Geometry, foot: Array, end: Array, base: float) -> Bending | None:
    """Return how a piece that is held at one side bends, under a load at its ``end``, where it is narrow on the way from its
    ``foot``: across that way, at the corners of its outline, as far as half the base of what loads it. None for what is shorter."""
    way = end - foot
    arm = float(np.hypot(*way))
    if arm <= base / 2.0:
        return None
    way = way / arm
    side = np.array([-way[1], way[0]]) * 2.0 * float(shapely.length(shapely.boundary(piece)))
    out = np.unique(np.round((shapely.get_coordinates(piece) - foot) @ way, 2))
    out = np.concatenate([out - ON_RIM, out + ON_RIM])
    out = out[(out > ON_RIM) & (out < arm - base / 2.0)]
    found = []
    for x in out[:: max(1, -(-len(out) // CUT_ACROSS))]:
        at = foot + x * way
        half = shapely.Polygon([at - side, at + side, at + side + 2.0 * arm * way, at - side + 2.0 * arm * way])
        beyond = shapely.get_parts(pieces(shapely.intersection(piece, half), SMALL))
        held = min(beyond, key=lambda part: float(shapely.distance(part, shapely.Point(end))), default=None)
        if held is not None:
            just = at + ON_RIM / 10.0 * way
            width = float(shapely.length(shapely.intersection(held, shapely.LineString([just - side, just + side]))))
            found.append(Bending("beyond", arm - float(x), max(width, ON_RIM), (float(end[0]), float(end[1])), True))
    return max(found, key=lambda one: one.by_load(base, 1.0), default=None)


def _rim(cell: shapely.Geometry, held: shapely.Geometry) -> tuple[Array, Array, Flags]:
    """Return the sides of a stretch of board: where they start (n, 2), how they run (n, 2), and whether a support holds them."""
    starts, ways = [], []
    for ring in (cell.exterior, *cell.interiors):
        corners = shapely.get_coordinates(ring)
        starts.append(corners[:-1])
        ways.append(np.diff(corners, axis=0))
    start, way = np.vstack(starts), np.vstack(ways)
    shapely.prepare(held)
    return start, way, np.asarray(shapely.dwithin(held, shapely.points(start + way / 2.0), ON_RIM))


def _angles(ways: Array, fixed: Flags) -> list[float]:
    """Return the ways (degrees, 0 to 180) to look along: every so many degrees, and along and square to every support."""
    sides = ways[fixed & (np.hypot(ways[:, 0], ways[:, 1]) > 1.0)]
    own = sorted({round(float(a) % 90.0, 3) % 90.0 for a in np.degrees(np.arctan2(sides[:, 1], sides[:, 0]))})
    steps = {float(a) for a in range(0, 90, EVERY)} | set(own[:: max(1, len(own) // 12)])
    return [angle + turn for turn in (0.0, 90.0) for angle in sorted(steps)]


def _places(area: shapely.Geometry, most: int) -> Array:
    """Return places all over an area: the middles of squares of one size, and one place of each piece."""
    step = round(
        max(float(np.sqrt(area.area / most)), PLACES_ROUNDED), 3
    )  # round-off moves no place: one geometry has one set of them
    left, bottom, right, top = (round(side, 3) for side in area.bounds)
    xs, ys = np.meshgrid(np.arange(left + step / 2, right, step), np.arange(bottom + step / 2, top, step))
    shapely.prepare(area)
    spots = np.column_stack([xs.ravel(), ys.ravel()])
    spots = spots[shapely.contains_xy(area, spots[:, 0], spots[:, 1])]
    own = [shapely.get_coordinates(shapely.point_on_surface(piece)) for piece in shapely.get_parts(area)]
    return np.vstack([spots, *own])


@record
class _Rays:
    """How far (mm) it is from each place, each way, to the rim of the board there, and whether a support holds it there."""

    far: Array
    held: Flags


def _rays(points: Array, angles: list[float], starts: Array, ways: Array, fixed: Flags) -> tuple[_Rays, _Rays]:
    """Return what lies ahead of each place on each way, and behind it."""
    turned = np.array([(cos(radians(a)), sin(radians(a))) for a in angles])
    to = starts[None, :, :] - points[:, None, :]  # place, side
    cross = turned[:, None, 0] * ways[None, :, 1] - turned[:, None, 1] * ways[None, :, 0]  # way, side
    flat = np.abs(cross) < 1e-12
    safe = np.where(flat, 1.0, cross)
    far = (to[:, :, 0] * ways[:, 1] - to[:, :, 1] * ways[:, 0])[:, None, :] / safe
    along = (to[:, None, :, 0] * turned[None, :, None, 1] - to[:, None, :, 1] * turned[None, :, None, 0]) / safe
    meets = ~flat[None] & (along >= -1e-9) & (along <= 1.0 + 1e-9)
    ahead, behind = np.where(meets & (far > 0.0), far, inf), np.where(meets & (far <= 0.0), -far, inf)
    return tuple(
        _Rays(way.min(axis=2), fixed[way.argmin(axis=2)] & np.isfinite(way.min(axis=2))) for way in (ahead, behind)
    )  # type: ignore[return-value]


def _sides(hull: shapely.Geometry) -> tuple[Array, Array]:
    """Return the longer and the shorter side of the smallest rectangle about an area, as vectors; of no length for what has none."""
    box = shapely.get_coordinates(shapely.oriented_envelope(hull))
    if len(box) < 4:
        return np.zeros(2), np.zeros(2)
    a, b = box[1] - box[0], box[2] - box[1]
    return (a, b) if float(np.hypot(*a)) >= float(np.hypot(*b)) else (b, a)


def _shorter(hull: shapely.Geometry) -> float:
    return float(np.hypot(*_sides(hull)[1]))


def _longest(hull: shapely.Geometry, held: shapely.Geometry, at: Point) -> float:
    """Return how far it is at a place, along the longer side of all supports, from what holds there to what holds next."""
    way, here = _sides(hull)[0], np.asarray(at)
    if not way.any():
        return 0.0
    line = shapely.intersection(shapely.LineString([here - way, here + way]), hull)
    free = shapely.get_parts(shapely.difference(line, held))
    return (
        float(min(free, key=lambda one: float(shapely.distance(one, shapely.Point(here)))).length) if len(free) else 0.0
    )
