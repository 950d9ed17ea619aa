"""What stands on one page of templates: copies in their places, each with its blocks of words. Millimetres on the page."""

from dataclasses import dataclass

from publisher.basics import Pose
from publisher.pages.sheet import Frame
from publisher.pages.templates.spots import Spot
from publisher.pages.templates.template_labels import Sample


@dataclass(frozen=True, slots=True)
class Lying:
    """A copy on a page, with its words: those inside it; a flag that is cut off last; what it may lose, in free room."""

    sample: Sample
    pose: Pose
    flag: Spot | None = None
    inside: tuple[Spot, ...] = ()
    beside: Spot | None = None

    @property
    def spots(self) -> tuple[Spot, ...]:
        """All blocks of words."""
        return (*self.inside, *(spot for spot in (self.flag, self.beside) if spot))


@dataclass(frozen=True, slots=True)
class Shown:
    """One page of templates."""

    frame: Frame
    lying: tuple[Lying, ...]
