"""Lines of very many points come with fewer, nowhere farther off than the sagitta; few points stay as they are."""

from math import cos, pi, sin

import shapely

from publisher.basics import SAGITTA, Arc, LineKind, Path, Purpose, closed_path, polyline
from publisher.geometry import Mark, Region, look_at
from publisher.geometry.drawings.fewer import MANY_EDGES, fewer, too_fine, with_fewer
from tests.counted import calls


def _blob(count: int, waves: int = 7) -> Path:
    turns = [2.0 * pi * k / count for k in range(count)]
    return polyline(
        [((40 + 3 * sin(waves * t)) * cos(t), (40 + 3 * sin(waves * t)) * sin(t)) for t in turns], True, "o"
    )


def test_twenty_thousand_points_become_few_and_stay_on_their_line() -> None:
    before = _blob(20_000)
    after = fewer(before)
    assert len(after.edges) < 600
    off = shapely.hausdorff_distance(shapely.LinearRing(before.points), shapely.LinearRing(after.points))
    assert off <= SAGITTA + 1e-9
    assert after.closed and {edge.name for edge in after.edges} == {"o"}


def test_few_points_stay_to_the_last() -> None:
    before = _blob(MANY_EDGES)
    assert fewer(before) is before


def test_arcs_stay_where_they_are() -> None:
    flat = polyline([(60.0 - 120.0 * k / 2_000, 0.001 * (k % 2)) for k in range(2_001)], name="top")
    bow = Arc("bow", (-60.0, 0.0), (60.0, 0.0), (0.0, 0.0), 60.0, 180.0)
    path = fewer(closed_path([*flat.edges, bow]))
    assert bow in path.edges
    assert len(path.edges) == 2


def test_a_thin_bridge_does_not_close() -> None:
    """Two toothed sides 0.001 mm apart would fall together: the line comes back whole, and is refused for its many points."""
    there = [(k / 100, 0.004 * ((k + 1) % 2)) for k in range(4_001)]
    back = [(x, y + 0.001) for x, y in reversed(there[1:-1])]
    path = polyline([*there, *back], True)
    assert fewer(path) is path
    assert [t.value for t in too_fine(Region(path), (), "o")] == [8_000.0]


def test_holes_and_marks_come_with_fewer_points_too() -> None:
    blob = _blob(5_000)
    mark = Mark(LineKind.DRAW, Purpose.SURFACE, blob)
    region, (thin,) = with_fewer(Region(_blob(200), (blob.reversed(),)), (mark,))
    assert len(region.holes[0].edges) < 600 and len(thin.path.edges) < 600
    assert len(region.outer.edges) == 200


def test_twice_the_points_are_twice_the_work() -> None:
    """The whole way of a drawing from its bytes to its outline, in calls: a drawing of 20,000 nodes is read in one breath."""

    def read(nodes: int) -> int:
        points = " L".join(f"{x + 50:.3f},{y + 50:.3f}" for x, y in _blob(nodes).points)
        size = 'width="100mm" height="100mm" viewBox="0 0 100 100"'
        data = f'<svg xmlns="http://www.w3.org/2000/svg" {size}><path id="o" d="M{points}Z"/></svg>'.encode()
        return calls(lambda: look_at(data, "many.svg", "o"))

    few, many = read(2_000), read(4_000)
    assert many < 2.2 * few
