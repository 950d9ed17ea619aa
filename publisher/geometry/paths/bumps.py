"""Tabs, notches and doors let into the straight edges of an outline, exactly and without a boolean."""

from collections.abc import Sequence

from publisher.basics import SAME_POINT, Line, Path, PathEdge, Point, record


@record
class Bump:
    """A detour of an edge: its ``way`` leaves the edge's line at its first point and comes back at its last, further along.

    ``what`` names it in words (``tab 2 of the edge “right”``); ``inwards``: it is a notch of a join, cut into the board.
    """

    edge: str
    way: tuple[PathEdge, ...]
    what: str
    inwards: bool = False


def box_bump(edge: str, name: str, what: str, on_edge: tuple[Point, Point], inward: Point, depth: float) -> Bump:
    """Return a rectangular detour between two points of an edge, ``depth`` mm along ``inward`` (negative = a tab)."""
    (a, d), (dx, dy) = on_edge, (inward[0] * depth, inward[1] * depth)
    b, c = (a[0] + dx, a[1] + dy), (d[0] + dx, d[1] + dy)
    return Bump(edge, (Line(name, a, b), Line(name, b, c), Line(name, c, d)), what, depth > 0.0)


def let_in(path: Path, bumps: Sequence[Bump]) -> tuple[Path, tuple[tuple[Bump, str], ...]]:
    """Return the closed path with the bumps, and those that do not stand whole on their edge, each with the reason in words."""
    result: list[PathEdge] = []
    refused: list[tuple[Bump, str]] = []
    for line in path.edges:
        own = [bump for bump in bumps if bump.edge == line.name]
        if not own or not isinstance(line, Line):
            result.append(line)
            continue
        length, at = line.length, 0.0
        place = line.start
        for begin, end, bump in sorted(
            ((_along(line, b.way[0].start), _along(line, b.way[-1].end), b) for b in own), key=lambda item: item[:2]
        ):
            if begin < SAME_POINT or end > length - SAME_POINT:
                over = max(-begin, end - length)
                how = f"runs {over:.2f} mm over" if over >= 0.005 else "reaches"
                refused.append((bump, f"{how} the end of the edge, which is {length:.2f} mm long"))
            elif begin < at + SAME_POINT and at > 0.0:
                refused.append((bump, "overlaps its neighbour on the edge"))
            else:
                result.append(Line(line.name, place, bump.way[0].start))
                result.extend(bump.way)
                place, at = bump.way[-1].end, end
        result.append(Line(line.name, place, line.end))
    return Path(tuple(result)), tuple(refused)


def _along(edge: Line, point: Point) -> float:
    x, y = edge.direction(edge.start)
    return (point[0] - edge.start[0]) * x + (point[1] - edge.start[1]) * y
