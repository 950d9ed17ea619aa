"""Every panel on a face of another one, measured where it stands, and drawn on the template of the other."""

from collections import defaultdict
from collections.abc import Iterator, Sequence

import shapely

from publisher.basics import LineKind, Purpose, polyline
from publisher.geometry import Mark
from publisher.joints.panels.place import PanelAssembly
from publisher.joints.panels.seats import Seating, measured

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
        x, y = shapely.get_coordinates(shapely.maximum_inscribed_circle(largest, 0.5))[0]
        yield Mark(LineKind.REFERENCE, Purpose.MATCH, polyline(((float(x), float(y)),)), name=name, text=text)
