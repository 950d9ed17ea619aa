"""Long thin parts as small pictures: a stretch of their middle left out between two break lines, so that both long edges are seen."""

from collections.abc import Iterator
from dataclasses import replace

import shapely

from publisher.basics import remembered_few
from publisher.joints import Drawing, DrawnLine

MOST_LONG = 12.0  # times as long as wide: a longer part, as small as beside a step, is no more than a line
KEPT_LONG = 9.0  # times its width: how long it is drawn then, but for the gap
BREAK_GAP, SLANT = 0.5, 0.35  # of its width: between both break lines, and how far these lean
BREAK = "outline"  # weight of a break line


@remembered_few
def broken(drawing: Drawing) -> Drawing:
    """Return a drawing of a part, without a stretch of its middle where it is much longer than wide."""
    long, wide = max(drawing.width, drawing.height), min(drawing.width, drawing.height)
    if wide <= 0.0 or long <= MOST_LONG * wide:
        return drawing
    upright = drawing.height > drawing.width
    lines = tuple(_broken(drawing.lines, long, wide, upright))
    size = (wide, (KEPT_LONG + BREAK_GAP) * wide) if upright else ((KEPT_LONG + BREAK_GAP) * wide, wide)
    return replace(drawing, lines=lines, labels=(), width=size[0], height=size[1])


def _broken(lines: tuple[DrawnLine, ...], long: float, wide: float, upright: bool) -> Iterator[DrawnLine]:
    half, lean, over = KEPT_LONG * wide / 2, SLANT * wide, 0.1 * wide
    back = long - (KEPT_LONG + BREAK_GAP) * wide  # by how much the far end moves
    near = shapely.Polygon([(-over, -over), (half - lean, -over), (half + lean, wide + over), (-over, wide + over)])
    start = long - half
    far = shapely.Polygon(
        [(start - lean, -over), (long + over, -over), (long + over, wide + over), (start + lean, wide + over)]
    )
    for line in lines:
        own = shapely.LineString([(y, x) if upright else (x, y) for x, y in line.points])
        for area, by in ((near, 0.0), (far, back)):
            for piece in shapely.get_parts(shapely.intersection(own, area)):
                if piece.geom_type == "LineString" and piece.length > 0.01 * wide:
                    yield _line(line.weight, [(x - by, y) for x, y in piece.coords], upright)
    for x in (half, start - back):
        yield _line(BREAK, [(x - lean, 0.0), (x + lean, wide)], upright)


def _line(weight: str, points: list[tuple[float, float]], upright: bool) -> DrawnLine:
    return DrawnLine(weight, tuple((float(y), float(x)) if upright else (float(x), float(y)) for x, y in points))
