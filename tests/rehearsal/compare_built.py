"""What a pack makes held against the design: parts as they are cut, assemblies as they are put up."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from tests.rehearsal.built import Built, built_of
from tests.rehearsal.compare import TRUE, Held, held
from tests.rehearsal.compare_standing import StoodWell, stood_well
from tests.rehearsal.pack import ReadPack
from tests.rehearsal.truth import TruePanel, TruePart, true_panels, true_parts, true_stacks


@dataclass(frozen=True, slots=True, eq=False)
class Truth:
    """What a design is: its parts, and its stacks and assemblies of panels; what is bent is in none."""

    parts: tuple[TruePart, ...]
    assemblies: tuple[tuple[TruePanel, ...], ...]


@dataclass(frozen=True, slots=True, eq=False)
class Rehearsed:
    """A pack beside its design: its parts, the best that was put up of each assembly (None: nothing of it), what was not, in words."""

    parts: tuple[Held, ...]
    assemblies: tuple[StoodWell | None, ...]
    strangers: int
    left: tuple[str, ...]

    @property
    def whole(self) -> int:
        """Return how many assemblies stand whole and true."""
        return sum(one is not None and is_whole(one) for one in self.assemblies)


def truth_of(folder: Path, variant: str = "") -> Truth:
    """Return what the design in a folder is."""
    return Truth(true_parts(folder, variant), (*true_stacks(folder, variant), *true_panels(folder, variant)))


def is_whole(one: StoodWell) -> bool:
    """Say whether all of an assembly stands where it belongs, and nothing else."""
    return one.found == one.panels and not one.stray and one.worst <= TRUE


def rehearsed(pack: ReadPack, truth: Truth) -> Rehearsed:
    """Cut and put up a pack, and hold it against its design: each assembly beside what fits it best."""
    built = built_of(pack)
    best = tuple(_best(built, panels) for panels in truth.assemblies)
    strangers = sum(not any(stood_well(stood, (panels,)) for panels in truth.assemblies) for stood in built.assemblies)
    return Rehearsed(held(pack, truth.parts), best, strangers, built.left)


def _best(built: Built, panels: Sequence[TruePanel]) -> StoodWell | None:
    wells = [well for stood in built.assemblies if (well := stood_well(stood, (panels,))) is not None]
    return max(wells, key=lambda well: (well.found, -well.stray, -well.worst), default=None)


__all__ = ["Rehearsed", "Truth", "is_whole", "rehearsed", "truth_of"]
