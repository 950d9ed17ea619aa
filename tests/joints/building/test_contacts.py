"""Which pieces are glued to each other, counted by hand."""

from collections.abc import Callable
from pathlib import Path

import pytest

from publisher import api
from publisher.joints.assembled import Assembled
from publisher.joints.building.contacts import glued_along_seams, glued_pairs
from tests.joints.building.conftest import BOX
from tests.whole.conftest import ROOT

STALL = """
sizes: {board: 5 mm, width: 120 mm, depth: 90 mm, height: 60 mm}
parts:
  plate: {name: Plate, board: foam, shape: rectangle, with: {width: width, height: depth + 30 mm}}
  back: {name: Back, board: foam, shape: wall_panel, with: {width: width, height: height}}
  left: {name: Left side, like: back, with: {width: depth}}
  right: {name: Right side, like: left}
  roof: {name: Roof, board: foam, shape: rectangle, with: {width: width, height: depth}}
assembly:
  stall:
    panels: {plate: plate, back: back, left: left, right: right, roof: roof%s}
    lies_on_table: plate
    joins:
      - {place: back, stands_on: plate, edge: bottom, at: [width / 2, depth + 30 mm - board / 2], turn: 180 deg}
      - {edges: [back.right, left.left], joint: butt, runs_through: back}
      - {edges: [right.right, back.left], joint: butt, runs_through: back}
      - {place: roof, rests_on: [back.top%s], at: [0 mm, 0 mm]%s}
%s"""
"""A market stall on a plate: its back is put there by a line of the spec, its sides hang on the back and come to stand there too."""

SIGN = "  sign: {name: Sign, board: foam, shape: rectangle, with: {width: 50 mm, height: 50 mm}}"
ON_PLATE = ("back+plate", "left+plate", "plate+right")


def pairs(subject: Assembled, name: str) -> set[str]:
    """Return the glued pairs of an assembly, each as ``a+b``."""
    plan = next(plan for plan in subject.design.panels if plan.name == name)
    return {"+".join(sorted(pair)) for pair in glued_pairs(subject, plan)}


def stall(
    assembled: Callable[..., Assembled], on: str = "", loose: bool = False, more: str = "", joins: str = ""
) -> set[str]:
    return pairs(assembled(STALL % (more, on, ", loose: true" if loose else "", joins)), "stall")


def test_walls_that_come_to_stand_on_a_plate_are_glued_to_it(assembled: Callable[..., Assembled]) -> None:
    """Two corners, three walls on the plate of which one is said, a roof on three walls."""
    on = ", left.top, right.top"
    own = {*ON_PLATE, "back+left", "back+right", "back+roof", "left+roof", "right+roof"}
    assert stall(assembled, on) == own
    assert stall(assembled) == own  # said to rest on the back alone, it lies on the sides as well


@pytest.mark.parametrize("on", ["", ", left.top, right.top"])
def test_what_lifts_off_is_glued_to_none_of_the_walls_that_it_touches(
    assembled: Callable[..., Assembled], on: str
) -> None:
    assert stall(assembled, on, loose=True) == {*ON_PLATE, "back+left", "back+right"}


@pytest.mark.parametrize(("far", "glued"), [("board", True), ("board + 0.5 mm", False)])
def test_a_wall_that_ends_at_another_is_glued_to_it_and_one_that_ends_before_it_is_not(
    assembled: Callable[..., Assembled], far: str, glued: bool
) -> None:
    """A counter that stands on the plate between the sides, or half a millimetre short of the left one."""
    place = f"at: [({far} + width - board) / 2, 60 mm]"
    part = f"  shelf: {{name: Counter, like: back, with: {{width: width - board - ({far}), height: 20 mm}}}}\nassembly:"
    text = STALL % (", shelf: shelf", "", "", f"      - {{place: shelf, stands_on: plate, edge: bottom, {place}}}\n")
    found = pairs(assembled(text.replace("assembly:", part, 1)), "stall")
    assert {"plate+shelf", "right+shelf"} <= found
    assert ("left+shelf" in found) is glued


def test_walls_that_touch_along_a_line_alone_are_not_glued(assembled: Callable[..., Assembled]) -> None:
    """Two walls stand on a plate corner to corner: each is glued to the plate, and they are not to each other."""
    text = """
sizes: {board: 5 mm}
parts:
  plate: {name: Plate, board: foam, shape: rectangle, with: {width: 140 mm, height: 80 mm}}
  wall: {name: Wall, board: foam, shape: wall_panel, with: {width: 60 mm, height: 40 mm}}
assembly:
  pen:
    panels: {plate: plate, near: wall, far: wall}
    lies_on_table: plate
    joins:
      - {place: near, stands_on: plate, edge: bottom, at: [40 mm, 30 mm]}
      - {place: far, stands_on: plate, edge: bottom, at: [100 mm, 35 mm]}
"""
    assert pairs(assembled(text), "pen") == {"near+plate", "far+plate"}


def test_the_end_of_a_tab_under_a_board_is_no_joint_of_its_own(assembled: Callable[..., Assembled]) -> None:
    """The tabs of the right end come through the front, level with its face, and a board is put over them."""
    text = BOX.replace("lid: lid}", "lid: lid, sign: sign}").replace("parts:", "parts:\n" + SIGN)
    text += "      - {place: sign, lies_on: front, at: [90 mm, 30 mm]}\n"
    assert {pair for pair in pairs(assembled(text), "box") if "sign" in pair} == {"front+sign"}


def test_a_fold_is_no_joint(assembled: Callable[..., Assembled]) -> None:
    """A corner of one piece of board stands on a plate: each of its walls is glued there."""
    text = """
sizes: {board: 2 mm}
parts:
  plate: {name: Plate, board: foam, shape: rectangle, with: {width: 100 mm, height: 100 mm}}
  near: {name: Near wall, board: foam, shape: wall_panel, with: {width: 60 mm, height: 40 mm}}
  far: {name: Far wall, like: near}
assembly:
  nook:
    panels: {plate: plate, near: near, far: far}
    lies_on_table: plate
    joins:
      - {place: near, stands_on: plate, edge: bottom, at: [40 mm, 30 mm]}
      - {edges: [near.right, far.left], joint: fold}
"""
    assert pairs(assembled(text), "nook") == {"near+plate", "far+plate"}


@pytest.mark.parametrize(
    ("split", "joints"),
    [
        ("{at: 60 mm}", 1),
        ("{at: 60 mm, plate: 30 mm}", 3),
        ("[{at: 50 mm, plate: 30 mm}, {at: 100 mm, plate: 30 mm}]", 6),
        ("[{at: 60 mm}, {at: 40 mm, from: bottom}]", 4),
    ],
)
def test_pieces_of_a_split_part_are_glued_and_so_is_each_plate_to_all_pieces_before_it(
    assembled: Callable[..., Assembled], split: str, joints: int
) -> None:
    """One seam, with a plate over both pieces; two seams; and four pieces that meet at a cross, each with two others."""
    deck = f"  deck: {{name: Deck, board: foam, count: 2, shape: rectangle, split: {split}, with: {{width: 150 mm, height: 80 mm}}}}\n"
    subject = assembled("sizes: {board: 5 mm}\nparts:\n" + deck)
    assert [glued_along_seams(part) for part in subject.parts] == [joints]


@pytest.mark.parametrize(
    ("folder", "joints"),
    [
        ("designs/toll-house", 4 + 1),  # corners, and the ridge of a roof that lifts off
        (
            "designs/bridge",
            8 + 6 + 2 + 2 + 2 * 3 + 2,
        ),  # walls, deck, soffit, kerbs, layers of two piers, the bridge on both
        ("designs/quay", 8 + 6),
        ("designs/island", 5),
        ("designs/lock-stair", 19),
        ("docs/specs/yard", 4 + 5 + 2),  # corners; walls and partition on the floor; the partition between two walls
    ],
)
def test_the_cover_counts_what_a_builder_glues(folder: str, joints: int) -> None:
    worked = api.work(api.read(Path(ROOT / folder)))
    assert worked.joined is not None
    assert worked.joined.effort is not None
    assert worked.joined.effort.joints == joints
