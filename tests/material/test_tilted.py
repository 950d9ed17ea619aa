"""Lattices laid askew: counted exactly, and as free numbers that always keep the gaps."""

import numpy as np
import pytest
import shapely

from publisher.material.bending import borders_at
from publisher.material.lattice import Rows
from publisher.material.outlines import outline, turned
from publisher.material.rows import RowBook
from publisher.material.tilted import LatticePattern, bent, excess, most_of, one, room_of, tilts


def squares(pitch: float, rise: float, shift: float = 0.0, zigzag: bool = False) -> Rows:
    """One lattice of single copies."""
    numbers = (np.array([v]) for v in (pitch, 0.0, 0.0, rise, shift))
    return Rows(0.0, False, *numbers, np.array([zigzag]))


BOX = np.array([(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)])


@pytest.mark.parametrize(
    ("size", "count"), [((32.0, 21.0), 6), ((31.99, 21.0), 4), ((32.0, 20.9), 3), ((9.0, 50.0), 0), ((43.0, 43.0), 16)]
)
def test_boxes_are_counted_exactly(size, count) -> None:
    """Boxes of 10 at a pitch of 11: arithmetic says how many go on a sheet."""
    pattern = most_of(squares(11.0, 11.0), 0.0, BOX, (0.0, 0.0, *size), 0)
    assert (0 if pattern is None else len(pattern.row)) == count


def test_not_more_than_asked_is_nothing() -> None:
    """A lattice that does not beat the base is not returned."""
    assert most_of(squares(11.0, 11.0), 0.0, BOX, (0.0, 0.0, 32.0, 21.0), 6) is None


@pytest.mark.parametrize("tilt", [0.0, 17.0, 90.0])
@pytest.mark.parametrize("zigzag", [False, True])
def test_the_best_place_of_a_lattice(tilt, zigzag) -> None:
    """No place on a fine grid of shifts takes more copies than the exact count (brute force)."""
    rows = squares(13.0, 12.0, 4.0, zigzag)
    size = (61.0, 47.0)
    found = most_of(rows, tilt, BOX, (0.0, 0.0, *size), 0)
    steps = np.array([(i, j) for i in range(-12, 13) for j in range(-12, 13)])
    x = 13.0 * steps[:, 0] + 4.0 * (steps[:, 1] % 2 if zigzag else steps[:, 1])
    at = turned(np.column_stack((x, 12.0 * steps[:, 1])), tilt)
    box = turned(BOX, tilt)
    low, high = box.min(axis=0), box.max(axis=0)
    most = 0
    for dx in np.arange(0.0, 26.0, 0.5):
        for dy in np.arange(0.0, 26.0, 0.5):
            moved = at + np.array((dx, dy))
            most = max(most, int(((moved + low >= 0) & (moved + high <= size)).all(axis=1).sum()))
    assert found is not None
    assert len(found.row) >= most
    assert excess(rows, np.array([tilt]), found, BOX, size)[0, 0] <= 1e-6


def test_lines_along_a_side() -> None:
    """A lattice of squares has its lines along the sides, and its diagonals."""
    assert {round(t % 90.0, 3) for t in tilts(squares(10.0, 10.0))} == {0.0, 45.0}
    assert room_of(squares(10.0, 12.0)).tolist() == [120.0]


def test_any_free_numbers_keep_the_gap(shop) -> None:
    """Pitch, second copy and shift as they come: of 40 lattices no two copies come closer than the gap (shapely)."""
    rings, gap = shop.layer(30.0, 92.0, 40.0), 1.0
    book = RowBook(outline(rings, gap), True, 8)
    numbers = np.random.default_rng(5).uniform((-120.0, 0.0, 0.0, -90.0), (120.0, 40.0, 1.0, 90.0), (40, 4))
    for turn, zigzag in ((0.0, False), (31.0, True)):
        rows = bent(borders_at(book, turn), turn, zigzag, numbers)
        ij = np.array([(i, j, q) for i in range(4) for j in range(4) for q in (0, 1)])
        pattern = LatticePattern(ij[:, 0], ij[:, 1], ij[:, 2].astype(bool), zigzag)
        for k in range(len(numbers)):
            x, y = pattern.places(one(rows, k))
            shapes = [
                shapely.Polygon(turned(np.asarray(rings[0]), turn + 180.0 * q) + np.array((px, py)))
                for px, py, q in zip(x[0], y[0], ij[:, 2], strict=True)
            ]
            first, second = shapely.STRtree(shapes).query(shapes, predicate="dwithin", distance=gap - 0.01)
            assert (first == second).all()
