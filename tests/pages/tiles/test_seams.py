"""Where a large part is cut into tiles."""

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from publisher.basics import Box
from publisher.pages.tiles.seams import (
    MARK_RADIUS,
    OVERLAP,
    TILE_EDGE,
    TILE_SLIVER,
    TRIM,
    Cell,
    Cutting,
    Obstacle,
    cut,
    tied,
    tiles_needed,
    trim_lines,
)
from publisher.pages.type.rectangles import as_polygon
from tests.searches.profile import cases


def check(cutting: Cutting, outline: shapely.Polygon, width: float, height: float) -> None:
    """Every tile fits its page, the part is shown whole, neighbours overlap as they must, no page is empty."""
    for cell in cutting.cells:
        assert cell.window.width <= width + 1e-6 and cell.window.height <= height + 1e-6
        assert cell.area.beyond(cell.window) <= 0.0
        assert outline.intersection(as_polygon(cell.area)).area > 0
        right = cutting.cell(cell.row, cell.column + 1)
        below = cutting.cell(cell.row + 1, cell.column)
        if right:
            assert cell.window.right - right.window.left == pytest.approx(OVERLAP)
            assert cell.area.right == right.area.left
        if below:
            assert below.window.top - cell.window.bottom == pytest.approx(OVERLAP)
    shown = shapely.union_all([as_polygon(c.window) for c in cutting.cells])
    assert outline.difference(shown).area < 1e-6


@pytest.mark.parametrize(
    ("length", "room", "tiles"),
    [(100, 200, 1), (194, 200, 1), (194.1, 200, 2), (480, 253, 2), (480, 248, 2), (480, 247.9, 3), (284, 196.3, 2)],
)
def test_tiles_needed(length: float, room: float, tiles: int) -> None:
    assert tiles_needed(length, room) == tiles


def test_no_room_means_no_tiles() -> None:
    assert tiles_needed(100, OVERLAP) > 1000
    assert trim_lines(0, 100, OVERLAP, (), 0.0) is None


@pytest.mark.search
@cases(20, 2000)
@given(length=st.floats(150, 1500), room=st.floats(120, 300), lean=st.sampled_from([0.0, -1.0, 1.0, 0.5]))
def test_trim_lines_need_no_more_tiles_than_the_length(length: float, room: float, lean: float) -> None:
    lines = trim_lines(0.0, length, room, (), lean)
    assert lines is not None
    assert len(lines) + 1 == tiles_needed(length, room)
    starts, ends = (0.0, *lines), (*lines, length)
    for i, (a, b) in enumerate(zip(starts, ends, strict=True)):
        shown = b - a + (TRIM if i else TILE_EDGE) + (OVERLAP - TRIM if i < len(lines) else TILE_EDGE)
        assert shown <= room + 1e-6 and b - a > TILE_SLIVER


def test_seams_keep_off_what_matters_where_they_are_free_to() -> None:
    busy = (230.0, 250.0, 10.0)
    (at,) = trim_lines(0.0, 480.0, 270.0, (busy,), 0.0) or ()
    assert not 230.0 < at < 250.0
    (at,) = trim_lines(0.0, 480.0, 270.0, (), 0.0) or ()
    assert at == 240.0


def test_the_quay_side_is_two_tiles() -> None:
    outline = shapely.box(0, 0, 480, 100)
    slots = tuple(Obstacle(Box(x, 10, x + 5, 40).grown(4), 10.0) for x in (10, 160, 315, 465))
    for width in (270.6, 253.0):
        cutting = cut(outline, slots, width, 120.0)
        assert cutting and (cutting.rows, cutting.columns) == (1, 2) and cutting.cost == 0.0
        check(cutting, outline, width, 120.0)


@pytest.mark.search
@cases(10, 1000)
@given(
    points=st.lists(st.tuples(st.floats(0, 700), st.floats(0, 500)), min_size=3, max_size=8),
    width=st.floats(150, 270),
    height=st.floats(110, 250),
)
def test_any_outline_is_shown_whole(points: list[tuple[float, float]], width: float, height: float) -> None:
    outline = shapely.MultiPoint(points).convex_hull
    if not isinstance(outline, shapely.Polygon) or outline.area < 100:
        return
    cutting = cut(outline, (), width, height)
    if cutting:
        check(cutting, outline, width, height)


def test_a_corner_that_shows_nothing_gets_no_page() -> None:
    corner = shapely.Polygon([(0, 0), (600, 0), (600, 60), (60, 60), (60, 600), (0, 600)])
    cutting = cut(corner, (), 260.0, 180.0)
    assert cutting
    check(cutting, corner, 260.0, 180.0)
    assert len(cutting.cells) < cutting.rows * cutting.columns and not cutting.is_full


def test_a_sliver_is_avoided_by_shifting() -> None:
    flag = shapely.Polygon([(0, 0), (300, 0), (300, 100), (155, 100), (155, 104), (0, 104)])
    cutting = cut(flag, (), 200.0, 130.0)
    assert cutting
    for cell in cutting.cells:
        left, bottom, right, top = flag.intersection(as_polygon(cell.area)).bounds
        assert min(right - left, top - bottom) >= TILE_SLIVER


def test_tiles_that_meet_at_a_corner_only_are_not_tied() -> None:
    def cell(row: int, column: int) -> Cell:
        return Cell(row, column, Box(0, 0, 1, 1), Box(0, 0, 1, 1))

    assert tied([cell(1, 1), cell(1, 2), cell(2, 2)])
    assert not tied([cell(1, 1), cell(2, 2)])


def test_a_neck_at_a_crossing_brings_the_tile_between_along() -> None:
    shape = shapely.union_all([shapely.box(0, 0, 241, 171), shapely.box(239, 169, 480, 340)])
    cutting = cut(shape, (), 258.5, 183.5)
    assert cutting
    assert tied(cutting.cells)


def test_a_mark_fits_into_the_overlap_on_both_sides_of_the_trim_line() -> None:
    assert MARK_RADIUS < TRIM < OVERLAP - MARK_RADIUS
