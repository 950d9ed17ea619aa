"""What covers lines of a sketch, and the lines that hatch and dot an area."""

import pytest
import shapely

from publisher.basics import Box, polyline
from publisher.pages.instructions.sketch_areas import (
    DOTS_APART,
    HATCH_APART,
    Covers,
    hatch_runs,
    level_runs,
    solid_rings,
)

area = lambda *sides: polyline(Box(*sides).corners(), True)  # noqa: E731
LINE = polyline(((0.0, 5.0), (30.0, 5.0)))


@pytest.mark.parametrize(("at", "left"), [(0, [10.05, 9.95]), (1, [30.0]), (2, [30.0])])
def test_only_what_is_drawn_later_covers_a_line(at: int, left: list[float]) -> None:
    """And not its border, where its own outline is drawn."""
    covers = Covers([(1, area(10.0, 0.0, 20.1, 10.0))])
    (found,) = covers.uncovered([(at, LINE)])
    assert [path.length for path in found] == pytest.approx(left, abs=1e-6)


def test_a_line_on_the_border_of_an_area_is_seen() -> None:
    covers = Covers([(1, area(0.0, 5.0, 30.0, 10.0))])
    assert covers.uncovered([(0, LINE)]) == [(LINE,)]


def test_lines_are_asked_for_together_and_each_is_answered() -> None:
    """One before and one after an area, one that it hides whole, one away from all; without areas all are seen."""
    hidden, away = polyline(((12.0, 2.0), (15.0, 2.0))), polyline(((0.0, 50.0), (9.0, 50.0)))
    lines = [(0, LINE), (2, LINE), (0, hidden), (0, away)]
    found = Covers([(1, area(10.0, 0.0, 20.0, 10.0))]).uncovered(lines)
    assert [len(paths) for paths in found] == [2, 1, 0, 1]
    assert found[1] == (LINE,)
    assert Covers([]).uncovered(lines) == [(path,) for _, path in lines]
    assert Covers([(1, area(10.0, 0.0, 20.0, 10.0))]).uncovered([]) == []


@pytest.mark.parametrize(("runs", "apart"), [(hatch_runs, HATCH_APART * 2.0**-0.5), (level_runs, DOTS_APART)])
def test_lines_fill_an_area_evenly_and_stay_in_it(runs: object, apart: float) -> None:
    area = shapely.box(3.0, 2.0, 33.0, 22.0)
    lines = [shapely.LineString(run) for run in runs(area)]  # type: ignore[operator]
    assert all(area.buffer(1e-9).covers(line) for line in lines)
    assert sum(line.length for line in lines) == pytest.approx(area.area / apart, rel=0.1)
    assert runs(shapely.Polygon()) == []  # type: ignore[operator]


def test_an_area_with_holes_is_filled_without_them() -> None:
    frame = shapely.box(0, 0, 20, 10).difference(shapely.union(shapely.box(2, 2, 8, 8), shapely.box(12, 2, 18, 8)))
    pieces = [shapely.Polygon(ring) for ring in solid_rings(frame)]
    assert sum(piece.area for piece in pieces) == pytest.approx(frame.area)
    assert shapely.union_all(pieces).symmetric_difference(frame).area < 1e-9
