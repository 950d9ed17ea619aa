"""Words beside edges stand in the part, clear of cuts and of each other."""

from math import dist

import shapely

from publisher.basics import Purpose
from publisher.geometry import Edge
from publisher.geometry.labels import APART, CLEAR, edge_words


def edge(name: str, *ends: tuple[float, float], matches: tuple[str, ...] = (), bevel: float = 0.0) -> Edge:
    return Edge(name, ends[0], ends[1], ends[0], ends[1], bevel=bevel, matches=matches)


def test_words_find_a_free_place() -> None:
    window = shapely.box(30.0, 3.0, 70.0, 40.0)  # where the first choice would be
    body = shapely.box(0.0, 0.0, 100.0, 60.0).difference(window)
    edges = (
        edge("bottom", (0.0, 0.0), (100.0, 0.0), matches=("a", "b", "c"), bevel=45.0),
        edge("right", (100.0, 0.0), (100.0, 60.0), matches=("d",)),
        Edge("rim", (0.0, 0.0), (0.0, 0.0), (0.0, 0.0), (0.0, 0.0), matches=("x",), centre=(0.0, 0.0), radius=5.0),
    )
    marks = edge_words(edges, body, 5.0)
    words = [m for m in marks if m.text]
    assert [m.text for m in words] == ["a", "b", "c", "bevel 45°", "d"]
    points = [shapely.Point(m.points[0]) for m in words]
    assert all(body.contains(p) and body.boundary.distance(p) >= CLEAR for p in points)
    places = [m.points[0] for m in words]
    assert min(dist(a, b) for i, a in enumerate(places) for b in places[i + 1 :]) >= APART
    (line,) = [m for m in marks if m.purpose is Purpose.BEVEL and not m.text]
    assert shapely.LineString(line.points).equals_exact(shapely.LineString([(0.0, 5.0), (100.0, 5.0)]), 1e-9)


def test_a_part_without_a_free_place_still_gets_its_letters_inside() -> None:
    body = shapely.box(0.0, 0.0, 4.0, 4.0)
    (mark,) = edge_words((edge("bottom", (0.0, 0.0), (4.0, 0.0), matches=("a",)),), body, 5.0)
    assert body.contains(shapely.Point(mark.points[0]))
