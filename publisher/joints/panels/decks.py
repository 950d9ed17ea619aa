"""Level panels of an assembly and what carries them, by what touches them as they stand. Mm."""

from math import cos, radians

import numpy as np
import shapely

from publisher.basics import record
from publisher.design import Board, Fact, Figure, Kind
from publisher.geometry import polygon
from publisher.joints.bending import Bending, bendings_of, strength_of
from publisher.joints.facts import short_side
from publisher.joints.footing import GRAVITY, areal_mass
from publisher.joints.panels.interference import section_of
from publisher.joints.panels.place import Panel, PanelAssembly
from publisher.joints.panels.solids import ON_TABLE, corners_of
from publisher.joints.panels.space import Array
from publisher.joints.panels.standing import HALF_A_BASE, LEANS_MOST
from publisher.joints.panels.touching import PANEL_TOUCH

UNDER = 2.0 * PANEL_TOUCH
"""mm under a deck at which is looked what lies there."""

FINGER = 15.0
"""mm: a finger's tip that presses. An assumption."""

SIMPLE = PANEL_TOUCH / 5.0  # mm: arcs of a few hundred points bend no better


@record
class Deck:
    """A level panel that something carries, and how it bends at its places; ``giving``: how it sags there, where that is known."""

    panel: Panel
    bendings: tuple[Bending, ...]
    giving: tuple[Bending, ...]
    load: float  # N of the figure, on a base so wide (mm)
    base: float
    own: float  # N of each mm²
    strength: float  # MPa
    stiffness: float | None  # MPa; None: not known

    @property
    def thick(self) -> float:
        """Thickness of the board (mm)."""
        return self.panel.part.thickness

    @property
    def weakest(self) -> Bending:
        """The place where a figure bends it most."""
        return max(self.bendings, key=self.stress)

    @property
    def carries(self) -> float:
        """The least push of a finger (N) that breaks it."""
        return min(one.carries(self.strength, FINGER, self.own, self.thick) for one in self.bendings)

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


def decks_of(assembly: PanelAssembly, boards: dict[str, Board], figure: Figure) -> tuple[Deck, ...]:
    """Return every panel that a figure can stand on and that does not lie on the table, as far as anything carries it."""
    low = min(float(panel.frame.carry(corners_of(panel.part))[:, 2].min()) for panel in assembly.boards)
    found = []
    for panel in assembly.boards:
        heights = panel.frame.carry(corners_of(panel.part))[:, 2]
        level = abs(float(panel.frame.outward[2])) >= cos(radians(LEANS_MOST))
        if level and heights.max() > low + panel.part.thickness + ON_TABLE and _wide(panel, figure):
            region = shapely.simplify(polygon(panel.part.outline), SIMPLE)
            supports, board = _supports(assembly, panel, region, low), boards[panel.part.board]
            bendings = bendings_of(region, supports, figure.base)
            if bendings:
                stiff = () if board.stiffness is None else bendings_of(region, supports, figure.base, by_sag=True)
                own = areal_mass(board, panel.part.thickness) * GRAVITY
                load = figure.mass * GRAVITY
                found.append(Deck(panel, bendings, stiff, load, figure.base, own, strength_of(board), board.stiffness))
    return tuple(found)


def _wide(panel: Panel, figure: Figure) -> bool:
    return short_side(panel.part) >= HALF_A_BASE * figure.base


def _supports(assembly: PanelAssembly, deck: Panel, region: shapely.Geometry, low: float) -> shapely.Geometry:
    """Return where a deck is carried, in its own coordinates: over what stands under it, and along edges that are glued to
    what stands without it."""
    standing = _standing(assembly, deck.name, low)
    pairs = [{join.a.panel, join.b.panel} for join in assembly.plan.joins]
    glued = {name for pair in pairs if deck.name in pair for name in pair}
    thick = deck.part.thickness
    under = thick + UNDER if float(deck.frame.outward[2]) > 0.0 else -UNDER
    found = []
    for other in assembly.boards:
        if other.name not in standing:
            continue
        found.append(section_of(other, deck.frame, under))
        if other.name in glued:
            beside = section_of(other, deck.frame, thick / 2.0)
            found.append(shapely.buffer(shapely.intersection(shapely.buffer(region, UNDER), beside), UNDER))
    return shapely.intersection(shapely.union_all(found), region)


def _standing(assembly: PanelAssembly, without: str, low: float) -> set[str]:
    """Return the panels that stand on the table, or hang on those, when one is taken away."""
    plan = assembly.plan
    pairs = [(join.a.panel, join.b.panel) for join in plan.joins]
    pairs += [(rest.panel, ref.panel) for rest in plan.rests for ref in rest.on]
    pairs += [(seat.panel, seat.host) for seat in plan.seats]
    stands = {panel.name for panel in assembly.boards if panel.name != without and _lowest(panel) <= low + ON_TABLE}
    while (
        more := {name for pair in pairs if without not in pair for name in pair if not stands.isdisjoint(pair)} - stands
    ):
        stands |= more
    return stands


def _lowest(panel: Panel) -> float:
    heights: Array = panel.frame.carry(corners_of(panel.part))[:, 2]
    return float(np.min(heights))


def facts_of_decks(assembly: PanelAssembly, decks: tuple[Deck, ...]) -> list[Fact]:
    """Return ``deck_span`` and ``deck_overhang`` (mm), ``deck_strength_factor`` (figures that break it), ``deck_carries`` (N: the
    least push of a finger that does) and, where all boards say how stiff they are, ``deck_sag`` (mm), of the worst deck each."""
    if not decks:
        return []
    every = [one for deck in decks for one in deck.bendings]
    stresses = [deck.strength / deck.stress(deck.weakest) for deck in decks]
    values: list[tuple[str, float, Kind]] = [
        ("deck_span", max((one.length for one in every if one.way == "span"), default=0.0), "length"),
        ("deck_overhang", max((one.length for one in every if one.way == "beyond"), default=0.0), "length"),
        ("deck_strength_factor", min(stresses), "number"),
        ("deck_carries", min(deck.carries for deck in decks), "force"),
    ]
    sags = [deck.sag() for deck in decks]
    if None not in sags:
        values.append(("deck_sag", max(sag[1] for sag in sags if sag is not None), "length"))
    plan = assembly.plan
    return [Fact(f"{plan.name}.{name}", value, kind, plan.place) for name, value, kind in values]
