"""The under side of an arch: a strip that bends along the arch between the two sides of a bridge."""

from collections.abc import Iterator
from itertools import accumulate, pairwise
from math import ceil, radians, sqrt, tan

from publisher.basics import Arc, Finding, LineKind, Point, Purpose, polyline
from publisher.geometry.model import Mark, ParameterInfo, ShapeInfo
from publisher.geometry.paths import straight
from publisher.geometry.registry import LOWER_LEFT, Shape, ShapeKind, Values, edges_of, length, mm
from publisher.geometry.shapes.arch_form import PARAMETERS, check_form, intrados

EDGES = ("bottom", "right", "top", "left")
SKINS = ("arch_face", "inner_face", "unscored", "thin_card")


def lengths(values: Values) -> tuple[float, ...]:
    """Return the flat length (mm) of the strip along each arc of the arch.

    The strip's outer face lies on the arch, radius R, its inner face at R − t, for an arc of angle θ: a skin that is not
    cut keeps its length, Rθ on the arch face, (R − t)θ inside; bare foam that is not scored keeps its middle, (R − t/2)θ;
    thin card has no thickness worth counting (bending rows of sheet work).
    """
    t = values.thickness
    less = {"arch_face": 0.0, "inner_face": t, "unscored": t / 2.0, "thin_card": 0.0}[values.word("keeps")]
    return tuple((arc.radius - less) * radians(abs(arc.sweep)) for arc in intrados(values, (0.0, 0.0)))


def check(values: Values) -> Iterator[Finding]:
    """Find an arch that cannot be, or that bends more tightly than the board is thick."""
    bad = tuple(check_form(values))
    yield from bad
    if bad or values.word("keeps") == "thin_card":
        return
    tight = min(arc.radius for arc in intrados(values, (0.0, 0.0)))
    if tight < 3.0 * values.thickness:
        yield values.wrong(
            "span",
            f"board {mm(values.thickness)} thick does not bend along an arc of radius {mm(tight)}",
            f"the tightest arc needs a radius of {mm(3.0 * values.thickness)}: a larger arch, or keeps: thin_card",
            3.0 * values.thickness,
        )


def groove(inner: float, pitch: float, thickness: float) -> float:
    """Return the width of a V groove at the inner face, mm: 2t·tan(q/(2(ρ + t))) for the pitch q on the outer face."""
    return 2.0 * thickness * tan(pitch / (2.0 * (inner + thickness)))


def build(values: Values) -> Shape:
    """Return the strip lying along x, ``width`` high; scored across where it bends, marked where arcs meet."""
    stretches, arcs = lengths(values), intrados(values, (0.0, 0.0))
    whole, w = sum(stretches), values.number("width")
    outer = straight((((0.0, 0.0), "bottom"), ((whole, 0.0), "right"), ((whole, w), "top"), ((0.0, w), "left")))
    marks: list[Mark] = []
    starts = (0.0, *accumulate(stretches))
    if values.word("keeps") in ("arch_face", "inner_face"):
        for arc, (start, end) in zip(arcs, pairwise(starts), strict=True):
            marks.extend(_scores(values, arc, start, end))
    kind = LineKind.FOLD if values.word("form") == "pointed" else LineKind.REFERENCE
    marks.extend(_across(kind, at, w, "arcs meet") for at in starts[1:-1])
    marks.append(_across(LineKind.REFERENCE, whole / 2.0, w, "crown", Purpose.CENTRE))
    return Shape(outer, edges_of(outer, EDGES), (), tuple(marks))


def _scores(values: Values, arc: Arc, start: float, end: float) -> Iterator[Mark]:
    """Cuts across the strip: facets of at most ρ/3 whose sagitta q²/(8ρ) is at most ``facet``."""
    t = values.thickness
    inner = arc.radius - t
    pitch = min(sqrt(8.0 * inner * values.number("facet")), inner / 3.0)
    cuts = max(1, ceil((end - start) / pitch))
    q = (end - start) / cuts
    v_grooves = values.word("keeps") == "arch_face"
    text = f"V groove {groove(inner, q, t):.1f} mm wide, inside" if v_grooves else "slit on the arch side"
    for k in range(cuts):
        points = _line(start + (k + 0.5) * q, values.number("width"))
        yield Mark(
            LineKind.SCORE, Purpose.SURFACE, polyline(points), name="bend", text=text if k == 0 and start == 0.0 else ""
        )


def _across(kind: LineKind, at: float, width: float, name: str, purpose: Purpose = Purpose.LINE_UP) -> Mark:
    return Mark(kind, purpose, polyline(_line(at, width)), name=name)


def _line(at: float, width: float) -> tuple[Point, Point]:
    return ((at, 0.0), (at, width))


KIND = ShapeKind(
    ShapeInfo(
        "soffit_strip",
        "the under side of an arch: a strip of the right length that bends along the arch between two sides",
        (
            *PARAMETERS,
            length("width", "width of the strip: between the sides of the bridge, or over them"),
            ParameterInfo(
                "keeps",
                "choice",
                "what keeps its length in the bend: the face on the arch (V grooves inside), the inner face (slits towards"
                " the arch), the middle of bare foam that is not scored, or thin card",
                "arch_face",
                choices=SKINS,
            ),
            length("facet", "how far a facet between two scores may lie off the arch", 0.3, 0.05, 5.0),
        ),
        EDGES,
        False,
        origin=LOWER_LEFT,
    ),
    build,
    check,
)
