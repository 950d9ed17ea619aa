"""Cut files: SVG in mm at true size, one group per kind of line. For knives that a machine holds, and for vector editors."""

from collections.abc import Iterator
from math import radians
from xml.etree.ElementTree import Element

from publisher.basics import Line, LineKind, Path, Pose, angle, polar
from publisher.geometry import Part, Region
from publisher.material import Layout
from publisher.press.svg import add, svg_bytes, svg_drawing

# ISO 128-2 widths in mm, so that a viewer shows what is cut, scored and drawn; a machine goes by the group's id
WIDTHS = {
    LineKind.CUT: 0.5,
    LineKind.SCORE: 0.35,
    LineKind.FOLD: 0.35,
    LineKind.DRAW: 0.25,
    LineKind.GLUE: 0.25,
    LineKind.REFERENCE: 0.25,
}
DASHES = {
    LineKind.SCORE: "3 1",
    LineKind.FOLD: "6 1 0.5 1",
    LineKind.GLUE: "6 1 0.5 1 0.5 1",
    LineKind.REFERENCE: "1 1",
}


def write_part_svg(part: Part) -> bytes:
    """Return one finished piece as SVG: its outline (not the template: no pencil runs round a machine's blade), openings, marks."""
    box = part.outline.outer.box.grown(1.0)  # room for the line's own width
    drawing = _drawing(f"{part.letter} {part.name}", box.width, box.height)
    _draw(drawing, box.height, [(part, Pose(-box.left, -box.bottom))])
    return svg_bytes(drawing)


def write_sheet_svg(layout: Layout, parts: tuple[Part, ...]) -> bytes:
    """Return a laid-out sheet as SVG: the sheet's edge as reference, then every piece in its place."""
    by_id = {part.id: part for part in parts}
    width, height = layout.sheet.width, layout.sheet.height
    drawing = _drawing(f"{layout.board}, {layout.sheet.label}", width, height)
    edge = _group(drawing, LineKind.REFERENCE, "sheet")
    add(edge, "rect", x=0, y=0, width=_round(width), height=_round(height))
    _draw(drawing, height, [(by_id[item.part], item.pose) for item in layout.items])
    return svg_bytes(drawing)


def _drawing(title: str, width: float, height: float) -> Element:
    size = _round(width), _round(height)
    return svg_drawing(title, (f"{size[0]}mm", f"{size[1]}mm"), size)


def _group(drawing: Element, kind: LineKind, name: str) -> Element:
    dashes = {"stroke_dasharray": DASHES[kind]} if kind in DASHES else {}
    return add(drawing, "g", id=name, fill="none", stroke="black", stroke_width=WIDTHS[kind], **dashes)


def _draw(drawing: Element, height: float, placed: list[tuple[Part, Pose]]) -> None:
    for kind in LineKind:
        if paths := [path for part, pose in placed for path in _paths(part, kind, pose, height)]:
            group = _group(drawing, kind, kind.value)
            for path in paths:
                add(group, "path", d=path)


def _paths(part: Part, kind: LineKind, pose: Pose, height: float) -> Iterator[str]:
    if kind is LineKind.CUT:
        yield _region_path(part.outline, pose, height)
    for mark in part.marks:
        if mark.kind is kind:
            yield _path(mark.path.placed(pose), height)


def _round(mm: float) -> float:
    return round(mm, 4) + 0.0


def _region_path(region: Region, pose: Pose, height: float) -> str:
    return " ".join(_path(path.placed(pose), height) for path in region.paths)


def _path(path: Path, height: float) -> str:
    start = path.edges[0].start
    d = [f"M {_round(start[0])} {_round(height - start[1])}"]
    for edge in path.edges:
        if not edge.length:  # words stand here
            continue
        x, y = edge.end
        if isinstance(edge, Line):
            d.append(f"L {_round(x)} {_round(height - y)}")
            continue
        ends = [edge.end]
        if abs(edge.sweep) > 180.0 - 1e-6:  # a flag for the larger arc is read differently near a half turn
            half = angle(edge.centre, edge.start) + radians(edge.sweep) / 2.0
            ends.insert(0, polar(edge.radius, half, edge.centre))
        r, flag = _round(edge.radius), 0 if edge.ccw else 1  # y points down in SVG: anticlockwise becomes sweep 0
        d.extend(f"A {r} {r} 0 0 {flag} {_round(x)} {_round(height - y)}" for x, y in ends)
    return " ".join([*d, "Z"] if path.closed else d)
