"""Half templates: which pieces have one, that both halves are the whole, and which marks stand on the half."""

from collections.abc import Callable
from dataclasses import replace

import pytest
import shapely

from publisher.basics import LineKind, Purpose, polyline
from publisher.design import PartPlan
from publisher.geometry import Mark, Part, half_marks, polygon
from publisher.geometry.cutting.halves import FLIP, halved, with_halves

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
ALIKE = [
    ("disc", {"radius": 80.0}),
    ("ring", {"radius": 80.0, "hole_radius": 55.0}),
    ("regular_polygon", {"sides": 7.0, "radius": 60.0}),
    ("regular_polygon", {"sides": 8.0, "radius": 60.0}),
    ("pier", {"length": 120.0, "width": 60.0, "nose": 24.0}),
    ("wall_panel", {"width": 140.0, "height": 80.0}),
    ("gable_wall", {"span": 110.0, "past": 10.0, "eaves": 80.0, "pitch": 40.0}),
]


def asked(plan: PartPlan) -> PartPlan:
    return replace(plan, printed="half")


@pytest.mark.keeps("geometry/no-half")
@pytest.mark.parametrize(("shape", "sizes"), ALIKE, ids=lambda one: one if isinstance(one, str) else "")
@pytest.mark.parametrize("allowance", [0.0, 0.4])
def test_half_and_its_mirror_image_are_the_whole(
    plan: Plan, drawn: Draw, shape: str, sizes: dict[str, float], allowance: float
) -> None:
    part = drawn(asked(plan(shape, sizes, trace_allowance=allowance)))
    (piece,), found = with_halves([part])
    assert not found and piece.half is not None and piece.outline == part.outline
    assert piece.half.whole == part.template, "cut list, layout and cut files know the whole piece"
    half, whole = polygon(piece.template), polygon(part.template)
    (x, y), (far, high) = piece.half.line
    twice, sign = ((2.0 * x, 0.0), (-1.0, 1.0)) if abs(x - far) < 1e-9 else ((0.0, 2.0 * y), (1.0, -1.0))
    other = shapely.transform(half, lambda points: points * sign + twice)
    assert half.area == pytest.approx(whole.area / 2.0, rel=1e-4)
    both = shapely.union_all([half, other], grid_size=1e-3)
    assert shapely.hausdorff_distance(both.boundary, whole.boundary, densify=0.1) < 0.01
    assert high >= y


def test_a_half_of_arcs_keeps_its_arcs(plan: Plan, drawn: Draw) -> None:
    piece = halved(drawn(asked(plan("disc", {"radius": 80.0}))))
    assert isinstance(piece, Part)
    radii = {round(edge.radius, 6) for edge in piece.template.outer.edges if hasattr(edge, "radius")}
    assert radii == {80.0}


def test_the_longer_side_is_halved(plan: Plan, drawn: Draw) -> None:
    for sizes in ({"width": 140.0, "height": 80.0}, {"width": 80.0, "height": 140.0}):
        piece = halved(drawn(asked(plan("wall_panel", sizes))))
        assert isinstance(piece, Part)
        left, bottom, right, top = polygon(piece.template).bounds
        assert sorted((right - left, top - bottom)) == pytest.approx([70.0, 80.0])


def test_marks_of_the_other_half_are_left_out(plan: Plan, drawn: Draw) -> None:
    part = drawn(asked(plan("wall_panel", {"width": 140.0, "height": 80.0})))
    lines = [((20.0, 10.0), (20.0, 70.0)), ((120.0, 10.0), (120.0, 70.0)), ((10.0, 40.0), (130.0, 40.0))]
    marks = tuple(Mark(LineKind.DRAW, Purpose.SURFACE, polyline(line), name="joint") for line in lines)
    piece = halved(replace(part, marks=marks))
    assert isinstance(piece, Part)
    first, crossing, words = half_marks(piece)
    assert first.path.points == lines[0]
    assert crossing.path.box.width == pytest.approx(60.0), "a line right across is cut at the middle"
    assert words.text == FLIP and words.path.points[0] == pytest.approx((70.0, 40.0))
    assert half_marks(part) == part.marks


@pytest.mark.breaks("geometry/no-half")
@pytest.mark.parametrize(
    ("shape", "sizes", "mark", "why"),
    [
        ("spiral_stair_layer", {"core_radius": 30, "reach": 92, "step_angle": 40, "turn": 20, "notch": 4, "joints": 27},
         None, "its outline or an opening differs"),
        ("wall_panel", {"width": 140.0, "height": 80.0}, ((20.0, 10.0), (20.0, 69.0)), "“joint” on it differs"),
    ],
)  # fmt: skip
def test_what_differs_has_no_half(
    plan: Plan,
    drawn: Draw,
    shape: str,
    sizes: dict[str, float],
    mark: tuple[tuple[float, float], ...] | None,
    why: str,
) -> None:
    part = drawn(asked(plan(shape, {name: float(value) for name, value in sizes.items()})))
    if mark:
        part = replace(part, marks=(Mark(LineKind.DRAW, Purpose.SURFACE, polyline(mark), name="joint"),))
    (piece,), (finding,) = with_halves([part])
    assert (piece, finding.check, finding.place) == (part, "geometry/no-half", part.place)
    assert why in finding.message


def test_an_opening_off_the_middle_has_no_half_the_other_way(
    plan: Plan, drawn: Draw, opening: Callable[..., object]
) -> None:
    """A window that is off the middle of a wall but half way up is flipped over along the level line."""
    window = opening("w", "window", head="square", width=20.0, height=20.0, centre=30.0, sill=30.0)
    piece = halved(drawn(asked(plan("wall_panel", {"width": 140.0, "height": 80.0}, (window,)))))
    assert isinstance(piece, Part) and piece.half is not None
    assert piece.half.line == ((0.0, 40.0), (140.0, 40.0))
    assert not piece.template.holes, "the opening is a notch in the half's straight side"
