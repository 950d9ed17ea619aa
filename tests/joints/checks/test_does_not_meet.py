"""Boards of joins against each other: by hand, where a window lies under a joint, an edge is cut short, a bevel is wrong."""

from dataclasses import replace
from types import SimpleNamespace

import pytest
import shapely

from publisher.basics import Finding
from publisher.geometry import Part
from publisher.joints.checks.does_not_meet import does_not_meet


def corner(make: SimpleNamespace, joint: str, front: Part, side: Part, **options: float) -> tuple[Finding, ...]:
    plan = make.panels(
        "hut", {"f": front.id, "s": side.id}, "f.bottom", make.join("f.right", "s.left", joint, **options)
    )
    subject = make.assembled(make.design(panels=(plan,)), front, side)
    outcome = does_not_meet.run(subject, does_not_meet)
    assert outcome.looked_at == 1
    return outcome.findings


def cut(make: SimpleNamespace, wall: Part, name: str, by: float, bevel: float = 0.0) -> Part:
    """A wall whose left or right edge is moved in, its stated place kept."""
    (left, bottom, right, top) = shapely.Polygon(wall.outline.outer.points).bounds
    left, right = (left + by, right) if name == "left" else (left, right - by)
    corners = [(left, bottom), (right, bottom), (right, top), (left, top)]
    made = make.polygon(wall.id, corners, ("bottom", "right", "top", "left"), thickness=wall.thickness)
    stated = {edge.name: edge for edge in wall.edges}
    edges = [
        replace(
            edge,
            nominal_start=stated[edge.name].nominal_start,
            nominal_end=stated[edge.name].nominal_end,
            bevel=bevel if edge.name == name else 0.0,
        )
        for edge in made.edges
    ]
    return replace(made, edges=tuple(edges))


@pytest.mark.keeps("joints/does-not-meet")
@pytest.mark.parametrize("joint", ["butt", "mitre"])
def test_boards_that_are_cut_for_their_join_meet(make: SimpleNamespace, joint: str) -> None:
    front, side = make.wall("front", 80, 60), make.wall("side", 50, 60)
    if joint == "butt":
        assert corner(make, joint, front, cut(make, side, "left", 5.0)) == ()
    else:
        assert corner(make, joint, cut(make, front, "right", 0, 45.0), cut(make, side, "left", 0, 45.0)) == ()


@pytest.mark.breaks("joints/does-not-meet")
@pytest.mark.parametrize(("short", "gap"), [(5.3, 0.3), (8.0, 3.0)])
def test_an_edge_that_is_cut_short_ends_before_its_mate(make: SimpleNamespace, short: float, gap: float) -> None:
    (found,) = corner(make, "butt", make.wall("front", 80, 60), cut(make, make.wall("side", 50, 60), "left", short))
    assert found.value == pytest.approx(gap)
    assert found.place == make.here
    assert f"s.left ends up to {gap:.1f} mm before f.right" in found.message


def test_a_window_under_a_joint_leaves_the_edge_bare(make: SimpleNamespace) -> None:
    """The window lies from 30 to 50 mm up, over all of the 5 mm beside the right edge that the other board takes."""
    front = make.polygon(
        "front",
        [(0, 0), (80, 0), (80, 60), (0, 60)],
        ("bottom", "right", "top", "left"),
        holes=(((74, 30), (74, 50), (79, 50), (79, 30)),),
    )
    (found,) = corner(make, "butt", front, cut(make, make.wall("side", 50, 60), "left", 5.0))
    assert found.value == pytest.approx(20.0, abs=1.0)
    assert "(78 mm across, 5 mm deep and 40 mm up)" in found.message


def threshold(make: SimpleNamespace, door: tuple[float, float, float], inset: float = 0.0) -> tuple[Finding, ...]:
    """A front of 80 × 60 mm with an opening (left, right, sill) 40 mm high, and a floor that is butted against its inside."""
    left, right, sill = door
    plain = [(0.0, 0.0), (80.0, 0.0), (80.0, 60.0), (0.0, 60.0)]
    hole = ((left, sill), (left, 40.0), (right, 40.0), (right, sill))
    front = make.polygon("front", plain, ("bottom", "right", "top", "left"), holes=(hole,) if sill else ())
    if not sill:
        shape = [plain[0], *hole, *plain[1:]]
        front = replace(make.polygon("front", shape), edges=front.edges)
    floor = cut(make, make.wall("floor", 50, 80), "left", 5.0)
    plan = make.panels(
        "hut", {"f": "front", "s": "floor"}, "f.left", make.join("f.bottom", "s.left", "butt", inset=inset)
    )
    subject = make.assembled(make.design(panels=(plan,)), front, floor)
    return does_not_meet.run(subject, does_not_meet).findings


@pytest.mark.parametrize("inset", (0.0, 10.0))
def test_a_door_down_to_the_floor_takes_its_width_out_of_what_must_touch(make: SimpleNamespace, inset: float) -> None:
    assert threshold(make, (20.0, 50.0, 0.0), inset) == ()
    (found,) = threshold(make, (20.0, 50.0, 2.0), inset)  # a window there is no way in: the floor ends in it
    assert found.value == pytest.approx(30.0, abs=1.0)


def test_bevels_that_do_not_make_the_corner_leave_a_gap_and_its_angle(make: SimpleNamespace) -> None:
    front, side = make.wall("front", 80, 60), make.wall("side", 50, 60)
    (found,) = corner(make, "mitre", cut(make, front, "right", 0, 50.0), cut(make, side, "left", 0, 45.0))
    assert "at an angle of 5.00° to it" in found.message


def test_what_is_wrong_with_stated_sizes_is_said_elsewhere(make: SimpleNamespace) -> None:
    assert corner(make, "butt", make.wall("front", 80, 60), cut(make, make.wall("side", 50, 40), "left", 8.0)) == ()
