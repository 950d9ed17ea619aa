"""Pieces without a template: what is measured out of them, and which pieces need a template all the same."""

from collections.abc import Callable
from dataclasses import replace
from random import Random

import pytest
import shapely

from publisher.basics import EdgePromise, HolePromise, LineKind, Purpose, polyline
from publisher.design import PartPlan
from publisher.geometry import Mark, Part, polygon, sizes_of
from publisher.geometry.cutting.by_sizes import by_sizes, hindrance

Plan = Callable[..., PartPlan]


def measured(plan: PartPlan) -> PartPlan:
    return replace(plan, printed="sizes")


Draw = Callable[[PartPlan], Part]
WALL = {"width": 140.0, "height": 80.0}


@pytest.mark.keeps("geometry/not-by-sizes")
def test_a_wall_with_openings_is_measured_from_its_lower_left_corner(
    plan: Plan, drawn: Draw, opening: Callable[..., object]
) -> None:
    window = opening("w", "window", head="square", width=20.0, height=25.0, centre=30.0, sill=30.0)
    vent = opening("v", "round_hole", diameter=6.0, centre=60.0, up=68.0)
    part = drawn(measured(plan("wall_panel", WALL, (window, vent))))
    sizes = sizes_of(part)
    assert (sizes.key, sizes.width, sizes.height) == ("sizes:p", 140.0, 80.0)
    assert sizes.holes == (
        HolePromise(pytest.approx(20.0), pytest.approx(30.0), pytest.approx(20.0), pytest.approx(25.0), False),
        HolePromise(pytest.approx(60.0), pytest.approx(68.0), pytest.approx(6.0), pytest.approx(6.0), True),
    )
    assert (sizes.lines, sizes.edges) == ((), ())
    assert part.turning == "quarter", "askew it would be marked out by corners of a template"
    assert not list(by_sizes([part], ["p"]))


@pytest.mark.parametrize("seed", range(12))
def test_whoever_draws_by_the_sizes_has_the_piece(
    plan: Plan, drawn: Draw, opening: Callable[..., object], seed: int
) -> None:
    """The piece built up again from nothing but its promise is the finished piece, wherever its openings lie."""
    random = Random(seed)
    wide, high = random.uniform(150.0, 400.0), random.uniform(60.0, 120.0)
    slots = random.sample(range(1, 6), random.randint(1, 4))
    doors = [
        opening(f"o{n}", "window", head="square", width=random.uniform(6.0, 14.0), height=random.uniform(8.0, 30.0),
                centre=wide * n / 6.0, sill=random.uniform(8.0, 20.0))
        for n in slots
    ]  # fmt: skip
    part = drawn(measured(plan("wall_panel", {"width": wide, "height": high}, tuple(doors))))
    sizes = sizes_of(part)
    left, bottom, _, _ = polygon(part.outline).bounds
    drawn_again = shapely.box(left, bottom, left + sizes.width, bottom + sizes.height)
    for hole in sizes.holes:
        x, y = left + hole.left, bottom + hole.up
        drawn_again = drawn_again.difference(shapely.box(x, y, x + hole.width, y + hole.height))
    assert drawn_again.symmetric_difference(polygon(part.outline)).area < 1e-6


def test_bevels_rabbets_and_lines_right_across_are_said(
    plan: Plan, drawn: Draw, treatment: Callable[..., object]
) -> None:
    part = drawn(measured(plan("wall_panel", WALL, treatments=(treatment("right", 0.0, bevel=45.0),))))
    line = Mark(LineKind.REFERENCE, Purpose.LAP, polyline(((40.0, 0.2), (40.0, 79.8))), name="seam", text="seam")
    sizes = sizes_of(replace(part, marks=(*part.marks, line)))
    assert sizes.edges == (EdgePromise("right", 45.0, 0.0),)
    assert sizes.lines == ((False, pytest.approx(40.0)),)


def bent(part: Part) -> Part:
    return replace(
        part, marks=(*part.marks, Mark(LineKind.GLUE, Purpose.LAP, polyline(((9.0, 9.0), (20.0, 30.0))), "seat"))
    )


@pytest.mark.breaks("geometry/not-by-sizes")
@pytest.mark.parametrize(
    ("shape", "sizes", "spoil", "why"),
    [
        ("disc", {"radius": 40.0}, None, "no upright rectangle"),
        ("wall_panel", WALL, bent, "lines or letters that are copied from a template: seat"),
        ("wall_panel", WALL, lambda p: replace(p, folded=("a", "b")), "folded"),
        ("regular_polygon", {"sides": 6.0, "radius": 40.0}, None, "no upright rectangle"),
    ],
)
def test_what_a_rule_does_not_mark_out_needs_a_template(
    plan: Plan, drawn: Draw, shape: str, sizes: dict[str, float], spoil: Callable[[Part], Part] | None, why: str
) -> None:
    part = drawn(measured(plan(shape, sizes)))
    part = spoil(part) if spoil else part
    (finding,) = by_sizes([part], ["a"])
    assert (finding.check, finding.place) == ("geometry/not-by-sizes", part.place)
    assert why in finding.message and why in hindrance(part)
    with pytest.raises(ValueError, match=r"template|rectangle|folded"):
        sizes_of(part)


@pytest.mark.parametrize("kind", list(LineKind))
def test_only_lines_to_draw_or_to_look_at_are_said(plan: Plan, drawn: Draw, kind: LineKind) -> None:
    """A line that is scored, folded, glued or cut along would be drawn in ink: such a piece needs its template."""
    part = drawn(measured(plan("wall_panel", WALL)))
    line = Mark(kind, Purpose.SURFACE, polyline(((20.0, 0.0), (20.0, 80.0))), name="seam")
    hinders = hindrance(replace(part, marks=(*part.marks, line)))
    assert bool(hinders) is (kind not in (LineKind.DRAW, LineKind.REFERENCE)), hinders


def test_letters_of_joins_need_a_template(plan: Plan, drawn: Draw) -> None:
    part = drawn(measured(plan("wall_panel", WALL)))
    letter = Mark(LineKind.REFERENCE, Purpose.MATCH, polyline(((5.0, 40.0),)), name="left", text="a")
    assert "letters that are copied" in hindrance(replace(part, marks=(*part.marks, letter)))


def test_a_line_off_the_middle_has_two_hands(plan: Plan, drawn: Draw) -> None:
    part = drawn(measured(replace(plan("wall_panel", WALL), count=2, mirrored=1)))
    line = Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((20.0, 0.0), (20.0, 80.0))), name="seam")
    assert "mirror images" in hindrance(replace(part, marks=(*part.marks, line)))
    assert not hindrance(part)


def test_a_round_headed_opening_and_mirrored_copies_need_one(
    plan: Plan, drawn: Draw, opening: Callable[..., object]
) -> None:
    arch = opening("w", "window", head="round", width=20.0, height=25.0, centre=30.0, sill=30.0)
    assert "neither an upright rectangle nor round" in hindrance(drawn(measured(plan("wall_panel", WALL, (arch,)))))
    square = opening("w", "window", head="square", width=20.0, height=25.0, centre=30.0, sill=30.0)
    assert "mirror images" in hindrance(
        drawn(measured(replace(plan("wall_panel", WALL, (square,)), count=2, mirrored=1)))
    )
    assert not hindrance(drawn(measured(replace(plan("wall_panel", WALL), count=2, mirrored=1)))), (
        "a plain one is its own mirror image"
    )
