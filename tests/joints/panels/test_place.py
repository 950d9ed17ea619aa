from dataclasses import replace
from math import pi, tan
from types import SimpleNamespace

import numpy as np
import pytest

from publisher.design import EdgeRef, FaceSeat
from publisher.joints.panels.matings import matings_of
from publisher.joints.panels.place import place_panels


def box(make: SimpleNamespace) -> object:
    places = {"front": "long", "right": "short", "back": "long", "left": "short"}
    return make.panels(
        "box", places, "front.bottom",
        make.join("front.right", "right.left"), make.join("right.right", "back.left"),
        make.join("back.right", "left.left"), make.join("left.right", "front.left"),
    )  # fmt: skip


def test_four_walls_stand_round_a_room(make: SimpleNamespace) -> None:
    found = place_panels(box(make), {"long": make.wall("long", 120, 50), "short": make.wall("short", 80, 50)})
    assert found.unplaced == ()
    outward = {p.name: [round(float(v), 9) for v in p.frame.outward] for p in found.panels}
    assert outward == {"front": [0, -1, 0], "right": [1, 0, 0], "back": [0, 1, 0], "left": [-1, 0, 0]}
    assert all(p.frame.point((0, 0), 0)[2] == pytest.approx(0) for p in found.panels)


@pytest.mark.parametrize("n", range(3, 25))
def test_mitred_towers_of_three_to_twenty_four_sides_close(make: SimpleNamespace, n: int) -> None:
    """Inside angle of a regular polygon: 180 − 360/n (Machinery's Handbook, 31st ed., p. 82); side 2·a·tan(π/n)."""
    side = 2 * 60 * tan(pi / n)
    names = [f"p{i}" for i in range(n)]
    joins = [
        make.join(f"{a}.right", f"{b}.left", corner=180 - 360 / n)
        for a, b in zip(names, names[1:] + names[:1], strict=True)
    ]
    plan = make.panels("tower", dict.fromkeys(names, "side"), "p0.bottom", *joins)
    found = place_panels(plan, {"side": make.wall("side", side, 100)})
    matings = matings_of(found)
    assert len(matings) == n
    assert max(m.gap for m in matings) < 1e-9
    # every face lies 60 mm from the axis
    axis = found.panels[0].frame.point((side / 2, 0), 60.0)
    for panel in found.panels:
        assert float((panel.frame.point((side / 2, 0), 0.0) - axis) @ panel.frame.outward) == pytest.approx(60)


def test_panels_that_no_join_leads_to_are_named(make: SimpleNamespace) -> None:
    plan = make.panels("box", {"front": "w", "lonely": "w"}, "front.bottom")
    assert place_panels(plan, {"w": make.wall("w", 10, 10)}).unplaced == ("lonely",)


def test_a_roof_rests_on_the_slopes_with_its_top_edge_at_the_ridge(make: SimpleNamespace) -> None:
    names = ("bottom", "right", "right_slope", "left_slope", "left")
    gable = make.polygon("gable", [(0, 0), (100, 0), (100, 40), (50, 90), (0, 40)], names)
    side, roof = make.wall("side", 120, 40), make.wall("roof", 140, 80)
    plan = make.panels(
        "house", {"front": "gable", "right": "side", "back": "gable", "lid": "roof"}, "front.bottom",
        make.join("front.right", "right.left"), make.join("right.right", "back.left"),
        rests=(("lid", ("front.right_slope", "back.left_slope")),),
    )  # fmt: skip
    lid = place_panels(plan, {"gable": gable, "side": side, "roof": roof}).panel("lid")
    assert lid is not None
    assert lid.rests
    assert lid.frame.outward == pytest.approx([0.5**0.5, 0, 0.5**0.5])
    assert lid.frame.point((70, 80), 5.0) == pytest.approx([50, 60, 90])  # middle of its top edge, on the inside face
    assert lid.frame.point((70, 0), 5.0)[2] == pytest.approx(90 - 80 * 0.5**0.5)


def test_a_lid_lies_flat_over_the_middle_of_level_edges(make: SimpleNamespace) -> None:
    plan = make.panels(
        "hut", {"f": "w", "r": "s", "k": "w", "lid": "top"}, "f.bottom",
        make.join("f.right", "r.left"), make.join("r.right", "k.left"),
        rests=(("lid", ("f.top", "k.top")),),
    )  # fmt: skip
    parts = {"w": make.wall("w", 60, 40), "s": make.wall("s", 30, 40), "top": make.wall("top", 80, 50)}
    assembly = place_panels(plan, parts)
    lid = assembly.panel("lid")
    assert lid is not None
    corners = lid.frame.carry(np.array([[0.0, 0.0, 0.0], [80.0, 0.0, 0.0], [80.0, 50.0, -5.0], [0.0, 50.0, -5.0]]))
    assert corners[:, 2] == pytest.approx([45.0, 45.0, 40.0, 40.0])
    assert (corners[:, 0].min(), corners[:, 0].max()) == (pytest.approx(-10.0), pytest.approx(70.0))
    assert (corners[0, 1], corners[2, 1]) == (pytest.approx(-10.0), pytest.approx(40.0))


def test_panels_that_cross_stand_level_and_square(make: SimpleNamespace) -> None:
    """The long rib's middle lies 2.5 mm behind its face; 30 mm along the short one, whose left end is in front of it."""
    found = place_panels(*make.crate())
    assert found.unplaced == ()
    outward = {p.name: [round(float(v), 9) for v in p.frame.outward] for p in found.panels}
    assert outward == {"l1": [0, -1, 0], "l2": [0, -1, 0], "s1": [1, 0, 0], "s2": [1, 0, 0]}
    corner = {p.name: tuple(round(float(v), 9) for v in p.frame.point((0, 0), 0)) for p in found.panels}
    assert corner == {"l1": (0, 0, 0), "l2": (0, 40, 0), "s1": (52.5, -27.5, 0), "s2": (112.5, -27.5, 0)}


def test_the_same_place_follows_from_either_side_of_a_crossing(make: SimpleNamespace) -> None:
    plan, parts = make.crate()
    other = make.panels("crate", {p.name: p.part for p in plan.places}, "s1.bottom", *plan.joins)
    for found in (place_panels(plan, parts), place_panels(other, parts)):
        frames = {p.name: p.frame for p in found.panels}
        here = frames["s1"].back(frames["l1"].point((0, 0), 0)[None, :])[0]
        # seen on the short rib: the long one's left lower corner is 30 − 2.5 along and 52.5 behind its face
        assert here == pytest.approx([27.5, 0, -52.5])


def test_a_crossing_without_a_slot_places_nothing(make: SimpleNamespace) -> None:
    plan, parts = make.crate()
    assert place_panels(plan, parts | {"short": make.wall("short", 100, 40)}).unplaced == ("l2", "s1", "s2")


def test_a_plate_lies_on_the_table_and_carries_a_wall(make: SimpleNamespace) -> None:
    """A wall in the middle of a plate of 100 × 80 mm; and one that runs along its front edge, to which its inside turns."""
    plan = make.panels("plate", {"p": "plate", "w": "wall"}, "p.bottom")
    plan = replace(plan, stands_on=EdgeRef("p", ""))
    seat = FaceSeat("w", "p", "outside", "bottom", (50.0, 40.0), 0.0, None, make.here)
    parts = {"plate": make.wall("plate", 100, 80), "wall": make.wall("wall", 60, 40)}
    plate, wall = place_panels(replace(plan, seats=(seat,)), parts).panels
    assert plate.frame.carry(np.array([[0, 0, -5.0], [100, 80, 0]])).ravel() == pytest.approx([0, 0, 0, 100, 80, 5])
    assert wall.frame.carry(np.array([[0, 0, -2.5], [60, 40, -2.5]])).ravel() == pytest.approx([20, 40, 5, 80, 40, 45])
    edged = replace(plan, joins=(make.join("p.bottom", "w.bottom"),))
    parts["wall"] = make.wall("wall", 100, 40)
    plate, wall = place_panels(edged, parts).panels
    assert plate.frame.carry(np.array([[0, 0, -5.0], [100, 80, 0]])).ravel() == pytest.approx([0, 80, 5, 100, 0, 0])
    assert float(wall.frame.point((50, 40), 0.0)[2]) == pytest.approx(40.0)
