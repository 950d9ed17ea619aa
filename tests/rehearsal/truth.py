"""The only module of the rehearsal that asks the tool: the parts that a design is to have."""

from dataclasses import dataclass
from pathlib import Path

import shapely

from publisher import api
from publisher.geometry import polygon


@dataclass(frozen=True, slots=True, eq=False)
class TruePart:
    """A part as ``geometry`` has it: what is drawn and what is cut, in mm, and how many."""

    letter: str
    template: shapely.Polygon
    outline: shapely.Polygon
    count: int
    spare: int
    mirrored: int
    thickness: float


def true_parts(folder: Path, variant: str = "") -> tuple[TruePart, ...]:
    """Return the parts of the design in a folder."""
    worked = api.work(api.read(folder), variant)
    return tuple(
        TruePart(p.letter, polygon(p.template), polygon(p.outline), p.count, p.spare, p.mirrored, p.thickness)
        for p in worked.parts or ()
    )
