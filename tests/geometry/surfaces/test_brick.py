"""Brick courses: bonds measured from the marks, what stands at ends and openings, sizes that cannot be."""

from collections.abc import Callable

import pytest
import shapely

from publisher.basics import Finding, LineKind, Place, Purpose
from publisher.design import EdgeTreatment, PartPlan, SurfacePlan
from publisher.geometry import Edge, Part
from tests.geometry.surfaces.conftest import Drawing, in_rows, least_stagger, levels, pieces, uprights

On = Callable[..., Drawing]
Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Cover = Callable[..., SurfacePlan]
WALL: dict[str, float | str] = {"width": 90.0, "height": 60.0}


def test_courses_and_half_bond(plan: Plan, drawn: Draw, surface: Cover) -> None:
    part = drawn(plan("wall_panel", WALL, surface=surface("brick", length=9.0, height=3.0)))
    marks = [m for m in part.marks if m.purpose is Purpose.SURFACE]
    assert all(m.kind is LineKind.DRAW for m in marks)
    assert levels(marks) == pytest.approx([3.0 * k for k in range(1, 20)])
    rows = in_rows(marks, [3.0 * k for k in range(20)])
    assert all(len(row) == (9, 10)[k % 2] for k, row in enumerate(rows))
    # TMS 402: neighbouring courses overlap by at least a quarter of the unit's length; half a brick here
    assert least_stagger(rows) == pytest.approx(4.5)


@pytest.mark.parametrize(("bond", "overlap"), [("running", 1 / 2), ("one_third", 1 / 3), ("flemish", 1 / 4)])
@pytest.mark.parametrize("first", ["whole", "half"])
def test_bonds_hold_also_at_openings(on: On, body: shapely.Polygon, bond: str, overlap: float, first: str) -> None:
    marks, found = on(body, "brick", length=12.0, height=4.0, bond=bond, first=first)
    assert found == ()
    bottoms = [4.0 * k for k in range(21)]
    rows = in_rows(marks, bottoms)
    assert least_stagger(rows) >= overlap * 12.0 - 1e-6
    for k, row in enumerate(rows[:20]):
        ends, middles = pieces(body, row, bottoms[k] + 2.0)
        assert min(ends) >= 12.0 / 4.0 - 0.002  # a closer is a quarter brick
        # nothing smaller than half a brick in the middle of a wall; the closer stands beside the header at the corner
        small = [m for m in middles if m < 6.0 - 1e-6]
        assert len(small) <= (1 if bond == "flemish" else 0)


def test_flemish_bond_lays_headers_over_the_middle_of_stretchers(on: On) -> None:
    marks, _ = on(shapely.box(0.0, 0.0, 240.0, 16.0), "brick", length=12.0, height=4.0, bond="flemish")
    below, above = in_rows(marks, [0.0, 4.0, 8.0, 12.0])[:2]
    assert below[:4] == pytest.approx([12.0, 18.0, 30.0, 36.0])  # stretcher 12, header 6
    assert above[:5] == pytest.approx([6.0, 9.0, 21.0, 27.0, 39.0])  # header and closer at the corner, then 12 and 6
    assert (above[2] + above[3]) / 2.0 == pytest.approx((below[1] + below[2]) / 2.0)


def test_walls_that_meet_take_one_beginning_each(on: On) -> None:
    wall = shapely.box(0.0, 0.0, 90.0, 12.0)
    whole, _ = on(wall, "brick", length=9.0, height=3.0)
    half, _ = on(wall, "brick", length=9.0, height=3.0, first="half")
    assert min(x for (x, low), _ in uprights(whole) if low < 3.0) == 9.0
    assert min(x for (x, low), _ in uprights(half) if low < 3.0) == 4.5


def test_courses_begin_on_the_nominal_edge_whatever_the_joins_take_off(
    plan: Plan, drawn: Draw, surface: Cover, treatment: Callable[..., EdgeTreatment]
) -> None:
    brick = surface("brick", length=9.0, height=4.0)
    joins = (treatment("bottom", 5.0), treatment("left", 5.0))
    (plain, shorter) = (drawn(plan("wall_panel", WALL, (), j, surface=brick)) for j in ((), joins))
    heights = levels(m for m in plain.marks if m.purpose is Purpose.SURFACE)
    kept = levels(m for m in shorter.marks if m.purpose is Purpose.SURFACE)
    assert kept == [h for h in heights if h > 5.0 + 1.0]


def test_an_eave_carries_rows_too(on: On) -> None:
    edge = Edge("eave", (80.0, 2.0), (0.0, 2.0), (80.0, 2.0), (0.0, 2.0))
    marks, _ = on(shapely.box(0.0, 0.0, 80.0, 20.0), "brick", edges=(edge,), length=9.0, height=5.0)
    assert levels(marks) == pytest.approx([2.0, 7.0, 12.0, 17.0])
    aslant = Edge("eave", (80.0, 3.0), (0.0, 2.0), (80.0, 3.0), (0.0, 2.0))
    marks, _ = on(shapely.box(0.0, 0.0, 80.0, 20.0), "brick", edges=(aslant,), length=9.0, height=5.0)
    assert levels(marks) == pytest.approx([5.0, 10.0, 15.0])


@pytest.mark.parametrize(
    ("pattern", "sizes", "check"),
    [
        ("brick", {"length": 3.0, "height": 9.0}, "geometry/impossible-sizes"),
        ("brick", {"length": 2.0, "height": 1.0}, "geometry/surface-too-fine"),
        ("brick", {"length": 3.0, "height": 2.0, "bond": "flemish"}, "geometry/surface-too-fine"),
        ("brick", {"length": 0.0, "height": 1.0}, "geometry/size-out-of-range"),
        ("brick", {"length": 9.0, "height": 3.0, "bond": "wild"}, "geometry/size-out-of-range"),
    ],
)
def test_patterns_that_cannot_be(
    plan: Plan, refused: Refuse, surface: Cover, pattern: str, sizes: dict[str, float | str], check: str
) -> None:
    wall: dict[str, float | str] = {"width": 300.0, "height": 60.0}
    (finding,) = refused(plan("wall_panel", wall, surface=surface(pattern, **sizes)))
    assert finding.check == check
    assert finding.place is not None and finding.place != Place("")


def test_no_joint_is_drawn_twice_and_none_is_left_as_a_stub_beside_an_opening(on: On) -> None:
    """Twice drawn it prints bolder than its neighbours; a stub at a slot is pricked as if it said something."""
    wall = shapely.box(0.0, 0.0, 90.0, 60.0).difference(shapely.box(20.0, 13.5, 25.3, 31.4))
    marks, _ = on(wall, "brick", length=9.0, height=3.0)
    lines = [shapely.LineString(mark.path.points) for mark in marks]
    upright = [line for line in lines if line.bounds[0] == line.bounds[2]]
    assert len({(round(line.bounds[0], 3), round(line.bounds[1], 3)) for line in upright}) == len(upright)
    assert min(line.length for line in upright) >= 1.8
    assert any(abs(line.length - 3.0) < 1e-6 for line in upright)
