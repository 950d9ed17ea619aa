"""What lies on edges: lean-tos over level edges of two heights, square and cut to the slope, by hand and as solids."""

from dataclasses import replace
from math import atan, cos, degrees, sin
from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest

from publisher.basics import errors
from publisher.joints.panels.place import place_panels
from tests.random_designs.solids import in_common
from tests.reference.solids import Built, build

SHED = """sizes: {{board: 5 mm, run: 70 mm, low: 45 mm, rise: 50 mm, width: 110 mm}}
parts:
  near: {{name: Side, board: foam, shape: ramp_side, with: {{run: run, rise: rise, toe: low}}}}
  far: {{name: Far side, like: near, combine: [{{mirror: left_right}}]}}
  back: {{name: Back, board: foam, shape: wall_panel, with: {{width: width, height: {back}}}}}
  front: {{name: Front, board: foam, shape: wall_panel, with: {{width: width, height: low}}}}
  roof: {{name: Roof, board: foam, shape: rectangle, with: {{width: width + 10 mm, height: sqrt(run^2 + rise^2) + 8 mm}}}}
assembly:
  shed:
    panels: {{near: near, far: far, back: back, front: front, roof: roof}}
    stands_on: front.bottom
    joins:
      - {{edges: [front.right, near.left], joint: butt, runs_through: front}}
      - {{edges: [near.right, back.left], joint: butt, runs_through: back}}
      - {{edges: [back.right, far.right], joint: butt, runs_through: back}}
      - {{edges: [far.left, front.left], joint: butt, runs_through: front}}
      - {{place: roof, rests_on: [near.slope, far.slope, front.top, back.top]{cut}}}
"""
STEEP = degrees(atan(50 / 70))


def shed(tmp_path: Path, cut: str = ", cut_to_slope: [front.top, back.top]", back: str = "low + rise") -> Built:
    return build(SHED.format(cut=cut, back=back), tmp_path)


def test_a_lean_to_with_a_closed_back_lies_on_all_four_walls(tmp_path: Path) -> None:
    """The walls are as high as they say on their outsides: the back's top slopes inwards, the front's rises inwards."""
    built = shed(tmp_path)
    assert errors(built.findings) == ()
    bevels = [built.parts[name].edge("top") for name in ("back", "front")]
    assert [edge.bevel for edge in bevels if edge] == pytest.approx([STEEP, -STEEP])
    solids = built.solids("shed")
    assert in_common(list(solids.values())) < 0.5
    down = solids["roof"].translate((0.0, 0.0, -0.1))
    for wall, run in (("front", 5.0), ("back", 5.0), ("near", 60.0), ("far", 60.0)):
        assert float((down ^ solids[wall]).volume()) / 0.1 == pytest.approx(run * (110 if run == 5 else 5), rel=0.05)


def test_a_back_that_is_not_cut_to_the_slope_is_found(tmp_path: Path) -> None:
    """Its square top stands t · rise / run higher inside than the roof lies there."""
    found = [f for f in shed(tmp_path, cut="").findings if f.check == "joints/parts-share-space"]
    assert any("back" in f.message and "roof" in f.message for f in found)


def test_a_back_of_another_height_than_the_slope_is_found(tmp_path: Path) -> None:
    assert "joints/parts-share-space" in shed(tmp_path, back="low + rise + 2 mm").says()
    assert "joints/edge-lengths-differ" in shed(tmp_path, back="low + rise - 2 mm").says()


def lean(make: SimpleNamespace, low: float, high: float) -> tuple[np.ndarray, np.ndarray]:
    """Two walls 60 mm wide, 40 mm apart from outside to outside, and where the roof's inside face lies on them."""
    plan = make.panels(
        "shed", {"f": "low", "r": "side", "k": "high", "lid": "roof"}, "f.bottom",
        replace(make.join("f.right", "r.left"), flush=("f", "bottom")),
        replace(make.join("r.right", "k.left"), flush=("r", "bottom")), rests=(("lid", ("f.top", "k.top")),),
    )  # fmt: skip
    walls = {"low": make.wall("low", 60, low), "high": make.wall("high", 60, high), "side": make.wall("side", 40, 10)}
    roof = make.wall("roof", 80, 90)
    lid = place_panels(plan, {**walls, "roof": roof}).panel("lid")
    assert lid is not None
    return lid.frame.outward, lid.frame.point((40, 90), 5.0)


def test_a_roof_leans_on_the_rims_of_square_tops(make: SimpleNamespace) -> None:
    """It lies on the outer rim of the low wall (y = 0) and on the inner one of the high wall (y = 35), and ends over y = 40."""
    outward, top = lean(make, 30.0, 51.0)
    rise = atan(21 / 35)
    assert outward == pytest.approx([0.0, -sin(rise), cos(rise)])
    assert top == pytest.approx([30.0, 40.0, 30.0 + 40 * 21 / 35])
    outward, top = lean(make, 51.0, 30.0)  # the other way round: the high wall stands in front
    assert outward == pytest.approx([0.0, sin(rise), cos(rise)])
    assert top == pytest.approx([30.0, 0.0, 30.0 + 40 * 21 / 35])


def test_an_edge_is_cut_to_the_slope_between_two_level_ones(tmp_path: Path) -> None:
    """Without sloping sides the slope is that between the outsides of both walls, which the low sides hold apart."""
    text = SHED.format(cut=", cut_to_slope: [front.top, back.top]", back="low + rise").replace(
        "near.slope, far.slope, ", ""
    )
    text = text.replace(
        "shape: ramp_side, with: {run: run, rise: rise, toe: low}",
        "shape: wall_panel, with: {width: run, height: 30 mm}",
    )
    text = (
        text.replace(", combine: [{mirror: left_right}]", "")
        .replace("far.right", "FAR")
        .replace("far.left", "far.right")
    )
    text = text.replace("FAR", "far.left").replace("runs_through: back}", "runs_through: back, flush: bottom}")
    built = build(text.replace("runs_through: front}", "runs_through: front, flush: bottom}"), tmp_path)
    assert errors(built.findings) == ()
    edge = built.parts["back"].edge("top")
    assert edge is not None
    assert edge.bevel == pytest.approx(STEEP)


@pytest.mark.keeps("geometry/no-slope")
def test_a_slope_that_follows_brings_no_finding(tmp_path: Path) -> None:
    assert "geometry/no-slope" not in shed(tmp_path).says()


@pytest.mark.breaks("geometry/no-slope")
def test_an_edge_is_not_cut_to_a_slope_that_nothing_gives(tmp_path: Path) -> None:
    text = SHED.format(cut=", cut_to_slope: [back.top]", back="low").replace("near.slope, far.slope, front.top, ", "")
    built = build(text, tmp_path)
    (found,) = (f for f in built.findings if f.check == "geometry/no-slope")
    assert "back.top is cut to the slope of roof, and nothing says how steep that is" in found.message


def covered(
    make: SimpleNamespace, on: tuple[str, ...], lid: tuple[float, float], at: tuple[float, float] = (0.0, 0.0)
) -> list[float]:
    """Left, front, right and rear of a lid over a room of 120 × 80 mm; its walls are named as one looks at the front."""
    plan = make.panels(
        "room", {"f": "wide", "r": "deep", "b": "wide", "l": "deep", "lid": "lid"}, "f.bottom",
        make.join("f.right", "r.left"), make.join("r.right", "b.left"), make.join("b.right", "l.left"), rests=(("lid", on),),
    )  # fmt: skip
    plan = replace(plan, rests=(replace(plan.rests[0], at=at),))
    walls = {"wide": make.wall("wide", 120, 60), "deep": make.wall("deep", 80, 60)}
    found = place_panels(plan, {**walls, "lid": make.wall("lid", *lid)}).panel("lid")
    assert found is not None
    assert found.frame.outward == pytest.approx([0.0, 0.0, 1.0])
    flat = found.frame.carry(np.array([[0.0, 0.0, -5.0], [*lid, -5.0]]))
    assert flat[:, 2] == pytest.approx([60.0, 60.0])
    return [float(v) for v in (*flat.min(axis=0)[:2], *flat.max(axis=0)[:2])]


@pytest.mark.parametrize(
    "on",
    (
        ("f.top", "b.top"),
        ("f.top", "r.top", "l.top"),
        ("r.top", "b.top", "l.top"),
        ("f.top", "b.top", "r.top"),
        ("f.top", "r.top"),
        ("l.top", "b.top"),
    ),
)
def test_a_lid_covers_the_outsides_of_the_walls_that_it_rests_on(make: SimpleNamespace, on: tuple[str, ...]) -> None:
    along = on[0][0] in "fb"
    assert covered(make, on, (120, 80) if along else (80, 120)) == pytest.approx([0, 0, 120, 80])
    assert covered(make, on, (130, 90) if along else (90, 130)) == pytest.approx([-5, -5, 125, 85])


def test_a_lid_is_moved_where_its_place_is_said(make: SimpleNamespace) -> None:
    assert covered(make, ("f.top", "r.top", "l.top"), (120, 100), (0.0, 10.0)) == pytest.approx([0, 0, 120, 100])


def test_a_strip_on_one_wall_lies_over_the_middle_of_its_board(make: SimpleNamespace) -> None:
    plan = make.panels("wall", {"w": "w", "lid": "lid"}, "w.bottom", rests=(("lid", ("w.top",)),))
    lid = place_panels(plan, {"w": make.wall("w", 100, 60), "lid": make.wall("lid", 100, 20)}).panel("lid")
    assert lid is not None
    assert lid.frame.point((50, 10), 5.0) == pytest.approx([50.0, 2.5, 60.0])


YARD = """sizes: {board: 5 mm}
parts:
  curved: {name: Curved wall, board: foam, shape: curved_wall, with: {inner_radius: 60 mm, angle: 90 deg, height: 50 mm, covered: paper}}
  plate: {name: Plate, board: foam, shape: rectangle, with: {width: 150 mm, height: 120 mm}}
assembly:
  yard:
    panels: {plate: plate, curved: curved}
    lies_on_table: PLACE
    joins:
      - {place: curved, stands_on: plate, edge: bottom, at: [75 mm, 60 mm]}
"""


@pytest.mark.parametrize(("place", "placed"), (("plate", True), ("curved", False)))
def test_a_plate_lies_on_the_table_and_nothing_bent_does(tmp_path: Path, place: str, placed: bool) -> None:
    built = build(YARD.replace("PLACE", place), tmp_path)
    assert ("joints/panel-not-placed" not in built.says()) == placed
    if placed:
        assert built.joined.fact("yard.height").value == pytest.approx(55.0)
