"""Corners of a traced cut line are as sharp as its sides say, and what is no corner stays as it is."""

import numpy as np
import pytest
import shapely

from tests.rehearsal.cut_lines import WIDTH, middle_area, sharpened


def inked(area: shapely.Polygon) -> shapely.Polygon:
    """Return the ink of a line half a millimetre wide along an area's edge, its corners rounded as an opening by a disc leaves them."""
    line = area.boundary.buffer(WIDTH / 2, join_style="mitre", mitre_limit=20.0)
    return line.buffer(-0.2).buffer(0.2, quad_segs=4)


@pytest.mark.parametrize("half_wide", [10.0, 13.0, 60.0])
def test_a_tip_is_as_long_as_its_sides_say(half_wide: float) -> None:
    """Tips of 11° to 62° on a triangle of 100 mm."""
    tip = shapely.Polygon(((-half_wide, 0), (half_wide, 0), (0, 100)))
    assert shapely.hausdorff_distance(middle_area(inked(tip)), tip) < 0.03


def test_a_corner_inwards_is_no_bevel() -> None:
    notched = shapely.box(0, 0, 60, 40).difference(shapely.box(20, 20, 30, 40))
    assert shapely.hausdorff_distance(middle_area(inked(notched)), notched) < 0.03


def test_arcs_and_short_sides_stay() -> None:
    """A disc keeps its form; a side of 2 mm at the end of a narrow wedge is a side."""
    disc = shapely.Point(0, 0).buffer(12.0, quad_segs=32)
    assert shapely.hausdorff_distance(sharpened(disc.exterior), disc) < 1e-9
    wedge = shapely.Polygon(((0, 0), (20, 0), (2, 60), (0, 60)))
    assert shapely.hausdorff_distance(middle_area(inked(wedge)), wedge) < 0.03


def test_a_ring_of_few_points_is_left_alone() -> None:
    ring = shapely.LinearRing(np.array(((0.0, 0.0), (0.3, 0.0), (0.0, 0.3))))
    assert sharpened(ring).equals(shapely.Polygon(ring))


def test_within_a_ring_as_small_as_a_letter_nothing_is_cut() -> None:
    assert middle_area(inked(shapely.box(0, 0, 0.8, 0.8))).is_empty


def test_a_corner_that_is_round_stays_round() -> None:
    """Its radius of 0.6 mm is less than what a line is shrunk by to lose its bumps: after that it would look sharp, and grow a tip."""
    hill = shapely.box(0.6, 0.6, 39.4, 29.4).buffer(0.6, quad_segs=24)
    ink = hill.buffer(0.25, quad_segs=24).difference(hill.buffer(-0.25, quad_segs=24))
    read = middle_area(ink)
    assert shapely.hausdorff_distance(read.exterior, hill.exterior) < 0.06
    sharp = shapely.box(0.0, 0.0, 40.0, 30.0)
    inked = sharp.buffer(0.25, join_style="mitre").difference(sharp.buffer(-0.25, join_style="mitre"))
    assert shapely.hausdorff_distance(middle_area(inked).exterior, sharp.exterior) < 0.01


def test_what_dots_leave_beside_a_corner_is_no_spike() -> None:
    """A slot as it was traced: the last dot of its corner lies 0.02 mm beside the tip, and grew to a spike of 0.2 mm."""
    slot = (
        (34.7, 0.0), (0.0, 0.0),
        (0.0, 10.9015), (0.0423, 10.9439), (0.0423, 11.0285), (0.0945, 11.0807), (0.1792, 11.0811), (0.2215, 11.123),
        (0.2638, 11.1234), (17.0702, 11.1234), (17.0998, 11.1555), (17.0998, 15.7275), (17.0884, 15.7699), (17.0702, 15.786),
        (0.2638, 15.786), (0.2215, 15.7983), (0.1792, 15.8283), (0.1368, 15.8283), (0.0945, 15.8406), (0.0423, 15.8969),
        (0.0382, 15.9815), (0.0, 16.0239), (0.0, 40.0), (34.7, 40.0),
    )  # fmt: skip
    area = sharpened(shapely.LinearRing(slot))
    meant = shapely.box(0.0, 0.0, 34.7, 40.0).difference(shapely.box(-1.0, 11.123, 17.1, 15.786))
    grown = (shape.buffer(-WIDTH, join_style="mitre", mitre_limit=20.0) for shape in (area, meant))
    assert shapely.hausdorff_distance(*grown) < 0.03


def test_a_tip_is_not_blunted_by_the_dots_beside_it() -> None:
    """A tip of 51 degrees as it was traced: a side of 0.03 mm was left at it, along which the pencil line was cut off 0.45 mm short."""
    tip = (
        (145.9018, 143.0761), (145.9865, 143.1184), (146.0288, 143.0773), (146.1135, 143.0761), (146.1253, 143.0655), (146.1676, 143.0232),
        (146.1896, 142.9808), (146.1898, 142.9385), (146.2319, 142.8538), (146.2319, 62.0), (46.2321, 62.0),
        (144.4202, 141.9125), (144.5895, 142.0568), (144.6742, 142.1198), (144.8012, 142.2297), (144.8858, 142.2918), (145.0128, 142.4019),
        (145.3515, 142.671), (145.4785, 142.7811), (145.5632, 142.8432), (145.6902, 142.9531), (145.8172, 143.0503), (145.8595, 143.0761),
    )  # fmt: skip
    pencil = middle_area(shapely.Polygon(tip)).buffer(0.4, join_style="mitre", mitre_limit=20.0)
    assert pencil.bounds[3] == pytest.approx(143.70, abs=0.05)
