"""A cone cut off level, rolled from a flat ring sector: tapering round towers, buckets, skirts of turrets."""

from collections.abc import Iterator
from math import hypot, radians

from publisher.basics import Finding, polar
from publisher.geometry.model import BentForm
from publisher.geometry.paths import Pen
from publisher.geometry.registry import Shape, Values, edges_of, length, mm, shape_kind
from publisher.geometry.rules import LEAST_WALL
from publisher.geometry.shapes.bending import COVERED
from publisher.geometry.shapes.cone import seam_gap

EDGES = ("outer", "seam_right", "inner", "seam_left")
LONGEST_RADIUS = 50000.0  # mm: a flatter arc is a rectangle to the knife


def ring_sector(radius: float, top_radius: float, height: float) -> tuple[float, float, float]:
    """Return a frustum's outer and inner radius on the sheet (mm) and its angle (degrees).

    With the slant s = √(h² + (r − r_top)²): outer s·r/(r − r_top), inner outer − s, angle 360°·(r − r_top)/s.
    """
    taper = radius - top_radius
    slant = hypot(height, taper)
    outer = slant * radius / taper
    return outer, outer - slant, 360.0 * taper / slant


def check(values: Values) -> Iterator[Finding]:
    """Find a top no narrower than the base, and a frustum so flat that its seams nearly touch on the sheet."""
    radius, top, height = (values.number(name) for name in ("radius", "top_radius", "height"))
    most = radius - max(0.1, hypot(height, 0.1) * radius / LONGEST_RADIUS)
    if top > most:
        yield values.wrong(
            "top_radius",
            f"the top's radius is {mm(top)} and the base's {mm(radius)}: this does not taper, or too little to draw",
            f"give the wide end as radius, and make top_radius at most {mm(max(most, 0.0))}; a straight tube is a plain strip",
            most,
        )
        return
    outer, inner, turn = ring_sector(radius, top, height)
    if seam_gap(inner, turn) < LEAST_WALL:
        yield values.wrong(
            "height" if turn > 180.0 else "top_radius",
            f"its seams stand {mm(seam_gap(inner, turn))} apart at the inner arc of the flat piece",
            "make it higher, or the top wider",
        )
    if outer - inner < LEAST_WALL:
        yield values.wrong("height", f"the strip is only {mm(outer - inner)} wide", "make it higher", LEAST_WALL)


def build(values: Values) -> Shape:
    """Return the ring sector about the cone's apex, moved so that its outer arc's lowest point is the origin.

    Area π·(r + r_top)·s; the arcs are 2πr and 2πr_top long, the seams equal (the slant s). The sizes hold on the surface
    that keeps its length when it is rolled: the middle of paper or card.
    """
    outer, inner, turn = ring_sector(values.number("radius"), values.number("top_radius"), values.number("height"))
    apex, first, last = (0.0, outer), radians(-90.0 - turn / 2.0), radians(-90.0 + turn / 2.0)
    pen = Pen(polar(outer, first, apex)).arc(polar(outer, last, apex), apex, outer, "outer")
    pen.line(polar(inner, last, apex), "seam_right")
    pen.arc(polar(inner, first, apex), apex, inner, "inner", ccw=False).line(polar(outer, first, apex), "seam_left")
    narrow = values.number("top_radius") * (outer - inner) / values.number("height")  # of curvature, at the narrow end
    bending = BentForm((), "middle", 0.0, 0, values.word("covered"), narrow)
    return Shape(pen.path(), edges_of(pen.path(), EDGES), bending=bending)


KIND = shape_kind(
    "cone_frustum",
    "the flat ring sector that rolls up to a cone cut off level, seam edge to edge",
    (
        length("radius", "radius at the wide end"),
        length("top_radius", "radius at the narrow end"),
        length("height", "height between both ends, upright"),
        COVERED,
    ),
    EDGES,
    build,
    check,
    origin="the lowest point of its outer arc",
)
