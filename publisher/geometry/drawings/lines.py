"""Lines of a drawing as marks on a part: to score, draw, fold, glue, or for reference."""

from collections.abc import Sequence

import shapely

from publisher.basics import LineKind, Path, Point, Purpose
from publisher.geometry.drawings.chains import at, loops_of
from publisher.geometry.drawings.picks import pick
from publisher.geometry.drawings.scene import Scene
from publisher.geometry.model import Mark, Region
from publisher.geometry.paths import line_string, lines_left, polygon
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
                own, outside = _on(loop.path, body, near)
                marks += (Mark(LineKind(kind), Purpose.SURFACE, path, name=loop.name) for path in own)
                if outside > _OUT:
                    start = loop.path.edges[0].start
                    troubles.append(_outside(loop.name, outline, start, outside, loop.drawn[0].element.line))
    return tuple(marks), troubles


def _on(path: Path, body: shapely.Polygon, near: shapely.Polygon) -> tuple[list[Path], float]:
    """Return what of a line lies on the part, and how many mm of it do not."""
    line = line_string(path)
    if near.covers(line):
        return [path], 0.0
    found = list(lines_left(line, body))
    return found, line.length - sum(one.length for one in found)


def _outside(name: str, outline: str, place: Point, length: float, line: int) -> Trouble:
    return Trouble(
        LINE_OUTSIDE,
        f"{length:.1f} mm of “{name}”, which begins at {at(place)}, lie outside the outline “{outline}”: they were left out",
        "shorten or move the line in the drawing program",
        line,
        length,
        _OUT,
    )
