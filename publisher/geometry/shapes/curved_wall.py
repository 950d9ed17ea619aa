"""A strip of board that is scored or slit and bent to an arc."""

from collections.abc import Iterator
from math import ceil, radians, sqrt, tan

from publisher.basics import Finding, LineKind, Purpose, polyline
from publisher.geometry.model import Mark, ShapeInfo
from publisher.geometry.paths import straight
from publisher.geometry.registry import LOWER_LEFT, Shape, ShapeKind, Values, angle, choice, edges_of, length, mm

EDGES = ("bottom", "right", "top", "left")
LEAST_PITCH = 2.0  # mm between slits: closer ones crumble under the knife
STEEPEST_PITCH = 3.0  # slits stand at most a third of the radius apart, or the facets show as corners


def kept_radius(values: Values) -> float:
    """Return the radius (mm) of the surface that keeps its length when the strip is bent (trade: bend by scoring)."""
    inner, t = values.number("inner_radius"), values.thickness
    return {"outer": inner, "inner": inner + t, "none": inner + t / 2.0}[values.word("cut")]


def pitch_most(values: Values) -> float:
    """Return the widest pitch in mm: a facet of pitch q lies q²/(8ρ) off its arc, and q is at most ρ/3."""
    radius = kept_radius(values)
    return min(sqrt(8.0 * radius * values.number("facet")), radius / STEEPEST_PITCH)


def facets(values: Values) -> int:
    """Return how many slits or grooves the strip gets: as few as the allowed facet depth lets it have."""
    return ceil(developed(values) / pitch_most(values) - 1e-9)


def developed(values: Values) -> float:
    """Return the strip's length in mm: ρθ with its inner skin whole, (ρ + t)θ with its outer one, (ρ + t/2)θ unscored."""
    return kept_radius(values) * radians(values.number("angle"))


def groove(values: Values) -> float:
    """Return the width in mm of a groove on the inside face: 2t·tan(q/(2(ρ + t))), which closes when it is bent."""
    return 2.0 * values.thickness * tan(radians(values.number("angle")) / facets(values) / 2.0)


def check(values: Values) -> Iterator[Finding]:
    """Find slits too close to cut, and grooves that leave nothing between them."""
    if values.word("cut") == "none":
        return
    pitch = developed(values) / facets(values)
    if pitch < LEAST_PITCH:
        radius = kept_radius(values)
        least = LEAST_PITCH * LEAST_PITCH / 8.0 / radius
        small = radius / STEEPEST_PITCH < LEAST_PITCH or developed(values) < LEAST_PITCH
        yield values.wrong(
            "inner_radius" if small else "facet",
            f"facets {mm(values.number('facet'))} deep at most would need a slit every {mm(pitch)}",
            "make inner_radius or angle larger, or write cut: none"
            if small
            else f"allow facets of {mm(least * 1.1)}: slits closer than {mm(LEAST_PITCH)} crumble",
            None if small else least,
        )
    elif values.word("cut") == "inner" and groove(values) > pitch - LEAST_PITCH / 2.0:
        yield values.wrong(
            "inner_radius",
            f"grooves {mm(groove(values))} wide every {mm(pitch)} leave no board between them on the inside",
            "make inner_radius larger, or the board thinner",
        )


def build(values: Values) -> Shape:
    """Return the flat strip, seen on its outside face, lower left corner at the origin; area developed length × height.

    The slits stand half a pitch from each end and a pitch apart, so that each bends by angle/slits and the ends do not
    stay straight. ``cut`` says which skin is cut: slits on the outside open when it is bent, V-grooves on the inside close.
    """
    w, h = developed(values), values.number("height")
    outer = straight((((0.0, 0.0), "bottom"), ((w, 0.0), "right"), ((w, h), "top"), ((0.0, h), "left")))
    return Shape(outer, edges_of(outer, EDGES), (), tuple(_marks(values, w, h)))


def _marks(values: Values, w: float, h: float) -> Iterator[Mark]:
    cut = values.word("cut")
    if cut == "none":
        return
    number = facets(values)
    half = groove(values) / 2.0 if cut == "inner" else 0.0
    for k in range(number):
        middle = (k + 0.5) * w / number
        for x in (middle - half, middle + half) if half else (middle,):
            yield Mark(LineKind.SCORE, Purpose.BEND, polyline(((x, 0.0), (x, h))), name=f"{cut} skin")
    words = f"grooves {mm(round(2.0 * half, 2))} wide, inside" if half else "slits on the outside"
    yield Mark(LineKind.REFERENCE, Purpose.BEND, polyline(((w / 2.0, h / 2.0),)), name=f"{cut} skin", text=words)


KIND = ShapeKind(
    ShapeInfo(
        "curved_wall",
        "a strip that is slit or grooved and bent round an arc; drawn flat, on its outside face",
        (
            length("inner_radius", "radius of the inside face when it is bent", None, 5.0),
            angle("angle", "angle that the wall turns through", 1.0, 360.0),
            length("height", "finished height"),
            choice(
                "cut",
                "skin that is cut: outer (slits open), inner (grooves close), none (bent whole)",
                ("outer", "inner", "none"),
            ),
            length("facet", "how far a flat facet may lie off the true arc", 0.25, 0.01, 5.0),
        ),
        EDGES,
        True,
        origin=LOWER_LEFT,
    ),
    build,
    check,
)
