from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.design import EdgeRef
from publisher.joints.panels.edges import edge_line, joint_line, mating_lines, nominal_outline, top_edges


def test_a_joint_line_is_as_long_as_the_outline_is_there(make: SimpleNamespace) -> None:
    gable = make.polygon(
        "gable",
        [(0, 0), (130, 0), (130, 70), (65, 135), (0, 70)],
        ("bottom", "right", "right_slope", "left_slope", "left"),
    )
    line = joint_line({"g": gable}, EdgeRef("g", "right"), 10.0)
    assert line is not None
    assert line.length == pytest.approx(80)  # eaves 80 where the slope of 45° passes 10 mm inside the end
    assert line.middle == pytest.approx((120, 40))
    assert list(line.along) == pytest.approx([0, 1])
    assert joint_line({"g": gable}, EdgeRef("g", "right"), 200.0) is None


def test_no_line_for_an_edge_that_is_not_there(make: SimpleNamespace) -> None:
    wall = make.wall("w", 100, 50)
    assert edge_line({"w": wall}, EdgeRef("w", "ridge")) is None
    assert edge_line({"w": wall}, EdgeRef("v", "left")) is None


def test_the_nominal_outline_goes_through_nominal_edges(make: SimpleNamespace) -> None:
    wall = make.wall("w", 100, 50)
    shorter = replace(wall, outline=make.wall("w", 100, 45).outline)
    assert nominal_outline(shorter).bounds == (0, 0, 100, 50)
    assert nominal_outline(replace(wall, edges=wall.edges[:2])).bounds == (0, 0, 100, 50)


def test_without_names_all_round_slots_are_no_part_of_it_and_what_joins_took_off_is(make: SimpleNamespace) -> None:
    """A battlement whose bottom gives way to a plate, with slots beside its right edge: its joint line is as high as it is said."""
    ring = [(0, 0), (100, 0), (100, 50), (70, 50), (70, 40), (30, 40), (30, 50), (0, 50)]
    sides = ("bottom", "right", "merlon_2", "", "crenel_1", "", "merlon_1", "left")
    whole = make.polygon("b", ring, sides)
    lower = make.polygon("b", [(x, max(y, 5)) for x, y in ring], sides)
    slots = tuple(make.polygon("s", [(85, y), (90, y), (90, y + 10), (85, y + 10)]).outline.outer for y in (10, 30))
    edges = tuple(
        replace(edge, start=short.start, end=short.end)
        for edge, short in zip(whole.edges, lower.edges, strict=True)
        if edge.name
    )
    wall = replace(lower, outline=replace(lower.outline, holes=slots), edges=edges)
    line = joint_line({"b": wall}, EdgeRef("b", "right"), 12.0)
    assert line is not None
    assert line.length == pytest.approx(50)
    assert line.middle == pytest.approx((88, 25))


def test_the_top_edge_of_a_bevelled_panel_lies_back_on_its_inside_face(make: SimpleNamespace) -> None:
    roof = make.wall("r", 150, 100)
    bevelled = tuple(replace(e, bevel=45.0) if e.name == "top" else e for e in roof.edges)
    outside, *_ = top_edges(replace(roof, edges=bevelled))
    assert outside is not None
    assert outside.middle == pytest.approx((75, 95))
    inside, *_ = top_edges(replace(roof, edges=tuple(replace(e, face="inside") for e in bevelled)))
    assert inside is not None
    assert inside.middle == pytest.approx((75, 100))
    assert outside.depth == inside.depth == 5.0
    assert top_edges(replace(roof, edges=())) == []


@pytest.mark.parametrize(
    ("flush", "high", "low"),
    [
        (("t", "bottom"), (100.0, 20.0), (0.0, 20.0)),
        (("w", "bottom"), (100.0, 20.0), (0.0, 20.0)),
        (("t", "top"), (100.0, 70.0), (0.0, 20.0)),
        (None, (100.0, 45.0), (0.0, 20.0)),
    ],
)
def test_edges_that_are_flush_meet_over_the_shorter_one(
    make: SimpleNamespace, flush: tuple[str, str] | None, high: tuple[float, float], low: tuple[float, float]
) -> None:
    """A wall 40 mm high against one of 90 mm: the middles of both stretches, each in its panel's coordinates."""
    parts = {"t": make.wall("t", 100, 90), "w": make.wall("w", 60, 40)}
    line, edge = mating_lines(parts, replace(make.join("t.right", "w.left"), flush=flush))
    assert (line.middle, edge.middle) == (high, low)
    assert line.length == (40.0 if flush else 90.0)
