"""Plans of parts built by hand, as design would hand them over."""

from collections.abc import Callable

import pytest

from publisher.basics import Place
from publisher.design import EdgeTreatment, OpeningPlan, Parameter, PartPlan, SlotRow, SurfacePlan, TabRow

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
        drawing=None,
        treatments=treatments,
        count=2,
        spare=1,
        mirrored=0,
        turning="any",
        trace_allowance=trace_allowance,
        place=Place("spec.yaml", 9, 3),
    )


@pytest.fixture
def plan() -> Callable[..., PartPlan]:
    return make_plan


@pytest.fixture
def opening() -> Callable[..., OpeningPlan]:
    return make_opening


@pytest.fixture
def treatment() -> Callable[..., EdgeTreatment]:
    return make_treatment


@pytest.fixture
def surface() -> Callable[..., SurfacePlan]:
    return make_surface
