"""A cone rolled from a flat sector: round turrets' roofs, heaps, funnels."""

from collections.abc import Iterator
from math import acos, hypot, radians, sin, tan

from publisher.basics import Finding, polar
from publisher.geometry.model import BentForm
from publisher.geometry.paths import Pen
from publisher.geometry.registry import Shape, Values, deg, edges_of, length, mm, shape_kind
from publisher.geometry.rules import LEAST_WALL
from publisher.geometry.shapes.bending import COVERED

EDGES = ("outer", "seam_right", "seam_left")
THINNEST = 0.1  # mm of paper
WIDEST = 356.0  # degrees of the sector: in a narrower gap no pencil follows both seams


def sector(base_radius: float, height: float) -> tuple[float, float]:
    """Return a cone's slant s = √(h² + r²) in mm and its sector's angle 360°·r/s in degrees.

    Ten solved cases: mathforum.org, BuildCone.
    """
    slant = hypot(base_radius, height)
    return slant, 360.0 * base_radius / slant


def seam_gap(radius: float, sector_angle: float) -> float:
    """Return how far apart (mm) the two seams stand at this radius when the sector lies flat."""
    return 2.0 * radius * sin(radians(min(360.0 - sector_angle, 180.0)) / 2.0)


def check(values: Values) -> Iterator[Finding]:
    """Find a cone so flat that its seams nearly touch on the sheet."""
    radius, height = values.number("radius"), values.number("height")
    slant, turn = sector(radius, height)
    least = radius * tan(acos(WIDEST / 360.0))
    if turn > WIDEST:
        yield values.wrong(
            "height",
            f"a cone of radius {mm(radius)} and height {mm(height)} is nearly a flat disc: on the sheet its seams stand only"
            f" {deg(360.0 - turn)} apart",
            f"make it at least {mm(least)} high, or use the shape disc",
            least,
        )
    elif seam_gap(slant, turn) < LEAST_WALL:
        yield values.wrong(
            "radius",
            f"the seams of a cone of radius {mm(radius)} stand {mm(seam_gap(slant, turn))} apart at the rim",
            "make it larger, or higher",
        )


def build(values: Values) -> Shape:
    """Return the sector about its apex at the origin, open side up; area π·r·s, its arc is 2πr long.

    The sizes hold on the surface that keeps its length when it is rolled: the middle of paper or card. The seams meet edge
    to edge and are equal in length (the slant).
    """
    slant, turn = sector(values.number("radius"), values.number("height"))
    first, last = radians(-90.0 - turn / 2.0), radians(-90.0 + turn / 2.0)
    pen = Pen(polar(slant, first)).arc(polar(slant, last), (0.0, 0.0), slant, "outer")
    pen.line((0.0, 0.0), "seam_right").line(polar(slant, first), "seam_left")
    # it bends the more the nearer to the apex: judged a board's thickness from it, as nobody rolls the tip itself
    tip = values.number("radius") / values.number("height") * max(values.thickness, THINNEST)
    bending = BentForm((), "middle", 0.0, 0, values.word("covered"), tip)
    return Shape(pen.path(), edges_of(pen.path(), EDGES), bending=bending)


KIND = shape_kind(
    "cone",
    "the flat sector that rolls up to a cone, seam edge to edge",
    (length("radius", "radius of the cone at its base"), length("height", "height of the cone, upright"), COVERED),
    EDGES,
    build,
    check,
    origin="the apex",
)
