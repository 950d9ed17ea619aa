"""Panels in one place, against solids whose overlap is known by hand."""

from types import SimpleNamespace

import pytest

from publisher.joints.panels.interference import clashes_of
from publisher.joints.panels.place import place_panels


def ring_of_sides(make: SimpleNamespace, sides: int, bevel: float) -> object:
    """A tower of equal panels 40 wide whose mitre is cut at ``bevel`` degrees."""
    names = [f"p{k}" for k in range(sides)]
    inner = 180.0 - 360.0 / sides
    joins = [
        make.join(f"{a}.right", f"{b}.left", "mitre", corner=inner)
        for a, b in zip(names, names[1:] + names[:1], strict=True)
    ]
    plan = make.panels("tower", dict.fromkeys(names, "w"), "p0.bottom", *joins)
    wall = make.wall("w", 40, 60)
    from dataclasses import replace

    edges = tuple(replace(e, bevel=bevel if e.name in {"left", "right"} else 0.0) for e in wall.edges)
    return place_panels(plan, {"w": replace(wall, edges=edges)})


@pytest.mark.parametrize("sides", [4, 6, 8, 12])
def test_a_mitred_tower_only_touches(make: SimpleNamespace, sides: int) -> None:
    assert clashes_of(ring_of_sides(make, sides, 180.0 / sides)) == ()


@pytest.mark.parametrize("sides", [4, 6, 8])
def test_a_mitre_cut_too_little_collides_at_every_corner(make: SimpleNamespace, sides: int) -> None:
    clashes = clashes_of(ring_of_sides(make, sides, 180.0 / sides - 8.0))
    assert len(clashes) == sides


def test_overlap_is_as_thick_as_by_hand_and_lies_where_it_is(make: SimpleNamespace) -> None:
    # the side runs from the outside face of the front: 5 mm of it stand in the front, all along the corner
    plan = make.panels("b", {"f": "w", "r": "s"}, "f.bottom", make.join("f.right", "r.left"))
    (clash,) = clashes_of(place_panels(plan, {"w": make.wall("w", 60, 40), "s": make.wall("s", 30, 40)}))
    assert clash.thick == pytest.approx(5.0, abs=0.05)
    x, y, z = clash.at
    assert 55.0 <= x <= 60.0
    assert 0.0 <= y <= 5.0
    assert 0.0 <= z <= 40.0


def test_panels_far_apart_are_not_looked_at(make: SimpleNamespace) -> None:
    plan = make.panels(
        "b", {"f": "w", "r": "s", "k": "w"}, "f.bottom", make.join("f.right", "r.left"), make.join("r.right", "k.left")
    )
    clashes = clashes_of(place_panels(plan, {"w": make.wall("w", 60, 40), "s": make.wall("s", 80, 40)}))
    assert {(c.a, c.b) for c in clashes} == {("f", "r"), ("r", "k")}
