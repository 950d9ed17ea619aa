"""Where blocks of words fit."""

from dataclasses import dataclass

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from publisher.pages.templates.label_room import LINE_CLEAR, LabelRoom
from tests.searches.profile import cases


@dataclass(frozen=True)
class Block:
    width: float
    height: float
    ease: float = 1.0


def box_at(block: Block, at: tuple[float, float]) -> shapely.Polygon:
    return shapely.box(at[0], at[1], at[0] + block.width, at[1] + block.height)


def test_a_block_stands_in_the_middle_of_an_empty_area() -> None:
    found = LabelRoom(shapely.box(0, 0, 100, 60)).best([Block(30, 20)])
    assert found
    assert box_at(*found).centroid.coords[0] == pytest.approx((50, 30), abs=1.5)


def test_a_block_keeps_clear_of_lines_and_edges() -> None:
    area = shapely.box(0, 0, 100, 60)
    line = shapely.LineString([(50, 0), (50, 60)])
    found = LabelRoom(area, line).best([Block(40, 20)])
    assert found
    box = box_at(*found)
    assert box.distance(line) >= LINE_CLEAR - 1e-6 and box.distance(area.boundary) >= LINE_CLEAR - 1e-6


@pytest.mark.parametrize(("wide", "fits"), [(100 - 2 * LINE_CLEAR - 1.1, True), (100 - 2 * LINE_CLEAR + 0.1, False)])
def test_a_block_fits_or_not(wide: float, fits: bool) -> None:
    assert bool(LabelRoom(shapely.box(0, 0, 100, 60)).best([Block(wide, 20)])) is fits


def test_nothing_fits_in_nothing() -> None:
    assert LabelRoom(shapely.box(0, 0, 2, 2)).best([Block(10, 5)]) is None
    assert LabelRoom(shapely.box(0, 0, 100, 60)).best([]) is None


def test_the_block_with_more_freedom_wins() -> None:
    low = shapely.box(0, 0, 120, 22)
    found = LabelRoom(low).best([Block(30, 18), Block(40, 10)])
    assert found and found[0] == Block(40, 10)
    eased = LabelRoom(low).best([Block(30, 18), Block(40, 10, ease=0.01)])
    assert eased and eased[0] == Block(30, 18)


@pytest.mark.search
@cases(10, 500)
@given(
    corners=st.lists(st.tuples(st.floats(0, 120), st.floats(0, 120)), min_size=4, max_size=9),
    wide=st.floats(5, 40),
    tall=st.floats(3, 25),
    bar=st.tuples(st.floats(0, 120), st.floats(0, 120), st.floats(0, 120), st.floats(0, 120)),
)
def test_what_is_found_is_always_free(
    corners: list[tuple[float, float]], wide: float, tall: float, bar: tuple[float, float, float, float]
) -> None:
    area = shapely.MultiPoint(corners).convex_hull
    if not isinstance(area, shapely.Polygon) or area.area < 1:
        return
    line = shapely.LineString([bar[:2], bar[2:]])
    found = LabelRoom(area, line).best([Block(wide, tall)])
    if found:
        box = box_at(*found)
        assert area.covers(box)
        assert not line.intersects(box)
