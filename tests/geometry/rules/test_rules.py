"""Every rule has a case that keeps it and one that breaks it."""

from collections.abc import Callable

import pytest
import shapely

from publisher.basics import Rule, Severity
from publisher.design import EdgeTreatment, OpeningPlan, PartPlan, SlotRow, SurfacePlan, TabRow
from publisher.geometry import RULES
from publisher.geometry.making import named_shapes
from publisher.geometry.making.parts import make_part
from publisher.geometry.paths.rings import straight
from publisher.geometry.registry import Shape, ShapeKind
from publisher.geometry.rules.drawings import DRAWING_RULES
from publisher.geometry.shapes import SHAPES

WALL: dict[str, float | str] = {"width": 140.0, "height": 80.0}
Case = tuple[PartPlan, PartPlan]
WARNINGS = {
    "geometry/clone-left-out",
    "geometry/corner-free",
    "geometry/drawing-size-unsaid",
    "geometry/drawn-twice",
    "geometry/gap-mended",
    "geometry/layer-in-pieces",
    "geometry/line-outside",
    "geometry/surface-heavy",
}


def test_rules_are_complete() -> None:
    assert len({rule.id for rule in RULES}) == len(RULES)
    for rule in RULES:
        assert rule.id.startswith("geometry/") and rule.title and rule.rationale.endswith(".")
        assert rule.severity is (Severity.WARNING if rule.id in WARNINGS else Severity.ERROR)


@pytest.fixture(scope="module")
def cases(
    plan: Callable[..., PartPlan],
    opening: Callable[..., OpeningPlan],
    treatment: Callable[..., EdgeTreatment],
    surface: Callable[..., SurfacePlan],
) -> dict[str, Case]:
    """A plan that keeps the rule, and one that breaks it."""

    def wall(*openings: OpeningPlan, joins: tuple[EdgeTreatment, ...] = (), **more: object) -> PartPlan:
        return plan("wall_panel", WALL, openings, joins, **more)

    def window(name: str, centre: float, width: float = 20.0) -> OpeningPlan:
        return opening(name, "window", width=width, height=20.0, sill=20.0, centre=centre)

    def slots(inset: float) -> tuple[EdgeTreatment, ...]:
        return (treatment("right", slots=(SlotRow(2, inset, 5.0, 0.3),)),)

    def tabs(length: float) -> tuple[EdgeTreatment, ...]:
        return (treatment("right", 5.0, tabs=TabRow(2, 5.0)), treatment("top", length))

    fine = wall()
    return {
        "geometry/size-out-of-range": (fine, plan("wall_panel", {**WALL, "width": 10000.0})),
        "geometry/impossible-sizes": (
            plan("ring", {"radius": 50.0, "hole_radius": 47.0}),
            plan("ring", {"radius": 50.0, "hole_radius": 55.0}),
        ),
        "geometry/unknown-edge": (wall(joins=(treatment("right", 5.0),)), wall(joins=(treatment("rigth", 5.0),))),
        "geometry/edge-not-straight": (
            plan("regular_polygon", {"sides": 6, "radius": 50.0}, (), (treatment("side_1", 5.0),)),
            plan("disc", {"radius": 50.0}, (), (treatment("rim", 5.0),)),
        ),
        "geometry/edge-lost": (wall(joins=(treatment("right", 5.0),)), wall(joins=(treatment("right", 150.0),))),
        "geometry/tab-off-edge": (wall(joins=tabs(5.0)), wall(joins=tabs(60.0))),
        "geometry/slot-off-panel": (wall(joins=slots(10.0)), wall(joins=slots(138.0))),
        "geometry/opening-not-here": (wall(window("w", 70.0)), plan("disc", {"radius": 50.0}, (window("w", 70.0),))),
        "geometry/opening-over-edge": (wall(window("w", 70.0)), wall(window("w", 135.0))),
        "geometry/openings-overlap": (
            wall(window("a", 40.0), window("b", 70.0)),
            wall(window("a", 60.0), window("b", 70.0)),
        ),
        "geometry/thin-wall": (
            wall(window("a", 40.0), window("b", 63.0)),
            wall(window("a", 40.0), window("b", 62.9)),
        ),
        "geometry/lost-in-tracing": (
            wall(joins=(treatment("right", 5.0, tabs=TabRow(40, 5.0)),), trace_allowance=0.4),
            wall(joins=(treatment("right", 5.0, tabs=TabRow(40, 5.0)),), trace_allowance=0.6),
        ),
        "geometry/surface-too-fine": (
            wall(surface=surface("brick", length=9.0, height=3.0)),
            wall(surface=surface("brick", length=2.0, height=1.0)),
        ),
    }


#: Rules whose cases are no plans of parts; drawings have a table of their own.
MARKED = {
    "geometry/clone-left-out",
    "geometry/corner-free",
    "geometry/corners-differ",
    "geometry/no-slope",
    "geometry/broken-outline",
    "geometry/could-not-be-drawn",
    "geometry/combination",
    "geometry/layer-in-pieces",
    "geometry/split-outside",
    "geometry/split-place",
    "geometry/fold-place",
    "geometry/not-by-sizes",
    "geometry/no-half",
    "geometry/surface-heavy",
}
TABLED = {rule.id for rule in RULES} - MARKED - {rule.id for rule in DRAWING_RULES}


@pytest.mark.parametrize("rule", [r for r in RULES if r.id in TABLED], ids=lambda rule: rule.id)
def test_good_and_bad_case(cases: dict[str, Case], rule: Rule) -> None:
    good, bad = cases[rule.id]
    part, found = make_part(good)
    assert part is not None and found == ()
    part, found = make_part(bad)
    assert part is None and rule.id in [f.check for f in found]


@pytest.mark.breaks("geometry/broken-outline")
def test_an_outline_that_crosses_itself(plan: Callable[..., PartPlan], monkeypatch: pytest.MonkeyPatch) -> None:
    """No registered shape crosses itself; one that did would be refused."""
    square = ((0.0, 0.0), (50.0, 0.0), (50.0, 50.0), (0.0, 50.0))
    for order, sound in (((0, 1, 2, 3), True), ((0, 2, 1, 3), False)):
        outer = straight([(square[i], f"side_{i}") for i in order])
        kind = next(k for k in SHAPES if k.info.name == "disc")
        monkeypatch.setattr(
            named_shapes, "SHAPES", (ShapeKind(kind.info, lambda _, c=outer: Shape(c, ()), kind.check),)
        )
        part, found = make_part(plan("disc", {"radius": 50.0}))
        assert (part is not None) is sound
        assert [f.check for f in found] == ([] if sound else ["geometry/broken-outline"])


@pytest.mark.breaks("geometry/could-not-be-drawn")
def test_trouble_in_the_library(plan: Callable[..., PartPlan], monkeypatch: pytest.MonkeyPatch) -> None:
    kind = next(k for k in SHAPES if k.info.name == "disc")
    assert make_part(plan("disc", {"radius": 50.0}))[1] == ()

    def build(_: object) -> Shape:
        raise shapely.errors.GEOSException("side location conflict")

    monkeypatch.setattr(named_shapes, "SHAPES", (ShapeKind(kind.info, build, kind.check),))
    assert [f.check for f in make_part(plan("disc", {"radius": 50.0}))[1]] == ["geometry/could-not-be-drawn"]
