"""Combined shapes: areas of union and difference, edges, arcs and marks that survive."""

from collections.abc import Callable
from dataclasses import replace
from math import acos, pi, sqrt
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from publisher.basics import Arc, Finding, Place
from publisher.design import CombineStep, Parameter, PartPlan, TabRow
from publisher.geometry import Part, area, polygon
from publisher.geometry.making.parts import make_part
from tests.searches.profile import cases

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
HERE = Place("spec.yaml", 20, 9)
WALL: dict[str, float | str] = {"width": 140.0, "height": 80.0}


def step(kind: str, shape: str = "", sizes: dict[str, float | str] | None = None, **rest: Any) -> CombineStep:
    given = tuple(Parameter(name, value, str(value), HERE) for name, value in (sizes or {}).items())
    return CombineStep(kind, HERE, shape, given, **{"called": f"{kind}1", **rest})  # type: ignore[arg-type]


@pytest.fixture(scope="module")
def made(plan: Plan) -> Callable[..., PartPlan]:
    def make(shape: str, sizes: dict[str, float | str], *steps: CombineStep, **rest: Any) -> PartPlan:
        return replace(plan(shape, sizes, **rest), combine=steps)

    return make


@pytest.mark.keeps("geometry/combination", "geometry/broken-outline", "geometry/could-not-be-drawn")
def test_cut_at_the_edge_keeps_the_edge_and_the_arc(made: Plan, drawn: Draw) -> None:
    part = drawn(made("wall_panel", WALL, step("cut", "disc", {"radius": 20.0}, at=(70.0, 0.0))))
    assert area(part.outline) == pytest.approx(140.0 * 80.0 - pi * 400.0 / 2.0, rel=1e-9)
    bottom = part.edge("bottom")
    assert bottom is not None and (bottom.start, bottom.end) == ((0.0, 0.0), (140.0, 0.0))
    (arc,) = [run for run in part.outline.outer.edges if isinstance(run, Arc)]
    assert (arc.name, arc.centre, arc.radius) == ("cut1_rim", (70.0, 0.0), 20.0)
    assert part.edge("cut1_rim") is not None and part.edge("right") is not None


def test_cut_shortens_an_edge_and_cuts_a_hole(made: Plan, drawn: Draw) -> None:
    corner = step("cut", "rectangle", {"width": 30.0, "height": 20.0}, at=(-10.0, -10.0))
    hole = step("cut", "disc", {"radius": 6.0}, at=(100.0, 40.0), called="port")
    part = drawn(made("wall_panel", WALL, corner, hole))
    assert area(part.outline) == pytest.approx(140.0 * 80.0 - 20.0 * 10.0 - pi * 36.0)
    bottom, left = part.edge("bottom"), part.edge("left")
    assert bottom is not None and bottom.start == pytest.approx((20.0, 0.0))
    assert left is not None and left.end == pytest.approx((0.0, 10.0))
    assert [run.name for run in part.outline.holes[0].edges] == ["port_rim", "port_rim"]


def test_add_joins_and_its_edges_take_its_name(made: Plan, drawn: Draw, treatment: Callable[..., Any]) -> None:
    porch = step("add", "rectangle", {"width": 40.0, "height": 30.0}, at=(140.0, 0.0), called="porch")
    part = drawn(made("wall_panel", WALL, porch, treatments=(treatment("porch_right", 0.0, 0.0, TabRow(1, 5.0)),)))
    right, inner = part.edge("porch_right"), part.edge("right")
    assert right is not None and right.nominal_length == pytest.approx(30.0)
    assert inner is not None and inner.start == pytest.approx((140.0, 30.0))
    assert area(part.outline) == pytest.approx(140.0 * 80.0 + 1200.0 + 15.0 * 5.0)  # one tab, half the edge long


def test_turned_cutter(made: Plan, drawn: Draw) -> None:
    diamond = step("cut", "rectangle", {"width": 20.0, "height": 20.0}, at=(70.0, 80.0 - 10.0 * sqrt(2.0)), turn=45.0)
    part = drawn(made("wall_panel", WALL, diamond))
    assert area(part.outline) == pytest.approx(140.0 * 80.0 - 200.0)  # half the square lies over the edge


def test_copies_along_an_edge(made: Plan, drawn: Draw) -> None:
    crenel = step(
        "cut", "rectangle", {"width": 10.0, "height": 12.0}, at=(20.0, 68.0), count=5, pitch=20.0, along="bottom"
    )
    part = drawn(made("wall_panel", WALL, crenel))
    assert area(part.outline) == pytest.approx(140.0 * 80.0 - 5 * 120.0)
    top = part.edge("top")
    assert top is not None and top.nominal_length == 140.0
    floors = [part.edge(f"cut1_{k}_bottom") for k in range(1, 6)]
    assert [edge.start[0] for edge in floors if edge] == pytest.approx([30.0, 50.0, 70.0, 90.0, 110.0]) or [
        edge.end[0] for edge in floors if edge
    ] == pytest.approx([30.0, 50.0, 70.0, 90.0, 110.0])


ARCH: dict[str, float | str] = {
    "form": "segmental", "span": 60.0, "rise": 20.0, "spandrel": 20.0, "length": 90.0, "voussoirs": 9, "voussoir_depth": 10.0,
}  # fmt: skip


def test_repeated_arches_go_on_in_line(made: Plan, drawn: Draw) -> None:
    one = drawn(made("arch_side", ARCH))
    three = drawn(made("arch_side", ARCH, step("repeat", count=3, pitch=90.0, along="bottom")))
    assert area(three.outline) == pytest.approx(3.0 * area(one.outline), rel=1e-9)
    for name in ("bottom", "top"):
        edge = three.edge(name)
        assert edge is not None and edge.nominal_length == pytest.approx(270.0)
    right = three.edge("right")
    assert right is not None and right.start[0] == pytest.approx(270.0)
    assert {"intrados", "intrados_2", "intrados_3"} <= {edge.name for edge in three.edges}
    assert len([m for m in three.marks if m.name == "voussoir joint"]) == 3 * len(
        [m for m in one.marks if m.name == "voussoir joint"]
    )


def test_mirror_beyond_an_edge(made: Plan, drawn: Draw) -> None:
    half: dict[str, float | str] = {"run": 60.0, "rise": 30.0, "toe": 10.0}
    part = drawn(made("ramp_side", half, step("mirror", flip="right")))
    assert area(part.outline) == pytest.approx(2.0 * (600.0 + 900.0))
    assert {edge.name for edge in part.edges} == {"bottom", "slope", "left", "slope_mirrored", "left_mirrored"}
    bottom = part.edge("bottom")
    assert bottom is not None and bottom.nominal_length == pytest.approx(120.0)


def test_turned_over_and_turned(made: Plan, drawn: Draw) -> None:
    half: dict[str, float | str] = {"run": 60.0, "rise": 30.0, "toe": 10.0}
    part = drawn(made("ramp_side", half, step("mirror", flip="left_right")))
    slope = part.edge("slope")
    assert slope is not None and slope.start == pytest.approx((60.0, 10.0)) and slope.end == pytest.approx((0.0, 40.0))
    turned = drawn(made("ramp_side", half, step("turn", turn=90.0)))
    assert polygon(turned.outline).bounds == pytest.approx((-40.0, 0.0, 0.0, 60.0))


def test_a_part_of_another_part(made: Plan, drawn: Draw) -> None:
    inner = step("add", "disc", {"radius": 10.0}, at=(12.0, 0.0))
    key = step("cut", "disc", {"radius": 10.0}, at=(40.0, 40.0), steps=(inner,))
    part = drawn(made("wall_panel", WALL, key))
    lens = 2.0 * 100.0 * acos(12.0 / 20.0) - 6.0 * sqrt(400.0 - 144.0)  # two equal circles 12 apart
    assert area(part.outline) == pytest.approx(140.0 * 80.0 - 2.0 * pi * 100.0 + lens, rel=1e-9)


@pytest.mark.parametrize(
    ("bad", "says"),
    [
        pytest.param(
            *(step("add", "disc", {"radius": 10.0}, at=(300.0, 0.0)), "2 pieces"),
            marks=pytest.mark.breaks("geometry/combination"),
        ),
        (step("cut", "disc", {"radius": 10.0}, at=(300.0, 0.0)), "lie apart"),
        (step("cut", "rectangle", {"width": 10.0, "height": 100.0}, at=(60.0, -5.0)), "2 pieces"),
        (step("cut", "rectangle", {"width": 300.0, "height": 300.0}, at=(-9.0, -9.0)), "nothing is left"),
        (step("mirror", flip="rigth"), "no edge “rigth”"),
        (step("repeat", count=3, pitch=10.0, along="side"), "no edge “side”"),
    ],
)
def test_combinations_that_cannot_be(bad: CombineStep, says: str, made: Plan, refused: Refuse) -> None:
    assert says in refused(made("wall_panel", WALL, bad))[0].message


def test_an_arc_is_no_edge_to_go_along(made: Plan, refused: Refuse) -> None:
    (finding,) = refused(made("disc", {"radius": 40.0}, step("mirror", flip="rim")))
    assert finding.check == "geometry/edge-not-straight"


@pytest.mark.search
def test_random_combinations(plan: Plan, sound: Callable[[Part], None]) -> None:
    """A sound part or a finding; never an exception; every edge that is named is there."""
    shapes = st.sampled_from(
        [
            ("disc", {"radius": 18.0}),
            ("rectangle", {"width": 40.0, "height": 25.0, "corner_radius": 6.0}),
            ("ring", {"radius": 30.0, "hole_radius": 12.0}),
            ("hex_tile", {"across_flats": 40.0}),
        ]
    )
    place = st.tuples(st.floats(-30.0, 170.0), st.floats(-30.0, 110.0)) | st.sampled_from([(0.0, 0.0), (140.0, 0.0)])
    one = st.tuples(st.sampled_from(["add", "cut"]), shapes, place, st.floats(-180.0, 180.0))

    @cases(30, 2000)
    @given(st.lists(one, min_size=1, max_size=3))
    def run(drawn: list[tuple[str, tuple[str, dict[str, float | str]], tuple[float, float], float]]) -> None:
        steps = tuple(
            step(kind, shape, dict(sizes), at=at, turn=turn, called=f"s{number}")
            for number, (kind, (shape, sizes), at, turn) in enumerate(drawn)
        )
        part, found = make_part(replace(plan("wall_panel", WALL), combine=steps))
        assert (part is None) == bool(found)
        assert "geometry/could-not-be-drawn" not in [f.check for f in found]
        built.append(part is not None)
        if part is not None:
            sound(part)
            names = {run.name for run in part.outline.outer.edges}
            assert all(edge.name in names for edge in part.edges)

    built: list[bool] = []
    run()
    assert sum(built) > len(built) / 4
