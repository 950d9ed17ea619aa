"""Random sizes, openings and joins: a sound part or a finding in words, never an exception or an invalid outline."""

from collections.abc import Callable, Iterator, Mapping
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from publisher.design import EdgeTreatment, OpeningPlan, PartPlan, SlotRow, SurfacePlan, TabRow
from publisher.geometry import ParameterInfo, Part, ShapeInfo, opening_infos, polygon, shape_infos
from publisher.geometry.making.parts import make_part
from publisher.geometry.rules import OWN_FAULT
from tests.searches.profile import cases

# what a designer would write, so that many of the examples can be built
USUAL = {
    "core_radius": (5.0, 60.0), "reach": (40.0, 200.0), "step_angle": (10.0, 200.0), "turn": (-60.0, 60.0),
    "notch": (0.0, 6.0), "joints": (0, 60), "hole_radius": (1.0, 80.0), "radius": (20.0, 300.0), "corner_radius": (0.0, 20.0),
    "past": (0.0, 20.0), "pitch": (10.0, 60.0), "eaves": (40.0, 150.0), "sill": (10.0, 40.0), "centre": (20.0, 120.0),
}  # fmt: skip
# the same for sizes that mean something else in one shape
USUAL_OF: Mapping[str, Mapping[str, tuple[float, float]]] = {
    "spiral_stair_layer": {"core_sides": (0, 12), "hole_radius": (0.5, 6.0)},
    "stair_stringer": {"steps": (1, 20), "rise": (3.0, 30.0), "going": (5.0, 40.0), "throat": (3.0, 20.0)},
    "tread": {"width": (20.0, 150.0), "going": (10.0, 60.0), "nosing": (0.0, 5.0), "nosing_radius": (0.0, 8.0), "bow": (0.0, 9.0)},
    "tower_panel": {"sides": (3, 16), "apothem": (20.0, 150.0), "width": (20.0, 120.0)},
    "curved_wall": {"inner_radius": (20.0, 200.0), "angle": (20.0, 360.0)},
    "battlement": {"width": (80.0, 300.0), "height": (20.0, 150.0), "merlons": (1, 8), "crenel_depth": (5.0, 20.0),
                   "crenel": (5.0, 12.0)},
    "buttress": {"foot": (15.0, 60.0), "head": (0.0, 12.0), "height": (60.0, 200.0), "stages": (1, 4), "slope": (20.0, 70.0)},
    "cross_lap_rib": {"length": (80.0, 300.0), "height": (10.0, 80.0), "slots": (1, 6), "end": (10.0, 30.0), "play": (0.0, 1.0),
                      "mate": (2.0, 10.0)},
    "gable_wall": {"ridge": (90.0, 250.0)},
    "hip_panel": {"eave": (40.0, 300.0), "depth": (40.0, 300.0), "neighbour_pitch": (10.0, 60.0), "overhang": (0.0, 20.0)},
    "valley_panel": {"eave": (30.0, 150.0), "span": (40.0, 150.0), "main_pitch": (10.0, 60.0), "overhang": (0.0, 15.0)},
    "roof_with_valley": {"span": (80.0, 200.0), "length": (100.0, 300.0), "wing_span": (30.0, 90.0), "wing_pitch": (10.0, 45.0),
                         "wing_at": (50.0, 150.0), "overhang": (0.0, 15.0)},
    "dormer_cheek": {"height": (10.0, 60.0), "top_pitch": (0.0, 20.0)},
    "spire_facet": {"sides": (3, 16), "width": (20.0, 80.0), "apothem": (20.0, 80.0), "top_width": (0.0, 20.0)},
    "cone": {"radius": (10.0, 100.0), "height": (10.0, 200.0)},
    "cone_frustum": {"radius": (40.0, 120.0), "top_radius": (10.0, 50.0), "height": (20.0, 200.0)},
    "arch_side": {"span": (50.0, 110.0), "rise": (5.0, 30.0), "spandrel": (12.0, 60.0), "length": (150.0, 400.0),
                  "springing": (0.0, 40.0), "voussoirs": (5, 25), "voussoir_depth": (2.0, 12.0)},
    "soffit_strip": {"span": (150.0, 300.0), "rise": (10.0, 50.0), "width": (10.0, 100.0)},
    "pier": {"length": (10.0, 100.0), "width": (10.0, 60.0), "nose": (0.0, 40.0), "dowel_radius": (0.0, 4.0)},
    "quay_side": {"length": (100.0, 400.0), "height": (40.0, 150.0), "batter": (0.0, 20.0), "coping": (0.0, 15.0),
                  "course": (0.0, 12.0), "rings": (0, 8), "ring_radius": (0.5, 3.0), "ring_drop": (8.0, 30.0)},
    "tube_wrap": {"tube_diameter": (10.0, 150.0), "height": (40.0, 200.0), "cut": (0.0, 50.0), "lap": (0.0, 20.0)},
    "deck": {"width": (30.0, 150.0), "rebate": (0.0, 10.0), "kerb": (0.0, 10.0)},
    "square_tile": {"side": (20.0, 200.0), "fields": (1, 8)},
    "ramp_side": {"run": (40.0, 300.0), "rise": (5.0, 150.0), "toe": (3.0, 10.0)},
    "ramp_deck": {"run": (40.0, 300.0), "rise": (5.0, 150.0)},
    "ruin": {"width": (60.0, 300.0), "height": (60.0, 200.0), "least_height": (5.0, 40.0), "stone_length": (8.0, 25.0),
             "stone_height": (3.0, 15.0)},
    "hill": {"length": (80.0, 300.0), "width": (80.0, 300.0), "exponent": (1.5, 6.0), "inset": (3.0, 25.0),
             "slope": (15.0, 60.0), "lap": (0.0, 15.0)},
}  # fmt: skip
OPENING = {**USUAL, "width": (4.0, 40.0), "height": (10.0, 45.0), "diameter": (2.0, 30.0), "up": (15.0, 60.0), "rise": (1.0, 9.0),
           "depth": (0.5, 4.0)}  # fmt: skip
Ranges = Mapping[str, tuple[float, float]]
Sizes = dict[str, float | str]


def usual(info: ParameterInfo, ranges: Ranges) -> st.SearchStrategy[float | str]:
    if info.kind == "choice":
        return st.sampled_from(info.choices)
    low, high = ranges.get(info.name, (info.least or 0.0, min(info.most or 300.0, 300.0)))
    return st.integers(int(low), int(high)) if info.kind == "count" else st.floats(low, high)


def wild(info: ParameterInfo) -> st.SearchStrategy[float | str]:
    """The ends of the range, beyond them, and what is no number."""
    if info.kind == "choice":
        return st.sampled_from([*info.choices, "other"])
    least, most = info.least or 0.0, info.most if info.most is not None else 1e9
    ends = st.sampled_from([least, most, least - 1.0, most * 2.0, 0.0, -0.0, 1e-9, 2.5, float("nan"), float("inf")])
    return ends | st.floats(least, most)


# sizes of which just one is given: each follows from the other
EITHER = {"tower_panel": ("apothem", "width"), "spire_facet": ("apothem", "width"), "gable_wall": ("pitch", "ridge"),
          "hill": ("inset", "slope")}  # fmt: skip
# sizes that a part without a drawing needs, although a part with one does not
SAID: Mapping[str, tuple[str, ...]] = {"hill": ("length", "width")}


def sizes(info: ShapeInfo, ranges: Ranges = USUAL) -> st.SearchStrategy[Sizes]:
    def filled(
        value: Callable[[ParameterInfo], st.SearchStrategy[float | str]], said: str = "", left_out: str = ""
    ) -> st.SearchStrategy[Sizes]:
        parameters = [p for p in info.parameters if p.name != left_out]
        all_said = (said, *(SAID.get(info.name, ()) if said else ()))
        needed = {p.name: value(p) for p in parameters if p.default is None or p.name in all_said}
        optional = {p.name: value(p) for p in parameters if p.name not in needed}
        return st.fixed_dictionaries(needed, optional=optional)

    one, other = EITHER.get(info.name, ("", ""))
    tame = (filled(lambda p: usual(p, ranges), one, other), filled(lambda p: usual(p, ranges), other, one))
    return st.one_of(*tame, *tame, filled(lambda p: usual(p, ranges) | wild(p)))


def judge(part: Part | None, found: tuple[object, ...], sound: Callable[[Part], None]) -> None:
    assert (part is None) == bool(found)
    assert OWN_FAULT.id not in [getattr(f, "check", "") for f in found]
    if part is None:
        return
    sound(part)
    if part.trace_allowance:
        # the template is the exact erosion: compare with the library's own buffer, whose chords lie a sagitta off
        body, traced = polygon(part.outline), polygon(part.template)
        other = body.buffer(-part.trace_allowance, join_style="mitre", mitre_limit=50.0)
        assert abs(other.area - traced.area) < 0.011 * body.length + 1e-6 * sqrt(body.area)


def middle(info: ParameterInfo, ranges: Ranges) -> float | str:
    """What a designer would write: the middle of the usual."""
    if info.kind == "choice":
        return info.choices[0]
    low, high = ranges.get(info.name, (info.least or 0.0, min(info.most or 300.0, 300.0)))
    return float(int((low + high) / 2)) if info.kind == "count" else (low + high) / 2.0


def corners(info: ShapeInfo, ranges: Ranges) -> Iterator[Sizes]:
    """Sizes as usual, but one: at each end of its range and beyond, nothing, next to nothing, no number; or each of its choices."""
    one, other = EITHER.get(info.name, ("", ""))
    said = (one, *SAID.get(info.name, ()))
    usual_sizes = {p.name: middle(p, ranges) for p in info.parameters if p.default is None or p.name in said}
    yield usual_sizes
    for p in info.parameters:
        others = {name: size for name, size in usual_sizes.items() if (name, p.name) != (one, other)}
        least, most = p.least or 0.0, p.most if p.most is not None else 1e9
        ends = (least, most, least - 1.0, most * 2.0, 0.0, 1e-9, 2.5, float("nan"), float("inf"))
        yield from ({**others, p.name: size} for size in ((*p.choices, "other") if p.kind == "choice" else ends))


@pytest.mark.parametrize("info", shape_infos(), ids=lambda info: info.name)
def test_ends_of_each_size(info: ShapeInfo, plan: Callable[..., PartPlan], sound: Callable[[Part], None]) -> None:
    built = []
    for given_sizes in corners(info, {**USUAL, **USUAL_OF.get(info.name, {})}):
        part, found = make_part(plan(info.name, given_sizes))
        judge(part, found, sound)
        built.append(part is not None)
    assert built[0]  # what is usual is drawn
    assert not all(built)  # and what is out of range is refused


@pytest.mark.search
@pytest.mark.parametrize("info", shape_infos(), ids=lambda info: info.name)
def test_random_sizes(info: ShapeInfo, plan: Callable[..., PartPlan], sound: Callable[[Part], None]) -> None:
    @cases(12, 2000)
    @given(sizes(info, {**USUAL, **USUAL_OF.get(info.name, {})}), st.sampled_from([0.0, 0.3, 0.5, 2.0]))
    def run(given_sizes: dict[str, float | str], allowance: float) -> None:
        part, found = make_part(plan(info.name, given_sizes, trace_allowance=allowance))
        judge(part, found, sound)
        built.append(part is not None)

    built: list[bool] = []
    run()
    assert any(built)  # the examples prove something about parts too, not only about findings
    if len(built) > 1000:
        assert sum(built) > len(built) / 5  # few examples say nothing about a share


@pytest.mark.search
@pytest.mark.parametrize(
    ("shape", "with_sizes", "edges"),
    [
        ("wall_panel", {"width": 140.0, "height": 80.0}, ("bottom", "right", "top", "left")),
        (
            "gable_wall",
            {"span": 110.0, "past": 10.0, "eaves": 80.0, "pitch": 45.0},
            ("bottom", "right", "right_slope", "left_slope", "left"),
        ),
        ("tower_panel", {"sides": 6.0, "width": 110.0, "height": 90.0}, ("bottom", "right", "top", "left")),
        (
            "battlement",
            {"width": 140.0, "height": 90.0, "merlons": 5.0, "crenel_depth": 12.0},
            ("bottom", "right", "left"),
        ),
        ("curved_wall", {"inner_radius": 60.0, "angle": 140.0, "height": 90.0}, ("bottom", "right", "top", "left")),
    ],
)
def test_random_openings_and_joins(
    shape: str,
    with_sizes: dict[str, float | str],
    edges: tuple[str, ...],
    plan: Callable[..., PartPlan],
    sound: Callable[[Part], None],
    opening: Callable[..., OpeningPlan],
    treatment: Callable[..., EdgeTreatment],
    surface: Callable[..., SurfacePlan],
) -> None:
    one_opening = st.one_of(
        *(sizes(info, OPENING).map(lambda s, kind=info.name: (kind, s)) for info in opening_infos())  # type: ignore[misc]
    )
    insets = st.sampled_from([0.0, 0.0, 10.0, 12.5, 300.0])
    row = st.builds(SlotRow, st.integers(1, 3), insets, st.just(5.0), st.floats(0.0, 1.0))
    tabs = st.builds(TabRow, st.integers(1, 5), st.floats(1.0, 12.0))
    tame = (st.sampled_from([0.0, 0.0, 5.0]), st.sampled_from([0.0, 22.5, 45.0]))
    rare = (st.floats(0.0, 90.0), st.floats(-60.0, 90.0))
    one_treatment = st.one_of(
        *(
            st.builds(
                treatment,
                st.sampled_from(edges),
                take_off,
                bevel,
                st.none() | tabs,
                st.lists(row, max_size=1).map(tuple),
                st.lists(st.sampled_from("abc"), max_size=2).map(tuple),
            )
            for take_off, bevel in (tame, tame, tame, rare)
        )
    )

    @cases(20, 3000)
    @given(
        st.lists(one_opening, max_size=2),
        st.lists(one_treatment, max_size=3, unique_by=lambda t: t.edge),
        st.sampled_from([0.0, 0.4, 1.0]),
    )
    def run(openings: list[tuple[str, dict[str, float | str]]], joins: list[EdgeTreatment], allowance: float) -> None:
        part, found = make_part(
            plan(
                shape,
                with_sizes,
                tuple(opening(f"o{i}", kind, **s) for i, (kind, s) in enumerate(openings)),
                tuple(joins),
                surface("brick", length=18.0, height=6.0),
                trace_allowance=allowance,
            )
        )
        judge(part, found, sound)
        built.append(part is not None)

    built: list[bool] = []
    run()
    assert sum(built) > len(built) / 5
