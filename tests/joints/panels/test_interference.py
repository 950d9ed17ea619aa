"""Panels in one place, against solids whose overlap is known by hand."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.design import Rabbet
from publisher.joints.panels.interference import clashes_of
from publisher.joints.panels.place import PanelAssembly, place_panels


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


def test_a_crate_only_touches_and_a_slot_in_the_wrong_place_does_not(make: SimpleNamespace) -> None:
    assert clashes_of(place_panels(*make.crate())) == ()
    clashes = clashes_of(place_panels(*make.crate(second=71.0)))
    assert {(c.a, c.b) for c in clashes} == {("l2", "s2")}  # 1 mm off, of which half the play is free
    assert clashes[0].thick == pytest.approx(1.0 - 0.15, abs=0.05)


def rabbet_corner(make: SimpleNamespace, take_off: float, rabbet: Rabbet | None) -> PanelAssembly:
    """Two walls at a right angle: the first 60 long with a rabbet at its right end, the second shorter by ``take_off``."""
    front, side = make.wall("w", 60, 40), make.polygon("s", [(take_off, 0), (30, 0), (30, 40), (take_off, 40)])
    edges = tuple(replace(e, rabbet=rabbet) if e.name == "right" else e for e in front.edges)
    short = make.part("s", side.outline.outer, edges=make.wall("s", 30, 40).edges)
    plan = make.panels("b", {"f": "w", "r": "s"}, "f.bottom", make.join("f.right", "r.left"))
    return place_panels(plan, {"w": replace(front, edges=edges), "s": short})


def test_a_mate_stands_in_a_rabbet_up_to_the_paper(make: SimpleNamespace) -> None:
    """Boards of 5 mm: a rabbet 5 mm wide that leaves 0.3 mm of paper takes a mate that is 0.3 mm shorter, and no other."""
    assert clashes_of(rabbet_corner(make, 0.3, Rabbet(5.0, 0.3))) == ()
    for take_off, rabbet, thick in ((0.0, Rabbet(5.0, 0.3), 0.3), (0.3, Rabbet(4.0, 0.3), 1.0), (0.3, None, 4.7)):
        (clash,) = clashes_of(rabbet_corner(make, take_off, rabbet))
        assert clash.thick == pytest.approx(thick, abs=0.06)
