"""How heavy a design is, and how large it is when its pieces lie flat in one pile to be posted or stored."""

from collections.abc import Iterable
from math import dist

import shapely

from publisher.basics import Place
from publisher.design import Board, Fact, Kind
from publisher.geometry import Part, polygon
from publisher.joints.facts import made_fact
from publisher.joints.footing import mass_of

SIDES = ("width", "depth", "height")


def part_masses(parts: Iterable[Part], boards: dict[str, Board]) -> list[Fact]:
    """Return ``PART.mass`` of every part: grams of one piece."""
    return [Fact(f"{part.id}.mass", mass_of(part, boards), "mass", part.place) for part in parts]


def panels_mass(name: str, pieces: Iterable[Part], boards: dict[str, Board], place: Place) -> Fact:
    """Return ``ASSEMBLY.mass`` of panels (a stack has its own)."""
    return Fact(f"{name}.mass", sum(mass_of(piece, boards) for piece in pieces), "mass", place)


def packed(name: str, pieces: Iterable[Part], place: Place) -> list[Fact]:
    """Return the size of the pile that all pieces of an assembly make, one on another: the longest piece, the widest one
    (each in the smallest rectangle about its outline), and all thicknesses together."""
    several = list(pieces)
    boxes = [_box(part) for part in {part.id: part for part in several}.values()]
    if not boxes:
        return []
    values = (
        ("packed_length", max(box[0] for box in boxes)),
        ("packed_width", max(box[1] for box in boxes)),
        ("packed_height", sum(part.thickness for part in several)),
    )
    kind: Kind = "length"
    return [made_fact(f"{name}.{fact}", value, kind, place) for fact, value in values]


def _box(part: Part) -> tuple[float, float]:
    """Return (long, short) sides of the smallest rectangle about a piece."""
    corners = shapely.get_coordinates(shapely.oriented_envelope(polygon(part.outline.outer)))
    if len(corners) < 4:
        return 0.0, 0.0
    a, b = dist(corners[0], corners[1]), dist(corners[1], corners[2])
    return max(a, b), min(a, b)


def longest(facts: Iterable[Fact]) -> list[Fact]:
    """Return ``ASSEMBLY.longest`` of all that has a width, a depth and a height: the side of the box that it just fits in,
    standing square."""
    sides: dict[str, dict[str, Fact]] = {}
    for fact in facts:
        owner, _, name = fact.name.partition(".")
        if name in SIDES:
            sides.setdefault(owner, {})[name] = fact
    return [
        made_fact(f"{owner}.longest", max(fact.value for fact in three.values()), "length", three["height"].place)
        for owner, three in sides.items()
        if len(three) == len(SIDES)
    ]
