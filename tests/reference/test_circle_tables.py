"""Round shapes against published tables of circle geometry."""

from collections.abc import Callable
from math import dist, pi, sin

import pytest
import shapely

from publisher.basics import Place
from publisher.design import Parameter, PartPlan
from publisher.geometry import Part, area, polygon
from publisher.geometry.making.parts import make_part

# Chord for n equal divisions of a circle of diameter 1, c = sin(pi/n). Cross-checked with Machinery's Handbook, 31st ed.,
# p. 82, column S/R halved, and with the shop table at shopswarf.orcon.net.nz/spacing.html.
CHORDS = {
    3: 0.866025, 4: 0.707107, 5: 0.587785, 6: 0.500000, 7: 0.433884, 8: 0.382683, 9: 0.342020, 10: 0.309017,
    11: 0.281733, 12: 0.258819, 13: 0.239316, 14: 0.222521, 15: 0.207912, 16: 0.195090, 17: 0.183750, 18: 0.173648,
    19: 0.164595, 20: 0.156434, 21: 0.149042, 22: 0.142315, 23: 0.136167, 24: 0.130526, 25: 0.125333, 26: 0.120537,
    27: 0.116093, 28: 0.111964, 29: 0.108119, 30: 0.104528, 31: 0.101168, 32: 0.098017, 36: 0.087156, 40: 0.078459,
    45: 0.069756, 48: 0.065403, 60: 0.052336, 64: 0.049068, 72: 0.043619, 90: 0.034899, 100: 0.031411,
}  # fmt: skip

# Machinery's Handbook, 31st ed., p. 82: n -> A/S², A/R², A/r², R/S, R/r, S/R, S/r, r/R, r/S (S side, R circumradius,
# r inradius), as printed.
POLYGONS = {
    3: (0.4330, 1.2990, 5.1962, 0.5774, 2.0000, 1.7321, 3.4641, 0.5000, 0.2887),
    4: (1.0000, 2.0000, 4.0000, 0.7071, 1.4142, 1.4142, 2.0000, 0.7071, 0.5000),
    5: (1.7205, 2.3776, 3.6327, 0.8507, 1.2361, 1.1756, 1.4531, 0.8090, 0.6882),
    6: (2.5981, 2.5981, 3.4641, 1.0000, 1.1547, 1.0000, 1.1547, 0.8660, 0.8660),
    7: (3.6339, 2.7364, 3.3710, 1.1524, 1.1099, 0.8678, 0.9631, 0.9010, 1.0383),
    8: (4.8284, 2.8284, 3.3137, 1.3066, 1.0824, 0.7654, 0.8284, 0.9239, 1.2071),
    9: (6.1818, 2.8925, 3.2757, 1.4619, 1.0642, 0.6840, 0.7279, 0.9397, 1.3737),
    10: (7.6942, 2.9389, 3.2492, 1.6180, 1.0515, 0.6180, 0.6498, 0.9511, 1.5388),
    12: (11.196, 3.0000, 3.2154, 1.9319, 1.0353, 0.5176, 0.5359, 0.9659, 1.8660),
    16: (20.109, 3.0615, 3.1826, 2.5629, 1.0196, 0.3902, 0.3978, 0.9808, 2.5137),
    20: (31.569, 3.0902, 3.1677, 3.1962, 1.0125, 0.3129, 0.3168, 0.9877, 3.1569),
    24: (45.575, 3.1058, 3.1597, 3.8306, 1.0086, 0.2611, 0.2633, 0.9914, 3.7979),
    32: (81.225, 3.1214, 3.1517, 5.1011, 1.0048, 0.1960, 0.1970, 0.9952, 5.0766),
    48: (183.08, 3.1326, 3.1461, 7.6449, 1.0021, 0.1308, 0.1311, 0.9979, 7.6285),
    64: (325.69, 3.1365, 3.1441, 10.190, 1.0012, 0.0981, 0.0983, 0.9988, 10.178),
}  # fmt: skip


@pytest.fixture(scope="session")
def shape() -> Callable[..., Part]:
    """Draw a shape that must succeed."""

    def draw(name: str, **sizes: float) -> Part:
        where = Place("spec.yaml", 1, 1)
        given = tuple(Parameter(key, value, str(value), where) for key, value in sizes.items())
        part, found = make_part(
            PartPlan("p", "A", "P", "foam", 5.0, name, given, (), None, None, (), 1, 0, 0, "any", 0.0, where)
        )
        assert part is not None, found
        return part

    return draw


@pytest.mark.parametrize("n", range(3, 101))
def test_chords_of_equal_divisions(shape: Callable[..., Part], n: int) -> None:
    part = shape("regular_polygon", sides=n, radius=500.0)
    chords = [dist(e.start, e.end) / 1000.0 for e in part.edges]
    assert len(chords) == n
    assert chords == pytest.approx([sin(pi / n)] * n, abs=1e-12)  # the formula, for every n
    if n in CHORDS:
        assert chords == pytest.approx([CHORDS[n]] * n, abs=6e-7)  # the table, to its last digit


@pytest.mark.parametrize("n", POLYGONS)
def test_regular_polygons(shape: Callable[..., Part], n: int) -> None:
    part = shape("regular_polygon", sides=n, radius=1000.0)
    big_r, side, whole = 1000.0, dist(part.edges[0].start, part.edges[0].end), area(part.outline)
    small_r = shapely.Point(0.0, 0.0).distance(polygon(part.outline).exterior)
    ratios = (
        whole / side**2, whole / big_r**2, whole / small_r**2, big_r / side, big_r / small_r,
        side / big_r, side / small_r, small_r / big_r, small_r / side,
    )  # fmt: skip
    for printed, value in zip(POLYGONS[n], ratios, strict=True):
        digit = 10.0 ** -(3 - len(str(int(printed))) + 1) if printed >= 10.0 else 1e-4
        assert value == pytest.approx(printed, abs=0.51 * digit)


def test_worked_examples_of_the_handbook(shape: Callable[..., Part]) -> None:
    # Machinery's Handbook, 31st ed., p. 78: a 12-gon in a circle of radius 8 has sides of 4.141 (and an area of 192 exactly);
    # p. 79: the ring between diameters 12 and 8 has the area 62.83.
    twelve = shape("regular_polygon", sides=12, radius=8.0)
    assert dist(twelve.edges[0].start, twelve.edges[0].end) == pytest.approx(4.141, abs=5e-4)
    assert area(twelve.outline) == pytest.approx(192.0, rel=1e-12)
    ring = shape("ring", radius=60.0, hole_radius=40.0)
    assert area(ring.outline) / 100.0 == pytest.approx(62.83, abs=0.005)


def test_largest_circles_in_shapes(shape: Callable[..., Part]) -> None:
    # Exact answers: rectangle 10 × 4 -> 2; regular hexagon, R = 1 -> √3/2 = 0.866025 (elementary geometry).
    rectangle = polygon(shape("rectangle", width=10.0, height=4.0).outline)
    assert shapely.maximum_inscribed_circle(rectangle, tolerance=1e-4).length == pytest.approx(2.0, abs=1e-3)
    hexagon = polygon(shape("regular_polygon", sides=6, radius=100.0).outline)
    assert shapely.maximum_inscribed_circle(hexagon, tolerance=1e-4).length == pytest.approx(86.6025, abs=1e-3)


def test_the_stair_sector_has_the_centroid_of_a_ring_sector(shape: Callable[..., Part]) -> None:
    # Machinery's Handbook, 31st ed., p. 230: (2/3)·(R³ − r³)/(R² − r²)·sin α/α from the centre, α half the angle;
    # R 100, r 80, 45° -> 88.065506, area 1413.716694 (computed from that formula).
    layer = polygon(shape("spiral_stair_layer", core_radius=80.0, reach=100.0, step_angle=45.0, turn=0.0).outline)
    core = polygon(shape("disc", radius=80.0).outline)
    sector = layer.difference(core.buffer(0.01))
    centre = sector.centroid
    assert centre.distance(shapely.Point(0.0, 0.0)) == pytest.approx(88.065506, abs=0.01)
    assert layer.area - core.area == pytest.approx(1413.716694, abs=0.2)
