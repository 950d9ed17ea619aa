from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.brief import read_brief
from publisher.design import ThingPlan, WholePlan, work_out
from publisher.geometry import PLATE, LaidSeam, Part, make_parts
from publisher.joints.checks.deck_bends import too_weak
from publisher.joints.checks.parts_share_space import parts_share_space
from publisher.joints.checks.thing_not_carried import thing_not_carried
from publisher.joints.put_together import assemble

DESIGNS = Path(__file__).parents[3] / "designs"


def corner(make: SimpleNamespace, take_off: float) -> object:
    """Two walls that meet at a right angle; the second is shorter by ``take_off`` at the corner: 5 mm make a butt corner."""
    side = make.polygon("s", [(take_off, 0), (30, 0), (30, 40), (take_off, 40)])
    short = make.part("s", side.outline.outer, edges=make.wall("s", 30, 40).edges)
    plan = make.panels("b", {"f": "w", "r": "s"}, "f.bottom", make.join("f.right", "r.left"))
    return make.assembled(make.design(panels=(plan,)), make.wall("w", 60, 40), short)


@pytest.mark.keeps("joints/parts-share-space")
def test_a_butt_corner_only_touches(make: SimpleNamespace) -> None:
    outcome = parts_share_space.run(corner(make, 5.0), parts_share_space)
    assert (outcome.looked_at, outcome.findings) == (2, ())


@pytest.mark.breaks("joints/parts-share-space")
def test_a_wall_that_was_not_shortened_is_found_with_its_place(make: SimpleNamespace) -> None:
    (found,) = parts_share_space.run(corner(make, 3.0), parts_share_space).findings
    assert found.severity is Severity.ERROR
    assert "stand in one place" in found.message
    assert found.value is not None
    assert 1.9 < found.value < 2.1


def test_the_demos_have_no_board_where_other_board_stands(make: SimpleNamespace) -> None:
    for slug in ("toll-house", "quay"):
        for sets in ((), (("board", "3/16 in"),)):
            design = work_out(read_brief(DESIGNS / slug, sets))
            parts, _ = make_parts(design)
            outcome = parts_share_space.run(make.assembled(design, *parts), parts_share_space)
            assert outcome.looked_at > 5
            assert outcome.findings == ()


def test_two_panels_that_lie_in_each_other_are_found(make: SimpleNamespace) -> None:
    plan = make.panels(
        "b",
        {"f": "w", "r": "s", "k": "s"},
        "f.bottom",
        make.join("f.right", "r.left", inset=3.0),
        make.join("f.right", "k.left"),
    )
    side = make.polygon("s", [(5, 0), (30, 0), (30, 40), (5, 40)])
    short = make.part("s", side.outline.outer, edges=make.wall("s", 30, 40).edges)
    subject = make.assembled(make.design(panels=(plan,)), make.wall("w", 60, 40), short)
    (found,) = parts_share_space.run(subject, parts_share_space).findings
    assert found.message.startswith("r (part S) and k (part S) stand in one place")
    assert found.value is not None


def split(make: SimpleNamespace, part: Part, at: float, plate: float = 40.0) -> Part:
    """A part with an upright seam, and behind it a plate 5 mm short of either end."""
    height = part.outline.outer.points[2][1]
    behind = replace(make.rectangle("plate", 0, 0, plate, height - 10), shape=PLATE)
    return replace(part, seams=(LaidSeam(((at, 0.0), (at, height)), behind, (at - plate / 2, 5.0), True),))


BOX = """\
format: 2
title: Box
version: 1.0.0
use: paste
boards: {foam: {thickness: 5 mm, thickness_spread: 0.2 mm, sheets: [250 x 400 mm]}}
parts:
  wall: {name: Wall, board: foam, shape: rectangle, with: {width: 320 mm, height: 60 mm}}
  rib: {name: Rib, board: foam, shape: rectangle, with: {width: 80 mm, height: 60 mm}}
  lid: {name: Lid, board: foam, shape: rectangle, with: {width: 320 mm, height: 80 mm}, SPLIT}
assembly:
  box:
    panels: {front: wall, back: wall, west: rib, mid: rib, east: rib, lid: lid}
    stands_on: front.bottom
    joins:
      - {edges: [front.left, west.right], joint: butt, runs_through: front}
      - {edges: [west.left, back.right], joint: butt, runs_through: back}
      - {edges: [front.left, mid.right], joint: butt, runs_through: front, inset: 157.5 mm}
      - {edges: [mid.left, back.right], joint: butt, runs_through: back, inset: 157.5 mm}
      - {edges: [front.right, east.left], joint: butt, runs_through: front}
      - {edges: [east.right, back.left], joint: butt, runs_through: back}
      - {place: lid, rests_on: [front.top, back.top]}
"""


@pytest.mark.parametrize(
    ("seam", "found"),
    [("at: 160 mm, plate: 40 mm", 1), ("at: 120 mm, plate: 40 mm", 0), ("at: 160 mm", 0)],
    ids=["over a rib", "beside it", "no plate"],
)
def test_a_plate_behind_a_seam_is_in_the_way_of_a_rib(tmp_path: Path, seam: str, found: int) -> None:
    """A lid on two long walls, and a rib between them, from 157.5 mm to 162.5 mm, that comes up to it."""
    folder = tmp_path / "box"
    folder.mkdir()
    (folder / "spec.yaml").write_text(BOX.replace("SPLIT", f"split: {{{seam}}}"), encoding="utf-8")
    design = work_out(read_brief(folder))
    subject = assemble(design, make_parts(design)[0])[0]
    said = [f.message for f in parts_share_space.run(subject, parts_share_space).findings]
    assert len(said) == found, said
    assert all("mid (part B) and lid's plate (part C3) stand in one place" in one for one in said)


@pytest.mark.parametrize(("count", "plate", "found"), [(2, True, 2), (1, True, 1), (2, False, 0)])
def test_layers_with_plates_behind_them_do_not_lie_on_each_other(
    make: SimpleNamespace, count: int, plate: bool, found: int
) -> None:
    board = make.rectangle("board", 0, 0, 160, 80)
    design = make.design(stacks=(make.stack("s", ("board", count, 0.0, (0, 0))),))
    subject = make.assembled(design, split(make, board, 80.0) if plate else board)
    said = [f.message for f in parts_share_space.run(subject, parts_share_space).findings]
    assert len(said) == found, said
    assert not said or "where the table is" in said[-1]


@pytest.mark.parametrize(("piers", "carried"), [((-60.0, 60.0), True), ((-60.0, 0.0, 60.0), False)])
def test_a_plate_has_room_between_piers_and_none_over_one(
    make: SimpleNamespace, piers: tuple[float, ...], carried: bool
) -> None:
    stacks = make.stack("pier", ("block", 4, 0.0, (0, 0))), make.stack("road", ("board", 1, 0.0, (0, 0)))
    names = tuple(f"p{i}" for i in range(len(piers)))
    things = [ThingPlan(n, "pier", (), (x, 0.0), 0.0, False, make.here) for n, x in zip(names, piers, strict=True)]
    things.append(ThingPlan("road", "road", names, (0.0, 0.0), 0.0, False, make.here))
    design = replace(make.design(stacks=stacks), wholes=(WholePlan("all", tuple(things), make.here),))
    parts = make.rectangle("block", 0, 0, 40, 80), split(make, make.rectangle("board", 0, 0, 160, 80), 80.0)
    subject = assemble(design, parts)[0]
    assert parts_share_space.run(subject, parts_share_space).findings == ()
    said = [f.message for f in thing_not_carried.run(subject, thing_not_carried).findings]
    assert said == ([] if carried else ["road stands on p0 and ends 5.00 mm (0.20 in) over it"])


@pytest.mark.parametrize(
    ("plate", "middle", "found"),
    [(True, False, 0), (False, False, 1), (False, True, 0)],
    ids=["plate", "butted", "propped"],
)
def test_a_deck_of_two_halves_needs_a_plate_or_a_support(
    make: SimpleNamespace, plate: bool, middle: bool, found: int
) -> None:
    """Halves of 60 mm, from one pier to the next."""
    stacks = make.stack("pier", ("block", 4, 0.0, (0, 0))), make.stack("road", ("board", 1, 0.0, (0, 0)))
    at = {"w": -60.0, "e": 60.0, **({"m": 0.0} if middle else {})}
    things = [ThingPlan(n, "pier", (), (x, 0.0), 0.0, False, make.here) for n, x in at.items()]
    things.append(ThingPlan("road", "road", tuple(at), (0.0, 0.0), 0.0, False, make.here))
    design = replace(make.design(stacks=stacks), wholes=(WholePlan("all", tuple(things), make.here),))
    board = split(make, make.rectangle("board", 0, 0, 140, 80), 70.0)
    if not plate:
        board = replace(board, seams=(replace(board.seams[0], plate=None),))
    subject = assemble(design, (make.rectangle("block", 0, 0, 40, 80), board))[0]
    said = [f.message for f in too_weak.run(subject, too_weak).findings]
    assert len(said) == found and all("carries nothing at its seam" in one for one in said)
    carries = subject.fact("all.deck_carries")
    assert carries is not None and (carries.value == 0.0) is bool(found)
