"""What the fit checks look at."""

from publisher.basics import Place, record
from publisher.design import Board, Design, Fact, Figure
from publisher.geometry import Part
from publisher.joints.footing import mass_of
from publisher.joints.model import Meeting
from publisher.joints.panels import (
    PANEL_TOUCH,
    Deck,
    LiningFound,
    Mating,
    PanelAssembly,
    PanelBalance,
    PostFound,
    Resting,
    Seating,
    balance_of,
    decks_of,
    linings_of,
    matings_of,
    posts_of,
    restings_of,
    seatings_of,
)
from publisher.joints.stacks import StackReport
from publisher.joints.wholes import PiledThings, PlacedWhole


@record
class MatedPanels:
    """A panel assembly, its joins, its rests and what is put on faces, as they are found, and how it stands: None where a
    panel is not where it will stand, as edges do not meet."""

    assembly: PanelAssembly
    matings: tuple[Mating, ...]
    restings: tuple[Resting, ...]
    seatings: tuple[Seating, ...] = ()
    linings: tuple[LiningFound, ...] = ()
    posts: tuple[PostFound, ...] = ()
    balance: PanelBalance | None = None
    decks: tuple[Deck, ...] = ()  # level panels that others carry


def mate(assembly: PanelAssembly, boards: dict[str, Board], figure: Figure) -> MatedPanels:
    """Measure the joins, rests and seats of placed panels, and how they stand together."""
    matings = matings_of(assembly)
    fits = all(m.gap <= PANEL_TOUCH and abs(m.length_a - m.length_b) <= PANEL_TOUCH for m in matings)
    stands = fits and assembly.panels and not assembly.unplaced
    balance = balance_of(assembly.solid, lambda part: mass_of(part, boards), figure) if stands else None
    decks = decks_of(assembly, boards, figure) if stands else ()
    seatings, linings = seatings_of(assembly), linings_of(assembly)
    return MatedPanels(assembly, matings, restings_of(assembly), seatings, linings, posts_of(assembly), balance, decks)


@record
class LayeredDecks:
    """A stack's name, where the spec has it, and its layers that reach out over the next lower one, or span what is hollow there."""

    stack: str
    place: Place
    decks: tuple[Deck, ...]


@record
class Assembled:
    """A design put together: its parts, stacks, panels and facts; ``meetings`` with what does not shrink with the paper."""

    design: Design
    parts: tuple[Part, ...]
    stacks: tuple[StackReport, ...]
    panels: tuple[MatedPanels, ...]
    facts: tuple[Fact, ...]
    meetings: tuple[Meeting, ...] = ()
    things: tuple[PlacedWhole, ...] = ()  # assemblies that stand on each other
    layered: tuple[LayeredDecks, ...] = ()
    piles: tuple[PiledThings, ...] = ()  # of things of layers, as the stacks that they are

    @property
    def wholes(self) -> tuple[StackReport, ...]:
        """The stack assemblies with all their sections: what is found in them need not be found in a section again."""
        return tuple(report for report in self.stacks if report.whole)

    @property
    def only_carried(self) -> frozenset[str]:
        """The names of the assemblies that nowhere stand on the table, only on others: there they are judged, and not by themselves."""
        things = [thing for whole in self.design.wholes for thing in whole.things]
        return frozenset(thing.assembly for thing in things) - {thing.assembly for thing in things if not thing.on}

    def fact(self, name: str) -> Fact | None:
        """Return the fact with this name, or None."""
        return next((f for f in self.facts if f.name == name), None)
