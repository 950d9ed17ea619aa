from collections.abc import Callable

import pytest

from publisher.joints.checks.reaches_below import reaches_below
from tests.joints.building.conftest import BOX, assembled

__all__ = ["assembled"]

KEEL = BOX.replace("lid: lid}", "lid: lid, keel: keel}").replace(
    "parts:", "parts:\n  keel: {name: Keel, board: foam, shape: rectangle, with: {width: 60 mm, height: 40 mm}}"
)


def keel(up: str) -> str:
    return f"{KEEL}      - {{place: keel, lies_on: front, at: [60 mm, {up}]}}\n"


@pytest.mark.keeps("joints/reaches-below")
@pytest.mark.parametrize("up", ["30 mm", "20 mm", "19.9 mm"])  # its middle; a tenth of a millimetre is foam that gives
def test_what_ends_at_the_level_of_what_stands_or_above(assembled: Callable, up: str) -> None:
    outcome = reaches_below.run(assembled(keel(up)), reaches_below)
    assert outcome.findings == () and outcome.looked_at == 6


@pytest.mark.breaks("joints/reaches-below")
def test_a_keel_below_the_edge_that_is_said_to_stand(assembled: Callable) -> None:
    (finding,) = reaches_below.run(assembled(keel("12 mm")), reaches_below).findings
    assert finding.message == (
        "keel of box (part A “Keel”) reaches 8.00 mm (0.31 in) below front.bottom, on which box is said to stand"
    )
    assert (finding.value, finding.limit) == (pytest.approx(8.0), 0.2)
    assert finding.place.line == 15 and finding.place.column > 1 and "stands_on" in finding.hint


def test_a_plate_below_which_something_hangs(assembled: Callable) -> None:
    text = """
sizes: {board: 5 mm}
parts:
  plate: {name: Plate, board: foam, shape: rectangle, with: {width: 100 mm, height: 80 mm}}
  fin: {name: Fin, board: foam, shape: wall_panel, with: {width: 60 mm, height: 15 mm}}
assembly:
  punt:
    panels: {plate: plate, fin: fin}
    lies_on_table: plate
    joins:
      - {place: fin, stands_on: plate, face: FACE, edge: bottom, at: [50 mm, 40 mm]}
"""
    assert reaches_below.run(assembled(text.replace("FACE", "outside")), reaches_below).findings == ()
    (finding,) = reaches_below.run(assembled(text.replace("FACE", "inside")), reaches_below).findings
    assert (
        "fin of punt" in finding.message and "15.0 mm (0.59 in) below plate, which lies on the table" in finding.message
    )


def test_what_only_stands_on_other_things_may_hang_into_them(assembled: Callable) -> None:
    stand = """
  pile: {stack: [{part: lid, count: 3}]}
  dock: {things: {quay: {assembly: pile}, boat: {assembly: box, on_top_of: [quay]}}}
"""
    assert reaches_below.run(assembled(keel("12 mm") + stand), reaches_below).findings == ()


def test_tents_and_floors_under_walls_stand_where_they_are_said_to(assembled: Callable) -> None:
    text = """
sizes: {board: 5 mm}
parts:
  wall: {name: Wall, board: foam, shape: wall_panel, with: {width: 100 mm, height: 60 mm}}
  floor: {name: Floor, board: foam, shape: wall_panel, with: {width: 100 mm, height: 80 mm}}
assembly:
  hut:
    panels: {wall: wall, floor: floor}
    stands_on: wall.bottom
    joins: [{edges: [wall.bottom, floor.bottom], joint: butt, runs_through: THROUGH}]
"""
    for through in ("wall", "floor"):
        assert reaches_below.run(assembled(text.replace("THROUGH", through)), reaches_below).findings == ()
