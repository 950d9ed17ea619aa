"""Every panel on a face of another one, measured where it stands, and drawn on the template of the other."""

from collections import defaultdict
from collections.abc import Iterator, Sequence

import numpy as np
import shapely

from publisher.basics import LineKind, Point, Purpose, polyline
from publisher.geometry import Mark
from publisher.joints.panels.linings import LiningFound, measured_lining
from publisher.joints.panels.place import PanelAssembly
from publisher.joints.panels.seats import Seating, measured

LONG_SEAT = 150.0  # mm: a longer seat may run over several pages
LETTER_ASIDE = 0.17  # of its length
LEAST_SEAT = 1.0  # mm²: what covers less is no place to glue anything


def seatings_of(assembly: PanelAssembly) -> tuple[Seating, ...]:
    """Return the panels that are put on faces, as far as both stand somewhere."""
    found = []
    for seat in assembly.plan.seats:
        own, host = assembly.panel(seat.panel), assembly.panel(seat.host)
        if own is not None and host is not None:
            made = measured(seat, own.part, own.frame, host.part, host.frame)
            found += [made] if made is not None else []
    return tuple(found)


def linings_of(assembly: PanelAssembly) -> tuple[LiningFound, ...]:
    """Return the bent parts along each of their edges, as far as they stand somewhere."""
    part_at = {panel.name: panel.part for panel in assembly.panels}
    frames = {panel.name: panel.frame for panel in assembly.panels}
    return tuple(
        found
        for lining in assembly.plan.linings
        if lining.panel in part_at
        for found in measured_lining(lining, part_at[lining.panel], frames[lining.panel], part_at, frames)
    )


def seat_marks(assembly: PanelAssembly, seatings: Sequence[Seating]) -> dict[str, tuple[Mark, ...]]:
    """Return, by part, where others are glued on its faces: outline and letter of each, in the part's own coordinates.

    A part may stand in several places of which not all carry something: then the place is named.
    """
    places: dict[str, list[str]] = defaultdict(list)
    for panel in assembly.panels:
        places[panel.part.id].append(panel.name)
    marks: dict[str, list[Mark]] = defaultdict(list)
    for part, names in places.items():
        by_place = {name: [s for s in seatings if s.seat.host == name] for name in names}
        drawn: set[tuple[object, ...]] = set()
        for name, own in by_place.items():
            for seating in own:
                letter = next(p.part.letter for p in assembly.panels if p.name == seating.seat.panel)
                alike = all(any(_same(seating, other) for other in others) for others in by_place.values())
                key = (letter, *(round(v, 2) for v in seating.touches.bounds), "" if alike else name)
                if key in drawn:
                    continue
                drawn.add(key)
                behind = ", inside" if seating.seat.face == "inside" else ""
                where = "" if alike else f" on {name.replace('_', ' ')}"
                marks[part].extend(_marks(seating, f"{letter}{where}{behind}"))
    return {part: tuple(own) for part, own in marks.items()}


def _same(a: Seating, b: Seating) -> bool:
    same = (a.seat.face, a.seat.edge) == (b.seat.face, b.seat.edge)
    return same and bool(shapely.equals_exact(a.touches, b.touches, 0.01, normalize=True))


def _marks(seating: Seating, text: str) -> Iterator[Mark]:
    """Yield the outline of a seat and, in its middle, the letter of what is glued there."""
    name = f"seat of {seating.seat.panel}"
    pieces = [piece for piece in shapely.get_parts(seating.touches) if piece.area > LEAST_SEAT]
    for piece in pieces:
        for ring in (piece.exterior, *piece.interiors):
            points = [(float(x), float(y)) for x, y in ring.coords[:-1]]
            yield Mark(LineKind.GLUE, Purpose.LAP, polyline(points, True), name=name)
    if pieces:
        largest = max(pieces, key=lambda piece: float(piece.area))
        yield Mark(LineKind.REFERENCE, Purpose.MATCH, polyline((_letter_at(largest),)), name=name, text=text)


def _letter_at(seat: shapely.Polygon) -> Point:
    """Return where in a seat its letter stands: in the middle, or aside on a long one, which may be cut into tiles at halves and
    thirds."""
    box = shapely.get_coordinates(shapely.oriented_envelope(seat))
    a, b = box[1] - box[0], box[3] - box[0]
    long, across = (a, b) if float(np.hypot(*a)) >= float(np.hypot(*b)) else (b, a)
    aside = box[0] + LETTER_ASIDE * long + across / 2.0
    if float(np.hypot(*long)) > LONG_SEAT and shapely.contains_xy(seat, *aside):
        return float(aside[0]), float(aside[1])
    x, y = shapely.get_coordinates(shapely.maximum_inscribed_circle(seat, 0.5))[0]
    return float(x), float(y)
