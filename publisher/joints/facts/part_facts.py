"""Facts of single parts, named ``gable.width``, ``gable.door.height``, ``gable.least_wall`` and so on."""

from collections.abc import Iterator
from math import dist, inf

import shapely

from publisher.basics import SAME_POINT, Arc, Path, Point, Purpose, record
from publisher.design import Fact, Kind
from publisher.geometry import Opening, Part, Region, polygon
from publisher.joints.facts.directions import made_fact


def facts_of(part: Part) -> tuple[Fact, ...]:
    """Return the facts of a part in a fixed order; lengths in mm, areas in mm²."""
    return tuple(
        made_fact(f"{part.id}.{name}", value, kind, part.place, "." in name) for name, value, kind in _facts(part)
    )


def _facts(part: Part) -> Iterator[tuple[str, float, Kind]]:
    outline = polygon(part.outline)
    left, bottom, right, top = outline.bounds
    yield "width", right - left, "length"
    yield "height", top - bottom, "length"
    yield "thickness", part.thickness, "length"
    yield "area", outline.area, "area"
    yield "perimeter", outline.length, "length"
    yield "count", part.count, "count"
    yield "copies", part.count + part.spare, "count"
    for opening in part.openings:
        yield f"{opening.name}.width", opening.width, "length"
        yield f"{opening.name}.height", opening.height, "length"
    for name, bore in bores_of(part).items():
        yield f"{name}.width", 2.0 * bore, "length"
    for name, wide in pockets_of(part).items():
        yield f"{name}.width", wide, "length"
    if part.openings:
        yield "least_wall", least_wall(part), "length"
    if part.bending is not None:
        yield "bend_radius", part.bending.radius, "length"
        if part.bending.slits:
            yield "slits", part.bending.slits, "count"
            yield "slit_depth", part.bending.slit_depth, "length"
    slots = slots_of(part)
    if slots:
        yield "slot_width", min(slot_width(part, slot) for slot in slots), "length"
        yield "least_beside_slot", min(beside(part, slot) for slot in slots), "length"


@record
class Bore:
    """A round hole of a part: its name, centre and radius (mm)."""

    name: str
    centre: Point
    radius: float


def round_holes(part: Part) -> tuple[Bore, ...]:
    """Return every round hole of a part: of its shape, such as a pier's for dowels, and round openings, by the opening's name."""
    found = []
    for hole in part.outline.holes:
        arcs = [edge for edge in hole.edges if isinstance(edge, Arc)]
        if arcs and len(arcs) == len(hole.edges) and all(dist(arc.centre, arcs[0].centre) < SAME_POINT for arc in arcs):
            found.append(Bore(arcs[0].name.partition(".")[0], arcs[0].centre, arcs[0].radius))
    return tuple(found)


def bores_of(part: Part) -> dict[str, float]:
    """Return the radius (mm) of each round hole that the part's shape has, such as a pier's for a dowel, by its name."""
    found: dict[str, float] = {}
    own = {"", *(opening.name for opening in part.openings)}
    for bore in round_holes(part):
        if bore.name not in own:
            found.setdefault(bore.name, bore.radius)
    return found


def pockets_of(part: Part) -> dict[str, float]:
    """Return the width (mm) of each pocket, such as one for a magnet, by its name: the least of the rectangle that lies round it."""
    found: dict[str, float] = {}
    for mark in part.marks:
        if mark.purpose is Purpose.POCKET:
            left, bottom, right, top = polygon(Region(mark.path)).bounds
            found.setdefault(mark.name, min(right - left, top - bottom))
    return found


def slots_of(part: Part) -> tuple[Path, ...]:
    """Return the closed slots: holes of the outline that joins have cut (the edges of such a hole are named ``….slot``)."""
    return tuple(h for h in part.outline.holes if all(edge.name.endswith("slot") for edge in h.edges))


def slot_width(part: Part, slot: Path) -> float:
    """Return how wide a slot is (mm): across the edge beside which it lies, as the board that goes in stands along that edge; its
    length may be less."""
    edge = part.edge(slot.edges[0].name.removesuffix(".slot"))
    ways = [(edge.nominal_start, edge.nominal_end)] if edge else [(line.start, line.end) for line in slot.edges[:2]]
    wide = []
    for (ax, ay), (bx, by) in ways:
        across = [(x * (ay - by) + y * (bx - ax)) / dist((ax, ay), (bx, by)) for x, y in slot.points]
        wide.append(max(across) - min(across))
    return round(min(wide), 9)  # a rectangle cut as 5.3 wide is 5.3 wide


def short_side(part: Part) -> float:
    """Return the short side (mm) of the smallest rectangle about a part."""
    box = shapely.get_coordinates(shapely.oriented_envelope(polygon(part.outline.outer)))
    return min(dist(box[0], box[1]), dist(box[1], box[2])) if len(box) > 3 else 0.0


def least_wall(part: Part) -> float:
    """Return the least board (mm) left between an opening and the next opening, slot or edge; inf without openings.

    The sill of a door that is open at the bottom is no wall. What is left beside a slot is its own fact, as joints
    take it up.
    """
    areas = [polygon(opening.ring) for opening in part.openings]
    slots = [polygon(slot) for slot in slots_of(part)]
    least = inf
    for at, (opening, area) in enumerate(zip(part.openings, areas, strict=True)):
        others = [*areas[at + 1 :], *slots, _rim(part, opening)]
        least = min(least, *(float(area.distance(other)) for other in others))
    return least


def beside(part: Part, slot: Path) -> float:
    """Return the least board (mm) left between a slot and the outside edge or any other hole."""
    area = polygon(slot)
    outside = shapely.LinearRing(part.outline.outer.points)
    holes = [shapely.LinearRing(hole.points) for hole in part.outline.holes if hole is not slot]
    return min(float(area.distance(other)) for other in (outside, *holes))


def _rim(part: Part, opening: Opening) -> shapely.Geometry:
    """Return the edges of the part that an opening must keep away from: for a door at the sill, all but those it stands on."""
    lines = []
    for edge in part.outline.outer.edges:
        own = edge.name.startswith(f"{opening.name}.") or edge.name == "bottom"
        if opening.sill > SAME_POINT or not own:
            lines.append(shapely.LineString([*edge.points(), edge.end]))
    return shapely.multilinestrings(lines)
