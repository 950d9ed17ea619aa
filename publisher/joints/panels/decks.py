"""Level panels of an assembly and what carries them, by what touches them as they stand. Mm."""

from collections.abc import Collection, Iterator, Mapping
from math import isfinite

import numpy as np
import shapely

from publisher.basics import Place, Point, record
from publisher.design import Board, Fact, Figure, Kind
from publisher.geometry import Region, mitred, polygon
from publisher.joints.bending import ON_RIM, SMALL, Bending, OnDeck, bendings_of, strength_of
from publisher.joints.facts import made_fact
from publisher.joints.footing import GRAVITY, areal_mass
from publisher.joints.outlines import united
from publisher.joints.panels.interference import section_of
from publisher.joints.panels.place import Panel, PanelAssembly
from publisher.joints.panels.seats import opening_of
from publisher.joints.panels.solids import ON_TABLE, corners_of
from publisher.joints.panels.space import Array
from publisher.joints.panels.standing import bears_figures
from publisher.joints.panels.touching import PANEL_TOUCH

UNDER = 2.0 * PANEL_TOUCH
"""mm under a deck at which is looked what lies there."""

FINGER = 15.0
"""mm: a finger's tip that presses. An assumption."""

NOTHING: Mapping[str, tuple[OnDeck, ...]] = {}

SIMPLE = PANEL_TOUCH / 5.0  # mm: arcs of a few hundred points bend no better


@record
class Deck:
    """A level panel that something carries, and how it bends at its places; ``giving``: how it sags there, where that is known."""

    panel: Panel
    thick: float  # mm, with what is glued on it all over
    bendings: tuple[Bending, ...]
    giving: tuple[Bending, ...]
    load: float  # N of the figure, on a base so wide (mm)
    base: float
    own: float  # N of each mm²
    strength: float  # MPa
    stiffness: float | None  # MPa; None: not known
    hanging: Point | None = None  # in the middle of a piece that nothing holds at its seam
    layered: bool = False  # a layer of a stack: how far it may reach goes by its stress alone

    @property
    def area(self) -> float:
        """Its area (mm²)."""
        return float(polygon(self.panel.part.outline).area)

    @property
    def weakest(self) -> Bending:
        """The place where a figure bends it most."""
        return max(self.bendings, key=self.stress)

    @property
    def carries(self) -> float:
        """The least push of a finger (N) that breaks it."""
        return (
            0.0
            if self.hanging
            else min(one.carries(self.strength, FINGER, self.own, self.thick) for one in self.bendings)
        )

    def stress(self, at: Bending) -> float:
        """Return the stress (MPa) at a place under the figure and its own weight."""
        return at.stress(self.load, self.base, self.own, self.thick)

    def sag(self) -> tuple[Bending, float] | None:
        """Return where it gives most under the figure, and how far (mm); None when nobody has said how stiff the board is."""
        stiffness = self.stiffness
        if stiffness is None:
            return None
        sags = [(one.sag(self.load, self.base, self.own, self.thick, stiffness), one) for one in self.giving]
        most, at = max(sags, key=lambda sag: sag[0])
        return at, most


def decks_of(
    assembly: PanelAssembly,
    boards: dict[str, Board],
    figure: Figure,
    standing: Mapping[str, tuple[OnDeck, ...]] = NOTHING,
) -> tuple[Deck, ...]:
    """Return every panel that a figure can stand on and that does not lie on the table, as far as anything carries it; ``standing``: what
    stands on panels, by their names."""
    low = min(float(panel.frame.carry(corners_of(panel.part))[:, 2].min()) for panel in assembly.boards)
    found = []
    for panel in assembly.boards:
        heights = panel.frame.carry(corners_of(panel.part))[:, 2]
        if bears_figures(panel, figure) and heights.max() > low + panel.part.thickness + ON_TABLE:
            region = region_of(panel)
            ground = {other.name for other in assembly.boards if _lowest(other) <= low + ON_TABLE}
            supports = supports_of(assembly, panel, region, ground)
            loads = tuple(_between_supports(load, supports) for load in standing.get(panel.name, ()))
            deck = deck_on(panel, panel.part.thickness, region, supports, boards, figure, loads)
            found += [] if deck is None else [deck]
    return tuple(found)


def _between_supports(load: OnDeck, supports: shapely.Geometry) -> OnDeck:
    """Return what of a load stands where nothing is under the deck."""
    there = shapely.difference(load.area, supports)
    return OnDeck(there, load.weight * float(there.area / load.area.area))


def region_of(panel: Panel) -> shapely.Geometry:
    """Return the board that bends, in its own coordinates: in several pieces where a seam has no plate, and as narrow as its
    plate where it has one."""
    region = shapely.simplify(polygon(panel.part.outline), SIMPLE)
    for seam in panel.part.seams:
        gap = shapely.buffer(shapely.LineString(seam.line), ON_RIM, cap_style="square")
        if seam.plate is not None:
            plate = shapely.transform(polygon(seam.plate.outline), lambda points, at=seam.at: points + np.asarray(at))
            left, low, right, high = shapely.total_bounds([plate, gap])
            a, b, c, d = plate.bounds
            gap = shapely.difference(
                shapely.box(a, low, c, high) if seam.upright else shapely.box(left, b, right, d), plate
            )
        region = shapely.difference(region, gap)
    return region


def deck_on(
    panel: Panel,
    thick: float,
    region: shapely.Geometry,
    supports: shapely.Geometry,
    boards: dict[str, Board],
    figure: Figure,
    standing: tuple[OnDeck, ...] = (),
) -> Deck | None:
    """Return a panel as a deck ``thick`` mm thick on its supports, under what is standing on it; None where it bends nowhere."""
    board = boards[panel.part.board]
    pieces = [piece for piece in shapely.get_parts(region) if piece.area > SMALL]
    hanging = _hanging(pieces, supports)
    bendings = tuple(one for piece in pieces for one in bendings_of(piece, supports, figure.base, standing))
    if not bendings:
        return None
    stiff = (
        ()
        if board.stiffness is None
        else tuple(one for piece in pieces for one in bendings_of(piece, supports, figure.base, standing, by_sag=True))
    )
    own = areal_mass(board, panel.part.thickness) * GRAVITY * thick / panel.part.thickness
    return Deck(
        panel,
        thick,
        bendings,
        stiff,
        figure.mass * GRAVITY,
        figure.base,
        own,
        strength_of(board),
        board.stiffness,
        hanging,
    )


def _hanging(pieces: list[shapely.Geometry], supports: shapely.Geometry) -> Point | None:
    """Return the middle of a piece beside a seam without a plate that would come down by itself: it is not over what holds it."""
    for piece in pieces if len(pieces) > 1 else ():
        middle = shapely.centroid(piece)
        if not shapely.covers(shapely.convex_hull(shapely.intersection(supports, piece)), middle):
            return float(middle.x), float(middle.y)
    return None


def section_under(panel: Panel, deck: Panel) -> shapely.Geometry:
    """Return what of a panel lies just under a deck, in the deck's coordinates."""
    return section_of(panel, deck.frame, deck.part.thickness + UNDER if float(deck.frame.outward[2]) > 0.0 else -UNDER)


def section_over(panel: Panel, deck: Panel) -> shapely.Geometry:
    """Return what of a panel stands just over a deck, in the deck's coordinates."""
    return section_of(panel, deck.frame, -UNDER if float(deck.frame.outward[2]) > 0.0 else deck.part.thickness + UNDER)


def supports_of(
    assembly: PanelAssembly, deck: Panel, region: shapely.Geometry, ground: Collection[str]
) -> shapely.Geometry:
    """Return where a deck is carried, in its own coordinates: over what stands under it, along edges that are glued to what
    stands without it, and round posts in its openings. ``ground``: names of the panels that something else carries, as the table."""
    standing = standing_without(assembly, deck.name, ground)
    pairs = [{join.a.panel, join.b.panel} for join in assembly.plan.joins]
    glued = {name for pair in pairs if deck.name in pair for name in pair}
    thick = deck.part.thickness
    found = []
    for other in assembly.boards:
        if other.name not in standing:
            continue
        found.append(section_under(other, deck))
        if other.name in glued:
            beside = section_of(other, deck.frame, thick / 2.0)
            found.append(shapely.buffer(shapely.intersection(shapely.buffer(region, UNDER), beside), UNDER))
    found += _in_openings(assembly, deck, standing)
    return shapely.intersection(united(found), region)


def _in_openings(assembly: PanelAssembly, deck: Panel, standing: Collection[str]) -> Iterator[shapely.Geometry]:
    """Yield the rims of a deck's openings that take posts, and its own ends in openings of others: glue fills their play, so
    that neither need touch."""
    for seat in assembly.plan.seats:
        host = assembly.panel(seat.host)
        if not seat.opening or host is None:
            continue
        if seat.host == deck.name and seat.panel in standing:
            ring = opening_of(deck.part, seat.opening)
            if ring is not None:
                yield mitred(polygon(Region(ring)), UNDER)
        elif seat.panel == deck.name and seat.host in standing:
            end = deck.part.edge(seat.edge)
            if end is not None:
                line = shapely.LineString((end.start, end.end))
                yield shapely.buffer(line, host.part.thickness, cap_style="flat")


def standing_without(assembly: PanelAssembly, without: str, ground: Collection[str]) -> set[str]:
    """Return the panels that stand on the ground, or hang on those, when one is taken away."""
    plan = assembly.plan
    pairs = [(join.a.panel, join.b.panel) for join in plan.joins]
    pairs += [(rest.panel, ref.panel) for rest in plan.rests for ref in rest.on]
    pairs += [(seat.panel, seat.host) for seat in plan.seats]
    stands = set(ground) - {without}
    while (
        more := {name for pair in pairs if without not in pair for name in pair if not stands.isdisjoint(pair)} - stands
    ):
        stands |= more
    return stands


def _lowest(panel: Panel) -> float:
    heights: Array = panel.frame.carry(corners_of(panel.part))[:, 2]
    return float(np.min(heights))


def _figures_that_break(deck: Deck) -> float:
    return 0.0 if deck.hanging else deck.strength / deck.stress(deck.weakest)


def facts_of_decks(name: str, place: Place, decks: tuple[Deck, ...]) -> list[Fact]:
    """Return ``deck_span`` and ``deck_overhang`` (mm); where the strength of all boards is known, ``deck_strength_factor`` (figures
    that break it) and ``deck_carries`` (N: the least push of a finger that does); where all boards say how stiff they are,
    ``deck_sag`` (mm); of the worst deck each."""
    if not decks:
        return []
    every = [one for deck in decks for one in deck.bendings]
    longest = {way: max((one.length for one in every if one.way == way), default=0.0) for way in ("span", "beyond")}
    values: list[tuple[str, float, Kind]] = [
        ("deck_span", longest["span"], "length"),
        ("deck_overhang", longest["beyond"], "length"),
    ]
    if all(isfinite(deck.strength) for deck in decks):
        values.append(("deck_strength_factor", min(map(_figures_that_break, decks)), "number"))
        values.append(("deck_carries", min(deck.carries for deck in decks), "force"))
    sags = [deck.sag() for deck in decks]
    if None not in sags:
        values.append(("deck_sag", max(sag[1] for sag in sags if sag is not None), "length"))
    return [made_fact(f"{name}.{fact}", value, kind, place) for fact, value, kind in values]
