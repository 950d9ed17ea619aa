"""Flat patterns of cones, frustums, pyramids and towers against published worked examples. Lengths in mm."""

from collections.abc import Callable
from math import acos, atan, degrees, dist, pi, radians, sin, tan

import pytest

from publisher.basics import Place
from publisher.design import Parameter, PartPlan
from publisher.geometry import Part, area
from publisher.geometry.making.parts import make_part

# Published examples are in any unit; a part is cut in mm, so they are drawn ten or a hundred times as large.
Shape = Callable[..., Part]

# Cone: sector radius = slant √(h² + r²), sector angle = 360°·r/s (mathforum.org, BuildCone and drmath 61472: ten solved
# cases). Right triangles with whole sides: r, h -> s, angle, lateral area; computed from those formulas.
CONES = [
    (3.0, 4.0, 5.0, 216.0, 47.1239),
    (6.0, 8.0, 10.0, 216.0, 188.4956),
    (5.0, 12.0, 13.0, 138.4615, 204.2035),
    (8.0, 15.0, 17.0, 169.4118, 427.2566),
    (20.0, 21.0, 29.0, 248.2759, 1822.1237),
]

# D, d, h -> outer radius, inner radius, angle, slant, area
FRUSTUMS = [
    # ceemrr.com/Geometry2/DrawingsNets/DrawingsNets6.html prints 11.39, 7.12 and 126.4°
    (8.0, 5.0, 4.0, 11.392005, 7.120003, 126.404439, 4.272002, 87.235783),
    # dimensions from Longfield, Sheet Metal Drafting (1921), p. 128; results computed
    (6.0, 3.0, 3.0, 6.708204, 3.354102, 160.996894, 3.354102, 47.417499),
    # dimensions from Longfield, Problem 30B; results computed
    (8.0, 4.0, 4.0, 8.944272, 4.472136, 160.996894, 4.472136, 84.297777),
    # computed
    (60.0, 40.0, 30.0, 94.868330, 63.245553, 113.841996, 31.622777, 4967.2941),
    (100.0, 60.0, 80.0, 206.155281, 123.693169, 87.312825, 82.462113, 20724.9893),
]

# Machinery's Handbook, 31st ed., p. 82: side of a polygon over the radius of its inscribed circle, as printed.
SIDES = {3: 3.4641, 4: 2.0, 5: 1.4531, 6: 1.1547, 7: 0.9631, 8: 0.8284, 9: 0.7279, 10: 0.6498, 12: 0.5359, 16: 0.3978}


@pytest.fixture(scope="session")
def shape() -> Shape:
    """Draw a shape that must succeed."""

    def draw(name: str, **sizes: float) -> Part:
        where = Place("spec.yaml", 1, 1)
        given = tuple(Parameter(key, value, str(value), where) for key, value in sizes.items())
        part, found = make_part(
            PartPlan("p", "A", "P", "card", 1.0, name, given, (), None, None, (), 1, 0, 0, "any", 0.0, where)
        )
        assert part is not None, found
        return part

    return draw


def sweep(part: Part, name: str) -> float:
    """Return the angle of an arc of the outline in degrees."""
    return next(abs(edge.sweep) for edge in part.outline.outer.edges if edge.name == name)


def nominal(part: Part, name: str) -> float:
    edge = part.edge(name)
    assert edge is not None
    return edge.nominal_length


@pytest.mark.parametrize(("r", "h", "slant", "angle", "lateral"), CONES)
def test_cones(shape: Shape, r: float, h: float, slant: float, angle: float, lateral: float) -> None:
    part = shape("cone", radius=10.0 * r, height=10.0 * h)
    outer = part.edge("outer")
    assert outer is not None and outer.radius / 10.0 == pytest.approx(slant, abs=1e-9)
    assert nominal(part, "seam_left") == pytest.approx(nominal(part, "seam_right"), abs=1e-9)
    assert sweep(part, "outer") == pytest.approx(angle, abs=5e-5)
    assert area(part.outline) / 100.0 == pytest.approx(lateral, abs=5e-5)
    # invariants of any development: the arc goes round the base, the net is as large as the surface
    assert radians(sweep(part, "outer")) * outer.radius == pytest.approx(2.0 * pi * 10.0 * r, abs=1e-6)


def test_a_cone_with_a_right_angle_at_its_point(shape: Shape) -> None:
    """anvilfire.com/21centbs/math/cones1.htm: 0.7071·360 = 254.6°."""
    assert round(sweep(shape("cone", radius=50.0, height=50.0), "outer"), 1) == 254.6


def test_a_cone_with_thirty_degrees_at_its_point(shape: Shape) -> None:
    """The question of mathforum.org drmath 61472; 360·sin 15° computed."""
    part = shape("cone", radius=50.0, height=50.0 / tan(radians(15.0)))
    assert sweep(part, "outer") == pytest.approx(93.1749, abs=5e-5)
    assert sweep(part, "outer") == pytest.approx(360.0 * sin(radians(15.0)))


def test_a_slant_of_six_radii_is_a_sixth_of_a_circle(shape: Shape) -> None:
    """I. R. Butt, Tinman's Manual: a slant of six times the base radius gives a sector of 60°."""
    assert sweep(shape("cone", radius=10.0, height=10.0 * 35.0**0.5), "outer") == pytest.approx(60.0)


def test_the_surface_of_a_cone_of_diameter_five_and_slant_twelve(shape: Shape) -> None:
    """Longfield, Sheet Metal Drafting (1921), p. 82: perimeter 15.7080 times half the slant, 94.248."""
    part = shape("cone", radius=25.0, height=10.0 * (144.0 - 6.25) ** 0.5)
    assert area(part.outline) / 100.0 == pytest.approx(94.248, abs=5e-4)


@pytest.mark.parametrize(("wide", "narrow", "h", "outer", "inner", "angle", "slant", "surface"), FRUSTUMS)
def test_frustums(
    shape: Shape,
    wide: float,
    narrow: float,
    h: float,
    outer: float,
    inner: float,
    angle: float,
    slant: float,
    surface: float,
) -> None:
    scale = 10.0 if wide < 10.0 else 1.0
    part = shape("cone_frustum", radius=scale * wide / 2.0, top_radius=scale * narrow / 2.0, height=scale * h)
    radii = {e.name: e.radius / scale for e in part.edges if e.centre}
    assert radii == pytest.approx({"outer": outer, "inner": inner}, abs=5e-7)
    assert sweep(part, "outer") == pytest.approx(angle, abs=5e-7)
    assert sweep(part, "inner") == pytest.approx(angle, abs=5e-7)
    for seam in ("seam_left", "seam_right"):
        assert nominal(part, seam) / scale == pytest.approx(slant, abs=5e-7)
    assert area(part.outline) / scale**2 == pytest.approx(surface, abs=5e-5)
    assert area(part.outline) == pytest.approx(pi * scale**2 * (wide + narrow) / 2.0 * slant, rel=1e-6)


def test_a_square_pyramid(shape: Shape) -> None:
    """Base 6, height 4 (computed): face height 5, lateral edge √34, apex angle 61.927513°, lateral area 60."""
    part = shape("spire_facet", sides=4.0, width=60.0, height=40.0)
    base, right, left = part.edges
    assert nominal(part, "right") / 10.0 == pytest.approx(5.830952, abs=5e-7)
    assert nominal(part, "left") == pytest.approx(nominal(part, "right"), abs=1e-9)
    assert right.nominal_end[1] / 10.0 == pytest.approx(5.0)
    across = dist(base.nominal_start, base.nominal_end)
    apex = acos(1.0 - across**2 / 2.0 / left.nominal_length**2)
    assert degrees(apex) == pytest.approx(61.927513, abs=5e-7)
    assert degrees(apex) == pytest.approx(2.0 * degrees(atan(3.0 / 5.0)))
    assert 4.0 * area(part.outline) / 100.0 == pytest.approx(60.0)


def test_a_square_frustum(shape: Shape) -> None:
    """Base 8, top 2, height 4 (computed): face height 5, each face 25, lateral area 100."""
    part = shape("spire_facet", sides=4.0, width=80.0, top_width=20.0, height=40.0)
    assert max(y for _, y in part.outline.outer.points) / 10.0 == pytest.approx(5.0)
    assert area(part.outline) / 100.0 == pytest.approx(25.0)


@pytest.mark.parametrize(("sides", "ratio"), SIDES.items())
def test_sides_of_towers_and_spires(shape: Shape, sides: int, ratio: float) -> None:
    panel = shape("tower_panel", sides=float(sides), apothem=100.0, height=50.0)
    facet = shape("spire_facet", sides=float(sides), apothem=100.0, height=50.0)
    assert nominal(panel, "bottom") / 100.0 == pytest.approx(ratio, abs=5e-5)
    assert nominal(facet, "base") == pytest.approx(nominal(panel, "bottom"), abs=1e-9)


def test_a_prism_unrolls_to_its_perimeter(shape: Shape) -> None:
    """Hexagon prism: a strip 6·S wide and the height high."""
    panel = shape("tower_panel", sides=6.0, width=30.0, height=80.0)
    assert 6.0 * area(panel.outline) == pytest.approx(6.0 * 30.0 * 80.0)


# Dihedral angles of the regular solids: Coxeter, Regular Polytopes, table I. Facets of a unit edge: how many meet at the tip, the
# height of the tip over their feet, the angle between neighbours.
SOLIDS = [
    (3, (2 / 3) ** 0.5, 70.528779),  # tetrahedron
    (4, 0.5**0.5, 109.471221),  # half of an octahedron
    (5, ((5 - 5**0.5) / 10) ** 0.5, 138.189685),  # the cap of an icosahedron
]


@pytest.mark.parametrize(("sides", "height", "angle"), SOLIDS)
def test_facets_of_regular_solids_are_bevelled_for_their_dihedral_angles(
    shape: Shape, sides: int, height: float, angle: float
) -> None:
    facet = shape("spire_facet", sides=sides, width=60.0, height=60.0 * height)
    bevels = [edge.bevel for edge in facet.edges if edge.name in ("left", "right")]
    assert [180.0 - 2.0 * bevel for bevel in bevels] == pytest.approx([angle] * 2, abs=1e-6)


# Interior angles of regular polygons, and so the dihedral angles of upright regular prisms, as tables print them.
PRISMS = {3: 60.0, 4: 90.0, 5: 108.0, 6: 120.0, 7: 128.5714, 8: 135.0, 9: 140.0, 10: 144.0, 11: 147.2727, 12: 150.0}


@pytest.mark.parametrize(("sides", "angle"), PRISMS.items())
def test_walls_of_regular_prisms_are_bevelled_for_their_dihedral_angles(shape: Shape, sides: int, angle: float) -> None:
    wall = shape("tower_panel", sides=sides, width=60.0, height=60.0)
    bevels = [edge.bevel for edge in wall.edges if edge.name in ("left", "right")]
    assert [180.0 - 2.0 * bevel for bevel in bevels] == pytest.approx([angle] * 2, abs=1e-4)
