"""Sizes of traced parts at a print scale, against the template itself: printed, traced round by a pencil, measured.

The template is scaled about its origin, and the pencil's allowance taken off its openings and put on its outline by a buffer with
square corners. Nothing here uses a formula of the budget.
"""

from math import dist
from pathlib import Path

import pytest
import shapely

from publisher.geometry import Part, polygon
from tests.reference.solids import Built, build

ALLOWANCE = 0.4
BOX = """sizes: {board: 5 mm}
parts:
  wall:
    name: Wall
    board: foam
    shape: wall_panel
    trace_allowance: 0.4 mm
    with: {width: 120 mm, height: 60 mm}
    openings:
      gate: {kind: door, head: square, width: 20 mm, height: 40 mm, centre: 60 mm}
      light: {kind: window, head: square, width: 14 mm, height: 12 mm, sill: 30 mm, centre: 85 mm}
      one: {kind: round_hole, diameter: 6 mm, centre: 20 mm, up: 50 mm}
      other: {kind: round_hole, diameter: 6 mm, centre: 45 mm, up: 50 mm}
  side: {name: Side, board: foam, shape: wall_panel, trace_allowance: 0.4 mm, with: {width: 50 mm, height: 60 mm}}
assembly:
  box:
    panels: {front: wall, right: side}
    stands_on: front.bottom
    joins: [{edges: [front.right, right.left], joint: tab_and_slot, tabs_on: right, tabs: 1, inset: 10 mm, play: 0.3 mm}]
"""
FITS = """fits:
  - {goes: 5.5 mm, into: wall.one.width, name: peg}
  - {goes: 13 mm, into: wall.light.width, name: pane}
  - {goes: side.width, into: wall.width, name: side}
needs:
  - {fact: wall.width, at_least: 100 mm}
  - {fact: wall.gate.height, at_least: 35 mm}
"""


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Built:
    return build(FITS + BOX, tmp_path_factory.mktemp("traced"), "trace")


def cut(part: Part, scale: float) -> shapely.Polygon:
    """The piece that comes out of a template printed at this scale."""
    printed = shapely.transform(polygon(part.template), lambda xy: xy * scale)
    return shapely.buffer(printed, ALLOWANCE, join_style="mitre", quad_segs=256)


def holes(piece: shapely.Polygon) -> list[shapely.Polygon]:
    return sorted((shapely.Polygon(ring) for ring in piece.interiors), key=lambda hole: float(hole.centroid.x))


def size(area: shapely.Geometry) -> tuple[float, float]:
    left, low, right, high = area.bounds
    return right - left, high - low


@pytest.mark.parametrize("scale", [0.97, 1.0, 1.03])
def test_every_meeting_is_as_large_as_what_is_cut(built: Built, scale: float) -> None:
    wall, side = cut(built.parts["wall"], scale), cut(built.parts["side"], scale)
    one, _, light, slot = holes(wall)
    truth = {
        "wall.slot.side.right": size(slot)[0],
        "fit.1.wall.one.width": size(one)[0],
        "fit.2.wall.light.width": size(light)[0],
        "fit.3.wall.width": size(wall)[0] - size(side)[0],
        "wall.width": size(wall)[0],
        "wall.gate.height": _head(wall, scale) - wall.bounds[1],
    }
    met = {meeting.name: meeting.cut_at(scale) for meeting in built.joined.meetings}
    assert met == {name: pytest.approx(value, abs=0.002) for name, value in truth.items()}


def _head(wall: shapely.Polygon, scale: float) -> float:
    """How high over the printed origin the door's head is cut."""
    probe = shapely.LineString([(60.0 * scale, -1.0), (60.0 * scale, 200.0)])
    return float(shapely.intersection(probe, wall).bounds[1])


@pytest.mark.parametrize("scale", [0.97, 1.0, 1.03])
def test_tabs_are_outlines_their_depth_and_distances_of_centres_are_not(built: Built, scale: float) -> None:
    """A tab is s(w − 2a) + 2a long. Its end and the edge that it stands on move the same way, so it is s·d deep; so far apart
    stand two centres, and two lines that the pencil only copies."""
    wall, side = cut(built.parts["wall"], scale), cut(built.parts["side"], scale)
    body = shapely.intersection(side, shapely.box(side.bounds[0] + 0.5, -9, 99, 99))
    assert size(body)[0] < size(side)[0]
    shoulder = min(x for x, y in shapely.get_coordinates(side) if y < 5.0)
    tab = shapely.intersection(side, shapely.box(-99, -99, shoulder - 0.01, 99))
    assert size(tab) == (pytest.approx(scale * 5.0, abs=0.02), pytest.approx(scale * (30.0 - 0.8) + 0.8, abs=0.002))
    one, other, *_ = holes(wall)
    assert dist(one.centroid.coords[0], other.centroid.coords[0]) == pytest.approx(scale * 25.0, abs=0.002)


POSTS = """sizes: {board: 5 mm}
parts:
  wall:
    name: Wall
    board: foam
    shape: wall_panel
    trace_allowance: 0.4 mm
    with: {width: 120 mm, height: 60 mm}
    openings:
      square: {kind: window, head: square, width: 20.3 mm, height: 5.4 mm, sill: 30 mm, centre: 30 mm}
      round: {kind: round_hole, diameter: 21 mm, centre: 80 mm, up: 30 mm}
  post: {name: Post, board: foam, shape: rectangle, trace_allowance: 0.4 mm, with: {width: 20 mm, height: 50 mm}}
assembly:
  box:
    panels: {front: wall, near: post, far: post}
    stands_on: front.bottom
    joins:
      - {place: near, stands_on: front, edge: bottom, opening: square}
      - {place: far, stands_on: front, edge: bottom, opening: round}
"""


@pytest.mark.parametrize("scale", [0.995, 1.0, 1.005])
def test_a_post_and_its_opening_are_cut_as_their_meetings_say(tmp_path: Path, scale: float) -> None:
    """What goes into a round opening is its post from corner to corner, which shrinks by its width and not by its board."""
    built = build(POSTS, tmp_path, "trace")
    wall, post = cut(built.parts["wall"], scale), cut(built.parts["post"], scale)
    square, circle = holes(wall)
    met = {meeting.name: meeting for meeting in built.joined.meetings}
    assert met["wall.square.near"].cut_at(scale) == pytest.approx(size(square)[1], abs=0.002)
    edge = met["wall.square.near.bottom"]
    assert edge.cut_at(scale) == pytest.approx(size(square)[0] - size(post)[0], abs=0.002)
    corner = met["wall.round.far"]
    true = size(circle)[0] - (size(post)[0] ** 2 + 25.0) ** 0.5
    assert corner.cut_at(scale) - 425.0**0.5 == pytest.approx(true, abs=0.003)
    assert corner.unprinted_least == pytest.approx(425.0**0.5)  # the board of this spec has no spread
