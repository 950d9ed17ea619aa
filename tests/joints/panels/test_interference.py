"""Panels in one place, against solids whose overlap is known by hand."""

import random
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

import pytest

from publisher.design import Rabbet
from publisher.joints.panels.interference import clashes_of
from publisher.joints.panels.place import PanelAssembly, place_panels
from tests.reference.solids import build


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


WING = """sizes: {{board: {board} mm, span: {span} mm, wing: {wing} mm, pitch: {pitch} deg, wing_pitch: {wing_pitch} deg, past: {past} mm,
  wing_past: past * sin(pitch) / sin(wing_pitch)}}
parts:
  back: {{name: Back, board: foam, shape: roof_panel, with: {{span: span, length: 150 mm, pitch: pitch, overhang: past}}}}
  front: {{name: Front, board: foam, shape: roof_with_valley,
    with: {{span: span, length: 150 mm, pitch: pitch, wing_span: wing, wing_pitch: wing_pitch, overhang: past}}}}
  right: {{name: Right, board: foam, shape: valley_panel,
    with: {{eave: 50 mm, span: wing, pitch: wing_pitch, main_pitch: pitch, overhang: wing_past}}}}
  left: {{name: Left, like: right, with: {{valley_at: left}}}}
  gable: {{name: Gable, board: foam, shape: gable_wall, with: {{span: span, eaves: 40 mm, pitch: pitch}}}}
  wall: {{name: Wall, board: foam, shape: wall_panel, with: {{width: 150 mm, height: 40 mm}}}}
assembly:
  house:
    panels: {{wall: wall, east: gable, west: gable, back: back, front: front, right: right, left: left}}
    stands_on: east.bottom
    joins:
      - {{edges: [west.left, wall.right], joint: butt, runs_through: west}}
      - {{edges: [wall.left, east.right], joint: butt, runs_through: east}}
      - {{edges: [back.ridge, front.ridge], joint: mitre}}
      - {{place: back, rests_on: [east.right_slope, west.left_slope]}}
      - {{place: front, rests_on: [east.left_slope, west.right_slope]}}
      - {{edges: [right.ridge, left.ridge], joint: mitre}}
      - {{edges: [right.valley, front.right_valley], joint: mitre}}
      - {{edges: [left.valley, front.left_valley], joint: mitre}}
"""


@pytest.mark.parametrize("seed", range(8))
def test_the_roof_of_a_wing_only_touches_in_its_valleys(tmp_path: Path, seed: int) -> None:
    """Each valley lies in the plane between both roofs, and the plane of the wing's ridge goes through the line where both
    meet: mitres all, so the four faces only touch. The planes of the wing's faces run along the valleys."""
    dice = random.Random(seed)
    sizes = {
        "board": dice.choice((3, 4.76, 5, 10)),
        "span": 100 + 5 * dice.randrange(5),
        "wing": 40 + 5 * dice.randrange(5),
        "pitch": (pitch := dice.randrange(35, 56)),
        "wing_pitch": dice.choice((pitch, pitch - dice.randrange(12))),
        "past": dice.choice((0, 4, 8)),
    }
    house = build(WING.format(**sizes), tmp_path)
    assert "joints/parts-share-space" not in house.says(), (sizes, [f.message for f in house.findings])


def test_a_wing_whose_valley_was_made_for_another_roof_is_found(tmp_path: Path) -> None:
    text = WING.format(board=5, span=110, wing=60, pitch=42, wing_pitch=42, past=4)
    assert "joints/parts-share-space" in build(text.replace("main_pitch: pitch", "main_pitch: 36 deg"), tmp_path).says()
