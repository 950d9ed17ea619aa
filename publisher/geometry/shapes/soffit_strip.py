"""The under side of an arch: a strip that bends along the arch between the two sides of a bridge."""

from collections.abc import Iterator
from itertools import accumulate, pairwise
from math import radians

from publisher.basics import Finding, LineKind, Point, Purpose, polyline
from publisher.geometry.model import BendStretch, BentForm, Kept, Mark, ParameterInfo
from publisher.geometry.registry import LOWER_LEFT, SIDES, Shape, Values, length, mm, rectangle, shape_kind
from publisher.geometry.shapes.arch_form import PARAMETERS, check_form, intrados
from publisher.geometry.shapes.bending import COVERED, slit_depth, slit_marks, slits_in, too_thin_to_slit

SKINS = ("arch_face", "inner_face", "unscored", "thin_card")
SLIT = ("arch_face", "inner_face")
FACES: dict[str, Kept] = {
    "arch_face": "outside",
    "inner_face": "inside",
    "unscored": "middle",
    "thin_card": "outside",
}


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
    if not bad and values.word("keeps") in SLIT:
        yield from too_thin_to_slit(values, "keeps", "keeps: unscored")
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


def build(values: Values) -> Shape:
    """Return the strip lying along x, ``width`` high; slit across where it bends, marked where arcs meet."""
    stretches, arcs = lengths(values), intrados(values, (0.0, 0.0))
    whole, w = sum(stretches), values.number("width")
    marks: list[Mark] = []
    starts = (0.0, *accumulate(stretches))
    keeps, t = values.word("keeps"), values.thickness
    number = 0
    if keeps in SLIT:
        for start, end in pairwise(starts):
            number += slits_in(end - start, t)
            marks.extend(slit_marks(start, end, w, t))
    kind = LineKind.FOLD if values.word("form") == "pointed" else LineKind.REFERENCE
    marks.extend(_across(kind, at, w, "arcs meet") for at in starts[1:-1])
    marks.append(_across(LineKind.REFERENCE, whole / 2.0, w, "crown", Purpose.CENTRE))
    # the two arcs of a pointed arch meet in its apex, which is as sharp as both sweeps leave it
    fold = 180.0 - sum(abs(arc.sweep) for arc in arcs) if values.word("form") == "pointed" else 0.0
    bends = (
        BendStretch(a, b, arc.radius - t / 2.0, fold if a > 0.0 else 0.0)
        for arc, (a, b) in zip(arcs, pairwise(starts), strict=True)
    )
    bending = BentForm(tuple(bends), FACES[keeps], slit_depth(t) if number else 0.0, number, values.word("covered"))
    return rectangle(whole, w, marks=tuple(marks), bending=bending)


def _across(kind: LineKind, at: float, width: float, name: str, purpose: Purpose = Purpose.LINE_UP) -> Mark:
    return Mark(kind, purpose, polyline(_line(at, width)), name=name)


def _line(at: float, width: float) -> tuple[Point, Point]:
    return ((at, 0.0), (at, width))


KIND = shape_kind(
    "soffit_strip",
    "the under side of an arch: a strip of the right length that bends along the arch between two sides",
    (
        *PARAMETERS,
        length("width", "width of the strip: between the sides of the bridge, or over them"),
        ParameterInfo(
            "keeps",
            "choice",
            "what keeps its length in the bend: the face on the arch (slits inside, which close), the inner face (slits"
            " towards the arch, which open), the middle of board that is bent whole, or thin card",
            "arch_face",
            choices=SKINS,
        ),
        COVERED,
    ),
    SIDES,
    build,
    check,
    origin=LOWER_LEFT,
)
