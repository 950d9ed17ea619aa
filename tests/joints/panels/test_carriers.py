"""Boards on edge under a deck, against beams by hand: brackets, lintels, legs."""

from pathlib import Path

import pytest
import shapely

from publisher.joints.assembled import MatedPanels
from publisher.joints.panels import Carrier, carriers_of
from publisher.joints.panels.carriers import Leg, own_heights
from publisher.joints.put_together import assemble
from tests.reference.solids import build

HEADS = "sizes: {board: 5 mm}\nparts:\n"


def part(name: str, wide: float, high: float, more: str = "", shape: str = "rectangle") -> str:
    return f"  {name}: {{name: {name}, board: foam, shape: {shape}, with: {{width: {wide} mm, height: {high} mm}}{more}}}\n"


def shelf(root: float, arm: float = 50.0) -> str:
    """A shelf on two brackets of a wall on a foot."""
    parts = (
        part("wall", 160, 120, shape="wall_panel")
        + part("bracket", arm, root)
        + part("shelf", 140, arm)
        + part("foot", 160, 200)
    )
    return f"""{HEADS}{parts}assembly:
  s:
    panels: {{foot: foot, wall: wall, b1: bracket, b2: bracket, shelf: shelf}}
    lies_on_table: foot
    joins:
      - {{place: wall, stands_on: foot, edge: bottom, at: [80 mm, 120 mm], turn: 180 deg}}
      - {{place: b1, stands_on: wall, edge: left, at: [40 mm, {80 - root / 2} mm], turn: 270 deg}}
      - {{place: b2, stands_on: wall, edge: left, at: [120 mm, {80 - root / 2} mm], turn: 270 deg}}
      - {{place: shelf, rests_on: [b1.top, b2.top]}}
"""


def stand(leg: float, lintel: float, wide: float = 120.0, high: float = 60.0) -> str:
    """A deck on two frames, each of two legs under a lintel."""
    cut = f"{{cut: {{shape: rectangle, with: {{width: {wide - 2 * leg} mm, height: {high - 5 - lintel} mm}}}}, at: [{leg} mm, 0 mm]}}"
    parts = part("frame", wide, high, f", combine: [{cut}]") + part("deck", 120, wide)
    return f"""{HEADS}{parts}assembly:
  s:
    panels: {{west: frame, east: frame, deck: deck}}
    stands_on: west.bottom
    joins:
      - {{edges: [deck.left, west.top], joint: butt, runs_through: deck}}
      - {{edges: [deck.right, east.top], joint: butt, runs_through: deck}}
"""


def carriers(text: str, folder: Path) -> tuple[Carrier, ...]:
    built = build(text, folder)
    (mated,) = assemble(built.design, tuple(built.parts.values()))[0].panels
    assert isinstance(mated, MatedPanels)
    return tuple(one for deck in mated.decks for one in carriers_of(mated.assembly, deck.panel))


def test_a_bracket_bends_at_its_root_as_a_beam_that_is_held_at_one_end(tmp_path: Path) -> None:
    one, other = carriers(shelf(8.0), tmp_path)
    (beam,) = one.beams
    assert not beam.spans and beam.high == pytest.approx(8.0) and beam.free == pytest.approx(50.0, abs=0.2)
    assert beam.stress(0.3) == pytest.approx(6 * 0.3 * 50.0 / (5.0 * 8.0**2), rel=0.005)
    assert other.beams[0].stress(0.3) == pytest.approx(beam.stress(0.3)) and one.legs == ()


def test_a_lintel_bends_in_its_middle_as_a_beam_on_two_supports(tmp_path: Path) -> None:
    one, _ = carriers(stand(12.0, 6.0), tmp_path)
    (beam,) = one.beams
    assert beam.spans and beam.free == pytest.approx(96.0) and beam.across == pytest.approx(60.0, abs=0.1)
    assert beam.stress(0.3) == pytest.approx(1.5 * 0.3 * 96.0 / (5.0 * 6.0**2), rel=0.005)


def test_a_wall_that_stands_all_along_bends_nowhere_and_has_no_legs(tmp_path: Path) -> None:
    plain = part("frame", 120, 60) + part("deck", 120, 120)
    text = HEADS + plain + stand(12.0, 6.0)[stand(12.0, 6.0).index("assembly:") :]
    assert all(one.beams == () == one.legs for one in carriers(text, tmp_path))


def test_legs_are_as_wide_as_cut_and_buckle_by_eulers_formula(tmp_path: Path) -> None:
    one, _ = carriers(stand(9.0, 10.0), tmp_path)
    assert [(round(leg.wide, 3), round(leg.high, 1)) for leg in one.legs] == [(9.0, 45.0), (9.0, 45.0)]
    leg = Leg(9.0, 100.0, 5.0)
    assert leg.buckles_at(10.0) == pytest.approx(3.14159265**2 * 10.0 * 9.0 * 125.0 / 12.0 / 1e4)
    assert Leg(4.0, 100.0, 5.0).buckles_at(10.0) == pytest.approx(3.14159265**2 * 10.0 * 5.0 * 64.0 / 12.0 / 1e4)


def test_pieces_over_each_other_are_measured_each() -> None:
    area = shapely.box(0, 0, 10, 10) - shapely.box(2, 4, 8, 7)
    assert own_heights(area, 5.0) == (4.0, 3.0) and own_heights(area, 1.0) == (10.0,)
