"""A part's outline and marks from a designer's own SVG drawing: the first form.

It reads path, rect, circle, ellipse, line, polygon and polyline by id, in groups with transforms, at the size that the
drawing states. What it does not read it refuses by name; it closes no gap of 0.1 mm or more and guesses no size.
"""

from math import dist

from publisher.basics import Finding, LineKind, Point, Purpose
from publisher.design import PartPlan
from publisher.geometry.curves import Curve, flatten
from publisher.geometry.drawings.document import Drawn, elements
from publisher.geometry.drawings.pieces import curves_of_subpath
from publisher.geometry.drawings.tree import Element, Unreadable, read_tree
from publisher.geometry.model import Mark
from publisher.geometry.rings import oriented, ring_of, signed_area
from publisher.geometry.rules import UNREADABLE_DRAWING
from publisher.geometry.shapes import Shape
from publisher.geometry.values import mm

GAP = 0.1  # mm: a smaller gap between start and end is the drawing program's rounding
SIZE_OFF = 0.05  # mm between the stated size and the drawn one
SMALLEST = 1e-3  # mm²


def drawn_shape(plan: PartPlan, data: bytes | None) -> tuple[Shape | None, tuple[Finding, ...]]:
    """Return the shape (mm, lower left corner at the origin) that a plan's drawing gives, or the finding that says why not."""
    drawing = plan.drawing
    assert drawing is not None
    try:
        if data is None:
            raise Unreadable(f"the file {drawing.file} was not found", "put it into the spec's folder")
        return _shape(plan, read_tree(data)), ()
    except Unreadable as trouble:
        return None, (
            UNREADABLE_DRAWING.found(
                f"{drawing.file}: {trouble}", subject=f"part {plan.id}", hint=trouble.hint, place=drawing.place
            ),
        )


def _shape(plan: PartPlan, root: Element) -> Shape:
    drawing = plan.drawing
    assert drawing is not None
    chains = [_closed(d, drawing.id, "outline") for d in elements(root, drawing.id)]
    cuts = [i for kind, ids in drawing.lines if kind == LineKind.CUT for i in ids if i != drawing.id]
    chains += [_closed(d, i, "hole") for i in cuts for d in elements(root, i)]
    chains = [chain for chain in chains if len(chain) > 2 or abs(signed_area(chain)) > SMALLEST]
    if not chains:
        raise Unreadable(f"the element “{drawing.id}” encloses nothing", "draw a closed outline")
    chains.sort(key=lambda chain: -abs(signed_area(chain)))
    points = ring_of(chains[0]).points
    left, bottom = min(x for x, _ in points), min(y for _, y in points)
    _right_size(drawing.width, max(x for x, _ in points) - left, "wide")
    _right_size(drawing.height, max(y for _, y in points) - bottom, "high")

    def home(point: Point) -> Point:
        return (point[0] - left, point[1] - bottom)

    placed = [tuple(curve.moved(home) for curve in chain) for chain in chains]
    marks = [
        Mark(LineKind(kind), Purpose.SURFACE, tuple(map(home, points)), closed, name=wanted)
        for kind, ids in drawing.lines
        if kind != LineKind.CUT
        for wanted in ids
        for points, closed in _lines(root, kind, wanted)
    ]
    return Shape(oriented(placed[0]), (), tuple(oriented(chain, hole=True) for chain in placed[1:]), tuple(marks))


def _right_size(stated: float | None, found: float, word: str) -> None:
    if stated is not None and abs(stated - found) > SIZE_OFF:
        raise Unreadable(
            f"the outline is {mm(found)} {word} in the drawing, but the spec says {mm(stated)}",
            "change the drawing's size or the spec's; the tool scales nothing by itself",
        )


def _closed(drawn: Drawn, wanted: str, name: str) -> tuple[Curve, ...]:
    """Return a closed chain; a rounding gap is bridged, an open path is refused with its place."""
    curves = list(curves_of_subpath(drawn.path, drawn.to_mm, name))
    if not curves:
        return ()
    start, end = curves[0].start, curves[-1].end
    apart = dist(start, end)
    if apart >= GAP:
        raise Unreadable(
            f"the outline “{wanted}” is open: {mm(apart)} lie between its start and its end, near x {end[0]:.1f} mm,"
            f" {-end[1]:.1f} mm from the drawing's upper edge",
            "close the path in the drawing program",
        )
    if apart > 0.0:
        curves.append(Curve(name, end, start))
    return tuple(curves)


def _lines(root: Element, kind: str, wanted: str) -> list[tuple[tuple[Point, ...], bool]]:
    if kind not in list(LineKind):
        kinds = ", ".join(LineKind)
        raise Unreadable(f"“{kind}” is no kind of line", f"kinds of lines: {kinds}")
    lines = []
    for drawn in elements(root, wanted):
        curves = curves_of_subpath(drawn.path, drawn.to_mm, wanted)
        if curves:
            points = [curves[0].start]
            for curve in curves:
                points += [*flatten(curve)[1:], curve.end]
            closed = dist(points[0], points[-1]) < GAP
            lines.append((tuple(points[:-1] if closed else points), closed))
    return lines
