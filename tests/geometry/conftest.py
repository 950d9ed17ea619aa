"""Plans of parts built by hand, as design would hand them over."""

from collections.abc import Callable
from itertools import pairwise
from math import dist, sqrt

import pytest
import shapely

from publisher.basics import Arc, Finding, Place
from publisher.design import DrawingPlan, EdgeTreatment, OpeningPlan, Parameter, PartPlan, SlotRow, SurfacePlan, TabRow
from publisher.geometry import Part, polygon
from publisher.geometry.making.parts import make_part

Sizes = dict[str, float | str]


def parameters(sizes: Sizes, line: int = 10) -> tuple[Parameter, ...]:
    return tuple(
        Parameter(name, value, str(value), Place("spec.yaml", line + i, 7, f"/parts/p/with/{name}"))
        for i, (name, value) in enumerate(sizes.items())
    )


def make_opening(name: str = "door", kind: str = "door", **sizes: float | str) -> OpeningPlan:
    return OpeningPlan(name, kind, parameters(sizes, 40), Place("spec.yaml", 40, 5))


def make_treatment(
    edge: str,
    take_off: float = 0.0,
    bevel: float = 0.0,
    tabs: TabRow | None = None,
    slots: tuple[SlotRow, ...] = (),
    matches: tuple[str, ...] = (),
) -> EdgeTreatment:
    return EdgeTreatment(edge, take_off, bevel, tabs, slots, matches, Place("spec.yaml", 60, 9))


def make_surface(pattern: str, **sizes: float | str) -> SurfacePlan:
    return SurfacePlan(pattern, parameters(sizes, 50), 0, Place("spec.yaml", 50, 5))


def make_plan(
    shape: str,
    sizes: Sizes,
    openings: tuple[OpeningPlan, ...] = (),
    treatments: tuple[EdgeTreatment, ...] = (),
    surface: SurfacePlan | None = None,
    thickness: float = 5.0,
    trace_allowance: float = 0.0,
    drawing: DrawingPlan | None = None,
) -> PartPlan:
    return PartPlan(
        id="p",
        letter="A",
        name="Part",
        board="foam",
        thickness=thickness,
        shape=shape,
        parameters=parameters(sizes),
        openings=openings,
        surface=surface,
        drawing=drawing,
        treatments=treatments,
        count=2,
        spare=1,
        mirrored=0,
        turning="any",
        trace_allowance=trace_allowance,
        place=Place("spec.yaml", 9, 3),
    )


@pytest.fixture(scope="session")
def plan() -> Callable[..., PartPlan]:
    return make_plan


@pytest.fixture(scope="session")
def opening() -> Callable[..., OpeningPlan]:
    return make_opening


@pytest.fixture(scope="session")
def treatment() -> Callable[..., EdgeTreatment]:
    return make_treatment


@pytest.fixture(scope="session")
def surface() -> Callable[..., SurfacePlan]:
    return make_surface


@pytest.fixture(scope="session")
def drawn() -> Callable[[PartPlan], Part]:
    """Draw a plan that must succeed."""

    def draw(plan: PartPlan) -> Part:
        part, found = make_part(plan)
        assert part is not None, found
        assert found == ()
        assert_sound(part)
        return part

    return draw


@pytest.fixture(scope="session")
def draw() -> Callable[..., tuple[Part | None, tuple[Finding, ...]]]:
    """Make a part from the body of a drawing of 100 by 80 mm, 2 mm a unit; every finding has a place and a hint."""

    def run(
        body: str,
        head: str = 'width="100mm" height="80mm" viewBox="0 0 50 40"',
        wanted: str = "outline",
        width: float | None = None,
        height: float | None = None,
        lines: tuple[tuple[str, tuple[str, ...]], ...] = (),
        treatments: tuple[EdgeTreatment, ...] = (),
        trace_allowance: float = 0.0,
        scale: float = 1.0,
    ) -> tuple[Part | None, tuple[Finding, ...]]:
        drawing = DrawingPlan("sign.svg", wanted, width, height, lines, Place("spec.yaml", 70, 5), scale)
        plan = make_plan("", {}, drawing=drawing, treatments=treatments, trace_allowance=trace_allowance)
        text = f'<svg xmlns="http://www.w3.org/2000/svg" {head}>\n{body}\n</svg>'
        part, found = make_part(plan, text.encode())
        for finding in found:
            assert finding.place is not None and finding.hint
        return part, found

    return run


@pytest.fixture(scope="session")
def sound() -> Callable[[Part], None]:
    return assert_sound


@pytest.fixture(scope="session")
def refused() -> Callable[[PartPlan], tuple[Finding, ...]]:
    """Draw a plan that must be refused, and return why."""

    def draw(plan: PartPlan) -> tuple[Finding, ...]:
        part, found = make_part(plan)
        assert part is None
        assert found
        for finding in found:
            assert finding.message and finding.hint and finding.subject == "part p"
            assert finding.place is not None and finding.place.line > 0
        return found

    return draw


def assert_sound(part: Part) -> None:
    """What holds of every part: valid outlines, edges end to end, arcs on their circles, a template inside the outline."""
    body, traced = polygon(part.outline), polygon(part.template)
    assert body.is_valid and body.area > 0.0
    assert traced.is_valid and traced.area > 0.0
    assert traced.difference(body).area < 1e-6
    for region in (part.outline, part.template):
        for path, hole in ((region.outer, False), *((h, True) for h in region.holes)):
            assert path.closed and shapely.LinearRing(path.points).is_ccw is not hole
            for edge, after in zip(path.edges, (*path.edges[1:], path.edges[0]), strict=True):
                assert dist(edge.end, after.start) < 1e-9 and edge.length > 1e-6
                if isinstance(edge, Arc):
                    points = [*edge.points(), edge.end]
                    assert all(abs(dist(p, edge.centre) - edge.radius) < 1e-6 for p in points)
                    longest = max(dist(a, b) for a, b in pairwise(points))
                    assert edge.radius - sqrt(max(edge.radius**2 - longest**2 / 4.0, 0.0)) <= 0.005 + 1e-9
                    turn = Arc.between("", edge.start, edge.end, edge.centre, edge.radius, edge.ccw).sweep
                    assert abs(turn - edge.sweep) < 1e-6
    for opening in part.openings:
        assert shapely.Polygon(opening.ring.points).difference(shapely.box(*body.bounds)).area < 1e-6
