"""A strip of board that is slit and bent to an arc."""

from collections.abc import Iterator
from math import radians

from publisher.basics import Finding
from publisher.geometry.model import BendStretch, BentForm, Kept
from publisher.geometry.registry import LOWER_LEFT, SIDES, Shape, Values, angle, choice, length, rectangle, shape_kind
from publisher.geometry.shapes.bending import COVERED, slit_depth, slit_marks, slits_in, too_thin_to_slit

KEPT: dict[str, Kept] = {"outer": "inside", "inner": "outside", "none": "middle"}  # by the skin that is slit


def kept_radius(values: Values) -> float:
    """Return the radius (mm) of the surface that keeps its length when the strip is bent."""
    inner, t = values.number("inner_radius"), values.thickness
    return {"outer": inner, "inner": inner + t, "none": inner + t / 2.0}[values.word("cut")]


def developed(values: Values) -> float:
    """Return the strip's length in mm: (ρ + t)θ with its outer skin whole, ρθ with its inner one, (ρ + t/2)θ unslit."""
    return kept_radius(values) * radians(values.number("angle"))


def check(values: Values) -> Iterator[Finding]:
    """Find board that is too thin to be slit."""
    if values.word("cut") != "none":
        yield from too_thin_to_slit(values, "cut", "cut: none")


def build(values: Values) -> Shape:
    """Return the flat strip, seen on its outside face, lower left corner at the origin; area developed length × height.

    The slits stand half a pitch from each end and a pitch apart, so that the ends do not stay straight. ``cut`` says which
    skin is slit: slits on the inside close when it is bent, slits on the outside open.
    """
    w, h, t, cut = developed(values), values.number("height"), values.thickness, values.word("cut")
    number = 0 if cut == "none" else slits_in(w, t)
    marks = tuple(slit_marks(0.0, w, h, t)) if number else ()
    bending = BentForm(
        (BendStretch(0.0, w, values.number("inner_radius") + t / 2.0),),
        KEPT[cut],
        slit_depth(t) if number else 0.0,
        number,
        values.word("covered"),
    )
    return rectangle(w, h, marks=marks, bending=bending)


KIND = shape_kind(
    "curved_wall",
    "a strip that is slit and bent round an arc; drawn flat, on its outside face",
    (
        length("inner_radius", "radius of the inside face when it is bent", None, 5.0),
        angle("angle", "angle that the wall turns through", 1.0, 360.0),
        length("height", "finished height"),
        choice(
            "cut",
            "skin that is slit: inner (slits close), outer (slits open), none (bent whole)",
            ("inner", "outer", "none"),
        ),
        COVERED,
    ),
    SIDES,
    build,
    check,
    openings=True,
    origin=LOWER_LEFT,
)
