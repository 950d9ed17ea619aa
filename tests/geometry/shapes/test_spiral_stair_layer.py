"""The spiral stair's layer against closed forms."""

from collections.abc import Callable
from math import atan2, cos, degrees, dist, hypot, pi, radians, sin

import pytest

from publisher.basics import Arc, Finding, Point, Purpose, polar
from publisher.design import PartPlan
from publisher.geometry import Part, area, path_length
from publisher.geometry.shapes.spiral_stair_outline import notch_width_deg

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
DEMO: dict[str, float | str] = {"core_radius": 30.0, "reach": 92.0, "step_angle": 40.0, "turn": 20.0}


def angle_of(point: Point) -> float:
    return degrees(atan2(point[1], point[0]))


def run(part: Part, name: str) -> list[tuple[Point, ...]]:
    return [r.points for r in part.outline.outer.stretches() if r.name == name]


@pytest.mark.parametrize("turn", [20.0, -20.0])
@pytest.mark.parametrize(("core", "reach", "step"), [(30.0, 92.0, 40.0), (10.0, 50.0, 60.0), (55.0, 60.0, 300.0)])
def test_area_and_outline_length(plan: Plan, drawn: Draw, core: float, reach: float, step: float, turn: float) -> None:
    sizes = {"core_radius": core, "reach": reach, "step_angle": step, "turn": turn}
    part = drawn(plan("spiral_stair_layer", sizes))
    # disc plus sector of a ring: πr² + σ/360·π(R² − r²)
    assert area(part.outline) == pytest.approx(pi * core**2 + step / 360.0 * pi * (reach**2 - core**2), rel=1e-12)
    arcs = radians(step) * reach + radians(360.0 - step) * core
    assert path_length(part.outline) == pytest.approx(2.0 * (reach - core) + arcs, rel=1e-12)


def test_the_notch_stands_on_the_next_front_edge_and_takes_a_known_area(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("spiral_stair_layer", {**DEMO, "notch": 4.0}))
    (corner, tip, on_line) = run(part, "notch")[0]
    assert angle_of(tip) == pytest.approx(20.0) and angle_of(on_line) == pytest.approx(20.0)
    assert hypot(*tip) == pytest.approx(88.0) and hypot(*on_line) == pytest.approx(92.0)
    assert hypot(*corner) == pytest.approx(92.0) and angle_of(corner) < 20.0  # on the tread that stays bare
    along = atan2(corner[1] - tip[1], corner[0] - tip[0])
    assert degrees(along) == pytest.approx(20.0 - 45.0)  # the slanting side leaves the radial line at 45°
    width = radians(notch_width_deg(92.0, 4.0))
    taken = 92.0**2 * width / 2.0 - 92.0 * 88.0 * sin(width) / 2.0  # sector less the triangle axis-tip-corner
    whole = pi * 30.0**2 + 40.0 / 360.0 * pi * (92.0**2 - 30.0**2)
    assert area(part.outline) == pytest.approx(whole - taken, rel=1e-12)


def test_a_turned_copy_has_its_front_edge_in_the_notch(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("spiral_stair_layer", {**DEMO, "notch": 4.0}))
    front = part.edge("front")
    assert front is not None
    turned = tuple(polar(hypot(*p), atan2(p[1], p[0]) + radians(20.0)) for p in (front.start, front.end))
    (_, tip, on_line) = run(part, "notch")[0]
    for point in (tip, on_line):
        along = dist(turned[0], point) + dist(point, turned[1])
        assert along == pytest.approx(dist(*turned), abs=1e-9)


def test_the_notch_survives_tracing(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("spiral_stair_layer", {**DEMO, "notch": 4.0}, trace_allowance=0.4))
    names = [r.name for r in part.template.outer.stretches()]
    assert names == ["front", "step_end", "notch", "step_end", "back", "core"]
    assert {round(r.radius, 9) for r in part.template.outer.edges if isinstance(r, Arc)} == {91.6, 29.6}


def test_a_negative_turn_is_the_mirror_image(plan: Plan, drawn: Draw) -> None:
    sizes = {**DEMO, "notch": 4.0, "joints": 27}
    up, down = drawn(plan("spiral_stair_layer", sizes)), drawn(plan("spiral_stair_layer", {**sizes, "turn": -20.0}))
    mirrored = {(round(x, 9), round(-y, 9) + 0.0) for x, y in up.outline.outer.points}
    assert {(round(x, 9), round(y, 9) + 0.0) for x, y in down.outline.outer.points} == mirrored
    climb = next(m for m in down.marks if m.purpose is Purpose.CLIMB)
    assert angle_of(climb.path.points[0]) > angle_of(climb.path.points[3])
    front = down.edge("front")
    assert front is not None and front.end == (30.0, 0.0) and front.start == (92.0, 0.0)


def test_edges(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("spiral_stair_layer", {**DEMO, "notch": 4.0}))
    assert [e.name for e in part.edges] == ["front", "step_end", "back", "core"]
    front, end, back, core = part.edges
    assert (front.start, front.end, front.centre) == ((30.0, 0.0), (92.0, 0.0), None)
    assert (end.start, end.radius, core.radius) == ((92.0, 0.0), 92.0, 30.0)
    assert angle_of(end.end) == pytest.approx(40.0) and angle_of(back.end) == pytest.approx(40.0)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"core_radius": 95.0}, "the core (radius 95 mm) leaves no step inside the reach (92 mm)"),
        ({"notch": 0.5}, "a notch 0.5 mm deep cannot be found on the cut layer"),
        ({"notch": 60.0}, "a notch 60 mm deep cuts through a step that is 62 mm long"),
        ({"notch": 4.0, "turn": 40.0}, "it does not fit on the step's outer arc"),
        ({"notch": 4.0, "turn": 1.0}, "it does not fit on the step's outer arc"),
        ({"notch": 4.0, "turn": 0.0}, "there is no next front edge to mark"),
        ({"joints": 400}, "400 joints round a core of radius 30 mm stand 0.471 mm apart"),
        ({"step_angle": 360.0}, "step_angle of shape spiral_stair_layer is 360°; it must be at most 350°"),
    ],
)
def test_impossible_sizes(plan: Plan, refused: Refuse, change: dict[str, float], words: str) -> None:
    (finding,) = refused(plan("spiral_stair_layer", {**DEMO, **change}))
    assert words in finding.message
    assert finding.check in ("geometry/impossible-sizes", "geometry/size-out-of-range")


@pytest.mark.parametrize("edge_of_range", [0.0, 1.0])
def test_the_hinted_turns_can_be_built(plan: Plan, refused: Refuse, drawn: Draw, edge_of_range: float) -> None:
    (finding,) = refused(plan("spiral_stair_layer", {**DEMO, "notch": 4.0, "turn": 1.0 if not edge_of_range else 39.9}))
    assert finding.limit is not None
    drawn(plan("spiral_stair_layer", {**DEMO, "notch": 4.0, "turn": finding.limit}))


@pytest.mark.parametrize(("sides", "step"), [(3, 60.0), (6, 60.0), (6, 45.0), (8, 90.0), (12, 40.0)])
def test_a_many_sided_core(plan: Plan, drawn: Draw, sides: int, step: float) -> None:
    sizes: dict[str, float | str] = {**DEMO, "core_radius": 30.0, "step_angle": step, "core_sides": float(sides)}
    part = drawn(plan("spiral_stair_layer", sizes))
    # the polygon's part under the step: whole triangles, and a rest cut off by the back edge
    each = 2.0 * pi / sides
    whole, rest = divmod(radians(step), each)
    triangle = 30.0**2 / 2.0 * sin(each)
    back = 30.0 * cos(each / 2.0) / cos(rest - each / 2.0)
    under = whole * triangle + 30.0 * back / 2.0 * sin(rest)
    expected = sides * triangle - under + step / 360.0 * pi * 92.0**2
    assert area(part.outline) == pytest.approx(expected, rel=1e-12)
    cores = [e for e in part.edges if e.name.startswith("core_")]
    assert all(e.centre is None for e in cores) and cores[-1].end == (30.0, 0.0)
    full = [e for e in cores if e.nominal_length == pytest.approx(60.0 * sin(pi / sides))]
    assert len(full) == sides - (int(whole) if rest < 1e-9 else int(whole) + 1)


def test_a_straight_end_is_the_chord(plan: Plan, drawn: Draw) -> None:
    part = drawn(plan("spiral_stair_layer", {**DEMO, "step_end": "straight"}))
    whole = pi * 30.0**2 * 320.0 / 360.0 + 92.0**2 / 2.0 * sin(radians(40.0))
    assert area(part.outline) == pytest.approx(whole, rel=1e-12)
    end = part.edge("step_end")
    assert end is not None and end.centre is None
    # chord of n equal divisions, Machinery's Handbook, 31st ed., p. 82: S/R of 9 sides 0.6840
    assert end.nominal_length / 92.0 == pytest.approx(0.6840, abs=5e-5)


@pytest.mark.parametrize("turn", [20.0, 15.0, -20.0])
def test_the_notch_of_a_straight_end(plan: Plan, drawn: Draw, turn: float) -> None:
    plain, notched = (
        drawn(plan("spiral_stair_layer", {**DEMO, "turn": turn, "step_end": "straight", "notch": depth}))
        for depth in (0.0, 4.0)
    )
    points = sorted(run(notched, "notch")[0], key=lambda p: hypot(*p))
    tip, others = points[0], points[1:]
    on_line = next(p for p in others if angle_of(p) == pytest.approx(turn))
    corner = next(p for p in others if p != on_line)
    assert angle_of(tip) == pytest.approx(turn)
    assert dist(tip, on_line) == pytest.approx(4.0)
    # the triangle of the notch: 45° at the tip, two sides known
    assert area(plain.outline) - area(notched.outline) == pytest.approx(
        4.0 * dist(tip, corner) * sin(radians(45.0)) / 2.0, rel=1e-9
    )
    assert abs(angle_of(corner)) < abs(turn)  # on the tread that stays bare


def test_a_dowel_hole(plan: Plan, drawn: Draw) -> None:
    plain, bored = (
        drawn(plan("spiral_stair_layer", {**DEMO, "joints": 27.0} | ({"hole_radius": 3.0} if hole else {})))
        for hole in (False, True)
    )
    assert area(plain.outline) - area(bored.outline) == pytest.approx(pi * 9.0, rel=1e-9)
    assert [r.name for r in bored.outline.holes[0].edges] == ["bore", "bore"]
    assert plain.outline.outer == bored.outline.outer
