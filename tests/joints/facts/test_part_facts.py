from types import SimpleNamespace

import pytest

from publisher.geometry import Opening, Part
from publisher.joints.facts.part_facts import beside, facts_of, least_wall, slot_width, slots_of

WINDOW = ((20.0, 30.0), (20.0, 50.0), (35.0, 50.0), (35.0, 30.0))
SLOT = ((80.0, 10.0), (80.0, 30.0), (85.3, 30.0), (85.3, 10.0))


def wall(make: SimpleNamespace, *extra: tuple[tuple[float, float], ...]) -> Part:
    holes = [make.hole(WINDOW, "window.left"), make.hole(SLOT, "right.slot"), *(make.hole(h, "other") for h in extra)]
    opening = Opening("window", "window", holes[0], 15.0, 20.0, 30.0, 27.5)
    outer = make.wall("w", 100, 60).outline.outer
    found: Part = make.part("w", outer, holes=tuple(holes), openings=(opening,))
    return found


def test_sizes_of_a_wall(make: SimpleNamespace) -> None:
    found = {f.name: f.value for f in facts_of(wall(make))}
    assert (found["w.width"], found["w.height"]) == (100, 60)
    assert found["w.area"] == pytest.approx(6000 - 300 - 5.3 * 20)
    assert found["w.window.width"] == 15
    assert found["w.least_wall"] == 10  # the window's head to the top edge
    assert found["w.slot_width"] == pytest.approx(5.3)
    assert found["w.least_beside_slot"] == pytest.approx(10)


def test_a_slot_beside_a_window_narrows_the_wall(make: SimpleNamespace) -> None:
    part = wall(make)
    near = make.hole(((40.0, 30.0), (40.0, 50.0), (45.3, 50.0), (45.3, 30.0)), "left.slot")
    more = make.part("w", part.outline.outer, holes=(*part.outline.holes, near), openings=part.openings)
    assert least_wall(more) == pytest.approx(5)
    assert beside(more, near) == pytest.approx(5)
    assert len(slots_of(more)) == 2


def test_a_door_at_the_sill_keeps_no_distance_from_the_bottom(make: SimpleNamespace) -> None:
    ring = make.ring(
        ("bottom", [(0.0, 0.0), (30.0, 0.0)], None, 0.0),
        ("door.left", [(30.0, 0.0), (30.0, 40.0)], None, 0.0),
        ("door.head", [(30.0, 40.0), (60.0, 40.0)], None, 0.0),
        ("door.right", [(60.0, 40.0), (60.0, 0.0)], None, 0.0),
        ("bottom", [(60.0, 0.0), (100.0, 0.0)], None, 0.0),
        ("right", [(100.0, 0.0), (100.0, 55.0)], None, 0.0),
        ("top", [(100.0, 55.0), (0.0, 55.0)], None, 0.0),
        ("left", [(0.0, 55.0), (0.0, 0.0)], None, 0.0),
    )
    door = make.hole(((30.0, 0.0), (60.0, 0.0), (60.0, 40.0), (30.0, 40.0)), "door")
    part = make.part("w", ring, openings=(Opening("door", "door", door, 30.0, 40.0, 0.0, 45.0),))
    assert least_wall(part) == pytest.approx(15)


def test_a_slot_is_as_wide_as_it_is_across_its_edge_also_where_it_is_shorter(make: SimpleNamespace) -> None:
    """Along the edge from (0, 0) to (30, 40): 5 mm long and 10 mm across."""
    corners = [(0.0, 0.0), (30.0, 40.0), (0.0, 40.0)]
    part = make.polygon("p", corners, ("side", "top", "left"))
    slot = make.hole(((0.0, 20.0), (3.0, 24.0), (-5.0, 30.0), (-8.0, 26.0)), "side.slot")
    assert slot_width(part, slot) == pytest.approx(10.0)


def test_a_plain_part_has_neither_walls_nor_slots(make: SimpleNamespace) -> None:
    names = {f.name for f in facts_of(make.disc())}
    assert not names & {"plinth.least_wall", "plinth.slot_width"}
