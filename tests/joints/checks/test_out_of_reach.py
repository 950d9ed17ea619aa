from collections.abc import Callable

import pytest

from publisher.joints.checks.out_of_reach import out_of_reach
from tests.joints.building.conftest import assembled
from tests.joints.building.test_reach import BOOKS

__all__ = ["assembled"]

PAINT = "  - {title: Paint, say: Paint it., stage: paint, parts: [wall]}\n"


@pytest.mark.breaks("joints/out-of-reach")
def test_a_wall_close_before_another_one(assembled: Callable) -> None:
    subject = assembled(BOOKS.format(at=80), "shelf", after=PAINT)
    (finding,) = out_of_reach.run(subject, out_of_reach).findings
    assert "a brush does not reach the face of one of shelf: other stands" in finding.message
    assert finding.hint == "do it before other is put in"


@pytest.mark.keeps("joints/out-of-reach")
@pytest.mark.parametrize(("at", "adds"), [(40, ("shelf",)), (80, ("shelf.floor, shelf.one",))])
def test_room_before_it_or_nothing_yet(assembled: Callable, at: int, adds: tuple[str, ...]) -> None:
    after = PAINT + ("" if adds == ("shelf",) else "  - {title: Last, say: Glue it., adds: [shelf.other]}\n")
    outcome = out_of_reach.run(assembled(BOOKS.format(at=at), *adds, after=after), out_of_reach)
    assert outcome.looked_at and outcome.findings == ()


TERRACE = """
sizes: {board: 5 mm}
parts:
  side:
    name: Side
    board: foam
    shape: wall_panel
    with: {width: 150 mm, height: 100 mm}
    surface: {pattern: brick, with: {length: 9 mm, height: 3 mm, bond: running}, how: drawn}
assembly:
  wall: {panels: {front: side}, stands_on: front.bottom, joins: []}
  terrace:
    things:
      near: {assembly: wall}
      far: {assembly: wall, at: [0 mm, AT mm]}
"""


@pytest.mark.breaks("joints/out-of-reach")
def test_things_that_stand_close_behind_each_other(assembled: Callable) -> None:
    paint = "  - {title: Paint, say: Paint it., stage: paint}\n"
    subject = assembled(TERRACE.replace("AT", "20"), "wall", "terrace", after=paint)
    (finding,) = out_of_reach.run(subject, out_of_reach).findings
    assert "the face of far.front of terrace: near stands" in finding.message
    assert (
        out_of_reach.run(assembled(TERRACE.replace("AT", "40"), "wall", "terrace", after=paint), out_of_reach).findings
        == ()
    )


ROOM = """
sizes: {board: 5 mm}
parts:
  side: {name: Side, board: foam, shape: wall_panel, with: {width: 120 mm, height: 60 mm}}
  end: {name: End, board: foam, shape: wall_panel, with: {width: 80 mm, height: 60 mm}}
  lid: {name: Lid, board: foam, shape: wall_panel, with: {width: 120 mm, height: 90 mm}WINDOW}
  ground:
    name: Ground
    board: foam
    shape: rectangle
    with: {width: 200 mm, height: 200 mm}
    surface: {pattern: brick, with: {length: 20 mm, height: 20 mm, bond: running}, how: pressed}
assembly:
  slab: {stack: [{part: ground}]}
  box:
    panels: {front: side, back: side, left: end, right: end, lid: lid}
    stands_on: front.bottom
    joins:
      - {edges: [front.right, right.left], joint: butt, runs_through: front}
      - {edges: [right.right, back.left], joint: butt, runs_through: back}
      - {edges: [back.right, left.left], joint: butt, runs_through: back}
      - {edges: [left.right, front.left], joint: butt, runs_through: front}
      - {place: lid, rests_on: [front.top, back.top]}
  yard: {things: {floor: {assembly: slab}, house: {assembly: box, on_top_of: [floor]}}}
"""
PRESS = "  - {title: Press, say: Press the stones., stage: texture, parts: [ground]}\n"
WINDOW = ", openings: {light: {kind: window, head: square, width: 60 mm, height: 40 mm, centre: 60 mm, sill: 25 mm}}"


@pytest.mark.breaks("joints/out-of-reach")
def test_the_floor_of_a_room_that_is_closed_all_round(assembled: Callable) -> None:
    subject = assembled(ROOM.replace("WINDOW", ""), "slab", "box", "yard", after=PRESS)
    (finding,) = out_of_reach.run(subject, out_of_reach).findings
    assert finding.message.endswith("and the room between them is closed all round")
    assert finding.hint == "do it while one side of the room is open" and finding.limit is None


@pytest.mark.keeps("joints/out-of-reach")
def test_a_floor_that_is_pressed_before_or_seen_from_above(assembled: Callable) -> None:
    before = assembled(
        ROOM.replace("WINDOW", ""),
        "slab",
        "yard.floor",
        after=PRESS + "  - {title: Set, say: Set it., adds: [box, yard.house]}\n",
    )
    open_above = assembled(ROOM.replace("WINDOW", WINDOW), "slab", "box", "yard", after=PRESS)
    for subject in (before, open_above):
        assert out_of_reach.run(subject, out_of_reach).findings == ()
