"""Corners that follow: against polygons and pyramids laid out in coordinates, and tables of regular solids."""

from math import acos, atan2, cos, degrees, dist, hypot, pi, sin, sqrt, tan
from random import Random

import numpy as np
import pytest

from publisher.geometry.making.closed_rings import plane_ring, tip_of_three, tip_over_plane
from publisher.geometry.shapes.slopes import bevel_between
from tests.searches.profile import seeds


def convex(rng: Random, sides: int) -> list[tuple[float, float]]:
    """A convex polygon, anticlockwise: points of an ellipse."""
    angles = sorted((k + rng.uniform(0.1, 0.9)) * 2 * pi / sides for k in range(sides))
    return [(100 * cos(a), 60 * sin(a)) for a in angles]


def angle_at(a: tuple[float, ...], b: tuple[float, ...], c: tuple[float, ...]) -> float:
    """The angle at b in degrees."""
    u, v = np.subtract(a, b), np.subtract(c, b)
    return degrees(acos(float(u @ v / np.linalg.norm(u) / np.linalg.norm(v))))


def test_a_right_triangle_has_the_corners_of_the_schoolbook() -> None:
    assert plane_ring([30.0, 40.0, 50.0], [None, None, None]) == pytest.approx(
        {0: 90.0, 1: degrees(atan2(30, 40)), 2: degrees(atan2(40, 30))}
    )
    assert plane_ring([30.0, 40.0, 80.0], [None] * 3) is None  # they do not reach each other
    assert plane_ring([30.0] * 4, [None] * 4) is None  # a rhombus may have any corner


@pytest.mark.search
@seeds(6, 400)
def test_up_to_three_unsaid_corners_of_any_convex_ring_follow(seed: int) -> None:
    rng = Random(seed)
    sides = rng.randint(3, 9)
    at = convex(rng, sides)
    widths = [dist(at[i], at[(i + 1) % sides]) for i in range(sides)]
    true = [angle_at(at[i], at[(i + 1) % sides], at[(i + 2) % sides]) for i in range(sides)]
    free = rng.sample(range(sides), rng.randint(1, 3))
    found = plane_ring(widths, [None if i in free else corner for i, corner in enumerate(true)])
    assert found == pytest.approx({i: true[i] for i in free}, abs=1e-6)


@pytest.mark.parametrize(
    ("taper", "corner"),
    [(60.0, degrees(acos(1 / 3))), (90.0, 90.0), (108.0, degrees(acos(-1 / sqrt(5))))],
    ids=["tetrahedron", "cube", "dodecahedron"],
)
def test_three_like_panels_that_meet_have_the_dihedral_angles_of_the_regular_solids(
    taper: float, corner: float
) -> None:
    """70.53°, 90° and 116.57°: Coxeter, Regular Polytopes, table I."""
    assert tip_of_three([taper] * 3) == pytest.approx((corner,) * 3)
    assert tip_of_three([taper, taper, 2 * taper + 1]) is None


def test_four_and_five_like_facets_over_a_plane_have_the_dihedral_angles_of_the_regular_solids() -> None:
    """Octahedron 109.47° and icosahedron 138.19°: Coxeter, Regular Polytopes, table I."""
    assert tip_over_plane([80.0] * 4, [60.0] * 4) == pytest.approx((degrees(acos(-1 / 3)),) * 4)
    assert tip_over_plane([80.0] * 5, [60.0] * 5) == pytest.approx((degrees(acos(-sqrt(5) / 3)),) * 5)
    assert tip_over_plane([80.0] * 6, [60.0] * 6) is None  # they lie flat


@pytest.mark.parametrize("sides", range(4, 13))
def test_a_regular_spire_has_the_corners_that_its_shape_knows(sides: int) -> None:
    width, height = 40.0, 90.0
    apothem = width / 2 / tan(pi / sides)
    edge = hypot(height, width / 2 / sin(pi / sides))
    taper = degrees(2 * atan2(width / 2, hypot(height, apothem)))
    bevel = bevel_between(*(degrees(atan2(height, apothem)),) * 2, 360.0 / sides)
    assert tip_over_plane([edge] * sides, [taper] * sides) == pytest.approx((180 - 2 * bevel,) * sides)


@pytest.mark.search
@seeds(6, 300)
def test_facets_of_any_pyramid_over_a_convex_foot_follow(seed: int) -> None:
    rng = Random(seed)
    sides = rng.randint(3, 8)
    foot = [(*p, 0.0) for p in convex(rng, sides)]
    tip = (rng.uniform(-8, 8), rng.uniform(-8, 8), rng.uniform(20, 150))
    # edge i runs down to foot i; facet i lies between edges i - 1 and i
    reaches = [dist(tip, p) for p in foot]
    tapers = [angle_at(foot[i - 1], tip, foot[i]) for i in range(sides)]
    normals = [np.cross(np.subtract(foot[i - 1], tip), np.subtract(foot[i], tip)) for i in range(sides)]
    true = []
    for i in range(sides):
        n, m = normals[i], normals[(i + 1) % sides]
        true.append(180 - degrees(acos(float(n @ m / np.linalg.norm(n) / np.linalg.norm(m)))))
    assert tip_over_plane(reaches, tapers) == pytest.approx(true, abs=1e-4)
    if sides == 3:
        assert tip_of_three(tapers) == pytest.approx(true, abs=1e-6)


def test_a_box_corner_is_square() -> None:
    assert tip_of_three([90.0] * 3) == pytest.approx((90.0,) * 3)
