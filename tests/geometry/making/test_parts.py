"""All parts of a design: what is drawn, what is refused, and how fast."""

from collections.abc import Callable
from dataclasses import replace

import pytest
import shapely

from publisher.basics import Place
from publisher.design import Design, EdgeTreatment, OpeningPlan, PartPlan, SlotRow, SurfacePlan, TextPlan
from publisher.geometry import make_parts, polygon, shape_infos
from publisher.geometry.making import named_shapes
from publisher.geometry.making.parts import make_part
from publisher.geometry.registry import Shape, ShapeKind
from publisher.geometry.registry.given_parameters import Values
from publisher.geometry.shapes import SHAPES

Plan = Callable[..., PartPlan]


def design(*plans: PartPlan) -> Design:
    return Design(
        slug="d", variant="", variant_title="", title="D", version="1", designer="", licence="",
        summary=TextPlan((), Place("spec.yaml")), language="en", use="trace", sizes=(), boards=(), parts=plans, stacks=(),
        panels=(), needs=(), tools=(), materials=(), steps=(), papers=(), fonts=(), files=(), findings=(),
    )  # fmt: skip


def test_all_shapes_are_listed_with_their_sizes_and_edges() -> None:
    infos = shape_infos()
    names = [info.name for info in infos]
    assert len(set(names)) == len(names) and {"spiral_stair_layer", "wall_panel", "gable_wall"} <= set(names)
    for info in infos:
        assert info.meaning and info.edges and info.parameters
        for parameter in info.parameters:
            assert parameter.meaning and parameter.name.isidentifier()
            assert parameter.choices or (parameter.least is not None and parameter.most is not None)


def test_good_parts_are_drawn_beside_bad_ones(plan: Plan) -> None:
    good = replace(plan("disc", {"radius": 50.0}), id="a", count=3, spare=1, turning="half")
    bad = replace(plan("disc", {"radius": -50.0}), id="b")
    worse = replace(plan("disc", {"radius": 6000.0}), id="c")
    drawn, found = make_parts(design(good, bad, worse))
    assert [part.id for part in drawn] == ["a"]
    assert [(f.subject, f.check) for f in found] == [
        ("part b", "geometry/size-out-of-range"),
        ("part c", "geometry/size-out-of-range"),
    ]
    part = drawn[0]
    assert (part.count, part.spare, part.turning, part.shape, part.place) == (3, 1, "half", "disc", good.place)
    assert found[1].message == "radius of shape disc is 6000 mm; it must be at most 5000 mm"


def test_a_fault_of_the_geometry_library_is_a_finding(plan: Plan, monkeypatch: pytest.MonkeyPatch) -> None:
    def build(values: Values) -> Shape:
        raise shapely.errors.GEOSException(f"TopologyException: {values.number('radius')}")

    disc = next(kind for kind in SHAPES if kind.info.name == "disc")
    monkeypatch.setattr(named_shapes, "SHAPES", (ShapeKind(disc.info, build, disc.check),))
    part, (finding,) = make_part(plan("disc", {"radius": 50.0}))
    assert part is None and finding.check == "geometry/could-not-be-drawn"
    assert "Topology" not in finding.message


def test_a_part_beyond_all_sizes_is_refused(plan: Plan) -> None:
    steep = plan("gable_wall", {"span": 2000.0, "past": 0.0, "eaves": 80.0, "pitch": 84.0})
    part, (finding,) = make_part(steep)
    assert part is None and finding.check == "geometry/size-out-of-range" and finding.limit == 5000.0


def test_the_same_plans_give_the_same_parts(plan: Plan) -> None:
    layer = plan("spiral_stair_layer", {"core_radius": 30, "reach": 92, "step_angle": 40, "turn": 20, "notch": 4})
    assert make_parts(design(layer)) == make_parts(design(layer))


def test_a_part_with_all_that_can_be_on_it(
    plan: Plan,
    opening: Callable[..., OpeningPlan],
    treatment: Callable[..., EdgeTreatment],
    surface: Callable[..., SurfacePlan],
) -> None:
    slots = (SlotRow(2, 10.0, 5.0, 0.3),)
    gable = plan(
        "gable_wall",
        {"span": 110.0, "past": 10.0, "eaves": 80.0, "pitch": 45.0},
        (opening(width=32.0, height=50.0, head="round"),),
        (treatment("right", slots=slots, matches=("a",)), treatment("left", slots=slots, matches=("b",))),
        surface("brick", length=9.0, height=3.0),
        trace_allowance=0.4,
    )
    part, found = make_part(gable)
    assert part is not None and found == () and len(part.marks) > 300
    assert polygon(part.template).is_valid
