"""Lines and arcs: how they shift and where they meet."""

from math import dist, hypot, sqrt

from publisher.basics import SAME_POINT, Arc, Line, PathEdge, Point


def shifted(edge: PathEdge, by: float) -> PathEdge | None:
    """Return the edge moved to its left (into the material) by ``by`` mm; None when an arc shrinks to nothing."""
    if isinstance(edge, Line):
        x, y = edge.direction(edge.start)
        dx, dy = -y * by, x * by
        return Line(edge.name, (edge.start[0] + dx, edge.start[1] + dy), (edge.end[0] + dx, edge.end[1] + dy))
    radius = edge.radius - by if edge.ccw else edge.radius + by
    if radius <= SAME_POINT:
        return None
    ratio, (cx, cy) = radius / edge.radius, edge.centre

    def out(point: Point) -> Point:
        return (cx + (point[0] - cx) * ratio, cy + (point[1] - cy) * ratio)

    return Arc(edge.name, out(edge.start), out(edge.end), edge.centre, radius, edge.sweep)


def meet(a: PathEdge, b: PathEdge, near: Point) -> Point | None:
    """Return where the lines or circles that carry two edges meet, the one nearest to ``near``; None if they do not."""
    if isinstance(a, Line):
        found = _line_line(a, b) if isinstance(b, Line) else _line_circle(a, b)
    else:
        found = _line_circle(b, a) if isinstance(b, Line) else _circle_circle(a, b)
    return min(found, key=lambda p: dist(p, near)) if found else None


def _line_line(a: Line, b: Line) -> list[Point]:
    (ax, ay), (bx, by) = a.direction(a.start), b.direction(b.start)
    cross = ax * by - ay * bx
    if abs(cross) < 1e-9:
        return []
    wx, wy = b.start[0] - a.start[0], b.start[1] - a.start[1]
    t = (wx * by - wy * bx) / cross
    return [(a.start[0] + t * ax, a.start[1] + t * ay)]


def _line_circle(line: Line, arc: Arc) -> list[Point]:
    x, y = line.direction(line.start)
    wx, wy = arc.centre[0] - line.start[0], arc.centre[1] - line.start[1]
    along, off = wx * x + wy * y, wx * -y + wy * x
    rest = arc.radius**2 - off**2
    if rest < 0.0:
        return []
    half = sqrt(rest)
    return [(line.start[0] + t * x, line.start[1] + t * y) for t in (along - half, along + half)]


def _circle_circle(a: Arc, b: Arc) -> list[Point]:
    dx, dy = b.centre[0] - a.centre[0], b.centre[1] - a.centre[1]
    apart = hypot(dx, dy)
    if apart < SAME_POINT:
        return []
    along = (apart**2 + a.radius**2 - b.radius**2) / (2.0 * apart)
    rest = a.radius**2 - along**2
    if rest < 0.0:
        return []
    half, x, y = sqrt(rest), dx / apart, dy / apart
    mx, my = a.centre[0] + along * x, a.centre[1] + along * y
    return [(mx - half * y, my + half * x), (mx + half * y, my - half * x)]
