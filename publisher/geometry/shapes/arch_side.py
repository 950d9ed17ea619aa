"""The side of a bridge: a wall with an arch through it, and the stones of the arch drawn."""

from collections.abc import Iterator

from publisher.basics import Arc, Finding, LineKind, Path, Point, Purpose, polyline
from publisher.geometry.model import Mark
from publisher.geometry.paths import Pen
from publisher.geometry.registry import LOWER_LEFT, Shape, Values, count, edges_of, length, mm, shape_kind
from publisher.geometry.rules import LEAST_WALL
from publisher.geometry.shapes.arch_form import PARAMETERS, at_length, check_form, intrados, outset, rise_of

EDGES = ("bottom", "right", "top", "left", "intrados")
LEAST_STONE = 2.0  # mm: narrower stones cannot be drawn by hand
COARSE_ARCH = 0.05  # mm: sagitta of lines that are only looked at


def check(values: Values) -> Iterator[Finding]:
    """Find an arch that its form, the length of the side or the drawn stones do not allow."""
    bad = tuple(check_form(values))
    yield from bad
    span, whole = values.number("span"), values.number("length")
    if whole < span + 2.0 * LEAST_WALL - 1e-9:
        yield values.wrong(
            "length",
            f"a side {mm(whole)} long leaves no abutments beside an arch of {mm(span)}",
            f"make it at least {mm(span + 2.0 * LEAST_WALL)} long",
            span + 2.0 * LEAST_WALL,
        )
        return
    stones, depth = values.count("voussoirs"), values.number("voussoir_depth")
    if stones and depth <= 0.0:
        yield values.wrong("voussoirs", "the stones of an arch need their depth too", "write voussoir_depth: 12 mm")
    elif depth > 0.0 and not bad:
        along = sum(arc.length for arc in intrados(values, (0.0, 0.0)))
        if stones and along / stones < LEAST_STONE:
            yield values.wrong(
                "voussoirs",
                f"{stones} stones along {mm(along)} of arch are {mm(along / stones)} wide each",
                f"nobody can draw them narrower than {mm(LEAST_STONE)}: at most {int(along / LEAST_STONE)}",
                along / LEAST_STONE,
            )
        room = min(values.number("spandrel"), (whole - span) / 2.0)
        if depth > room + 1e-9:
            yield values.wrong(
                "voussoir_depth",
                f"stones {mm(depth)} deep do not fit: {mm(values.number('spandrel'))} of board stand over the crown,"
                f" {mm((whole - span) / 2.0)} beside the arch",
                f"make voussoir_depth at most {mm(room)}, or the side higher or longer",
                room,
            )


def build(values: Values) -> Shape:
    """Return the side seen from outside, lower left corner at the origin, the arch in the middle.

    Height = springing + rise + spandrel. The joints of the stones stand square on the intrados, at equal distances along
    it. Surfaces keep off the stones.
    """
    span, whole, foot = values.number("span"), values.number("length"), values.number("springing")
    height = foot + rise_of(values) + values.number("spandrel")
    first = (whole - span) / 2.0
    arcs = intrados(values, (first, foot))
    pen = Pen((0.0, 0.0)).line((first, 0.0), "bottom")
    if foot > 0.0:
        pen.line((first, foot), "jamb")
    pen.along(arcs)
    if foot > 0.0:
        pen.line((first + span, 0.0), "jamb")
    pen.line((whole, 0.0), "bottom").line((whole, height), "right").line((0.0, height), "top").line((0.0, 0.0), "left")
    outer = pen.path()
    marks, ring = _stones(values, arcs)
    return Shape(outer, edges_of(outer, EDGES), (), marks, (ring,) if ring else ())


def _stones(values: Values, arcs: tuple[Arc, ...]) -> tuple[tuple[Mark, ...], tuple[Point, ...]]:
    """Return the extrados and the joints as marks, and the ring of stones as points; nothing without their depth."""
    stones, depth = values.count("voussoirs"), values.number("voussoir_depth")
    if depth <= 0.0:
        return (), ()
    extrados = outset(arcs, depth)
    back = Path(extrados, closed=False)
    marks = [Mark(LineKind.DRAW, Purpose.SURFACE, back, name="extrados")]
    whole = sum(arc.length for arc in arcs)
    for k in range(stones + 1) if stones else ():
        at, arc = at_length(arcs, k * whole / stones)
        x, y = (at[0] - arc.centre[0]) / arc.radius, (at[1] - arc.centre[1]) / arc.radius
        out = (at[0] + depth * x, at[1] + depth * y)
        if len(arcs) == 2 and 2 * k == stones:
            out = extrados[0].end  # the joint at a pointed arch's apex
        if out[1] > LEAST_STONE / 2.0:  # a joint along the bottom edge is none
            marks.append(Mark(LineKind.DRAW, Purpose.SURFACE, polyline((at, out)), name="voussoir joint"))
    front = Path(arcs, closed=False).flattened(COARSE_ARCH)
    return tuple(marks), (*front, *reversed(back.flattened(COARSE_ARCH)))


KIND = shape_kind(
    "arch_side",
    "the side of a bridge seen from outside: a wall with an arch in its middle, its stones drawn",
    (
        *PARAMETERS,
        length("spandrel", "height of the side over the crown of the arch", None, LEAST_WALL),
        length("length", "whole length of the side"),
        length("springing", "height of the springings over the bottom edge", 0.0, 0.0),
        count(
            "voussoirs",
            "stones of the arch (an odd number has a keystone; 0 = a plain band if it has a depth)",
            0,
            400,
            0,
        ),
        length("voussoir_depth", "depth of the arch's stones, square to its line", 0.0, 0.0),
    ),
    EDGES,
    build,
    check,
    origin=LOWER_LEFT,
)
