"""Cut files: SVG in mm at true size, one group per kind of line. For knives that a machine holds, and for vector editors."""

from collections.abc import Iterable
from math import cos, pi, sin

import svgwrite

from publisher.basics import LineKind, Pose
from publisher.geometry import Mark, Part, Region, Ring
from publisher.material import Layout
from publisher.press.arcs import Straight, segments

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
    xs = [x for x, _ in part.outline.outer.points]
    ys = [y for _, y in part.outline.outer.points]
    margin = 1.0  # room for the line's own width
    pose = Pose(margin - min(xs), margin - min(ys))
    width, height = max(xs) - min(xs) + 2 * margin, max(ys) - min(ys) + 2 * margin
    drawing = _drawing(f"{part.letter} {part.name}", width, height)
    _add(drawing, height, [(part, pose)])
    return _text(drawing)


def write_sheet_svg(layout: Layout, parts: tuple[Part, ...]) -> bytes:
    """Return a laid-out sheet as SVG: the sheet's edge as reference, then every piece in its place."""
    by_id = {part.id: part for part in parts}
    width, height = layout.sheet.width, layout.sheet.height
    drawing = _drawing(f"{layout.board}, {layout.sheet.label}", width, height)
    edge = _group(drawing, LineKind.REFERENCE, "sheet")
    edge.add(drawing.rect(insert=(0, 0), size=(_round(width), _round(height))))
    drawing.add(edge)
    _add(drawing, height, [(by_id[item.part], item.pose) for item in layout.items])
    return _text(drawing)


def _drawing(title: str, width: float, height: float) -> svgwrite.Drawing:
    drawing = svgwrite.Drawing(size=(f"{_round(width)}mm", f"{_round(height)}mm"), debug=False)
    drawing.viewbox(0, 0, _round(width), _round(height))
    drawing.set_desc(title=title)
    return drawing


def _group(drawing: svgwrite.Drawing, kind: LineKind, name: str) -> svgwrite.container.Group:
    group = drawing.g(id=name, fill="none", stroke="black", stroke_width=WIDTHS[kind])
    if kind in DASHES:
        group["stroke-dasharray"] = DASHES[kind]
    return group


def _add(drawing: svgwrite.Drawing, height: float, placed: list[tuple[Part, Pose]]) -> None:
    for kind in LineKind:
        group = _group(drawing, kind, kind.value)
        for part, pose in placed:
            if kind is LineKind.CUT:
                group.add(drawing.path(d=_region_path(part.outline, pose, height)))
            for mark in part.marks:
                if mark.kind is kind:
                    group.add(drawing.path(d=_mark_path(mark, pose, height)))
        if group.elements:
            drawing.add(group)


def _round(mm: float) -> float:
    return round(mm, 4) + 0.0


def _region_path(region: Region, pose: Pose, height: float) -> str:
    return " ".join(_ring_path(ring, pose, height) for ring in (region.outer, *region.holes))


def _ring_path(ring: Ring, pose: Pose, height: float) -> str:
    arcs = tuple((r.first, r.last, pose.apply(r.centre), r.radius) for r in ring.runs if r.centre is not None)
    start, rest = segments(pose.apply_all(ring.points), True, arcs)
    d = [f"M {_round(start[0])} {_round(height - start[1])}"]
    for piece in rest:
        if isinstance(piece, Straight):
            d.append(f"L {_round(piece.end[0])} {_round(height - piece.end[1])}")
            continue
        halves = 2 if abs(piece.sweep) > pi - 1e-6 else 1  # an SVG arc cannot close on its own start
        for k in range(1, halves + 1):
            if k == halves:
                x, y = piece.end
            else:
                angle = piece.start + piece.sweep * k / halves
                x, y = piece.centre[0] + piece.radius * cos(angle), piece.centre[1] + piece.radius * sin(angle)
            flag = 0 if piece.sweep > 0 else 1  # y points down in SVG: anticlockwise becomes sweep 0
            r = _round(piece.radius)
            d.append(f"A {r} {r} 0 0 {flag} {_round(x)} {_round(height - y)}")
    d.append("Z")
    return " ".join(d)


def _mark_path(mark: Mark, pose: Pose, height: float) -> str:
    points: Iterable[tuple[float, float]] = pose.apply_all(mark.points)
    d = " L ".join(f"{_round(x)} {_round(height - y)}" for x, y in points)
    return f"M {d}" + (" Z" if mark.closed else "")


def _text(drawing: svgwrite.Drawing) -> bytes:
    text: str = drawing.tostring()
    return ('<?xml version="1.0" encoding="utf-8"?>\n' + text + "\n").encode("utf-8")
