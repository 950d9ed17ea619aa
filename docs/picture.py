"""Pictures for the docs: a part as the tool draws it, its named edges labelled. Millimetres, y down as SVG counts."""

from collections.abc import Iterable
from html import escape
from math import atan2, degrees, hypot

import numpy as np
import shapely

from publisher.basics import LineKind, Point
from publisher.geometry import Mark, Part, polygon

MARGIN = 0.13  # of the larger side: room for the edges' names
ARM = 0.022  # of the larger side: half of the cross at the origin
FINE = 0.04  # mm: arcs are drawn this true
DASHES = {LineKind.SCORE: "3 1", LineKind.FOLD: "6 1 0.5 1", LineKind.GLUE: "6 1", LineKind.REFERENCE: "1 1"}


def picture(part: Part, edges: bool = True) -> str:
    """Return the SVG of one part: outline, openings, marks and, with ``edges``, their names outside it and a cross at its origin."""
    body = polygon(part.outline)
    left, bottom, right, top = body.bounds
    size = max(right - left, top - bottom)
    margin, letter = (MARGIN if edges else 0.03) * size + 1.0, 0.032 * size
    x0, y0 = left - margin, top + margin
    width, height = right - left + 2 * margin, top - bottom + 2 * margin

    def at(points: Iterable[Point], closed: bool) -> str:
        return "M" + "L".join(f"{_n(x - x0)} {_n(y0 - y)}" for x, y in points) + ("Z" if closed else "")

    rings = shapely.get_coordinates(shapely.get_rings(shapely.simplify(body, FINE)), return_index=True)
    outline = "".join(at(rings[0][rings[1] == i][:-1].tolist(), True) for i in np.unique(rings[1]))
    thin = size / 700
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_n(width)} {_n(height)}" width="{480 * min(1.0, width / height):.0f}"'
        f' font-family="sans-serif" font-size="{_n(letter)}" text-anchor="middle">',
        f"<title>{escape(part.name)}</title>",
        f'<rect width="{_n(width)}" height="{_n(height)}" fill="#fff"/>',
        f'<path d="{outline}" fill="#f1ede4" fill-rule="evenodd" stroke="#111" stroke-width="{_n(3 * thin)}"/>',
    ]
    for kind in LineKind:
        drawn = [at(_simple(m), m.path.closed) for m in part.marks if m.kind is kind and len(m.path.points) > 1]
        if drawn:
            dash = f' stroke-dasharray="{DASHES[kind]}"' if kind in DASHES else ""
            lines.append(
                f'<path d="{"".join(drawn)}" fill="none" stroke="#555" stroke-width="{_n(1.4 * thin)}"{dash}/>'
            )
    for name, (x, y), turn, scale in _names(part, body, letter) if edges else ():
        small = f' font-size="{_n(scale * letter)}"' if scale < 1.0 else ""
        place = f"translate({_n(x - x0)} {_n(y0 - y)}) rotate({_n(-turn)})"
        lines.append(f'<text transform="{place}" y="{_n(0.35 * scale * letter)}"{small}>{escape(name)}</text>')
    if edges:
        arm = ARM * size
        cross = at([(-arm, 0.0), (arm, 0.0)], False) + at([(0.0, -arm), (0.0, arm)], False)
        lines.append(f'<path d="{cross}" fill="none" stroke="#b00" stroke-width="{_n(3 * thin)}"/>')
    return "\n".join([*lines, "</svg>"]) + "\n"


def _simple(mark: Mark) -> list[Point]:
    if len(mark.path.points) < 3:
        return list(mark.path.points)
    line = shapely.simplify(shapely.LineString(mark.path.points), FINE)
    return [(float(x), float(y)) for x, y in line.coords]


def _names(part: Part, body: shapely.Polygon, letter: float) -> Iterable[tuple[str, Point, float, float]]:
    """Yield each edge's name, its place outside the middle of the edge, the angle at which it reads, and its scale."""
    for edge in part.edges:
        (ax, ay), (bx, by) = edge.start, edge.end
        bent = _bent(part, edge.name)
        if len(bent) > 2:  # an arc or a free curve: beside its middle
            middle = len(bent) // 2
            (mx, my), (ax, ay), (bx, by) = bent[middle], bent[middle - 1], bent[(middle + 1) % len(bent)]
        else:
            mx, my = (ax + bx) / 2, (ay + by) / 2
        long = hypot(bx - ax, by - ay) or 1.0
        nx, ny = (by - ay) / long, (ax - bx) / long
        if body.contains(shapely.Point(mx + 0.3 * nx, my + 0.3 * ny)):
            nx, ny = -nx, -ny
        turn = (degrees(atan2(ny, nx)) + 90.0 + 90.0) % 180.0 - 90.0
        turn = 90.0 if turn <= -89.9 else turn
        room = hypot(edge.end[0] - edge.start[0], edge.end[1] - edge.start[1]) if len(bent) <= 2 else _length(bent)
        scale = min(1.0, max(0.5, 0.7 * room / (0.55 * letter * len(edge.name))))
        yield edge.name, (mx + nx * 1.1 * scale * letter, my + ny * 1.1 * scale * letter), turn, scale


def _length(points: tuple[Point, ...]) -> float:
    """Return the length of a line of points, in mm."""
    return float(shapely.LineString(points).length)


def _bent(part: Part, name: str) -> tuple[Point, ...]:
    """Return the points of the longest stretch of this name; half of one that goes all round."""
    found = [stretch.points for stretch in part.outline.outer.stretches() if stretch.name == name]
    longest = max(found, key=len, default=())
    return longest[: len(longest) // 2 + 1] if len(longest) > 2 and longest[0] == longest[-1] else longest


def _n(value: float) -> str:
    return f"{round(value, 2) + 0.0:g}"
