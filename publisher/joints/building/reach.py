"""What a brush or a pencil gets at: drawn faces with room before them. Mm."""

from collections.abc import Iterator, Sequence

import numpy as np
import shapely

from publisher.basics import record
from publisher.geometry import polygon
from publisher.joints.assembled import Assembled
from publisher.joints.building.movers import Mover
from publisher.joints.building.sites import sites_of
from publisher.joints.panels import Panel, is_facet, section_of

BRUSH_REACH = 25.0
"""mm: a hand's brush or blunt pencil needs as much room, and gets as far in from the open (common practice, no source)."""

LOOKS = 6
"""Planes before a face on which other boards are looked for."""

LEAST_SHADOW = 1.0  # mm²: of what is beside a face, and not before it
NEAREST = 0.5  # mm before a face: what is nearer lies on it


@record
class Within:
    """The drawn face of a mover, as it is looked at: ``by`` what stands closest before what is out of reach ('' where all is within
    reach), ``gap`` mm off."""

    name: str
    by: str
    gap: float


def closed_in(subject: Assembled, assembly: str, there: Sequence[str], parts: Sequence[str]) -> Iterator[Within]:
    """Yield the drawn faces of those parts that stand in an assembly, each with what closes it in; of things on things each board
    with what other things have before it."""
    site = sites_of(subject)[assembly]
    movers = [site.movers[name] for name in there]
    for mover in movers:
        others = [other for other in movers if other is not mover]
        if site.made_of:
            boards = [panel for panel in mover.panels if panel.part.id in parts and not is_facet(panel.part)]
            yield from (_looked_at(f"{mover.name}.{panel.name}", panel, others) for panel in boards)
        elif mover.part in parts and not mover.bent:
            yield _looked_at(mover.name, mover.panels[0], others)


def _looked_at(name: str, panel: Panel, others: Sequence[Mover]) -> Within:
    face = polygon(panel.part.outline)
    covered = shapely.union_all([_before(other, panel, NEAREST) for other in others])
    free = shapely.difference(face, covered)
    shadows: dict[str, list[tuple[float, shapely.Geometry]]] = {}
    for gap in np.linspace(NEAREST, BRUSH_REACH, LOOKS)[1:]:
        for other in others:
            shadow = shapely.intersection(_before(other, panel, float(gap)), free)
            if shadow.area > LEAST_SHADOW:
                shadows.setdefault(other.name, []).append((float(gap), shadow))
    every = shapely.union_all([shadow for own in shadows.values() for _, shadow in own])
    if shapely.buffer(every, -BRUSH_REACH, quad_segs=4).is_empty:
        return Within(name, "", BRUSH_REACH)
    by = max(shadows, key=lambda other: max(float(shadow.area) for _, shadow in shadows[other]))
    return Within(name, by, shadows[by][0][0])


def _before(other: Mover, panel: Panel, gap: float) -> shapely.Geometry:
    """Return the section of a mover by the plane ``gap`` mm before a board's drawn face, in its coordinates."""
    return shapely.union_all([section_of(board, panel.frame, -gap) for board in other.panels])
