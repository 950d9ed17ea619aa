"""What the fit checks look at."""

from publisher.basics import record
from publisher.design import Design, Fact
from publisher.geometry import Part
from publisher.joints.model import Meeting
from publisher.joints.panels import Mating, PanelAssembly, Resting, Seating
from publisher.joints.stacks import StackReport
from publisher.joints.wholes import PlacedWhole


@record
class MatedPanels:
    """A panel assembly, its joins, its rests and what is put on faces, as they are found."""

    assembly: PanelAssembly
    matings: tuple[Mating, ...]
    restings: tuple[Resting, ...]
    seatings: tuple[Seating, ...] = ()


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

    @property
    def wholes(self) -> tuple[StackReport, ...]:
        """The stack assemblies with all their sections: what is found in them need not be found in a section again."""
        return tuple(report for report in self.stacks if report.whole)

    def fact(self, name: str) -> Fact | None:
        """Return the fact with this name, or None."""
        return next((f for f in self.facts if f.name == name), None)
