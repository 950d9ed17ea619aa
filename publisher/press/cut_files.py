"""Cut files: SVG in mm at true size, one group per kind of line, one for words. For knives that a machine holds, and for vector editors."""

from __future__ import annotations

from math import ceil, radians
from typing import TYPE_CHECKING

from publisher.basics import Line, LineKind, Path, Pose, angle, polar
from publisher.geometry import Part, Region, piece_words
from publisher.material import Layout

if TYPE_CHECKING:
    import svgwrite

# ISO 128-2 widths in mm, so that a viewer shows what is cut, scored and drawn; a machine goes by the group's id
WIDTHS = {
    LineKind.CUT: 0.5,
    LineKind.SCORE: 0.35,
    LineKind.FOLD: 0.35,
    LineKind.DRAW: 0.25,
    LineKind.GLUE: 0.25,
    LineKind.REFERENCE: 0.25,
}
WORDS = "words"
DASHES = {
    LineKind.SCORE: "3 1",
    LineKind.FOLD: "6 1 0.5 1",
    LineKind.GLUE: "6 1 0.5 1 0.5 1",
    LineKind.REFERENCE: "1 1",
}


MOST_OF_A_TURN = 120.0
"""Degrees: a longer arc is written in equal parts. A program finds an arc's centre from its ends and its radius, all of them rounded:
near a half turn that moves it by many times the rounding, and the flag for the larger arc is read differently there."""


def write_part_svg(part: Part) -> bytes:
    """Return one finished piece as SVG: its outline (not the template: no pencil runs round a machine's blade), openings, marks."""
    box = part.outline.outer.box.grown(1.0)  # room for the line's own width
    drawing = _drawing(f"{part.letter} {part.name}", box.width, box.height)
    _add(drawing, box.height, [(part, Pose(-box.left, -box.bottom))])
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
    import svgwrite  # not above: its own imports take as long as a whole room's, and most commands write no SVG

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
                if mark.kind is kind and mark.path.length > 0.0:  # else only words stand there
                    group.add(drawing.path(d=_path(mark.path.placed(pose), height)))
        if group.elements:
            drawing.add(group)
    drawing.add(_words(drawing, height, placed))


def _words(drawing: svgwrite.Drawing, height: float, placed: list[tuple[Part, Pose]]) -> svgwrite.container.Group:
    """Return the words, upright however a piece lies: filled and without a stroke, so that no machine cuts along them."""
    group = drawing.g(id=WORDS, fill="black", stroke="none", font_family="sans-serif", text_anchor="middle")
    for part, pose in placed:
        for word in piece_words(part):
            x, y = pose.apply(word.at)
            group.add(drawing.text(word.text, insert=(_round(x), _round(height - y)), font_size=_round(word.height)))
    return group


def _round(mm: float) -> float:
    return round(mm, 4) + 0.0


def _region_path(region: Region, pose: Pose, height: float) -> str:
    return " ".join(_path(path.placed(pose), height) for path in region.paths)


def _path(path: Path, height: float) -> str:
    start = path.edges[0].start
    d = [f"M {_round(start[0])} {_round(height - start[1])}"]
    for edge in path.edges:
        x, y = edge.end
        if isinstance(edge, Line):
            d.append(f"L {_round(x)} {_round(height - y)}")
            continue
        parts = max(1, ceil(abs(edge.sweep) / MOST_OF_A_TURN - 1e-9))
        first, step = angle(edge.centre, edge.start), radians(edge.sweep) / parts
        ends = [*(polar(edge.radius, first + k * step, edge.centre) for k in range(1, parts)), edge.end]
        r, flag = _round(edge.radius), 0 if edge.ccw else 1  # y points down in SVG: anticlockwise becomes sweep 0
        d.extend(f"A {r} {r} 0 0 {flag} {_round(x)} {_round(height - y)}" for x, y in ends)
    return " ".join([*d, "Z"] if path.closed else d)


def _text(drawing: svgwrite.Drawing) -> bytes:
    text: str = drawing.tostring()
    return ('<?xml version="1.0" encoding="utf-8"?>\n' + text + "\n").encode("utf-8")
