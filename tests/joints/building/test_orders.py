"""Orders that are found backwards."""

from collections.abc import Callable

from publisher.joints.building.orders import order_of
from publisher.joints.building.sites import sites_of
from tests.joints.building.conftest import BOX


def test_the_ends_go_in_between_the_sides(assembled: Callable) -> None:
    found = order_of(sites_of(assembled(BOX))["box"])
    assert [group.names for group in found or ()] == [("front",), ("left",), ("right",), ("back",), ("lid",)]


def test_each_wall_of_a_butted_ring_goes_to_one_that_stands(assembled: Callable) -> None:
    """Nothing is in another's way: then front and back came first, which meet nowhere, and glue held neither."""
    corners = (("front", "right"), ("right", "back"), ("back", "left"), ("left", "front"))
    joins = "".join(
        f"      - {{edges: [{a}.right, {b}.left], joint: butt, runs_through: {a if a in ('front', 'back') else b}}}\n"
        for a, b in corners
    )
    ring = f"""
sizes: {{board: 5 mm}}
parts:
  wall: {{name: Wall, board: foam, shape: wall_panel, with: {{width: 100 mm, height: 60 mm}}}}
  side: {{name: Side, board: foam, shape: wall_panel, with: {{width: 80 mm, height: 60 mm}}}}
assembly:
  ring:
    panels: {{front: wall, back: wall, left: side, right: side}}
    stands_on: front.bottom
    joins:
{joins}"""
    found = order_of(sites_of(assembled(ring))["ring"])
    assert [group.names for group in found or ()] == [("front",), ("left",), ("right",), ("back",)]


def test_a_ring_whose_walls_each_hold_the_next_goes_together_in_halves(assembled: Callable) -> None:
    """Each wall has tabs at one end and slots at the other: none goes in last alone."""
    joins = "".join(
        f"      - {{edges: [{b}.left, {a}.right], joint: tab_and_slot, tabs_on: {a}, tabs: 2, inset: 10 mm, play: 0.3 mm}}\n"
        for a, b in (("one", "two"), ("two", "three"), ("three", "four"), ("four", "one"))
    )
    ring = f"""
sizes: {{board: 5 mm}}
parts: {{wall: {{name: Wall, board: foam, shape: wall_panel, with: {{width: 100 mm, height: 60 mm}}}}}}
assembly:
  ring:
    panels: {{one: wall, two: wall, three: wall, four: wall}}
    stands_on: one.bottom
    joins:
{joins}"""
    found = order_of(sites_of(assembled(ring))["ring"])
    assert found is not None
    assert [len(group.names) for group in found] == [1, 1, 2]
    assert [group.together for group in found] == [False, False, True]
