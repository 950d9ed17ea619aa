"""Lines of a drawing as marks on a part: to score, draw, fold, glue, or for reference."""

from collections.abc import Iterator, Sequence
from math import dist

import shapely

from publisher.basics import SAME, LineKind, Path, Point, Purpose
from publisher.geometry.drawings.chains import at, loops_of
from publisher.geometry.drawings.picks import pick
from publisher.geometry.drawings.scene import Scene
from publisher.geometry.model import Mark, Region
from publisher.geometry.paths import polygon
from publisher.geometry.rules.drawings import LINE_OUTSIDE, OPEN_OUTLINE, Trouble

_OUT = 0.05  # mm of a line that may lie over the outline before it is said


def marks_of(
    scene: Scene, lines: Sequence[tuple[str, tuple[str, ...]]], region: Region, outline: str
) -> tuple[tuple[Mark, ...], list[Trouble]]:
    """Return the marks (mm, in the drawing's own place) of all lines but those to cut, clipped to the region."""
    body = polygon(region)
    near = shapely.buffer(body, 1e-3)
    marks: list[Mark] = []
    troubles: list[Trouble] = []
    for kind, names in lines:
        if kind == LineKind.CUT:
            continue
        for name in names:
            loops, opens, found = loops_of(pick(scene, name))
            troubles += [t for t in found if t.rule is not OPEN_OUTLINE]
            for loop in (*loops, *opens):
                closed, points = loop.path.closed, _points(loop.path)
                own, outside = _on(points, closed, body, near)
                marks += (Mark(LineKind(kind), Purpose.SURFACE, line, whole, name=loop.name) for line, whole in own)
                if outside > _OUT:
                    troubles.append(_outside(loop.name, outline, points[0], outside, loop.drawn[0].element.line))
    return tuple(marks), troubles


def _points(path: Path) -> tuple[Point, ...]:
    end = path.edges[-1].end
    return (*path.points, end) if path.closed and dist(end, path.points[0]) > SAME else path.points


def _on(
    points: tuple[Point, ...], closed: bool, body: shapely.Polygon, near: shapely.Polygon
) -> tuple[list[tuple[tuple[Point, ...], bool]], float]:
    """Return what of a line lies on the part, and how many mm of it do not."""
    line = shapely.LinearRing(points) if closed and len(points) > 2 else shapely.LineString(points)
    if near.covers(line):
        return [(points, closed and len(points) > 2)], 0.0
    inside = shapely.intersection(shapely.LineString(line.coords), body)
    found = list(_strings(inside))
    return [(one, False) for one in found], float(line.length - inside.length)


def _strings(geometry: shapely.Geometry) -> Iterator[tuple[Point, ...]]:
    lines = [part for part in shapely.get_parts(geometry) if part.geom_type == "LineString" and part.length > 0.0]
    merged = shapely.line_merge(shapely.MultiLineString(lines)) if lines else shapely.LineString()
    for part in shapely.get_parts(merged):
        yield tuple((float(x), float(y)) for x, y in part.coords)


def _outside(name: str, outline: str, place: Point, length: float, line: int) -> Trouble:
    return Trouble(
        LINE_OUTSIDE,
        f"{length:.1f} mm of “{name}”, which begins at {at(place)}, lie outside the outline “{outline}”: they were left out",
        "shorten or move the line in the drawing program",
        line,
        length,
        _OUT,
    )
