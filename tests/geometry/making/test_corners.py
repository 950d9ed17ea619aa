"""Corners that are left unsaid: what follows from shapes, rests, lengths and feet, and what is told to be free."""

from pathlib import Path

import pytest

from publisher.basics import errors
from tests.random_designs.solids import in_common
from tests.reference.solids import Built, build

WALLS = """sizes: {{board: 5 mm}}
parts:
{parts}
assembly:
  yard:
    panels: {{{panels}}}
    stands_on: {first}.bottom
    joins:
{joins}
"""


def ring(
    tmp_path: Path, widths: dict[str, float], corners: tuple[str, ...] = (), like: dict[str, str] | None = None
) -> Built:
    """Walls that go round, their corners unsaid, or as written after the first, second, …; ``like``: places of one part."""
    like, names = like or {}, list(widths)
    corners = (*corners, *[""] * (len(names) - len(corners)))
    parts = [
        f"  w_{name}: {{name: W, board: foam, shape: wall_panel, with: {{width: {width} mm, height: 40 mm}}}}"
        for name, width in widths.items()
        if name not in like
    ]
    joins = [
        f"      - {{edges: [{a}.right, {b}.left], joint: mitre{corner and f', corner: {corner}'}}}"
        for a, b, corner in zip(names, names[1:] + names[:1], corners, strict=True)
    ]
    panels = ", ".join(f"{name}: w_{like.get(name, name)}" for name in names)
    text = WALLS.format(parts="\n".join(parts), panels=panels, joins="\n".join(joins), first=names[0])
    return build(text, tmp_path)


def bevel(built: Built, part: str, edge: str) -> float:
    found = built.parts[part].edge(edge)
    assert found is not None
    return found.bevel


def is_true(built: Built, assembly: str) -> None:
    assert errors(built.findings) == ()
    assert in_common(list(built.solids(assembly).values())) < 0.5


def test_three_walls_fix_their_corners(tmp_path: Path) -> None:
    """3, 4, 5: the corner between the two short ones is square, so each of their edges there is bevelled by 45°."""
    built = ring(tmp_path, {"a": 60, "b": 80, "c": 100})
    is_true(built, "yard")
    assert "geometry/corner-free" not in built.says()
    assert (bevel(built, "w_a", "right"), bevel(built, "w_b", "left")) == pytest.approx((45.0, 45.0))
    assert bevel(built, "w_b", "right") == pytest.approx((180 - 36.869898) / 2)


def test_three_unsaid_corners_follow_from_those_that_are_written(tmp_path: Path) -> None:
    """A house shape in plan: two square corners are written, the three round its point follow; four unsaid do not."""
    widths = {"base": 60, "right": 40, "up": 50, "down": 50, "left": 40}
    built = ring(tmp_path, widths, ("90 deg", "", "", "", "90 deg"))
    is_true(built, "yard")
    assert bevel(built, "w_up", "right") == pytest.approx((180 - 73.739795) / 2)
    (found,) = (f for f in ring(tmp_path, widths, ("90 deg",)).findings if f.check == "geometry/corner-free")
    assert "4 corners of the ring of 5 panels" in found.message and "leave 1 of them free" in found.message
    assert "equal" not in found.hint


@pytest.mark.breaks("geometry/corner-free")
def test_more_unsaid_corners_than_lengths_fix_are_told_with_what_equal_gives(tmp_path: Path) -> None:
    built = ring(tmp_path, {"a": 60, "b": 50, "c": 60, "d": 50})
    is_true(built, "yard")  # taken as 90°, it closes
    (found,) = (f for f in built.findings if f.check == "geometry/corner-free")
    assert "leave 1 of them free: each is taken as 90°" in found.message
    assert (
        found.hint
        == "write 1 of these corners, and the others follow; or say corners: equal, which makes each of them 90°"
    )
    assert found.place is not None and found.place.line > 0
    hexagon = ring(tmp_path, dict.fromkeys("abcdef", 60.0))
    assert any("leave 3 of them free" in f.message and "120°" in f.hint for f in hexagon.findings)


@pytest.mark.keeps("geometry/corner-free")
def test_one_written_corner_leaves_none_free(tmp_path: Path) -> None:
    built = ring(tmp_path, {"a": 60, "b": 50, "c": 60, "d": 50}, ("70 deg",))
    is_true(built, "yard")
    assert "geometry/corner-free" not in built.says()
    assert bevel(built, "w_b", "right") == pytest.approx(35.0)


def test_panels_in_a_row_have_the_corner_of_every_joint(tmp_path: Path) -> None:
    wall = "board: foam, shape: wall_panel, with: {width: 60 mm, height: 40 mm}}"
    parts = f"  w: {{name: W, {wall}\n  v: {{name: V, {wall}"
    joins = "      - {edges: [a.right, b.left], joint: mitre}"
    text = WALLS.format(parts=parts, panels="a: w, b: v", first="a", joins=joins)
    built = build(text, tmp_path)
    assert built.findings == ()
    assert bevel(built, "v", "left") == 45.0


@pytest.mark.breaks("geometry/corners-differ")
def test_a_part_whose_places_need_other_bevels_is_told_to_be_two(tmp_path: Path) -> None:
    widths = {"base": 60.0, "one": 50.0, "other": 50.0}
    built = ring(tmp_path, widths, like={"other": "one"})
    found = [f for f in built.findings if f.check == "geometry/corners-differ"]
    assert len(found) == 2
    assert "two parts" in found[0].hint


@pytest.mark.keeps("geometry/corners-differ")
def test_three_like_walls_are_bevelled_alike(tmp_path: Path) -> None:
    built = ring(tmp_path, {"a": 60.0, "b": 60.0, "c": 60.0}, like={"b": "a", "c": "a"})
    is_true(built, "yard")
    assert bevel(built, "w_a", "left") == pytest.approx(60.0)


def test_three_walls_that_do_not_reach_round_do_not_close(tmp_path: Path) -> None:
    assert "joints/ring-does-not-close" in ring(tmp_path, {"a": 30, "b": 40, "c": 90}).says()


def test_a_ridge_follows_from_the_gables_that_both_slopes_rest_on(tmp_path: Path) -> None:
    text = """sizes: {board: 5 mm, pitch: 40 deg}
parts:
  gable: {name: Gable, board: foam, shape: gable_wall, with: {span: 80 mm, past: 0 mm, eaves: 50 mm, pitch: pitch}}
  side: {name: Side, board: foam, shape: wall_panel, with: {width: 90 mm, height: 50 mm}}
  roof: {name: Roof, board: foam, shape: roof_panel, with: {span: 80 mm, length: 90 mm, pitch: pitch}}
assembly:
  house:
    panels: {front: gable, back: gable, left: side, right: side, left_roof: roof, right_roof: roof}
    stands_on: front.bottom
    joins:
      - {edges: [front.right, right.left], joint: butt, runs_through: front}
      - {edges: [right.right, back.left], joint: butt, runs_through: back}
      - {edges: [back.right, left.left], joint: butt, runs_through: back}
      - {edges: [left.right, front.left], joint: butt, runs_through: front}
      - {edges: [left_roof.ridge, right_roof.ridge], joint: mitre}
      - {place: left_roof, rests_on: [front.left_slope, back.right_slope]}
      - {place: right_roof, rests_on: [front.right_slope, back.left_slope]}
"""
    built = build(text, tmp_path)
    is_true(built, "house")
    assert bevel(built, "roof", "ridge") == pytest.approx(40.0)


def test_facets_that_lean_to_one_tip_and_stand_on_one_plane_fix_their_corners(tmp_path: Path) -> None:
    """A pyramid of 90 × 60 mm, cut off level at 48 of its 80 mm: drawn facets, no shape knows its bevels, the feet lie level."""
    (tmp_path / "piece").mkdir()
    for name, base, half in (("wide", 90.0, 30.0), ("deep", 60.0, 45.0)):
        high, gone = 0.6 * (80**2 + half**2) ** 0.5, 0.3 * base
        svg = f'<svg xmlns="http://www.w3.org/2000/svg" width="{base}mm" height="{high}mm" viewBox="0 0 {base} {high}">'
        svg += f'<path id="facet" d="M0 {high} H{base} L{base - gone} 0 H{gone} Z" fill="none" stroke="black"/></svg>'
        (tmp_path / "piece" / f"{name}.svg").write_text(svg, encoding="utf-8")
    names = ["south", "east", "north", "west"]
    joins = "\n".join(
        f"      - {{edges: [{a}.edge_2, {b}.edge_4], joint: mitre}}"
        for a, b in zip(names, names[1:] + names[:1], strict=True)
    )
    text = f"""sizes: {{board: 3 mm}}
parts:
  wide: {{name: Wide, board: foam, drawing: {{file: wide.svg, id: facet, width: 90 mm}}}}
  deep: {{name: Deep, board: foam, drawing: {{file: deep.svg, id: facet, width: 60 mm}}}}
assembly:
  spire:
    panels: {{south: wide, east: deep, north: wide, west: deep}}
    stands_on: south.edge_1
    joins:
{joins}
"""
    built = build(text, tmp_path)
    is_true(built, "spire")
    assert "geometry/corner-free" not in built.says()
    boxes = [body.bounding_box() for body in built.solids("spire").values()]
    assert [box[2] for box in boxes] == pytest.approx(
        [boxes[0][2]] * 4, abs=2.0
    )  # cut square, each reaches down as it leans
    assert max(b[3] for b in boxes) - min(b[0] for b in boxes) == pytest.approx(90.0, abs=0.01)
    assert max(b[4] for b in boxes) - min(b[1] for b in boxes) == pytest.approx(60.0, abs=0.01)
