"""Lattices of rows: closed forms of discs and boxes, and rows that really clear each other."""

from math import sqrt

import numpy as np
import pytest
import shapely

from publisher.material.lattice import Borders, crossings, envelopes, lattices
from publisher.material.nfp import no_fit
from publisher.material.outlines import NESTING_GRID, outline, turned

TRIANGLE = np.array([(-1.0, 0.0), (1.0, 0.0), (0.0, 2.0)])


def borders(rings, gap, turn=0.0, paired=False):
    """Return the borders of an outline at one turn."""
    shape = outline(rings, gap)
    n = tuple(turned(r / NESTING_GRID, turn) for r in no_fit((shape, 0.0, False), (shape, 0.0, False)))
    m = tuple(turned(r / NESTING_GRID, turn) for r in no_fit((shape, 0.0, False), (shape, 180.0, False)))
    return Borders(n, m if paired else None)


def test_envelopes() -> None:
    """A triangle from above and from below; nothing outside it."""
    under, over = envelopes((TRIANGLE,))
    at = np.array([-2.0, -0.5, 0.0, 0.25, 1.5])
    assert over(at).tolist() == [-np.inf, 1.0, 2.0, 1.5, -np.inf]
    assert under(at).tolist() == [np.inf, 0.0, 0.0, 0.0, np.inf]


def test_crossings_take_the_whole_of_an_upright_edge() -> None:
    """At x where an edge runs straight up, its far end counts."""
    box = np.array([(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)])
    least, most = crossings((box,), np.array([0.0, 4.0]))
    assert (least.tolist(), most.tolist()) == ([0.0, 0.0], [3.0, 3.0])


def test_discs_lie_in_the_hexagonal_lattice(shop) -> None:
    """Thue: the densest lattice of discs has rows at d·√3/2, shifted by half a pitch."""
    found = lattices(borders(shop.disc(20.0), 1.0), 0.0, 0.0, 8, 12)
    best = (found.pitch * found.rise).argmin()
    assert found.pitch[best] == pytest.approx(41.0, abs=0.1)
    assert found.rise[best] == pytest.approx(41.0 * sqrt(3) / 2, abs=0.15)
    assert found.shift[best] % found.pitch[best] == pytest.approx(20.5, abs=0.5)


def test_boxes_stand_side_by_side(shop) -> None:
    """Boxes of 30 × 20 with a gap of 2: pitch 32, rise 22."""
    found = lattices(borders((shop.box(30.0, 20.0),), 2.0), 0.0, 0.0, 8, 12)
    assert found.pitch.min() == pytest.approx(32.0, abs=0.01)
    assert found.rise.min() == pytest.approx(22.0, abs=0.01)


@pytest.mark.parametrize("turn", [0.0, 37.0])
@pytest.mark.parametrize("paired", [False, True])
def test_no_two_copies_of_any_lattice_come_too_close(shop, turn, paired) -> None:
    """For every lattice offered, a patch of 5 rows × 4 places keeps the gap (shapely)."""
    rings, gap = shop.layer(30.0, 92.0, 40.0), 1.0
    found = lattices(borders(rings, gap, turn, paired), turn, 5.0, 6, 6)
    p = turned(np.asarray(rings[0]), turn)
    q = turned(np.asarray(rings[0]), turn + 180.0)
    for i in range(0, len(found.pitch), 2):
        copies = []
        for row in range(5):
            along = found.shift[i] * ((row % 2) if found.zigzag[i] else row)
            for step in range(4):
                at = np.array([along + step * found.pitch[i], row * found.rise[i]])
                copies.append(shapely.Polygon(p + at))
                if found.paired:
                    copies.append(shapely.Polygon(q + at + (found.dx[i], found.dy[i])))
        tree = shapely.STRtree(copies)
        close = tree.query(np.array(copies), predicate="dwithin", distance=gap - 0.01)
        assert (close[0] == close[1]).all()
