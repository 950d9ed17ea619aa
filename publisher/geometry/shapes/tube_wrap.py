"""A strip that wraps a tube once, its upper edge square or cut obliquely."""

from collections.abc import Iterator
from math import cos, hypot, pi, radians, sin, tan

from publisher.basics import Finding, LineKind, Purpose, polyline
from publisher.geometry.model import BendStretch, BentForm, DrawnFor, Mark, ParameterInfo
from publisher.geometry.paths import Pen, fitted_line
from publisher.geometry.registry import LOWER_LEFT, SIDES, Shape, Values, angle, edges_of, length, mm, shape_kind
from publisher.geometry.shapes.bending import COVERED

WRAP_FINE = (
    0.0005  # mm: how far the oblique edge may lie off the true curve, so that its length is right to a thousandth
)
PARTS = 96  # places along the strip where the true curve is kept exactly
SEAMS = {"low": -1.0, "high": 1.0}


def girth(values: Values) -> float:
    """Return the length once round, mm: π(D + c), the strip's middle keeps its length (c: its own thickness)."""
    return pi * (values.number("tube_diameter") + values.thickness)


def check(values: Values) -> Iterator[Finding]:
    """Find an oblique cut that comes down to the bottom, and a glue lap that goes round."""
    swing = girth(values) / (2.0 * pi) * tan(radians(values.number("cut")))
    if values.number("height") - swing < 1.0:
        most = values.number("height") - 1.0
        yield values.wrong(
            "cut",
            f"the oblique edge swings {mm(swing)} up and down about the height of {mm(values.number('height'))}",
            f"make the height at least {mm(swing + 1.0)}, or the cut flatter",
            most,
        )
    if values.number("lap") > girth(values) / 3.0:
        yield values.wrong(
            "lap",
            f"a lap of {mm(values.number('lap'))} goes more than a third round, {mm(girth(values))} in all",
            f"make it at most {mm(girth(values) / 3.0)}",
            girth(values) / 3.0,
        )


def build(values: Values) -> Shape:
    """Return the strip flat, lower left corner at the origin, the lap beyond x = π(D + c).

    The oblique edge unrolls to h ∓ r·tan β·cos(x/r), r = (D + c)/2: the sinusoid of Apostol & Mnatsakanian, "Unwrapping
    Curves from Cylinders and Cones", Amer. Math. Monthly 114 (2007), begun at the seam. Area without lap: girth × height.
    """
    once, lap, h = girth(values), values.number("lap"), values.number("height")
    r, slope = once / (2.0 * pi), tan(radians(values.number("cut")))
    swing = r * slope * SEAMS[values.word("seam")]
    whole = once + lap
    pen = Pen((0.0, 0.0)).line((whole, 0.0), "bottom")
    if slope > 0.0:
        places = [whole * k / PARTS for k in range(PARTS, -1, -1)]
        points = [(x, h + swing * cos(x / r)) for x in places]
        steep = [-swing / r * sin(x / r) for x in places]
        tangents = [(-1.0 / hypot(1.0, u), -u / hypot(1.0, u)) for u in steep]
        pen.line(points[0], "right").along(fitted_line(points, tangents, "top", WRAP_FINE))
    else:
        pen.line((whole, h), "right").line((0.0, h), "top")
    outer = pen.line((0.0, 0.0), "left").path()
    marks = []
    if lap > 0.0:
        seam = ((once, 0.0), (once, h + swing * cos(once / r) if slope else h))
        marks.append(Mark(LineKind.GLUE, Purpose.LAP, polyline(seam), name="lap", text="glue lap"))
    if slope > 0.0:
        half = ((once / 2.0, 0.0), (once / 2.0, h - swing))
        marks.append(Mark(LineKind.REFERENCE, Purpose.CENTRE, polyline(half), name="half way round"))
    # under a lap the ends need not meet
    ends = () if lap > 0.0 else (DrawnFor("seam", once, values.number("tube_diameter")),)
    bending = BentForm((BendStretch(0.0, whole, r),), "middle", 0.0, 0, values.word("covered"))
    return Shape(outer, edges_of(outer, SIDES), (), tuple(marks), drawn_for=ends, bending=bending)


KIND = shape_kind(
    "tube_wrap",
    "a strip that wraps a tube once, with its own thickness counted; its upper edge square or oblique",
    (
        length("tube_diameter", "outside diameter of the tube", None, 3.0, 1500.0),
        length("height", "height of the strip; with an oblique cut, half way between low and high"),
        angle("cut", "angle of the oblique cut against square (0 = square)", 0.0, 75.0, 0.0),
        ParameterInfo(
            "seam", "choice", "where the seam lies: at the low or the high side", "low", choices=("low", "high")
        ),
        length("lap", "glue lap beyond the seam (0 = none)", 0.0, 0.0),
        COVERED,
    ),
    SIDES,
    build,
    check,
    origin=LOWER_LEFT,
)
