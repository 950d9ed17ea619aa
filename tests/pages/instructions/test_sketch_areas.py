"""What covers lines of a sketch, and the lines that hatch and dot an area."""

import pytest
import shapely

from publisher.basics import polyline
from publisher.pages.instructions.sketch_areas import DOTS_APART, HATCH_APART, Covers, hatch_runs, level_runs

LINE = polyline(((0.0, 5.0), (30.0, 5.0)))


@pytest.mark.parametrize(("at", "left"), [(0, [10.05, 9.95]), (1, [30.0]), (2, [30.0])])
def test_only_what_is_drawn_later_covers_a_line(at: int, left: list[float]) -> None:
    """And not its border, where its own outline is drawn."""
    covers = Covers([(1, shapely.box(10.0, 0.0, 20.1, 10.0))])
    assert [path.length for path in covers.uncovered(LINE, at)] == pytest.approx(left, abs=1e-6)


def test_a_line_on_the_border_of_an_area_is_seen() -> None:
    covers = Covers([(1, shapely.box(0.0, 5.0, 30.0, 10.0))])
    assert list(covers.uncovered(LINE, 0)) == [LINE]


@pytest.mark.parametrize(("runs", "apart"), [(hatch_runs, HATCH_APART * 2.0**-0.5), (level_runs, DOTS_APART)])
def test_lines_fill_an_area_evenly_and_stay_in_it(runs: object, apart: float) -> None:
    area = shapely.box(3.0, 2.0, 33.0, 22.0)
    lines = [shapely.LineString(run) for run in runs(area)]  # type: ignore[operator]
    assert all(area.buffer(1e-9).covers(line) for line in lines)
    assert sum(line.length for line in lines) == pytest.approx(area.area / apart, rel=0.1)
    assert runs(shapely.Polygon()) == []  # type: ignore[operator]
