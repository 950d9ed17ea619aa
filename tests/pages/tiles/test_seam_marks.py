"""Match marks lie on both pages, far apart, clear of lines."""

from math import dist

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from publisher.basics import Point
from publisher.pages.tiles.seam_marks import TileSeam, seams
from publisher.pages.tiles.seams import MARK_RADIUS, Cutting, cut
from publisher.pages.type.rectangles import as_polygon
from tests.searches.profile import cases

NOTHING = shapely.GeometryCollection()


def made(
    outline: shapely.Polygon, width: float, height: float, lines: shapely.Geometry = NOTHING
) -> tuple[Cutting, tuple[TileSeam, ...]]:
    cutting = cut(outline, (), width, height)
    assert cutting
    return cutting, seams(cutting, outline, lines)


def tied_together(cutting: Cutting, found: tuple[TileSeam, ...]) -> bool:
    tied = {cutting.cells[0]}
    for _ in cutting.cells:
        for seam in found:
            if seam.first in tied or seam.second in tied:
                tied |= {seam.first, seam.second}
    return tied == set(cutting.cells)


def circle(mark: Point) -> shapely.Polygon:
    return shapely.Point(mark).buffer(MARK_RADIUS)


def test_marks_of_a_straight_board_stand_near_its_edges() -> None:
    _, (seam,) = made(shapely.box(0, 0, 480, 100), 260, 120)
    (a, b) = seam.marks
    assert a[0] == b[0] == seam.at
    assert dist(a, b) > 90
    assert all(shapely.box(0, 0, 480, 100).boundary.distance(circle(m)) > 0.5 for m in seam.marks)


def test_a_long_seam_has_a_mark_between() -> None:
    _, (seam,) = made(shapely.box(0, 0, 480, 230), 260, 250)
    assert len(seam.marks) == 3
    assert abs(seam.marks[1][1] - 115) < 5


def test_marks_keep_off_lines() -> None:
    lines = shapely.LineString([(0, 20), (480, 20)])
    _, (seam,) = made(shapely.box(0, 0, 480, 40), 260, 60, lines)
    assert all(circle(m).distance(lines) > 0.5 for m in seam.marks)


def test_a_narrow_neck_has_its_marks_beside_it() -> None:
    dumbbell = shapely.union_all(
        [shapely.box(0, 0, 200, 100), shapely.box(200, 46, 280, 54), shapely.box(280, 0, 480, 100)]
    )
    _, (seam,) = made(dumbbell, 260, 120)
    assert dist(seam.marks[0], seam.marks[-1]) > 25
    assert all(circle(m).distance(dumbbell.boundary) > 0.5 for m in seam.marks)


def test_a_thin_slanting_part_is_tied_through_tiles_beside_it() -> None:
    slat = shapely.Polygon([(0, 0), (20, 0), (500, 330), (500, 345), (480, 345), (0, 15)])
    for width, height in ((260.0, 180.0), (200.0, 120.0), (150.0, 130.0)):
        cutting, found = made(slat, width, height)
        assert tied_together(cutting, found)
        for seam in found:
            assert dist(seam.marks[0], seam.marks[-1]) > 20


@pytest.mark.search
@cases(15, 1000)
@given(
    points=st.lists(st.tuples(st.floats(0, 700), st.floats(0, 500)), min_size=4, max_size=9),
    width=st.floats(160, 270),
    height=st.floats(120, 250),
)
def test_marks_are_whole_on_both_pages_and_apart(
    points: list[tuple[float, float]], width: float, height: float
) -> None:
    outline = shapely.MultiPoint(points).convex_hull
    if not isinstance(outline, shapely.Polygon) or outline.area < 5000 or not cut(outline, (), width, height):
        return
    cutting, found = made(outline, width, height)
    for seam in found:
        assert len(seam.marks) >= 2
        for mark in seam.marks:
            for cell in (seam.first, seam.second):
                assert as_polygon(cell.window).covers(circle(mark))
        assert dist(seam.marks[0], seam.marks[-1]) > 2 * MARK_RADIUS
    assert tied_together(cutting, found)
