"""What was read held against what the design is: parts that were found, and how far their outlines are off."""

from collections.abc import Sequence
from dataclasses import dataclass

import shapely

from tests.rehearsal.laid_on import apart
from tests.rehearsal.pack import ReadPack
from tests.rehearsal.parts import ReadPart, grown
from tests.rehearsal.truth import TruePart

TRUE = 0.1  # mm by which a cut part may be off


@dataclass(frozen=True, slots=True)
class Held:
    """A part that was looked for: mean and worst distance of its cut outline in mm (None: not found), and what else differs."""

    letter: str
    mean: float | None
    worst: float | None
    wrong: tuple[str, ...]

    @property
    def reached(self) -> bool:
        """Say whether the part was read as it is."""
        return self.worst is not None and self.worst <= TRUE and not self.wrong


def held(pack: ReadPack, truth: Sequence[TruePart]) -> tuple[Held, ...]:
    """Return each true part beside all templates that bear its letter: the worst of them counts."""
    found = []
    for part in truth:
        own = [read for read in pack.parts if read.letter == part.letter]
        wrong = [fault for read in own for fault in _wrong(read, part)]
        gaps = [apart(_cut(read, pack), part.outline) for read in own if not read.area.is_empty]
        if not gaps:
            found.append(Held(part.letter, None, None, ("no template of it was read",)))
            continue
        mean, worst = max(gaps, key=lambda gap: gap[1])
        found.append(Held(part.letter, mean, worst, tuple(dict.fromkeys(wrong))))
    strangers = sorted({read.letter for read in pack.parts} - {part.letter for part in truth})
    return (*found, *(Held(letter, None, None, ("no part bears this letter",)) for letter in strangers))


def _cut(read: ReadPart, pack: ReadPack) -> shapely.Polygon:
    return read.area if read.cut_so else grown(read.area, pack.allowance or 0.0)


def _wrong(read: ReadPart, part: TruePart) -> list[str]:
    wrong = list(read.faults)
    for name, said, meant in (("count", read.count, part.count), ("spares", read.spare, part.spare)):
        if said != meant:
            wrong.append(f"{name}: {said} read, {meant} meant")
    if read.thickness and abs(read.thickness - part.thickness) > 0.006:
        wrong.append(f"board: {read.thickness:g} mm read, {part.thickness:g} meant")
    return wrong
