"""A layer of a hill: an outline, taken in a little more on every layer, like the contour lines of a map.

A hill is a family of parts: one spec entry says how many layers it has, and each layer is a part of its own. The outline is
an ellipse (or a superellipse, between an ellipse and a rectangle), or a designer's own drawing.
"""

from collections.abc import Iterator
from math import acos, ceil, pi, radians, tan

import numpy as np
import shapely

from publisher.basics import Finding, LineKind, Path, Point, Purpose, polyline, remembered_few
from publisher.geometry.model import Edge, Mark, ParameterInfo
from publisher.geometry.paths import fitted, polygon
from publisher.geometry.registry import Shape, Values, angle, deg, length, mm, shape_kind

EDGES = ("rim",)
HILL_ROUND = (
    1.0  # mm: least radius of a corner, as a knife goes round it; also, nothing narrower than twice this is cut
)
HILL_SAGITTA = 0.003  # mm of the outline's chords
IN_LINE = 1e-4  # mm: points that lie this near to a straight line say nothing
COARSE_HILL = 0.05  # mm: for lines that are only looked at
LEAST_HOLLOW = 5.0  # mm: half the width of the narrowest hollow that is worth its cut
HILL_TICK = 6.0  # mm: length of the line-up mark on the top layer


def inset_of(values: Values) -> float:
    """Return how far each layer lies inside the one below, mm: as given, or thickness / tan(slope)."""
    slope = values.number("slope")
    return values.thickness / tan(radians(slope)) if slope > 0.0 else values.number("inset")


def check(values: Values) -> Iterator[Finding]:
    """Find a hill without an outline or a slope, and layers that vanish."""
    drawn = values.outline is not None
    if not drawn and values.number("length") <= 0.0:
        message = "the hill has no drawing, so it needs its length"
        yield values.wrong("length", message, "write length: 200 mm, or give the part a drawing")
        return
    if drawn and (values.says("length") or values.says("width")):
        yield values.wrong(
            "length" if values.says("length") else "width",
            "the hill's outline is drawn, so its length and width are the drawing's",
            "leave them out, or write width and height on the drawing as a check",
        )
    if (values.number("slope") > 0.0) is (values.number("inset") > 0.0):
        both = values.number("slope") > 0.0
        yield values.wrong(
            "slope" if both else "inset",
            f"the hill says both its slope and its inset: {deg(values.number('slope'))} and {mm(values.number('inset'))}"
            if both
            else "the hill says neither how far each layer is set in nor how steep it is",
            "give inset (the width of a terrace) or slope, not both",
        )
        return
    inset, layer = inset_of(values), values.layer
    if inset < 1.0:
        yield values.wrong("slope", f"each layer would be set in by {mm(inset)}", "make the hill flatter", 1.0)
    elif not _pieces(_taken_in(base(values), (layer - 1) * inset)):
        top = next(k for k in range(1, layer + 1) if not _pieces(_taken_in(base(values), (k - 1) * inset)))
        yield values.wrong(
            "slope" if values.number("slope") > 0.0 else "inset",
            f"nothing is left of layer {layer}: {layer - 1} × {mm(inset)} is more than half the width of the outline",
            f"make the inset smaller, or the hill at most {top - 1} layers high",
            float(top - 1),
        )


def base(values: Values) -> shapely.Polygon:
    """Return the outline of the lowest layer in mm: the drawing, or |2x/length|ⁿ + |2y/width|ⁿ = 1 about the origin."""
    if values.outline is not None:
        return polygon(values.outline)
    whole, n = values.number("length"), values.number("exponent")
    a, b = whole / 2.0, (values.number("width") or whole) / 2.0
    count = 4 * ceil(pi / 4.0 / acos(1.0 - HILL_SAGITTA / 2.0 / max(a, b, 1.0)))
    if n != 2.0:
        count *= 4
    t = np.arange(count) * (2.0 * pi / count)
    c, s = np.cos(t), np.sin(t)
    points = np.stack([a * np.sign(c) * np.abs(c) ** (2.0 / n), b * np.sign(s) * np.abs(s) ** (2.0 / n)], axis=1)
    return shapely.Polygon(points) if n == 2.0 else shapely.simplify(shapely.Polygon(points), HILL_SAGITTA / 4.0)


def build(values: Values) -> Shape:
    """Return layer k of the hill, k = 1 at the table: the outline taken in by (k − 1)·inset, in the outline's own place.

    All layers keep the outline's coordinates, so they lie rightly on each other without being moved. A hollow layer
    keeps ``lap`` under the next one. A layer that falls apart comes as its largest piece with the others in ``pieces``.
    """
    inset, layer, lap = inset_of(values), values.layer, values.number("lap")
    whole = base(values)
    own = _pieces(_taken_in(whole, (layer - 1) * inset))
    last = layer >= values.layers
    over = [] if last else _pieces(_taken_in(whole, layer * inset))
    hollow = [] if last or lap <= 0.0 else _pieces(_opened(whole, by=layer * inset + lap, least=LEAST_HOLLOW))
    pole = _pole(own, whole, (values.layers - 1) * inset)
    made = [_shape(piece, over, hollow, pole, layer) for piece in own]
    first = made[0]
    return Shape(first.outer, first.edges, first.holes, first.marks, pieces=tuple(made[1:]))


def _shape(
    piece: shapely.Polygon, over: list[shapely.Polygon], hollow: list[shapely.Polygon], pole: Point, layer: int
) -> Shape:
    outer = _path(piece, "rim")
    start = outer.edges[0].start
    rim = Edge("rim", start, start, start, start, centre=pole)
    holes = tuple(_path(hole, "hollow").reversed() for hole in hollow if piece.covers(hole))
    on_it = [p for p in over if piece.covers(p)]
    marks = [*(_lap(p, layer + 1) for p in on_it), *_line_up(piece, on_it, pole)]
    return Shape(outer, (rim,), holes, tuple(marks))


def _lap(piece: shapely.Polygon, layer: int) -> Mark:
    """Where the next layer lies."""
    ring = shapely.get_coordinates(shapely.simplify(piece, COARSE_HILL).exterior)[:-1]
    points = tuple((float(x), float(y)) for x, y in ring)
    return Mark(
        LineKind.REFERENCE,
        Purpose.LAP,
        polyline(points, closed=True),
        name="lap of the next layer",
        text=f"layer {layer}",
    )


def _line_up(piece: shapely.Polygon, over: list[shapely.Polygon], pole: Point) -> Iterator[Mark]:
    """Lines across the terrace on two rays from the hill's top: those of all layers make two straight lines up the hill."""
    x, y = pole
    _, _, right, top = piece.bounds
    for name, end in (("east", (max(right, x) + 1.0, y)), ("north", (x, max(top, y) + 1.0))):
        ray = shapely.LineString([pole, end])
        hits = [(float(a), float(b)) for a, b in shapely.get_coordinates(ray.intersection(piece.exterior))]
        if not hits:
            continue
        rim = max(hits)
        inner = [(float(a), float(b)) for p in over for a, b in shapely.get_coordinates(ray.intersection(p.exterior))]
        back = (max(rim[0] - HILL_TICK, x), y) if name == "east" else (x, max(rim[1] - HILL_TICK, y))
        to = max((p for p in inner if max(p) <= max(rim) + 1e-6), default=back)
        if rim != to:
            yield Mark(LineKind.REFERENCE, Purpose.LINE_UP, polyline((rim, to)), name=f"line-up {name}")


def _pole(own: list[shapely.Polygon], whole: shapely.Polygon, top_inset: float) -> Point:
    """Return a point inside the largest piece of the hill's top layer (mm), the same for all layers."""
    top = _pieces(_taken_in(whole, top_inset)) or own
    middle = top[0].centroid if top[0].contains(top[0].centroid) else top[0].representative_point()
    return (round(float(middle.x), 6), round(float(middle.y), 6))


def _taken_in(whole: shapely.Polygon, by: float) -> shapely.Geometry:
    return whole if by <= 0.0 else _opened(whole, by=by, least=HILL_ROUND)


@remembered_few  # each layer asks for the next one too, and all for the top
def _opened(whole: shapely.Polygon, *, by: float, least: float) -> shapely.Geometry:
    """Take the outline in by ``by``; leave out what is narrower than 2·``least``, and round corners to that radius."""
    fine = 48
    kept = shapely.buffer(shapely.buffer(whole, -(by + least), quad_segs=fine), least, quad_segs=fine)
    return shapely.simplify(kept, IN_LINE)


def _pieces(shape: shapely.Geometry) -> list[shapely.Polygon]:
    """Return the pieces without holes, the largest first."""
    found = [shapely.Polygon(p.exterior) for p in shapely.get_parts(shape) if p.geom_type == "Polygon" and p.area > 1.0]
    return sorted(found, key=lambda p: (-p.area, p.bounds))


def _path(piece: shapely.Polygon, name: str) -> Path:
    ring = shapely.get_coordinates(shapely.orient_polygons(piece).exterior)[:-1]
    return fitted([(float(x), float(y)) for x, y in ring], name)


KIND = shape_kind(
    "hill",
    "a hill in layers like the contour lines of a map; say how many on the part: layers: 6",
    (
        length("length", "length of the lowest layer, if no drawing gives the outline", 0.0, 0.0),
        length("width", "width of the lowest layer (0 = as its length)", 0.0, 0.0),
        ParameterInfo(
            "exponent",
            "number",
            "2 is an ellipse, more goes towards a rectangle, less towards a diamond",
            2.0,
            1.2,
            10.0,
        ),
        length("inset", "how far each layer lies inside the one below: the width of a terrace", 0.0, 0.0),
        angle("slope", "how steep the hill is, in place of inset", 0.0, 80.0, 0.0),
        length("lap", "how far a hollow layer reaches under the next one, to glue (0 = layers are solid)", 0.0, 0.0),
    ),
    EDGES,
    build,
    check,
    layered=True,
    origin="the middle of the lowest layer; of a drawn one, the lower left corner of its box",
)
