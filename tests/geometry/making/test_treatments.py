"""Edges of panels after their joins: lengths that follow from the board, to a hundredth of a millimetre."""

from collections.abc import Callable
from math import dist, radians, tan

import pytest

from publisher.basics import Finding, Point, Purpose
from publisher.design import EdgeTreatment, OpeningPlan, PartPlan, SlotRow, TabRow
from publisher.geometry import Part, area, polygon

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Treat = Callable[..., EdgeTreatment]
WALL: dict[str, float | str] = {"width": 140.0, "height": 80.0}
GABLE: dict[str, float | str] = {"span": 110.0, "past": 10.0, "eaves": 80.0, "pitch": 45.0}


def tips(part: Part, name: str) -> list[tuple[Point, Point]]:
    """Both outer corners of each tab or notch of a run."""
    found = [run.points for run in part.outline.outer.stretches() if run.name == name]
    return [(points[1], points[2]) for points in found]


def test_a_butted_wall_is_shorter_by_the_board(plan: Plan, drawn: Draw, treatment: Treat) -> None:
    part = drawn(plan("wall_panel", WALL, (), (treatment("right", 5.0), treatment("left", 4.8))))
    assert polygon(part.outline).bounds == pytest.approx((4.8, 0.0, 135.0, 80.0))
    bottom = part.edge("bottom")
    assert bottom is not None
    assert dist(bottom.start, bottom.end) == pytest.approx(130.2) and bottom.nominal_length == 140.0


@pytest.mark.parametrize(("board", "count"), [(5.0, 2), (4.7625, 3), (3.0, 1)])
def test_tabs_reach_back_to_the_stated_width(
    plan: Plan, drawn: Draw, treatment: Treat, board: float, count: int
) -> None:
    part = drawn(plan("wall_panel", WALL, (), (treatment("right", board, tabs=TabRow(count, board)),)))
    assert polygon(part.outline).bounds == pytest.approx((0.0, 0.0, 140.0, 80.0))
    assert area(part.outline) == pytest.approx(140.0 * 80.0 - 80.0 * board / 2.0)  # tabs fill half of what was taken
    for i, (a, b) in enumerate(tips(part, "right.tab")):
        assert (a[0], b[0]) == pytest.approx((140.0, 140.0))
        assert (a[1] + b[1]) / 2.0 == pytest.approx((i + 0.5) / count * 80.0)
        assert dist(a, b) == pytest.approx(80.0 / (2.0 * count))
    edge = part.edge("right")
    assert edge is not None and edge.start == pytest.approx((140.0 - board, 0.0))


@pytest.mark.parametrize(("board", "play", "width"), [(5.0, 0.3, 5.3), (4.7625, 0.3, 5.0625)])
def test_slots_take_the_other_board_and_lie_on_the_joint_line(
    plan: Plan, drawn: Draw, treatment: Treat, board: float, play: float, width: float
) -> None:
    rows = (SlotRow(2, 10.0, board, play),)
    part = drawn(plan("gable_wall", GABLE, (), (treatment("right", slots=rows), treatment("left", slots=rows))))
    assert len(part.outline.holes) == 4
    boxes = sorted(polygon_box(hole.points) for hole in part.outline.holes)
    left, right = boxes[:2], boxes[2:]
    for i, (x0, y0, x1, y1) in enumerate(left):
        assert (x0, x1) == pytest.approx((10.0 - play / 2.0, 10.0 + board + play / 2.0))
        assert x1 - x0 == pytest.approx(width)
        # the joint line is 80 long: from the ground to the slope over the long wall's outside face
        assert (y0 + y1) / 2.0 == pytest.approx((i + 0.5) / 2.0 * 80.0) and y1 - y0 == pytest.approx(20.0 + play)
    assert right[0][2] == pytest.approx(120.0 + play / 2.0)


def polygon_box(points: tuple[Point, ...]) -> tuple[float, float, float, float]:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)


def test_tab_and_slot_meet(plan: Plan, drawn: Draw, treatment: Treat) -> None:
    """The side wall's tabs, laid on the gable's joint line, go into the slots with half the play on every side."""
    side = drawn(plan("wall_panel", WALL, (), (treatment("left", 5.0, tabs=TabRow(2, 5.0)),)))
    gable = drawn(plan("gable_wall", GABLE, (), (treatment("right", slots=(SlotRow(2, 10.0, 5.0, 0.3),)),)))
    heights = sorted(tuple(sorted((a[1], b[1]))) for a, b in tips(side, "left.tab"))
    slots = sorted(polygon_box(hole.points)[1::2] for hole in gable.outline.holes)
    for (low, high), (slot_low, slot_high) in zip(heights, slots, strict=True):
        assert low - slot_low == pytest.approx(0.15) and slot_high - high == pytest.approx(0.15)


def test_inset_nothing_makes_open_notches(plan: Plan, drawn: Draw, treatment: Treat) -> None:
    part = drawn(plan("wall_panel", WALL, (), (treatment("right", slots=(SlotRow(2, 0.0, 5.0, 0.4),)),)))
    assert not part.outline.holes
    for i, (a, b) in enumerate(tips(part, "right.slot")):
        assert 140.0 - a[0] == pytest.approx(5.2) and dist(a, b) == pytest.approx(20.4)
        assert (a[1] + b[1]) / 2.0 == pytest.approx((i + 0.5) / 2.0 * 80.0)


def test_a_bevel_changes_only_what_is_measured_on_the_inside(plan: Plan, drawn: Draw, treatment: Treat) -> None:
    part = drawn(plan("wall_panel", WALL, (), (treatment("right", bevel=22.5, matches=("a",)),)))
    assert polygon(part.outline).bounds == (0.0, 0.0, 140.0, 80.0)
    words = [m for m in part.marks if m.purpose is Purpose.BEVEL]
    assert words[0].text.startswith("22.5°") and len(words[0].path.points) == 1
    far_face = words[1].path.points
    assert far_face[0][0] == pytest.approx(140.0 - 5.0 * tan(radians(22.5)))
    roof = {"span": 130.0, "length": 140.0, "pitch": 30.0, "overhang": 0.0, "verge": 0.0}
    plain = drawn(plan("roof_panel", roof))
    mitred = drawn(plan("roof_panel", roof, (), (treatment("ridge", bevel=30.0),)))
    longer = polygon(mitred.outline).bounds[3] - polygon(plain.outline).bounds[3]
    assert longer == pytest.approx(5.0 * tan(radians(30.0)))


def test_edges_carry_their_letters(plan: Plan, drawn: Draw, treatment: Treat) -> None:
    part = drawn(plan("wall_panel", WALL, (), (treatment("right", 5.0, matches=("a", "b")),)))
    edge = part.edge("right")
    assert edge is not None and edge.matches == ("a", "b")
    assert [m.text for m in part.marks if m.purpose is Purpose.MATCH] == ["a", "b"]


@pytest.mark.parametrize(
    ("edge", "check", "words", "hint"),
    [
        ("rigth", "geometry/unknown-edge", "has no edge “rigth”", "did you mean “right”?"),
        ("ridge", "geometry/unknown-edge", "(wall_panel) has no edge “ridge”", "bottom, right, top, left"),
    ],
)
def test_an_unknown_edge(
    plan: Plan, refused: Refuse, treatment: Treat, edge: str, check: str, words: str, hint: str
) -> None:
    (finding,) = refused(plan("wall_panel", WALL, (), (treatment(edge, 5.0),)))
    assert finding.check == check and words in finding.message and hint in finding.hint
    assert finding.place is not None and finding.place.line == 60


def test_joins_need_a_straight_edge(plan: Plan, refused: Refuse, treatment: Treat) -> None:
    (finding,) = refused(plan("disc", {"radius": 50.0}, (), (treatment("rim", 5.0),)))
    assert finding.check == "geometry/edge-not-straight"


def test_a_take_off_that_eats_the_panel(plan: Plan, refused: Refuse, treatment: Treat) -> None:
    (finding,) = refused(
        plan("wall_panel", {"width": 9.0, "height": 80.0}, (), tuple(treatment(e, 5.0) for e in ("left", "right")))
    )
    assert finding.check == "geometry/edge-lost" and "take off more than it has" in finding.message
    (finding,) = refused(plan("wall_panel", WALL, (), (treatment("right", bevel=89.0),)))
    assert finding.check == "geometry/edge-lost" and "89°" in finding.message


def test_tabs_keep_a_wall_to_what_a_neighbour_takes_off(plan: Plan, drawn: Draw, treatment: Treat) -> None:
    tabs = treatment("right", 5.0, tabs=TabRow(2, 5.0))
    part = drawn(plan("wall_panel", {"width": 140.0, "height": 40.0}, (), (tabs, treatment("top", 6.0))))
    heights = [(a[1], b[1]) for a, b in tips(part, "right.tab")]
    # the lower end stays where it is stated, 40/8 up; the upper one lies a board under what is left, 34
    assert heights == [pytest.approx((5.0, 13.0)), pytest.approx((21.0, 29.0))]


def test_tabs_that_find_too_little_board_say_how_many_fit(plan: Plan, refused: Refuse, treatment: Treat) -> None:
    tabs = treatment("right", 5.0, tabs=TabRow(3, 5.0))
    (finding,) = refused(plan("wall_panel", {"width": 140.0, "height": 40.0}, (), (tabs, treatment("top", 15.0))))
    assert finding.check == "geometry/tab-off-edge"
    assert "the edge “right” of part “p” and its mate share 18.667 mm of board" in finding.message
    assert "too little for 3 tabs" in finding.message and finding.hint.startswith("say tabs: 1,")
    (finding,) = refused(plan("wall_panel", {"width": 140.0, "height": 40.0}, (), (tabs, treatment("top", 30.0))))
    assert finding.hint.startswith("not even one tab of 12 mm fits")


def test_slots_off_the_panel(plan: Plan, refused: Refuse, treatment: Treat) -> None:
    (finding,) = refused(plan("wall_panel", WALL, (), (treatment("right", slots=(SlotRow(2, 150.0, 5.0, 0.3),)),)))
    assert finding.check == "geometry/slot-off-panel" and "150 mm inside" in finding.message
    found = refused(plan("wall_panel", WALL, (), (treatment("right", slots=(SlotRow(2, 137.0, 5.0, 0.3),)),)))
    assert {f.check for f in found} == {"geometry/slot-off-panel"} and "runs over the edge" in found[0].message


def test_slots_and_openings_keep_apart(
    plan: Plan, refused: Refuse, treatment: Treat, opening: Callable[..., OpeningPlan]
) -> None:
    window = opening("w", "window", width=20.0, height=20.0, sill=10.0, centre=112.0)
    rows = (SlotRow(2, 10.0, 5.0, 0.3),)
    found = refused(plan("wall_panel", WALL, (window,), (treatment("right", slots=rows),)))
    assert {f.check for f in found} == {"geometry/thin-wall"}
    assert "the window “w” and slot 1 beside the edge “right”" in found[0].message
    found = refused(plan("wall_panel", WALL, (window,), (treatment("right", slots=(SlotRow(2, 0.0, 25.0, 0.3),)),)))
    assert {f.check for f in found} == {"geometry/openings-overlap"}
