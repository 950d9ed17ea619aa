"""The line of an arch: semicircular, segmental, three-centred or pointed, as arcs about their centres."""

from collections.abc import Iterator
from math import asin, hypot, pi, sqrt

from publisher.basics import Arc, Finding, Point, angle, polar
from publisher.geometry.model import ParameterInfo
from publisher.geometry.registry import Values, length, mm

FORMS = ("semicircular", "segmental", "three_centred", "pointed")
PARAMETERS: tuple[ParameterInfo, ...] = (
    ParameterInfo("form", "choice", "form of the arch", None, choices=FORMS),
    length("span", "clear width of the arch between its springings", None, 6.0),
    length(
        "rise", "height of the arch from its springings to its crown (a semicircular arch has half its span)", 0.0, 0.0
    ),
)


def rise_of(values: Values) -> float:
    """Return the rise in mm: as given, or half the span for a semicircular arch."""
    return values.number("span") / 2.0 if values.word("form") == "semicircular" else values.number("rise")


def check_form(values: Values) -> Iterator[Finding]:
    """Find a rise that the form of the arch cannot have."""
    form, half, rise = values.word("form"), values.number("span") / 2.0, values.number("rise")
    if form == "semicircular":
        if values.says("rise") and abs(rise - half) > 1e-6:
            yield values.wrong(
                "rise",
                f"a semicircular arch over {mm(2.0 * half)} rises {mm(half)}, not {mm(rise)}",
                "leave rise out, or write form: segmental",
                half,
            )
    elif form == "pointed":
        if rise < half + 0.5:
            yield values.wrong(
                "rise",
                f"a pointed arch over {mm(2.0 * half)} rises more than half its span, but {mm(rise)} was given",
                f"make rise at least {mm(half + 0.5)} (an equilateral arch has {mm(half * sqrt(3.0))})",
                half + 0.5,
            )
    elif not 1.0 <= rise <= half - (0.5 if form == "three_centred" else 0.0):
        most = half - (0.5 if form == "three_centred" else 0.0)
        yield values.wrong(
            "rise",
            f"a {form.replace('_', '-')} arch over {mm(2.0 * half)} cannot rise {mm(rise)}",
            f"its rise lies between {mm(1.0)} and {mm(most)}"
            + ("" if values.says("rise") else ": write rise: and its value"),
            1.0 if rise < 1.0 else most,
        )


def intrados(values: Values, left: Point) -> tuple[Arc, ...]:
    """Return the arch's under side from its left springing (mm) over the crown to the right one.

    Half span s, rise h. Segmental: R = (s² + h²)/(2h) (chord and height of a segment). Pointed: two arcs about centres on
    the springing line, R = (s² + h²)/(2s). Three-centred: the classic compass construction, haunch radius
    r = m·d/s and crown radius R = (d − m)·d/h with d = √(s² + h²), m = (d − s + h)/2; the arcs are tangent where they meet.
    """
    s, h, form = values.number("span") / 2.0, rise_of(values), values.word("form")
    (x, y), right, crown = left, (left[0] + 2.0 * s, left[1]), (left[0] + s, left[1] + h)
    if form in ("semicircular", "segmental"):
        radius = (s * s + h * h) / (2.0 * h)
        return (Arc.between("intrados", left, right, (x + s, y + h - radius), radius, ccw=False),)
    if form == "pointed":
        radius = (s * s + h * h) / (2.0 * s)
        return (
            Arc.between("intrados", left, crown, (x + radius, y), radius, ccw=False),
            Arc.between("intrados", crown, right, (right[0] - radius, y), radius, ccw=False),
        )
    d = hypot(s, h)
    m = (d - s + h) / 2.0
    small, large = m * d / s, (d - m) * d / h
    centre, near, far = (x + s, y + h - large), (x + small, y), (right[0] - small, y)
    tilt = asin((s - small) / (large - small))  # from the vertical to the line through both centres
    a, b = polar(small, pi / 2.0 + tilt, near), polar(small, pi / 2.0 - tilt, far)
    return (
        Arc.between("intrados", left, a, near, small, ccw=False),
        Arc.between("intrados", a, b, centre, large, ccw=False),
        Arc.between("intrados", b, right, far, small, ccw=False),
    )


def outset(arcs: tuple[Arc, ...], depth: float) -> tuple[Arc, ...]:
    """Return the extrados: the arcs ``depth`` mm further from their centres; a pointed arch's meet over its apex."""
    grown = []
    for arc in arcs:
        (cx, cy), ratio = arc.centre, 1.0 + depth / arc.radius
        ends = [(cx + (px - cx) * ratio, cy + (py - cy) * ratio) for px, py in (arc.start, arc.end)]
        grown.append(Arc.between("extrados", ends[0], ends[1], arc.centre, arc.radius + depth, arc.ccw))
    if len(grown) == 2:
        left, right = grown
        x = (left.centre[0] + right.centre[0]) / 2.0
        apex = (x, left.centre[1] + sqrt(left.radius**2 - (x - left.centre[0]) ** 2))
        grown = [
            Arc.between("extrados", left.start, apex, left.centre, left.radius, left.ccw),
            Arc.between("extrados", apex, right.end, right.centre, right.radius, right.ccw),
        ]
    return tuple(grown)


def at_length(arcs: tuple[Arc, ...], along: float) -> tuple[Point, Arc]:
    """Return the point ``along`` mm from the left springing, and the arc that it lies on."""
    for arc in arcs:
        if along <= arc.length + 1e-9 or arc is arcs[-1]:
            turn = min(along, arc.length) / arc.radius
            return polar(arc.radius, angle(arc.centre, arc.start) - turn, arc.centre), arc
        along -= arc.length
    raise ValueError("an arch has arcs")
