"""What the tool sees in a drawing: its size, its outlines, what a renderer would fill, what was left out."""

import shapely
from shapely.geometry.base import BaseGeometry

from publisher.basics import Finding, Point, Refusal, record
from publisher.geometry.drawings import areas
from publisher.geometry.drawings.chains import CHAIN_GAP, loops_of
from publisher.geometry.drawings.outline import findings, refused_as, size_unsaid
from publisher.geometry.drawings.picks import pick_outline
from publisher.geometry.drawings.regions import covered, region_of
from publisher.geometry.drawings.scene import Scene, read_scene
from publisher.geometry.drawings.styles import paint_server, painted
from publisher.geometry.drawings.svg_shapes import DrawnShape
from publisher.geometry.drawings.tree import Unreadable, read_tree
from publisher.geometry.paths import polygon
from publisher.geometry.rules.drawings import UNREADABLE_DRAWING, Trouble

OVERVIEW_FINE = 0.001  # mm: areas and pictures come from points, so they are set closer than a template needs
Bounds = tuple[float, float, float, float]


@record
class Seen:
    """One outline: its id (or which element it is), what the drawing program calls it if that is another name, area in mm²,
    bounding box in mm (left, bottom, right, top), rings."""

    id: str
    label: str
    area: float
    bounds: Bounds
    rings: tuple[tuple[Point, ...], ...]


@record
class OpenLine:
    """A line that does not close: its id (or which element it is) and its points in mm."""

    id: str
    points: tuple[Point, ...]


@record
class Look:
    """A whole drawing as the tool sees it, in mm from the lower left corner of its page, y upward.

    ``filled_area`` and ``bounds``: what a renderer fills inside the page (strokes not counted); bounds None when nothing is.
    """

    width: float
    height: float
    outlines: tuple[Seen, ...]
    open_lines: tuple[OpenLine, ...]
    filled_area: float
    bounds: Bounds | None
    filled: tuple[tuple[Point, ...], ...]
    left_out: tuple[str, ...]
    findings: tuple[Finding, ...]


def look_at(data: bytes, name: str, wanted: str = "") -> Look:
    """Return what the tool sees in an SVG's bytes; ``wanted``: only the outline of this id, class, layer or stroke.

    Raises Refusal, with the SVG's line, when the file cannot be used or the wanted outline is none.
    """
    try:
        return _look(read_scene(read_tree(data), OVERVIEW_FINE), name, wanted)
    except Unreadable as refused:
        raise Refusal(*findings((refused_as(refused),), name, name, None)) from None
    except (shapely.errors.GEOSException, ArithmeticError, RecursionError) as trouble:
        what = f"the drawing's lines cannot be worked out ({type(trouble).__name__})"
        told = Trouble(UNREADABLE_DRAWING, what, "simplify it, or save it as plain SVG")
        raise Refusal(*findings((told,), name, name, None)) from None


def _look(scene: Scene, name: str, wanted: str) -> Look:
    left_out = list(scene.left_out)
    troubles: list[Trouble] = []
    filled = _filled(scene, left_out)
    width, height = scene.page.width, scene.page.height
    if scene.page.known == "open":
        everything = areas.united([drawn.region() for drawn in scene.drawn])
        left, bottom, right, top = everything.bounds if not everything.is_empty else (0.0, 0.0, 0.0, 0.0)
        width, height = right - left, top - bottom
    if scene.page.known != "said":
        troubles.append(size_unsaid(width, height))
    open_lines: list[OpenLine] = []
    if wanted:
        seen, more = _one(scene, wanted)
        troubles += more
    else:
        seen = [one for drawn in scene.drawn for one in _outlines(scene, drawn, left_out, troubles, open_lines)]
    bounds = None if filled.is_empty else _bounds(filled)
    return Look(
        width,
        height,
        tuple(seen),
        tuple(open_lines),
        float(filled.area),
        bounds,
        _rings(filled),
        tuple(dict.fromkeys(left_out)),
        findings(troubles, name, name, None),
    )


def _filled(scene: Scene, left_out: list[str]) -> BaseGeometry:
    regions = []
    for drawn in scene.drawn:
        server = paint_server(drawn.style, scene.ids, drawn.element.line)
        if server:
            left_out.append(f"{drawn.name}: the colours of its {server}; its whole area counts")
        if not drawn.faint and painted(drawn.style, "fill", scene.ids, drawn.element.line):
            regions.append(drawn.region())
    filled = areas.united(regions)
    if scene.page.known == "open":
        return filled
    return areas.clipped(filled, [shapely.box(0.0, 0.0, scene.page.width, scene.page.height)])


def _outlines(
    scene: Scene, drawn: DrawnShape, left_out: list[str], troubles: list[Trouble], open_lines: list[OpenLine]
) -> list[Seen]:
    """Return the outline of one shape, if it is closed and drawn, as a part would take it; say which lines are open."""
    line = drawn.element.line
    if not any(painted(drawn.style, how, scene.ids, line) for how in ("fill", "stroke")):
        return []
    loops, opens, found = loops_of((drawn,))
    troubles += found
    for chain in opens:
        if chain.path.length > CHAIN_GAP:
            left_out.append(f"{drawn.called} (line {line}): an open line, no outline")
            open_lines.append(OpenLine(drawn.name, chain.points))
    if not loops:
        return []
    region, crossed = covered(scene, loops)
    left_out += [f"{one.message} (line {one.line}): no outline for a part" for one in crossed]
    return [] if region.is_empty or region.area <= 0.0 else [_seen(drawn.name, drawn.label, region)]


def _one(scene: Scene, wanted: str) -> tuple[list[Seen], list[Trouble]]:
    shapes, clones = pick_outline(scene, wanted)
    region, troubles = region_of(scene, shapes, (), wanted)
    if region is None:
        bad = [t for t in troubles if t.rule.severity == "error"]
        raise Unreadable(bad[0].message, bad[0].hint, bad[0].line)
    return [_seen(wanted, "", polygon(region))], [*clones, *troubles]


def _seen(name: str, label: str, region: BaseGeometry) -> Seen:
    return Seen(name, label, float(region.area), _bounds(region), _rings(region))


def _bounds(region: BaseGeometry) -> Bounds:
    left, bottom, right, top = (float(value) for value in region.bounds)
    return left, bottom, right, top


def _rings(region: BaseGeometry) -> tuple[tuple[Point, ...], ...]:
    return tuple(
        tuple((float(x), float(y)) for x, y in ring.coords)
        for piece in shapely.get_parts(region)
        if piece.geom_type == "Polygon"
        for ring in (piece.exterior, *piece.interiors)
    )
