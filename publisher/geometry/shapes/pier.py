"""One layer of a bridge pier seen from above: a straight body with a cutwater at each end."""

from collections.abc import Iterator

from publisher.basics import Finding, LineKind, Purpose, circle, polyline
from publisher.geometry.model import Mark, ParameterInfo
from publisher.geometry.paths import Pen
from publisher.geometry.registry import Shape, Values, edges_of, length, mm, shape_kind
from publisher.geometry.rules import LEAST_HOLE, LEAST_WALL

EDGES = ("bottom", "right_lower", "right_upper", "top", "left_upper", "left_lower")
NARROWEST_PIER = 0.25  # a nose shorter than this share of the half width is no cutwater but a bevel


def nose_of(values: Values) -> float:
    """Return how far a cutwater stands out beyond the body, mm: as given; half the width if unsaid or round."""
    half = values.number("width") / 2.0
    return half if values.word("cutwater") == "round" else values.number("nose") or half


def check(values: Values) -> Iterator[Finding]:
    """Find a nose that its form does not have, and a dowel hole that leaves no wall."""
    half, nose, hole = values.number("width") / 2.0, values.number("nose"), values.number("dowel_radius")
    if values.word("cutwater") == "round" and nose > 0.0 and abs(nose - half) > 1e-6:
        yield values.wrong(
            "nose",
            f"a round cutwater on a pier {mm(2.0 * half)} wide stands out {mm(half)}, not {mm(nose)}",
            "leave nose out, or write cutwater: pointed",
            half,
        )
    elif 0.0 < nose < NARROWEST_PIER * half:
        yield values.wrong(
            "nose",
            f"a nose of {mm(nose)} on a pier {mm(2.0 * half)} wide is no cutwater",
            f"make it at least {mm(NARROWEST_PIER * half)}, or use the shape rectangle",
            NARROWEST_PIER * half,
        )
    if 0.0 < hole < LEAST_HOLE:
        yield values.wrong(
            "dowel_radius",
            f"a hole of radius {mm(hole)} cannot be cut",
            f"make it at least {mm(LEAST_HOLE)}; 0 mm leaves it out",
            LEAST_HOLE,
        )
    elif hole > half - LEAST_WALL + 1e-9 and hole > 0.0:
        yield values.wrong(
            "dowel_radius",
            f"a dowel hole of radius {mm(hole)} leaves {mm(half - hole)} of board on each side of it",
            f"leave at least {mm(LEAST_WALL)}: at most {mm(half - LEAST_WALL)}",
            half - LEAST_WALL,
        )


def build(values: Values) -> Shape:
    """Return the layer about its middle, lying along x: body ``length`` × ``width``, a nose beyond it at each end.

    Area: pointed length·width + width·nose; round length·width + π·width²/4. Two centre lines cross in the middle, so that
    layers are laid one exactly on another.
    """
    a, b = values.number("length") / 2.0, values.number("width") / 2.0
    tip = a + nose_of(values)
    pen = Pen((-a, -b)).line((a, -b), "bottom")
    if values.word("cutwater") == "round":
        east, west = (a, 0.0), (-a, 0.0)
        pen.arc((tip, 0.0), east, b, "right_lower").arc((a, b), east, b, "right_upper").line((-a, b), "top")
        pen.arc((-tip, 0.0), west, b, "left_upper").arc((-a, -b), west, b, "left_lower")
    else:
        pen.line((tip, 0.0), "right_lower").line((a, b), "right_upper").line((-a, b), "top")
        pen.line((-tip, 0.0), "left_upper").line((-a, -b), "left_lower")
    hole = values.number("dowel_radius")
    outer = pen.path()
    lines = (((-tip, 0.0), (tip, 0.0)), ((0.0, -b), (0.0, b)))
    marks = tuple(Mark(LineKind.REFERENCE, Purpose.CENTRE, polyline(line), name="centre line") for line in lines)
    holes = (circle((0.0, 0.0), hole, "dowel", ccw=False),) if hole > 0.0 else ()
    return Shape(outer, edges_of(outer, EDGES), holes, marks)


KIND = shape_kind(
    "pier",
    "a layer of a bridge pier seen from above, with a pointed or round cutwater at each end; piers are stacks of it",
    (
        length("length", "length of the straight body, without the cutwaters"),
        length("width", "width of the pier", None, 2.0),
        ParameterInfo("cutwater", "choice", "form of both ends", "pointed", choices=("pointed", "round")),
        length("nose", "how far a pointed cutwater stands out (0 = half the width, a right angle)", 0.0, 0.0),
        length("dowel_radius", "radius of a hole for a dowel through the middle (0 = none)", 0.0, 0.0),
    ),
    EDGES,
    build,
    check,
    origin="its middle",
)
