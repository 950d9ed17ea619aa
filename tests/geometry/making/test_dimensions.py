"""Lengths that check a cut piece are those of the drawn part, and a few."""

from math import dist, hypot
from typing import Any

import pytest
import shapely

from publisher.design import TabRow
from publisher.geometry import Part, dimensions_of, polygon
from publisher.geometry.making.parts import make_part
from tests.geometry.conftest import make_opening, make_plan, make_treatment

ARCH: dict[str, Any] = {
    "form": "segmental",
    "span": 160.0,
    "rise": 45.0,
    "springing": 15.0,
    "spandrel": 15.0,
    "length": 280.0,
}


def make(shape: str, sizes: dict[str, float | str], **more: Any) -> Part:
    part, found = make_part(make_plan(shape, sizes, **more))
    assert part is not None and not found
    return part


def said(part: Part) -> list[tuple[str, list[float]]]:
    return [(one.words, [round(length, 3) for length in one.lengths]) for one in dimensions_of(part)]


def test_a_rectangle_is_checked_by_its_box() -> None:
    assert said(make("rectangle", {"width": 90.0, "height": 60.0})) == []


def test_between_tabs_a_panel_is_measured_across_its_body() -> None:
    tabs = TabRow(2, 5.0)
    rows = (make_treatment("left", tabs=tabs), make_treatment("right", tabs=tabs))
    panel = make("rectangle", {"width": 90.0, "height": 60.0}, treatments=rows)
    (across,) = dimensions_of(panel)
    assert across.lengths == pytest.approx((90.0,)) and polygon(panel.outline).bounds[2] > 94.0
    ring = polygon(panel.outline).exterior
    assert across.lines and all(ring.distance(shapely.Point(at)) < 1e-6 for line in across.lines for at in line)


def test_a_hole_lies_so_far_from_two_edges() -> None:
    holes = (make_opening("port", "round_hole", diameter=12.0, centre=60.0, up=40.0),)
    part = make("wall_panel", {"width": 90.0, "height": 60.0}, openings=holes)
    assert said(part) == [("{} to the hole’s middle", [20.0]), ("{} to the hole’s middle", [30.0])]
    assert all(line[1] == pytest.approx((60.0, 40.0)) for one in dimensions_of(part) for line in one.lines)


@pytest.mark.parametrize("stones", [0, 21])
def test_an_arch_is_drawn_by_its_depth_radius_and_centre(stones: int) -> None:
    part = make("arch_side", {**ARCH, "voussoirs": float(stones), "voussoir_depth": 14.0}, trace_allowance=0.4)
    depth, arch = dimensions_of(part)
    half, rise = ARCH["span"] / 2.0, ARCH["rise"]
    radius = (half**2 + rise**2) / (2.0 * rise)  # chord and height of a segment
    assert arch.lengths == pytest.approx((radius, radius - rise)) and not arch.lines
    assert arch.words == "arch: radius {}, centre {} below the arch’s ends"
    assert depth.lengths == pytest.approx((14.0,)) and depth.words == "arch stones {} high"
    centre = (140.0, 15.0 + rise - radius)
    for start, end in depth.lines:
        assert dist(start, centre) == pytest.approx(radius) and dist(start, end) == pytest.approx(14.0)
        (ax, ay), (bx, by) = ((x - centre[0], y - centre[1]) for x, y in (start, end))
        assert abs(ax * by - ay * bx) < 1e-6 * hypot(ax, ay) * hypot(bx, by)
    if stones:  # none lies on a joint
        joints = [shapely.LineString(m.path.points) for m in part.marks if m.name == "voussoir joint"]
        assert len(depth.lines) == stones
        assert all(shapely.LineString(line).distance(joint) > 1.0 for line in depth.lines for joint in joints)


@pytest.mark.parametrize(
    ("form", "rise", "words"),
    [
        ("semicircular", 80.0, ["arch: radius {}, centre level with the arch’s ends"]),
        ("pointed", 120.0, ["arch: radius {}, centre level with the arch’s ends, {} from the middle"]),
        (
            "three_centred",
            50.0,
            [
                "arch: radius {}, centre level with the arch’s ends, {} from the middle",
                "arch: radius {}, centre {} below the arch’s ends",
            ],
        ),
    ],
)
def test_each_form_says_all_its_centres(form: str, rise: float, words: list[str]) -> None:
    part = make("arch_side", {**ARCH, "form": form, "rise": rise, "voussoir_depth": 14.0})
    arcs = [one for one in dimensions_of(part) if not one.lines]
    assert [one.words for one in arcs] == words
    for one in arcs:  # the crown, or a springing, lies on the circle that is said
        radius, *place = one.lengths
        below = place[0] if "below" in one.words else 0.0
        aside = place[-1] if "middle" in one.words else 0.0
        at = (0.0, rise) if not aside or form == "pointed" else (80.0, 0.0)
        assert hypot(at[0] - aside, at[1] + below) == pytest.approx(radius)


def test_an_arch_without_stones_says_nothing() -> None:
    assert said(make("arch_side", ARCH)) == []
