"""Random true and broken panel assemblies from their specs, held against solids of manifold3d.

True: no two panels share space (the volume of all together is the sum of their volumes), what is joined or rests lies no
farther apart than what counts as a touch, and the checks find nothing. Broken: one number is wrong, the solids show it,
and the checks find it.
"""

from math import acos, atan2, cos, degrees, hypot, pi, sin, tan
from pathlib import Path
from random import Random

import pytest
from manifold3d import Manifold

from publisher.basics import errors
from tests.random_designs.solids import in_common
from tests.reference.solids import Built, build
from tests.searches.profile import seeds

pytestmark = pytest.mark.search

APART = 0.05  # mm: what lies nearer touches
SAME = 0.5  # mm³: rounding of flattened and bevelled solids

HOUSE = """
sizes: {{board: {board:.2f} mm, span: {span:.2f} mm, length: {length:.2f} mm, past: {past:.2f} mm,
        eaves: {eaves:.2f} mm, pitch: {pitch:.2f} deg}}
parts:
  gable: {{name: Gable, board: foam, shape: gable_wall, with: {{span: span, past: past, eaves: eaves, pitch: pitch}}}}
  side: {{name: Side, board: foam, shape: wall_panel, with: {{width: length, height: eaves}}}}
  roof: {{name: Roof, board: foam, shape: roof_panel,
          with: {{span: {roof_span}, length: {roof_length}, pitch: pitch, overhang: 12 mm, verge: 8 mm}}}}
assembly:
  house:
    panels: {{front: gable, back: gable, left: side, right: side, left_roof: roof, right_roof: roof}}
    stands_on: front.bottom
    joins:
      - {{edges: [front.right, right.left], joint: tab_and_slot, tabs_on: right, tabs: 2, inset: past, play: 0.3 mm}}
      - {{edges: [right.right, back.left], joint: tab_and_slot, tabs_on: right, tabs: 2, inset: past, play: 0.3 mm}}
      - {{edges: [back.right, left.left], joint: tab_and_slot, tabs_on: left, tabs: 2, inset: past, play: 0.3 mm}}
      - {{edges: [left.right, front.left], joint: tab_and_slot, tabs_on: left, tabs: 2, inset: past, play: 0.3 mm}}
      - {{edges: [left_roof.ridge, right_roof.ridge], joint: mitre, corner: {corner}}}
      - {{place: left_roof, rests_on: [front.left_slope, back.right_slope]}}
      - {{place: right_roof, rests_on: [front.right_slope, back.left_slope]}}
"""
BOX = """
sizes: {{board: {board:.2f} mm, width: {width:.2f} mm, depth: {depth:.2f} mm, height: {height:.2f} mm}}
parts:
  front: {{name: Front, board: foam, shape: wall_panel, with: {{width: width, height: height}}}}
  side: {{name: Side, board: foam, shape: wall_panel, with: {{width: depth, height: height}}}}
  lid: {{name: Lid, board: foam, shape: wall_panel, with: {{width: {lid_width}, height: {lid_depth}}}}}
assembly:
  box:
    panels: {{front: front, back: front, left: side, right: side, lid: lid}}
    stands_on: front.bottom
    joins:
      - {{edges: [front.right, right.left], {joints[0]}}}
      - {{edges: [right.right, back.left], {joints[1]}}}
      - {{edges: [back.right, left.left], {joints[2]}}}
      - {{edges: [left.right, front.left], {joints[3]}}}
      - {{place: lid, rests_on: [front.top, back.top]}}
"""
LEAN_TO = """
sizes: {{board: {board:.2f} mm, run: {run:.2f} mm, rise: {rise:.2f} mm, width: {width:.2f} mm}}
parts:
  near: {{name: Near, board: foam, shape: ramp_side, with: {{run: run, rise: rise, toe: 30 mm}}}}
  far: {{name: Far, board: foam, shape: ramp_side, with: {{run: run, rise: rise, toe: 30 mm}}, combine: [{{mirror: left_right}}]}}
  floor: {{name: Floor, board: foam, shape: wall_panel, with: {{width: run, height: width}}}}
  deck: {{name: Deck, board: foam, shape: ramp_deck, with: {{run: run, rise: rise, width: {deck_width}}}}}
assembly:
  lean:
    panels: {{near: near, far: far, floor: floor, deck: deck}}
    stands_on: near.bottom
    joins:
      - {{edges: [near.bottom, floor.bottom], joint: butt, runs_through: near}}
      - {{edges: [far.bottom, floor.top], joint: butt, runs_through: far}}
      - {{place: deck, rests_on: [near.slope, far.slope]}}
"""
COURT = """
sizes: {{board: {board:.2f} mm, width: {width:.2f} mm, depth: {depth:.2f} mm, height: {height:.2f} mm}}
parts:
  back: {{name: Back, board: foam, shape: wall_panel, with: {{width: width, height: height}}}}
  side: {{name: Side, board: foam, shape: wall_panel, with: {{width: depth, height: height}}}}
  low: {{name: Low, board: foam, shape: wall_panel, with: {{width: depth, height: {low:.2f} * height}}}}
  ruin: {{name: Ruin, board: foam, shape: ruin, with: {{width: width, height: height, least_height: 0.3 * height, seed: {seed}}}}}
assembly:
  court:
    panels: {{front: ruin, right: side, back: back, left: low}}
    stands_on: front.bottom
    joins:
      - {{edges: [front.right, right.left], {joints[0]}{flush}}}
      - {{edges: [right.right, back.left], {joints[1]}}}
      - {{edges: [back.right, left.left], {joints[2]}{flush}}}
      - {{edges: [left.right, front.left], {joints[3]}{flush}}}
"""
SCREEN = """
sizes: {{board: {board:.2f} mm, width: {width:.2f} mm, height: {height:.2f} mm}}
parts:
  first: {{name: First, board: foam, shape: wall_panel, with: {{width: width, height: height}}}}
  second: {{name: Second, like: first}}
  third: {{name: Third, like: first}}
assembly:
  screen:
    panels: {{a: first, b: second, c: third}}
    stands_on: a.bottom
    joins:
      - {{edges: [a.right, b.left], joint: fold, corner: {corner:.2f} deg}}
      - {{edges: [b.right, c.left], joint: fold, corner: {corner:.2f} deg}}
"""
CRATE = """
sizes: {{board: {board:.2f} mm, width: {width:.2f} mm, depth: {depth:.2f} mm, height: {height:.2f} mm}}
parts:
  long: {{name: Long, board: foam, shape: wall_panel, with: {{width: width, height: height}}}}
  short: {{name: Short, board: foam, shape: wall_panel, with: {{width: depth, height: height}}}}
  other: {{name: Other, like: short}}
assembly:
  crate:
    panels: {{l1: long, l2: long, s1: short, s2: other}}
    stands_on: l1.bottom
    joins:
      - {{edges: [l1.top, s1.bottom], joint: cross_lap, at: [25 mm, 20 mm], play: 0.3 mm}}
      - {{edges: [l1.top, s2.bottom], joint: cross_lap, at: [width - 25 mm, 20 mm], play: 0.3 mm}}
      - {{edges: [l2.top, s1.bottom], joint: cross_lap, at: [25 mm, depth - 20 mm], play: 0.3 mm}}
      - {{edges: [l2.top, s2.bottom], joint: cross_lap, at: [width - 25 mm, {last}], play: 0.3 mm}}
"""
TOWER = """
sizes: {{board: {board:.2f} mm, apothem: {apothem:.2f} mm, height: {height:.2f} mm}}
parts:
  wall: {{name: Wall, board: foam, shape: tower_panel, with: {{sides: {sides}, apothem: apothem, height: height}}}}
assembly:
  tower:
    panels: {{{panels}}}
    stands_on: p0.bottom
    joins:
{joins}
"""
SPIRE = """
sizes: {{board: {board:.2f} mm}}
parts:
  facet: {{name: Facet, board: foam, shape: spire_facet, with: {{sides: {sides}, width: {width:.3f} mm, height: {height:.3f} mm}}}}
assembly:
  spire:
    panels: {{{panels}}}
    stands_on: p0.base
    joins:
{joins}
"""
JOINTS = (
    "joint: butt, runs_through: {a}",
    "joint: mitre",
    "joint: rabbet, rabbet_on: {a}",
    "joint: tab_and_slot, tabs_on: {b}, tabs: 2, inset: 0 mm, play: 0.2 mm",
)
CORNERS = (("front", "right"), ("back", "right"), ("back", "left"), ("front", "left"))


def house(rng: Random) -> dict[str, object]:
    return {
        "board": rng.choice((5.0, 4.76, 3.0)), "span": rng.uniform(80, 130), "length": rng.uniform(80, 150), "past": rng.uniform(11, 14),
        "eaves": rng.uniform(60, 100), "pitch": rng.uniform(32, 55), "roof_span": "span + 2 * past", "roof_length": "length",
        "corner": "180 deg - 2 * pitch",
    }  # fmt: skip


def box(rng: Random, kind: int) -> str:
    return BOX.format(
        board=rng.choice((5.0, 4.76, 3.0)), width=rng.uniform(60, 140), depth=rng.uniform(60, 140), height=rng.uniform(40, 90),
        lid_width="width", lid_depth="depth", joints=[JOINTS[kind].format(a=a, b=b) for a, b in CORNERS],
    )  # fmt: skip


def lean_to(rng: Random) -> dict[str, object]:
    board, run = rng.choice((5.0, 4.76, 3.0)), rng.uniform(60, 120)
    return {
        "board": board,
        "run": run,
        "rise": rng.uniform(20, 60),
        "width": run * rng.uniform(1.3, 2.0),
        "deck_width": "width",
    }


def tower(rng: Random, sides: int, corner: str = "") -> str:
    names = [f"p{i}" for i in range(sides)]
    joins = "\n".join(
        f"      - {{edges: [{a}.right, {b}.left], joint: mitre{corner}}}"
        for a, b in zip(names, names[1:] + names[:1], strict=True)
    )
    return TOWER.format(
        board=rng.choice((5.0, 4.76)), apothem=rng.uniform(40, 75), height=rng.uniform(80, 150), sides=sides,
        panels=", ".join(f"{name}: wall" for name in names), joins=joins,
    )  # fmt: skip


def is_true(built: Built, assembly: str) -> None:
    """Nothing is found, no space is shared, all that is said to touch does."""
    assert not errors(built.findings), [f.message for f in errors(built.findings)]
    solids = built.solids(assembly)
    assert in_common(list(solids.values())) < SAME
    plan = next(plan for plan in built.design.panels if plan.name == assembly)
    pairs = [(join.a.panel, join.b.panel) for join in plan.joins]
    pairs += [(rest.panel, on.panel) for rest in plan.rests for on in rest.on]
    for a, b in pairs:
        assert solids[a].min_gap(solids[b], 5.0) < APART, (a, b)


@seeds(1, 100)
def test_random_houses_are_true(tmp_path: Path, seed: int) -> None:
    is_true(build(HOUSE.format(**house(Random(seed))), tmp_path), "house")


@seeds(1, 40)
@pytest.mark.parametrize("kind", range(len(JOINTS)))
def test_random_boxes_of_every_joint_are_true(tmp_path: Path, seed: int, kind: int) -> None:
    is_true(build(box(Random(seed), kind), tmp_path), "box")


@seeds(1, 40)
def test_random_folded_screens_are_true(tmp_path: Path, seed: int) -> None:
    """Three panels of one piece of board, folded to one side."""
    rng = Random(seed)
    said = {
        "board": rng.choice((5.0, 4.76)),
        "width": rng.uniform(50, 90),
        "height": rng.uniform(50, 120),
        "corner": rng.uniform(75, 160),
    }
    is_true(build(SCREEN.format(**said), tmp_path), "screen")


@seeds(1, 40)
def test_random_crates_are_true_and_a_slot_in_the_wrong_place_is_found(tmp_path: Path, seed: int) -> None:
    rng = Random(seed)
    said: dict[str, object] = {
        "board": rng.choice((5.0, 4.76)), "width": rng.uniform(100, 200), "depth": rng.uniform(80, 150), "height": rng.uniform(30, 80),
    }  # fmt: skip
    is_true(build(CRATE.format(**said, last="depth - 20 mm"), tmp_path), "crate")
    wrong = build(CRATE.format(**said, last=f"depth - {20 + rng.uniform(1, 6):.2f} mm"), tmp_path)
    assert wrong.says() & {"joints/ring-does-not-close", "joints/parts-share-space"}
    assert in_common(list(wrong.solids("crate").values())) > SAME


@seeds(1, 60)
@pytest.mark.parametrize("kind", range(len(JOINTS)))
def test_a_box_of_every_joint_that_does_not_fit_is_found(tmp_path: Path, seed: int, kind: int) -> None:
    """One wall longer, or one higher."""
    rng = Random(seed)
    text = box(rng, kind)
    back = "  back: {name: Back, board: foam, shape: wall_panel, with: {width: %s, height: %s}}\n"
    for size, found in (
        (("width + 3 mm", "height"), "joints/ring-does-not-close"),
        (("width", "height + 3 mm"), "joints/edge-lengths-differ"),
    ):
        wrong = text.replace("  side: {", back % size + "  side: {", 1).replace("back: front,", "back: back,")
        assert wrong.count("back: back,") == 1
        assert found in build(wrong, tmp_path).says()


@seeds(1, 40)
def test_a_wall_that_is_glued_over_a_window_is_found(tmp_path: Path, seed: int) -> None:
    """A wall 60 mm high stands square on another one; the window beside it moves under it."""
    rng = Random(seed)
    board, high = rng.choice((5.0, 4.76, 3.0)), rng.uniform(12, 30)
    text = f"""
sizes: {{board: {board} mm}}
parts:
  front: {{name: Front, board: foam, shape: wall_panel, with: {{width: 120 mm, height: 60 mm}},
          openings: {{light: {{kind: window, width: 24 mm, height: {high:.2f} mm, sill: 15 mm, centre: CENTRE}}}}}}
  wing: {{name: Wing, board: foam, shape: wall_panel, with: {{width: 70 mm, height: 60 mm}}}}
assembly:
  hut: {{panels: {{front: front, wing: wing}}, stands_on: front.bottom,
        joins: [{{edges: [front.left, wing.right], joint: butt, runs_through: front, inset: 40 mm}}]}}
"""
    for centre, bare in ((75.0, 0.0), (45.0, high)):
        built = build(text.replace("CENTRE", f"{centre} mm"), tmp_path)
        found = [f for f in built.findings if f.check == "joints/does-not-meet"]
        assert [f.value for f in found] == ([] if not bare else [pytest.approx(bare, abs=1.0)])
        solids = built.solids("hut")
        touching = float((solids["wing"].translate((0.0, -0.1, 0.0)) ^ solids["front"]).volume()) / 0.1
        assert touching == pytest.approx(board * (60.0 - bare), abs=0.1)


@seeds(1, 60)
def test_a_deck_lies_along_its_slopes_however_it_is_drawn(tmp_path: Path, seed: int) -> None:
    """The deck is drawn with the slope along its first side: laid with its top edge at the top it would be turned by 90°."""
    said = lean_to(Random(seed))
    is_true(build(LEAN_TO.format(**said), tmp_path), "lean")
    wrong = build(LEAN_TO.format(**{**said, "deck_width": "width - 12 * board"}), tmp_path)
    assert "joints/does-not-rest" in wrong.says()


@seeds(1, 60)
@pytest.mark.parametrize("kind", range(len(JOINTS)))
def test_a_low_wall_and_a_ruin_stand_in_a_ring(tmp_path: Path, seed: int, kind: int) -> None:
    """Edges of unequal length that are flush at the bottom: all four walls stand on the table. Without the word it is an error."""
    rng = Random(seed)
    said: dict[str, object] = {
        "board": rng.choice((5.0, 4.76, 3.0)), "width": rng.uniform(80, 140), "depth": rng.uniform(60, 120), "height": rng.uniform(50, 100),
        "low": rng.uniform(0.3, 0.8), "seed": seed,
        "joints": [JOINTS[kind].format(a=a, b=b).replace("tabs: 2", "tabs: 1") for a, b in CORNERS],
    }  # fmt: skip
    built = build(COURT.format(**said, flush=", flush: bottom"), tmp_path)
    is_true(built, "court")
    assert [body.bounding_box()[2] for body in built.solids("court").values()] == pytest.approx([0.0] * 4, abs=0.001)
    assert "joints/edge-lengths-differ" in build(COURT.format(**said, flush=""), tmp_path).says()
    assert built.says().isdisjoint({"joints/edge-lengths-differ", "joints/ring-does-not-close"})
    floating = build(COURT.format(**said, flush=", flush: top"), tmp_path)
    assert "joints/ring-does-not-close" in floating.says()  # a low wall hung up on one side and standing on the other


@seeds(1, 20)
@pytest.mark.parametrize("sides", (3, 4, 6, 12))
def test_random_towers_are_true(tmp_path: Path, seed: int, sides: int) -> None:
    """Their corner is written, or follows from the shape, or from corners: equal; 90° closes four walls and no other ring."""
    for corner in (f", corner: 180 deg - 360 deg / {sides}", ""):
        is_true(build(tower(Random(seed), sides, corner), tmp_path), "tower")
    plain = tower(Random(seed), sides).replace(
        f"shape: tower_panel, with: {{sides: {sides}, apothem: apothem", "shape: wall_panel, with: {width: apothem"
    )
    is_true(build(plain.replace("    stands_on:", "    corners: equal\n    stands_on:"), tmp_path), "tower")
    built = build(plain, tmp_path)
    if sides in (3, 4):  # three lengths fix their corners; of four, 90° is what is taken
        is_true(built, "tower")
        assert ("geometry/corner-free" in built.says()) == (sides == 4)
        return
    if sides % 4 == 0:  # it goes round several times, and its walls stand in each other
        assert "joints/parts-share-space" in built.says()
        return
    hints = [f.hint for f in built.findings if f.check == "joints/ring-does-not-close"]
    assert any(f"{180 - 360 / sides:g}" in hint for hint in hints)


@seeds(1, 60)
@pytest.mark.parametrize(
    "wrong",
    [
        {"roof_length": "length / 2 - 20 mm"},
        {"roof_span": "span - 50 mm"},
        {"corner": "120 deg"},
        {"corner": "180 deg - 2 * pitch - 4 deg"},
        {"corner": "180 deg - 2 * pitch + 1 deg"},
    ],
    ids=str,
)
def test_a_roof_that_does_not_lie_on_its_gables_is_found(tmp_path: Path, seed: int, wrong: dict[str, str]) -> None:
    built = build(HOUSE.format(**{**house(Random(seed)), **wrong}), tmp_path)
    assert built.says() & {"joints/does-not-rest", "joints/parts-share-space"}
    solids = built.solids("house")
    held = [held_by(solids["right_roof"], solids[gable], built) for gable in ("front", "back")]
    assert min(held) < 0.8 or in_common(list(solids.values())) > SAME


def held_by(roof: Manifold, gable: Manifold, built: Built) -> float:
    """The share of a slope that holds its roof: how much the roof cuts of the gable when it is let down by 0.1 mm."""
    part = built.parts["gable"]
    slope = part.edge("right_slope")
    assert slope is not None
    level = abs(slope.nominal_end[0] - slope.nominal_start[0]) * part.thickness
    return float((roof.translate((0.0, 0.0, -0.1)) ^ gable).volume()) / (level * 0.1)


@seeds(1, 60)
def test_a_lid_that_does_not_reach_is_found(tmp_path: Path, seed: int) -> None:
    rng = Random(seed)
    text = box(rng, 0)
    for wide, deep in (("30 mm", "30 mm"), ("width", "depth - 2 * board"), ("width - 2.5 * board", "depth")):
        wrong = text.replace("width: width, height: depth}", f"width: {wide}, height: {deep}}}")
        assert wrong != text
        assert "joints/does-not-rest" in build(wrong, tmp_path).says()


def spire(rng: Random, sides: int, corner: str = "") -> tuple[str, float, float]:
    """A spire, its height and its apothem."""
    width, height = rng.uniform(30, 90), rng.uniform(30, 120)
    apothem = width / 2 / tan(pi / sides)
    names = [f"p{i}" for i in range(sides)]
    joins = "\n".join(
        f"      - {{edges: [{a}.right, {b}.left], joint: mitre{corner}}}"
        for a, b in zip(names, names[1:] + names[:1], strict=True)
    )
    text = SPIRE.format(
        board=rng.choice((5.0, 4.76, 3.0)), sides=sides, width=width, height=height,
        panels=", ".join(f"{name}: facet" for name in names), joins=joins,
    )  # fmt: skip
    return text, height, apothem


def facet_corner(sides: int, height: float, apothem: float) -> float:
    """The angle between two faces of a regular pyramid of slope p: their normals make one whose cosine is
    sin²p·cos(360/n) + cos²p."""
    p = atan2(height, apothem)
    return 180 - degrees(acos(sin(p) ** 2 * cos(2 * pi / sides) + cos(p) ** 2))


@seeds(1, 40)
@pytest.mark.parametrize("sides", (3, 4, 6, 11))
def test_random_spires_stand_upright_on_all_their_edges(tmp_path: Path, seed: int, sides: int) -> None:
    text, height, apothem = spire(Random(seed), sides)
    built = build(text, tmp_path)  # no corner is written: the facets carry their number of sides
    is_true(built, "spire")
    corner = facet_corner(sides, height, apothem)
    said, *_ = spire(Random(seed), sides, f", corner: {corner:.6f} deg")
    is_true(build(said, tmp_path), "spire")
    wrong, *_ = spire(Random(seed), sides, f", corner: {corner + 0.5:.6f} deg")
    assert "joints/ring-does-not-close" in build(wrong, tmp_path).says()
    fact = built.joined.fact("spire.height")
    assert fact is not None
    assert fact.value == pytest.approx(height, abs=0.01)
    boxes = [body.bounding_box() for body in built.solids("spire").values()]
    assert max(box[5] for box in boxes) - min(box[2] for box in boxes) == pytest.approx(height, abs=0.01)
    assert [box[2] for box in boxes] == pytest.approx([0.0] * sides, abs=0.01)  # every facet reaches the table
    # a spire that stands on one edge alone, with that facet upright, is as high as the facet's slope at least
    assert hypot(height, apothem) > height + 0.1
